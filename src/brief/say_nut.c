/* SPDX-License-Identifier: MIT */
/* The sentences for the steps at the nut. */
#include "say.h"

#include "../plan/plan.h"

void say_doubted_low(const brief *b, telling *t)
{
    say_doubted(b, say_slots(b, SIL_RAISE), t);
}

void say_check_filled(const brief *b, telling *t)
{
    tell_list gaps = tell_known(say_slots_with(b, say_slots(b, SIL_RAISE), say_gap_done));
    tell(t,
         "The file touched the first stack, and went no deeper. The target for the gap at the 1st "
         "fret of ");
    tell_which(t, &gaps);
    tell(t, ", %s, is ", brief_hold(b->plan->bench.targets.first_held));
    tell_each(t, "gap", &gaps);
    tell(t, ": the next visit says whether more comes off.");
}

/* Whether the feelers can hardly tell that any of them is low, and nobody heard it. */
static bool all_hardly_low(const brief *b, const tell_list *slots)
{
    for (int i = 0; i < slots->count; i++) {
        if (slots->chosen[i] &&
            (!b->nut.slot[i].hardly_low || b->plan->bench.standing.buzz_open[i])) {
            return false;
        }
    }
    return true;
}

void say_fill(const brief *b, telling *t)
{
    tell_list slots = say_slots(b, SIL_RAISE), low = slots;
    for (int i = 0; i < slots.count; i++) {
        low.figure[i] = figure_nearest(b, -b->plan->stages.deepen[i]);
    }
    low = tell_known(low);
    bool one = tell_chosen(&slots) == 1;
    say_doubted_low(b, t);
    tell(t, one ? "The nut slot of " : "The nut slots of ");
    tell_which(t, &slots);
    tell(t, one ? " is too low" : " are too low");
    t->way = t->figure_way = BRIEF_UP;
    if (tell_chosen(&low) == tell_chosen(&slots)) {
        tell(t, ": ");
        tell_each(t, "slot", &low);
        tell_unit(t);
        tell(t, one ? " under its target at the nut" : " under their targets at the nut");
    }
    t->figure_way = BRIEF_NO_WAY;
    bool hardly = all_hardly_low(b, &slots);
    tell(t, tell_chosen(&low) < tell_chosen(&slots)
                ? ". With a string on the 1st fret there is no gap to measure, and none is needed."
            : hardly ? ", less than the feelers can tell. Play it open first: if it rings clean, "
                       "leave it."
                     : ".");
    tell(t, hardly ? " If not, fill " : " Fill ");
    tell(t, one ? "it and recut it" : "them and recut them");
    tell(t, ": a new angle alone raises no string. One that bears on its slot's back edge rattles, "
            "too, and recutting cures that. Slacken the string and lift it aside. Clean the slot "
            "of graphite and grease, and mask the wood around it. Pack it with dust of the same "
            "material, wick in thin super glue, and let it harden.");
    say_first_stacks(b, slots, t);
    tell(t, " Then string up, tune, and play it open.");
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
    tell_list back = filed_back(b), high = say_slots(b, SIL_TAKE);
    say_doubted_low(b, t);
    tell(t, "Shim the nut: one hard full-length piece of ");
    t->way = BRIEF_UP;
    tell_length(t, "shim", -1, b->nut.shim);
    tell(
        t,
        " under its bottom. Slacken the strings and lift them aside. Score the finish around the "
        "nut, and tap it loose with a block on its front face, toward the tuners; or endwise where "
        "wood stands behind it. Clean the old glue off the nut and its place in the neck, and take "
        "no wood. Lay the shim in, and set the nut on it dry. Every nut slot rises by as much");
    if (tell_chosen(&back) == 0) {
        tell(t, tell_chosen(&high) > 0 ? ", and none but those that were too high is filed."
                                       : ", and none is filed.");
    } else {
        tell(t, ". File back those of ");
        tell_which(t, &back);
        tell(t, ", which are then too high, and leave the others as they are.");
        say_first_stacks(b, back, t);
    }
    tell(t, " Glue the nut with a small drop at each end once the gaps are right.");
}

void say_check_shimmed_nut(const brief *b, telling *t)
{
    tell_list gaps = {.count = b->strings};
    for (int i = 0; i < gaps.count; i++) {
        gaps.chosen[i] = b->nut.slot[i].verdict != SIL_TAKE;
    }
    gaps = tell_known(say_slots_with(b, gaps, say_gap_done));
    tell(t, "Tune, and measure. When done, the gap at the 1st fret of ");
    tell_which(t, &gaps);
    tell(t, ", %s, is ", brief_hold(b->plan->bench.targets.first_held));
    tell_each(t, "gap", &gaps);
    tell(t, ".");
}
