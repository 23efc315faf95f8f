/* SPDX-License-Identifier: MIT */
/* Within the report: the bench plan as text, put together line by line. */
#ifndef SILLET_REPORT_LINES_H
#define SILLET_REPORT_LINES_H

#include "../brief/brief.h"

enum { REPORT_COLUMNS = 96, REPORT_COLUMN = 9 };

/* A string's number and note, the front of a row. */
void report_string(text *t, const brief *b, int string);

/* Words put together piece by piece, wrapped and given back. */
void report_wrap(text *t, text *words, int indent);

/* The two parts, and what rings and plays in tune. */
void report_nut(text *t, const brief *b);
void report_saddle(text *t, const brief *b);
void report_tone(text *t, const brief *b);

/* What was read at each visit and what was to be expected; nothing where there was but one. */
void report_visits(text *t, const brief *b);

#endif
