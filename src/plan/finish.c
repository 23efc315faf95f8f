/* SPDX-License-Identifier: MIT */
/* Which strings were cut since the visit before, by less than their cut. See docs/arithmetic.md, "How
 * much at a time". */
#include "plan.h"

/* Less than this is no pass that a person could make, mm. */
static const double least_pass = 0.01;

/* Less than this is rounding, mm. */
static const double rounding = 1e-6;

/* A part that was to be cut was cut if at least this share of the pass shows in what is read. */
static const double shown_share = 0.5;

/* A cut as the plan before asked for it: its first pass, the whole of it, by how much the reading was
 * to change and has. */
typedef struct asked_cut {
    double pass, whole, change, changed;
    bool awaited; /* it was to be finished at that visit already */
} asked_cut;

/* A cut that was not made is still to be finished; one that was, where it was not the whole. */
static bool to_finish(asked_cut cut)
{
    bool asked = cut.pass >= least_pass;
    bool made = cut.changed >= shown_share * cut.change;
    bool whole = cut.pass >= cut.whole - rounding;
    return asked && (made ? !whole : cut.awaited);
}

double plan_slot_goal(const sil_plan *plan, int i)
{
    if (plan->stages.shim_leaves[i]) {
        return -plan->stages.shim;
    }
    return plan->nut.verdict[i] == SIL_LEAVE ? 0.0
                                             : plan->stages.deepen[i] - plan->stages.nut_raised[i];
}

double plan_slot_left(const sil_plan *plan, int i)
{
    bool filed = plan->nut.verdict[i] == SIL_TAKE && !plan_cuts_anew(plan, i);
    return filed ? plan_slot_goal(plan, i) - plan->nut.first_pass[i] : plan->nut.leave[i];
}

/* Whether a slot of a new nut has been read since, with the stroke on it that stayed on. One that was to
 * be raised shows by its gap whether it was. A slot that was filled is not finished: once it is in its
 * range it is what was wanted. */
static bool finishes_anew(const sil_plan *before, const sil_plan *now, double was, double is,
                          double share, int i)
{
    double rise = -before->stages.deepen[i] * share;
    bool known = before->nut.verdict[i] == SIL_RAISE && sil_known(was) && sil_known(rise);
    bool asked = before->nut.remedy == SIL_NUT_REPLACE && plan_gap_read(now, i);
    return asked && (!known || is - was >= shown_share * rise);
}

static bool finishes_slot(const sil_plan *before, const sil_plan *now, int i)
{
    const sil_board *board = &now->bench.board;
    sil_hold target = now->bench.targets.first_held;
    sil_hold hold = target == SIL_HOLD_OPEN ? SIL_HOLD_2 : target;
    double was = sil_first_gap(board, &before->stages.fit[SIL_NOW], i, hold);
    double is = sil_first_gap(board, &now->stages.fit[SIL_NOW], i, hold);
    double share = 1.0 - board->fret_x[i][1] / board->fret_x[i][hold];
    double pass = before->nut.first_pass[i];
    if (plan_cuts_anew(before, i)) {
        return finishes_anew(before, now, was, is, share, i);
    }
    return before->nut.verdict[i] == SIL_TAKE &&
           to_finish((asked_cut){.pass = pass,
                                 .whole = plan_slot_goal(before, i),
                                 .change = pass * share,
                                 .changed = was - is,
                                 .awaited = before->bench.finish_slot[i]});
}

static bool finishes_saddle(const sil_plan *before, const sil_plan *now, int i)
{
    const sil_board *board = &now->bench.board;
    double was = sil_action(board, &before->stages.fit[SIL_NOW], i, 12);
    double is = sil_action(board, &now->stages.fit[SIL_NOW], i, 12);
    bool cut = before->saddle.verdict[i] == SIL_TAKE && before->saddle.remedy == SIL_SADDLE_SAND;
    if (sil_withheld_by(&before->saddle_withheld, SIL_TUNE_OUT)) {
        return before->bench
            .finish_saddle[i]; /* its peak came first, the rest of its cut is to come */
    }
    double pass = plan_saddle_pass(before, i);
    return cut && to_finish((asked_cut){.pass = pass,
                                        .whole = before->saddle.goal[i],
                                        .change = pass * sil_leverage(board, i),
                                        .changed = was - is,
                                        .awaited = before->bench.finish_saddle[i]});
}

/* Whether a part from a blank is read for the first time since it was made, higher than its target. */
static bool read_back(plan_made before, plan_made now)
{
    return now == PLAN_READ_BACK && before != PLAN_READ_BACK;
}

/* Whether a new saddle is in, which was called for because strings were too low: they came up by at
 * least a share of what it is higher by at first. */
static bool new_saddle_in(const sil_plan *before, const sil_plan *now)
{
    const sil_fit *fit = before->stages.fit;
    double change = 0.0, changed = 0.0;
    for (int i = 0; i < now->job->string_count; i++) {
        if (before->saddle.verdict[i] == SIL_RAISE) {
            const sil_board *board = &now->bench.board;
            double rise = fit[SIL_SADDLE].saddle_height[i] + before->saddle.leave[i] -
                          fit[SIL_NUT].saddle_height[i];
            change += rise * sil_leverage(board, i);
            changed += sil_action(board, &now->stages.fit[SIL_NOW], i, 12) -
                       sil_action(board, &fit[SIL_NOW], i, 12);
        }
    }
    return before->saddle.remedy == SIL_SADDLE_REPLACE && !plan_makes_saddle(before) &&
           changed >= shown_share * change;
}

bool plan_finish(const sil_plan *before, sil_plan *now)
{
    bool any = false;
    bool nut = read_back(before->nut_made, now->nut_made);
    bool saddle = read_back(before->saddle_made, now->saddle_made) || new_saddle_in(before, now);
    for (int i = 0; i < now->job->string_count; i++) {
        now->bench.finish_slot[i] = nut || finishes_slot(before, now, i);
        now->bench.finish_saddle[i] = saddle || finishes_saddle(before, now, i);
        any = any || now->bench.finish_slot[i] || now->bench.finish_saddle[i];
    }
    return any;
}
