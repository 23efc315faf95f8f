/* SPDX-License-Identifier: MIT */
/* The figures that are shown for the saddle. */
#include "within.h"

/* Less than this is too little to be a pass, mm. */
static const double least_pass = 0.005;

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

static brief_way way_of(double down)
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
    string->way = way_of(down);
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
    double made =
        sil_action_after(b->plan, i) + work->leave[i] * sil_leverage(&b->plan->bench.board, i);
    string->action_made = b->saddle.replaced ? figure_action(b->unit, made) : figure_none();
    string->action_done = figure_action(b->unit, sil_action_after(b->plan, i));
    string->action_target = figure_action(b->unit, b->plan->bench.targets.action[i].aim);
    double rod = plan_action_over(b->plan, &b->plan->stages.fit[SIL_ROD], i);
    string->action_rod = figure_action(b->unit, rod);
}

/* The height of a new piece is where the file stops, and is rounded up; else it is what the cuts leave. */
static sil_rounding made_way(const brief *b)
{
    return b->saddle.replaced ? SIL_UP : SIL_NEAREST;
}

/* Whether something is to come off the bottom, and nothing of it today. */
static bool sands_later(const brief_saddle *saddle)
{
    return saddle->takes_all && !saddle->takes_first;
}

/* How much comes off the bottom and the top, and the heights after that. */
static void fill_cuts(const brief *b, int i, brief_bearing *string)
{
    const sil_saddle_work *work = &b->plan->saddle;
    double x = b->saddle_part.along[i], left_on = sil_left_on(b->plan, i);
    double dress = sil_dressed_off(b->plan, i);
    double first = part_base_at(&b->saddle_part, b->saddle_part.base_first, x);
    double all = part_base_at(&b->saddle_part, b->saddle_part.base_all, x);
    string->base_first = work->bottom && !sands_later(&b->saddle)
                             ? figure_limited(b->unit, first, SIL_DOWN, FIGURE_OFF_SADDLE)
                             : figure_none();
    string->base_all = work->bottom
                           ? figure_length(b->unit, b->saddle.one_pass ? first : all, SIL_DOWN)
                           : figure_none();
    string->dress =
        dress > 0.0 ? figure_limited(b->unit, dress, SIL_DOWN, FIGURE_OFF_SADDLE) : figure_none();
    double now = work->dress_first[i];
    bool whole = dress - now < least_pass;
    string->dress_first =
        dress > 0.0 ? figure_limited(b->unit, now, SIL_DOWN, FIGURE_OFF_SADDLE) : figure_none();
    string->dress_left = dress > 0.0 ? figure_nearest(b, whole ? 0.0 : dress - now) : figure_none();
    string->left_on = left_on >= least_pass ? figure_nearest(b, left_on) : figure_none();
    double height = work->height[i] + left_on;
    double out = work->protrusion[i] + left_on;
    brief_figure *made = b->saddle.from_bridge ? &string->out : &string->height;
    sil_rounding way = made_way(b);
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
    if (left && !(fabs(down) >= least_pass)) {
        return figure_none();
    }
    return down > 0.0 && sil_working_cuts(work->working)
               ? figure_limited(b->unit, down, SIL_DOWN, FIGURE_OFF_SADDLE)
               : figure_nearest(b, fabs(down));
}

/* How far a string is off its target at the bridge, when posts or thumbwheels have done what they can. */
static brief_figure curve_off(const brief *b, int i, sil_verdict curve)
{
    double over = sil_action_after(b->plan, i) - b->plan->bench.targets.action[i].aim;
    double off = fabs(over) / sil_leverage(&b->plan->bench.board, i);
    return curve == SIL_TAKE    ? figure_length(b->unit, off, SIL_DOWN)
           : curve == SIL_RAISE ? figure_nearest(b, off)
                                : figure_none();
}

static void fill_string(const brief *b, int i, brief_bearing *string)
{
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

static double end_x(const brief *b, brief_end end)
{
    return end == BRIEF_TREBLE ? b->saddle_part.length : 0.0;
}

/* Whether a string in its range is set to its target with the others. */
static bool any_set_along(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        sil_verdict verdict = plan->saddle.verdict[i];
        if ((verdict == SIL_TAKE || verdict == SIL_RAISE) &&
            !sil_side_out(plan->stages.action_side[i])) {
            return true;
        }
    }
    return false;
}

