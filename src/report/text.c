/* SPDX-License-Identifier: MIT */
/* The bench plan as text to work from. */
#define _GNU_SOURCE /* NOLINT: fopencookie */
#include <stdlib.h>
#include <string.h>

#include "lines.h"

/* Characters of a UTF-8 text, which is what a column counts. */
static int width(const char *text, size_t size)
{
    int columns = 0;
    for (size_t i = 0; i < size; i++) {
        columns += ((unsigned char)text[i] & 0xC0) != 0x80;
    }
    return columns;
}

void report_wrap(const report *p, const char *text, int indent)
{
    int column = indent;
    const char *at = text;
    while (*at) {
        size_t word = strcspn(at, " ");
        int columns = width(at, word);
        if (column > indent && column + 1 + columns > REPORT_COLUMNS) {
            fprintf(p->out, "\n%*s", indent, "");
            column = indent;
        } else if (column > indent) {
            fputc(' ', p->out);
            column++;
        }
        fwrite(at, 1, word, p->out);
        column += columns;
        at += word;
        at += strspn(at, " ");
    }
    fputc('\n', p->out);
}

const char *report_figure(const report *p, double mm, sil_rounding way, char cell[REPORT_CELL])
{
    sil_figure_write(cell, REPORT_CELL, mm, p->unit, way);
    return cell;
}

void report_length(const report *p, int columns, double mm, sil_rounding way)
{
    char cell[REPORT_CELL];
    fprintf(p->out, "%*s", columns, report_figure(p, mm, way, cell));
}

static void print_range(const report *p, sil_band band)
{
    char low[REPORT_CELL];
    char aim[REPORT_CELL];
    char high[REPORT_CELL];
    fprintf(p->out, "  %6s to %-6s (%s)", report_figure(p, band.low, SIL_NEAREST, low),
            report_figure(p, band.high, SIL_NEAREST, high),
            report_figure(p, band.aim, SIL_NEAREST, aim));
}

static void write_scale(const report *p, double mm, char cell[REPORT_CELL])
{
    bool whole = p->unit == SIL_MM && mm == floor(mm);
    sil_length_write(cell, REPORT_CELL, mm, p->unit, whole ? 0 : 2);
}

static void print_heading(const report *p, const char *name)
{
    const sil_job *job = p->plan->job;
    const sil_reading *reading = sil_plan_reading(p->plan);
    fprintf(p->out, "BENCH PLAN%s%s\n", job->about.title ? ": " : "",
            job->about.title ? job->about.title : "");
    const char *labels[] = {"reference", "owner", "by", "read on", "sheet"};
    const char *values[] = {job->about.ref, job->about.owner, job->about.by,
                            reading && reading->date ? reading->date : job->about.date, name};
    const char *gap = "";
    for (int k = 0; k < 5; k++) {
        if (values[k]) {
            fprintf(p->out, "%s%s %s", gap, labels[k], values[k]);
            gap = "   ";
        }
    }
    char scale[REPORT_CELL];
    char bass[REPORT_CELL];
    char fan[REPORT_CELL + 40] = "";
    write_scale(p, job->instrument.scale, scale);
    if (sil_known(job->instrument.scale_bass)) {
        write_scale(p, job->instrument.scale_bass, bass);
        snprintf(fan, sizeof fan, " to %s (fret %d square)", bass, job->instrument.square);
    }
    fprintf(p->out,
            "\n%d string%s, scale %s%s, %d frets, body joint at fret %d%s. Lengths in %s.\n",
            job->string_count, job->string_count == 1 ? "" : "s", scale, fan, job->instrument.frets,
            job->instrument.join, job->instrument.handed == SIL_LEFT_HANDED ? ", left-handed" : "",
            p->unit == SIL_MM ? "mm" : "inches");
}

/* Readings taken in another form than they are told in. */
static void print_forms(const report *p)
{
    const sil_bench *bench = &p->plan->bench;
    const sil_gaps *gaps = &bench->gaps;
    if (p->plan->reading < 0) {
        return;
    }
    if (gaps->first_held != bench->targets.first_held) {
        fprintf(p->out, "  The gaps at fret 1 were read %s, and are told %s.\n",
                sil_hold_words(gaps->first_held), sil_hold_words(bench->targets.first_held));
    }
    if (gaps->action_at != 12 || gaps->capo) {
        fprintf(p->out, "  The action was read at fret %d%s, and is told open at the 12th.\n",
                gaps->action_at, gaps->capo ? " with a capo at 1" : "");
    }
    const sil_relief_reading *relief = &bench->relief;
    if (relief->low != 1 || relief->high != bench->board.join) {
        fprintf(p->out, "  The relief was read on frets %d and %d, and is told as on 1 and %d.\n",
                relief->low, relief->high, bench->board.join);
    }
}

