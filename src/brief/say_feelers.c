/* SPDX-License-Identifier: MIT */
/* What filing, filling and cutting nut slots share: the feelers to stop at, the files, the slope. */
#include "say.h"
#include "within.h"

#include "../plan/plan.h"

/* The strings of a list for which something holds of the feelers. */
static tell_list those(const brief *b, tell_list slots, bool stays)
{
    for (int i = 0; i < slots.count; i++) {
        const brief_slot *slot = &b->nut.slot[i];
        slots.chosen[i] = slots.chosen[i] && (stays ? slot->stack_stays : slot->stack_moved);
    }
    return slots;
}

brief_figure say_first_stack(const brief_slot *slot)
{
    return slot->stack_first;
}

brief_figure say_gap_done(const brief_slot *slot)
{
    return slot->gap;
}

bool say_top_usual(const brief *b)
{
    const sil_allowances *allow = &b->plan->job->allowances;
    return allow->bury_wound == 0.5 && allow->bury_plain == 1.0;
}

void say_last_stack(const brief *b, const tell_list *stack, telling *t)
{
    tell_list moved = those(b, *stack, false), stays = those(b, *stack, true);
    if (tell_chosen(&moved) > 0) {
        tell(t, " The stack for ");
        tell_which(t, &moved);
        tell(t, " follows from the last one and the gap measured since.");
    }
    if (tell_chosen(&stays) > 0) {
        tell(t, " If you filed down to the last stack and the gap of ");
        tell_which(t, &stays);
        tell(t,
             " did not change, see that the string reaches its slot floor. A narrow slot pinches "
             "it: widen that first. If it does reach the floor, it is stiff: file by the amount, "
             "not by the feelers.");
    }
}

/* Names the files to use, and the strings of whose slot the shop has none. */
void say_files(const brief *b, tell_list slots, telling *t)
{
    tell_list fits = slots, rolls = slots;
    if (b->plan->job->file_count == 0) {
        return;
    }
    for (int i = 0; i < slots.count; i++) {
        bool has = brief_has_file(b->plan->job, b->plan->slot_width[i]);
        fits.figure[i] = rolls.figure[i] = b->nut.slot[i].width;
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
    tell(t, " Hold the file ");
    if (brief_known(b->nut.fall)) {
        tell_figure(t, "fall", -1, b->nut.fall);
        tell(t, "\u00b0 ");
    } else {
        tell(t, "tilted ");
    }
    tell(t, "down toward the tuners from the first stroke, so that the string leaves the nut at "
            "its front edge.");
}

/* Where the feelers lie, and how the file is held before it touches them. */
static void tell_lay(const brief *b, telling *t)
{
    tell(t, " Lay the feelers flat on the board in line with the nut slot, hard against the nut's "
            "front face.");
    say_fall(b, t);
    tell(t, " Stop when the file touches ");
}

void say_feelers(const brief *b, telling *t)
{
    tell(t, " Slacken the string and lift it aside.");
    tell_lay(b, t);
    tell(t, "them.");
}

/* Says how closely a stack of feelers gives the height of the string, and ends the sentence. */
void say_stack_sure(const brief *b, telling *t)
{
    const brief_nut *nut = &b->nut;
    tell(t, ", good to \u00b1");
    tell_length(t, "stack-sure", -1, nut->stack_sure);
    tell(t, ".");
    if (brief_known(nut->stack_bend)) {
        tell(t, " A stiff string may ride up to ");
        tell_length(t, "stack-bend", -1, nut->stack_bend);
        tell(t, " above its slot floor: once strung up, the gap counts, not the stack.");
    }
}

static brief_figure stack_of(const brief_slot *slot)
{
    return slot->stack;
}

void say_first_stacks(const brief *b, tell_list slots, telling *t)
{
    tell_list first = tell_known(say_slots_with(b, slots, say_first_stack));
    tell_list good = tell_known(say_slots_with(b, slots, stack_of));
    if (tell_chosen(&first) == 0) {
        say_fall(b, t);
        return;
    }
    tell_lay(b, t);
    tell(t, "a first feeler stack of ");
    say_first_and_final("stack", "stack-first", &first, &good, t);
    say_stack_sure(b, t);
    say_last_stack(b, &good, t);
}
