/* SPDX-License-Identifier: MIT */
/* Tables with level rules only. Figures are aligned at the right, in the middle below the head. */
#include <stddef.h>
#include <stdio.h>
#include <string.h>

#include "draft.h"

/* The height of what a cell says: only figures are large. */
static double lettering(const draw_table *table, int column, const char *words)
{
    bool large = column > 0 && column == table->large && words != NULL && strcmp(words, "-") != 0;
    return large ? DRAW_HEAD : DRAW_NOTE;
}

static const double head_height = 11.5, within_height = 4.2, gap = 2.5;

typedef struct widths {
    double head[DRAW_COLUMNS_MAX], cells[DRAW_COLUMNS_MAX], column[DRAW_COLUMNS_MAX];
    int within_lines; /* of the tolerances: 2 where "+0.02/0" is too wide, 0 where there are none */
} widths;

/* One line of a tolerance: all of it, or the part before or behind its stroke. */
typedef struct part_of {
    char words[sizeof((brief_figure *)NULL)->limits];
} part_of;

static part_of within_line(const char *words, int lines, int line)
{
    part_of part;
    size_t whole = strlen(words), upper = lines > 1 ? strcspn(words, "/") : whole;
    size_t from = line == 0 ? 0 : upper < whole ? upper + 1 : upper;
    int count = (int)(line == 0 ? upper : whole - from);
    snprintf(part.words, sizeof part.words, "%.*s", count, words + from);
    return part;
}

/* Whether any column states a tolerance. */
static bool says_within(const draw_table *table)
{
    bool any = false;
    for (int c = 0; c < table->columns; c++) {
        any = any || table->within[c] != NULL;
    }
    return any;
}

/* Widens the columns under the words of a span until these have room. Returned: by how much in all. */
static double widen(const draw_shapes *list, const draw_span *span, widths *w)
{
    int count = span->words != NULL ? span->to - span->from + 1 : 0;
    double has = (count - 1) * gap;
    for (int c = span->from; c < span->from + count; c++) {
        has += w->column[c];
    }
    double lacks =
        count > 0 ? fmax(draw_text_width(list, span->words, DRAW_NOTE) + gap - has, 0) : 0;
    for (int c = span->from; c < span->from + count; c++) {
        w->column[c] += lacks / count;
    }
    return lacks;
}

/* The width each column needs, with its tolerance on so many lines. Returned: that of all. */
static double measure_texts(const draw_shapes *list, const draw_table *table, int within_lines,
                            widths *w)
{
    double total = 0;
    *w = (widths){.within_lines = within_lines};
    for (int c = 0; c < table->columns; c++) {
        for (int line = 0; line < 2; line++) {
            if (table->head[c][line] != NULL) {
                w->head[c] =
                    fmax(w->head[c], draw_text_width(list, table->head[c][line], DRAW_NOTE));
            }
        }
        for (int line = 0; line < within_lines && table->within[c] != NULL; line++) {
            part_of part = within_line(table->within[c], within_lines, line);
            w->head[c] = fmax(w->head[c], draw_text_width(list, part.words, DRAW_NOTE));
        }
        for (int r = 0; r < table->rows; r++) {
            const char *words = table->cell[r][c];
            double wide =
                words != NULL ? draw_text_width(list, words, lettering(table, c, words)) : 0;
            w->cells[c] = fmax(w->cells[c], wide);
        }
        w->column[c] = fmax(w->head[c], w->cells[c]);
        total += w->column[c];
    }
    for (size_t i = 0; i < sizeof table->span / sizeof *table->span; i++) {
        total += widen(list, &table->span[i], w);
    }
    return total;
}

/* Makes each column as wide as its widest text and shares the remaining width equally. */
static widths measure(const draw_shapes *list, double width, const draw_table *table)
{
    widths w;
    int lines = says_within(table);
    double total = measure_texts(list, table, lines, &w);
    if (lines > 0 && total + table->columns * gap > width) {
        total = measure_texts(list, table, 2, &w);
    }
    double share = fmax((width - total) / table->columns, gap);
    for (int c = 0; c < table->columns; c++) {
        w.column[c] += share;
    }
    return w;
}

static void rule(draw_shapes *list, draw_layer layer, double x, double y, double width)
{
    draw_line(list, layer, (draw_point){x, y}, (draw_point){x + width, y});
}

