/* SPDX-License-Identifier: MIT */
/* What a bridge on two posts leaves to its notches. */
#include "plan.h"

static double action_turned(const sil_plan *plan, int string)
{
    return sil_action(&plan->bench.board, &plan->stages.fit[SIL_SADDLE], string, 12);
}

sil_verdict plan_curve_at(const sil_plan *plan, int string)
{
    sil_side side = sil_side_of(action_turned(plan, string), plan->bench.targets.action[string],
                                plan->stages.action_u[string], plan->bench.standing.buzz[string]);
    if (!sil_working_on_two(plan->saddle.working) || plan->saddle.remedy == SIL_SADDLE_WAIT) {
        return SIL_LEAVE;
    }
    return side == SIL_OVER ? SIL_TAKE : side == SIL_UNDER ? SIL_RAISE : SIL_LEAVE;
}

double plan_curve_rise(const sil_plan *plan, int string)
{
    double aim = plan->bench.targets.action[string].aim;
    return plan_curve_at(plan, string) == SIL_LEAVE
               ? 0.0
               : (aim - action_turned(plan, string)) / sil_leverage(&plan->bench.board, string);
}

bool plan_curve_off(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan_curve_at(plan, i) != SIL_LEAVE) {
            return true;
        }
    }
    return false;
}

void plan_finish_curve(sil_plan *plan)
{
    plan->finished = plan->stages.fit[SIL_SADDLE];
    for (int i = 0; i < plan->job->string_count; i++) {
        plan->finished.saddle_height[i] += plan_curve_rise(plan, i);
    }
}
