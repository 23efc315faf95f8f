/* SPDX-License-Identifier: MIT */
/* The readings now, their targets, what they will be when all steps are done, and the visits so
 * far. */
#include "tell.h"
#include "within.h"

#include <string.h>

static brief_range range_of(const brief *b, sil_band band)
{
    return (brief_range){figure_nearest(b, band.low), figure_nearest(b, band.aim),
                         figure_nearest(b, band.high)};
}

brief_off brief_off_range(const brief *b, const brief_reading *reading)
{
    double now = reading->now.exact;
    double low = reading->wanted.low.exact, high = reading->wanted.high.exact;
    brief_off off = {.side = NULL, .by = figure_none()};
    if (sil_below(now, low)) {
        off = (brief_off){"under", figure_nearest(b, low - now)};
    } else if (sil_above(now, high)) {
        off = (brief_off){"over", figure_nearest(b, now - high)};
    } else if (sil_known(now) && sil_known(low) && sil_known(high)) {
        off.side = "in";
    }
    return off;
}

brief_off brief_off_humidity(const brief *b)
{
    double now = b->humidity.exact;
    double low = b->humidity_wanted.low.exact, high = b->humidity_wanted.high.exact;
    brief_off off = {.side = NULL, .by = figure_none()};
    if (now < low) {
        off = (brief_off){"under", figure_number(low - now, 0)};
    } else if (now > high) {
        off = (brief_off){"over", figure_number(now - high, 0)};
    } else if (sil_known(now) && sil_known(low) && sil_known(high)) {
        off.side = "in";
    }
    return off;
}

/* A fret that is off by less than this counts as sound, mm. */
static const double least_off = 0.005;

static brief_fret_off worst_fret(const brief *b, int i)
{
    const double *off = b->plan->bench.crowns.off[i];
    brief_fret_off worst = {.off = figure_none()};
    double most = least_off;
    for (int fret = 1; fret <= b->plan->bench.board.frets; fret++) {
        if (fabs(off[fret]) > most) {
            most = fabs(off[fret]);
            worst = (brief_fret_off){fret, off[fret] < 0.0, figure_nearest(b, most)};
        }
    }
    return worst;
}

/* Whether anything comes off the saddle today: no pass does where it waits for a choice or a tool. */
static bool sands_anything(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan_saddle_pass(plan, i) >= 0.01) {
            return true;
        }
    }
    return false;
}

/* Whether the strings come off for this work, so that the neck straightens and must settle again.
 * Strings can be lifted out of a nut slot one by one, but not for a shim or a new nut. */
static bool slackens(const sil_plan *plan)
{
    sil_nut_remedy nut = plan->nut.remedy;
    bool saddle_out = sil_working_cuts(plan->saddle.working) &&
                      plan->saddle.remedy != SIL_SADDLE_NONE &&
                      plan->saddle.remedy != SIL_SADDLE_WAIT &&
                      (plan->saddle.remedy != SIL_SADDLE_SAND || sands_anything(plan));
    return saddle_out || nut == SIL_NUT_SHIM || nut == SIL_NUT_REPLACE;
}

static const char *marks_of(const brief *b, bool target, int i)
{
    return target ? b->action[i].wanted.aim.marks : b->action[i].now.marks;
}

/* Writes " 3/32 on strings 1 to 8, 7/64 on strings 9 to 12": the actions that are known. Returned:
 * whether any is. */
static bool put_marks(telling *t, bool target)
{
    const brief *b = t->b;
    bool told[SIL_STRINGS_MAX] = {false};
    const char *joint = "";
    for (int i = 0; i < b->strings; i++) {
        const char *marks = marks_of(b, target, i);
        if (told[i] || marks[0] == '\0') {
            continue;
        }
        tell_list alike = {.count = b->strings};
        for (int k = i; k < b->strings; k++) {
            alike.chosen[k] = strcmp(marks_of(b, target, k), marks) == 0;
            told[k] = told[k] || alike.chosen[k];
        }
        tell(t, "%s %s on ", joint, marks);
        tell_which(t, &alike);
        joint = ",";
    }
    return joint[0] != '\0';
}

static const char *say_on_a_rule(brief *b)
{
    if (b->unit != SIL_INCH) {
        return "";
    }
    telling t = tell_begin(b);
    tell(&t, "On a rule in 64ths the action now is");
    bool now = put_marks(&t, false);
    tell(&t, "; its target is");
    bool targets = put_marks(&t, true);
    tell(&t, ".");
    brief_sentence sentence = tell_end(&t);
    return now && targets ? sentence.words : "";
}

