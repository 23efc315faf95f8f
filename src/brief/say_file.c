/* SPDX-License-Identifier: MIT */
/* The sentences for filing nut slots. */
#include "say.h"

#include "../plan/plan.h"

/* Less than this is too little to file, mm. */
static const double least_pass = 0.01;

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
    return slot->stack_first;
}
static brief_figure gap_of(const brief_slot *slot)
{
    return slot->gap;
}
static brief_figure gap_first_of(const brief_slot *slot)
{
    return slot->gap_first;
}

/* A list of the same slots with a different figure of each; known: only those that have it. */
static tell_list with(const brief *b, tell_list list, figure_of *figure, bool known)
{
    for (int i = 0; i < list.count; i++) {
        list.figure[i] = figure(&b->nut.slot[i]);
        list.chosen[i] = list.chosen[i] && (!known || brief_known(list.figure[i]));
    }
    return list;
}

static tell_list high_slots(const brief *b)
{
    tell_list list = {.count = b->strings};
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = b->nut.slot[i].verdict == SIL_TAKE;
    }
    return list;
}

/* Takes out of a list those slots that are too high, but by so little that the tools are too coarse
 * for a safe first pass. */
static tell_list take_coarse(const brief *b, tell_list *filed)
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

static double most_left(const brief *b, const tell_list *slots)
{
    double most = 0.0;
    for (int i = 0; i < slots->count; i++) {
        most = slots->chosen[i] ? fmax(most, b->nut.slot[i].left.exact) : most;
    }
    return most;
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
    tell_list first = with(b, *slots, first_of, false), left = with(b, *slots, left_of, false);
    tell_list stack = with(b, *slots, stack_of, true);
    bool more = most_left(b, slots) > 0.0;
    tell(t, tell_chosen(slots) == 1 ? "File the nut slot of " : "File the nut slots of ");
    tell_which(t, slots);
    if (tell_chosen(&stack) > 0) {
        tell(t, " to a feeler stack of ");
        tell_each(t, "stack", &stack);
        tell_unit(t);
        say_stack_sure(b, t);
        say_feelers(t);
        say_last_stack(b, &stack, t);
        tell_off(&first, more ? " As a first pass that is " : " That is ", " deeper", t);
    } else {
        tell_off(&first, " deeper by ", more ? " as a first pass" : "", t);
    }
    if (more) {
        tell(t, ". Then measure again, and expect about ");
        tell_each(t, "slot-left", &left);
        tell(t, " more.");
    } else {
        tell(t, ", all of it in this pass. Then measure again.");
    }
}

/* How deep a slot may be at most, by the rule for it where that is the usual one. */
static void tell_top(const brief *b, telling *t)
{
    const sil_allowances *allow = &b->plan->job->allowances;
    tell(t, " Then bring the nut's top down, so that ");
    tell(t, allow->bury_wound == 0.5 && allow->bury_plain == 1.0
                ? "wound strings lie half in, and plain ones wholly."
                : "no nut slot is deeper below the top than its depth on the nut's sheet.");
}

void say_doubted_high(const brief *b, telling *t)
{
    tell_list slots = high_slots(b);
    (void)take_coarse(b, &slots); /* those are measured again with a finer tool anyway */
    say_doubted(b, slots, t);
}

void say_file(const brief *b, telling *t)
{
    tell_list slots = high_slots(b), coarse = take_coarse(b, &slots);
    t->way = BRIEF_DOWN;
    say_doubted_high(b, t);
    if (tell_chosen(&slots) > 0) {
        tell_passes(b, &slots, t);
        say_finished(b, SIL_NUT, t);
        say_files(b, slots, t);
        say_fall(b, t);
        tell_top(b, t);
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
    tell_list slots = high_slots(b);
    take_coarse(b, &slots);
    if (tell_chosen(&slots) == 0) { /* nothing is filed yet */
        say_check_written(b, t);
        return;
    }
    bool more = most_left(b, &slots) > 0.0;
    tell_list gaps = with(b, slots, more ? gap_first_of : gap_of, true);
    tell(t,
         more
             ? "Stop at the feelers or at the gap, whichever comes first: the rest is for the next "
               "visit. After this pass the gap at the 1st fret of "
             : "Measure as you file, and stop at the gap, whatever the feelers say. When done, "
               "the gap at the 1st fret of ");
    tell_which(t, &gaps);
    tell(t, ", %s, is ", brief_hold(b->plan->bench.targets.first_held));
    tell_each(t, more ? "gap-first" : "gap", &gaps);
    tell(t, ".");
}
