/* SPDX-License-Identifier: MIT */
/* The findings that follow from readings, each with the figure that caused it. */
#include "plan.h"

static void find_condition(sil_plan *plan)
{
    static const sil_code codes[] = {SIL_BRIDGE_LIFTED, SIL_BRACES_LOOSE, SIL_NOT_TUNED};
    for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
        bool aside =
            codes[i] == SIL_NOT_TUNED && plan_makes(plan); /* the strings may well be off */
        if (sil_withheld_by(&plan->nut_withheld, codes[i]) && !aside) {
            plan_found(plan, codes[i], SIL_LEVEL_STOP);
        }
    }
    if (sil_withheld_by(&plan->nut_withheld, SIL_CLIMATE)) {
        sil_finding *f = plan_found(plan, SIL_CLIMATE, SIL_LEVEL_STOP);
        f->read = sil_plan_reading(plan)->humidity_pct;
        f->low = plan->job->limits.humidity_low_pct;
        f->high = plan->job->limits.humidity_high_pct;
    }
}

static void find_fit(sil_plan *plan)
{
    if (plan_saddle_loose(plan)) {
        plan_found(plan, SIL_SADDLE_LOOSE, SIL_LEVEL_ACT)->stage = SIL_SADDLE;
    }
}

static void find_relief(sil_plan *plan)
{
    double relief = sil_relief_now(plan);
    sil_band wanted = plan->bench.targets.relief;
    if (!sil_board_bends(&plan->bench.board) || plan->bench.fresh.relief_stands) {
        return;
    }
    if (!sil_known(relief)) {
        plan_found(plan, SIL_RELIEF_UNKNOWN, SIL_LEVEL_ACT);
        if (plan->bench.relief.tap == SIL_TAP_WIDE) {
            plan_found_figure(plan, SIL_RELIEF_HIGH, SIL_LEVEL_ACT, SIL_ROD, -1, SIL_UNKNOWN,
                              wanted);
            plan->findings[plan->finding_count - 1].fret = plan->bench.relief.over;
        }
        return;
    }
    bool turns = plan->bench.rod_works, first = plan_rod_first(plan) || plan_back_bowed(plan);
    sil_code codes[] = {SIL_BACK_BOW, SIL_RELIEF_LOW, SIL_RELIEF_HIGH, SIL_ROD_LIMIT};
    bool low = plan->stages.relief_side == SIL_UNDER;
    bool high = plan->stages.relief_side == SIL_OVER;
    bool raised[] = {plan->bench.relief.gap < 0.0 || plan_relief_at_nought(plan), low, high,
                     (low || high) && !turns && !plan_rod_unknown(plan)};
    if (plan_rod_unknown(plan)) {
        plan_found(plan, SIL_ROD_UNKNOWN, SIL_LEVEL_ACT)->stage = SIL_ROD;
    }
    for (int i = 0; i < 4; i++) {
        if (raised[i]) {
            bool work = codes[i] == SIL_BACK_BOW || turns || first;
            sil_level level = work ? SIL_LEVEL_ACT : SIL_LEVEL_WATCH;
            level = codes[i] == SIL_ROD_LIMIT && plan_bowed_for_good(plan) ? SIL_LEVEL_STOP : level;
            sil_finding *f = plan_found(plan, codes[i], level);
            f->stage = SIL_ROD;
            f->fret = plan->bench.relief.over;
            f->read = codes[i] == SIL_BACK_BOW ? plan->bench.relief.gap : relief;
            f->low = wanted.low;
            f->high = wanted.high;
        }
    }
    if (plan->bench.straighten) {
        plan_found_figure(plan, SIL_RELIEF_FIRST, SIL_LEVEL_ACT, SIL_ROD, -1, relief, wanted);
        plan->findings[plan->finding_count - 1].fret = plan->bench.relief.over;
    } else if (sil_side_edge(plan->stages.relief_side)) {
        plan_found_figure(plan, SIL_AT_EDGE, SIL_LEVEL_WATCH, SIL_ROD, -1, relief, wanted);
        plan->findings[plan->finding_count - 1].fret = plan->bench.relief.over;
    }
}

/* Finds the worst crown of a fret in one direction. There is one finding for a fret, at the string
 * where it is worst. */
static void find_crowns_at(sil_plan *plan, int fret, double sign, sil_code code)
{
    double limit = plan->bench.wear_limit;
    double worst = limit;
    int string = -1;
    for (int i = 0; i < plan->job->string_count; i++) {
        double off = sign * plan->bench.crowns.off[i][fret];
        if (sil_above(off, limit) && off > worst) {
            worst = off;
            string = i;
        }
    }
    if (string >= 0) {
        sil_finding *f = plan_found(plan, code, SIL_LEVEL_ACT);
        f->stage = SIL_FRETS;
        f->string = string;
        f->fret = fret;
        f->read = worst;
        f->high = limit;
    }
}

