/* SPDX-License-Identifier: MIT */
/* A saddle that was not worked does not change its height. */
#include "plan.h"

/* Two readings of the same that differ by more than this many standard uncertainties of their
 * difference do not agree. */
static const double coverage = 3.0;

double plan_jump(const sil_plan *before, const sil_plan *now)
{
    const sil_reading *was = sil_plan_reading(before), *is = sil_plan_reading(now);
    sil_saddle_remedy remedy = before->saddle.remedy;
    bool worked =
        (remedy != SIL_SADDLE_NONE && remedy != SIL_SADDLE_WAIT) || plan_asked_peaks(before);
    if (worked || !sil_working_in_slot(now->saddle.working)) {
        return SIL_UNKNOWN;
    }
    double u = hypot(sil_rectangular(before->bench.tools.caliper),
                     sil_rectangular(now->bench.tools.caliper));
    double treble = is->saddle_height_treble - was->saddle_height_treble;
    double bass = is->saddle_height_bass - was->saddle_height_bass;
    bool more = fabs(bass) > fabs(treble) || !sil_known(treble);
    double moved = more && sil_known(bass) ? bass : treble;
    return sil_above(fabs(moved), coverage * u) ? moved : SIL_UNKNOWN;
}
