/* SPDX-License-Identifier: MIT */
/* Within the report: the bench plan as text, put together line by line. */
#ifndef SILLET_REPORT_LINES_H
#define SILLET_REPORT_LINES_H

#include <stdio.h>

#include <sillet/report.h>

#include "../plan/plan.h"

enum { REPORT_COLUMNS = 96, REPORT_TEXT_MAX = 2048, REPORT_CELL = 32 };

typedef struct report {
    FILE *out;
    const sil_plan *plan;
    sil_unit unit;
} report;

/* Prints a text in lines, the first behind what already stands in its line, the others indented. */
void report_wrap(const report *p, const char *text, int indent);

/* A length in a cell, for printf. */
const char *report_figure(const report *p, double mm, sil_rounding way, char cell[REPORT_CELL]);

/* A length at the right of so many columns. */
void report_length(const report *p, int columns, double mm, sil_rounding way);

/* Heads of a table: `lines` rows of `columns` words, each at the right of nine columns but the
 * first, behind the place for string and verdict. */
void report_heads(const report *p, int lines, int columns, const char *const *heads);

/* The two parts, and what rings and plays in tune. */
void report_nut(const report *p);
void report_saddle(const report *p);
void report_sound(const report *p);

/* What was read at each visit and what was to be expected; nothing where there was but one. */
void report_visits(const report *p);

#endif
