/* SPDX-License-Identifier: MIT */
/* Where a cut is needed but the tools are too coarse for a first pass: how closely to read. */
#include "plan.h"

/* How closely the usual tools read, plus or minus, mm: feelers, a stepped gauge, a dial gauge, a
 * dial indicator. Common practice, no source. */
static const double readings[] = {0.05, 0.02, 0.01, 0.005};

static bool any_coarse(const sil_plan *plan, sil_stage_name stage)
{
    const sil_verdict *verdict = stage == SIL_NUT ? plan->nut.verdict : plan->saddle.verdict;
    const double *pass = stage == SIL_NUT ? plan->nut.first_pass : plan->saddle.first_pass;
    const double *hold = stage == SIL_NUT ? plan->stages.slot_hold : plan->saddle.hold;
    bool held = false; /* so that it rings clean: no tool helps */
    for (int i = 0; i < plan->job->string_count; i++) {
        if (verdict[i] == SIL_TAKE && pass[i] < 0.01 && !sil_known(hold[i])) {
            return true;
        }
        held = held || sil_known(hold[i]);
    }
    return !held && stage == SIL_SADDLE && plan->saddle.bottom &&
           plan_takes_anything(plan, plan->saddle.cut) &&
           !plan_takes_anything(plan, plan->saddle.cut_first);
}

/* tried: memory to compute the plan in again, as if the reading had been taken with a finer tool.
 */
static double finer_tool(const sil_plan *plan, sil_stage_name stage, sil_plan *tried)
{
    tried->job = plan->job;
    tried->reading = plan->reading;
    tried->read = plan->read;
    double *tool = stage == SIL_NUT ? &tried->bench.tools.first : &tried->bench.tools.action;
    if (!any_coarse(plan, stage)) {
        return SIL_UNKNOWN;
    }
    for (size_t k = 0; k < sizeof readings / sizeof *readings; k++) {
        tried->bench = plan->bench;
        tried->saddle_jump = plan->saddle_jump;
        if (readings[k] >= *tool) {
            continue;
        }
        *tool = readings[k];
        plan_work(tried);
        if (!any_coarse(tried, stage)) {
            return readings[k];
        }
    }
    return SIL_UNKNOWN;
}

void plan_look_finer(sil_plan *plan, sil_plan *tried)
{
    plan->finer_first = finer_tool(plan, SIL_NUT, tried);
    plan->finer_action = finer_tool(plan, SIL_SADDLE, tried);
}

double plan_finer_tool(const sil_plan *plan, sil_stage_name stage)
{
    return stage == SIL_NUT ? plan->finer_first : plan->finer_action;
}
