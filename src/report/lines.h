/* SPDX-License-Identifier: MIT */
/* Used inside the report: the bench plan as text, which is built line by line. */
#ifndef SILLET_REPORT_LINES_H
#define SILLET_REPORT_LINES_H

#include "../brief/brief.h"

enum { REPORT_COLUMNS = 96, REPORT_COLUMN = 9 };

/* The number and the note of a string, with a mark behind it, which start a row. */
const char *report_string(text_store *store, const brief *b, int string, const char *mark);

/* Puts words that were collected piece by piece, wrapped to the width, and frees them. */
void report_wrap(text *t, text *words, int indent);
void report_wrap_at(text *t, text *words, int indent, int columns);

/* Put the tables of the nut, of the saddle, of bringing the strings into tune, and of what will buzz
 * and play in tune. */
void report_nut(text *t, const brief *b);
void report_saddle(text *t, const brief *b);
void report_tuning(text *t, const brief *b);
void report_tone(text *t, const brief *b);

/* Puts what was read at each visit and what was expected; nothing if there was only one visit. */
void report_visits(text *t, const brief *b);

#endif
