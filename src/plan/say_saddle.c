/* SPDX-License-Identifier: MIT */
/* The words of the steps at the saddle. */
#include "say.h"

/* Action at fret 12 to expect once a line has come off the base (or a shim gone under: less than
 * nothing off), on the nut as it then is. */
static void add_actions_after(const sil_plan *plan, sil_line line, text *t)
{
    const sil_board *board = &plan->bench.board;
    string_list action = {.count = board->strings};
    for (int i = 0; i < board->strings; i++) {
        action.chosen[i] = true;
        double off = sil_line_at(line, board->saddle_z[i]);
        action.value[i] =
            sil_action(board, &plan->stages.fit[SIL_NUT], i, 12) - off * sil_leverage(board, i);
    }
    plan_text_strings(t, &action, SIL_NEAREST);
}

static void add_last_actions(const sil_plan *plan, text *t)
{
    string_list action = {.count = plan->job->string_count};
    for (int i = 0; i < action.count; i++) {
        action.chosen[i] = true;
        action.value[i] = sil_action_after(plan, i);
    }
    plan_text_strings(t, &action, SIL_NEAREST);
}

/* What a saddle's figures count on. */
static void add_premise(const sil_plan *plan, text *t)
{
    if (plan->stages.changed[SIL_NUT]) {
        plan_text_add(t, ", the nut done as planned,");
    }
}

static void add_ends(const sil_plan *plan, sil_line line, text *t)
{
    double half = plan->job->saddle.length / 2.0;
    plan_text_length_unit(t, sil_line_at(line, half), SIL_DOWN);
    if (plan->job->string_count > 1) {
        plan_text_add(t, " at the treble end and ");
        plan_text_length_unit(t, sil_line_at(line, -half), SIL_DOWN);
        plan_text_add(t, " at the bass end");
    }
}

/* Whether a first pass is all there is to take, as far as a person is shown. */
static bool same_line(const sil_plan *plan, sil_line a, sil_line b)
{
    double half = plan->job->saddle.length / 2.0;
    return fabs(sil_line_at(a, half) - sil_line_at(b, half)) < 0.01 &&
           fabs(sil_line_at(a, -half) - sil_line_at(b, -half)) < 0.01;
}

/* "Sand until the caliper reads 7.85 mm at string 1 and 8.80 mm at string 6." */
static void add_caliper(const sil_plan *plan, text *t)
{
    const sil_saddle_work *work = &plan->saddle;
    int last = plan->job->string_count - 1;
    const double *z = plan->bench.board.saddle_z;
    if (!sil_known(work->present[0])) {
        return;
    }
    plan_text_add(t, " Sand until the caliper reads ");
    plan_text_length_unit(t, work->present[0] - sil_line_at(work->cut_first, z[0]), SIL_UP);
    if (last > 0) {
        plan_text_add(t, " at string 1 and ");
        plan_text_length_unit(t, work->present[last] - sil_line_at(work->cut_first, z[last]),
                              SIL_UP);
        plan_text_add(t, " at string %d", last + 1);
    }
    plan_text_add(t, ".");
}

static bool floats(const sil_plan *plan)
{
    return plan->job->saddle.kind == SIL_SADDLE_FLOATING;
}

/* A bridge that only the strings hold. */
static void add_slide_out(const sil_plan *plan, text *t)
{
    if (floats(plan)) {
        plan_text_add(t,
                      "Mark where the bridge stands; slack the strings, but never take all of them "
                      "off, and slide it out. ");
    }
}

/* Strings in their range that the base takes along, as far as they may go. */
static void add_others(const sil_plan *plan, text *t)
{
    string_list along = {.count = plan->job->string_count};
    for (int i = 0; i < along.count; i++) {
        double off = sil_line_at(plan->saddle.cut_first, plan->bench.board.saddle_z[i]);
        along.chosen[i] = plan->saddle.verdict[i] == SIL_LEAVE && off >= 0.01;
    }
    if (plan_text_chosen(&along) > 0) {
        plan_text_add(t, " It takes ");
        plan_text_which(t, &along);
        plan_text_add(t,
                      " along, inside the range; where that is not wanted, dress the top under the "
                      "others instead.");
    }
}

