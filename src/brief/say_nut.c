/* SPDX-License-Identifier: MIT */
/* The sentences for the steps at the nut. */
#include "say.h"

#include "../plan/plan.h"

typedef brief_figure figure_of(const brief_slot *slot);

static brief_figure stack_of(const brief_slot *slot)
{
    return slot->stack;
}
static brief_figure gap_of(const brief_slot *slot)
{
    return slot->gap;
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

/* Names the stack of feelers to stop at. */
static void tell_stack(const brief *b, tell_list slots, figure_of *figure, telling *t)
{
    tell_list stack = known(with(b, slots, figure));
    if (tell_chosen(&stack) > 0) {
        tell(t, " File to a feeler stack of ");
        tell_each(t, "stack", &stack);
        tell_unit(t);
        say_stack_sure(b, t);
        say_feelers(t);
        say_last_stack(b, &stack, t);
    }
}

/* Less than this is too little to file, mm. */
static const double least_pass = 0.01;

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
    tell(t, one ? "The nut slot of " : "The nut slots of ");
    tell_which(t, &slots);
    tell(t, one ? " is too low" : " are too low");
    t->way = t->figure_way = BRIEF_UP;
    if (tell_chosen(&low) == tell_chosen(&slots)) {
        tell(t, " by ");
        tell_each(t, "slot", &low);
        tell_unit(t);
        tell(t, " at the nut");
    }
    t->figure_way = BRIEF_NO_WAY;
    bool hardly = all_hardly_low(b, &slots);
    tell(t, tell_chosen(&low) < tell_chosen(&slots)
                ? ". A string that lies on the 1st fret gives no amount, and needs none."
            : hardly ? ", less than the feelers can tell. Play it open first: if it rings clean, "
                       "leave it."
                     : ".");
    tell(t, hardly ? " If not, look at" : " First look at");
    tell(t,
         " the shape: a string that rests on the slot's back edge rattles, so angle the slot down "
         "toward the tuners. That raises no string: measure the gap again.");
    tell(
        t,
        one ? " If it is still too low, fill the slot with dust of the same material and glue, let "
              "it harden, and recut."
            : " Fill the slots still too low with dust of the same material and glue, let it "
              "harden, and recut.");
    tell_stack(b, slots, stack_of, t);
    say_fall(b, t);
    tell(t, " Play it open before the last stroke.");
}

/* The slots that are filed back once a shim has raised all of them. */
static tell_list filed_back(const brief *b)
{
    tell_list back = {.count = b->strings};
    for (int i = 0; i < back.count; i++) {
        back.chosen[i] =
            b->nut.slot[i].does == BRIEF_FILES && b->nut.slot[i].deepen.exact >= least_pass;
    }
    return back;
}

void say_shim_nut(const brief *b, telling *t)
{
    tell_list back = known(with(b, filed_back(b), stack_of));
    tell(t, "Shim the nut: one hard full-length piece of ");
    t->way = BRIEF_UP;
    tell_length(t, "shim", -1, b->nut.shim);
    tell(t,
         " under its bottom. Slacken the strings, score the finish round the nut, and tap it loose "
         "with a block. Every slot rises by as much as the shim is thick.");
    if (tell_chosen(&back) > 0) {
        tell(t, " File those of ");
        tell_which(t, &back);
        tell(t, " back to a feeler stack of ");
        tell_each(t, "stack", &back);
        tell_unit(t);
        say_stack_sure(b, t);
        say_feelers(t);
    }
}

void say_check_shimmed_nut(const brief *b, telling *t)
{
    tell_list touched = filed_back(b), raised = slots_with(b, SIL_RAISE);
    for (int i = 0; i < touched.count; i++) {
        touched.chosen[i] = touched.chosen[i] || raised.chosen[i];
    }
    tell_gaps(b, touched, t);
}

/* The slot that is too low by most; -1 where a string lies on its fret, so that nobody knows. */
static int lowest_slot(const brief *b)
{
    const sil_stages *stages = &b->plan->stages;
    int lowest = -1;
    for (int i = 0; i < b->strings; i++) {
        bool low = stages->nut[i] == SIL_RAISE;
        if (stages->on_fret[i]) {
            return -1;
        }
        lowest = low && (lowest < 0 || stages->deepen[i] < stages->deepen[lowest]) ? i : lowest;
    }
    return lowest;
}

static tell_list every_slot(const brief *b)
{
    tell_list all = {.count = b->strings};
    for (int i = 0; i < all.count; i++) {
        all.chosen[i] = true;
    }
    return all;
}

void say_check_new_nut(const brief *b, telling *t)
{
    tell_gaps(b, every_slot(b), t);
}

void say_new_nut(const brief *b, telling *t)
{
    tell_list all = known(with(b, every_slot(b), stack_of));
    int lowest = lowest_slot(b);
    if (lowest >= 0) {
        tell(t, "Make a new nut: two slots or more are too low, by up to ");
        t->figure_way = BRIEF_UP;
        tell_length(t, "slot", lowest,
                    figure_length(b->unit, -b->plan->stages.deepen[lowest], SIL_NEAREST));
        t->figure_way = BRIEF_NO_WAY;
        tell(t, ", and a shim as thick as that is no good practice.");
    } else {
        tell(t,
             "Make a new nut: more slots are too low than are worth filling. With a string on the "
             "1st fret the amount is not known, so a shim cannot be given.");
    }
    if (tell_chosen(&all) > 0) {
        tell(t, " Cut its slots to a feeler stack of ");
        tell_each(t, "stack", &all);
        tell_unit(t);
        say_stack_sure(b, t);
        say_feelers(t);
    }
    say_fall(b, t);
    tell(t, " Keep the old one until the owner has played.");
}
