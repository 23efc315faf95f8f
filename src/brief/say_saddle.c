/* SPDX-License-Identifier: MIT */
/* The sentences for the steps at the saddle. */
#include "say.h"

#include <string.h>

#include "../plan/plan.h"

typedef brief_figure figure_of(const brief_bearing *string);

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
static brief_figure action_dressed_of(const brief_bearing *string)
{
    return string->action_dressed;
}
static brief_figure action_made_of(const brief_bearing *string)
{
    return string->action_made;
}
static brief_figure action_done_of(const brief_bearing *string)
{
    return string->action_done;
}

/* Gives the action at fret 12 of every string of which it is known. */
static void tell_actions(const brief *b, const char *of, figure_of *figure, telling *t)
{
    tell_list action = {.count = b->strings};
    for (int i = 0; i < action.count; i++) {
        action.figure[i] = figure(&b->saddle.string[i]);
        action.chosen[i] = brief_known(action.figure[i]); /* not of one that waits */
    }
    tell_each(t, of, &action);
}

/* Says what the figures for the saddle depend on. */
static void tell_premise(const brief *b, telling *t)
{
    if (b->plan->stages.changed[SIL_NUT]) {
        tell(t, ", with the nut done as planned");
    }
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
    tell(t, at_the_feet(b) ? ": from its feet to its top, where the string sits."
                           : ": from its bottom to its top, where the string sits.");
}

/* Says what to do first with a bridge that only the strings hold in place. */
static void tell_slide_out(const brief *b, telling *t)
{
    if (b->saddle.floats) {
        tell(t, " First mark where the bridge stands; slacken the strings, but never take all of "
                "them off, and slide it out.");
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
        tell(t, " Play every string through the pickup before the last cut: a weak one means that "
                "its bottom is not flat.");
    } else if (takes_much(b) && !b->saddle.one_pass) {
        tell(t, " Much comes off: let the owner play it before the last cut.");
    }
}

