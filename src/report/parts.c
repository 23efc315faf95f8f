/* SPDX-License-Identifier: MIT */
/* The bench plan's tables of nut and saddle. */
#include "lines.h"

void report_heads(const report *p, int lines, int columns, const char *const *heads)
{
    for (int line = 0; line < lines; line++, heads += columns) {
        fprintf(p->out, "  %-12s %-16s", line == 0 ? "string" : "", heads[0]);
        for (int column = 1; column < columns; column++) {
            fprintf(p->out, "%9s", heads[column]);
        }
        fputc('\n', p->out);
    }
}

/* "Nothing is cut at the nut today: the truss rod is turned first." All reasons there are fit. */
static void print_waiting(const report *p, const char *part, const sil_withheld *withheld)
{
    char words[REPORT_TEXT_MAX];
    size_t size = sizeof words;
    size_t used = (size_t)snprintf(words, size, "WAIT: nothing is cut at the %s today", part);
    for (int k = 0; k < withheld->count; k++) {
        used += (size_t)snprintf(words + used, size - used, "%s%s", k == 0 ? ": " : "; ",
                                 sil_code_waits(withheld->by[k]));
    }
    snprintf(words + used, size - used, "%s. Figures are a forecast, not to cut by.",
             withheld->count > 0 ? "" : ": a reading is missing");
    fputs("  ", p->out);
    report_wrap(p, words, 2);
}

/* String, verdict, how far off it is, and what the tools leave open. */
static void begin_row(const report *p, int i, const char *verdict, double off, double u)
{
    char cell[REPORT_CELL];
    fprintf(p->out, "  %2d  %-8s ", i + 1, verdict);
    report_length(p, 6, off, SIL_NEAREST);
    if (sil_known(u)) {
        /* The sign is one character of two bytes: nine columns. */
        char spread[REPORT_CELL + 4];
        snprintf(spread, sizeof spread, "\xC2\xB1%s", report_figure(p, 2.0 * u, SIL_NEAREST, cell));
        fprintf(p->out, " %-10s", spread);
    } else {
        fprintf(p->out, " %-9s", "");
    }
}

static void print_blank(const report *p, bool waits, sil_blank blank)
{
    char length[REPORT_CELL];
    char thickness[REPORT_CELL];
    char height[REPORT_CELL];
    if (!waits && sil_known(blank.height) && sil_known(blank.length)) {
        fprintf(p->out,
                "  A new one: a blank of %s x %s x %s, what is left for fitting counted in.\n",
                report_figure(p, blank.length, SIL_UP, length),
                report_figure(p, blank.thickness, SIL_UP, thickness),
                report_figure(p, blank.height, SIL_UP, height));
    }
}

void report_nut(const report *p)
{
    static const char *const verdicts[] = {"leave", "deeper", "raise", "wait"};
    static const char *const heads[] = {
        "too high by", "first",    "feelers", "floor", "depth",   "slot", "centre", "",
        "pass",        "to stop",  "above",   "below", "width",   "from", "",       "",
        "at",          "the seat", "the top", "",      "bass end"};
    const sil_plan *plan = p->plan;
    const sil_nut_work *work = &plan->nut;
    fprintf(p->out, "\nNUT: where each slot stands, how wide and how deep\n");
    if (work->remedy == SIL_NUT_WAIT) {
        print_waiting(p, "nut", &plan->nut_withheld);
    }
    report_heads(p, 3, 7, heads);
    for (int i = 0; i < plan->job->string_count; i++) {
        begin_row(p, i, verdicts[work->verdict[i]], plan->stages.deepen[i],
                  plan->stages.deepen_u[i]);
        report_length(p, 9, work->first_pass[i], SIL_DOWN);
        report_length(p, 9, work->stack[i], SIL_UP);
        report_length(p, 9, work->floor[i], SIL_NEAREST);
        report_length(p, 9, work->depth[i], SIL_NEAREST);
        report_length(p, 9, plan->slot_width[i], SIL_NEAREST);
        /* Along the nut, which is longer than across the board where it leans. */
        double across = plan->job->nut.width / 2.0 + plan->bench.board.nut_z[i];
        report_length(p, 9, across / cos(plan->bench.board.nut_slant), SIL_NEAREST);
        fputc('\n', p->out);
    }
    print_blank(p, work->remedy == SIL_NUT_WAIT, plan->nut_blank);
    if (plan->bench.zero_fret) {
        fputs("  The zero fret sets the height here; the slots only guide, and none is filed for "
              "height.\n",
              p->out);
    }
}

