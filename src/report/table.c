/* SPDX-License-Identifier: MIT */
/* Tables of the bench plan as text: a row for each string. */
#include "table.h"

#include <string.h>

void report_cell(report_table *table, int row, int column, const char *words)
{
    report_column *at = &table->column[column];
    at->cell[row] = words;
    at->told = at->told || strcmp(words, "-") != 0;
}

void report_made(report_table *table, int row, int column, bool told, text *words)
{
    report_column *at = &table->column[column];
    at->cell[row] = text_keep_made(&table->kept, words);
    at->told = at->told || told;
}

/* Puts a line: its beginning, and words in each column that tells something. Blanks are put when
 * words follow them. */
static void put_line(text *t, const report_table *table, const char *begin,
                     const char *const *words)
{
    int blank = table->start - text_letters(begin, strlen(begin));
    text_put(t, begin);
    for (int c = 0; c < table->columns; c++) {
        const report_column *column = &table->column[c];
        int room = column->wide - text_letters(words[c], strlen(words[c]));
        if (column->told && words[c][0] == '\0') {
            blank += column->wide;
        } else if (column->told) {
            text_space(t, column->left ? blank : blank + room);
            text_put(t, words[c]);
            blank = column->left ? room : 0;
        }
    }
    text_put(t, "\n");
}

/* Puts the lines of the head; one that has no words over these columns is left out. */
static void put_head(text *t, const report_table *table)
{
    for (int line = 0; line < table->lines; line++) {
        const char *words[REPORT_CELLS];
        bool any = false;
        for (int c = 0; c < table->columns; c++) {
            const report_column *column = &table->column[c];
            words[c] = column->head[line] != NULL ? column->head[line] : "";
            any = any || (column->told && words[c][0] != '\0');
        }
        if (any) {
            put_line(t, table, line == 0 ? "  string" : "", words);
        }
    }
}

bool report_put_table(text *t, report_table *table, int rows)
{
    bool any = false;
    for (int c = 0; c < table->columns; c++) {
        any = any || table->column[c].told;
    }
    if (any) {
        put_head(t, table);
    }
    for (int row = 0; row < rows && any; row++) {
        const char *words[REPORT_CELLS];
        for (int c = 0; c < table->columns; c++) {
            words[c] = table->column[c].cell[row];
        }
        put_line(t, table, table->begin[row], words);
    }
    t->failed = t->failed || table->kept.failed;
    text_store_free(&table->kept);
    return any;
}
