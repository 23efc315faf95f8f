/* SPDX-License-Identifier: MIT */
/* A zero fret that is not at the height of a nut. See docs/arithmetic.md, "Zero fret". */
#include "plan.h"

static bool is_high(const sil_plan *plan, int i)
{
    /* Judged as a nut slot is: where the range and the cut go in opposite directions, it is left to
     * the saddle. */
    return plan->stages.first_side[i] == SIL_OVER && plan->stages.deepen[i] > 0.0;
}

/* Whether something besides the range says that it is too low: a zero fret level with the other frets
 * leaves next to no gap, and rings as clean as they do. */
static bool falls_short(const sil_plan *plan, int i)
{
    const sil_bench *bench = &plan->bench;
    const sil_fit *fit = &plan->stages.fit[SIL_FRETS];
    double over = plan_over_others(plan, fit, fit->nut_height[i], i);
    return bench->standing.buzz_open[i] || sil_first_touches(&bench->gaps, i) ||
           sil_below(bench->zero_fret_off[i], -bench->wear_limit) ||
           sil_below(over, -plan->stages.deepen_u[i]);
}

static bool is_low(const sil_plan *plan, int i)
{
    const sil_stages *stages = &plan->stages;
    bool under = stages->first_side[i] == SIL_UNDER && stages->deepen[i] < 0.0;
    return !plan_gaps_apart(plan, i) && !plan->bench.standing.first_odd[i] &&
           (stages->on_fret[i] || (under && falls_short(plan, i)));
}

bool plan_zero_fret_high(const sil_plan *plan, int string)
{
    return plan->bench.zero_fret && is_high(plan, string);
}

bool plan_zero_fret_low(const sil_plan *plan, int string)
{
    return plan->bench.zero_fret && is_low(plan, string);
}

bool plan_any_zero_fret(const sil_plan *plan, bool (*is)(const sil_plan *, int))
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (is(plan, i)) {
            return true;
        }
    }
    return false;
}

void plan_zero_fret(sil_plan *plan)
{
    const sil_board *board = &plan->bench.board;
    const sil_fit *fit = &plan->stages.fit[SIL_FRETS];
    sil_zero_fret *is = &plan->zero_fret;
    *is = (sil_zero_fret){SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN};
    if (!plan_any_zero_fret(plan, plan_zero_fret_low)) {
        return;
    }
    sil_fit bowed = *fit; /* by one more standard uncertainty of the relief */
    bowed.bend += plan->stages.relief_u / sil_relief(board, 1.0);
    for (int i = 0; i < board->strings; i++) {
        double over = sil_new_slot_over(&plan->bench, fit, i);
        if (sil_known(over) && !(over <= is->over)) { /* the first, or more */
            is->over = over;
            is->over_u = fabs(sil_new_slot_over(&plan->bench, &bowed, i) - over);
        }
    }
    is->height = plan->bench.crown - plan->stages.level_depth + is->over;
    is->height_u = sil_known(is->height)
                       ? hypot(is->over_u, sil_rectangular(plan->job->tools.caliper))
                       : SIL_UNKNOWN;
}
