/* SPDX-License-Identifier: MIT */
/* Within the brief: writing a sentence. Every figure, string and direction in a sentence is written
 * by these functions, which also record it as data, so that words and data cannot differ.
 */
#ifndef SILLET_BRIEF_TELL_H
#define SILLET_BRIEF_TELL_H

#include "figure.h"

enum { TELL_SAID_MAX = 64 };

typedef struct telling {
    brief *b;
    text words;
    brief_said said[TELL_SAID_MAX];
    int said_count;
    unsigned strings;
    brief_way way;        /* of the whole sentence */
    brief_way figure_way; /* of the figures that follow */
    brief_end end;        /* the end that those figures belong to */
    int fret;             /* the fret that those figures belong to, or -1 */
    brief_next *next;     /* where long lists of figures go; NULL: they stay in the sentence */
} telling;

/* tell_begin, tell_end: begin and end one sentence, or several in a row. The words and data are
 * kept in the brief. */
telling tell_begin(brief *b);
brief_sentence tell_end(telling *t);

__attribute__((format(printf, 2, 3))) void tell(telling *t, const char *format, ...);

/* tell_figure: writes a figure and records it. of: what the figure is. string: from 0, or -1.
 * tell_length: the same with its unit, "0.70 mm". */
void tell_figure(telling *t, const char *of, int string, brief_figure figure);
void tell_length(telling *t, const char *of, int string, brief_figure figure);
void tell_noted(telling *t, const char *of, int string, brief_figure figure); /* recorded alone,
                               where the words have it already */
void tell_unit(telling *t); /* writes " mm", after several figures */

/* A list of strings, with a figure for each. */
typedef struct tell_list {
    int count;
    bool chosen[SIL_STRINGS_MAX];
    brief_figure figure[SIL_STRINGS_MAX];
} tell_list;

/* tell_chosen: how many strings a list has.
 * tell_every:  all strings, without a figure yet.
 * tell_known:  the strings of a list whose figure is known.
 * tell_most:   the greatest figure of a list; 0 where none is known, or all are below.
 */
int tell_chosen(const tell_list *list);
tell_list tell_every(const brief *b);
tell_list tell_known(tell_list list);
double tell_most(const tell_list *list);

/* tell_which: names the strings of a list: "string 2", "strings 1, 3 and 4", "all strings"; "the
 *             string" on an instrument with one.
 * tell_which_first: the same at the beginning of a sentence.
 * tell_each:  gives the figure of each: "1: 0.12, 3: 0.20"; just the figure if there is only one.
 *             Where long lists go elsewhere it gives the least and the most: "0.12 to 0.20".
 * tell_span:  records the figure of each, and gives the least and the most.
 * tell_strip: puts the figures of a list that is long elsewhere; false where they stay.
 */
void tell_which(telling *t, const tell_list *list);
void tell_which_first(telling *t, const tell_list *list);
void tell_each(telling *t, const char *of, const tell_list *list);
void tell_span(telling *t, const char *of, const tell_list *list);
bool tell_strip(telling *t, const char *label, const tell_list *list);

/* Things that are named one after another, with a joint between them. */
typedef struct tell_things {
    const char *joint;
    int told;
} tell_things;

/* tell_thing:    names the next one, where it is meant.
 * tell_thing_of: the same of some strings, where any is chosen.
 */
void tell_thing(telling *t, tell_things *things, const char *what, bool meant);
void tell_thing_of(telling *t, tell_things *things, const char *what, const tell_list *list);

/* tell_string: writes the number of a string, counted from 1. */
void tell_string(telling *t, int string);

/* tell_outer_strings: "strings 1 and 6", or "the string" where there is one. */
void tell_outer_strings(telling *t);

/* tell_length_at: writes "0.70 mm at the treble end". */
void tell_length_at(telling *t, const char *of, brief_end end, brief_figure figure);

/* tell_end_word: writes "treble" or "bass". The figures after it are recorded as belonging to that
 * end, until it is called with BRIEF_NO_END, which writes nothing.
 * tell_way_word: writes "down", "up", "tighten", "ease", "back" or "forward". The figures after it are recorded as
 * going that way, until it is called with BRIEF_NO_WAY. The first one is also recorded as the way
 * of the sentence. */
void tell_end_word(telling *t, brief_end end);
void tell_way_word(telling *t, brief_way way);

#endif
