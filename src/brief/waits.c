/* SPDX-License-Identifier: MIT */
/* Why a part waits. */
#include "within.h"

static bool any_unread(const sil_plan *plan, const double *gaps, const double *instead)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (!sil_known(gaps[i]) && !(instead && sil_known(instead[i]))) {
            return true;
        }
    }
    return false;
}

brief_missing brief_missing_of(const sil_plan *plan)
{
    const sil_gaps *gaps = &plan->bench.gaps;
    if (plan_makes(plan)) {
        return (brief_missing){"a reading is missing", "missing readings", NULL};
    }
    if (any_unread(plan, gaps->first, gaps->first_open)) {
        return (brief_missing){"the gap at the 1st fret is missing", "gaps at the 1st fret", NULL};
    }
    if (any_unread(plan, gaps->action, NULL)) {
        return (brief_missing){"the action is missing", "the action", NULL};
    }
    return (brief_missing){"a string lies on a fret, and that comes first", "a string on a fret",
                           "until no string lies on a fret"};
}

void brief_fill_whys(const sil_plan *plan, const sil_withheld *withheld, brief_stage *stage)
{
    for (int k = 0; k < withheld->count; k++) {
        stage->why[stage->whys++] = brief_waits(withheld->by[k]);
    }
    if (stage->whys == 0) {
        stage->why[stage->whys++] = brief_missing_of(plan).why;
    }
}