/* The base lines of the head: two of words, then those of the tolerance. */
static void draw_head(draw_shapes *list, double middle, double top, const draw_table *table, int c,
                      int within_lines)
{
    for (int line = 0; line < 2; line++) {
        if (table->head[c][line] != NULL) {
            draw_text(list, DRAW_TEXT, (draw_point){middle, top - 4.2 - 5 * line}, DRAW_NOTE,
                      DRAW_MIDDLE, 0, table->head[c][line]);
        }
    }
    for (int line = 0; line < within_lines && table->within[c] != NULL; line++) {
        part_of part = within_line(table->within[c], within_lines, line);
        draw_text(list, DRAW_TEXT,
                  (draw_point){middle, top - head_height - within_height * (line + 1) + 1.8},
                  DRAW_NOTE, DRAW_MIDDLE, 0, part.words);
    }
}

/* Writes the words of a span in the middle above its columns, with a rule from the first to the
 * last column. */
static void put_span(draw_shapes *list, double x, double top, const widths *w,
                     const draw_span *span)
{
    double left = x, right;
    if (span->words == NULL) {
        return;
    }
    for (int c = 0; c < span->from; c++) {
        left += w->column[c];
    }
    right = left;
    for (int c = span->from; c <= span->to; c++) {
        right += w->column[c];
    }
    draw_text(list, DRAW_TEXT, (draw_point){(left + right) / 2, top - 4.2}, DRAW_NOTE, DRAW_MIDDLE,
              0, span->words);
    rule(list, DRAW_RULE, left + gap / 2, top - 5.4, right - left - gap);
}

void draw_table_figure(const draw_draft *draft, draw_table *table, int row, int column,
                       brief_figure figure)
{
    bool brackets = figure.reference && brief_known(figure);
    const char *words = draw_figure(draft, figure);
    table->cell[row][column] = brackets ? draw_say(draft, "(%s)", words) : words;
    if (figure.limits[0] != '\0') {
        table->within[column] = draw_limits(draft, figure);
    }
}

void draw_table_leave_out(draw_table *t, int column)
{
    size_t after = (size_t)(--t->columns - column);
    memmove(t->head + column, t->head + column + 1, after * sizeof *t->head);
    memmove(t->anchor + column, t->anchor + column + 1, after * sizeof *t->anchor);
    memmove(t->within + column, t->within + column + 1, after * sizeof *t->within);
    for (int r = 0; r < t->rows; r++) {
        const char **cell = t->cell[r] + column;
        memmove(cell, cell + 1, after * sizeof *cell);
    }
    for (size_t i = 0; i < sizeof t->span / sizeof *t->span; i++) {
        draw_span *span = &t->span[i];
        span->from -= column < span->from;
        span->to -= column <= span->to;
        span->words = span->from <= span->to ? span->words : NULL;
    }
    t->large = column == t->large ? 0 : t->large - (column < t->large);
}

/* Whether a column has dashes and nothing else. */
static bool is_idle(const draw_table *table, int column)
{
    bool dash = false;
    for (int r = 0; r < table->rows; r++) {
        const char *words = table->cell[r][column];
        if (words != NULL && strcmp(words, "-") != 0) {
            return false;
        }
        dash = dash || words != NULL;
    }
    return dash;
}

static draw_table without_idle(const draw_table *table)
{
    draw_table left = *table;
    for (int c = left.columns - 1; c >= 0; c--) {
        if (is_idle(&left, c)) {
            draw_table_leave_out(&left, c);
        }
    }
    return left;
}

double draw_add_table(draw_shapes *list, double x, double top, double width, const draw_table *all)
{
    if (list == NULL) {
        return top;
    }
    const draw_table left_in = without_idle(all), *table = &left_in;
    widths w = measure(list, width, table);
    double head = head_height + w.within_lines * within_height;
    double bottom = top - head - table->rows * table->row_height;
    double left = x;
    for (int c = 0; c < table->columns; c++) {
        double middle = left + w.column[c] / 2;
        draw_head(list, middle, top, table, c, w.within_lines);
        draw_anchor anchor = table->anchor[c];
        double at = anchor == DRAW_MIDDLE ? middle
                    : anchor == DRAW_LEFT ? middle - w.cells[c] / 2
                                          : middle + w.cells[c] / 2;
        for (int r = 0; r < table->rows; r++) {
            double height = lettering(table, c, table->cell[r][c]);
            double y = top - head - (r + 0.5) * table->row_height - height / 2;
            draw_text(list, DRAW_TEXT, (draw_point){at, y}, height, anchor, 0, table->cell[r][c]);
        }
        left += w.column[c];
    }
    for (size_t i = 0; i < sizeof table->span / sizeof *table->span; i++) {
        put_span(list, x, top, &w, &table->span[i]);
    }
    rule(list, DRAW_OUTLINE, x, top, left - x);
    rule(list, DRAW_DIMENSION, x, top - head, left - x);
    for (int r = 1; r < table->rows; r++) {
        rule(list, DRAW_RULE, x, top - head - r * table->row_height, left - x);
    }
    rule(list, DRAW_OUTLINE, x, bottom, left - x);
    return bottom;
}
