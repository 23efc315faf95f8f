/* SPDX-License-Identifier: MIT */
/* Which parts may not be cut today, and why. See docs/arithmetic.md, "What is withheld". */
#include "plan.h"

static void withhold(sil_withheld *withheld, bool when, sil_code code)
{
    if (when) {
        withheld->by[withheld->count++] = code;
    }
}

bool sil_withheld_by(const sil_withheld *withheld, sil_code code)
{
    for (int i = 0; i < withheld->count; i++) {
        if (withheld->by[i] == code) {
            return true;
        }
    }
    return false;
}

bool plan_relief_at_nought(const sil_plan *plan)
{
    const sil_relief_reading *relief = &plan->bench.relief;
    return sil_board_bends(&plan->bench.board) && relief->gap == 0.0 && !relief->straightedge;
}

static bool any_gaps_apart(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan_gaps_apart(plan, i)) {
            return true;
        }
    }
    return false;
}

bool plan_rod_unknown(const sil_plan *plan)
{
    sil_side side = plan->stages.relief_side;
    return plan->job->instrument.rod == SIL_ROD_NOT_GIVEN && sil_board_bends(&plan->bench.board) &&
           sil_side_out(side);
}

static bool climate_off(const sil_plan *plan)
{
    const sil_reading *reading = sil_plan_reading(plan);
    const sil_limits *limits = &plan->job->limits;
    return reading && (reading->humidity_pct < limits->humidity_low_pct ||
                       reading->humidity_pct > limits->humidity_high_pct);
}

/* The reasons that hold for both parts. */
static void withhold_all(const sil_plan *plan, sil_withheld *withheld)
{
    const sil_reading *reading = sil_plan_reading(plan);
    const sil_condition *condition = reading ? &reading->condition : &(sil_condition){0};
    const sil_stages *stages = &plan->stages;
    withhold(withheld, !sil_known(stages->fit[SIL_NOW].bend), SIL_RELIEF_UNKNOWN);
    withhold(withheld, plan_relief_at_nought(plan), SIL_BACK_BOW);
    withhold(withheld, any_gaps_apart(plan), SIL_READINGS_DISAGREE);
    withhold(withheld, plan->bench.standing.relief_odd || plan->bench.standing.crowns_odd,
             SIL_READING_ODD);
    withhold(withheld, plan_rod_unknown(plan), SIL_ROD_UNKNOWN);
    withhold(withheld, plan_bowed_for_good(plan), SIL_ROD_LIMIT);
    withhold(withheld, climate_off(plan), SIL_CLIMATE);
    withhold(withheld, condition->bridge == SIL_UNSOUND, SIL_BRIDGE_LIFTED);
    withhold(withheld, condition->braces == SIL_UNSOUND, SIL_BRACES_LOOSE);
    withhold(withheld, condition->tuned == SIL_UNSOUND && !plan_makes(plan), SIL_NOT_TUNED);
    withhold(withheld, stages->changed[SIL_ROD], SIL_FORECAST);
    withhold(withheld, stages->fretwork == SIL_FRETS_LEVEL, SIL_FRET_WORN);
    withhold(withheld, stages->fretwork == SIL_FRETS_NEW, SIL_CROWN_THIN);
}

bool plan_stopped(const sil_plan *plan)
{
    static const sil_code stops[] = {SIL_CLIMATE, SIL_BRIDGE_LIFTED, SIL_BRACES_LOOSE,
                                     SIL_NOT_TUNED};
    for (size_t i = 0; i < sizeof stops / sizeof *stops; i++) {
        bool aside = stops[i] == SIL_NOT_TUNED && plan_makes(plan);
        if (sil_withheld_by(&plan->nut_withheld, stops[i]) && !aside) {
            return true;
        }
    }
    return false;
}

bool plan_saddle_loose(const sil_plan *plan)
{
    const sil_reading *reading = sil_plan_reading(plan);
    return reading && reading->condition.saddle == SIL_UNSOUND && !plan->bench.fresh.saddle;
}

/* Where one part is made from a blank, the other is worked by what was read with strings on, and
 * at pitch. A saddle that is there waits for the new nut: its action is read over it. */
