/* SPDX-License-Identifier: MIT */
/* Tables with level rules only. Figures are aligned at the right, in the middle below the head. */
#include <stddef.h>

#include "draft.h"

static double lettering(const draw_table *table, int column)
{
    return column > 0 && column == table->large ? DRAW_HEAD : DRAW_NOTE;
}

static const double head_height = 11.5, within_height = 3.4, gap = 2.5;

typedef struct widths {
    double head[DRAW_COLUMNS_MAX], cells[DRAW_COLUMNS_MAX], column[DRAW_COLUMNS_MAX];
} widths;

/* Makes each column as wide as its widest text and shares the remaining width equally. */
static widths measure(const draw_shapes *list, double width, const draw_table *table)
{
    widths w = {0};
    double total = 0;
    for (int c = 0; c < table->columns; c++) {
        for (int line = 0; line < 2; line++) {
            if (table->head[c][line] != NULL) {
                w.head[c] = fmax(w.head[c], draw_text_width(list, table->head[c][line], DRAW_NOTE));
            }
        }
        for (int r = 0; r < table->rows; r++) {
            const char *words = table->cell[r][c];
            double wide = words != NULL ? draw_text_width(list, words, lettering(table, c)) : 0;
            w.cells[c] = fmax(w.cells[c], wide);
        }
        w.column[c] = fmax(w.head[c], w.cells[c]);
        total += w.column[c];
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

static void draw_head(draw_shapes *list, double middle, double top, const char *const head[2])
{
    for (int line = 0; line < 2; line++) {
        if (head[line] != NULL) {
            draw_text(list, DRAW_TEXT, (draw_point){middle, top - 4.2 - 5 * line}, DRAW_NOTE,
                      DRAW_MIDDLE, 0, head[line]);
        }
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

/* Whether any column states a tolerance. */
static bool says_within(const draw_table *table)
{
    bool any = false;
    for (int c = 0; c < table->columns; c++) {
        any = any || table->within[c] != NULL;
    }
    return any;
}

double draw_add_table(draw_shapes *list, double x, double top, double width,
                      const draw_table *table)
{
    if (list == NULL) {
        return top;
    }
    widths w = measure(list, width, table);
    double head = head_height + (says_within(table) ? within_height : 0);
    double bottom = top - head - table->rows * table->row_height;
    double left = x;
    for (int c = 0; c < table->columns; c++) {
        double middle = left + w.column[c] / 2;
        draw_head(list, middle, top, table->head[c]);
        draw_text(list, DRAW_TEXT, (draw_point){middle, top - head + 1.5}, DRAW_SMALL, DRAW_MIDDLE,
                  0, table->within[c]);
        draw_anchor anchor = table->anchor[c];
        double at = anchor == DRAW_MIDDLE ? middle
                    : anchor == DRAW_LEFT ? middle - w.cells[c] / 2
                                          : middle + w.cells[c] / 2;
        for (int r = 0; r < table->rows; r++) {
            double height = lettering(table, c);
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
