/* SPDX-License-Identifier: MIT */
/* What the plan of a visit asked for, which the next visit takes as done. */
#include "plan.h"

/* Whether that plan had work on rod and frets to do. It had none where all work was stopped, or
 * where it first had to be found out whether the neck is back-bowed. */
static bool went_on(const sil_plan *plan)
{
    return !plan_stopped(plan) && !plan_relief_at_nought(plan);
}

bool plan_asked_rod(const sil_plan *plan)
{
    return plan->stages.changed[SIL_ROD] && went_on(plan);
}

sil_fretwork plan_asked_frets(const sil_plan *plan)
{
    return went_on(plan) ? plan->stages.fretwork : SIL_FRETS_LEAVE;
}

bool plan_asked_neck(const sil_plan *plan)
{
    return plan_asked_rod(plan) || plan_asked_frets(plan) != SIL_FRETS_LEAVE;
}

bool plan_asked_slot(const sil_plan *plan, int string)
{
    sil_nut_remedy remedy = plan->nut.remedy;
    sil_verdict verdict = plan->nut.verdict[string];
    bool whole = remedy == SIL_NUT_SHIM || remedy == SIL_NUT_REPLACE;
    return whole || (remedy != SIL_NUT_WAIT && (verdict == SIL_TAKE || verdict == SIL_RAISE));
}

bool plan_asked_saddle(const sil_plan *plan, int string)
{
    const sil_saddle_work *work = &plan->saddle;
    sil_verdict verdict = work->verdict[string];
    if (plan_asked_peak(plan, string)) {
        return true;
    }
    if (work->remedy == SIL_SADDLE_NONE || work->remedy == SIL_SADDLE_WAIT) {
        return false;
    }
    bool own = (work->remedy == SIL_SADDLE_SCREW && !work->posts) ||
               (work->remedy == SIL_SADDLE_SAND && !work->bottom);
    return !own || verdict == SIL_TAKE || verdict == SIL_RAISE;
}

bool plan_any_worked(const sil_visit *v)
{
    for (int stage = SIL_ROD; stage < SIL_STAGES; stage++) {
        if (v->worked[stage]) {
            return true;
        }
    }
    return false;
}