void plan_say_sand(const sil_plan *plan, text *t)
{
    const sil_saddle_work *work = &plan->saddle;
    if (same_line(plan, work->cut_first, (sil_line){0.0, 0.0})) {
        plan_text_add(t, "Read the action with a finer tool: the saddle is too high, by ");
        add_ends(plan, work->cut, t);
        plan_text_add(t, ", but no pass is safe by this one");
        plan_say_finer(plan, SIL_SADDLE, t);
        return;
    }
    add_slide_out(plan, t);
    plan_text_add(t, plan->stages.changed[SIL_NUT] ? "With the nut done and read again, sand off "
                                                   : "Sand off ");
    plan_text_add(t, floats(plan) ? "the feet of the bridge, both to one straight line: "
                                  : "the base of the saddle, straight from end to end: ");
    add_ends(plan, work->cut_first, t);
    if (same_line(plan, work->cut, work->cut_first)) {
        plan_text_add(t, ", all of it in this pass.");
    } else {
        plan_text_add(t, " now.");
    }
    add_others(plan, t);
    add_caliper(plan, t);
    plan_text_add(t, " Then read again");
    if (!same_line(plan, work->cut, work->cut_first)) {
        plan_text_add(t, ", and expect about ");
        add_ends(plan,
                 (sil_line){work->cut.b0 - work->cut_first.b0, work->cut.b1 - work->cut_first.b1},
                 t);
        plan_text_add(t, " more");
    }
    plan_text_add(t, ".");
}

void plan_check_sand(const sil_plan *plan, text *t)
{
    plan_text_add(t, "Action at the 12th after this pass");
    add_premise(plan, t);
    plan_text_add(t, " ");
    add_actions_after(plan, plan->saddle.cut_first, t);
    if (!same_line(plan, plan->saddle.cut, plan->saddle.cut_first)) {
        plan_text_add(t, "; when all is sanded ");
        add_actions_after(plan, plan->saddle.cut, t);
    }
    plan_text_add(t, ".");
}

void plan_say_dress(const sil_plan *plan, text *t)
{
    string_list dress = {.count = plan->job->string_count};
    for (int i = 0; i < dress.count; i++) {
        dress.value[i] = sil_dressed_off(plan, i);
        dress.chosen[i] = dress.value[i] > 0.0;
    }
    bool sanded = plan->saddle.bottom && !same_line(plan, plan->saddle.cut, (sil_line){0.0, 0.0});
    plan_text_add(t, sanded ? "Last, after reading again, dress the top under "
                            : "Dress the top of the saddle under ");
    plan_text_which(t, &dress);
    plan_text_add(t, ": ");
    plan_text_strings(t, &dress, SIL_DOWN);
    plan_say_unit(t);
    plan_text_add(
        t, " in all, a little at a time; keep the point where the string leaves the saddle.");
}

void plan_check_action(const sil_plan *plan, text *t)
{
    plan_text_add(t, "Action at the 12th when done");
    add_premise(plan, t);
    plan_text_add(t, " ");
    add_last_actions(plan, t);
    plan_text_add(t, ".");
}

void plan_say_shim_saddle(const sil_plan *plan, text *t)
{
    add_slide_out(plan, t);
    plan_text_add(t, floats(plan) ? "Shim the bridge: a hard piece of "
                                  : "Shim the saddle: one hard full-length piece of ");
    plan_text_length_unit(t, plan->saddle.shim, SIL_NEAREST);
    plan_text_add(t, floats(plan) ? " under each foot, fitted to the top."
                                  : " under it, flat and snug in the slot.");
}

void plan_check_shimmed(const sil_plan *plan, text *t)
{
    plan_text_add(t, "Action at the 12th with the shim under it");
    add_premise(plan, t);
    plan_text_add(t, " ");
    add_actions_after(plan, (sil_line){-plan->saddle.shim, 0.0}, t);
    plan_text_add(t, ".");
}

