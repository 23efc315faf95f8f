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
        plan_text_add(t, " Stop when the file rides on feelers, laid on the board under the "
                         "string against the nut, of ");
        plan_text_strings(t, &stack, SIL_UP);
        plan_say_unit(t);
        plan_text_add(t, ".");
    }
}

/* The files to take, and the strings no file of the shop is wide enough for. */
static void add_files(const sil_plan *plan, const string_list *slots, text *t)
{
    const sil_job *job = plan->job;
    if (job->file_count == 0) {
        return;
    }
    double widest = 0.0;
    for (int k = 0; k < job->file_count; k++) {
        widest = fmax(widest, job->files[k]);
    }
    string_list fits = *slots;
    string_list rolls = *slots;
    for (int i = 0; i < slots->count; i++) {
        fits.value[i] = rolls.value[i] = plan->slot_width[i];
        bool wide = slots->chosen[i] && plan->slot_width[i] > widest;
        fits.chosen[i] = slots->chosen[i] && !wide;
        rolls.chosen[i] = wide;
    }
    if (plan_text_chosen(&fits) > 0) {
        plan_text_add(t, " Files: ");
        plan_text_strings(t, &fits, SIL_NEAREST);
        plan_text_add(t, ".");
    }
    if (plan_text_chosen(&rolls) > 0) {
        plan_text_add(t, " No file is as wide as ");
        plan_text_which(t, &rolls);
        plan_text_add(t, ": roll a narrower one, to a slot of ");
        plan_text_strings(t, &rolls, SIL_NEAREST);
        plan_text_add(t, ".");
    }
}

