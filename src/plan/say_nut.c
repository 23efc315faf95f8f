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

/* Whether two figures of each string chosen are the same as far as a person is shown. */
static bool same_figures(const string_list *a, const string_list *b)
{
    for (int i = 0; i < a->count; i++) {
        if (a->chosen[i] && fabs(a->value[i] - b->value[i]) >= 0.01) {
            return false;
        }
    }
    return true;
}

/* Strings whose first pass is nothing a person could take: the tools are too coarse for it. */
static string_list split_coarse(string_list *first)
{
    string_list coarse = *first;
    for (int i = 0; i < first->count; i++) {
        coarse.chosen[i] = first->chosen[i] && first->value[i] < 0.01;
        first->chosen[i] = first->chosen[i] && !coarse.chosen[i];
    }
    return coarse;
}

static bool any_chosen(const string_list *list)
{
    for (int i = 0; i < list->count; i++) {
        if (list->chosen[i]) {
            return true;
        }
    }
    return false;
}

static void add_passes(const string_list *first, const string_list *whole, text *t)
{
    text_add(t, "File the slots of ");
    text_which(t, first);
    text_add(t, " deeper: ");
    text_strings(t, first, DOWN);
    say_unit(t);
    if (same_figures(first, whole)) {
        text_add(t, ", all of it in this pass.");
    } else {
        text_add(t, " as a first pass; in all ");
        text_strings(t, whole, DOWN);
        say_unit(t);
        text_add(t, ".");
    }
    text_add(t, " Then read again.");
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
    string_list coarse = split_coarse(&first);
    for (int i = 0; i < first.count; i++) {
        whole.chosen[i] = first.chosen[i];
    }
    if (any_chosen(&first)) {
        add_passes(&first, &whole, t);
        add_stop_feelers(plan, &first, t);
        add_fall(plan, t);
    }
    if (any_chosen(&coarse)) {
        text_add(t, "%sRead the gap at the 1st fret of ", any_chosen(&first) ? " " : "");
        text_which(t, &coarse);
        text_add(t, " with a finer tool: too high, but no pass is safe by this one.");
    }
}

/* The gaps at fret 1 the nut is worked to. */
void check_first(const sil_plan *plan, text *t)
{
    const sil_board *board = &plan->bench.board;
    sil_hold hold = plan->bench.targets.first_held;
    string_list gaps = {.count = board->strings};
    for (int i = 0; i < board->strings; i++) {
        gaps.chosen[i] = plan->nut.verdict[i] == SIL_TAKE || plan->nut.verdict[i] == SIL_RAISE;
        gaps.value[i] = sil_first_gap(board, &plan->stages.fit[SIL_SADDLE], i, hold);
    }
    text_add(t, "Read after each pass. When done, the gap at the 1st fret of ");
    text_which(t, &gaps);
    text_add(t, ", %s, is ",
             hold == SIL_HOLD_OPEN ? "open"
             : hold == SIL_HOLD_2  ? "lying on the 2nd"
                                   : "held at the 3rd");
    text_strings(t, &gaps, NEAREST);
    text_add(t, ".");
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
