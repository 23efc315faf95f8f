/* SPDX-License-Identifier: MIT */
/* Adding a finding to a plan. */
#include "plan.h"

static const sil_finding nothing = {
    .string = -1, .fret = -1, .read = SIL_UNKNOWN, .low = SIL_UNKNOWN, .high = SIL_UNKNOWN};

sil_finding *plan_found(sil_plan *plan, sil_code code, sil_level level)
{
    /* SIL_FINDINGS_MAX is enough for every finding there can be. If there were ever more, the last
     * entry would be overwritten. */
    int at = plan->finding_count < SIL_FINDINGS_MAX ? plan->finding_count++ : SIL_FINDINGS_MAX - 1;
    plan->findings[at] = nothing;
    plan->findings[at].code = code;
    plan->findings[at].level = level;
    return &plan->findings[at];
}

void plan_found_figure(sil_plan *plan, sil_code code, sil_level level, sil_stage_name stage,
                       int string, double read, sil_band range)
{
    sil_finding *f = plan_found(plan, code, level);
    f->stage = stage;
    f->string = string;
    f->read = read;
    f->low = range.low;
    f->high = range.high;
}
