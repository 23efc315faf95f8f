/* SPDX-License-Identifier: MIT */
/* Blanks to write in. What to read is at the left, then its target, and a cell for each of two
 * visits at the right. */
#include "measure.h"

#include <stddef.h>

static const double head = 5.2, aim_width = 14, tick = 2.9, in = 1.2;

view_entry *view_form_row(view_form *form, view_cell cell, const char *label)
{
    int last = VIEW_ENTRIES_MAX - 1;
    view_entry *row = &form->row[form->rows <= last ? form->rows++ : last];
    *row = (view_entry){.cell = cell, .label = label, .chosen = -1};
    return row;
}

static void middle_text(draw_shapes *list, double middle, double y, const char *words)
{
    draw_text(list, DRAW_TEXT, (draw_point){middle, y - DRAW_NOTE / 2}, DRAW_NOTE, DRAW_MIDDLE, 0,
              words);
}

/* Writes a text into a given width, cut short if it is too wide. y is the middle of its letters. */
static void text_within(const draw_draft *draft, draw_shapes *list, double x, double y,
                        draw_anchor anchor, double width, const char *words)
{
    if (list == NULL) {
        return;
    }
    draw_text(list, DRAW_TEXT, (draw_point){x, y - DRAW_NOTE / 2}, DRAW_NOTE, anchor, 0,
              draw_text_fit(draft, list, words, DRAW_NOTE, width));
}

static void choices(const draw_draft *draft, draw_shapes *list, draw_box cell,
                    const view_entry *row, bool last_visit)
{
    double y = (cell.top + cell.bottom) / 2, half = draw_box_width(cell) / 2;
    for (int k = 0; k < 2; k++) {
        double x = cell.left + in + k * half;
        draw_box box = {x, y - tick / 2, x + tick, y + tick / 2};
        draw_rectangle(list, DRAW_DIMENSION, box);
        if (last_visit && row->chosen == k) {
            draw_line(list, DRAW_OUTLINE, (draw_point){box.left, box.bottom},
                      (draw_point){box.right, box.top});
            draw_line(list, DRAW_OUTLINE, (draw_point){box.left, box.top},
                      (draw_point){box.right, box.bottom});
        }
        text_within(draft, list, x + tick + 1, y, DRAW_LEFT, half - tick - 1.3 - in,
                    row->choice[k]);
    }
}

static void fill_cell(const draw_draft *draft, draw_shapes *list, draw_box cell,
                      const view_entry *row, bool last_visit)
{
    static const double share[] = {0, 0.24, 0.48, 1}; /* string, fret, how far off */
    double y = (cell.top + cell.bottom) / 2, wide = draw_box_width(cell);
    draw_rectangle(list, DRAW_DIMENSION, cell);
    switch (row->cell) {
    case VIEW_CELL_CHOICE:
        choices(draft, list, cell, row, last_visit);
        break;
    case VIEW_CELL_CROWN:
        for (int k = 0; k < 3; k++) {
            double x = cell.left + share[k] * wide;
            if (k > 0) {
                draw_line(list, DRAW_RULE, (draw_point){x, cell.bottom}, (draw_point){x, cell.top});
            }
            middle_text(list, x + (share[k + 1] - share[k]) * wide / 2, y,
                        last_visit ? row->read[k] : "");
        }
        break;
    case VIEW_CELL_FIGURE:
        middle_text(list, (cell.left + cell.right) / 2, y, last_visit ? row->read[0] : "");
        break;
    }
}

static void form_head(draw_shapes *list, double x, double top, double width, const view_form *form)
{
    double right = x + width, wanted = width - form->label - 2 * form->visit;
    double y = top - head / 2;
    if (form->ranged) {
        middle_text(list, x + form->label + (wanted - aim_width) / 2, y, "range");
        middle_text(list, right - 2 * form->visit - aim_width / 2, y, "target");
    }
    middle_text(list, right - 1.5 * form->visit, y, "visit 1");
    middle_text(list, right - 0.5 * form->visit, y, "visit 2");
}

double view_add_form(const draw_draft *draft, draw_shapes *list, double x, double top, double width,
                     const view_form *form)
{
    const double row_height = 5.8;
    double right = x + width, wanted = width - form->label - 2 * form->visit, y = top - head;
    form_head(list, x, top, width, form);
    for (int r = 0; r < form->rows; r++) {
        const view_entry *row = &form->row[r];
        double middle = y - row_height / 2;
        draw_note(list, x, middle - DRAW_NOTE / 2, row->label);
        middle_text(list, x + form->label + (wanted - (form->ranged ? aim_width : 0)) / 2, middle,
                    row->range);
        middle_text(list, right - 2 * form->visit - aim_width / 2, middle, row->aim);
        for (int visit = 0; visit < 2; visit++) {
            double left = right - (2 - visit) * form->visit;
            fill_cell(draft, list, (draw_box){left, y - row_height, left + form->visit, y}, row,
                      visit == 0);
        }
        if (r > 0) {
            draw_line(list, DRAW_RULE, (draw_point){x, y},
                      (draw_point){right - 2 * form->visit, y});
        }
        y -= row_height;
    }
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){right - 2 * form->visit, y, right, top - head});
    return y;
}

double view_add_sizes(const draw_draft *draft, draw_shapes *list, double top, double width,
                      int columns, int count, const view_size *size)
{
    const double row_height = 5.8, between = 3, cell = 18.4;
    int rows = (count + columns - 1) / columns;
    double pitch = (width + between) / columns;
    for (int i = 0; i < count; i++) {
        int column = i / rows;
        double x = column * pitch, y = top - i % rows * row_height;
        double right = x + pitch - between, middle = y - row_height / 2;
        text_within(draft, list, x, middle, DRAW_LEFT, pitch - between - cell - 0.2, size[i].name);
        draw_rectangle(list, DRAW_DIMENSION, (draw_box){right - cell, y - row_height, right, y});
        text_within(draft, list, right - cell / 2, middle, DRAW_MIDDLE, cell - 1, size[i].value);
    }
    return top - rows * row_height;
}

