/* SPDX-License-Identifier: MIT */
/* The part of the bench plan on sound: what buzzes and why, which setup would just ring clean,
 * what plays in tune, and what can be found without any tool. */
#include "table.h"

/* Says what the mark means, under a table that has one. */
static void put_assumed(text *t, const brief *b)
{
    bool any = false;
    for (int i = 0; i < b->strings; i++) {
        any = any || b->tone[i].assumed[0] != '\0';
    }
    if (any) {
        text_add(t, "  %s\n", brief_assumed_words);
    }
}

/* Fills in the weakest fretted note, such as "0.88 fret 1 on 4": the hardest pluck that still rings
 * clean, the fret it is held at, and the fret it would touch. */
static void fill_weakest(report_table *table, int row, int column, const brief_weakest *weakest)
{
    text words = {0};
    text_right(&words, REPORT_COLUMN, weakest->force.shown);
    if (weakest->stop < 0) {
        text_space(&words, 15);
    } else {
        text_add(&words, "  fret %-2d on %-2d", weakest->stop, weakest->on);
    }
    report_made(table, row, column, brief_known(weakest->force), &words);
}

static void put_clearance(text *t, const brief *b)
{
    const char *name = b->plan->job->attack.name;
    text_add(t, "\nWILL IT BUZZ: the hardest pluck that rings clean, N square to the board%s%s\n",
             name ? ", against a pick strength of " : "", name ? name : "");
    report_table table = {
        .lines = 2,
        .start = 14,
        .columns = 5,
        .column = {{.head = {"picked"}, .wide = REPORT_COLUMN},
                   {.head = {"open,", "now"}, .wide = REPORT_COLUMN},
                   {.head = {"open,", "after"}, .wide = REPORT_COLUMN},
                   {.head = {"weakest fretted,", "now"}, .wide = REPORT_COLUMN + 15},
                   {.head = {"weakest fretted,", "after"}, .wide = REPORT_COLUMN + 15}}};
    for (int i = 0; i < b->strings; i++) {
        const brief_tone *tone = &b->tone[i];
        table.begin[i] = report_string(&table.kept, b, i, tone->assumed);
        report_cell(&table, i, 0, tone->picked.shown);
        report_cell(&table, i, 1, tone->open_now.shown);
        report_cell(&table, i, 2, tone->open_after.shown);
        fill_weakest(&table, i, 3, &tone->now);
        fill_weakest(&table, i, 4, &tone->after);
    }
    report_put_table(t, &table, b->strings);
    put_assumed(t, b);
    text_put(t, "  ");
    text_wrap(t, brief_bound(), 2, REPORT_COLUMNS);
}

static const char *remedy_words(sil_cause_name cause, bool zero_fret)
{
    switch (cause) {
    case SIL_CAUSE_RELIEF:
        return "relief put right would cure it";
    case SIL_CAUSE_CROWN:
        return "the crowns put right would cure it";
    case SIL_CAUSE_SLOT:
        return zero_fret ? "the zero fret put right would cure it"
                         : "the nut slot put right would cure it";
    case SIL_CAUSE_SADDLE:
        return "the saddle put right would cure it";
    case SIL_CAUSE_COMBINED:
        return "the work of this plan would cure it";
    case SIL_CAUSE_TARGETS:
        return "it would ring clean with every reading at its target";
    case SIL_CAUSE_ATTACK:
        return "too hard a pick for these targets";
    case SIL_CAUSE_TECHNIQUE:
        return "technique: press it squarely, close behind the fret";
    case SIL_CAUSE_UNEXPLAINED:
        return "unexplained by the readings";
    case SIL_CAUSE_TOO_CLOSE:
        return "too close to call: by the readings it just rings clear";
    }
    return "";
}

/* Of a note that should ring clear by the readings, though one of them is out. */
static const char *likely_words(sil_cause_name cause, bool zero_fret)
{
    switch (cause) {
    case SIL_CAUSE_RELIEF:
        return "likely the relief, the reading farthest out";
    case SIL_CAUSE_CROWN:
        return "likely the crowns, the reading farthest out";
    case SIL_CAUSE_SLOT:
        return zero_fret ? "likely the zero fret, the reading farthest out"
                         : "likely the nut slot, the reading farthest out";
    case SIL_CAUSE_SADDLE:
        return "likely the action, the reading farthest out";
    case SIL_CAUSE_COMBINED:
    case SIL_CAUSE_ATTACK:
    case SIL_CAUSE_TECHNIQUE:
    case SIL_CAUSE_UNEXPLAINED:
    case SIL_CAUSE_TOO_CLOSE:
    case SIL_CAUSE_TARGETS:
        break;
    }
    return "";
}

static const char *cause_words(const sil_cause *note, bool zero_fret)
{
    return note->likely ? likely_words(note->cause, zero_fret)
                        : remedy_words(note->cause, zero_fret);
}

/* Whether two causes share one line. */
static bool alike(const sil_cause *one, const sil_cause *other)
{
    return one->string == other->string && one->cause == other->cause &&
           one->likely == other->likely && one->heard == other->heard;
}

/* Puts a line such as "String 2, open, at fret 3, 5 (heard): relief put right would cure it."
 * Returned: how many notes it names. */