/* What comes off the base at a string; unknown where nothing is sanded there. */
static double off_base(const sil_plan *plan, sil_line line, int i)
{
    double z = plan->bench.board.saddle_z[i];
    return plan->saddle.bottom ? sil_line_at(line, z) : SIL_UNKNOWN;
}

static void print_screw_row(const report *p, int i)
{
    const sil_saddle_work *work = &p->plan->saddle;
    char turns[REPORT_CELL];
    sil_number_write(turns, sizeof turns, work->turns[i], 2);
    report_length(p, 9, work->first_pass[i], SIL_DOWN);
    fprintf(p->out, "%9s\n", turns);
}

static void print_sanded_row(const report *p, int i)
{
    const sil_plan *plan = p->plan;
    const sil_saddle_work *work = &plan->saddle;
    double left_on = sil_left_on(plan, i);
    report_length(p, 9, off_base(plan, work->cut_first, i), SIL_DOWN);
    report_length(p, 9, off_base(plan, work->cut, i), SIL_DOWN);
    report_length(p, 9, work->dress[i] - left_on, SIL_DOWN);
    report_length(p, 9, work->present[i], SIL_NEAREST);
    report_length(p, 9, work->height[i] + left_on, SIL_NEAREST);
    report_length(p, 9, work->protrusion[i] + left_on, SIL_NEAREST);
    fputc('\n', p->out);
}

static void print_post_row(const report *p, int i)
{
    report_length(p, 9, p->plan->saddle.height[i], SIL_NEAREST);
    fputc('\n', p->out);
}

static void print_posts(const report *p)
{
    const sil_saddle_work *work = &p->plan->saddle;
    for (int side = 0; side < 2 && work->posts; side++) {
        char turns[REPORT_CELL];
        char mm[REPORT_CELL];
        sil_number_write(turns, sizeof turns, fabs(work->post_turns[side]), 2);
        fprintf(p->out, "  %s %s %s, %s turns.\n", side == 0 ? "Treble post" : "Bass post",
                work->post[side] < 0.0 ? "up" : "down",
                report_figure(p, fabs(work->post[side]), SIL_NEAREST, mm), turns);
    }
}

/* A table of the saddle: its heads, how many columns, and what writes a row behind the first. */
typedef struct saddle_table {
    const char *const *heads;
    int columns;
    void (*row)(const report *p, int i);
} saddle_table;

static saddle_table table_of(const sil_plan *plan)
{
    static const char *const screws[] = {"too high by", "first", "screw", "", "pass", "turns"};
    static const char *const posts[] = {"too high by", "height", "", "done"};
    static const char *const sanded[] = {"too high by", "base,",  "base,", "off the", "height",
                                         "height",      "out of", "",      "first",   "in all",
                                         "top",         "now",    "done",  "bridge"};
    sil_working working = plan->saddle.working;
    if (working == SIL_WORKING_SCREWS) {
        return (saddle_table){screws, 3, print_screw_row};
    }
    return sil_working_cuts(working) ? (saddle_table){sanded, 7, print_sanded_row}
                                     : (saddle_table){posts, 2, print_post_row};
}

static bool any_left_on(const sil_plan *plan)
{
    bool any = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        any = any || sil_left_on(plan, i) >= 0.005; /* is told */
    }
    return any && sil_working_in_slot(plan->saddle.working);
}

void report_saddle(const report *p)
{
    static const char *const verdicts[] = {"leave", "lower", "raise", "wait"};
    const sil_plan *plan = p->plan;
    const sil_saddle_work *work = &plan->saddle;
    saddle_table table = table_of(plan);
    fprintf(p->out, "\nSADDLE: how far each string must move\n");
    if (work->remedy == SIL_SADDLE_WAIT) {
        print_waiting(p, "saddle", &plan->saddle_withheld);
    }
    report_heads(p, 2, table.columns, table.heads);
    for (int i = 0; i < plan->job->string_count; i++) {
        begin_row(p, i, verdicts[work->verdict[i]], plan->stages.lower[i], plan->stages.lower_u[i]);
        table.row(p, i);
    }
    print_posts(p);
    if (sil_working_in_slot(plan->saddle.working)) {
        print_blank(p, work->remedy == SIL_SADDLE_WAIT, plan->saddle_blank);
    }
    fprintf(p->out,
            "  Too high by: the whole way to the aim, a minus is too low; \xC2\xB1 is what the "
            "tools leave open\n  (two standard uncertainties). In range is left alone.\n");
    if (any_left_on(plan)) {
        fprintf(p->out,
                "  So little off the top that a file cannot feel it is not asked for, and stays "
                "on.\n");
    }
}