void brief_fill_readings(brief *b)
{
    const sil_plan *plan = b->plan;
    const sil_board *board = &plan->bench.board;
    const sil_targets *targets = &plan->bench.targets;
    const sil_fit *last = &plan->stages.fit[SIL_SADDLE];
    b->forecast = plan->stages.forecast[SIL_NUT] || plan->stages.forecast[SIL_SADDLE];
    const sil_relief_reading *read = &plan->bench.relief;
    bool stringed = read->string >= 0 && !read->straightedge && !plan->bench.fresh.relief_stands;
    b->relief_read = stringed ? figure_nearest(b, read->gap) : figure_none();
    b->relief = (brief_reading){figure_nearest(b, sil_relief_now(plan)),
                                figure_nearest(b, sil_relief(board, last->bend)),
                                range_of(b, targets->relief)};
    const sil_reading *reading = sil_plan_reading(plan);
    b->slackens = slackens(plan);
    const sil_limits *limits = &plan->job->limits;
    b->humidity = figure_number(reading ? reading->humidity_pct : SIL_UNKNOWN, 0);
    b->humidity_wanted = (brief_range){figure_number(limits->humidity_low_pct, 0), figure_none(),
                                       figure_number(limits->humidity_high_pct, 0)};
    for (int i = 0; i < b->strings; i++) {
        b->worst[i] = worst_fret(b, i);
        b->first_off[i] =
            figure_nearest(b, fabs(sil_off_the_others(b->strings, plan->bench.gaps.first, i)));
        double first = plan_first_over(plan, last, i, targets->first_held);
        b->first[i] =
            (brief_reading){figure_nearest(b, sil_first_now(plan, i)), figure_nearest(b, first),
                            range_of(b, plan_first_range(plan, &plan->stages.fit[SIL_NOW], i))};
        const sil_band *action = &targets->action[i];
        b->action[i] = (brief_reading){figure_action(b->unit, sil_action_now(plan, i)),
                                       figure_action(b->unit, sil_action_after(plan, i)),
                                       {figure_action(b->unit, action->low),
                                        figure_action(b->unit, action->aim),
                                        figure_action(b->unit, action->high)}};
    }
    b->on_a_rule = say_on_a_rule(b);
}

/* "nut and saddle", "no work": the work taken as done before a visit. */
static const char *work_before(brief *b, const sil_visit *visit)
{
    text t = {0};
    int count = 0, told = 0;
    for (int stage = SIL_ROD; stage < SIL_STAGES; stage++) {
        count += visit->worked[stage];
    }
    for (int stage = SIL_ROD; stage < SIL_STAGES; stage++) {
        if (visit->worked[stage]) {
            const char *gap = told == 0 ? "" : told == count - 1 ? " and " : ", ";
            text_add(&t, "%s%s", gap, sil_stage_word((sil_stage_name)stage));
            told++;
        }
    }
    return count ? text_keep_made(&b->store, &t) : "no work";
}

static void fill_visit(brief *b, const sil_visit *visit, brief_visit *told)
{
    const sil_reading *reading = &b->plan->job->readings[visit->reading];
    *told = (brief_visit){.date = reading->date ? reading->date : "no date",
                          .work = work_before(b, visit),
                          .expected = visit->reading > b->plan->visits[0].reading,
                          .humidity = figure_number(reading->humidity_pct, 0),
                          .relief = figure_nearest(b, visit->relief),
                          .ratio = visit->ratio >= 0.005 /* shown as a percentage */
                                       ? figure_number(100.0 * visit->ratio, 0)
                                       : figure_none()};
    for (int i = 0; i < b->strings; i++) {
        told->read[i] = figure_nearest(b, visit->read[i]);
        told->due[i] = figure_nearest(b, visit->predicted[i]);
    }
}

void brief_fill_visits(brief *b)
{
    enum { SHOWN = 8 };
    int count = b->plan->visit_count < SHOWN ? b->plan->visit_count : SHOWN;
    if (b->plan->visit_count < 2) {
        return;
    }
    b->visits = text_store_room(&b->store, (size_t)count * sizeof *b->visits);
    for (int k = 0; b->visits && k < count; k++) {
        fill_visit(b, &b->plan->visits[b->plan->visit_count - count + k], &b->visits[k]);
        b->visit_count++;
    }
}

const char *brief_hold(sil_hold hold)
{
    switch (hold) {
    case SIL_HOLD_OPEN:
        return "open";
    case SIL_HOLD_2:
        return "fretted at the 2nd";
    case SIL_HOLD_3:
        return "fretted at the 3rd";
    }
    return "";
}
