/* SPDX-License-Identifier: MIT */
/* The findings about strings that are sharp or flat by the tuner. */
#include "plan.h"

static void found_cents(sil_plan *plan, sil_code code, sil_level level, int i, double cents)
{
    double within = plan->job->targets.cents;
    plan_found_figure(plan, code, level, SIL_TUNE, i, cents, (sil_band){-within, 0.0, within});
}

/* Whether something is asked to be done about it, now or when its turn comes. */
static bool is_work(sil_tune_remedy remedy)
{
    switch (remedy) {
    case SIL_TUNE_SCREWS:
    case SIL_TUNE_ENDS:
    case SIL_TUNE_PEAKS:
    case SIL_TUNE_REPLACE:
    case SIL_TUNE_WAIT:
        return true;
    case SIL_TUNE_NONE:
    case SIL_TUNE_NOTE:
        break;
    }
    return false;
}

/* What stays out when the work is done: a straight move of the bridge suits no string quite, and a
 * piece of bone is only so thick. */
static void find_left(sil_plan *plan)
{
    const sil_tuning *t = &plan->tuning;
    double within = plan->job->targets.cents, u = sil_rectangular(plan->job->tools.cents);
    for (int i = 0; i < plan->job->string_count; i++) {
        sil_side side = sil_side_of(t->left[i], (sil_band){-within, 0.0, within}, u, false);
        bool out = sil_side_out(side);
        if (t->remedy == SIL_TUNE_ENDS && out) {
            found_cents(plan, SIL_TUNE_LEFT, SIL_LEVEL_WATCH, i, t->left[i]);
        }
        if (sil_above(fabs(t->peak_short[i]), 0.0)) {
            plan_found_figure(plan, SIL_TUNE_SHORT, SIL_LEVEL_WATCH, SIL_TUNE, i,
                              fabs(t->peak_short[i]),
                              (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN});
        }
    }
}

void plan_find_tuning(sil_plan *plan)
{
    const sil_tuning *t = &plan->tuning;
    sil_level level = is_work(t->remedy) ? SIL_LEVEL_ACT : SIL_LEVEL_FINE;
    for (int i = 0; i < plan->job->string_count; i++) {
        if (t->out[i]) {
            found_cents(plan, SIL_TUNE_OUT, level, i, t->cents[i]);
        } else if (sil_side_edge(t->side[i])) {
            found_cents(plan, SIL_AT_EDGE, SIL_LEVEL_WATCH, i, t->cents[i]);
        }
    }
    find_left(plan);
    if (t->unused) {
        plan_found(plan, SIL_TUNE_UNUSED, SIL_LEVEL_FINE)->stage = SIL_TUNE;
    }
}
