/* SPDX-License-Identifier: MIT */
/* The steps, in the order in which they are done at the bench. */
#include "plan.h"

static void step(sil_plan *plan, bool when, sil_stage_name stage, sil_act act)
{
    if (when && plan->step_count < SIL_STEPS_MAX) {
        plan->steps[plan->step_count++] = (sil_step){stage, act};
    }
}

/* Whether a gap at fret 1 is missing; one on its fret may be put right without a figure. */
static bool any_first_unsettled(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (!plan_gap_read(plan, i) && !plan->stages.on_fret[i]) {
            return true;
        }
    }
    return false;
}

static bool any_action_unsettled(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (!(plan->bench.gaps.action[i] > 0.0)) {
            return true;
        }
    }
    return false;
}

/* Whether the crowns must be read: a nut slot waits for this, or may once its gap is read. */
static bool wants_crowns(const sil_plan *plan)
{
    const sil_reading *reading = sil_plan_reading(plan);
    bool unread = !reading || reading->crowns_read == SIL_CROWNS_NOT_READ;
    return sil_withheld_by(&plan->nut_withheld, SIL_CROWNS_UNREAD) ||
           (unread && (sil_withheld_by(&plan->nut_withheld, SIL_RELIEF_UNKNOWN) ||
                       any_first_unsettled(plan)));
}

/* Steps for readings that the plan needs, and for readings that the bench should take anyway. */
static void order_readings(sil_plan *plan)
{
    const sil_withheld *withheld = &plan->nut_withheld;
    step(plan, sil_withheld_by(withheld, SIL_READINGS_DISAGREE), SIL_NOW, SIL_ACT_READ_GAPS_AGAIN);
    step(plan, plan_any_odd(plan) || plan_any_impossible(plan), SIL_NOW, SIL_ACT_READ_ODD);
    step(plan, plan_rod_unknown(plan), SIL_ROD, SIL_ACT_FIND_ROD);
    bool wide = plan->bench.relief.tap == SIL_TAP_WIDE;
    step(plan, wide && plan->bench.rod_works, SIL_ROD, SIL_ACT_ROD_BY_EAR);
    step(plan, sil_withheld_by(withheld, SIL_RELIEF_UNKNOWN) && !plan->bench.fresh.relief_stands,
         SIL_NOW, SIL_ACT_MEASURE_RELIEF);
    step(plan, sil_withheld_by(withheld, SIL_BACK_BOW), SIL_NOW, SIL_ACT_STRAIGHTEDGE);
    step(plan, wants_crowns(plan), SIL_NOW, SIL_ACT_READ_CROWNS);
    bool strung = !plan_makes(plan); /* what needs the strings is read when the part is made */
    step(plan, strung && any_first_unsettled(plan), SIL_NOW, SIL_ACT_MEASURE_FIRST);
    step(plan, plan_saddle_loose(plan), SIL_NOW, SIL_ACT_FIT_SADDLE);
    step(plan, strung && any_action_unsettled(plan), SIL_NOW, SIL_ACT_MEASURE_ACTION);
}

/* A saddle that stands in a slot may lean or rock there. Nobody has said that it does not, and it is
 * about to be cut or raised. */
static bool wants_saddle_seen(const sil_plan *plan)
{
    const sil_reading *reading = sil_plan_reading(plan);
    sil_saddle_remedy remedy = plan->saddle.remedy;
    return reading && reading->condition.saddle == SIL_SOUNDNESS_NOT_GIVEN &&
           plan->saddle.working == SIL_WORKING_BASE && !plan->bench.fresh.saddle &&
           remedy != SIL_SADDLE_NONE && remedy != SIL_SADDLE_WAIT;
}

/* Steps to measure what the cuts need: the fret height, without which no stack of feelers can be
 * given, and the saddle, without which it is not known how far it will be above the bridge or what
 * the caliper should read. */