/* --- one row per string
 * ------------------------------------------------------------------------ */

static const double heading = 10.6, number_width = 7, sheet_width = 166;

enum { GAUGINGS = 3 };

/* The widths of a table of the strings: each column is as wide as its contents. */
typedef struct columns {
    double note, gauge, range, aim, visit;
    double aims[GAUGINGS]; /* aim, of each reading */
} columns;

static double widest(const draw_shapes *list, double least, const char *words)
{
    return words ? fmax(least, draw_text_width(list, words, DRAW_NOTE) + 2.6) : least;
}

static columns measure(const draw_draft *draft, const draw_shapes *list, int count,
                       const view_gauging *gauging)
{
    columns c = {.note = 9, .gauge = 12, .range = 18};
    double shares = 0, ranges = 0;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        c.note = widest(list, c.note, draw_say_note(draft, i));
        c.gauge = widest(list, c.gauge, draw_figure(draft, draft->brief->nut.slot[i].gauge));
        for (int k = 0; k < count; k++) {
            c.range = widest(list, c.range, gauging[k].low_high[i]);
            c.aims[k] = widest(list, c.aims[k], gauging[k].aim[i]);
        }
    }
    for (int k = 0; k < count; k++) {
        c.aims[k] = widest(list, c.aims[k], "target");
        c.range = gauging[k].range != NULL ? widest(list, c.range, gauging[k].range) : c.range;
    }
    for (int k = 0; k < count; k++) {
        ranges += gauging[k].range != NULL ? c.range + c.aims[k] : 0;
        shares += gauging[k].words ? 5 : 2;
    }
    c.visit = (sheet_width - number_width - c.note - c.gauge - ranges) / shares;
    return c;
}

static void strings_told(const draw_draft *draft, draw_shapes *list, const columns *c, double top,
                         double height)
{
    double note = number_width + c->note / 2, gauge = number_width + c->note + c->gauge / 2;
    middle_text(list, number_width / 2, top - 7.8, "no.");
    middle_text(list, note, top - 7.8, "note");
    middle_text(list, gauge, top - 7.8, "gauge");
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        double y = top - heading - (i + 0.5) * height;
        middle_text(list, number_width / 2, y, draw_say(draft, "%d", i + 1));
        middle_text(list, note, y, draw_say_note(draft, i));
        middle_text(list, gauge, y, draw_figure(draft, draft->brief->nut.slot[i].gauge));
    }
}

/* Draws the target of a string, then a cell for each visit. */
static void gauging_row(const draw_draft *draft, draw_shapes *list, const columns *c, double x,
                        double y, double height, const view_gauging *gauging, int string)
{
    double middle = y - height / 2, cell = gauging->words ? 2.5 * c->visit : c->visit;
    if (gauging->range != NULL) {
        middle_text(list, x + c->range / 2, middle, gauging->low_high[string]);
        middle_text(list, x + c->range + c->aim / 2, middle, gauging->aim[string]);
        x += c->range + c->aim;
    }
    for (int visit = 0; visit < 2; visit++) {
        double left = x + visit * cell;
        draw_rectangle(list, DRAW_DIMENSION, (draw_box){left, y - height, left + cell, y});
    }
    middle_text(list, x + cell / 2, middle,
                draw_text_fit(draft, list, gauging->read[string], DRAW_NOTE, cell - 1));
}

/* Draws all strings of one reading. Returned: its right edge. */
static double draw_gauging(const draw_draft *draft, draw_shapes *list, const columns *c, double x,
                           double top, double height, int strings, const view_gauging *gauging)
{
    double cell = gauging->words ? 2.5 * c->visit : c->visit, bottom = top - heading;
    double right = x + (gauging->range != NULL ? c->range + c->aim : 0) + 2 * cell;
    middle_text(list, (x + right) / 2, top - 2.6, gauging->name);
    draw_line(list, DRAW_RULE, (draw_point){x + 1, top - 5}, (draw_point){right, top - 5});
    if (gauging->range != NULL) {
        middle_text(list, x + c->range / 2, top - 7.8, gauging->range);
        middle_text(list, x + c->range + c->aim / 2, top - 7.8, "target");
    }
    middle_text(list, right - 1.5 * cell, top - 7.8, "visit 1");
    middle_text(list, right - 0.5 * cell, top - 7.8, "visit 2");
    for (int i = 0; i < strings; i++) {
        gauging_row(draft, list, c, x, bottom, height, gauging, i);
        bottom -= height;
    }
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){right - 2 * cell, bottom, right, top - heading});
    return right;
}

double view_add_gaugings(const draw_draft *draft, draw_shapes *list, double top, double height,
                         int count, const view_gauging *gauging)
{
    int strings = draft->plan->job->string_count;
    columns c = measure(draft, list, count, gauging);
    double x = number_width + c.note + c.gauge;
    strings_told(draft, list, &c, top, height);
    for (int k = 0; k < count; k++) {
        c.aim = c.aims[k];
        x = draw_gauging(draft, list, &c, x, top, height, strings, &gauging[k]);
    }
    for (int i = 1; i < strings; i++) {
        double y = top - heading - i * height;
        draw_line(list, DRAW_RULE, (draw_point){0, y}, (draw_point){x, y});
    }
    return top - heading - strings * height;
}