static double deepest_dent(const sil_plan *plan)
{
    double deepest = 0.0;
    for (int i = 0; i < plan->job->string_count; i++) {
        for (int n = 1; n <= plan->bench.board.frets; n++) {
            deepest = fmax(deepest, -plan->bench.crowns.off[i][n]);
        }
    }
    return deepest;
}

static void find_frets(sil_plan *plan)
{
    for (int n = 1; n <= plan->bench.board.frets; n++) {
        find_crowns_at(plan, n, -1.0, SIL_FRET_WORN);
        find_crowns_at(plan, n, 1.0, SIL_FRET_HIGH);
    }
    if (plan->stages.fretwork == SIL_FRETS_NEW) {
        sil_finding *f = plan_found(plan, SIL_CROWN_THIN, SIL_LEVEL_ACT);
        f->stage = SIL_FRETS;
        f->read = plan->bench.crown - deepest_dent(plan);
        f->low = plan->bench.least_crown;
    }
    const sil_reading *reading = sil_plan_reading(plan);
    if (reading && reading->crowns_read == SIL_CROWNS_NOT_READ) {
        bool held_up = sil_withheld_by(&plan->nut_withheld, SIL_CROWNS_UNREAD);
        plan_found(plan, SIL_CROWNS_UNREAD, held_up ? SIL_LEVEL_ACT : SIL_LEVEL_WATCH)->stage =
            SIL_FRETS;
    }
}

/* A height that follows from work after which everything is measured again is only a forecast, so
 * it is not a fault. */
static sil_level height_level(const sil_plan *plan)
{
    return plan->stages.forecast[SIL_FRETS] ? SIL_LEVEL_WATCH : SIL_LEVEL_ACT;
}

static void find_slots(sil_plan *plan)
{
    const sil_gaps *gaps = &plan->bench.gaps;
    for (int i = 0; i < plan->job->string_count && !plan->bench.fresh.nut; i++) {
        sil_verdict verdict = plan->stages.nut[i];
        const sil_fit *fit = &plan->stages.fit[SIL_FRETS];
        sil_band range = plan_first_range(plan, fit, i);
        double read = plan_first_over(plan, fit, i, plan->bench.targets.first_held);
        bool zero = plan->bench.zero_fret;
        if (plan_gaps_apart(plan, i)) {
            continue; /* which of the two is right is not known */
        }
        if (plan_zero_fret_low(plan, i)) {
            plan_found_figure(plan, SIL_ZERO_FRET_LOW, height_level(plan), SIL_NUT, i,
                              plan->stages.on_fret[i] ? 0.0 : read, range);
        } else if (sil_first_read(gaps, i) == 0.0) { /* it touches: no figure, but a finding */
            plan_found_figure(plan, zero ? SIL_ZERO_FRET_LOW : SIL_SLOT_LOW,
                              zero ? SIL_LEVEL_WATCH : SIL_LEVEL_ACT, SIL_NUT, i, 0.0, range);
        } else if (plan_zero_fret_high(plan, i)) {
            plan_found_figure(plan, SIL_ZERO_FRET_HIGH, height_level(plan), SIL_NUT, i, read,
                              range);
        } else if ((verdict == SIL_TAKE && !plan->stages.finish_slot[i]) || verdict == SIL_RAISE) {
            plan_found_figure(plan, verdict == SIL_TAKE ? SIL_SLOT_HIGH : SIL_SLOT_LOW,
                              height_level(plan), SIL_NUT, i, read, range);
        } else if (gaps->first_tap[i] == SIL_TAP_WIDE && !sil_known(gaps->first_open[i])) {
            plan_found_figure(plan, SIL_SLOT_HIGH, SIL_LEVEL_ACT, SIL_NUT, i, SIL_UNKNOWN, range);
        } else if (verdict == SIL_LEAVE && sil_side_edge(plan->stages.first_side[i])) {
            plan_found_figure(plan, SIL_AT_EDGE, SIL_LEVEL_WATCH, SIL_NUT, i, read, range);
        }
    }
}

