/* SPDX-License-Identifier: MIT */
/* The bench plan as text to work from. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <sillet/report.h>

enum { COLUMNS = 96, TEXT_MAX = 2048, CELL = 32 };

typedef struct page {
    FILE *out;
    const sil_plan *plan;
    sil_unit unit;
} page;

/* Characters of a UTF-8 text, which is what a column counts. */
static int width(const char *text, size_t size)
{
    int columns = 0;
    for (size_t i = 0; i < size; i++) {
        columns += ((unsigned char)text[i] & 0xC0) != 0x80;
    }
    return columns;
}

/* Prints a text in lines, the first behind what already stands in its line, the others indented. */
static void wrap(FILE *out, const char *text, int indent)
{
    int column = indent;
    const char *at = text;
    while (*at) {
        size_t word = strcspn(at, " ");
        int columns = width(at, word);
        if (column > indent && column + 1 + columns > COLUMNS) {
            fprintf(out, "\n%*s", indent, "");
            column = indent;
        } else if (column > indent) {
            fputc(' ', out);
            column++;
        }
        fwrite(at, 1, word, out);
        column += columns;
        at += word;
        at += strspn(at, " ");
    }
    fputc('\n', out);
}

static const char *length(const page *p, double mm, char cell[CELL])
{
    sil_length_write(cell, CELL, mm, p->unit, 2);
    return cell;
}

static void print_length(const page *p, int columns, double mm)
{
    char cell[CELL];
    fprintf(p->out, "%*s", columns, length(p, mm, cell));
}

static void print_range(const page *p, sil_band band)
{
    char low[CELL];
    char aim[CELL];
    char high[CELL];
    fprintf(p->out, "  %6s to %-6s (%s)", length(p, band.low, low), length(p, band.high, high),
            length(p, band.aim, aim));
}

static void print_heading(const page *p, const char *name)
{
    const sil_job *job = p->plan->job;
    const sil_reading *reading = p->plan->reading < 0 ? NULL : &job->readings[p->plan->reading];
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
    char scale[CELL];
    bool whole = p->unit == SIL_MM && job->instrument.scale == floor(job->instrument.scale);
    sil_length_write(scale, sizeof scale, job->instrument.scale, p->unit, whole ? 0 : 2);
    fprintf(p->out, "\n%d string%s, scale %s, %d frets, body joint at fret %d%s. Lengths in %s.\n",
            job->string_count, job->string_count == 1 ? "" : "s", scale, job->instrument.frets,
            job->instrument.join, job->instrument.handed == SIL_LEFT_HANDED ? ", left-handed" : "",
            p->unit == SIL_MM ? "mm" : "inches");
}

static const char *hold_words(sil_hold hold)
{
    return hold == SIL_HOLD_OPEN ? "open"
           : hold == SIL_HOLD_2  ? "lying on the 2nd"
                                 : "held at the 3rd";
}

static void print_readings(const page *p)
{
    const sil_plan *plan = p->plan;
    const sil_board *board = &plan->bench.board;
    const sil_fit *now = &plan->stages.fit[SIL_NOW];
    const sil_fit *last = &plan->stages.fit[SIL_SADDLE];
    bool forecast = plan->stages.forecast[SIL_NUT] || plan->stages.forecast[SIL_SADDLE];
    fprintf(p->out, "\nREADINGS%23s  %-25s%8s%s\n", "now", "  wanted (aim)", "after",
            forecast ? " (a forecast)" : "");
    char label[64];
    snprintf(label, sizeof label, "relief over fret %d", board->relief_at);
    fprintf(p->out, "  %-20s", label);
    print_length(p, 9, sil_relief(board, now->bend));
    print_range(p, plan->bench.targets.relief);
    print_length(p, 10, sil_relief(board, last->bend));
    fprintf(p->out, "\n\n  %-18s%-44s%s\n", "", "gap at the 1st fret,", "action at the 12th fret,");
    fprintf(p->out, "  %-18s%-44s%s\n", "string", hold_words(plan->bench.targets.first_held),
            "open");
    for (int column = 0; column < 2; column++) {
        fprintf(p->out, "%*s  %-22s%8s", column ? 11 : 25, "now", "  wanted (aim)", "after");
    }
    fputc('\n', p->out);
    for (int i = 0; i < board->strings; i++) {
        const sil_string *string = &plan->job->strings[i];
        sil_hold hold = plan->bench.targets.first_held;
        char gauge[CELL];
        fprintf(p->out, "  %2d %-4s %-8s", i + 1, string->note ? string->note : "",
                length(p, string->gauge, gauge));
        print_length(p, 7, sil_first_gap(board, now, i, hold));
        print_range(p, plan->bench.targets.first[i]);
        print_length(p, 8, sil_first_gap(board, last, i, hold));
        print_length(p, 11, sil_action(board, now, i, 12));
        print_range(p, plan->bench.targets.action[i]);
        print_length(p, 8, sil_action(board, last, i, 12));
        fputc('\n', p->out);
    }
}