void plan_say_new_saddle(const sil_plan *plan, text *t)
{
    string_list raised =
        plan_say_strings(plan, plan->saddle.verdict, SIL_RAISE, plan->stages.lower);
    plan_text_add(t, floats(plan) ? "New bridge: " : "New saddle: ");
    plan_text_which(t, &raised);
    bool glued = plan->job->saddle.kind == SIL_SADDLE_GLUED;
    if (glued) {
        plan_text_add(t, " must rise, and this one is glued in");
    } else if (sil_above(plan->saddle.shim, plan->job->limits.most_shim)) {
        plan_text_add(t, " must rise by more than a shim may be thick");
    } else {
        plan_text_add(t, " alone must rise: a worn notch, which no shim cures");
    }
    plan_text_add(t, floats(plan)
                         ? ". Fit its feet to the top, then bring it to heights over it of "
                         : ". Fit the blank oversize, then bring it to heights over the seat "
                           "of ");
    string_list height = {.count = plan->job->string_count};
    bool known = false;
    for (int i = 0; i < height.count; i++) {
        height.chosen[i] = sil_known(plan->saddle.height[i]);
        height.value[i] = plan->saddle.height[i];
        known = known || height.chosen[i];
    }
    if (known) {
        plan_text_strings(t, &height, SIL_UP);
        plan_say_unit(t);
        plan_text_add(t, ".");
    } else {
        plan_text_add(t, "as now, with the rise put on: measure the old one at strings 1 and %d.",
                      height.count);
    }
}

static void add_post(const sil_plan *plan, int side, text *t)
{
    const sil_saddle_work *work = &plan->saddle;
    char turns[32];
    sil_number_write(turns, sizeof turns, fabs(work->post_turns[side]), 2);
    plan_text_add(t, "%s side %s ", side == 0 ? "treble" : "bass",
                  work->post[side] < 0.0 ? "up" : "down");
    plan_text_length_unit(t, fabs(work->post[side]), SIL_NEAREST);
    plan_text_add(t, " (%s turns)", turns);
}

void plan_say_posts(const sil_plan *plan, text *t)
{
    plan_text_add(t, floats(plan)
                         ? "Ease the strings, but never take all of them off, and turn the "
                           "bridge's wheels: "
                         : "Ease the strings and turn the bridge's posts: ");
    add_post(plan, 0, t);
    plan_text_add(t, ", ");
    add_post(plan, 1, t);
    plan_text_add(t, ". All strings move with it, along one straight line.");
    if (floats(plan)) {
        plan_text_add(t, " Stand it upright again where it was.");
    }
}

static bool add_curve(const sil_plan *plan, sil_verdict wanted, const char *words, text *t)
{
    string_list list = {.count = plan->job->string_count};
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = plan_curve_at(plan, i) == wanted;
    }
    if (plan_text_chosen(&list) > 0) {
        plan_text_add(t, "%s", words);
        plan_text_which(t, &list);
    }
    return plan_text_chosen(&list) > 0;
}

void plan_say_curve(const sil_plan *plan, text *t)
{
    plan_text_add(t, "Two posts move all strings along one line; at its best ");
    bool high = add_curve(plan, SIL_TAKE, "still too high: ", t);
    add_curve(plan, SIL_RAISE, high ? "; too low: " : "still too low: ", t);
    plan_text_add(
        t, ". The curve of the bridge does not follow the board's. Where it is too high its "
           "notch or saddle can be cut, a little at a time; where too low, it is built up or "
           "the bridge replaced.");
}

void plan_say_screws(const sil_plan *plan, text *t)
{
    string_list down = plan_say_strings(plan, plan->saddle.verdict, SIL_TAKE, plan->stages.lower);
    const char *gap = "";
    plan_text_add(t, "Saddle screws, each of a string's alike: ");
    for (int i = 0; i < down.count; i++) {
        double lower = plan->stages.lower[i];
        if (!sil_known(plan->saddle.turns[i]) || plan->saddle.turns[i] == 0.0) {
            continue;
        }
        char turns[32];
        sil_number_write(turns, sizeof turns, fabs(plan->saddle.turns[i]), 2);
        plan_text_add(t, "%sstring %d %s ", gap, i + 1, lower > 0.0 ? "down" : "up");
        plan_text_length_unit(t, fabs(lower), SIL_NEAREST);
        plan_text_add(t, " (%s turns)", turns);
        gap = ", ";
    }
    plan_text_add(t, ".");
}
