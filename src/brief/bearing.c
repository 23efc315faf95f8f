/* SPDX-License-Identifier: MIT */
/* The figures that are shown for a string at the saddle. */
#include "within.h"

const double brief_least_pass = 0.005;

/* Less than this is too little to file, mm. */
static const double least_filed = 0.01;

static brief_does does(const sil_plan *plan, int i)
{
    if (plan->saddle.remedy == SIL_SADDLE_REPLACE) {
        return BRIEF_NEW;
    }
    switch (plan->saddle.verdict[i]) {
    case SIL_TAKE:
        return BRIEF_LOWERS;
    case SIL_RAISE:
        return BRIEF_RAISES;
    case SIL_LEAVE:
        return BRIEF_LEAVES;
    case SIL_WAIT:
        return BRIEF_WAITS;
    }
    return BRIEF_WAITS;
}

/* How far a string comes down at the saddle in total, mm; unknown while it waits. */
static double moved_down(const sil_plan *plan, int i)
{
    const sil_fit *fit = plan->stages.fit;
    return plan->saddle.verdict[i] == SIL_WAIT
               ? SIL_UNKNOWN
               : fit[SIL_NUT].saddle_height[i] - fit[SIL_SADDLE].saddle_height[i];
}

brief_way brief_way_of(double down)
{
    return down > 0.0 ? BRIEF_DOWN : down < 0.0 ? BRIEF_UP : BRIEF_NO_WAY;
}

static brief_figure size_of_move(const brief *b, double down)
{
    bool moves = sil_known(down) && down != 0.0;
    return moves ? figure_nearest(b, fabs(down)) : figure_none();
}

static void fill_move(const brief *b, int i, brief_bearing *string)
{
    double down = moved_down(b->plan, i), turns = b->plan->saddle.turns[i];
    bool turned = brief_known(string->moves = size_of_move(b, down)) && sil_known(turns);
    string->way = brief_way_of(down);
    string->turns = turned ? figure_turns(turns) : figure_none();
}

/* The action at fret 12 after the saddle has come down by `down`, with the nut done as planned. */
static brief_figure action_after(const brief *b, int i, double down)
{
    const sil_board *board = &b->plan->bench.board;
    double before = plan_action_over(b->plan, &b->plan->stages.fit[SIL_NUT], i);
    return figure_action(b->unit, before - down * sil_leverage(board, i));
}

/* How far a string has come down at the end of the first pass off the top. A pass too small for the
 * file is not made: the string is measured with a finer tool instead. */
static double passed(const brief *b, int i)
{
    const sil_plan *plan = b->plan;
    const sil_saddle_work *work = &plan->saddle;
    bool little = work->dress_first[i] < least_filed && !sil_known(work->hold[i]);
    double unfiled = little && sil_dressed_off(plan, i) > 0.0 ? work->dress_first[i] : 0.0;
    return plan_saddle_pass(plan, i) - unfiled - b->saddle_part.shim;
}

static void fill_actions(const brief *b, int i, brief_bearing *string)
{
    const sil_saddle_work *work = &b->plan->saddle;
    double z = b->plan->bench.board.saddle_z[i];
    double all = b->saddle_part.shim > 0.0 ? -b->saddle_part.shim : sil_line_at(work->cut, z);
    string->action_before = action_after(b, i, 0.0);
    string->action_first = action_after(b, i, sil_line_at(work->cut_first, z));
    string->action_dressed = action_after(b, i, passed(b, i));
    string->action_all = action_after(b, i, all);
    double after = sil_action_after(b->plan, i), leverage = sil_leverage(&b->plan->bench.board, i);
    double made = after + work->leave[i] * leverage;
    string->action_made = b->saddle.replaced ? figure_action(b->unit, made) : figure_none();
    string->action_done = figure_action(b->unit, after - plan_curve_rise(b->plan, i) * leverage);
    string->action_curved = b->action[i].after;
    double rod = plan_action_over(b->plan, &b->plan->stages.fit[SIL_ROD], i);
    string->action_rod = figure_action(b->unit, rod);
}

sil_rounding brief_made_way(const brief *b)
{
    return b->saddle.replaced ? SIL_UP : SIL_NEAREST;
}

