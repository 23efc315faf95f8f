/* SPDX-License-Identifier: MIT */
/* The sentences for the steps at the saddle. */
#include "say.h"

#include <string.h>

#include "../plan/plan.h"

static brief_figure action_before_of(const brief_bearing *string)
{
    return string->action_before;
}
static brief_figure action_first_of(const brief_bearing *string)
{
    return string->action_first;
}
static brief_figure action_all_of(const brief_bearing *string)
{
    return string->action_all;
}
static brief_figure action_made_of(const brief_bearing *string)
{
    return string->action_made;
}
brief_figure say_action_done(const brief_bearing *string)
{
    return string->action_done;
}

static void tell_actions(const brief *b, tell_list strings, say_bearing_figure *figure, telling *t)
{
    tell_list action = tell_known(say_strings_with(b, strings, figure));
    tell_each(t, "action", &action); /* not of one that waits */
}

void say_actions_of(const brief *b, tell_list strings, const char *when, say_bearing_figure *figure,
                    const char *later, say_bearing_figure *then, telling *t)
{
    tell(t, "Action at the 12th ");
    if (tell_chosen(&strings) < b->strings) {
        tell(t, "of ");
        tell_which(t, &strings);
        tell(t, " ");
    }
    tell(t, "%s%s: ", when,
         b->plan->stages.changed[SIL_NUT] ? ", with the nut done as planned" : "");
    tell_actions(b, strings, figure, t);
    if (later) {
        tell(t, ". %s: ", later);
        tell_actions(b, strings, then, t);
    }
    tell(t, ".");
}

void say_actions(const brief *b, const char *when, say_bearing_figure *figure, const char *later,
                 say_bearing_figure *then, telling *t)
{
    say_actions_of(b, tell_every(b), when, figure, later, then, t);
}

/* Gives a figure at each end of the saddle. */
static void tell_ends(const brief *b, const char *of, const brief_figure *figures, telling *t)
{
    if (b->strings == 1) {
        tell_length(t, of, -1, figures[BRIEF_TREBLE]);
        return;
    }
    if (strcmp(figures[BRIEF_TREBLE].shown, figures[BRIEF_BASS].shown) == 0) {
        t->end = BRIEF_TREBLE;
        tell_length(t, of, -1, figures[BRIEF_TREBLE]);
        t->end = BRIEF_BASS;
        tell_noted(t, of, -1, figures[BRIEF_BASS]);
        t->end = BRIEF_NO_END;
        tell(t, " at both ends");
        return;
    }
    for (brief_end end = BRIEF_TREBLE; end < BRIEF_ENDS; end++) {
        tell_length_at(t, of, end, figures[end]);
        tell(t, "%s", end == BRIEF_TREBLE ? " and " : "");
    }
}

static bool at_the_feet(const brief *b)
{
    return b->saddle.working == SIL_WORKING_FEET;
}

static bool has_caliper(const brief *b)
{
    return brief_known(b->saddle.caliper[BRIEF_TREBLE]) &&
           brief_known(b->saddle.caliper[BRIEF_BASS]);
}

/* Says "until the caliper reads 7.85 mm at string 1 and 8.80 mm at string 6." and from where to
 * where: the saddle is out, and no string lies on it. */
static void tell_caliper(const brief *b, telling *t)
{
    const brief_figure *stop = b->saddle.caliper;
    int last = b->strings - 1;
    tell(t, " until the caliper reads ");
    tell_length(t, "caliper", 0, stop[BRIEF_TREBLE]);
    if (last > 0) {
        tell(t, " at string ");
        tell_string(t, 0);
        tell(t, " and ");
        tell_length(t, "caliper", last, stop[BRIEF_BASS]);
        tell(t, " at string ");
        tell_string(t, last);
    }
    tell(t, at_the_feet(b) ? ", measured from the bridge's feet to its top where the string sits."
                           : ", measured from the saddle's bottom to its top where the string "
                             "sits.");
}

/* Says how the piece comes out; a bridge that only the strings hold in place is marked before. */
static void tell_slide_out(const brief *b, telling *t)
{
    if (b->saddle.floats) {
        tell(t, " First mark where the bridge stands; slacken the strings, but never take all of "
                "them off, and slide the bridge out.");
    } else {
        tell(t, " First slacken the strings and take the saddle out.");
    }
}

/* Names the strings in their range that come down with the others but stay in range. */
static void tell_others(const brief *b, telling *t)
{
    tell_list others = {.count = b->strings};
    for (int i = 0; i < others.count; i++) {
        const brief_bearing *string = &b->saddle.string[i];
        others.chosen[i] = string->verdict == SIL_LEAVE && string->base_first.exact >= 0.01;
    }
    if (tell_chosen(&others) > 0) {
        bool one = tell_chosen(&others) == 1;
        tell(t, " In this pass ");
        tell_which(t, &others);
        tell(t,
             " %s down too, and %s in range; if you do not want that, dress the top under the "
             "others instead.",
             one ? "comes" : "come", one ? "stays" : "stay");
    }
}

static void say_too_coarse(const brief *b, telling *t)
{
    tell(t, "Measure the action with a finer tool: the saddle is too high, by ");
    tell_ends(b, "base", b->saddle.base_all, t);
    tell(t, ", but no pass is safe with this one");
    say_finer(b, SIL_SADDLE, t);
}

/* Past this much off the base, the owner plays it between two passes, mm. Common practice, no
 * source. */
