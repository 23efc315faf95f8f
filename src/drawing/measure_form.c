/* SPDX-License-Identifier: MIT */
/* Blanks to write in. What is read stands at the left, what is wanted beside it, and a cell for
 * each of two visits at the right. */
#include "measure.h"

#include <stddef.h>

static const double head = 5.2, aim_width = 14, tick = 2.9, in = 1.6;

sil_entry *sil_form_row(sil_form *form, sil_cell cell, const char *label)
{
    sil_entry *row = &form->row[form->rows < SIL_ENTRIES_MAX - 1 ? form->rows++ : form->rows];
    *row = (sil_entry){.cell = cell, .label = sil_say("%s", label), .chosen = -1};
    return row;
}

static void middle_text(sil_shapes *list, double middle, double y, const char *text)
{
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){middle, y - SIL_NOTE / 2}, SIL_NOTE, SIL_MIDDLE,
                  0, text);
}

static void choices(sil_shapes *list, sil_box cell, const sil_entry *row, bool last_visit)
{
    double y = (cell.top + cell.bottom) / 2, half = sil_box_width(cell) / 2;
    for (int k = 0; k < 2; k++) {
        double x = cell.left + in + k * half;
        sil_box box = {x, y - tick / 2, x + tick, y + tick / 2};
        sil_draw_box(list, SIL_LAYER_DIMENSION, box);
        if (last_visit && row->chosen == k) {
            sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){box.left, box.bottom},
                          (sil_point){box.right, box.top});
            sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){box.left, box.top},
                          (sil_point){box.right, box.bottom});
        }
        sil_draw_note(list, x + tick + 1.2, y - SIL_NOTE / 2, row->choice[k]);
    }
}

static void fill_cell(sil_shapes *list, sil_box cell, const sil_entry *row, bool last_visit)
{
    static const double share[] = {0, 0.24, 0.48, 1}; /* a crown's string, fret, how far off */
    double y = (cell.top + cell.bottom) / 2, wide = sil_box_width(cell);
    sil_draw_box(list, SIL_LAYER_DIMENSION, cell);
    switch (row->cell) {
    case SIL_CELL_CHOICE:
        choices(list, cell, row, last_visit);
        break;
    case SIL_CELL_CROWN:
        for (int k = 0; k < 3; k++) {
            double x = cell.left + share[k] * wide;
            if (k > 0) {
                sil_draw_line(list, SIL_LAYER_RULE, (sil_point){x, cell.bottom},
                              (sil_point){x, cell.top});
            }
            middle_text(list, x + (share[k + 1] - share[k]) * wide / 2, y,
                        last_visit ? row->read[k].text : "");
        }
        break;
    case SIL_CELL_FIGURE:
        middle_text(list, (cell.left + cell.right) / 2, y, last_visit ? row->read[0].text : "");
        break;
    }
}

static void form_head(sil_shapes *list, double x, double top, double width, const sil_form *form)
{
    double right = x + width, wanted = width - form->label - 2 * form->visit;
    double y = top - head / 2;
    if (form->ranged) {
        middle_text(list, x + form->label + (wanted - aim_width) / 2, y, "wanted");
        middle_text(list, right - 2 * form->visit - aim_width / 2, y, "aim");
    }
    middle_text(list, right - 1.5 * form->visit, y, "visit 1");
    middle_text(list, right - 0.5 * form->visit, y, "visit 2");
}

double sil_draw_form(sil_shapes *list, double x, double top, double width, const sil_form *form)
{
    const double row_height = 5.8;
    double right = x + width, wanted = width - form->label - 2 * form->visit, y = top - head;
    form_head(list, x, top, width, form);
    for (int r = 0; r < form->rows; r++) {
        const sil_entry *row = &form->row[r];
        double middle = y - row_height / 2;
        sil_draw_note(list, x, middle - SIL_NOTE / 2, row->label.text);
        middle_text(list, x + form->label + (wanted - (form->ranged ? aim_width : 0)) / 2, middle,
                    row->range.text);
        middle_text(list, right - 2 * form->visit - aim_width / 2, middle, row->aim.text);
        for (int visit = 0; visit < 2; visit++) {
            double left = right - (2 - visit) * form->visit;
            fill_cell(list, (sil_box){left, y - row_height, left + form->visit, y}, row,
                      visit == 0);
        }
        if (r > 0) {
            sil_draw_line(list, SIL_LAYER_RULE, (sil_point){x, y},
                          (sil_point){right - 2 * form->visit, y});
        }
        y -= row_height;
    }
    sil_draw_box(list, SIL_LAYER_OUTLINE, (sil_box){right - 2 * form->visit, y, right, top - head});
    return y;
}

double sil_draw_sizes(sil_shapes *list, double top, double width, int columns, int count,
                      const sil_size *size)
{
    const double row_height = 5.8, between = 5, cell = 19;
    int rows = (count + columns - 1) / columns;
    double pitch = (width + between) / columns;
    for (int i = 0; i < count; i++) {
        int column = i / rows;
        double x = column * pitch, y = top - i % rows * row_height;
        double right = x + pitch - between, middle = y - row_height / 2;
        sil_draw_note(list, x, middle - SIL_NOTE / 2, size[i].name.text);
        sil_draw_box(list, SIL_LAYER_DIMENSION, (sil_box){right - cell, y - row_height, right, y});
        middle_text(list, right - cell / 2, middle, size[i].value.text);
    }
    return top - rows * row_height;
}