static void order_measures(sil_plan *plan)
{
    sil_nut_remedy nut = plan->nut.remedy;
    bool works_nut = (nut != SIL_NUT_NONE && nut != SIL_NUT_WAIT) ||
                     plan_any_zero_fret(plan, plan_zero_fret_low);
    step(plan, works_nut && !sil_known(plan->bench.crown), SIL_NOW, SIL_ACT_MEASURE_CROWN);
    step(plan, wants_saddle_seen(plan), SIL_NOW, SIL_ACT_LOOK_AT_SADDLE);
    bool blind = sil_withheld_by(&plan->saddle_withheld, SIL_SADDLE_UNREAD);
    bool disagree = plan->saddle.present_disagree && sil_working_in_slot(plan->saddle.working);
    bool moved = sil_withheld_by(&plan->saddle_withheld, SIL_SADDLE_MOVED);
    step(plan, blind || disagree || moved, SIL_NOW, SIL_ACT_MEASURE_SADDLE);
}

static void order_frets(sil_plan *plan)
{
    static const sil_act acts[] = {[SIL_FRETS_SEAT] = SIL_ACT_SEAT_FRETS,
                                   [SIL_FRETS_LEVEL] = SIL_ACT_LEVEL_FRETS,
                                   [SIL_FRETS_NEW] = SIL_ACT_NEW_FRETS};
    sil_fretwork work = plan->stages.fretwork;
    step(plan, work != SIL_FRETS_LEAVE, SIL_FRETS, acts[work]);
}

/* A pass is held back where a string would buzz under the pick. */
static bool goes(double pass, double hold)
{
    return pass >= 0.01 || !sil_known(hold);
}

static bool any_held(const double *hold, int count)
{
    for (int i = 0; i < count; i++) {
        if (sil_known(hold[i])) {
            return true;
        }
    }
    return false;
}

/* Whether it is to be chosen what gives way, a target or the pick, before anything is cut. */
static bool wants_choice(const sil_plan *plan)
{
    for (int k = 0; k < plan->finding_count; k++) {
        if (plan->findings[k].code == SIL_ATTACK && plan->findings[k].level == SIL_LEVEL_ACT) {
            return true;
        }
    }
    return false;
}

static void order_nut(sil_plan *plan)
{
    sil_nut_remedy remedy = plan->nut.remedy;
    bool files = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        files = files || (plan->nut.verdict[i] == SIL_TAKE &&
                          goes(plan->nut.first_pass[i], plan->stages.slot_hold[i]));
    }
    bool reads_first = sil_withheld_by(&plan->nut_withheld, SIL_CROWNS_UNREAD);
    bool high = plan_any_zero_fret(plan, plan_zero_fret_high),
         low = plan_any_zero_fret(plan, plan_zero_fret_low);
    step(plan, high && !reads_first, SIL_NUT, SIL_ACT_ZERO_FRET);
    step(plan, low && !reads_first, SIL_NUT, SIL_ACT_RAISE_ZERO_FRET);
    plan_order_new_nut(plan);
    step(plan, remedy == SIL_NUT_SHIM, SIL_NUT, SIL_ACT_SHIM_NUT);
    step(plan, remedy == SIL_NUT_FILL, SIL_NUT, SIL_ACT_FILL_SLOT);
    step(plan, files && remedy != SIL_NUT_REPLACE, SIL_NUT, SIL_ACT_FILE_SLOTS);
}

/* After the saddle: strings are moved along once they have their height. */
static void order_tuning(sil_plan *plan)
{
    sil_tune_remedy remedy = plan->tuning.remedy;
    step(plan, remedy == SIL_TUNE_SCREWS, SIL_TUNE, SIL_ACT_TUNE_SCREWS);
    step(plan, remedy == SIL_TUNE_ENDS, SIL_TUNE, SIL_ACT_TUNE_ENDS);
    step(plan, remedy == SIL_TUNE_PEAKS, SIL_TUNE, SIL_ACT_FILE_PEAKS);
    step(plan, remedy == SIL_TUNE_REPLACE, SIL_TUNE, SIL_ACT_TUNED_SADDLE);
}