static void find_saddle(sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count && !plan->bench.fresh.saddle; i++) {
        sil_verdict verdict = plan->stages.saddle[i];
        sil_band range = plan->bench.targets.action[i];
        double read = plan_action_over(plan, &plan->stages.fit[SIL_NUT], i) + plan->off_line[i];
        if (plan->bench.gaps.action[i] == 0.0) {
            plan_found_figure(plan, SIL_SADDLE_LOW, SIL_LEVEL_ACT, SIL_SADDLE, i, 0.0, range);
        } else if ((verdict == SIL_TAKE || verdict == SIL_RAISE) && sil_known(read) &&
                   sil_side_out(plan->stages.action_side[i])) {
            plan_found_figure(plan, verdict == SIL_TAKE ? SIL_SADDLE_HIGH : SIL_SADDLE_LOW,
                              height_level(plan), SIL_SADDLE, i, read, range);
        } else if (verdict == SIL_LEAVE && sil_side_edge(plan->stages.action_side[i])) {
            plan_found_figure(plan, SIL_AT_EDGE, SIL_LEVEL_WATCH, SIL_SADDLE, i, read, range);
        }
    }
}

/* Compares one figure of the saddle with its limits, and adds a finding for every string past them.
 */
static void find_bound(sil_plan *plan, sil_code code, const double *values, double low, double high)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (sil_below(values[i], low) || sil_above(values[i], high)) {
            bool stops = code == SIL_PROTRUSION_LOW && plan_sinks_too_low(plan);
            plan_found_figure(plan, code, stops ? SIL_LEVEL_STOP : SIL_LEVEL_WATCH, SIL_SADDLE, i,
                              values[i], (sil_band){low, low, high});
        }
    }
}

/* Screws, posts or thumbwheels that reach the end of their travel before the target action. */
static void find_end_of_travel(sil_plan *plan)
{
    const sil_job *job = plan->job;
    bool stops = plan->saddle.stops && !sil_working_in_slot(plan->saddle.working);
    for (int i = 0; i < job->string_count && stops; i++) {
        double over = plan->neck.short_by[i];
        if (sil_above(over, 0.0)) {
            plan_found_figure(plan, SIL_ADJUST_LIMIT,
                              plan_sinks_too_low(plan) ? SIL_LEVEL_STOP : SIL_LEVEL_WATCH,
                              SIL_SADDLE, i, job->saddle.travel + over,
                              (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, job->saddle.travel});
        }
    }
}

/* Strings that stop above their targets. Each is given with the action it goes to, and its target. */
static void find_short_of_aim(sil_plan *plan)
{
    const sil_board *board = &plan->bench.board;
    for (int i = 0; i < plan->job->string_count && plan->saddle_withheld.count == 0; i++) {
        double aim = plan->bench.targets.action[i].aim;
        if (plan->saddle.aim_short[i]) {
            plan_found_figure(plan, SIL_AIM_SHORT, SIL_LEVEL_WATCH, SIL_SADDLE, i,
                              sil_action(board, &plan->stages.fit[SIL_SADDLE], i, 12),
                              (sil_band){aim, aim, aim});
        }
    }
}

static void find_choice(sil_plan *plan, sil_stage_name part, sil_band range, int i)
{
    double clean = plan_choice(plan, part, i);
    if (sil_known(clean)) {
        plan_found_figure(plan, SIL_ATTACK, SIL_LEVEL_ACT, part, i, clean, range);
    }
}

/* Strings that end above their targets so as to ring clean under the pick, and those that could not do
 * so in their range. Each is given with where it rings clean, and its range. */
static void find_buzz_ahead(sil_plan *plan)
{
    const sil_stages *stages = &plan->stages;
    for (int i = 0; i < plan->job->string_count; i++) {
        sil_band range = plan->bench.targets.first[i];
        bool taken = plan->nut.verdict[i] == SIL_TAKE && plan->nut_withheld.count == 0;
        if (taken && stages->nut_raised[i] > 0.0) {
            plan_found_figure(plan, SIL_AIM_RAISED, SIL_LEVEL_WATCH, SIL_NUT, i,
                              stages->slot_clean[i], (sil_band){range.aim, range.aim, range.aim});
        }
        find_choice(plan, SIL_NUT, range, i);
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        sil_band range = plan->bench.targets.action[i];
        bool taken = plan->saddle.verdict[i] == SIL_TAKE && plan->saddle_withheld.count == 0;
        if (taken && plan->saddle.aim_raised[i]) {
            plan_found_figure(plan, SIL_AIM_RAISED, SIL_LEVEL_WATCH, SIL_SADDLE, i,
                              plan->saddle.clean[i], (sil_band){range.aim, range.aim, range.aim});
        }
        find_choice(plan, SIL_SADDLE, range, i);
    }
}

