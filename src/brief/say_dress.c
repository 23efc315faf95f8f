/* SPDX-License-Identifier: MIT */
/* The sentences for dressing the top of a saddle. */
#include "say.h"

#include "../plan/plan.h"

/* Less than this off the line of the actions nobody would file, mm. */
static const double least_off = 0.01;

static brief_figure action_dressed_of(const brief_bearing *string)
{
    return string->action_dressed;
}

/* The strings whose top is dressed, each with one of its figures. */
static tell_list dressed(const brief *b, say_bearing_figure *figure)
{
    tell_list dress = {.count = b->strings};
    for (int i = 0; i < dress.count; i++) {
        dress.chosen[i] = brief_known(b->saddle.string[i].dress);
    }
    return say_strings_with(b, dress, figure);
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

/* The same with the first pass of each; the tools are too coarse to give a safe one to those in
 * `coarse`. */
static tell_list dressed_first(const brief *b, tell_list *coarse)
{
    tell_list dress = dressed(b, dress_first_of);
    *coarse = say_take_coarse(&dress, b->plan->saddle.hold);
    return dress;
}

/* Whether the top is filed to a line that is not quite what was read. */
static bool evened(const brief *b)
{
    for (int i = 0; i < b->strings; i++) {
        if (fabs(b->plan->off_line[i]) >= least_off) {
            return true;
        }
    }
    return false;
}

/* Says to dress the top in a first pass, and about how much is left after it. */
static void tell_pass(const brief *b, const tell_list *dress, telling *t)
{
    tell_list left = say_strings_with(b, *dress, dress_left_of);
    if (!b->saddle.base) {
        say_after_nut(b, t);
    }
    tell(t, "Dress the top of the saddle under ");
    tell_which(t, dress);
    tell(t, ": take off ");
    tell_each(t, "top", dress);
    tell_unit(t);
    if (tell_most(&left) > 0.0) {
        tell(t, " as a first pass. Then measure again, and expect about ");
        tell_each(t, "top-left", &left);
        tell(t, " more.");
    } else {
        tell(t, ", all of it in this pass, then measure again.");
    }
    if (!b->saddle.base) {
        say_finished(b, SIL_SADDLE, t);
    }
    if (evened(b)) {
        tell(t,
             " File one smooth line: the amounts follow a line through all the actions, not each "
             "reading.");
    }
    tell(t, " Slacken the string and lift it aside. Keep the point where it leaves the saddle.");
}

static void tell_dress_first(const brief *b, telling *t)
{
    tell_list coarse, dress = dressed_first(b, &coarse);
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
    if (!b->saddle.dresses_later) {
        tell_dress_first(b, t);
        return;
    }
    tell_list dress = dressed(b, dress_of);
    tell(t, "After the last pass off the bottom, measure and plan again. Then dress the top of the "
            "saddle under ");
    tell_which(t, &dress);
    tell(t, ": take off about ");
    tell_each(t, "top", &dress);
    tell_unit(t);
    tell(t, ", a little at a time. Slacken the string and lift it aside. Keep the point where it "
            "leaves the saddle.");
    if (b->saddle.working == SIL_WORKING_TOP) {
        tell(t, " It is glued in: let the owner play it before the last stroke.");
    }
}

void say_check_dress(const brief *b, telling *t)
{
    tell_list coarse, dress = dressed_first(b, &coarse);
    tell_list left = say_strings_with(b, dress, dress_left_of);
    if (b->saddle.dresses_later || (tell_chosen(&coarse) == 0 && tell_most(&left) == 0.0)) {
        say_check_action(b, t);
        return;
    }
    if (tell_chosen(&dress) == 0) { /* nothing is dressed yet */
        say_check_written(b, t);
        return;
    }
    say_actions_of(b, dressed(b, dress_of), "after this pass", action_dressed_of,
                   "After the last pass", say_action_done, t);
}
