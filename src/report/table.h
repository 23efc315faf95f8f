/* SPDX-License-Identifier: MIT */
/* Used inside the report: tables with a row for each string, whose columns are left out where they
 * have nothing but dashes. */
#ifndef SILLET_REPORT_TABLE_H
#define SILLET_REPORT_TABLE_H

#include "lines.h"

enum { REPORT_HEADS = 3, REPORT_CELLS = 9 };

typedef struct report_column {
    const char *head[REPORT_HEADS]; /* a line each; NULL for none */
    int wide;                       /* letters */
    bool left;                      /* its words are at its left; otherwise at its right */
    bool told;                      /* it has more than dashes */
    const char *cell[SIL_STRINGS_MAX];
} report_column;

typedef struct report_table {
    int lines, start, columns; /* of the head; letters before the first column */
    report_column column[REPORT_CELLS];
    const char *begin[SIL_STRINGS_MAX]; /* of a row: the string, and what is said of it */
    text_store kept;                    /* what was put together for this table */
} report_table;

/* report_cell: puts words that live as long as the table; "-" tells nothing.
 * report_made: puts words that were put together, which are freed with the table. */
void report_cell(report_table *table, int row, int column, const char *words);
void report_made(report_table *table, int row, int column, bool told, text *words);

/* report_put_table: puts the head and the rows, without idle columns, and frees the table.
 * Returned: whether there was anything to put. */
bool report_put_table(text *t, report_table *table, int rows);

#endif