/* Why the saddle cannot come down far enough, the likeliest first. */
static void find_stopped(sil_plan *plan)
{
    sil_short_cause cause = plan->neck.cause;
    if (cause == SIL_SHORT_RELIEF || cause == SIL_SHORT_BOTH) {
        sil_finding *f = plan_found(plan, SIL_SHORT_BY_BOW, SIL_LEVEL_STOP);
        f->stage = SIL_SADDLE;
        f->read = plan->neck.explains;
    }
    if (cause == SIL_SHORT_BRIDGE) {
        plan_found(plan, SIL_SHORT_BY_BRIDGE, SIL_LEVEL_STOP)->stage = SIL_SADDLE;
    }
    if (cause == SIL_SHORT_ANGLE || cause == SIL_SHORT_BOTH) {
        plan_found(plan, SIL_NECK_ANGLE, SIL_LEVEL_STOP)->stage = SIL_SADDLE;
    }
}

static void find_seat(sil_plan *plan)
{
    const sil_saddle_work *work = &plan->saddle;
    const sil_limits *limits = &plan->job->limits;
    find_bound(plan, SIL_PROTRUSION_LOW, work->protrusion, limits->least_protrusion, SIL_UNKNOWN);
    find_bound(plan, SIL_PROTRUSION_HIGH, work->protrusion, SIL_UNKNOWN, limits->most_protrusion);
    find_bound(plan, SIL_SEAT_SHALLOW, work->in_slot, limits->least_in_slot, SIL_UNKNOWN);
    find_bound(plan, SIL_BREAK_ANGLE_LOW, work->break_angle_deg, limits->least_break_deg,
               SIL_UNKNOWN);
    find_end_of_travel(plan);
    find_short_of_aim(plan);
    find_buzz_ahead(plan);
    find_stopped(plan);
    if (sil_withheld_by(&plan->saddle_withheld, SIL_SADDLE_UNREAD)) {
        plan_found(plan, SIL_SADDLE_UNREAD, SIL_LEVEL_ACT)->stage = SIL_SADDLE;
    }
    if (sil_withheld_by(&plan->saddle_withheld, SIL_SADDLE_MOVED)) {
        sil_finding *f = plan_found(plan, SIL_SADDLE_MOVED, SIL_LEVEL_ACT);
        f->stage = SIL_SADDLE;
        f->read = plan->saddle_jump;
    }
    if (work->present_disagree) {
        sil_finding *f = plan_found(plan, SIL_READINGS_DISAGREE, SIL_LEVEL_ACT);
        f->stage = SIL_SADDLE;
        f->read = work->stands_apart.out[0];
        f->high = work->stands_apart.out[1];
    }
}

static void find_gaps_apart(sil_plan *plan)
{
    const sil_gaps *gaps = &plan->bench.gaps;
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan_gaps_apart(plan, i)) {
            plan_found_figure(plan, SIL_READINGS_DISAGREE, SIL_LEVEL_ACT, SIL_NUT, i,
                              gaps->first[i], (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN});
        }
    }
}

/* Readings that are not of today. */
static void find_carried(sil_plan *plan)
{
    bool any = false;
    for (int visit = 0; visit < plan->reading; visit++) {
        any = any || plan_carries(&plan->carried, visit);
    }
    if (any) {
        plan_found(plan, SIL_CARRIED, SIL_LEVEL_WATCH);
    }
}

/* A cut is needed, but its first pass is 0, because the tools are too coarse to make it safe. */
static void find_coarse(sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan->nut.verdict[i] == SIL_TAKE && plan->nut.first_pass[i] == 0.0 &&
            !sil_known(plan->stages.slot_hold[i])) {
            plan_found_figure(plan, SIL_TOOL_COARSE, SIL_LEVEL_WATCH, SIL_NUT, i,
                              plan->stages.deepen_u[i], (sil_band){0});
        }
        if (plan->saddle.verdict[i] == SIL_TAKE && plan->saddle.first_pass[i] == 0.0 &&
            !sil_known(plan->saddle.hold[i])) {
            plan_found_figure(plan, SIL_TOOL_COARSE, SIL_LEVEL_WATCH, SIL_SADDLE, i,
                              plan->stages.lower_u[i], (sil_band){0});
        }
    }
}

void plan_find(sil_plan *plan)
{
    find_condition(plan);
    find_fit(plan);
    find_carried(plan);
    plan_find_odd_ones(plan);
    plan_find_impossible(plan);
    plan_find_fresh(plan);
    find_relief(plan);
    find_frets(plan);
    find_slots(plan);
    find_gaps_apart(plan);
    find_saddle(plan);
    plan_find_sag(plan);
    find_seat(plan);
    find_coarse(plan);
    plan_find_tuning(plan);
    plan_find_tone(plan);
    plan_find_visits(plan);
    if (plan->stages.forecast[SIL_FRETS]) {
        plan_found(plan, SIL_FORECAST, SIL_LEVEL_WATCH);
    }
}