/* The cut at the two ends of the bottom, and the caliper readings to stop at. */
static void fill_ends(brief *b)
{
    const part_saddle *part = &b->saddle_part;
    brief_saddle *saddle = &b->saddle;
    const int outer[BRIEF_ENDS] = {[BRIEF_TREBLE] = 0, [BRIEF_BASS] = b->strings - 1};
    double most_left = 0.0, most_first = 0.0, most_all = 0.0;
    for (brief_end end = BRIEF_TREBLE; end < BRIEF_ENDS; end++) {
        double first = part_base_at(part, part->base_first, end_x(b, end));
        double all = part_base_at(part, part->base_all, end_x(b, end));
        double stop = part->present[outer[end]] -
                      part_base_at(part, part->base_first, part->along[outer[end]]);
        saddle->base_first[end] = figure_length(b->unit, first, SIL_DOWN);
        saddle->base_all[end] = figure_length(b->unit, all, SIL_DOWN);
        saddle->base_left[end] = figure_nearest(b, all - first);
        saddle->caliper[end] = part->base ? figure_length(b->unit, stop, SIL_UP) : figure_none();
        most_left = fmax(most_left, all - first);
        most_first = fmax(most_first, first);
        most_all = fmax(most_all, all);
    }
    saddle->base = part->base;
    saddle->one_pass = most_left < least_pass;
    saddle->takes_first = part->base && most_first >= 0.01;
    saddle->takes_all = part->base && most_all >= 0.01;
    for (brief_end end = BRIEF_TREBLE; saddle->one_pass && end < BRIEF_ENDS; end++) {
        saddle->base_all[end] = saddle->base_first[end];
    }
}

static void fill_posts(brief *b)
{
    const sil_saddle_work *work = &b->plan->saddle;
    b->saddle.posts = work->posts;
    for (brief_end end = BRIEF_TREBLE; end < BRIEF_ENDS; end++) {
        b->saddle.post[end] =
            (brief_post){way_of(work->post[end]), figure_nearest(b, fabs(work->post[end])),
                         figure_turns(work->post_turns[end])};
    }
}

/* What the saddle can do short of work on the neck. */
static void fill_half_cure(brief *b)
{
    const sil_neck *neck = &b->plan->neck;
    double out = SIL_UNKNOWN;
    for (int i = 0; i < b->strings; i++) {
        out = fmin(out, neck->half_out[i]);
        b->saddle.half_action[i] = figure_action(b->unit, neck->half_action[i]);
        b->saddle.half_shallow[i] =
            sil_below(neck->half_break_deg[i], b->plan->job->limits.least_break_deg);
    }
    b->saddle.half_out = figure_length(b->unit, out, SIL_UP);
}

static void fill_neck(brief *b)
{
    const sil_neck *neck = &b->plan->neck;
    b->saddle.lift = figure_nearest(b, neck->lift);
    b->saddle.wedge = figure_nearest(b, neck->shim);
    b->saddle.wedge_angle = figure_number(neck->degrees, 2);
    b->saddle.bow = figure_nearest(b, neck->explains);
    b->saddle.bow_accepted = figure_nearest(b, neck->accepted);
    b->saddle.heel = figure_nearest(b, neck->heel);
    fill_half_cure(b);
    b->saddle.lift_string = neck->string;
}

/* The best straight slot, and the thickness of a saddle that has every contact point in it. */
static void fill_best_slot(brief *b)
{
    const sil_plan *plan = b->plan;
    const double *z = plan->bench.board.saddle_z;
    double most = 0.0, thickness = plan->job->saddle.thickness;
    for (int i = 0; i < b->strings; i++) {
        double built = sil_line_at(plan->slot_as_built, z[i]);
        double best = sil_line_at(plan->slot_best, z[i]);
        most = fmax(most, fabs(built + plan->compensation[i].off_slot - best));
    }
    double needs = 2.0 * most * cos(plan->bench.board.saddle_slant);
    b->saddle.best_setback[BRIEF_TREBLE] = figure_nearest(b, sil_line_at(plan->slot_best, z[0]));
    b->saddle.best_setback[BRIEF_BASS] =
        figure_nearest(b, sil_line_at(plan->slot_best, z[b->strings - 1]));
    b->saddle.best_thickness =
        sil_above(needs, thickness) ? figure_length(b->unit, needs, SIL_UP) : figure_none();
}

