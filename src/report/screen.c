/* SPDX-License-Identifier: MIT */
/* The bench plan on one screen: what to do next first, and the rest in a line each. */
#include <sillet/report.h>

#include <string.h>

#include "lines.h"

enum { COLUMNS = 80, PART = 5, NAME = 8, VERDICT = 14, LABEL = 17, CELL = 7, CELLS = 8 };

typedef struct screen {
    text text;
    const brief *b;
    bool coloured;
} screen;

typedef enum tint { BOLD, RED, YELLOW, GREEN } tint;

/* Puts words in a colour, where it is asked for, and blanks up to a number of columns. */
static void put_coloured(screen *s, tint in, int columns, const char *words)
{
    static const char *const codes[] = {
        [BOLD] = "\033[1m", [RED] = "\033[1;31m", [YELLOW] = "\033[33m", [GREEN] = "\033[32m"};
    text_put(&s->text, s->coloured ? codes[in] : "");
    text_put(&s->text, words);
    text_put(&s->text, s->coloured ? "\033[0m" : "");
    text_space(&s->text, columns - text_letters(words, strlen(words)));
}

static void add_about(text *t, const char *label, const char *value)
{
    if (value) {
        text_add(t, "%s%s%s", t->length > 0 ? ", " : "", label, value);
    }
}

static void put_heading(screen *s)
{
    const brief *b = s->b;
    const sil_job *job = b->plan->job;
    const sil_reading *reading = sil_plan_reading(b->plan);
    text line = {0};
    text_add(&line, "BENCH PLAN%s%s", job->about.title ? ": " : "",
             job->about.title ? job->about.title : "");
    text_add(&line, " (%d string%s, scale %s", b->strings, b->strings == 1 ? "" : "s",
             b->scale.shown);
    if (brief_known(b->scale_bass)) {
        text_add(&line, " to %s", b->scale_bass.shown);
    }
    text_add(&line, " %s%s)", b->unit_name,
             job->instrument.handed == SIL_LEFT_HANDED ? ", left-handed" : "");
    report_wrap_at(&s->text, &line, 2, COLUMNS);
    add_about(&line, "", job->about.ref);
    add_about(&line, "", job->about.owner);
    add_about(&line, "read on ", reading && reading->date ? reading->date : job->about.date);
    add_about(&line, "by ", job->about.by);
    add_about(&line, "all in ", b->unit == SIL_MM ? "mm" : "inches");
    if (line.length > 0 || line.failed) {
        report_wrap_at(&s->text, &line, 2, COLUMNS);
    }
}

static tint tint_of(brief_state state)
{
    return state == BRIEF_RIGHT ? GREEN : state == BRIEF_WAIT ? RED : YELLOW;
}

/* Whether the plan, which may be for one stage alone, judges a stage. */
static bool judged(const brief *b, brief_stage_of stage)
{
    /* Cents that nobody read are asked for by the last step, and nothing more is said of them. */
    if (stage == BRIEF_TUNE && !b->tuning.read && !b->stage[BRIEF_TUNE].waits) {
        return false;
    }
    static const sil_stage_name names[BRIEF_STAGES] = {[BRIEF_RELIEF] = SIL_ROD,
                                                       [BRIEF_FRETS] = SIL_FRETS,
                                                       [BRIEF_NUT] = SIL_NUT,
                                                       [BRIEF_SADDLE] = SIL_SADDLE,
                                                       [BRIEF_TUNE] = SIL_TUNE};
    return b->plan->only_stage < 0 || b->plan->only_stage == (int)names[stage];
}

static void put_stages(screen *s)
{
    for (brief_stage_of stage = 0; stage < BRIEF_STAGES; stage++) {
        const brief_glance *glance = &s->b->glance[stage];
        if (judged(s->b, stage)) {
            text_put(&s->text, "  ");
            text_left(&s->text, NAME, glance->name);
            put_coloured(s, tint_of(glance->state), glance->figures.words[0] ? VERDICT : 0,
                         glance->verdict);
            text_wrap(&s->text, glance->figures.words, 2 + NAME + VERDICT, COLUMNS);
        }
    }
}

static void put_strip_rows(screen *s, const int *strings, int count)
{
    const brief_next *next = &s->b->next;
    text_space(&s->text, PART);
    text_left(&s->text, LABEL, "string");
    for (int i = 0; i < count; i++) {
        text_add(&s->text, "%*d", CELL, strings[i] + 1);
    }
    text_put(&s->text, "\n");
    for (int k = 0; k < next->strips; k++) {
        text_space(&s->text, PART);
        text_left(&s->text, LABEL, next->strip[k].label);
        for (int i = 0; i < count; i++) {
            text_right(&s->text, CELL, next->strip[k].cell[strings[i]]);
        }
        text_put(&s->text, "\n");
    }
}

