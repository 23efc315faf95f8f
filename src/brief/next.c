/* SPDX-License-Identifier: MIT */
/* The step to do next, for a screen: its sentences with long lists of figures in a table, and the
 * steps after it in a few words each. */
#include <string.h>

#include "acts.h"
#include "within.h"

static brief_sentence said(brief *b, say *sentence)
{
    telling t = tell_begin(b);
    t.next = &b->next;
    sentence(b, &t);
    return tell_end(&t);
}

/* Whether a figure says how far something turns its strings up or down. */
static bool is_turned(const char *of)
{
    return strcmp(of, "screw") == 0;
}

static void tell_ends_of(const brief *b, const brief_sentence *what, const char *of,
                         const char *gap, telling *t)
{
    for (int k = 0; k < what->count; k++) {
        const brief_said *one = &b->said[what->first + k];
        if (one->end != BRIEF_NO_END && strcmp(one->of, of) == 0) {
            tell(t, "%s", gap);
            tell_end_word(t, one->end);
            tell(t, " ");
            if (is_turned(of)) {
                tell_way_word(t, one->way);
                tell(t, " ");
            }
            tell_figure(t, of, -1, one->figure);
            tell_end_word(t, BRIEF_NO_END);
            gap = ", ";
        }
    }
    t->figure_way = BRIEF_NO_WAY;
    tell_unit(t);
}

/* Writes which way the strings of a list go that screws turn, before how far. */
static void tell_ways(const brief *b, const brief_sentence *what, const char *of, telling *t)
{
    bool up = false, down = false;
    for (int k = 0; k < what->count; k++) {
        const brief_said *one = &b->said[what->first + k];
        bool turned = strcmp(one->of, of) == 0 && one->string >= 0 && is_turned(of);
        up = up || (turned && one->way == BRIEF_UP);
        down = down || (turned && one->way == BRIEF_DOWN);
    }
    tell(t, up && down ? "some up, some down, by " : up ? "up " : down ? "down " : "");
}

/* Writes what a step's main figure is: ", string 6: 0.10 mm", ": 0.55 mm". */
static void tell_main(const brief *b, const brief_sentence *what, const char *of, const char *gap,
                      telling *t)
{
    tell_list list = {.count = b->strings};
    const brief_said *alone = NULL;
    bool ends = false;
    for (int k = 0; k < what->count; k++) {
        const brief_said *one = &b->said[what->first + k];
        if (strcmp(one->of, of) == 0 && one->string >= 0) {
            list.chosen[one->string] = true;
            list.figure[one->string] = one->figure;
        } else if (strcmp(one->of, of) == 0) {
            ends = ends || one->end != BRIEF_NO_END;
            alone = alone ? alone : one;
        }
    }
    if (tell_chosen(&list) > 0) {
        tell(t, ", ");
        tell_which(t, &list);
        tell(t, "%s", gap);
        tell_ways(b, what, of, t);
        tell_span(t, of, &list);
        tell_unit(t);
    } else if (ends) {
        tell_ends_of(b, what, of, gap, t);
    } else if (alone) {
        tell(t, "%s", strcmp(of, "relief-target") == 0 ? " to " : gap);
        tell_length(t, of, -1, alone->figure);
    }
}

/* A step in a few words, which begin with a capital. */
static const char *in_short(brief *b, int k)
{
    const brief_step *step = &b->steps[k];
    act_words words = act_words_of(step->act);
    const char *begin = act_called(b->plan, step->act);
    bool about = false; /* it is only foretold */
    telling t = tell_begin(b);
    if (step->act == SIL_ACT_CHECK) {
        begin = b->slackens ? "tune, let the neck settle, measure, plan again"
                            : "tune, measure everything again, plan again";
    } else if (step->act == SIL_ACT_STOP) {
        begin = b->row.next[0] != '\0' ? b->row.next : "stop";
    } else if (!begin) {
        begin = "get ready";
    } else if (step->act == SIL_ACT_DRESS_SADDLE && b->saddle.dresses_later) {
        begin =
            text_keep(&b->store, "after the last pass off the bottom, plan again, then %s", begin);
        about = true;
    } else if ((step->act == SIL_ACT_SAND_SADDLE || step->act == SIL_ACT_DRESS_SADDLE) &&
               b->plan->stages.changed[SIL_NUT]) {
        begin = text_keep(&b->store, "after the nut, measure the action and plan again, then %s",
                          begin);
        about = true;
    }
    tell(&t, "%s", text_keep_capital(&b->store, begin));
    if (words.main) {
        tell_main(b, &step->what, words.main, about ? ": about " : ": ", &t);
    }
    return tell_end(&t).words;
}

void brief_fill_next(brief *b)
{
    int count = b->plan->step_count;
    brief_next *next = &b->next;
    *next = (brief_next){.step = -1, .before = ""};
    next->in_short = text_store_room(&b->store, (size_t)(count + 1) * sizeof *next->in_short);
    if (!b->steps || !next->in_short) {
        return;
    }
    for (int k = 0; k < count; k++) {
        next->in_short[k] = in_short(b, k);
    }
    next->step = brief_next_step(b->plan);
    if (next->step >= 0) {
        act_words words = act_words_of(b->steps[next->step].act);
        next->what = said(b, words.what);
        next->check = said(b, words.check);
        next->before = next->step > 0 && !b->plan->done
                           ? text_keep(&b->store, "%s If they were taken otherwise, measure again.",
                                       b->steps[0].what.words)
                           : "";
    }
}
