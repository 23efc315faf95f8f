/* SPDX-License-Identifier: MIT */
/* The bench plan as a text to work from. */
#include <sillet/report.h>

#include "table.h"

#include <string.h>

static void put_range(text *t, const brief_range *range)
{
    text_put(t, "  ");
    text_right(t, 6, range->low.shown);
    text_put(t, " to ");
    text_left(t, 6, range->high.shown);
    text_add(t, " (%s)", range->aim.shown);
}

/* Names the shop, and the file that its tools, files and allowances may be from. */
static void put_shop(text *t, const sil_shop *shop)
{
    if (shop->name || shop->contact) {
        text_add(t, "Shop: %s%s%s\n", shop->name ? shop->name : "",
                 shop->name && shop->contact ? ", " : "", shop->contact ? shop->contact : "");
    }
    if (shop->file) {
        text_add(t, "What the sheet does not say of tools, files and allowances is from %s.\n",
                 shop->file);
    }
}

static void put_heading(text *t, const brief *b, const char *name)
{
    const sil_job *job = b->plan->job;
    const sil_reading *reading = sil_plan_reading(b->plan);
    text_add(t, "BENCH PLAN%s%s\n", job->about.title ? ": " : "",
             job->about.title ? job->about.title : "");
    const char *labels[] = {"reference", "owner", "by", "read on", "style", "sheet"};
    const char *values[] = {
        job->about.ref, job->about.owner,
        job->about.by,  reading && reading->date ? reading->date : job->about.date,
        job->style,     name};
    const char *gap = "";
    for (int k = 0; k < 6; k++) {
        if (values[k]) {
            text_add(t, "%s%s %s", gap, labels[k], values[k]);
            gap = "   ";
        }
    }
    text_add(t, "\n%d string%s, scale %s", b->strings, b->strings == 1 ? "" : "s", b->scale.shown);
    if (brief_known(b->scale_bass)) {
        text_add(t, " to %s (fret %d square)", b->scale_bass.shown, job->instrument.square);
    }
    text_add(t, ", %d frets, body joint at fret %d%s. Lengths in %s.\n", job->instrument.frets,
             job->instrument.join, job->instrument.handed == SIL_LEFT_HANDED ? ", left-handed" : "",
             b->unit == SIL_MM ? "mm" : "inches");
    put_shop(t, &job->shop);
}

/* Gives the action as a rule in 64ths of an inch shows it. */
static void put_marks(text *t, const brief *b)
{
    if (b->on_a_rule[0]) {
        text_put(t, "  ");
        text_wrap(t, b->on_a_rule, 2, REPORT_COLUMNS);
    }
}

/* Says which readings were taken in another way than they are shown. */
static void put_forms(text *t, const brief *b)
{
    const sil_plan *plan = b->plan;
    const sil_bench *bench = &plan->bench;
    const sil_gaps *gaps = &bench->gaps;
    const sil_relief_reading *relief = &bench->relief;
    if (!sil_plan_reading(plan)) {
        return;
    }
    if (gaps->first_held != bench->targets.first_held) {
        text_add(t, "  The gaps at fret 1 were measured %s, and are shown %s.\n",
                 brief_hold(gaps->first_held), brief_hold(bench->targets.first_held));
    }
    if (gaps->action_at != 12 || gaps->capo) {
        text_add(t, "  The action was measured at fret %d%s, and is shown open at the 12th.\n",
                 gaps->action_at, gaps->capo ? " with a capo at 1" : "");
    }
    if (relief->low != 1 || relief->high != bench->board.join) {
        text_add(t, "  The relief was measured on frets %d and %d, and is shown as on 1 and %d.\n",
                 relief->low, relief->high, bench->board.join);
    } else if (brief_known(b->relief_read) &&
               strcmp(b->relief_read.shown, b->relief.now.shown) != 0) {
        text_add(t,
                 "  The relief was read as %s under string %d, and is shown as on the middle of "
                 "the board.\n",
                 b->relief_read.shown, relief->string + 1);
    }
}

static void put_relief(text *t, const brief *b)
{
    text_add(t, "  relief over fret %-3d", b->plan->bench.board.relief_at);
    text_right(t, 9, b->relief.now.shown);
    put_range(t, &b->relief.wanted);
    text_right(t, 10, b->relief.after.shown);
    text_put(t, "\n\n");
}

static void fill_reading(report_table *table, int row, int first, const brief_reading *reading)
{
    text range = {0};
    put_range(&range, &reading->wanted);
    report_cell(table, row, first, reading->now.shown);
    report_made(table, row, first + 1, true, &range);
    report_cell(table, row, first + 2, reading->after.shown);
}

