/* SPDX-License-Identifier: MIT */
/* The visits so far: what was read, and over it what was to be expected. */
#include "views.h"

enum { DATE, WORK, HUMIDITY, RELIEF, ACTION, VISITS_TOLD = DRAW_ROWS_MAX / 2 };

static draw_words percent(double value)
{
    char digits[16];
    sil_number_write(digits, sizeof digits, value, 0);
    return sil_known(value) ? draw_say("%s %%", digits) : draw_say("-");
}

/* A row holds eight strings; of more, every second. */
static int stride(const draw_draft *draft)
{
    return draft->plan->job->string_count > 8 ? 2 : 1;
}

static int shown(const draw_draft *draft)
{
    return (draft->plan->job->string_count + stride(draft) - 1) / stride(draft);
}

static void fill_figures(const draw_draft *draft, const double *values, draw_words *cell)
{
    for (int i = 0; i < shown(draft); i++) {
        int string = i * stride(draft);
        cell[ACTION + i] = draw_say_length(draft, values[string]);
    }
}

static void fill_visit(const draw_draft *draft, const sil_visit *visit, draw_words *cell)
{
    const sil_reading *reading = &draft->plan->job->readings[visit->reading];
    cell[DATE] = draw_say("%.10s", reading->date ? reading->date : "no date");
    cell[WORK] = draw_say("read");
    cell[HUMIDITY] = percent(reading->humidity_pct);
    cell[RELIEF] = draw_say_length(draft, visit->relief);
    fill_figures(draft, visit->read, cell);
    cell[ACTION + shown(draft)] = visit->ratio > 0.0
                                      ? draw_say("%s of it", percent(100.0 * visit->ratio).text)
                                      : draw_say(" ");
}

static void fill_expected(const draw_draft *draft, const sil_visit *visit, draw_words *cell)
{
    char work[64];
    sil_visit_words(visit, work, sizeof work);
    cell[WORK] = draw_say("due after %s", work);
    fill_figures(draft, visit->predicted, cell);
}

void view_visits(const draw_draft *draft, draw_shapes *list, double width)
{
    const sil_plan *plan = draft->plan;
    int strings = shown(draft), count = plan->visit_count;
    int first = count > VISITS_TOLD ? count - VISITS_TOLD : 0;
    draw_table table = {.columns = ACTION + strings + 1,
                        .row_height = 5,
                        .head = {[DATE] = {NULL, "visit"},
                                 [HUMIDITY] = {NULL, "humidity"},
                                 [RELIEF] = {NULL, "relief"}},
                        .span = {{ACTION, ACTION + strings - 1, "Action at the 12th fret, open"}}};
    char number[SIL_STRINGS_MAX][8];
    for (int i = 0; i < strings; i++) {
        sil_number_write(number[i], sizeof number[i], i * stride(draft) + 1, 0);
        table.head[ACTION + i][1] = number[i];
    }
    table.head[ACTION + strings][1] = "came";
    for (int c = HUMIDITY; c < table.columns; c++) {
        table.anchor[c] = DRAW_RIGHT;
    }
    for (int k = first; k < count; k++) {
        if (k > first) {
            fill_expected(draft, &plan->visits[k], table.cell[table.rows++]);
        }
        fill_visit(draft, &plan->visits[k], table.cell[table.rows++]);
    }
    draw_add_table(list, 0, 0, width, &table);
}