static const double much = 0.5;

static bool takes_much(const brief *b)
{
    const brief_figure *all = b->saddle.base_all;
    return fmax(all[BRIEF_TREBLE].exact, all[BRIEF_BASS].exact) > much;
}

/* What was cut does not go back on, so it is played before the last of it goes. */
static void tell_playing_test(const brief *b, telling *t)
{
    if (sil_known(b->plan->job->saddle.pickup) && b->plan->job->saddle.pickup > 0.0) {
        tell(t, " Play every string through the pickup before the last cut: a weak string means "
                "that the saddle's bottom is not flat.");
    } else if (takes_much(b) && !b->saddle.one_pass) {
        tell(t, " The whole cut is large: let the owner play it before the last of it.");
    }
}

/* Where to stop comes first, then how much that is. The feet of a bridge follow the arch of the top. */
static void tell_sanding(const brief *b, telling *t)
{
    bool feet = at_the_feet(b), one = b->saddle.one_pass;
    const char *how = feet ? " Lay abrasive paper, grit up, on the top where the bridge stands and "
                             "rub the feet on it, so that they match its arch."
                           : " Keep the bottom straight from end to end, and square to the faces.";
    const char *pass = one ? ", all of it in this pass." : " as a first pass.";
    t->figure_way = BRIEF_NO_WAY;
    tell(t, feet ? "Sand the feet of the bridge" : "Sand the saddle's bottom");
    if (has_caliper(b)) {
        tell_caliper(b, t);
        tell_slide_out(b, t);
        tell(t, "%s That takes off ", how);
    } else {
        tell(t, ": ");
    }
    t->figure_way = BRIEF_DOWN;
    tell_ends(b, "base", b->saddle.base_first, t);
    tell(t, "%s", pass);
    if (!has_caliper(b)) {
        tell_slide_out(b, t);
        tell(t, "%s", how);
    }
}

/* Where the nut is worked at the same visit, the action is read before the saddle is cut. */
void say_after_nut(const brief *b, telling *t)
{
    tell_list before = tell_known(say_strings_with(b, tell_every(b), action_before_of));
    if (b->plan->stages.changed[SIL_NUT]) {
        t->figure_way = BRIEF_NO_WAY;
        tell(t, "First do the nut, and measure the action. Where it is not about ");
        tell_span(t, "action-before", &before);
        tell_unit(t);
        tell(t, ", plan again, and cut nothing here. ");
        t->figure_way = BRIEF_DOWN;
    }
}

void say_sand(const brief *b, telling *t)
{
    const brief_saddle *saddle = &b->saddle;
    t->way = t->figure_way = BRIEF_DOWN;
    if (!saddle->takes_first) {
        say_too_coarse(b, t);
        return;
    }
    say_after_nut(b, t);
    tell_sanding(b, t);
    say_finished(b, SIL_SADDLE, t);
    tell_others(b, t);
    t->figure_way = BRIEF_NO_WAY;
    tell(t, " Put it back, tune, and measure the action");
    if (!saddle->one_pass) {
        t->figure_way = BRIEF_DOWN;
        tell(t, ". Expect to take off about another ");
        tell_ends(b, "base-left", saddle->base_left, t);
    }
    tell(t, ".");
    tell_playing_test(b, t);
}

void say_check_sand(const brief *b, telling *t)
{
    if (!b->saddle.takes_first) { /* nothing is sanded yet */
        say_check_written(b, t);
        return;
    }
    say_actions(b, "after this pass", action_first_of,
                b->saddle.one_pass ? NULL : "After the last pass", action_all_of, t);
}

void say_check_action(const brief *b, telling *t)
{
    say_actions(b, "when done", say_action_done, NULL, NULL, t);
}

static brief_figure action_curved_of(const brief_bearing *string)
{
    return string->action_curved;
}

/* Posts and thumbwheels come before this step, and the curve is what they leave. */
void say_check_curve(const brief *b, telling *t)
{
    say_actions(b, "before this step", say_action_done, "When done", action_curved_of, t);
}

void say_check_new_saddle(const brief *b, telling *t)
{
    say_actions(b, "at first", action_made_of, "When done", say_action_done, t);
}

void say_shim_saddle(const brief *b, telling *t)
{
    t->way = t->figure_way = BRIEF_UP;
    tell(t, at_the_feet(b) ? "Shim the bridge: a hard piece of "
                           : "Shim the saddle: one hard full-length piece of ");
    tell_length(t, "shim", -1, b->saddle.shim);
    tell(t, at_the_feet(b) ? " under each foot, fitted to the top."
                           : " under it, flat and snug in the slot.");
    tell_slide_out(b, t);
}

void say_check_shimmed(const brief *b, telling *t)
{
    say_actions(b, "with the shim under it", action_all_of, NULL, NULL, t);
}

void say_saddle_moved(const brief *b, const sil_finding *f, int count, telling *t)
{
    (void)count;
    double by = f->read; /* how much higher the saddle reads */
    tell(t, "By the caliper the saddle is ");
    t->figure_way = by > 0.0 ? BRIEF_UP : BRIEF_DOWN;
    tell_length(t, "read", -1, figure_nearest(b, fabs(by)));
    t->figure_way = BRIEF_NO_WAY;
    tell(t,
         " %s than at the visit before, though no work was done on it. One of the two readings "
         "is wrong: measure it again.",
         by > 0.0 ? "higher" : "lower");
}
