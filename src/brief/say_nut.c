/* SPDX-License-Identifier: MIT */
/* The sentences for the steps at the nut. */
#include "say.h"
#include "within.h"

#include "../plan/plan.h"

typedef brief_figure figure_of(const brief_slot *slot);

static brief_figure first_of(const brief_slot *slot)
{
    return slot->first;
}
static brief_figure left_of(const brief_slot *slot)
{
    return slot->left;
}
static brief_figure stack_of(const brief_slot *slot)
{
    return slot->stack;
}
static brief_figure stack_first_of(const brief_slot *slot)
{
    return slot->stack_first;
}
static brief_figure gap_of(const brief_slot *slot)
{
    return slot->gap;
}
static brief_figure width_of(const brief_slot *slot)
{
    return slot->width;
}

/* A list of the same slots with a different figure of each. */
static tell_list with(const brief *b, tell_list list, figure_of *figure)
{
    for (int i = 0; i < list.count; i++) {
        list.figure[i] = figure(&b->nut.slot[i]);
    }
    return list;
}

static tell_list slots_with(const brief *b, sil_verdict verdict)
{
    tell_list list = {.count = b->strings};
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = b->nut.slot[i].verdict == verdict;
    }
    return list;
}

/* Those slots of a list whose figure is known. */
static tell_list known(tell_list list)
{
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = list.chosen[i] && brief_known(list.figure[i]);
    }
    return list;
}

/* The strings of a list for which something holds of the feelers. */
static tell_list those(const brief *b, tell_list slots, bool stays)
{
    for (int i = 0; i < slots.count; i++) {
        const brief_slot *slot = &b->nut.slot[i];
        slots.chosen[i] = slots.chosen[i] && (stays ? slot->stack_stays : slot->stack_moved);
    }
    return slots;
}

/* Says where the stack comes from, where that is not the fret height, and what to do where a string
 * did not follow its slot down. */
static void tell_last_stack(const brief *b, tell_list stack, telling *t)
{
    tell_list moved = those(b, stack, false), stays = those(b, stack, true);
    if (tell_chosen(&moved) > 0) {
        tell(t, " The stack for ");
        tell_which(t, &moved);
        tell(t, " follows from the last one and the gap measured since.");
    }
    if (tell_chosen(&stays) > 0) {
        tell(t, " If you filed down to the last stack and the gap of ");
        tell_which(t, &stays);
        tell(t, " did not change, stiffness holds it up: file by the amount, not by the feelers.");
    }
}

/* Says how closely a stack of feelers gives the height of the string, and ends the sentence. */
void say_stack_sure(const brief *b, telling *t)
{
    const brief_nut *nut = &b->nut;
    tell(t, ", good to \u00b1");
    tell_length(t, "stack-sure", -1, nut->stack_sure);
    tell(t, ".");
    if (brief_known(nut->stack_bend)) {
        tell(t, " Stiffness may hold a string up to ");
        tell_length(t, "stack-bend", -1, nut->stack_bend);
        tell(t, " above its slot floor: trust the gap.");
    } else {
        tell(t, " If they disagree, trust the gap.");
    }
}

/* Names the stack of feelers to stop at. */
static void tell_stack(const brief *b, tell_list slots, figure_of *figure, telling *t)
{
    tell_list stack = known(with(b, slots, figure));
    if (tell_chosen(&stack) > 0) {
        tell(t, " File until you touch a feeler stack of ");
        tell_each(t, "stack", &stack);
        tell_unit(t);
        tell(t, ", laid on the board hard against the nut's front face");
        say_stack_sure(b, t);
        tell_last_stack(b, stack, t);
    }
}

void say_first_stacks(const brief *b, tell_list slots, telling *t)
{
    tell_list first = known(with(b, slots, stack_first_of));
    tell_list good = known(with(b, slots, stack_of));
    if (tell_chosen(&first) > 0) {
        tell(t, " File until you touch a first feeler stack of ");
        tell_each(t, "stack-first", &first);
        tell_unit(t);
        tell(t, ", laid on the board hard against the nut's front face. The rest stays on until "
                "the strings have been on. The final stack is ");
        tell_each(t, "stack", &good);
        tell_unit(t);
        say_stack_sure(b, t);
        tell_last_stack(b, good, t);
    }
}

