/* SPDX-License-Identifier: MIT */
/* The sentences for filing nut slots. */
#include "say.h"

#include "../plan/plan.h"

static brief_figure first_of(const brief_slot *slot)
{
    return slot->first;
}
static brief_figure left_of(const brief_slot *slot)
{
    return slot->left;
}
static brief_figure gap_first_of(const brief_slot *slot)
{
    return slot->gap_first;
}

/* The slots that are too high, each with its first pass; the tools are too coarse to give a safe one
 * to those in `coarse`. */
static tell_list slots_to_file(const brief *b, tell_list *coarse)
{
    tell_list slots = say_slots_with(b, say_slots(b, SIL_TAKE), first_of);
    *coarse = say_take_coarse(&slots, b->plan->stages.slot_hold);
    return slots;
}

/* Gives how much comes off, where the feelers to stop at are known already. */
static void tell_off(const tell_list *first, const char *before, const char *after, telling *t)
{
    tell(t, "%s", before);
    t->figure_way = BRIEF_DOWN;
    tell_each(t, "slot", first);
    tell_unit(t);
    t->figure_way = BRIEF_NO_WAY;
    tell(t, "%s", after);
}

/* Where to stop comes first, then how much that is. */
static void tell_passes(const brief *b, const tell_list *slots, telling *t)
{
    tell_list left = say_slots_with(b, *slots, left_of);
    tell_list stack = tell_known(say_slots_with(b, *slots, say_first_stack));
    bool more = tell_most(&left) > 0.0, stacked = tell_chosen(&stack) > 0;
    tell(t, tell_chosen(slots) == 1 ? "File the nut slot of " : "File the nut slots of ");
    tell_which(t, slots);
    if (stacked) {
        tell(t, tell_chosen(&stack) == 1 ? " to a feeler stack of "
                                         : ", each to its own feeler stack: ");
        tell_each(t, "stack", &stack);
        tell_unit(t);
        say_stack_sure(b, t);
        say_feelers(b, t);
        say_last_stack(b, &stack, t);
        tell_off(slots, more ? " As a first pass that is " : " That is ", " deeper", t);
    } else {
        tell_off(slots, " deeper by ", more ? " as a first pass" : "", t);
    }
    if (more) {
        tell(t, ". Then measure again, and expect about ");
        tell_each(t, "slot-left", &left);
        tell(t, " more.");
    } else {
        tell(t, ", all of it in this pass. Then measure again.");
    }
    if (!stacked) {
        say_fall(b, t);
    }
}

/* How deep a slot may be at most, by the rule for it where that is the usual one. */
static void tell_top(const brief *b, const tell_list *slots, telling *t)
{
    tell_list left = say_slots_with(b, *slots, left_of);
    tell(t, tell_most(&left) > 0.0 ? " After the last pass, bring the nut's top down, so that "
                                   : " Then bring the nut's top down, so that ");
    tell(t, say_top_usual(b)
                ? "wound strings lie half in their nut slots, and plain ones fully."
                : "no nut slot is deeper below the top than its depth on the nut's drawing.");
}

void say_doubted_high(const brief *b, telling *t)
{
    tell_list coarse; /* those are measured again with a finer tool anyway */
    say_doubted(b, slots_to_file(b, &coarse), t);
}

void say_file(const brief *b, telling *t)
{
    tell_list coarse, slots = slots_to_file(b, &coarse);
    t->way = BRIEF_DOWN;
    say_doubted_high(b, t);
    if (tell_chosen(&slots) > 0) {
        tell_passes(b, &slots, t);
        say_finished(b, SIL_NUT, t);
        say_files(b, slots, t);
        tell_top(b, &slots, t);
    }
    if (tell_chosen(&coarse) > 0) {
        tell(t, "%sMeasure the gap at the 1st fret of ", tell_chosen(&slots) > 0 ? " " : "");
        tell_which(t, &coarse);
        tell(t, " with a finer tool: it is too high, but no pass is safe with this one");
        say_finer(b, SIL_NUT, t);
    }
}

/* After a first pass the gap is not yet that of the finished slot. */
void say_check_filed(const brief *b, telling *t)
{
    tell_list coarse, slots = slots_to_file(b, &coarse);
    if (tell_chosen(&slots) == 0) { /* nothing is filed yet */
        say_check_written(b, t);
        return;
    }
    tell_list left = say_slots_with(b, slots, left_of);
    bool more = tell_most(&left) > 0.0;
    tell_list gaps = tell_known(say_slots_with(b, slots, more ? gap_first_of : say_gap_done));
    tell(t,
         more
             ? "Stop at the feelers. If you string up on the way and a gap is there already, stop "
               "sooner. The rest is for the next visit. After this pass the gap at the 1st fret of "
             : "Stop at the feelers. If you string up on the way and a gap is there already, stop "
               "sooner. When done, the gap at the 1st fret of ");
    tell_which(t, &gaps);
    tell(t, ", %s, is ", brief_hold(b->plan->bench.targets.first_held));
    tell_each(t, more ? "gap-first" : "gap", &gaps);
    tell(t, ".");
}
