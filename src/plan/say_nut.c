/* SPDX-License-Identifier: MIT */
/* The words of the steps at the nut. */
#include "say.h"

/* Feelers to stop at, and the gaps to read after, for slots that are worked. */
static void add_stop_feelers(const sil_plan *plan, const string_list *slots, text *t)
{
    string_list stack = *slots;
    bool known = false;
    for (int i = 0; i < stack.count; i++) {
        stack.value[i] = plan->nut.stack[i];
        known = known || (stack.chosen[i] && sil_known(stack.value[i]));
    }
    if (known) {
        text_add(t, " Stop for good when the file rides on feelers, laid on the board against the "
                    "nut, of ");
        text_strings(t, &stack, UP);
        say_unit(t);
        text_add(t, ".");
    }
}

static void add_fall(const sil_plan *plan, text *t)
{
    if (sil_known(plan->nut.fall_angle_deg)) {
        char degrees[32];
        sil_number_write(degrees, sizeof degrees, plan->nut.fall_angle_deg, 0);
        text_add(t, " Let each fall %s\xC2\xB0 toward the tuners, highest at the front edge.",
                 degrees);
    }
}

void say_file(const sil_plan *plan, text *t)
{
    double shim = plan->nut.remedy == SIL_NUT_SHIM ? plan->nut.shim : 0.0;
    string_list first = say_strings(plan, plan->nut.verdict, SIL_TAKE, plan->nut.first_pass);
    string_list whole = say_strings(plan, plan->nut.verdict, SIL_TAKE, plan->stages.deepen);
    for (int i = 0; i < first.count; i++) {
        first.value[i] += shim;
        whole.value[i] += shim;
    }
    text_add(t, "File the slots of ");
    text_which(t, &first);
    text_add(t, " deeper. First pass ");
    text_strings(t, &first, DOWN);
    text_add(t, "; in all ");
    text_strings(t, &whole, DOWN);
    say_unit(t);
    text_add(t, ".");
    add_stop_feelers(plan, &first, t);
    add_fall(plan, t);
}

/* Gaps at fret 1 the nut is worked to. */
void check_first(const sil_plan *plan, text *t)
{
    const sil_board *board = &plan->bench.board;
    sil_hold hold = plan->bench.targets.first_held;
    string_list gaps = {.count = board->strings};
    for (int i = 0; i < board->strings; i++) {
        gaps.chosen[i] = plan->nut.verdict[i] == SIL_TAKE || plan->nut.verdict[i] == SIL_RAISE;
        gaps.value[i] = sil_first_gap(board, &plan->stages.fit[SIL_SADDLE], i, hold);
    }
    text_add(t, "Gap at the 1st fret, %s, when done: ",
             hold == SIL_HOLD_OPEN ? "open"
             : hold == SIL_HOLD_2  ? "lying on the 2nd"
                                   : "held at the 3rd");
    text_strings(t, &gaps, NEAREST);
    text_add(t, ". Read after each pass.");
}

void say_fill(const sil_plan *plan, text *t)
{
    double rise[SIL_STRINGS_MAX];
    for (int i = 0; i < plan->job->string_count; i++) {
        rise[i] = -plan->stages.deepen[i];
    }
    string_list slot = say_strings(plan, plan->nut.verdict, SIL_RAISE, rise);
    text_add(t, "The slot of ");
    text_which(t, &slot);
    text_add(t, " is too low by ");
    text_strings(t, &slot, NEAREST);
    say_unit(t);
    text_add(t, ": fill it with dust of the nut's own stuff and glue, let it harden, and cut it "
                "again.");
    add_stop_feelers(plan, &slot, t);
    add_fall(plan, t);
}

void say_shim_nut(const sil_plan *plan, text *t)
{
    text_add(t, "Shim the nut: one hard full-length piece of ");
    text_length_unit(t, plan->nut.shim, NEAREST);
    text_add(t, " under its seat. Every slot rises by as much; file the others back to their "
                "feelers: ");
    string_list stack = say_known(plan, plan->nut.stack);
    text_strings(t, &stack, UP);
    say_unit(t);
    text_add(t, ".");
}

void say_new_nut(const sil_plan *plan, text *t)
{
    text_add(t, "New nut: two slots or more are too low, and a shim of ");
    text_length_unit(t, plan->nut.shim, NEAREST);
    text_add(t, " is more than is good practice. Cut its slots to feelers of ");
    string_list stack = say_known(plan, plan->nut.stack);
    text_strings(t, &stack, UP);
    say_unit(t);
    text_add(t, ".");
    add_fall(plan, t);
}