static void order_saddle(sil_plan *plan)
{
    const sil_saddle_work *work = &plan->saddle;
    sil_saddle_remedy remedy = work->remedy;
    bool dresses = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        dresses = dresses ||
                  (sil_dressed_off(plan, i) > 0.0 && goes(work->dress_first[i], work->hold[i]));
    }
    step(plan, remedy == SIL_SADDLE_REPLACE && !plan->bench.fresh.saddle, SIL_SADDLE,
         SIL_ACT_NEW_SADDLE);
    plan_order_new_saddle(plan);
    step(plan, remedy == SIL_SADDLE_SHIM, SIL_SADDLE, SIL_ACT_SHIM_SADDLE);
    step(plan, remedy == SIL_SADDLE_SCREW, SIL_SADDLE,
         work->posts ? SIL_ACT_TURN_POSTS : SIL_ACT_TURN_SCREWS);
    step(plan, plan_curve_off(plan), SIL_SADDLE, SIL_ACT_BRIDGE_CURVE);
    bool held = any_held(work->hold, plan->job->string_count) &&
                !plan_takes_anything(plan, work->cut_first);
    step(plan, work->bottom && plan_takes_anything(plan, work->cut) && !held, SIL_SADDLE,
         SIL_ACT_SAND_SADDLE);
    step(plan, dresses, SIL_SADDLE, SIL_ACT_DRESS_SADDLE);
    step(plan, plan_sinks_too_low(plan), SIL_SADDLE, SIL_ACT_NECK_ANGLE);
    bool shims = sil_known(plan->neck.shim);
    step(plan, shims, SIL_SADDLE, SIL_ACT_NECK_SHIM);
    step(plan, !shims && sil_known(plan->neck.heel), SIL_SADDLE, SIL_ACT_NECK_RESET);
}

/* Whether every reading is given and in its range, or is a relief that is left as it is, and nothing
 * needs to be put right. A buzz that is still heard then has a cause outside the set-up, so the set-up
 * is done. */
static bool all_done(const sil_plan *plan)
{
    if (plan->reading < 0 || !sil_known(plan->stages.fit[SIL_NOW].bend) ||
        any_first_unsettled(plan) || any_action_unsettled(plan)) {
        return false;
    }
    for (int k = 0; k < plan->finding_count; k++) {
        sil_code code = plan->findings[k].code;
        if (plan->findings[k].level >= SIL_LEVEL_ACT || code == SIL_TOOL_COARSE) {
            return false;
        }
    }
    sil_tune_remedy tune = plan->tuning.remedy;
    return plan->nut.remedy == SIL_NUT_NONE && plan->saddle.remedy == SIL_SADDLE_NONE &&
           (tune == SIL_TUNE_NONE || tune == SIL_TUNE_NOTE);
}

static void order(sil_plan *plan)
{
    if (plan_stopped(plan)) {
        step(plan, true, SIL_NOW, SIL_ACT_STOP);
        step(plan, true, SIL_NOW, SIL_ACT_READ_AGAIN);
        return;
    }
    step(plan, true, SIL_NOW, SIL_ACT_PREPARE);
    order_readings(plan);
    if (plan_relief_at_nought(plan)) {
        return; /* not even the rod is turned before it is known whether the neck is straight or
                   back-bowed */
    }
    step(plan, plan_bowed_for_good(plan), SIL_ROD, SIL_ACT_NECK_BOW);
    step(plan, plan_rod_first(plan) && !plan_bowed_for_good(plan), SIL_ROD, SIL_ACT_ROD_FIRST);
    step(plan, plan_back_bowed(plan), SIL_ROD, SIL_ACT_BACK_BOW);
    step(plan, plan->stages.changed[SIL_ROD], SIL_ROD, SIL_ACT_ROD);
    order_frets(plan);
    if (plan->stages.forecast[SIL_FRETS]) {
        step(plan, true, SIL_FRETS, SIL_ACT_READ_AGAIN);
        return;
    }
    order_measures(plan);
    step(plan, wants_choice(plan), SIL_NOW, SIL_ACT_CHOOSE);
    order_nut(plan);
    order_saddle(plan);
    order_tuning(plan);
    bool made = plan->nut.remedy == SIL_NUT_REPLACE || plan_makes_saddle(plan);
    step(plan, true, SIL_SADDLE, made ? SIL_ACT_READ_NEW : SIL_ACT_CHECK);
}

void plan_order(sil_plan *plan)
{
    order(plan);
    plan->done = all_done(plan);
}
