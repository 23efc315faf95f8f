/* SPDX-License-Identifier: MIT */
/* Where a cut is wanted and the tools allow no first pass: which reading would. */
#include "plan.h"

/* What tools of the trade read to, plus or minus, mm: feelers, a stepped or dial gauge, a dial
 * indicator. Common practice, no source. */
static const double readings[] = {0.05, 0.02, 0.01, 0.005};

static bool any_coarse(const sil_plan *plan, sil_stage_name stage)
{
    const sil_verdict *verdict = stage == SIL_NUT ? plan->nut.verdict : plan->saddle.verdict;
    const double *pass = stage == SIL_NUT ? plan->nut.first_pass : plan->saddle.first_pass;
    for (int i = 0; i < plan->job->string_count; i++) {
        if (verdict[i] == SIL_TAKE && pass[i] < 0.01) {
            return true;
        }
    }
    return stage == SIL_SADDLE && plan->saddle.bottom &&
           plan_takes_anything(plan, plan->saddle.cut) &&
           !plan_takes_anything(plan, plan->saddle.cut_first);
}

double plan_finer_tool(const sil_plan *plan, sil_stage_name stage)
{
    sil_job job = *plan->job;
    sil_plan finer;
    double *tool = stage == SIL_NUT ? &job.tools.first : &job.tools.action;
    double present = *tool;
    for (size_t k = 0; k < sizeof readings / sizeof *readings; k++) {
        *tool = readings[k];
        if (readings[k] >= present) {
            continue;
        }
        plan_work(&job, plan->reading, plan->bench.rod_ratio, plan->bench.rod_spread, &finer);
        if (!any_coarse(&finer, stage)) {
            return readings[k];
        }
    }
    return SIL_UNKNOWN;
}