/* Names the files to use, and the strings of whose slot the shop has none. */
void say_files(const brief *b, tell_list slots, telling *t)
{
    tell_list fits = with(b, slots, width_of), rolls = fits;
    if (b->plan->job->file_count == 0) {
        return;
    }
    for (int i = 0; i < slots.count; i++) {
        bool has = brief_has_file(b->plan->job, b->plan->slot_width[i]);
        fits.chosen[i] = slots.chosen[i] && has;
        rolls.chosen[i] = slots.chosen[i] && !has;
    }
    if (tell_chosen(&fits) > 0) {
        tell(t, " Files: ");
        tell_each(t, "file", &fits);
        tell(t, ".");
    }
    if (tell_chosen(&rolls) > 0) {
        tell(t, " No file fits ");
        tell_which(t, &rolls);
        tell(t, ": roll a narrower one, to a slot width of ");
        tell_each(t, "slot-width", &rolls);
        tell(t, ".");
    }
}

void say_fall(const brief *b, telling *t)
{
    tell(t, " Angle each slot ");
    if (brief_known(b->nut.fall)) {
        tell_figure(t, "fall", -1, b->nut.fall);
        tell(t, "\u00b0 ");
    }
    tell(t, "down toward the tuners, so that the string leaves from its front edge.");
}

/* Less than this is too little to file, mm. */
static const double least_pass = 0.01;

/* Slots that are too high, but by so little that the tools are too coarse for a safe first pass. */
static tell_list too_coarse(const brief *b, tell_list *filed)
{
    tell_list coarse = *filed;
    for (int i = 0; i < filed->count; i++) {
        bool held = sil_known(b->plan->stages.slot_hold[i]); /* to ring clean: no tool helps */
        bool little = filed->chosen[i] && b->nut.slot[i].first.exact < least_pass;
        coarse.chosen[i] = little && !held;
        filed->chosen[i] = filed->chosen[i] && !little;
    }
    return coarse;
}

static void tell_passes(const brief *b, tell_list slots, telling *t)
{
    tell_list first = with(b, slots, first_of), left = with(b, slots, left_of);
    double most_left = 0.0;
    for (int i = 0; i < slots.count; i++) {
        most_left = slots.chosen[i] ? fmax(most_left, left.figure[i].exact) : most_left;
    }
    tell(t, most_left > 0.0 ? "First pass: file " : "File ");
    tell(t, tell_chosen(&first) == 1 ? "the nut slot of " : "the nut slots of ");
    tell_which(t, &first);
    tell(t, " deeper by ");
    t->figure_way = BRIEF_DOWN;
    tell_each(t, "slot", &first);
    tell_unit(t);
    t->figure_way = BRIEF_NO_WAY;
    if (most_left > 0.0) {
        tell(t, ". Then measure again, and expect about ");
        tell_each(t, "slot-left", &left);
        tell(t, " more.");
    } else {
        tell(t, ", all of it in this pass, then measure again.");
    }
}

void say_doubted_high(const brief *b, telling *t)
{
    tell_list slots = slots_with(b, SIL_TAKE);
    (void)too_coarse(b, &slots); /* those are measured again with a finer tool anyway */
    say_doubted(b, slots, t);
}

void say_doubted_low(const brief *b, telling *t)
{
    say_doubted(b, slots_with(b, SIL_RAISE), t);
}

void say_file(const brief *b, telling *t)
{
    tell_list slots = slots_with(b, SIL_TAKE), coarse = too_coarse(b, &slots);
    t->way = BRIEF_DOWN;
    say_doubted_high(b, t);
    if (tell_chosen(&slots) > 0) {
        tell_passes(b, slots, t);
        say_finished(b, SIL_NUT, t);
        tell_stack(b, slots, stack_first_of, t);
        say_files(b, slots, t);
        say_fall(b, t);
        tell(
            t,
            " Then bring the nut's top down, so that no slot is deeper than the nut's table says.");
    }
    if (tell_chosen(&coarse) > 0) {
        tell(t, "%sMeasure the gap at the 1st fret of ", tell_chosen(&slots) > 0 ? " " : "");
        tell_which(t, &coarse);
        tell(t, " with a finer tool: it is too high, but no pass is safe with this one");
        say_finer(b, SIL_NUT, t);
    }
}

/* Gives the gaps at fret 1 that some slots will have when they are done. */
static void tell_gaps(const brief *b, tell_list gaps, telling *t)
{
    gaps = known(with(b, gaps, gap_of));
    tell(t, "Measure after each pass. When done, the gap at the 1st fret of ");
    tell_which(t, &gaps);
    tell(t, ", %s, is ", brief_hold(b->plan->bench.targets.first_held));
    tell_each(t, "gap", &gaps);
    tell(t, ": stop there, whatever the feelers say.");
}