static void print_findings(const page *p)
{
    char words[TEXT_MAX];
    fprintf(p->out, "\nWHAT WAS FOUND\n");
    int k = 0;
    while (k < p->plan->finding_count) {
        fprintf(p->out, "  %-6s ", sil_level_word(p->plan->findings[k].level));
        k += sil_findings_text(p->plan, k, p->unit, words, sizeof words);
        wrap(p->out, words, 9);
    }
    if (p->plan->finding_count == 0) {
        fprintf(p->out, "  Nothing out of its range.\n");
    }
}

static void print_steps(const page *p)
{
    char words[TEXT_MAX];
    fprintf(p->out, "\nWHAT TO DO, IN THIS ORDER\n");
    for (int k = 0; k < p->plan->step_count; k++) {
        fprintf(p->out, "  [ ] %2d  ", k + 1);
        sil_step_do(p->plan, k, p->unit, words, sizeof words);
        wrap(p->out, words, 10);
        fprintf(p->out, "          Check: ");
        sil_step_check(p->plan, k, p->unit, words, sizeof words);
        wrap(p->out, words, 17);
    }
}

/* "Nothing is cut at the nut today: the truss rod is turned first." All reasons there are fit. */
static void print_waiting(const page *p, const char *part, const sil_withheld *withheld)
{
    char words[TEXT_MAX];
    size_t used =
        (size_t)snprintf(words, sizeof words, "WAIT: nothing is cut at the %s today", part);
    for (int k = 0; k < withheld->count; k++) {
        used += (size_t)snprintf(words + used, sizeof words - used, "%s%s", k == 0 ? ": " : "; ",
                                 sil_code_waits(withheld->by[k]));
    }
    snprintf(words + used, sizeof words - used, "%s. Figures are a forecast, not to cut by.",
             withheld->count > 0 ? "" : ": a reading is missing");
    fputs("  ", p->out);
    wrap(p->out, words, 2);
}

static void print_spread(const page *p, double u)
{
    char cell[CELL];
    char spread[CELL + 4];
    snprintf(spread, sizeof spread, "\xC2\xB1%s", length(p, 2.0 * u, cell));
    fprintf(p->out, " %-10s", spread); /* one character of two bytes: nine columns */
}