static void add_fall(const sil_plan *plan, text *t)
{
    if (sil_known(plan->nut.fall_angle_deg)) {
        char degrees[32];
        sil_number_write(degrees, sizeof degrees, plan->nut.fall_angle_deg, 0);
        plan_text_add(t, " Let each fall %s\xC2\xB0 toward the tuners, highest at the front edge.",
                      degrees);
    } else {
        plan_text_add(t, " Let each fall toward the tuners, highest at the front edge.");
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

/* The whole less the first pass, for each string of the pass. */
static string_list what_is_left(const string_list *first, const string_list *whole)
{
    string_list left = *first;
    for (int i = 0; i < left.count; i++) {
        left.value[i] = whole->value[i] - first->value[i];
    }
    return left;
}

static void add_passes(const string_list *first, const string_list *whole, text *t)
{
    plan_text_add(t, "File the slots of ");
    plan_text_which(t, first);
    plan_text_add(t, " deeper: ");
    plan_text_strings(t, first, SIL_DOWN);
    plan_say_unit(t);
    if (same_figures(first, whole)) {
        plan_text_add(t, ", all of it in this pass.");
    } else {
        string_list left = what_is_left(first, whole);
        plan_text_add(t, " now; read again, and expect about ");
        plan_text_strings(t, &left, SIL_NEAREST);
        plan_text_add(t, " more.");
        return;
    }
    plan_text_add(t, " Then read again.");
}

void plan_say_file(const sil_plan *plan, text *t)
{
    double shim = plan->nut.remedy == SIL_NUT_SHIM ? plan->nut.shim : 0.0;
    string_list first = plan_say_strings(plan, plan->nut.verdict, SIL_TAKE, plan->nut.first_pass);
    string_list whole = plan_say_strings(plan, plan->nut.verdict, SIL_TAKE, plan->stages.deepen);
    for (int i = 0; i < first.count; i++) {
        first.value[i] += shim;
        whole.value[i] += shim;
    }
    string_list coarse = split_coarse(&first);
    for (int i = 0; i < first.count; i++) {
        whole.chosen[i] = first.chosen[i];
    }
    if (plan_text_chosen(&first)) {
        add_passes(&first, &whole, t);
        add_stop_feelers(plan, &first, t);
        add_files(plan, &first, t);
        add_fall(plan, t);
        plan_text_add(
            t,
            " Then take the nut's top down, so that no slot is deeper below it than in the table.");
    }
    if (plan_text_chosen(&coarse)) {
        plan_text_add(t, "%sRead the gap at the 1st fret of ", plan_text_chosen(&first) ? " " : "");
        plan_text_which(t, &coarse);
        plan_text_add(t, " with a finer tool: too high, but no pass is safe by this one");
        plan_say_finer(plan, SIL_NUT, t);
    }
}

/* The gaps at fret 1 that some slots are worked to. */
static void add_gaps(const sil_plan *plan, bool filed, bool raised, text *t)
{
    const sil_board *board = &plan->bench.board;
    sil_hold hold = plan->bench.targets.first_held;
    string_list gaps = {.count = board->strings};
    for (int i = 0; i < board->strings; i++) {
        sil_verdict verdict = plan->nut.verdict[i];
        gaps.chosen[i] = (filed && verdict == SIL_TAKE) || (raised && verdict == SIL_RAISE);
        gaps.value[i] = sil_first_gap(board, &plan->stages.fit[SIL_SADDLE], i, hold);
    }
    plan_text_add(t, "Read after each pass. When done, the gap at the 1st fret of ");
    plan_text_which(t, &gaps);
    plan_text_add(t, ", %s, is ", sil_hold_words(hold));
    plan_text_strings(t, &gaps, SIL_NEAREST);
    plan_text_add(t, ": stop there, whatever the feelers say.");
}

void plan_check_filed(const sil_plan *plan, text *t)
{
    add_gaps(plan, true, false, t);
}

void plan_check_filled(const sil_plan *plan, text *t)
{
    add_gaps(plan, false, true, t);
}

void plan_check_first(const sil_plan *plan, text *t)
{
    add_gaps(plan, true, true, t);
}

/* Whether every slot chosen is short of its range by no more than a gap is read to. */
static bool within_the_tools(const sil_plan *plan, const string_list *slots)
{
    const sil_board *board = &plan->bench.board;
    for (int i = 0; i < slots->count; i++) {
        double gap =
            sil_first_gap(board, &plan->stages.fit[SIL_FRETS], i, plan->bench.targets.first_held);
        if (slots->chosen[i] &&
            sil_above(plan->bench.targets.first[i].low - gap, plan->bench.tools.first)) {
            return false;
        }
    }
    return true;
}

void plan_say_fill(const sil_plan *plan, text *t)
{
    double rise[SIL_STRINGS_MAX];
    for (int i = 0; i < plan->job->string_count; i++) {
        rise[i] = -plan->stages.deepen[i];
    }
    string_list slot = plan_say_strings(plan, plan->nut.verdict, SIL_RAISE, rise);
    plan_text_add(t, "The slot of ");
    plan_text_which(t, &slot);
    plan_text_add(t, " is too low by ");
    plan_text_strings(t, &slot, SIL_NEAREST);
    plan_say_unit(t);
    plan_text_add(t, ": fill it with dust of the same material and glue, let it harden, and cut it "
                     "again.");
    add_stop_feelers(plan, &slot, t);
    add_fall(plan, t);
    if (within_the_tools(plan, &slot)) {
        plan_text_add(
            t, " It is under its range by less than the feelers tell: if it rings clean, leave "
               "it.");
    }
}

void plan_say_shim_nut(const sil_plan *plan, text *t)
{
    string_list back = plan_say_known(plan, plan->nut.stack);
    for (int i = 0; i < back.count; i++) {
        double rise = plan->nut.verdict[i] == SIL_RAISE ? -plan->stages.deepen[i] : 0.0;
        back.chosen[i] = back.chosen[i] && plan->nut.shim - rise >= 0.01;
    }
    plan_text_add(t, "Knock the nut out clean and shim it: one hard full-length piece of ");
    plan_text_length_unit(t, plan->nut.shim, SIL_NEAREST);
    plan_text_add(t, " under its seat. Every slot rises by as much");
    if (plan_text_chosen(&back) > 0) {
        plan_text_add(t, "; file those of ");
        plan_text_which(t, &back);
        plan_text_add(t, " back to feelers of ");
        plan_text_strings(t, &back, SIL_UP);
        plan_say_unit(t);
    }
    plan_text_add(t, ".");
}

void plan_say_new_nut(const sil_plan *plan, text *t)
{
    plan_text_add(t, "New nut: two slots or more are too low, and a shim of ");
    plan_text_length_unit(t, plan->nut.shim, SIL_NEAREST);
    plan_text_add(t, " is more than is good practice. Cut its slots to feelers of ");
    string_list stack = plan_say_known(plan, plan->nut.stack);
    plan_text_strings(t, &stack, SIL_UP);
    plan_say_unit(t);
    plan_text_add(t, ".");
    add_fall(plan, t);
}