static void put_strips(screen *s)
{
    int strings[SIL_STRINGS_MAX], count = 0;
    for (int i = 0; i < s->b->strings; i++) {
        if (s->b->next.listed[i]) {
            strings[count++] = i;
        }
    }
    int across = count <= CELLS ? count : (count + 1) / 2;
    for (int from = 0; from < count; from += across) {
        put_strip_rows(s, strings + from, from + across < count ? across : count - from);
    }
}

/* Begins a part of the screen with its word, in front of its first line. */
static void begin_part(screen *s, const char *word)
{
    text_put(&s->text, "\n");
    put_coloured(s, BOLD, PART, word);
}

static void put_labelled(screen *s, const char *label, const char *words)
{
    if (words[0]) {
        text_space(&s->text, PART);
        text_put(&s->text, label);
        text_wrap(&s->text, words, PART + text_letters(label, strlen(label)), COLUMNS);
    }
}

static void put_next(screen *s)
{
    const brief_next *next = &s->b->next;
    begin_part(s, "NEXT");
    if (next->step < 0) {
        text_put(&s->text, s->b->plan->only_stage < 0 ? "Nothing to do.\n"
                                                      : "Nothing to do at this stage.\n");
        return;
    }
    text_wrap(&s->text, next->what.words, PART, COLUMNS);
    put_labelled(s, "Check: ", next->check.words);
    put_strips(s);
    put_labelled(s, "Care: ", s->b->steps[next->step].care);
    put_labelled(s, "", next->before);
}

/* Puts the steps after the next one, a line each. They have no numbers: the step before them, which is
 * only to get ready, is not on the screen. */
static void put_then(screen *s)
{
    const brief *b = s->b;
    if (b->next.step < 0 || b->next.step + 1 >= b->plan->step_count) {
        return;
    }
    begin_part(s, "THEN");
    for (int k = b->next.step + 1; k < b->plan->step_count; k++) {
        text_space(&s->text, k > b->next.step + 1 ? PART : 0);
        text_wrap(&s->text, b->next.in_short[k], PART + 2, COLUMNS);
        put_labelled(s, "Care: ", b->steps[k].care);
    }
}

/* Puts the findings of a level, each on a line. */
static void put_level(screen *s, sil_level level)
{
    const sil_plan *plan = s->b->plan;
    for (int k = 0; k < plan->finding_count; k += s->b->findings[k].alike) {
        if (plan->findings[k].level == level) {
            put_coloured(s, level == SIL_LEVEL_STOP ? RED : YELLOW, PART, brief_level(level));
            text_wrap(&s->text, s->b->findings[k].in_short, PART, COLUMNS);
        }
    }
}

/* How many findings of a level there are; those that say the same of several strings are one. */
static int count_level(const brief *b, sil_level level)
{
    int count = 0;
    for (int k = 0; k < b->plan->finding_count; k += b->findings[k].alike) {
        count += b->plan->findings[k].level == level;
    }
    return count;
}

/* Puts what stops the work, then what the work puts right. */
static void put_findings(screen *s)
{
    int stops = count_level(s->b, SIL_LEVEL_STOP), acts = count_level(s->b, SIL_LEVEL_ACT);
    text_put(&s->text, stops + acts > 0 ? "\n" : "");
    put_level(s, SIL_LEVEL_STOP);
    put_level(s, SIL_LEVEL_ACT);
}

/* The tables of the whole plan: readings, nut, saddle, buzz, tuning, and the visits if there are
 * several. */
static int tables(const brief *b)
{
    int only = b->plan->only_stage;
    int parts = only < 0 ? 4 : only == SIL_NUT || only == SIL_SADDLE ? 1 : 0;
    return 1 + parts + (b->visit_count > 0 ? 1 : 0);
}

static void put_rest(screen *s, const char *name)
{
    text line = {0};
    int watch = count_level(s->b, SIL_LEVEL_WATCH), notes = count_level(s->b, SIL_LEVEL_FINE);
    if (watch > 0) {
        text_add(&line, "%d to watch, ", watch);
    }
    if (notes > 0) {
        text_add(&line, "%d note%s, ", notes, notes == 1 ? "" : "s");
    }
    int shown = tables(s->b);
    text_add(&line, "%d table%s: sillet plan --full %s", shown, shown == 1 ? "" : "s", name);
    text_put(&s->text, "\n");
    report_wrap_at(&s->text, &line, 2, COLUMNS);
}

char *sil_report_screen(const sil_plan *plan, sil_unit unit, const char *name, bool coloured)
{
    brief *b = brief_make(plan, unit);
    if (!b) {
        return NULL;
    }
    screen s = {.b = b, .coloured = coloured};
    put_heading(&s);
    put_stages(&s);
    put_next(&s);
    put_then(&s);
    put_findings(&s);
    put_rest(&s, name);
    brief_free(b);
    return text_take(&s.text, NULL);
}