static void print_nut(const page *p)
{
    static const char *const verdicts[] = {"leave", "deeper", "raise", "wait"};
    const sil_plan *plan = p->plan;
    const sil_nut_work *work = &plan->nut;
    fprintf(p->out, "\nNUT: where each slot stands, how wide and how deep\n");
    if (work->remedy == SIL_NUT_WAIT) {
        print_waiting(p, "nut", &plan->nut_withheld);
    }
    static const char *const head[][7] = {
        {"too high by", "first", "feelers", "floor", "depth", "slot", "centre"},
        {"", "pass", "to stop", "over", "under", "width", "from"},
        {"", "", "at", "the seat", "the top", "", "bass end"}};
    for (int line = 0; line < 3; line++) {
        fprintf(p->out, "  %-12s %-16s", line == 0 ? "string" : "", head[line][0]);
        for (int column = 1; column < 7; column++) {
            fprintf(p->out, "%9s", head[line][column]);
        }
        fputc('\n', p->out);
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        fprintf(p->out, "  %2d  %-8s ", i + 1, verdicts[work->verdict[i]]);
        print_length(p, 6, plan->stages.deepen[i]);
        print_spread(p, plan->stages.deepen_u[i]);
        print_length(p, 9, work->first_pass[i]);
        print_length(p, 9, work->stack[i]);
        print_length(p, 9, work->floor[i]);
        print_length(p, 9, work->depth[i]);
        print_length(p, 9, plan->slot_width[i]);
        print_length(p, 9, plan->job->nut.width / 2.0 + plan->bench.board.nut_z[i]);
        fputc('\n', p->out);
    }
}

static void print_saddle(const page *p)
{
    static const char *const verdicts[] = {"leave", "lower", "raise", "wait"};
    const sil_plan *plan = p->plan;
    const sil_saddle_work *work = &plan->saddle;
    bool screws = plan->job->saddle.kind == SIL_SADDLE_INDIVIDUAL;
    fprintf(p->out, "\nSADDLE: how far each string comes down\n");
    if (work->remedy == SIL_SADDLE_WAIT) {
        print_waiting(p, "saddle", &plan->saddle_withheld);
    }
    const char *head[][6] = {
        {"too high by", "first", screws ? "screw" : "off the", "height", "height", "out of"},
        {"", "pass", screws ? "turns" : "top", "now", "done", "bridge"}};
    for (int line = 0; line < 2; line++) {
        fprintf(p->out, "  %-12s %-16s", line == 0 ? "string" : "", head[line][0]);
        for (int column = 1; column < 6; column++) {
            fprintf(p->out, "%9s", head[line][column]);
        }
        fputc('\n', p->out);
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        char turns[CELL];
        sil_number_write(turns, sizeof turns, work->turns[i], 2);
        fprintf(p->out, "  %2d  %-8s ", i + 1, verdicts[work->verdict[i]]);
        print_length(p, 6, plan->stages.lower[i]);
        print_spread(p, plan->stages.lower_u[i]);
        print_length(p, 9, work->first_pass[i]);
        if (screws) {
            fprintf(p->out, "%9s", turns);
        } else {
            print_length(p, 9, work->dress[i]);
        }
        print_length(p, 9, work->present[i]);
        print_length(p, 9, work->height[i]);
        print_length(p, 9, work->protrusion[i]);
        fputc('\n', p->out);
    }
    fprintf(p->out, "  Too high by: the whole cut to the aim, a minus is too low; \xC2\xB1 is what "
                    "the tools leave open\n  (two standard uncertainties). In range is left "
                    "alone.\n");
}

static void print_cautions(const page *p)
{
    fprintf(p->out, "\nTAKE CARE\n  ");
    wrap(p->out,
         "Slack the strings before nut or saddle comes out, and cover the eyes. Extract the dust "
         "and "
         "wear a mask: bone, shell, plastic and metal dust harm the lungs. Ventilate where glue is "
         "used. Never force a truss rod. What you would not undo, leave to a qualified repairer; "
         "local rules come first.",
         2);
}

char *sil_report_text(const sil_plan *plan, sil_unit unit, const char *name)
{
    char *text = NULL;
    size_t size = 0;
    page p = {open_memstream(&text, &size), plan, unit};
    if (!p.out) {
        return NULL;
    }
    print_heading(&p, name);
    print_readings(&p);
    print_findings(&p);
    print_steps(&p);
    print_nut(&p);
    print_saddle(&p);
    print_cautions(&p);
    bool failed = ferror(p.out) != 0;
    failed = fclose(p.out) != 0 || failed;
    if (failed) {
        free(text);
        return NULL;
    }
    return text;
}
