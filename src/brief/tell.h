/* SPDX-License-Identifier: MIT */
/* Within the brief: a sentence in the making. Every figure, string and direction in it is written
 * through these functions, which note it as data beside the words, so that the two cannot differ.
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
    brief_end end;        /* the end they are of */
    int fret;             /* the fret they are of, or -1 */
} telling;

/* tell_begin, tell_end: one sentence, or several in a row. Its words and data go into the brief. */
telling tell_begin(brief *b);
brief_sentence tell_end(telling *t);

__attribute__((format(printf, 2, 3))) void tell(telling *t, const char *format, ...);

/* tell_figure: a figure, noted as what it is of, of a string from 0 or -1.
 * tell_length: the same with the unit behind it, "0.70 mm". */
void tell_figure(telling *t, const char *of, int string, brief_figure figure);
void tell_length(telling *t, const char *of, int string, brief_figure figure);
void tell_unit(telling *t); /* " mm", for figures told one behind the other */

/* A string list: which are meant, and a figure for each. */
typedef struct tell_list {
    int count;
    bool chosen[SIL_STRINGS_MAX];
    brief_figure figure[SIL_STRINGS_MAX];
} tell_list;

int tell_chosen(const tell_list *list);

/* tell_which: "string 2", "strings 1, 3 and 4", "all strings", "the string" of an instrument with
 * one. tell_each: "1: 0.12, 3: 0.20"; a bare figure where one is chosen. */
void tell_which(telling *t, const tell_list *list);
void tell_each(telling *t, const char *of, const tell_list *list);

/* tell_string: a string's number, from 1. */
void tell_string(telling *t, int string);

/* tell_length_at: "0.70 mm at the treble end". */
void tell_length_at(telling *t, const char *of, brief_end end, brief_figure figure);

/* tell_end_word: "treble" or "bass"; the figures that follow are noted as of that end, until it is
 * called with BRIEF_NO_END, which writes nothing.
 * tell_way_word: "down", "up", "tighten" or "ease"; the figures that follow are noted as going that
 * way, until it is called with BRIEF_NO_WAY. The first way told is the sentence's. */
void tell_end_word(telling *t, brief_end end);
void tell_way_word(telling *t, brief_way way);

#endif
