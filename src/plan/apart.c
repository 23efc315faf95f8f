/* SPDX-License-Identifier: MIT */
/* Readings of one gap at fret 1 that do not fit together. */
#include "plan.h"

double plan_over_others(const sil_plan *plan, const sil_fit *fit, double height, int i)
{
    const sil_board *board = &plan->bench.board;
    return height + sil_sag(board, fit->bend, board->nut_x[i]) + board->drop[i][0];
}

/* The largest difference between two ways to the gap at fret 1 that the errors of the tools can explain
 * together. The gap counts about twice, and relief, and action where the string is open, by their small
 * share at the first fret. */
static double explained_apart(const sil_tools *tools, bool open)
{
    return 2.2 * tools->first + 0.2 * ((open ? tools->action : 0.0) + tools->relief);
}

double plan_open_told(const sil_plan *plan, int string)
{
    const sil_gaps *gaps = &plan->bench.gaps;
    double open = gaps->first_open[string];
    if (gaps->first_held == SIL_HOLD_OPEN || !sil_known(open) || plan->bench.fresh.nut) {
        return SIL_UNKNOWN;
    }
    if (open == 0.0) {
        return 0.0; /* it lies on fret 1 already, so held down, too */
    }
    sil_gaps alone = *gaps;
    alone.first[string] = SIL_UNKNOWN;
    sil_fit fit = plan->stages.fit[SIL_NOW];
    sil_fit_read(&plan->bench.board, &alone, &fit);
    return sil_first_gap(&plan->bench.board, &fit, string, gaps->first_held);
}

bool plan_open_apart(const sil_plan *plan, int string)
{
    double held = plan->bench.gaps.first[string], told = plan_open_told(plan, string);
    double explained = explained_apart(&plan->bench.tools, true);
    /* A held gap read as 0 means that the string touches. */
    return held > 0.0 ? fabs(told - held) > explained : held == 0.0 && told > explained;
}

double plan_zero_fret_told(const sil_plan *plan, int string)
{
    const sil_bench *bench = &plan->bench;
    sil_fit fit = plan->stages.fit[SIL_NOW];
    double off = bench->zero_fret_off[string];
    if (!bench->zero_fret || off == 0.0) {
        return SIL_UNKNOWN;
    }
    fit.nut_height[string] = off - plan_over_others(plan, &fit, 0.0, string);
    return plan_first_over(plan, &fit, string, bench->targets.first_held);
}

bool plan_zero_fret_apart(const sil_plan *plan, int string)
{
    double apart = plan_zero_fret_told(plan, string) - sil_first_now(plan, string);
    return fabs(apart) > explained_apart(&plan->bench.tools, false);
}

bool plan_gaps_apart(const sil_plan *plan, int string)
{
    return plan_open_apart(plan, string) || plan_zero_fret_apart(plan, string);
}
