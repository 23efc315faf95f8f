/* SPDX-License-Identifier: MIT */
/* The visits so far: as JSON, and as the bench plan's history. */
#include "lines.h"
#include "writer.h"

static const sil_reading *reading_of(const sil_plan *plan, const sil_visit *visit)
{
    return &plan->job->readings[visit->reading];
}

static void put_work(writer *w, cJSON *row, const sil_visit *visit)
{
    cJSON *array = put_array(w, row, "work");
    for (int stage = SIL_ROD; stage < SIL_STAGES; stage++) {
        if (visit->worked[stage]) {
            add_word(w, array, sil_stage_word((sil_stage_name)stage));
        }
    }
}

void put_visits(writer *w, cJSON *root)
{
    const sil_plan *plan = w->plan;
    cJSON *array = put_array(w, root, "visits");
    for (int k = 0; k < plan->visit_count; k++) {
        const sil_visit *visit = &plan->visits[k];
        cJSON *row = add_row(w, array);
        put_word(w, row, "date", reading_of(plan, visit)->date);
        put_number(w, row, "humidity", reading_of(plan, visit)->humidity_pct);
        put_number(w, row, "temperature", reading_of(plan, visit)->temperature_c);
        put_work(w, row, visit);
        put_number(w, row, "relief", visit->relief);
        put_numbers(w, row, "predicted", visit->predicted, plan->job->string_count);
        put_numbers(w, row, "read", visit->read, plan->job->string_count);
        put_number(w, row, "ratio", visit->ratio);
    }
}

/* Figures in string order, eight to a line. */
static void print_strings(const report *p, const double *values)
{
    for (int i = 0; i < p->plan->job->string_count; i++) {
        if (i > 0 && i % 8 == 0) {
            fprintf(p->out, "\n%46s", "");
        }
        report_length(p, 6, values[i], SIL_NEAREST);
    }
}

static void print_percent(const report *p, double percent)
{
    char digits[REPORT_CELL];
    sil_number_write(digits, sizeof digits, percent, 0);
    fprintf(p->out, "%7s%s", digits, sil_known(percent) ? " %" : "  ");
}

static void print_expected(const report *p, const sil_visit *visit)
{
    char work[REPORT_CELL * 2];
    sil_visit_words(visit, work, sizeof work);
    fprintf(p->out, "    after %-36s", work);
    print_strings(p, visit->predicted);
    fprintf(p->out, "  expected\n");
}

static void print_visit(const report *p, const sil_visit *visit)
{
    const sil_reading *reading = reading_of(p->plan, visit);
    char ratio[REPORT_CELL];
    if (visit->reading > p->plan->visits[0].reading) {
        print_expected(p, visit);
    }
    fprintf(p->out, "  %-18.18s", reading->date ? reading->date : "no date");
    print_percent(p, reading->humidity_pct);
    report_length(p, 10, visit->relief, SIL_NEAREST);
    fprintf(p->out, "%9s", "");
    print_strings(p, visit->read);
    if (visit->ratio > 0.0) {
        sil_number_write(ratio, sizeof ratio, 100.0 * visit->ratio, 0);
        fprintf(p->out, "  %s %% of that change", ratio);
    }
    fputc('\n', p->out);
}

void report_visits(const report *p)
{
    const int told = 8;
    int count = p->plan->visit_count;
    if (count < 2) {
        return;
    }
    fprintf(p->out, "\nVISITS SO FAR%15s%9s%9s%s\n", "humidity", "relief", "",
            "  action at the 12th fret, string 1 first");
    for (int k = count > told ? count - told : 0; k < count; k++) {
        print_visit(p, &p->plan->visits[k]);
    }
}
