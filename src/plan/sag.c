/* SPDX-License-Identifier: MIT */
/* A bridge in one piece whose middle is lower than its ends. See docs/arithmetic.md, "The saddle". */
#include "plan.h"

/* A sag is at least this, mm, and this many of its strings' standard uncertainties (common practice,
 * no source). */
static const double least_sag = 0.15, sag_uncertainties = 4.0;

static bool in_one_piece(sil_working working)
{
    return sil_working_on_two(working) || working == SIL_WORKING_FEET;
}

/* How far a string's notch is under the straight line through those of the outer strings, its own way to
 * the target taken off, so that the board's arc and the targets are not in it. */
static double under_line(const sil_plan *plan, int i)
{
    const double *z = plan->bench.board.saddle_z, *lower = plan->stages.lower;
    int last = plan->job->string_count - 1;
    double share = (z[0] - z[i]) / (z[0] - z[last]);
    return lower[0] + (lower[last] - lower[0]) * share - lower[i];
}

double plan_sag(const sil_plan *plan, int string)
{
    int last = plan->job->string_count - 1;
    bool inner = string > 0 && string < last;
    if (!inner || plan->bench.fresh.saddle || !in_one_piece(plan->saddle.working)) {
        return SIL_UNKNOWN;
    }
    double sag = under_line(plan, string), u = plan->stages.lower_u[string];
    return sil_above(sag, fmax(least_sag, sag_uncertainties * u)) ? sag : SIL_UNKNOWN;
}

/* It is work to do where a string that sags is too low; otherwise it is told. A forecast is no fault. */
void plan_find_sag(sil_plan *plan)
{
    bool low = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        low = low || (sil_known(plan_sag(plan, i)) && plan->stages.action_side[i] == SIL_UNDER);
    }
    bool work = low && !plan->stages.forecast[SIL_FRETS];
    for (int i = 0; i < plan->job->string_count && !plan->bench.standing.saddle_odd; i++) {
        double sag = plan_sag(plan, i);
        if (sil_known(sag) && !plan->bench.standing.action_odd[i]) {
            plan_found_figure(plan, SIL_BRIDGE_SAG, work ? SIL_LEVEL_ACT : SIL_LEVEL_WATCH,
                              SIL_SADDLE, i, sag,
                              (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN});
        }
    }
}
