/* SPDX-License-Identifier: MIT */
/* The sentences for where the saddle cannot come down far enough, and for tilting the neck. */
#include "say.h"

#include "../plan/plan.h"

/* Why the saddle is left, and what is to be done about it. */
static void tell_cause(const brief *b, telling *t)
{
    tell(t, b->saddle.in_slot
                ? "Leave the saddle: to bring the action even to the top of its range, it "
                  "would have to go too low. "
                : "Leave the saddle: it reaches the end of its travel before the strings are in "
                  "range. ");
    switch (b->plan->neck.cause) {
    case SIL_SHORT_RELIEF:
        tell(t, "The neck's bow is at fault, which no truss rod can take out: straight, it would "
                "give the saddle ");
        tell_length(t, "bow", -1, b->saddle.bow);
        tell(t, " more, and that is enough. Have a qualified repairer look at it.");
        return;
    case SIL_SHORT_BOTH:
        tell(t, "The neck's bow, which no truss rod can take out, costs ");
        tell_length(t, "bow", -1, b->saddle.bow);
        tell(t,
             " of what is missing; the rest is the neck's angle. Have a qualified repairer look at "
             "both.");
        return;
    case SIL_SHORT_BRIDGE:
        tell(t, "Look at the bridge's notches first, then at its feet: they may be too high. Only "
                "then is it the neck's angle.");
        return;
    case SIL_NOT_SHORT:
    case SIL_SHORT_ANGLE:
        tell(t,
             "The neck's angle is at fault: shim the pocket of a bolt-on neck (write the pocket's "
             "length on the sheet, and the plan says how thick). Any other neck needs a reset, by "
             "a repairer with the jigs for it.");
        return;
    }
}

/* What the saddle can do short of that. It is the owner's choice, and no step orders it. */
static void tell_half_cure(const brief *b, telling *t)
{
    tell_list action = {.count = b->strings}, shallow = {.count = b->strings};
    for (int i = 0; i < b->strings; i++) {
        action.chosen[i] = true;
        action.figure[i] = b->saddle.half_action[i];
        shallow.chosen[i] = b->saddle.half_shallow[i];
    }
    tell(t, " If the owner wants no work on the neck, the saddle can come down until it stands ");
    tell_length(t, "half-out", -1, b->saddle.half_out);
    tell(t, " out of the bridge: the action is then ");
    tell_each(t, "half-action", &action);
    tell_unit(t);
    tell(t, ". Work on the neck later then needs a new, taller saddle.");
    if (tell_chosen(&shallow) > 0) {
        tell(t, " The break angle then ends under its limit (");
        tell_which(t, &shallow);
        tell(t, "): cut ramps behind the saddle, or lower the string holes.");
    }
}

void say_neck_angle(const brief *b, telling *t)
{
    tell_cause(b, t);
    if (brief_known(b->saddle.half_out)) {
        tell_half_cure(b, t);
    }
}

void say_check_neck_angle(const brief *b, telling *t)
{
    tell(t, brief_known(b->saddle.half_out)
                ? "Unless the owner chooses that, leave the saddle until the neck is put right."
                : "Leave the saddle as it is until that has been put right.");
}

static void tell_lift(const brief *b, telling *t)
{
    t->way = t->figure_way = BRIEF_UP;
    tell(t, "the line of the frets must pass the saddle ");
    tell_length(t, "lift", -1, b->saddle.lift);
    tell(t, " higher");
    t->figure_way = BRIEF_NO_WAY;
    if (b->strings > 1) {
        tell(t, " (string ");
        tell_string(t, b->saddle.lift_string);
        tell(t, " needs the most)");
    }
    if (b->saddle.in_slot) {
        tell(t, ", which leaves the saddle standing out well");
    } else if (sil_known(b->plan->job->saddle.travel_up)) {
        tell(t, ", which leaves it in the middle of its travel");
    } else {
        tell(t, ". That is the least: how far the saddle can still go up was not given");
    }
}

void say_neck_shim(const brief *b, telling *t)
{
    tell(t, "Advice for a bolt-on neck: ");
    tell_lift(b, t);
    tell(t, ". That takes a wedge of hard material over the whole floor of the neck pocket. It "
            "runs from nothing at the front edge to about ");
    tell_length(t, "wedge", -1, b->saddle.wedge);
    tell(t, " at the end toward the bridge (");
    tell_figure(t, "wedge-angle", -1, b->saddle.wedge_angle);
    tell(t, "\u00b0).");
}

void say_neck_reset(const brief *b, telling *t)
{
    tell(t, "Advice for a qualified repairer: ");
    tell_lift(b, t);
    tell(t, ". On this neck that is about ");
    tell_length(t, "heel", -1, b->saddle.heel);
    tell(t,
         " off the end of the heel, running out to nothing at the fingerboard. Judge the work by "
         "it; do not cut to it.");
}

void say_check_neck(const brief *b, telling *t)
{
    (void)b;
    tell(t,
         "With the strings back at pitch, measure everything again: relief, gap at the 1st fret, "
         "action, saddle.");
}
