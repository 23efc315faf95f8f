/* SPDX-License-Identifier: MIT */
/* The visits so far, as JSON and as text in the bench plan. */
#include "lines.h"
#include "result.h"

static void put_work(json_at row, const sil_visit *visit)
{
    json_at array = json_put_array(row, "work");
    for (int stage = SIL_ROD; stage < SIL_STAGES; stage++) {
        if (visit->worked[stage]) {
            json_add_word(array, sil_stage_word((sil_stage_name)stage));
        }
    }
}

void result_visits(const sil_plan *plan, json_at root)
{
    json_at array = json_put_array(root, "visits");
    for (int k = 0; k < plan->visit_count; k++) {
        const sil_visit *visit = &plan->visits[k];
        const sil_reading *reading = &plan->job->readings[visit->reading];
        json_at row = json_add_object(array);
        json_put_word(row, "date", reading->date);
        json_put_number(row, "humidity", reading->humidity_pct);
        json_put_number(row, "temperature", reading->temperature_c);
        put_work(row, visit);
        json_put_number(row, "relief", visit->relief);
        json_put_numbers(row, "predicted", visit->predicted, plan->job->string_count);
        json_put_numbers(row, "read", visit->read, plan->job->string_count);
        json_put_number(row, "ratio", visit->ratio);
    }
}

enum { DATE = 18, WORK = 30, BEFORE_STRINGS = 40, WIDE = 7 };

/* Puts figures in the order of the strings, eight to a line. */
static void put_figures(text *t, const brief *b, const brief_figure *figures)
{
    for (int i = 0; i < b->strings; i++) {
        if (i > 0 && i % 8 == 0) {
            text_put(t, "\n");
            text_space(t, BEFORE_STRINGS);
        }
        text_right(t, WIDE, figures[i].shown);
    }
}

/* What was read at any visit: the column of anything else is blank, and has no dashes. */
typedef struct columns {
    bool humidity, relief;
} columns;

static columns columns_of(const brief *b)
{
    columns read = {false, false};
    for (int k = 0; k < b->visit_count; k++) {
        read.humidity = read.humidity || brief_known(b->visits[k].humidity);
        read.relief = read.relief || brief_known(b->visits[k].relief);
    }
    return read;
}

static void put_visit(text *t, const brief *b, columns read, const brief_visit *visit)
{
    if (visit->expected) {
        text_put(t, "    after ");
        text_left(t, WORK, visit->work);
        put_figures(t, b, visit->due);
        text_put(t, "  expected\n");
    }
    text_put(t, "  ");
    text_left(t, DATE, visit->date);
    text_right(t, 7, read.humidity ? visit->humidity.shown : "");
    text_put(t, brief_known(visit->humidity) ? " %" : "  ");
    text_right(t, 10, read.relief ? visit->relief.shown : "");
    text_space(t, 1);
    put_figures(t, b, visit->read);
    if (brief_known(visit->ratio)) {
        text_add(t, "  %s %% of that change", visit->ratio.shown);
    }
    text_put(t, "\n");
}

void report_visits(text *t, const brief *b)
{
    if (b->visit_count == 0) {
        return;
    }
    columns read = columns_of(b);
    text_add(t, "\nVISITS SO FAR%15s%11s%s\n", read.humidity ? "humidity" : "",
             read.relief ? "relief" : "", "   action at the 12th fret, string 1 first");
    for (int k = 0; k < b->visit_count; k++) {
        put_visit(t, b, read, &b->visits[k]);
    }
}