static const char *headline(brief *b)
{
    const brief_saddle *saddle = &b->saddle;
    bool floats = sil_working_floats(saddle->working);
    bool feet = saddle->working == SIL_WORKING_FEET;
    switch (saddle->remedy) {
    case SIL_SADDLE_SAND:
        return sands_later(saddle) ? "Nothing is sanded yet: measure the action with a finer tool"
               : saddle->base && feet ? "Sand the feet to the solid line, then measure again"
               : saddle->base         ? "Sand the bottom to the solid line, then measure again"
               : saddle->dressed      ? "Dress the top, a little at a time"
                                      : "Nothing comes off: it is too little for a file";
    case SIL_SADDLE_SHIM:
        return text_keep(&b->store, "Shim the %s: %s, %s %s", floats ? "bridge" : "saddle",
                         floats ? "a hard piece under each foot" : "one hard full-length piece",
                         saddle->shim.shown, b->unit_name);
    case SIL_SADDLE_REPLACE:
        return text_keep(&b->store, "New %s%s", floats ? "bridge" : "saddle",
                         brief_blank_words(b, &saddle->blank));
    case SIL_SADDLE_SCREW:
        return saddle->posts ? "Set the bridge by its two posts" : "Set each saddle by its screws";
    case SIL_SADDLE_WAIT:
        return "Wait: nothing is cut at the saddle today";
    case SIL_SADDLE_NONE:
        return sil_working_turns(saddle->working)
                   ? "Nothing is turned"
                   : "Nothing comes off: every string is in its range";
    }
    return "";
}

/* The greatest height of the finished saddle; unknown where the height at a string is unknown. */
static double highest(const brief *b)
{
    double high = -(double)INFINITY;
    for (int i = 0; i < b->strings; i++) {
        double height = b->plan->saddle.height[i];
        high = sil_known(height) && sil_known(high) ? fmax(high, height) : SIL_UNKNOWN;
    }
    return high;
}

static void fill_piece(brief *b)
{
    const part_saddle *part = &b->saddle_part;
    const sil_plan *plan = b->plan;
    brief_saddle *saddle = &b->saddle;
    double left_on = 0.0;
    for (int i = 0; i < b->strings; i++) {
        left_on = fmax(left_on, sil_left_on(plan, i));
        saddle->dressed = saddle->dressed || brief_known(saddle->string[i].dress);
    }
    saddle->left_on = left_on >= least_pass ? figure_nearest(b, left_on) : figure_none();
    saddle->length = figure_nearest(b, part->length);
    saddle->thickness = brief_thickness(b, part->thickness, saddle->replaced);
    saddle->fit = brief_fit_words(b, saddle->thickness);
    saddle->bottom =
        (saddle->base || saddle->replaced) && !saddle->floats ? brief_bottom_words(b) : "";
    saddle->pickup = plan->job->saddle.pickup > 0.0 ? figure_nearest(b, plan->job->saddle.pickup)
                                                    : figure_none();
    saddle->top_radius = figure_radius(b->unit, part->top_radius);
    const part_curve none = {0}, *top = saddle->replaced ? &part->finished_top : &none;
    saddle->crest = top->radius > 0 ? figure_length(b->unit, fmax(top->crest, highest(b)), SIL_UP)
                                    : figure_none();
    saddle->crest_at = brief_crest_at(b, top);
    saddle->ends[BRIEF_TREBLE] = brief_end_height(b, top, part->length);
    saddle->ends[BRIEF_BASS] = brief_end_height(b, top, 0);
    saddle->shim = figure_nearest(b, plan->saddle.shim);
    saddle->lean = brief_lean(part->slant);
    saddle->bass_to_head = part->slant < 0;
    bool ordered = saddle->remedy != SIL_SADDLE_WAIT && sil_working_in_slot(saddle->working);
    const double done[] = {part->length, part->thickness, highest(b)};
    saddle->blank = brief_blank_of(b, ordered, plan->saddle_blank, done,
                                   part->along[0] - part->along[b->strings - 1], part->top_radius);
    saddle->blank.done_height = figure_length(b->unit, done[2], made_way(b));
}

void brief_fill_saddle(brief *b)
{
    brief_saddle *saddle = &b->saddle;
    saddle->working = b->plan->saddle.working;
    saddle->remedy = b->plan->saddle.remedy;
    saddle->replaced = saddle->remedy == SIL_SADDLE_REPLACE;
    saddle->floats = sil_working_floats(saddle->working);
    saddle->along =
        saddle->remedy == SIL_SADDLE_SCREW && !b->plan->saddle.posts && any_set_along(b->plan);
    saddle->from_bridge = saddle->working == SIL_WORKING_TOP;
    saddle->in_slot = sil_working_in_slot(saddle->working);
    fill_ends(b);
    for (int i = 0; i < b->strings; i++) {
        fill_string(b, i, &saddle->string[i]);
    }
    fill_posts(b);
    fill_piece(b);
    fill_neck(b);
    fill_best_slot(b);
    saddle->headline = headline(b);
}
