/* SPDX-License-Identifier: MIT */
#include "tell.h"

#include <ctype.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

telling tell_begin(brief *b)
{
    telling t; /* its figures are written one by one, and none is read that was not */
    t.b = b;
    t.words = (text){0};
    t.said_count = 0;
    t.strings = 0;
    t.way = t.figure_way = BRIEF_NO_WAY;
    t.end = BRIEF_NO_END;
    t.fret = -1;
    t.next = NULL;
    return t;
}

/* The figures of all sentences are kept in one list. When it is full, it is made twice as long. */
static int keep_said(brief *b, const telling *t)
{
    int first = b->said_count, room = b->said_room;
    while (first + t->said_count > room) {
        room = room > 0 ? 2 * room : TELL_SAID_MAX;
    }
    if (room > b->said_room) {
        brief_said *larger = text_store_room(&b->store, (size_t)room * sizeof *larger);
        if (!larger) {
            return 0;
        }
        if (first > 0) {
            memcpy(larger, b->said, (size_t)first * sizeof *larger);
        }
        b->said = larger;
        b->said_room = room;
    }
    if (t->said_count > 0) {
        memcpy(b->said + first, t->said, (size_t)t->said_count * sizeof *t->said);
    }
    b->said_count += t->said_count;
    return first;
}

brief_sentence tell_end(telling *t)
{
    brief *b = t->b;
    brief_sentence made = {.strings = t->strings, .way = t->way, .count = t->said_count};
    made.words = text_keep_made(&b->store, &t->words);
    made.first = keep_said(b, t);
    return made;
}

void tell(telling *t, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    text_add_list(&t->words, format, arguments);
    va_end(arguments);
}

void tell_figure(telling *t, const char *of, int string, brief_figure figure)
{
    text_put(&t->words, figure.shown);
    tell_noted(t, of, string, figure);
}

void tell_noted(telling *t, const char *of, int string, brief_figure figure)
{
    if (t->said_count < TELL_SAID_MAX) {
        t->said[t->said_count++] = (brief_said){.of = of,
                                                .string = string,
                                                .fret = t->fret,
                                                .end = t->end,
                                                .way = t->figure_way,
                                                .figure = figure};
    }
}

void tell_unit(telling *t)
{
    text_put(&t->words, " ");
    text_put(&t->words, t->b->unit_name);
}

void tell_length(telling *t, const char *of, int string, brief_figure figure)
{
    tell_figure(t, of, string, figure);
    tell_unit(t);
}

int tell_chosen(const tell_list *list)
{
    int chosen = 0;
    for (int i = 0; i < list->count; i++) {
        chosen += list->chosen[i];
    }
    return chosen;
}

tell_list tell_every(const brief *b)
{
    tell_list all = {.count = b->strings};
    for (int i = 0; i < all.count; i++) {
        all.chosen[i] = true;
    }
    return all;
}

tell_list tell_known(tell_list list)
{
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = list.chosen[i] && brief_known(list.figure[i]);
    }
    return list;
}

double tell_most(const tell_list *list)
{
    double most = 0.0;
    for (int i = 0; i < list->count; i++) {
        most = list->chosen[i] ? fmax(most, list->figure[i].exact) : most;
    }
    return most;
}

void tell_string(telling *t, int string)
{
    text_put_number(&t->words, string + 1);
    t->strings |= 1U << string;
}

void tell_outer_strings(telling *t)
{
    int last = t->b->strings - 1;
    if (last == 0) {
        tell(t, "the string");
        return;
    }
    tell(t, "strings ");
    tell_string(t, 0);
    tell(t, " and ");
    tell_string(t, last);
}

/* How many strings of a list follow one another from one on. */
static int run_from(const tell_list *list, int first)
{
    int run = 0;
    while (first + run < list->count && list->chosen[first + run]) {
        run++;
    }
    return run;
}

void tell_which(telling *t, const tell_list *list)
{
    int chosen = tell_chosen(list), said = 0;
    for (int i = 0; i < list->count; i++) {
        t->strings |= list->chosen[i] ? 1U << i : 0U;
    }
    if (chosen == list->count) {
        tell(t, chosen == 1 ? "the string" : "all strings");
        return;
    }
    tell(t, chosen == 1 ? "string" : "strings");
    for (int i = 0; i < list->count; i++) {
        if (list->chosen[i]) {
            int run = run_from(list, i), kept = run > 2 ? run : 1;
            text_put(&t->words, said == 0 ? " " : said + kept == chosen ? " and " : ", ");
            tell_string(t, i);
            if (run > 2) {
                i += run - 1;
                tell(t, " to ");
                tell_string(t, i);
            }
            said += kept;
        }
    }
}

void tell_which_first(telling *t, const tell_list *list)
{
    size_t at = t->words.length;
    tell_which(t, list);
    if (t->words.length > at) {
        t->words.bytes[at] = (char)toupper((unsigned char)t->words.bytes[at]);
    }
}

void tell_thing(telling *t, tell_things *things, const char *what, bool meant)
{
    if (meant) {
        text_put(&t->words, things->told++ > 0 ? things->joint : "");
        text_put(&t->words, what);
    }
}

void tell_thing_of(telling *t, tell_things *things, const char *what, const tell_list *list)
{
    if (tell_chosen(list) > 0) {
        tell_thing(t, things, what, true);
        tell_which(t, list);
    }
}