/* Where to stop comes first, then how much that is. The feet of a bridge follow the arch of the top. */
static void tell_sanding(const brief *b, telling *t)
{
    bool feet = at_the_feet(b), one = b->saddle.one_pass;
    const char *how = feet ? " Lay the abrasive paper over the top where they stand, so that they "
                             "keep its arch."
                           : " Keep it straight from end to end.";
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
static void tell_after_nut(const brief *b, telling *t)
{
    if (b->plan->stages.changed[SIL_NUT]) {
        t->figure_way = BRIEF_NO_WAY;
        tell(t, " First do the nut, and measure the action. Where it is not about ");
        tell_actions(b, "action-before", action_before_of, t);
        tell_unit(t);
        tell(t, ", plan again.");
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
    tell_sanding(b, t);
    tell_after_nut(b, t);
    say_finished(b, SIL_SADDLE, t);
    tell_others(b, t);
    t->figure_way = BRIEF_NO_WAY;
    tell(t, " Then measure again");
    if (!saddle->one_pass) {
        t->figure_way = BRIEF_DOWN;
        tell(t, ", and expect about another ");
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
    tell(t, "Action at the 12th after this pass");
    tell_premise(b, t);
    tell(t, ": ");
    tell_actions(b, "action", action_first_of, t);
    if (!b->saddle.one_pass) {
        tell(t, ". When all is sanded: ");
        tell_actions(b, "action", action_all_of, t);
    }
    tell(t, ".");
}

/* The strings whose top is dressed, each with one of its figures. */
static tell_list dressed(const brief *b, figure_of *figure)
{
    tell_list dress = {.count = b->strings};
    for (int i = 0; i < dress.count; i++) {
        dress.chosen[i] = brief_known(b->saddle.string[i].dress);
        dress.figure[i] = figure(&b->saddle.string[i]);
    }
    return dress;
}

static brief_figure dress_of(const brief_bearing *string)
{
    return string->dress;
}
static brief_figure dress_first_of(const brief_bearing *string)
{
    return string->dress_first;
}
static brief_figure dress_left_of(const brief_bearing *string)
{
    return string->dress_left;
}

/* Takes the strings out of a list for which no pass is safe with these tools. */
static tell_list take_coarse(const brief *b, tell_list *dress)
{
    tell_list coarse = *dress;
    for (int i = 0; i < dress->count; i++) {
        bool held = sil_known(b->plan->saddle.hold[i]); /* so that it rings clean: no tool helps */
        bool little = dress->chosen[i] && dress->figure[i].exact < 0.01;
        coarse.chosen[i] = little && !held;
        dress->chosen[i] = dress->chosen[i] && !little;
    }
    return coarse;
}

bool say_dresses_later(const brief *b)
{
    return b->saddle.takes_all && !b->saddle.one_pass;
}

/* The same strings with about how much is left to dress after the first pass. */
static tell_list with_left(const brief *b, const tell_list *dress)
{
    tell_list left = dressed(b, dress_left_of);
    for (int i = 0; i < left.count; i++) {
        left.chosen[i] = dress->chosen[i];
    }
    return left;
}

static double most_left(const tell_list *left)
{
    double most = 0.0;
    for (int i = 0; i < left->count; i++) {
        most = left->chosen[i] ? fmax(most, left->figure[i].exact) : most;
    }
    return most;
}

/* Says to dress the top in a first pass, and about how much is left after it. */
static void tell_pass(const brief *b, const tell_list *dress, telling *t)
{
    tell_list left = with_left(b, dress);
    tell(t, "Dress the top of the saddle under ");
    tell_which(t, dress);
    tell(t, ": take off ");
    tell_each(t, "top", dress);
    tell_unit(t);
    if (most_left(&left) > 0.0) {
        tell(t, " as a first pass. Then measure again, and expect about ");
        tell_each(t, "top-left", &left);
        tell(t, " more.");
    } else {
        tell(t, ", all of it in this pass, then measure again.");
    }
    if (!b->saddle.base) {
        tell_after_nut(b, t);
        say_finished(b, SIL_SADDLE, t);
    }
    tell(t, " Slacken the string and lift it aside. Keep the point where it leaves the saddle.");
}

static void tell_dress_first(const brief *b, telling *t)
{
    tell_list dress = dressed(b, dress_first_of), coarse = take_coarse(b, &dress);
    if (tell_chosen(&dress) > 0) {
        tell_pass(b, &dress, t);
    }
    if (tell_chosen(&coarse) > 0) {
        tell(t, "%sMeasure the action of ", tell_chosen(&dress) > 0 ? " " : "");
        tell_which(t, &coarse);
        tell(t, " with a finer tool: the saddle is too high there, but no pass is safe with this "
                "one");
        say_finer(b, SIL_SADDLE, t);
    }
}

void say_dress(const brief *b, telling *t)
{
    t->way = t->figure_way = BRIEF_DOWN;
    if (!say_dresses_later(b)) {
        tell_dress_first(b, t);
        return;
    }
    tell_list dress = dressed(b, dress_of);
    tell(t, "After measuring again, dress the top of the saddle under ");
    tell_which(t, &dress);
    tell(t, ": take off ");
    tell_each(t, "top", &dress);
    tell_unit(t);
    tell(t, ", a little at a time. Slacken the string and lift it aside. Keep the point where it "
            "leaves the saddle.");
    if (b->saddle.working == SIL_WORKING_TOP) {
        tell(t, " It is glued in: let the owner play it before the last stroke.");
    }
}

void say_check_action(const brief *b, telling *t)
{
    tell(t, "Action at the 12th when done");
    tell_premise(b, t);
    tell(t, ": ");
    tell_actions(b, "action", action_done_of, t);
    tell(t, ".");
}

void say_check_new_saddle(const brief *b, telling *t)
{
    tell(t, "Action at the 12th at first");
    tell_premise(b, t);
    tell(t, ": ");
    tell_actions(b, "action", action_made_of, t);
    tell(t, ". When done: ");
    tell_actions(b, "action", action_done_of, t);
    tell(t, ".");
}

void say_check_dress(const brief *b, telling *t)
{
    tell_list dress = dressed(b, dress_first_of), coarse = take_coarse(b, &dress);
    tell_list left = with_left(b, &dress);
    if (say_dresses_later(b) || (tell_chosen(&coarse) == 0 && most_left(&left) == 0.0)) {
        say_check_action(b, t);
        return;
    }
    if (tell_chosen(&dress) == 0) { /* nothing is dressed yet */
        say_check_written(b, t);
        return;
    }
    tell(t, "Action at the 12th after this pass");
    tell_premise(b, t);
    tell(t, ": ");
    tell_actions(b, "action", action_dressed_of, t);
    tell(t, ". When all is dressed: ");
    tell_actions(b, "action", action_done_of, t);
    tell(t, ".");
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
    tell(t, "Action at the 12th with the shim under it");
    tell_premise(b, t);
    tell(t, ": ");
    tell_actions(b, "action", action_all_of, t);
    tell(t, ".");
}

void say_saddle_moved(const brief *b, const sil_finding *f, int count, telling *t)
{
    (void)count;
    double by = f->read; /* how much higher the saddle reads */
    tell(t, "By the caliper the saddle is ");
    t->figure_way = by > 0.0 ? BRIEF_UP : BRIEF_DOWN;
    tell_length(t, "read", -1, figure_length(b->unit, fabs(by), SIL_NEAREST));
    t->figure_way = BRIEF_NO_WAY;
    tell(t,
         " %s than at the visit before, though it was not worked. One of the two readings is "
         "wrong: measure it again.",
         by > 0.0 ? "higher" : "lower");
}