static int put_cause_line(text *t, const sil_cause *notes, int left, bool zero_fret)
{
    text words = {0};
    int count = 0;
    text_add(&words, "String %d, ", notes->string + 1);
    for (; count < left && alike(notes, &notes[count]); count++) {
        bool stopped_before = count > 0 && notes[count - 1].fret > 0;
        text_put(&words, count == 0 ? "" : ", ");
        if (notes[count].fret == 0) {
            text_put(&words, "open");
        } else {
            text_add(&words, "%s%d", stopped_before ? "" : "at fret ", notes[count].fret);
        }
    }
    text_add(&words, "%s: %s.", notes->heard ? " (heard)" : "", cause_words(notes, zero_fret));
    text_put(t, "  ");
    report_wrap(t, &words, 4);
    return count;
}

static void put_causes(text *t, const sil_plan *plan)
{
    if (plan->cause_count > 0) {
        text_put(t, "  What was heard, or would buzz under this pick as it is now:\n");
    }
    for (int k = 0; k < plan->cause_count;) {
        k += put_cause_line(t, &plan->causes[k], plan->cause_count - k, plan->bench.zero_fret);
    }
}

static void put_lowest(text *t, const brief *b)
{
    if (!brief_known(b->lowest.relief)) {
        return;
    }
    text_add(t,
             "  The lowest that would still ring clean under this pick on these crowns: relief "
             "%s,\n  and with that relief action at the 12th",
             b->lowest.relief.shown);
    for (int i = 0; i < b->strings; i++) {
        text_add(t, "%s %s", i ? "," : "", b->lowest.action[i].shown);
    }
    text_put(t, ".\n");
}

static void put_pitch(text *t, const brief *b)
{
    enum { WIDE = 11 };
    report_table table = {.lines = 2,
                          .start = 14,
                          .columns = 7,
                          .column = {{.head = {"setback", "as built"}, .wide = WIDE},
                                     {.head = {"in tune", "at 12"}, .wide = WIDE},
                                     {.head = {"best", "setback"}, .wide = WIDE},
                                     {.head = {"and at", "the nut"}, .wide = WIDE},
                                     {.head = {"cents at", "12 now"}, .wide = WIDE},
                                     {.head = {"worst of", "1 to 12"}, .wide = WIDE},
                                     {.head = {"move by", "the tuner"}, .wide = WIDE}}};
    text_put(t, "\nWILL IT PLAY IN TUNE: where each string is to leave the saddle\n");
    for (int i = 0; i < b->strings; i++) {
        const brief_tone *tone = &b->tone[i];
        const brief_figure *cells[] = {&tone->built, &tone->in_tune, &tone->setback, &tone->advance,
                                       &tone->cents, &tone->worst,   &tone->move};
        table.begin[i] = report_string(&table.kept, b, i, tone->assumed);
        for (int c = 0; c < table.columns; c++) {
            report_cell(&table, i, c, cells[c]->shown);
        }
    }
    report_put_table(t, &table, b->strings);
    put_assumed(t, b);
    text_put(t,
             "  Computed from the strings, on the heights after the work; a tuner's reading counts "
             "for more.\n  Set the heights first.\n");
}

/* Whether all that was heard are open strings, which nobody presses. */
static bool only_open_heard(const sil_reading *reading)
{
    bool only = reading && reading->buzz_count > 0;
    for (int k = 0; only && k < reading->buzz_count; k++) {
        only = reading->buzz[k].fret == 0;
    }
    return only;
}

/* Puts the tests that need no tool, in the order the trade uses, for someone who has no gauge or
 * heard a buzz. */
static void put_triage(text *t, const sil_plan *plan)
{
    const sil_reading *reading = sil_plan_reading(plan);
    if (reading && reading->buzz_count == 0 && sil_known(plan->stages.fit[SIL_NOW].bend)) {
        return;
    }
    text relief = {0};
    text_add(&relief,
             "Relief: hold the string on frets 1 and %d, it is a straightedge. Tapped over fret %d "
             "it should just click. A wide gap is too much bow; no gap, straight or back-bowed.",
             plan->bench.board.join, plan->bench.board.relief_at);
    const char *const tests[] = {
        only_open_heard(reading) ? "The open string: hold it down at fret 1. If the buzz goes, it "
                                   "is the nut slot; if it "
                                   "stays, go on."
                                 : "Technique: press the string squarely, close behind the fret. "
                                   "If the buzz goes, it was "
                                   "the hand; if not, go on.",
        text_read(&relief),
        "Crowns: look along each under the strings. Worn spots and flats under the plain ones at "
        "frets 1 to 3 buzz there and make the nut look high.",
        "Nut slot: hold the string down behind fret 3 and tap it over fret 1. It should barely "
        "click. Silent: it lies on the fret, too low. A clear gap: too high.",
        "Action: a buzz up the neck with all this right means the saddle is too low, or a fret "
        "there stands proud."};
    text_put(t, "\nWITH NO TOOL IN HAND, IN THIS ORDER\n");
    for (int k = 0; k < 5; k++) {
        text_add(t, "  %d  ", k + 1);
        text_wrap(t, tests[k], 5, REPORT_COLUMNS);
    }
    t->failed = t->failed || relief.failed;
    text_free(&relief);
}

void report_tone(text *t, const brief *b)
{
    put_clearance(t, b);
    put_causes(t, b->plan);
    put_lowest(t, b);
    put_pitch(t, b);
    put_triage(t, b->plan);
}