static const char *string_and_gauge(text_store *store, const brief *b, int i)
{
    const char *note = b->plan->job->strings[i].note;
    text start = {0};
    text_add(&start, "  %2d ", i + 1);
    text_left(&start, 5, note ? note : "");
    text_left(&start, 8, b->nut.slot[i].gauge.shown);
    return text_keep_made(store, &start);
}

/* Puts the gap at the 1st fret and the action of each string: now, its range, and after the work. */
static void put_gaps(text *t, const brief *b)
{
    enum { FIRST = 0, ACTION = 3, WIDE = 7, RANGE = 27 };
    text held = {0};
    report_table table = {.lines = 3, .start = 18, .columns = 6};
    text_add(&held, "  %s", brief_hold(b->plan->bench.targets.first_held));
    const char *const over[] = {"  gap at the 1st fret,", "  action at the 12th fret,"};
    const char *const how[] = {text_keep_made(&table.kept, &held), "  open"};
    for (int group = 0; group < 2; group++) {
        report_column *column = &table.column[(size_t)group * ACTION];
        column[0] = (report_column){.head = {NULL, NULL, "now"}, .wide = WIDE + 2 * group};
        column[1] = (report_column){
            .head = {over[group], how[group], "  range (target)"}, .wide = RANGE, .left = true};
        column[2] = (report_column){.head = {NULL, NULL, "after"}, .wide = WIDE};
    }
    for (int i = 0; i < b->strings; i++) {
        table.begin[i] = string_and_gauge(&table.kept, b, i);
        fill_reading(&table, i, FIRST, &b->first[i]);
        fill_reading(&table, i, ACTION, &b->action[i]);
    }
    report_put_table(t, &table, b->strings);
}

static void put_readings(text *t, const brief *b)
{
    text_add(t, "\nREADINGS%23s  %-25s%8s%s\n", "now", "  range (target)", "after",
             b->forecast ? " (a forecast)" : "");
    put_relief(t, b);
    put_gaps(t, b);
    put_marks(t, b);
    put_forms(t, b);
}

static void put_findings(text *t, const brief *b)
{
    const sil_plan *plan = b->plan;
    text_put(t, "\nWHAT WAS FOUND\n");
    for (int k = 0; k < plan->finding_count; k += b->findings[k].alike) {
        text_add(t, "  %-6s ", brief_level(plan->findings[k].level));
        text_wrap(t, b->findings[k].together.words, 9, REPORT_COLUMNS);
    }
    if (plan->finding_count == 0) {
        text_put(t, plan->only_stage < 0 ? "  Nothing out of its range.\n"
                                         : "  Nothing at this stage.\n");
    }
}

static void put_steps(text *t, const brief *b)
{
    text_put(t, "\nWHAT TO DO, IN THIS ORDER\n");
    for (int k = 0; k < b->plan->step_count; k++) {
        text_add(t, "  [ ] %2d  ", k + 1);
        text_wrap(t, b->steps[k].what.words, 10, REPORT_COLUMNS);
        text_put(t, "          Check: ");
        text_wrap(t, b->steps[k].check.words, 17, REPORT_COLUMNS);
        if (b->steps[k].care[0]) {
            text_put(t, "          Care: ");
            text_wrap(t, b->steps[k].care, 16, REPORT_COLUMNS);
        }
    }
}

/* Puts the tables of the parts and of sound. If the plan is for one stage, only the table of
 * that stage. */
static void put_parts(text *t, const brief *b)
{
    int only = b->plan->only_stage;
    if (only < 0 || only == SIL_NUT) {
        report_nut(t, b);
    }
    if (only < 0 || only == SIL_SADDLE) {
        report_saddle(t, b);
    }
    if (only < 0 || only == SIL_TUNE) {
        report_tuning(t, b);
    }
    if (only < 0) {
        report_tone(t, b);
    }
}

static void put_cautions(text *t)
{
    text_put(t, "\nTAKE CARE\n  ");
    text_wrap(
        t,
        "Slacken the strings before nut or saddle comes out, and wear eye protection. Use dust "
        "extraction and a mask: bone, shell, plastic and metal dust harm the lungs. Ventilate "
        "where "
        "glue is used. Never force a truss rod. Leave what you could not put right to a "
        "qualified repairer; local rules come first.",
        2, REPORT_COLUMNS);
}

char *sil_report_text(const sil_plan *plan, sil_unit unit, const char *name)
{
    text t = {0};
    brief *b = brief_make(plan, unit);
    if (!b) {
        return NULL;
    }
    put_heading(&t, b, name);
    put_readings(&t, b);
    report_visits(&t, b);
    put_findings(&t, b);
    put_steps(&t, b);
    put_parts(&t, b);
    put_cautions(&t);
    brief_free(b);
    return text_take(&t, NULL);
}
