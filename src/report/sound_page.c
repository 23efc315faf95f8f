/* SPDX-License-Identifier: MIT */
/* The bench plan's part on sound: what buzzes and why, what would just ring clean, what plays in
 * tune; and what can be told without any tool. */
#include "lines.h"

/* Weakest of a string's stopped notes, or -1 where it is not known. */
static int weakest_stop(const sil_plan *plan, const sil_clearance *clean, int i)
{
    int weakest = -1;
    for (int stop = 1; stop < plan->bench.board.frets; stop++) {
        if (sil_known(clean->force[i][stop]) &&
            (weakest < 0 || clean->force[i][stop] < clean->force[i][weakest])) {
            weakest = stop;
        }
    }
    return weakest;
}

static void print_number(const report *p, int columns, double value, int decimals)
{
    char digits[REPORT_CELL];
    sil_number_write(digits, sizeof digits, value, decimals);
    fprintf(p->out, "%*s", columns, digits);
}

/* "0.88 fret 1 on 4": the hardest clean pluck there, the stop, the fret it would touch. */
static void print_weakest(const report *p, const sil_clearance *clean, int i)
{
    int stop = weakest_stop(p->plan, clean, i);
    if (stop < 0) {
        fprintf(p->out, "%9s%14s", "-", "");
        return;
    }
    print_number(p, 9, clean->force[i][stop], 2);
    fprintf(p->out, "  fret %-2d on %-2d", stop, clean->at_fret[i][stop]);
}

static void print_clearance(const report *p)
{
    const sil_plan *plan = p->plan;
    const char *name = plan->job->attack.name;
    fprintf(p->out,
            "\nWILL IT BUZZ: the hardest pluck that rings clean, N square to the board%s%s\n",
            name ? ", against a pick strength of " : "", name ? name : "");
    fprintf(p->out, "  %-12s%9s%9s%9s%23s%23s\n", "string", "picked", "open,", "open,",
            "weakest stopped,", "weakest stopped,");
    fprintf(p->out, "  %-12s%9s%9s%9s%23s%23s\n", "", "", "now", "after", "now", "after");
    for (int i = 0; i < plan->job->string_count; i++) {
        fprintf(p->out, "  %2d %-9s", i + 1,
                plan->job->strings[i].note ? plan->job->strings[i].note : "");
        print_number(p, 9, plan->job->attack.force[i], 2);
        print_number(p, 9, plan->clean_now.force[i][0], 2);
        print_number(p, 9, plan->clean_after.force[i][0], 2);
        print_weakest(p, &plan->clean_now, i);
        print_weakest(p, &plan->clean_after, i);
        fputc('\n', p->out);
    }
}

/* Notes of one string with one cause, told in one line; how many of the causes it took. */
static int print_cause_line(const report *p, int first)
{
    static const char *const causes[] = {
        "relief put right would cure it",
        "the crowns put right would cure it",
        "the slot put right would cure it",
        "the saddle put right would cure it",
        "several readings put right together would cure it",
        "too hard a pick for these targets",
        "technique: stop it close behind the wire, pressed squarely",
        "unexplained by the readings"};
    const sil_cause *notes = p->plan->causes;
    const sil_cause *f = &notes[first];
    char words[REPORT_TEXT_MAX];
    size_t used = (size_t)snprintf(words, sizeof words, "String %d, ", f->string + 1);
    int count = 0;
    for (; first + count < p->plan->cause_count && f[count].string == f->string &&
           f[count].cause == f->cause && f[count].heard == f->heard;
         count++) {
        bool stopped_before = count > 0 && f[count - 1].fret > 0;
        const char *gap = count == 0 ? "" : ", ";
        const char *where = f[count].fret == 0 ? "open" : stopped_before ? "" : "at fret ";
        used += (size_t)snprintf(words + used, sizeof words - used, "%s%s", gap, where);
        if (f[count].fret > 0) {
            used += (size_t)snprintf(words + used, sizeof words - used, "%d", f[count].fret);
        }
    }
    snprintf(words + used, sizeof words - used, "%s: %s.", f->heard ? " (heard)" : "",
             causes[f->cause]);
    fputs("  ", p->out);
    report_wrap(p, words, 4);
    return count;
}

static void print_causes(const report *p)
{
    if (p->plan->cause_count == 0) {
        return;
    }
    fprintf(p->out, "  What was heard, or would buzz under this pick as it is now:\n");
    for (int k = 0; k < p->plan->cause_count;) {
        k += print_cause_line(p, k);
    }
}