void say_check_filed(const brief *b, telling *t)
{
    tell_gaps(b, slots_with(b, SIL_TAKE), t);
}

void say_check_filled(const brief *b, telling *t)
{
    tell_gaps(b, slots_with(b, SIL_RAISE), t);
}

static bool all_hardly_low(const brief *b, const tell_list *slots)
{
    for (int i = 0; i < slots->count; i++) {
        if (slots->chosen[i] && !b->nut.slot[i].hardly_low) {
            return false;
        }
    }
    return true;
}

void say_fill(const brief *b, telling *t)
{
    tell_list slots = slots_with(b, SIL_RAISE), low = slots;
    for (int i = 0; i < slots.count; i++) {
        low.figure[i] = figure_length(b->unit, -b->plan->stages.deepen[i], SIL_NEAREST);
    }
    low = known(low);
    bool one = tell_chosen(&slots) == 1;
    say_doubted_low(b, t);
    tell(t, one ? "The nut slot of " : "The nut slots of ");
    tell_which(t, &slots);
    tell(t, one ? " is too low" : " are too low");
    t->way = t->figure_way = BRIEF_UP;
    if (tell_chosen(&low) == tell_chosen(&slots)) {
        tell(t, " by ");
        tell_each(t, "slot", &low);
        tell_unit(t);
    }
    t->figure_way = BRIEF_NO_WAY;
    bool hardly = all_hardly_low(b, &slots);
    tell(t, tell_chosen(&low) < tell_chosen(&slots)
                ? ". A string that lies on the 1st fret gives no amount, and needs none."
            : hardly ? ", less than the feelers can tell. Play it open first: if it rings clean, "
                       "leave it."
                     : ".");
    tell(t, hardly ? " If not, look at " : " First look at ");
    tell(
        t,
        one ? "its shape: if the string rests on the slot's back edge, angle the slot down "
              "toward the tuners and measure again. If it is still too low, fill it with dust of "
              "the same material and glue, let it harden, and recut."
            : "their shape: if a string rests on its slot's back edge, angle the slot down "
              "toward the tuners and measure again. Fill those still too low with dust of the same "
              "material and glue, let it harden, and recut.");
    say_first_stacks(b, slots, t);
    say_fall(b, t);
    tell(t, " Play it open before the last stroke.");
}

/* The slots that are filed back because the shim leaves them too high. Those that were too high before
 * have a step of their own. */
static tell_list filed_back(const brief *b)
{
    tell_list back = {.count = b->strings};
    for (int i = 0; i < back.count; i++) {
        const brief_slot *slot = &b->nut.slot[i];
        back.chosen[i] = slot->does == BRIEF_FILES && slot->verdict != SIL_TAKE;
    }
    return back;
}

void say_shim_nut(const brief *b, telling *t)
{
    tell_list back = filed_back(b), high = slots_with(b, SIL_TAKE);
    say_doubted_low(b, t);
    tell(t, "Knock the nut out clean and shim it: one hard full-length piece of ");
    t->way = BRIEF_UP;
    tell_length(t, "shim", -1, b->nut.shim);
    tell(t, " under its bottom. Every nut slot rises by as much");
    if (tell_chosen(&back) == 0) {
        tell(t, tell_chosen(&high) > 0 ? ", and none but those that were too high is filed."
                                       : ", and none is filed.");
        return;
    }
    tell(t, ". File back those of ");
    tell_which(t, &back);
    tell(t, ", which are then too high, and leave the others as they are.");
    say_first_stacks(b, back, t);
}

void say_check_shimmed_nut(const brief *b, telling *t)
{
    tell_list gaps = {.count = b->strings};
    for (int i = 0; i < gaps.count; i++) {
        gaps.chosen[i] = b->nut.slot[i].verdict != SIL_TAKE;
    }
    gaps = known(with(b, gaps, gap_of));
    tell(t, "Tune, and measure. When done, the gap at the 1st fret of ");
    tell_which(t, &gaps);
    tell(t, ", %s, is ", brief_hold(b->plan->bench.targets.first_held));
    tell_each(t, "gap", &gaps);
    tell(t, ": the gap decides, not the feelers.");
}
