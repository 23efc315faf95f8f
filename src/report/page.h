/* SPDX-License-Identifier: MIT */
/* Within the report: the bench plan as text, put together line by line. */
#ifndef SILLET_REPORT_PAGE_H
#define SILLET_REPORT_PAGE_H

#include <stdio.h>

#include <sillet/report.h>

enum { PAGE_COLUMNS = 96, PAGE_TEXT_MAX = 2048, PAGE_CELL = 32 };

typedef struct page {
    FILE *out;
    const sil_plan *plan;
    sil_unit unit;
} page;

/* Prints a text in lines, the first behind what already stands in its line, the others indented. */
void page_wrap(const page *p, const char *text, int indent);

/* A length in a cell, for printf. */
const char *page_figure(const page *p, double mm, sil_rounding way, char cell[PAGE_CELL]);

/* A length at the right of so many columns. */
void page_length(const page *p, int columns, double mm, sil_rounding way);

/* Heads of a table: `lines` rows of `columns` words, each at the right of nine columns but the
 * first, behind the place for string and verdict. */
void page_heads(const page *p, int lines, int columns, const char *const *heads);

/* The two parts, and what rings and plays in tune. */
void page_nut(const page *p);
void page_saddle(const page *p);
void page_sound(const page *p);

/* What was read at each visit and what was to be expected; nothing where there was but one. */
void page_visits(const page *p);

#endif
