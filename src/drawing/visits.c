/* SPDX-License-Identifier: MIT */
/* The visits so far: what was read, and over it what was to be expected. */
#include "views.h"

enum { DATE, WORK, HUMIDITY, RELIEF, ACTION, VISITS_TOLD = SIL_ROWS_MAX / 2 };

static sil_words percent(double value)
{
    char digits[16];
    sil_number_write(digits, sizeof digits, value, 0);
    return sil_known(value) ? sil_say("%s %%", digits) : sil_say("-");
}

/* A row holds eight strings; of more, every second. */
static int stride(const sil_draft *draft)
{
    return draft->plan->job->string_count > 8 ? 2 : 1;
}

static int shown(const sil_draft *draft)
{
    return (draft->plan->job->string_count + stride(draft) - 1) / stride(draft);
}

static void fill_figures(const sil_draft *draft, const double *values, sil_words *cell)
{
    for (int i = 0; i < shown(draft); i++) {
        int string = i * stride(draft);
        cell[ACTION + i] = sil_say_length(draft, values[string]);
    }
}

static void fill_visit(const sil_draft *draft, const sil_visit *visit, sil_words *cell)
{
    const sil_reading *reading = &draft->plan->job->readings[visit->reading];
    cell[DATE] = sil_say("%.10s", reading->date ? reading->date : "no date");
    cell[WORK] = sil_say("read");
    cell[HUMIDITY] = percent(reading->humidity_pct);
    cell[RELIEF] = sil_say_length(draft, visit->relief);
    fill_figures(draft, visit->read, cell);
    cell[ACTION + shown(draft)] =
        visit->ratio > 0.0 ? sil_say("%s of it", percent(100.0 * visit->ratio).text) : sil_say(" ");
}

static void fill_expected(const sil_draft *draft, const sil_visit *visit, sil_words *cell)
{
    char work[64];
    sil_visit_words(visit, work, sizeof work);
    cell[WORK] = sil_say("due after %s", work);
    fill_figures(draft, visit->predicted, cell);
}

void sil_visits(const sil_draft *draft, sil_shapes *list, double width)
{
    const sil_plan *plan = draft->plan;
    int strings = shown(draft), count = plan->visit_count;
    int first = count > VISITS_TOLD ? count - VISITS_TOLD : 0;
    sil_table table = {.columns = ACTION + strings + 1,
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
        table.anchor[c] = SIL_RIGHT;
    }
    for (int k = first; k < count; k++) {
        if (k > first) {
            fill_expected(draft, &plan->visits[k], table.cell[table.rows++]);
        }
        fill_visit(draft, &plan->visits[k], table.cell[table.rows++]);
    }
    sil_draw_table(list, 0, 0, width, &table);
}