static void withhold_beside_new(sil_plan *plan)
{
    const sil_reading *reading = sil_plan_reading(plan);
    const sil_fresh *fresh = &plan->bench.fresh;
    bool slack = plan_makes(plan) && reading && reading->condition.tuned == SIL_UNSOUND;
    withhold(&plan->saddle_withheld, fresh->nut && !fresh->saddle, SIL_MAKE_NUT);
    withhold(&plan->saddle_withheld, fresh->relief_stands && !fresh->saddle, SIL_RELIEF_UNKNOWN);
    withhold(&plan->nut_withheld, slack && !fresh->nut, SIL_NOT_TUNED);
    withhold(&plan->nut_withheld, fresh->relief_stands && !fresh->nut, SIL_RELIEF_UNKNOWN);
}

/* Whether it is to be chosen what gives way, a target or the pick, before a part is made. */
static bool chosen_first(const sil_plan *plan, bool made, const double *hold)
{
    bool first = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        first = first || sil_known(hold[i]);
    }
    return made && first;
}

static bool files_a_slot(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan->stages.nut[i] == SIL_TAKE) {
            return true;
        }
    }
    return false;
}

static bool crowns_unread(const sil_plan *plan)
{
    const sil_reading *reading = sil_plan_reading(plan);
    return !reading || reading->crowns_read == SIL_CROWNS_NOT_READ;
}

/* How far the way to the target is past what the saddle has. On two posts, how far each post goes
 * down is what counts; otherwise how far the string does. */
static double short_by(const sil_plan *plan, int i)
{
    const sil_saddle_work *work = &plan->saddle;
    if (plan->stages.saddle[i] != SIL_TAKE) {
        return SIL_UNKNOWN;
    }
    if (plan->bench.fresh.saddle) {
        return plan->job->limits.least_protrusion - work->protrusion[i];
    }
    return work->posts ? fmax(work->post[0], work->post[1]) - plan->job->saddle.travel
                       : plan->stages.lower[i] - work->room[i];
}

/* Whether a string could not even be lowered to the high edge of its range. */
static bool is_stopped(sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        plan->neck.short_by[i] = short_by(plan, i);
    }
    return plan->saddle.stops;
}

/* Whether something is to come off a saddle that stands in a slot. */
static bool would_cut(const sil_plan *plan)
{
    return plan_would_lower(plan) && sil_working_in_slot(plan->saddle.working);
}

/* Whether the saddle is to be worked at all: lowered, raised, or only its peaks filed. */
static bool would_work(const sil_plan *plan)
{
    if (plan_files_at_height(plan)) {
        return true;
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan->stages.saddle[i] == SIL_TAKE || plan->stages.saddle[i] == SIL_RAISE) {
            return true;
        }
    }
    return false;
}

/* A saddle loses nothing while it is not known how far it stands out of the bridge: not off its bottom,
 * not off its top, and not where a peak is filed to another place. Of one made from a blank it is its
 * height that must be known. */
static void withhold_blind(sil_plan *plan)
{
    sil_withheld *withheld = &plan->saddle_withheld;
    bool unread = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        unread = unread || !sil_known(plan->saddle.stands[i]);
    }
    if (!would_cut(plan) && !plan_files_at_height(plan)) {
        return;
    }
    bool disagree = plan->saddle.present_disagree;
    withhold(withheld, disagree && !sil_withheld_by(withheld, SIL_READINGS_DISAGREE),
             SIL_READINGS_DISAGREE);
    withhold(withheld, unread && !disagree && !plan->bench.fresh.saddle, SIL_SADDLE_UNREAD);
}

bool plan_sinks_too_low(const sil_plan *plan)
{
    const sil_withheld *withheld = &plan->saddle_withheld;
    return withheld->count == 1 &&
           (withheld->by[0] == SIL_PROTRUSION_LOW || withheld->by[0] == SIL_ADJUST_LIMIT);
}

/* Whether one part carries all strings and the action of one must be read again, or the gap that its
 * slot would be worked by, or the saddle's own heights. On screws of their own only that string
 * waits, by its verdict. */
static bool saddle_odd(const sil_plan *plan)
{
    const sil_standing *standing = &plan->bench.standing;
    bool odd = standing->saddle_odd;
    bool single = plan->saddle.working != SIL_WORKING_SCREWS && !standing->action_order;
    for (int i = 0; i < plan->job->string_count; i++) {
        odd = odd || (single && (standing->action_odd[i] || standing->first_odd[i]));
    }
    return odd && !sil_withheld_by(&plan->saddle_withheld, SIL_READING_ODD);
}

/* One odd gap holds its slot alone. Where several are, it is no single slip, and nobody knows by
 * which of them the rest would be judged. */
