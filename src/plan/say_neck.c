/* SPDX-License-Identifier: MIT */
/* The words of the steps at the neck, and of how it moved between visits. */
#include "say.h"

void plan_say_neck_bow(const sil_plan *plan, text *t)
{
    double relief = sil_relief_now(plan);
    plan_text_add(t, "Stop: relief of ");
    plan_text_length_unit(t, relief, SIL_NEAREST);
    plan_text_add(t, ", over ");
    plan_text_length_unit(t, plan->job->limits.most_relief, SIL_NEAREST);
    plan_text_add(
        t, ", and no rod to take it out. A nut and saddle cut to it would be too low once the neck "
           "is mended: have a qualified repairer look at it first.");
}

void plan_say_rod(const sil_plan *plan, text *t)
{
    double relief = sil_relief_now(plan);
    double aim = plan->bench.targets.relief.aim;
    plan_text_add(t,
                  relief > aim
                      ? "Truss rod: slack the strings a little, then tighten it (clockwise on "
                        "most), an eighth of a turn at a time"
                      : "Truss rod: ease it (counter-clockwise on most), an eighth of a turn at a "
                        "time");
    plan_text_add(t, ", to bring the relief at fret %d from ", plan->bench.board.relief_at);
    plan_text_length(t, relief, SIL_NEAREST);
    plan_text_add(t, " to ");
    plan_text_length_unit(t, aim, SIL_NEAREST);
    plan_text_add(t, ". Never force it.");
}

void plan_check_rod(const sil_plan *plan, text *t)
{
    const sil_board *board = &plan->bench.board;
    string_list action = {.count = board->strings};
    for (int i = 0; i < board->strings; i++) {
        action.value[i] = sil_action(board, &plan->stages.fit[SIL_ROD], i, 12);
        action.chosen[i] = sil_known(action.value[i]);
    }
    plan_text_add(t, "Tuned again, relief ");
    plan_text_length_unit(t, plan->bench.targets.relief.aim, SIL_NEAREST);
    if (plan_text_chosen(&action) > 0) {
        plan_text_add(t, "; action at the 12th then about ");
        plan_text_strings(t, &action, SIL_NEAREST);
    }
    if (plan_text_chosen(&action) > 0 && plan->bench.rod_spread == SIL_ROD_SPREAD_KNOWN) {
        char ratio[32];
        sil_number_write(ratio, sizeof ratio, plan->bench.rod_ratio, 2);
        plan_text_add(t, ", as this neck moved before (%s of an even bend)", ratio);
    }
    plan_text_add(t, ".");
}

void plan_say_find_rod(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(
        t, "The relief is out of its range: look whether there is a truss rod (its nut is "
           "under a cover at the head, or inside, at the end of the fingerboard) and whether "
           "it turns both ways, freely, without force. Write rod and its state on the sheet.");
}

void plan_say_rod_by_ear(const sil_plan *plan, text *t)
{
    plan_text_add(
        t,
        "Truss rod, by ear: tighten it (clockwise on most) an eighth of a turn at a time "
        "until, with a string held on frets 1 and %d, a tap over fret %d just pings on the "
        "crown. Never force it.",
        plan->bench.board.join, plan->bench.board.relief_at);
}

void plan_check_rod_by_ear(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(t, "An ear finds about the place; before anything is cut it is measured.");
}

static void add_humidity(text *t, double then, double now)
{
    char was[32], is[32];
    if (sil_known(then) && sil_known(now)) {
        sil_number_write(was, sizeof was, then, 0);
        sil_number_write(is, sizeof is, now, 0);
        plan_text_add(t, "; humidity %s %% then, %s %% now", was, is);
    }
}

/* What usually makes an action come out otherwise than the work was to give. */
static const char *usual_reasons(const sil_visit *visit)
{
    if (visit->worked[SIL_SADDLE]) {
        return "the saddle not down on its seat at both ends, more or less taken than told, "
               "strings "
               "not settled or old, relief moved meanwhile";
    }
    if (visit->worked[SIL_NUT]) {
        return "a slot filed past its feelers or not to them, strings not down in their slots, "
               "strings not settled or old, relief moved meanwhile";
    }
    return "the neck not settled yet, strings not back at pitch or old, a reading not taken as the "
           "one before";
}

void plan_say_off_forecast(const sil_plan *plan, double by, text *t)
{
    const sil_visit *now = &plan->visits[plan->visit_count - 1];
    char work[64];
    sil_visit_words(now, work, sizeof work);
    plan_text_add(t, "After the work on the %s the action at the 12th is, on average, ", work);
    plan_text_length_unit(t, fabs(by), SIL_NEAREST);
    plan_text_add(t, " %s than it was to be: more than the tools explain. Usual reasons: %s",
                  by > 0.0 ? "higher" : "lower", usual_reasons(now));
    add_humidity(t, plan->job->readings[now[-1].reading].humidity_pct,
                 sil_plan_reading(plan)->humidity_pct);
    plan_text_add(t, ". What follows goes by what was read now.");
}

void plan_say_moved(const sil_plan *plan, double by, text *t)
{
    const sil_visit *now = &plan->visits[plan->visit_count - 1], *then = now - 1;
    const sil_reading *was = &plan->job->readings[then->reading];
    plan_text_add(t, "Nothing was to be done since %s, and yet it moved: relief ",
                  was->date ? was->date : "the visit before");
    plan_text_length(t, then->relief, SIL_NEAREST);
    plan_text_add(t, " to ");
    plan_text_length(t, now->relief, SIL_NEAREST);
    plan_text_add(t, ", action at the 12th by ");
    plan_text_length_unit(t, by, SIL_NEAREST);
    plan_text_add(t, " on average");
    add_humidity(t, was->humidity_pct, sil_plan_reading(plan)->humidity_pct);
    plan_text_add(t,
                  ". The season does that, new strings, or a joint. What the season did it takes "
                  "back: at the humidity the instrument lives in, read again before it is cut.");
}

size_t sil_visit_words(const sil_visit *visit, char *out, size_t size)
{
    text t;
    plan_text_begin(&t, out, size, SIL_MM);
    int count = 0, told = 0;
    for (int stage = SIL_ROD; stage < SIL_STAGES; stage++) {
        count += visit->worked[stage];
    }
    for (int stage = SIL_ROD; stage < SIL_STAGES; stage++) {
        if (visit->worked[stage]) {
            const char *gap = told == 0 ? "" : told == count - 1 ? " and " : ", ";
            plan_text_add(&t, "%s%s", gap, sil_stage_word((sil_stage_name)stage));
            told++;
        }
    }
    plan_text_add(&t, "%s", count ? "" : "no work");
    return plan_text_end(&t);
}