static void print_lowest(const report *p)
{
    const sil_lowest *lowest = &p->plan->lowest;
    const sil_board *board = &p->plan->bench.board;
    char cell[REPORT_CELL];
    if (!sil_known(lowest->relief)) {
        return;
    }
    fprintf(
        p->out,
        "  The lowest that would still ring clean under this pick on these crowns: relief %s;\n",
        report_figure(p, lowest->relief, SIL_NEAREST, cell));
    fprintf(p->out, "  action at the 12th");
    for (int i = 0; i < board->strings; i++) {
        double action = sil_action(board, &lowest->fit, i, 12);
        fprintf(p->out, "%s %s", i ? "," : "", report_figure(p, action, SIL_UP, cell));
    }
    fprintf(p->out, ".\n");
}

static void print_pitch(const report *p)
{
    const sil_plan *plan = p->plan;
    static const char *const heads[2][7] = {
        {"setback", "in tune", "best", "and nut", "cents at", "worst of", "move by"},
        {"as built", "at 12", "setback", "advance", "12 now", "1 to 12", "the tuner"}};
    fprintf(p->out, "\nWILL IT PLAY IN TUNE: where each string is to leave the saddle\n");
    for (int line = 0; line < 2; line++) {
        fprintf(p->out, "  %-12s", line == 0 ? "string" : "");
        for (int column = 0; column < 7; column++) {
            fprintf(p->out, "%11s", heads[line][column]);
        }
        fputc('\n', p->out);
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        const sil_compensation *told = &plan->compensation[i];
        double worst = told->as_built[1];
        for (int n = 2; n <= SIL_PITCH_FRETS; n++) {
            worst = fabs(told->as_built[n]) > fabs(worst) ? told->as_built[n] : worst;
        }
        const char *note = plan->job->strings[i].note;
        fprintf(p->out, "  %2d %-9s", i + 1, note ? note : "");
        report_length(p, 11, plan->job->saddle.setback[i], SIL_NEAREST);
        report_length(p, 11, told->saddle_only, SIL_NEAREST);
        report_length(p, 11, told->best.setback, SIL_NEAREST);
        report_length(p, 11, told->best.advance, SIL_NEAREST);
        print_number(p, 11, told->as_built[SIL_PITCH_FRETS], 1);
        print_number(p, 11, worst, 1);
        report_length(p, 11, told->move, SIL_NEAREST);
        fputc('\n', p->out);
    }
    fprintf(p->out, "  By the strings' own physics, on the heights after; a tuner's reading beats "
                    "it. Heights first.\n");
}

/* For who has no gauge, or heard a buzz: the trade's own order. */
static void print_triage(const report *p)
{
    const sil_board *board = &p->plan->bench.board;
    const sil_reading *reading = sil_plan_reading(p->plan);
    char words[REPORT_TEXT_MAX];
    if (reading && reading->buzz_count == 0 && sil_known(p->plan->stages.fit[SIL_NOW].bend)) {
        return;
    }
    fprintf(p->out, "\nWITH NO TOOL IN HAND, IN THIS ORDER\n");
    snprintf(
        words, sizeof words,
        "Relief: hold the string on frets 1 and %d, it is a straightedge. Tapped over fret %d it "
        "should just click. A wide gap is too much bow; no gap, straight or back-bowed.",
        board->join, board->relief_at);
    const char *const tests[] = {"Technique: stop the note close behind the wire and press "
                                 "squarely. If the buzz goes, it was "
                                 "the hand; if not, go on.",
                                 words,
                                 "Crowns: look along each under the strings. Dents and flats under "
                                 "the plain ones at frets 1 to "
                                 "3 buzz there and make the nut look high.",
                                 "Slot: hold the string behind fret 3 and tap it over fret 1. It "
                                 "should barely click. Silent: "
                                 "it lies on the fret, too low. A clear gap: too high.",
                                 "Action: a buzz up the neck with all this right means the saddle "
                                 "is too low, or a fret there "
                                 "stands proud."};
    for (int k = 0; k < 5; k++) {
        fprintf(p->out, "  %d  ", k + 1);
        report_wrap(p, tests[k], 5);
    }
}

void report_sound(const report *p)
{
    print_clearance(p);
    print_causes(p);
    print_lowest(p);
    print_pitch(p);
    print_triage(p);
}