/* What a row of figures is called. again: the sentence had such a row already. */
static const char *strip_label(const char *of, bool again)
{
    static const char *const labels[][3] = {
        {"action", "action at 12th", "  last pass"},
        {"slot", "file off", "file off"},
        {"slot-left", "then about", "then about"},
        {"stack", "feeler stack", "  when done"},
        {"stack-first", "first stack", "first stack"},
        {"gap", "gap when done", "gap when done"},
        {"gap-first", "gap, this pass", "gap, this pass"},
        {"slot-width", "slot width", "slot width"},
        {"top", "off the top", "off the top"},
        {"top-left", "then about", "then about"},
        {"height-first", "height at first", "height at first"},
        {"height", "final height", "final height"},
        {"centre", "from bass end", "from bass end"},
        {"zero-fret", "too high by", "too high by"},
        {"zero-fret-low", "too low by", "too low by"},
        {"curve", "notch by", "notch by"},
        {"out", "out of bridge", "out of bridge"},
        {"half-action", "action then", "action then"},
    };
    for (size_t k = 0; k < sizeof labels / sizeof *labels; k++) {
        if (strcmp(labels[k][0], of) == 0) {
            return labels[k][again ? 2 : 1];
        }
    }
    return of;
}

/* More figures than this are read more easily in a table. */
enum { IN_A_SENTENCE = 2 };

bool tell_strip(telling *t, const char *label, const tell_list *list)
{
    brief_next *next = t->next;
    if (!next || next->strips == BRIEF_STRIPS || tell_chosen(list) <= IN_A_SENTENCE) {
        return false;
    }
    brief_strip *strip = &next->strip[next->strips++];
    strip->label = label;
    for (int i = 0; i < list->count; i++) {
        strip->cell[i] =
            text_keep(&t->b->store, "%s", list->chosen[i] ? list->figure[i].shown : "-");
        next->listed[i] = next->listed[i] || list->chosen[i];
    }
    return true;
}

static bool has_strip(const telling *t, const char *label)
{
    for (int k = 0; t->next && k < t->next->strips; k++) {
        if (strcmp(t->next->strip[k].label, label) == 0) {
            return true;
        }
    }
    return false;
}

void tell_span(telling *t, const char *of, const tell_list *list)
{
    int least = -1, most = -1;
    for (int i = 0; i < list->count; i++) {
        if (list->chosen[i]) {
            double exact = list->figure[i].exact;
            least = least < 0 || exact < list->figure[least].exact ? i : least;
            most = most < 0 || exact > list->figure[most].exact ? i : most;
        }
    }
    if (least < 0) {
        return;
    }
    const char *low = list->figure[least].shown, *high = list->figure[most].shown;
    tell_figure(t, of, least, list->figure[least]);
    if (strcmp(low, high) != 0) {
        tell(t, " to ");
        tell_figure(t, of, most, list->figure[most]);
    }
}

/* Puts a row under that of an action: the same on a rule in 64ths, where lengths are in inches. */
static void tell_marks(telling *t, const tell_list *list)
{
    brief_next *next = t->next;
    if (t->b->unit == SIL_MM || next->strips == BRIEF_STRIPS) {
        return;
    }
    brief_strip *strip = &next->strip[next->strips++];
    strip->label = "  on a rule";
    for (int i = 0; i < list->count; i++) {
        const char *marks = list->chosen[i] ? list->figure[i].marks : "";
        strip->cell[i] = marks[0] ? text_keep(&t->b->store, "%s", marks) : "-";
    }
}

void tell_each(telling *t, const char *of, const tell_list *list)
{
    const char *gap = "";
    bool alone = tell_chosen(list) == 1;
    bool again = has_strip(t, strip_label(of, false));
    if (tell_strip(t, strip_label(of, again), list)) {
        tell_span(t, of, list);
        if (strcmp(of, "action") == 0) {
            tell_marks(t, list);
        }
        return;
    }
    for (int i = 0; i < list->count; i++) {
        if (list->chosen[i]) {
            text_put(&t->words, gap);
            if (!alone) {
                text_put_number(&t->words, i + 1);
                text_put(&t->words, ": ");
            }
            tell_figure(t, of, i, list->figure[i]);
            gap = ", ";
        }
    }
}

void tell_end_word(telling *t, brief_end end)
{
    static const char *const words[BRIEF_ENDS] = {[BRIEF_TREBLE] = "treble", [BRIEF_BASS] = "bass"};
    t->end = end;
    if (end < BRIEF_ENDS) {
        text_put(&t->words, words[end]);
    }
}

void tell_way_word(telling *t, brief_way way)
{
    static const char *const words[] = {
        [BRIEF_NO_WAY] = "",         [BRIEF_DOWN] = "down", [BRIEF_UP] = "up",
        [BRIEF_TIGHTEN] = "tighten", [BRIEF_EASE] = "ease", [BRIEF_BACK] = "back",
        [BRIEF_FORWARD] = "forward"};
    t->figure_way = way;
    t->way = t->way == BRIEF_NO_WAY ? way : t->way;
    text_put(&t->words, words[way]);
}

void tell_length_at(telling *t, const char *of, brief_end end, brief_figure figure)
{
    t->end = end;
    tell_length(t, of, -1, figure);
    tell(t, " at the ");
    tell_end_word(t, end);
    tell(t, " end");
    tell_end_word(t, BRIEF_NO_END);
}
