/* SPDX-License-Identifier: MIT */
/* The sentences for what is turned at the saddle: height screws, posts and thumbwheels. */
#include <stdio.h>

#include "say.h"

#include "../plan/plan.h"

static void tell_turned(telling *t, int string, brief_way way, brief_figure moves,
                        brief_figure turns)
{
    tell_way_word(t, way);
    tell(t, " ");
    tell_length(t, "screw", string, moves);
    text_store *store = &t->b->store;
    tell(t, " (%s)", string >= 0 ? brief_turns_each(store, turns) : brief_turns(store, turns));
    tell_noted(t, "turns", string, turns);
    t->figure_way = BRIEF_NO_WAY;
}

static void tell_post(const brief *b, brief_end end, telling *t)
{
    const brief_post *post = &b->saddle.post[end];
    tell_end_word(t, end);
    tell(t, " side ");
    tell_turned(t, -1, post->way == BRIEF_NO_WAY ? BRIEF_DOWN : post->way, post->moves,
                post->turns);
    tell_end_word(t, BRIEF_NO_END);
}

void say_posts(const brief *b, telling *t)
{
    bool floats = b->saddle.floats;
    tell(t, floats ? "Turn the thumbwheels: " : "Turn the bridge's posts: ");
    tell_post(b, BRIEF_TREBLE, t);
    tell(t, ", ");
    tell_post(b, BRIEF_BASS, t);
    tell(t, floats
                ? ". Before that, mark where the bridge's feet stand, and slacken the strings a "
                  "little, but never take all of them off. After it, stand the bridge upright on "
                  "its marks, tune, and measure the action."
                : ". Before that, slacken the strings a little; after it, tune and measure the "
                  "action.");
    tell(t, " Turns only get you near: repeat until the action is right. The bridge rises or tilts "
            "as one piece, and all strings with it.");
}

/* Says how much to deepen the notches of strings that are too high, or that others are too low; nothing
 * where there is none. */
static void tell_curve(const brief *b, sil_verdict curve, telling *t)
{
    tell_list off = {.count = b->strings};
    for (int i = 0; i < off.count; i++) {
        off.chosen[i] = b->saddle.string[i].curve == curve;
        off.figure[i] = b->saddle.string[i].curve_off;
    }
    bool one = tell_chosen(&off) == 1, high = curve == SIL_TAKE;
    if (tell_chosen(&off) == 0) {
        return;
    }
    tell(t, high ? "Deepen the %s of " : "Fill and recut the %s of ", one ? "notch" : "notches");
    tell_which(t, &off);
    tell(t, high ? " a little at a time, in all by " : ", or replace the bridge: too low by ");
    t->figure_way = high ? BRIEF_DOWN : BRIEF_UP;
    tell_each(t, "curve", &off);
    t->figure_way = BRIEF_NO_WAY;
    tell_unit(t);
    tell(t, ". ");
}

void say_curve(const brief *b, telling *t)
{
    tell_curve(b, SIL_TAKE, t);
    tell_curve(b, SIL_RAISE, t);
    tell(
        t,
        "The bridge's curve does not follow the board's, and the %s raise or tilt it as one piece.",
        b->saddle.floats ? "thumbwheels" : "posts");
}

/* Puts the turns of many screws into a table; false where they are few. */
static bool tell_screws_below(const brief *b, telling *t)
{
    tell_list turns = {.count = b->strings}, moves = turns, way = turns;
    for (int i = 0; i < b->strings; i++) {
        const brief_bearing *string = &b->saddle.string[i];
        turns.figure[i] = string->turns;
        moves.figure[i] = string->moves;
        turns.chosen[i] = moves.chosen[i] = way.chosen[i] = brief_known(string->turns);
        snprintf(way.figure[i].shown, sizeof way.figure[i].shown, "%s",
                 string->way == BRIEF_UP ? "up" : "down");
    }
    if (!tell_strip(t, "move", &way) || !tell_strip(t, "by", &moves) ||
        !tell_strip(t, "turns", &turns)) {
        return false;
    }
    tell(t, "as below, by ");
    tell_span(t, "screw", &moves);
    tell_unit(t);
    return true;
}

static void tell_screws(const brief *b, telling *t)
{
    const char *gap = "";
    for (int i = 0; i < b->strings; i++) {
        const brief_bearing *string = &b->saddle.string[i];
        if (brief_known(string->turns)) {
            tell(t, "%s", gap);
            tell_string(t, i);
            tell(t, ": ");
            tell_turned(t, i, string->way, string->moves, string->turns);
            gap = ", ";
        }
    }
    t->way = BRIEF_NO_WAY;
}

void say_screws(const brief *b, telling *t)
{
    tell(t, "Turn both height screws of each string alike: ");
    if (!tell_screws_below(b, t)) {
        tell_screws(b, t);
    }
    tell(t, ". Turns only get you near: go by the action.");
    if (b->saddle.along) {
        tell(t, " Strings in their range go to their targets with the others: a screw can be "
                "turned back.");
    }
}
