/* SPDX-License-Identifier: MIT */
/* The sentences for a bow of the neck that its rod cannot put right. What is done about it is common
 * practice, no source. */
#include "say.h"

#include "../plan/plan.h"

/* What is done about a rod that cannot take a bow out, before the neck is worked. */
static void tell_rod_cure(const brief *b, telling *t)
{
    switch (b->plan->job->instrument.rod_state) {
    case SIL_ROD_AT_END:
        tell(
            t,
            " Slacken the strings and back the truss rod nut off. If it comes off, as on a one-way "
            "rod, "
            "clean and oil the thread, and put washers under it where the thread has run out. "
            "Never force off the nut of a two-way rod. Then tighten it an eighth of a turn at a "
            "time, "
            "tune and read the relief after each, and stop where it turns hard or the relief no "
            "longer moves.");
        return;
    case SIL_ROD_SLACK:
        tell(t,
             " Turn the truss rod nut on, an eighth of a turn at a time, and see whether it takes "
             "hold; "
             "washers under it give it thread. A rod that never pulls is broken or stripped, and a "
             "qualified repairer's work.");
        return;
    case SIL_ROD_STUCK:
        tell(t, " Oil the thread of its nut, give it time, and never force it. A nut that stays "
                "stuck, or a stripped one, is a qualified repairer's work.");
        return;
    case SIL_ROD_ACCEPTED:
    case SIL_ROD_STATE_NOT_GIVEN:
    case SIL_ROD_WORKS:
        return;
    }
}

void say_neck_bow(const brief *b, telling *t)
{
    tell(t, "Stop: the relief is ");
    tell_length(t, "relief", -1, b->relief.now);
    tell(t, ", over ");
    tell_length(t, "relief-limit", -1, figure_nearest(b, b->plan->job->limits.most_relief));
    tell(t, ", and no truss rod can take it out. A nut and saddle cut to it would be too low once "
            "the neck is straightened: have a qualified repairer look at it first.");
    if (plan_rod_first(b->plan)) {
        tell(t, " Before that, put the truss rod right.");
        tell_rod_cure(b, t);
    }
}

void say_rod_first(const brief *b, telling *t)
{
    tell(t, "Put the truss rod right first: the relief is ");
    tell_length(t, "relief", -1, b->relief.now);
    tell(t, ", its target ");
    tell_length(t, "relief-target", -1, b->relief.wanted.aim);
    tell(t, ", and the rod cannot take it out as it is.");
    tell_rod_cure(b, t);
    tell(t, " If that does not do it, a qualified repairer straightens the neck: by heat, by "
            "compression "
            "fretting, or by planing the board. ");
    tell(t,
         sil_working_turns(b->plan->saddle.working)
             ? "Until then the strings may be set at the bridge: that can be turned back. "
             : "Until then nothing comes off the saddle, and no lower saddle is made: it would be "
               "too low on the straight neck. ");
    tell(t,
         "If the owner leaves the neck as it is, write rod_state: accepted; the plan then goes on "
         "with this bow.");
}

void say_check_rod_first(const brief *b, telling *t)
{
    (void)b;
    tell(t,
         "The truss rod nut turns and the neck follows: write rod_state: works. At pitch, measure "
         "everything again.");
}

/* What a rod that does not work may still do against a back-bow. */
static const char *ease_words(const sil_instrument *it)
{
    switch (it->rod == SIL_ROD_NONE ? SIL_ROD_ACCEPTED : it->rod_state) {
    case SIL_ROD_SLACK:
        return it->rod == SIL_ROD_TWO_WAY
                   ? " See first whether the rod, turned on past slack, takes hold the other way."
                   : " Check that the truss rod nut turns freely, so that the rod no longer pulls.";
    case SIL_ROD_AT_END:
        return " First slacken the truss rod nut, an eighth of a turn at a time, until it no "
               "longer "
               "pulls.";
    case SIL_ROD_STUCK:
        return " First have the truss rod nut freed and slackened, without force.";
    case SIL_ROD_ACCEPTED:
    case SIL_ROD_STATE_NOT_GIVEN:
    case SIL_ROD_WORKS:
        break;
    }
    return "";
}

void say_back_bow(const brief *b, telling *t)
{
    const sil_limits *limits = &b->plan->job->limits;
    tell(t, "Let the neck come forward first. It is back-bowed: the relief is ");
    tell_length(t, "relief", -1, b->relief.now);
    tell(t, ", its target ");
    tell_length(t, "relief-target", -1, b->relief.wanted.aim);
    tell(t,
         ". Cut nothing at nut or saddle: every height changes with the neck.%s Then let the "
         "strings pull: bring them to full pitch. If they are there already, fit heavier ones, as "
         "far as the instrument is built for them and its nut slots take them. Keep it for some "
         "days at a humidity of ",
         ease_words(&b->plan->job->instrument));
    tell_figure(t, "humidity-low", -1, figure_number(limits->humidity_low_pct, 0));
    tell(t, " to ");
    tell_figure(t, "humidity-high", -1, figure_number(limits->humidity_high_pct, 0));
    tell(t,
         " %%: a damp board swells and bends the neck back. If it is still back-bowed then, have "
         "a qualified repairer straighten it: by heat, or by planing the board at a refret.");
    if (sil_working_turns(b->plan->saddle.working)) {
        tell(t, " As a stopgap the strings may be raised at the bridge until they ring; write down "
                "by how much.");
    }
}

void say_check_back_bow(const brief *b, telling *t)
{
    (void)b;
    tell(t,
         "With the strings at pitch a straightedge shows a slight bow. Measure everything again.");
}