/* How much comes off the bottom and the top, and the heights after that. */
static void fill_cuts(const brief *b, int i, brief_bearing *string)
{
    const sil_saddle_work *work = &b->plan->saddle;
    double x = b->saddle_part.along[i], left_on = sil_left_on(b->plan, i);
    double dress = sil_dressed_off(b->plan, i);
    double first = part_base_at(&b->saddle_part, b->saddle_part.base_first, x);
    double all = part_base_at(&b->saddle_part, b->saddle_part.base_all, x);
    string->base_first = work->bottom && !b->saddle.sands_later
                             ? figure_limited(b->unit, first, SIL_DOWN, FIGURE_OFF_SADDLE)
                             : figure_none();
    string->base_all = work->bottom
                           ? figure_length(b->unit, b->saddle.one_pass ? first : all, SIL_DOWN)
                           : figure_none();
    string->dress =
        dress > 0.0 ? figure_limited(b->unit, dress, SIL_DOWN, FIGURE_OFF_SADDLE) : figure_none();
    double now = work->dress_first[i];
    bool whole = dress - now < brief_least_pass;
    string->dress_first = dress > 0.0 ? figure_length(b->unit, now, SIL_DOWN) : figure_none();
    bool files = dress > 0.0 && now >= least_filed;
    string->dress_now = b->saddle.dresses_later ? string->dress
                        : files ? figure_limited(b->unit, now, SIL_DOWN, FIGURE_OFF_SADDLE)
                                : figure_none();
    string->dress_left = dress > 0.0 ? figure_nearest(b, whole ? 0.0 : dress - now) : figure_none();
    string->left_on = left_on >= brief_least_pass ? figure_nearest(b, left_on) : figure_none();
    double height = work->height[i] + left_on;
    double out = work->protrusion[i] + left_on;
    brief_figure *made = b->saddle.from_bridge ? &string->out : &string->height;
    sil_rounding way = brief_made_way(b);
    string->height = figure_reference(figure_length(b->unit, height, way));
    string->out = figure_reference(figure_length(b->unit, out, way));
    *made = figure_limited(b->unit, made->exact, way, FIGURE_HEIGHT);
    string->height_first = b->saddle.replaced
                               ? figure_length(b->unit, work->height[i] + work->leave[i], SIL_UP)
                               : figure_none();
    string->in_slot = figure_share(work->in_slot[i]);
    string->slot_wall =
        figure_reference(figure_nearest(b, b->saddle_part.bridge[i] + b->plan->job->saddle.pickup));
    string->angle = figure_number(work->break_angle_deg[i], 0);
}

/* How far the place in tune is off the saddle, square to its face. */
static brief_figure beyond(const brief *b, int i)
{
    const part_saddle *part = &b->saddle_part;
    double off = fabs(part->in_tune[i]) * cos(part->slant) - part->thickness / 2;
    return off > 0.0 ? figure_nearest(b, off) : figure_none();
}

/* How far the string really comes down, or up: the height now less this is the finished height. It is
 * less than what it is too high where that has no room, where it would buzz, or where the last of it is
 * too little to file. A string in its range may come down with the bottom. */
static brief_figure taken(const brief *b, int i)
{
    const sil_saddle_work *work = &b->plan->saddle;
    double down = moved_down(b->plan, i) - sil_left_on(b->plan, i);
    bool left = work->verdict[i] == SIL_LEAVE;
    if (left && !(fabs(down) >= brief_least_pass)) {
        return figure_none();
    }
    return down > 0.0 && sil_working_cuts(work->working)
               ? figure_limited(b->unit, down, SIL_DOWN, FIGURE_OFF_SADDLE)
               : figure_nearest(b, fabs(down));
}

/* How far a string is off its target at the bridge, when posts or thumbwheels have done what they can. */
static brief_figure curve_off(const brief *b, int i, sil_verdict curve)
{
    double off = fabs(plan_curve_rise(b->plan, i));
    return curve == SIL_TAKE    ? figure_length(b->unit, off, SIL_DOWN)
           : curve == SIL_RAISE ? figure_nearest(b, off)
                                : figure_none();
}

void brief_fill_bearing(brief *b, int i)
{
    brief_bearing *string = &b->saddle.string[i];
    const sil_plan *plan = b->plan;
    const sil_saddle_work *work = &plan->saddle;
    string->verdict = work->verdict[i];
    string->does = does(plan, i);
    string->curve = plan_curve_at(plan, i);
    string->curve_off = curve_off(b, i, string->curve);
    string->along = figure_nearest(b, b->saddle_part.along[i]);
    string->across = figure_nearest(b, b->saddle_part.across[i]);
    string->off = figure_nearest(b, plan->stages.lower[i]);
    string->beyond = beyond(b, i);
    string->sure = figure_nearest(b, 2.0 * plan->stages.lower_u[i]);
    string->by = taken(b, i);
    string->first = work->verdict[i] == SIL_TAKE
                        ? figure_length(b->unit, work->first_pass[i], SIL_DOWN)
                        : figure_none();
    string->present = figure_nearest(b, work->present[i]);
    fill_cuts(b, i, string);
    fill_move(b, i, string);
    fill_actions(b, i, string);
}
