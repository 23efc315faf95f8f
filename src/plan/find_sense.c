/* SPDX-License-Identifier: MIT */
/* The findings about figures that no part can have. */
#include "plan.h"

static void find_part(sil_plan *plan, const sil_withheld *withheld, sil_stage_name stage,
                      const plan_sense *sense)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (sense[i].figure != PLAN_POSSIBLE && sil_withheld_by(withheld, SIL_IMPOSSIBLE)) {
            plan_found_figure(plan, SIL_IMPOSSIBLE, SIL_LEVEL_ACT, stage, i, sense[i].value,
                              (sil_band){sense[i].range.low, SIL_UNKNOWN, sense[i].range.high});
        }
    }
}

/* Strings that would lie on the frets once rod and frets are worked. */
static void find_under(sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        double action = sil_action(&plan->bench.board, &plan->stages.fit[SIL_FRETS], i, 12);
        if (plan_cannot_be(PLAN_ACTION, action)) {
            plan_found_figure(plan, SIL_UNDER_FRETS, SIL_LEVEL_WATCH, SIL_ROD, i, -action,
                              (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN});
        }
    }
}

/* What the visits before foretold of a string that would lie on the frets is no figure. */
static void forget_under(sil_plan *plan)
{
    for (int k = 0; k < plan->visit_count; k++) {
        for (int i = 0; i < plan->job->string_count; i++) {
            double *foretold = &plan->visits[k].predicted[i];
            *foretold = plan_cannot_be(PLAN_ACTION, *foretold) ? SIL_UNKNOWN : *foretold;
        }
    }
}

void plan_find_impossible(sil_plan *plan)
{
    forget_under(plan);
    find_part(plan, &plan->nut_withheld, SIL_NUT, plan->nut_sense);
    find_part(plan, &plan->saddle_withheld, SIL_SADDLE, plan->saddle_sense);
    find_under(plan);
}

bool plan_any_impossible(const sil_plan *plan)
{
    return sil_withheld_by(&plan->nut_withheld, SIL_IMPOSSIBLE) ||
           sil_withheld_by(&plan->saddle_withheld, SIL_IMPOSSIBLE);
}