/* --- a row a string --------------------------------------------------------------------------- */

static const double heading = 10.6, number_width = 7, sheet_width = 166;

/* How a table of the strings is laid out: each column as wide as what stands in it. */
typedef struct columns {
    double note, gauge, range, aim, visit;
} columns;

static double widest(const sil_shapes *list, double least, const char *text)
{
    return fmax(least, sil_text_width(list, text, SIL_NOTE) + 2.6);
}

static columns measure(const sil_draft *draft, const sil_shapes *list, int count,
                       const sil_gauging *gauging)
{
    columns c = {.note = 9, .gauge = 12, .range = 18, .aim = 10};
    double shares = 0, ranges = 0;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        double gauge = draft->plan->job->strings[i].gauge;
        c.note = widest(list, c.note, sil_say_note(draft, i).text);
        c.gauge = widest(list, c.gauge, sil_say_length(draft, gauge).text);
        for (int k = 0; k < count; k++) {
            c.range = widest(list, c.range, gauging[k].low_high[i].text);
            c.aim = widest(list, c.aim, gauging[k].aim[i].text);
        }
    }
    for (int k = 0; k < count; k++) {
        c.range = gauging[k].range != NULL ? widest(list, c.range, gauging[k].range) : c.range;
    }
    for (int k = 0; k < count; k++) {
        ranges += gauging[k].range != NULL ? c.range + c.aim : 0;
        shares += gauging[k].words ? 5 : 2;
    }
    c.visit = (sheet_width - number_width - c.note - c.gauge - ranges) / shares;
    return c;
}

static void strings_told(const sil_draft *draft, sil_shapes *list, const columns *c, double top,
                         double height)
{
    double note = number_width + c->note / 2, gauge = number_width + c->note + c->gauge / 2;
    middle_text(list, number_width / 2, top - 7.8, "no.");
    middle_text(list, note, top - 7.8, "note");
    middle_text(list, gauge, top - 7.8, "gauge");
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        double y = top - heading - (i + 0.5) * height;
        middle_text(list, number_width / 2, y, sil_say("%d", i + 1).text);
        middle_text(list, note, y, sil_say_note(draft, i).text);
        middle_text(list, gauge, y, sil_say_length(draft, draft->plan->job->strings[i].gauge).text);
    }
}

/* What is wanted of a string, then a cell a visit. */
static void gauging_row(sil_shapes *list, const columns *c, double x, double y, double height,
                        const sil_gauging *gauging, int string)
{
    double middle = y - height / 2, cell = gauging->words ? 2.5 * c->visit : c->visit;
    if (gauging->range != NULL) {
        middle_text(list, x + c->range / 2, middle, gauging->low_high[string].text);
        middle_text(list, x + c->range + c->aim / 2, middle, gauging->aim[string].text);
        x += c->range + c->aim;
    }
    for (int visit = 0; visit < 2; visit++) {
        double left = x + visit * cell;
        sil_draw_box(list, SIL_LAYER_DIMENSION, (sil_box){left, y - height, left + cell, y});
    }
    sil_words read = sil_text_fit(list, gauging->read[string].text, SIL_NOTE, cell - 1);
    middle_text(list, x + cell / 2, middle, read.text);
}

/* Returned: its right edge. */
static double draw_gauging(sil_shapes *list, const columns *c, double x, double top, double height,
                           int strings, const sil_gauging *gauging)
{
    double cell = gauging->words ? 2.5 * c->visit : c->visit, bottom = top - heading;
    double right = x + (gauging->range != NULL ? c->range + c->aim : 0) + 2 * cell;
    middle_text(list, (x + right) / 2, top - 2.6, gauging->name);
    sil_draw_line(list, SIL_LAYER_RULE, (sil_point){x + 1, top - 5}, (sil_point){right, top - 5});
    if (gauging->range != NULL) {
        middle_text(list, x + c->range / 2, top - 7.8, gauging->range);
        middle_text(list, x + c->range + c->aim / 2, top - 7.8, "aim");
    }
    middle_text(list, right - 1.5 * cell, top - 7.8, "visit 1");
    middle_text(list, right - 0.5 * cell, top - 7.8, "visit 2");
    for (int i = 0; i < strings; i++) {
        gauging_row(list, c, x, bottom, height, gauging, i);
        bottom -= height;
    }
    sil_draw_box(list, SIL_LAYER_OUTLINE,
                 (sil_box){right - 2 * cell, bottom, right, top - heading});
    return right;
}

double sil_draw_gaugings(const sil_draft *draft, sil_shapes *list, double top, double height,
                         int count, const sil_gauging *gauging)
{
    int strings = draft->plan->job->string_count;
    columns c = measure(draft, list, count, gauging);
    double x = number_width + c.note + c.gauge;
    strings_told(draft, list, &c, top, height);
    for (int k = 0; k < count; k++) {
        x = draw_gauging(list, &c, x, top, height, strings, &gauging[k]);
    }
    for (int i = 1; i < strings; i++) {
        double y = top - heading - i * height;
        sil_draw_line(list, SIL_LAYER_RULE, (sil_point){0, y}, (sil_point){x, y});
    }
    return top - heading - strings * height;
}