static bool slots_odd(const sil_plan *plan)
{
    int odd = 0;
    for (int i = 0; i < plan->job->string_count; i++) {
        odd += plan->bench.standing.first_odd[i];
    }
    return odd > 1 && !plan->bench.standing.first_order &&
           !sil_withheld_by(&plan->nut_withheld, SIL_READING_ODD);
}

/* A part of which a figure comes out as no part can be. Where a reading is odd it is that reading. */
static void withhold_impossible(sil_withheld *withheld, bool impossible)
{
    bool odd =
        sil_withheld_by(withheld, SIL_READING_ODD) || sil_withheld_by(withheld, SIL_READING_ORDER);
    withhold(withheld, impossible && !odd, SIL_IMPOSSIBLE);
}

/* Nothing is cut to a bow that is to be put right first: it would be too low once that is done. */
static void withhold_by_bow(sil_plan *plan)
{
    sil_withheld *nut = &plan->nut_withheld, *saddle = &plan->saddle_withheld;
    bool high = plan_any_zero_fret(plan, plan_zero_fret_high);
    bool files = (files_a_slot(plan) || high) && !plan->bench.fresh.nut;
    withhold(nut, plan_back_bowed(plan) && files && !sil_withheld_by(nut, SIL_ROD_LIMIT),
             SIL_ROD_LIMIT);
    withhold(saddle, plan_bow_holds_saddle(plan) && !sil_withheld_by(saddle, SIL_ROD_LIMIT),
             SIL_ROD_LIMIT);
}

void plan_withhold(sil_plan *plan)
{
    int strings = plan->job->string_count;
    withhold_all(plan, &plan->nut_withheld);
    plan->saddle_withheld = plan->nut_withheld;
    bool high = plan_any_zero_fret(plan, plan_zero_fret_high),
         low = plan_any_zero_fret(plan, plan_zero_fret_low);
    withhold_beside_new(plan);
    withhold(&plan->nut_withheld, chosen_first(plan, plan->bench.fresh.nut, plan->stages.slot_hold),
             SIL_ATTACK);
    withhold(&plan->saddle_withheld,
             chosen_first(plan, plan->bench.fresh.saddle, plan->saddle.hold), SIL_ATTACK);
    withhold(&plan->saddle_withheld, plan->bench.standing.action_order, SIL_READING_ORDER);
    withhold(&plan->nut_withheld, plan->bench.standing.first_order, SIL_READING_ORDER);
    withhold(&plan->saddle_withheld, saddle_odd(plan), SIL_READING_ODD);
    withhold(&plan->nut_withheld, slots_odd(plan), SIL_READING_ODD);
    withhold(&plan->nut_withheld, (files_a_slot(plan) || high || low) && crowns_unread(plan),
             SIL_CROWNS_UNREAD);
    withhold(&plan->saddle_withheld, plan_saddle_loose(plan), SIL_SADDLE_LOOSE);
    withhold(&plan->saddle_withheld, high, SIL_ZERO_FRET_HIGH);
    withhold(&plan->saddle_withheld, low, SIL_ZERO_FRET_LOW);
    bool stopped = is_stopped(plan), nut = false, saddle = false;
    plan_look_for_sense(plan, &nut, &saddle);
    withhold(&plan->saddle_withheld, stopped && !saddle,
             sil_working_in_slot(plan->saddle.working) ? SIL_PROTRUSION_LOW : SIL_ADJUST_LIMIT);
    withhold_by_bow(plan);
    withhold_blind(plan);
    withhold(&plan->saddle_withheld, plan_peaks_first(plan), SIL_TUNE_OUT);
    bool kept = !plan->bench.fresh.saddle; /* one that is made anew may have moved */
    withhold(&plan->saddle_withheld, kept && sil_known(plan->saddle_jump) && would_work(plan),
             SIL_SADDLE_MOVED);
    withhold(&plan->saddle_withheld, kept && plan->season && would_cut(plan), SIL_MOVED);
    withhold_impossible(&plan->nut_withheld, nut);
    withhold_impossible(&plan->saddle_withheld, saddle);
    plan_forget_impossible(plan);
    bool *forecast = plan->stages.forecast;
    if (plan->nut_withheld.count > 0) {
        sil_nut_await(strings, &plan->nut);
        forecast[SIL_NUT] = forecast[SIL_SADDLE] = true;
    }
    if (plan->saddle_withheld.count > 0) {
        sil_saddle_await(strings, &plan->saddle);
        forecast[SIL_SADDLE] = true;
    }
}