static void print_readings(const report *p)
{
    const sil_plan *plan = p->plan;
    const sil_board *board = &plan->bench.board;
    const sil_fit *last = &plan->stages.fit[SIL_SADDLE];
    bool forecast = plan->stages.forecast[SIL_NUT] || plan->stages.forecast[SIL_SADDLE];
    fprintf(p->out, "\nREADINGS%23s  %-25s%8s%s\n", "now", "  wanted (aim)", "after",
            forecast ? " (a forecast)" : "");
    char label[64];
    snprintf(label, sizeof label, "relief over fret %d", board->relief_at);
    fprintf(p->out, "  %-20s", label);
    report_length(p, 9, sil_relief_now(plan), SIL_NEAREST);
    print_range(p, plan->bench.targets.relief);
    report_length(p, 10, sil_relief(board, last->bend), SIL_NEAREST);
    fprintf(p->out, "\n\n  %-18s%-44s%s\n", "", "gap at the 1st fret,", "action at the 12th fret,");
    fprintf(p->out, "  %-18s%-44s%s\n", "string", sil_hold_words(plan->bench.targets.first_held),
            "open");
    for (int column = 0; column < 2; column++) {
        fprintf(p->out, "%*s  %-22s%8s", column ? 11 : 25, "now", "  wanted (aim)", "after");
    }
    fputc('\n', p->out);
    for (int i = 0; i < board->strings; i++) {
        const sil_string *string = &plan->job->strings[i];
        sil_hold hold = plan->bench.targets.first_held;
        char gauge[REPORT_CELL];
        fprintf(p->out, "  %2d %-4s %-8s", i + 1, string->note ? string->note : "",
                report_figure(p, string->gauge, SIL_NEAREST, gauge));
        report_length(p, 7, sil_first_now(plan, i), SIL_NEAREST);
        print_range(p, plan->bench.targets.first[i]);
        report_length(p, 8, sil_first_gap(board, last, i, hold), SIL_NEAREST);
        report_length(p, 11, sil_action_now(plan, i), SIL_NEAREST);
        print_range(p, plan->bench.targets.action[i]);
        report_length(p, 8, sil_action_after(plan, i), SIL_NEAREST);
        fputc('\n', p->out);
    }
    print_forms(p);
}

static void print_findings(const report *p)
{
    char words[REPORT_TEXT_MAX];
    fprintf(p->out, "\nWHAT WAS FOUND\n");
    int k = 0;
    while (k < p->plan->finding_count) {
        fprintf(p->out, "  %-6s ", sil_level_word(p->plan->findings[k].level));
        k += sil_findings_text(p->plan, k, p->unit, words, sizeof words);
        report_wrap(p, words, 9);
    }
    if (p->plan->finding_count == 0) {
        fprintf(p->out, p->plan->only_stage < 0 ? "  Nothing out of its range.\n"
                                                : "  Nothing at this stage.\n");
    }
}

static void print_steps(const report *p)
{
    char words[REPORT_TEXT_MAX];
    fprintf(p->out, "\nWHAT TO DO, IN THIS ORDER\n");
    for (int k = 0; k < p->plan->step_count; k++) {
        fprintf(p->out, "  [ ] %2d  ", k + 1);
        sil_step_do(p->plan, k, p->unit, words, sizeof words);
        report_wrap(p, words, 10);
        fprintf(p->out, "          Check: ");
        sil_step_check(p->plan, k, p->unit, words, sizeof words);
        report_wrap(p, words, 17);
    }
}

/* The tables of the parts, and what rings; where one stage alone is asked for, only its own. */
static void print_parts(const report *p)
{
    int only = p->plan->only_stage;
    if (only < 0 || only == SIL_NUT) {
        report_nut(p);
    }
    if (only < 0 || only == SIL_SADDLE) {
        report_saddle(p);
    }
    if (only < 0) {
        report_sound(p);
    }
}

static void print_cautions(const report *p)
{
    fprintf(p->out, "\nTAKE CARE\n  ");
    report_wrap(
        p,
        "Slack the strings before nut or saddle comes out, and cover the eyes. Extract the dust "
        "and "
        "wear a mask: bone, shell, plastic and metal dust harm the lungs. Ventilate where glue is "
        "used. Never force a truss rod. What you would not undo, leave to a qualified repairer; "
        "local rules come first.",
        2);
}

typedef struct growing {
    char *text;
    size_t size;
} growing;

/* What is printed is added to a text. (The C library's own stream into memory forgets that it could
 * not grow: its text would lack a stretch, and nobody be told.) */
static ssize_t grow(void *with, const char *more, size_t size)
{
    growing *g = with;
    char *larger = realloc(g->text, g->size + size + 1);
    if (!larger) {
        return 0;
    }
    memcpy(larger + g->size, more, size);
    g->text = larger;
    g->size += size;
    g->text[g->size] = '\0';
    return (ssize_t)size;
}

char *sil_report_text(const sil_plan *plan, sil_unit unit, const char *name)
{
    growing made = {NULL, 0};
    report p = {fopencookie(&made, "w", (cookie_io_functions_t){.write = grow}), plan, unit};
    if (!p.out) {
        return NULL;
    }
    print_heading(&p, name);
    print_readings(&p);
    report_visits(&p);
    print_findings(&p);
    print_steps(&p);
    print_parts(&p);
    print_cautions(&p);
    bool failed = ferror(p.out) != 0;
    failed = fclose(p.out) != 0 || failed;
    if (failed) {
        free(made.text);
        return NULL;
    }
    return made.text;
}
