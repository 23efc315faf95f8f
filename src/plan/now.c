/* SPDX-License-Identifier: MIT */
/* The present relief, gap at fret 1 and action, as they are shown. */
#include "plan.h"

double sil_relief_now(const sil_plan *plan)
{
    return plan->bench.fresh.relief_stands
               ? SIL_UNKNOWN
               : sil_relief(&plan->bench.board, plan->stages.fit[SIL_NOW].bend);
}

double sil_first_now(const sil_plan *plan, int string)
{
    const sil_gaps *gaps = &plan->bench.gaps;
    sil_hold hold = plan->bench.targets.first_held;
    double told = plan_first_over(plan, &plan->stages.fit[SIL_NOW], string, hold);
    if (plan->bench.fresh.saddle && !plan_gap_read(plan, string)) {
        return SIL_UNKNOWN; /* the height that it has is that of its target */
    }
    if (sil_known(told) || gaps->first_open[string] == 0.0) {
        return sil_known(told) ? told : 0.0; /* lying on fret 1 open, so held down, too */
    }
    return gaps->first_held == hold ? gaps->first[string] : SIL_UNKNOWN;
}

sil_band plan_first_range(const sil_plan *plan, const sil_fit *fit, int string)
{
    const sil_bench *bench = &plan->bench;
    sil_band range = bench->targets.first[string];
    double dent = sil_first_gap(&bench->board, fit, string, bench->targets.first_held) -
                  sil_slot_gap(bench, fit, string);
    if (dent > 0.0) {
        range = (sil_band){range.low + dent, range.aim + dent, range.high + dent};
    }
    return range;
}

double sil_action_now(const sil_plan *plan, int string)
{
    const sil_gaps *gaps = &plan->bench.gaps;
    double told = sil_action(&plan->bench.board, &plan->stages.fit[SIL_NOW], string, 12);
    bool follows = sil_known(told) || gaps->action_at != 12 || gaps->capo;
    double action = follows ? told + plan->off_line[string] : gaps->action[string];
    return action < 0.0 ? 0.0 : action;
}
