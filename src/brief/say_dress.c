/* SPDX-License-Identifier: MIT */
/* The sentences for dressing the top of a saddle. */
#include "say.h"

#include "../plan/plan.h"

static brief_figure action_dressed_of(const brief_bearing *string)
{
    return string->action_dressed;
}
static brief_figure action_done_of(const brief_bearing *string)
{
    return string->action_done;
}

/* The strings whose top is dressed, each with one of its figures. */
static tell_list dressed(const brief *b, say_bearing_figure *figure)
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
        say_after_nut(b, t);
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
    say_premise(b, t);
    tell(t, ": ");
    say_actions(b, action_dressed_of, t);
    tell(t, ". When all is dressed: ");
    say_actions(b, action_done_of, t);
    tell(t, ".");
}
