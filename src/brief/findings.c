/* SPDX-License-Identifier: MIT */
/* The findings in words: each by itself, and together with those that say the same of other
 * strings. */
#include <math.h>
#include <string.h>

#include "codes.h"
#include "say.h"
#include "within.h"

#include "../plan/plan.h"

/* Writes a figure with its unit, or without it where the next figure has it. */
static void tell_kind(telling *t, code_figure kind, const char *of, int string, double value,
                      bool bare)
{
    switch (kind) {
    case LENGTH:
        (bare ? tell_figure : tell_length)(t, of, string, figure_nearest(t->b, value));
        return;
    case PERCENT:
        tell_figure(t, of, string, figure_number(value, 0));
        tell(t, " %%");
        return;
    case SHARE:
        tell_figure(t, of, string, figure_share(value));
        tell(t, " %%");
        return;
    case DEGREES:
        tell_figure(t, of, string, figure_number(value, 0));
        tell(t, "\u00b0");
        return;
    case CENTS:
        tell_figure(t, of, string, figure_signed(value));
        return;
    case NEWTONS:
        tell_figure(t, of, string, figure_number(value, 2));
        tell(t, " N");
        return;
    case NO_FIGURE:
        return;
    }
}

static void tell_subject(telling *t, const char *subject, int fret)
{
    const char *gap = strchr(subject, '%');
    if (!gap) {
        text_put(&t->words, subject);
    } else {
        tell(t, "%.*s%d%s", (int)(gap - subject), subject, fret, gap + 1);
    }
}

/* Writes " (range 1.50 to 2.00 mm)", or the limit that the figure is past. */
static void tell_range(telling *t, code_figure kind, const sil_finding *finding)
{
    bool low = sil_known(finding->low), high = sil_known(finding->high);
    if (low && high && finding->low < finding->high) {
        tell(t, " (range ");
        tell_kind(t, kind, "low", finding->string, finding->low, true);
        tell(t, " to ");
        tell_kind(t, kind, "high", finding->string, finding->high, false);
        tell(t, ")");
    } else if (low != high) {
        tell(t, low ? " (at least " : " (at most ");
        tell_kind(t, kind, low ? "low" : "high", finding->string,
                  low ? finding->low : finding->high, false);
        tell(t, ")");
    }
}

static bool speaks_of_slots(const sil_finding *finding)
{
    return finding->code == SIL_SLOT_LOW || finding->code == SIL_SLOT_HIGH ||
           finding->code == SIL_ZERO_FRET_LOW || finding->code == SIL_ZERO_FRET_HIGH ||
           (finding->code == SIL_AT_EDGE && finding->stage == SIL_NUT);
}

static bool speaks_of_action(const sil_finding *finding)
{
    return finding->code == SIL_SADDLE_LOW || finding->code == SIL_SADDLE_HIGH ||
           (finding->code == SIL_AT_EDGE && finding->stage == SIL_SADDLE);
}

/* Whether the figure may have been judged without a gauge. */
static bool told_by_ear(const sil_finding *finding)
{
    return finding->code == SIL_SLOT_HIGH || finding->code == SIL_RELIEF_HIGH;
}

static bool speaks_of_notes(const sil_finding *finding)
{
    return finding->code == SIL_TECHNIQUE || finding->code == SIL_UNEXPLAINED ||
           finding->code == SIL_TOO_CLOSE || finding->code == SIL_ATTACK;
}

/* Whether the figure is the one to expect after earlier work, and not one that was measured. */
static bool foretold(const sil_plan *plan, const sil_finding *finding)
{
    const bool *changed = plan->stages.changed;
    bool before_nut = changed[SIL_ROD] || changed[SIL_FRETS];
    return (speaks_of_slots(finding) && before_nut) ||
           (speaks_of_action(finding) && (before_nut || changed[SIL_NUT]));
}

/* What a finding is about. Which reading is at its edge follows from the stage. */
static const char *subject_of(const sil_finding *finding)
{
    sil_code code = finding->code;
    if (code == SIL_AT_EDGE) {
        code = finding->stage == SIL_NUT      ? SIL_SLOT_HIGH
               : finding->stage == SIL_SADDLE ? SIL_SADDLE_HIGH
               : finding->stage == SIL_TUNE   ? SIL_TUNE_OUT
                                              : SIL_RELIEF_HIGH;
    }
    return code_words_of(code).subject;
}

static void tell_heading(const brief *b, const sil_finding *finding, telling *t)
{
    const sil_bench *bench = &b->plan->bench;
    tell_subject(t, subject_of(finding), finding->fret);
    if (speaks_of_slots(finding)) {
        tell(t, ", %s", brief_hold(bench->targets.first_held));
    }
    if (foretold(b->plan, finding)) {
        tell(t, ", expected after the earlier steps");
    }
}

static code_figure kind_of(const sil_finding *finding)
{
    bool cents = finding->code == SIL_AT_EDGE && finding->stage == SIL_TUNE;
    return cents ? CENTS : code_words_of(finding->code).figure;
}

static void tell_reading(const sil_finding *finding, telling *t)
{
    code_figure kind = kind_of(finding);
    t->fret = finding->fret;
    if (finding->read == 0.0 && (speaks_of_slots(finding) || speaks_of_action(finding))) {
        tell_figure(t, "read", finding->string, figure_number(0.0, 0));
        tell(t, ", it lies on the fret");
    } else if (!sil_known(finding->read) && told_by_ear(finding)) {
        tell(t, "wide, by finger and ear");
    } else {
        bool ranged = sil_known(finding->low) || sil_known(finding->high);
        tell_kind(t, kind, "read", finding->string, finding->read,
                  ranged && finding->code != SIL_TOOL_COARSE);
    }
    tell_range(t, kind, finding);
    t->fret = -1;
}

/* A back-bow that a straightedge showed. Under a string there may only be one. */
static bool is_measured_bow(const sil_finding *f)
{
    return f->code == SIL_BACK_BOW && f->read < 0.0;
}

/* A note of an open string that should ring clean: there is a test for it. */
static bool has_open_test(const sil_finding *f)
{
    return (f->code == SIL_UNEXPLAINED || f->code == SIL_TOO_CLOSE) && f->fret == 0;
}

/* How many findings say the same of different strings, counting this one and those after it. A neck
 * that is back-bowed is too straight as well, from the same reading: that is said once. */
static int count_alike(const sil_plan *plan, int first)
{
    const sil_finding *f = &plan->findings[first];
    int count = 1;
    if (is_measured_bow(f)) {
        bool again = first + 1 < plan->finding_count && f[1].code == SIL_RELIEF_LOW &&
                     f[1].level == f->level;
        return again ? 2 : 1;
    }
    bool told_together = f->string >= 0 && (f->fret < 0 || speaks_of_notes(f));
    if (f->code == SIL_READING_ODD && f->level != SIL_LEVEL_WATCH) {
        return 1; /* each for a reason of its own */
    }
    while (told_together && first + count < plan->finding_count && f[count].code == f->code &&
           f[count].level == f->level && f[count].stage == f->stage && f[count].string >= 0 &&
           has_open_test(&f[count]) == has_open_test(f)) {
        count++;
    }
    return count;
}

static void tell_place(const brief *b, const sil_finding *finding, bool leads, telling *t)
{
    if (finding->string >= 0 && b->strings > 1) {
        tell(t, leads ? ", string " : "; string ");
        tell_string(t, finding->string);
    }
    if (speaks_of_notes(finding) && finding->fret == 0) {
        tell(t, " open");
    } else if (speaks_of_notes(finding)) {
        tell(t, " at fret %d", finding->fret);
    }
}

/* Three strings or more that are out on the same side are told by the least and the most; the table
 * of readings has each. */
enum { TOLD_BY_RANGE = 3 };

static bool told_by_range(const sil_finding *f, int count)
{
    bool heights = speaks_of_slots(f) || speaks_of_action(f);
    for (int k = 0; k < count; k++) {
        heights = heights && sil_known(f[k].read) && f[k].read != 0.0 &&
                  (f[k].read > f[k].high) == (f->read > f->high);
    }
    return heights && count >= TOLD_BY_RANGE;
}

static tell_list strings_of(const brief *b, const sil_finding *f, int count)
{
    tell_list list = {.count = b->strings};
    for (int k = 0; k < count; k++) {
        list.chosen[f[k].string] = true;
    }
    return list;
}

/* Writes "0.12 to 0.17", or one figure where both are shown alike. */
static void tell_from_to(telling *t, const char *least, const char *most, double low, double high)
{
    brief_figure from = figure_nearest(t->b, low);
    brief_figure to = figure_nearest(t->b, high);
    tell_figure(t, least, -1, from);
    if (strcmp(from.shown, to.shown) != 0) {
        tell(t, " to ");
        tell_figure(t, most, -1, to);
    }
}

/* Writes ", strings 1, 2 and 3: 2.35 to 2.67". */
static void tell_read(const brief *b, const sil_finding *f, int count, telling *t)
{
    tell_list list = strings_of(b, f, count);
    double least = f->read, most = least;
    for (int k = 1; k < count; k++) {
        least = fmin(least, f[k].read);
        most = fmax(most, f[k].read);
    }
    tell(t, ", ");
    tell_which(t, &list);
    tell(t, ": ");
    tell_from_to(t, "read-least", "read-most", least, most);
}

/* Writes "strings 1, 2 and 3: 2.35 to 2.67, over their ranges by 0.31 to 0.35 mm". */
static void tell_range_of(const brief *b, const sil_finding *f, int count, telling *t)
{
    double out[2] = {(double)INFINITY, 0.0};
    bool high = f->read > f->high;
    for (int k = 0; k < count; k++) {
        double off = high ? f[k].read - f[k].high : f[k].low - f[k].read;
        out[0] = fmin(out[0], off);
        out[1] = fmax(out[1], off);
    }
    tell_read(b, f, count, t);
    tell(t, ", %s their ranges by ", high ? "over" : "under");
    tell_from_to(t, "out-least", "out-most", out[0], out[1]);
    tell_unit(t);
}

/* Whether three strings or more are out past one and the same limit. */
static bool past_one_limit(const sil_finding *f, int count)
{
    bool low = sil_known(f->low), one = f->string >= 0 && low != sil_known(f->high);
    for (int k = 0; k < count; k++) {
        one = one && sil_known(f[k].read) && (low ? f[k].low == f->low : f[k].high == f->high);
    }
    return one && count >= TOLD_BY_RANGE && code_words_of(f->code).figure == LENGTH;
}

static void tell_each_place(const brief *b, const sil_finding *f, int count, telling *t)
{
    for (int k = 0; k < count; k++) {
        tell_place(b, &f[k], k == 0, t);
        if (code_words_of(f->code).figure != NO_FIGURE) {
            tell(t, ": ");
            tell_reading(&f[k], t);
        }
    }
}

/* Of an open string that should ring clean: nobody presses it. Common practice, no source. */
static const char open_string_test[] =
    "Hold the string down at fret 1 and pluck it. If the buzz goes, it is the nut slot: its angle "
    "or its back edge. If it stays, look past the fret: tuning, the age of the strings, the "
    "saddle's front edge, loose parts.";

static const char *meaning_of(const sil_finding *f)
{
    if (has_open_test(f)) {
        return open_string_test;
    }
    bool bowed = is_measured_bow(f) || (f->code == SIL_RELIEF_LOW && f->read < 0.0);
    return bowed ? "Back-bowed: the middle of the neck is higher than its ends, so the strings "
                   "buzz on the first frets."
                 : code_meaning_of(f->code, f->level);
}

/* A finding's own sentence, or NULL. Two codes have one only at a stage, or where it is work. */
static say_found *sentence_of(const sil_finding *f)
{
    if (f->code == SIL_READINGS_DISAGREE && f->stage == SIL_SADDLE) {
        return say_seats_apart;
    }
    if (f->code == SIL_ATTACK && f->level != SIL_LEVEL_ACT) {
        return NULL;
    }
    return code_words_of(f->code).sentence;
}

static void tell_findings(const brief *b, const sil_finding *f, int count, telling *t)
{
    say_found *sentence = sentence_of(f);
    if (sentence) {
        sentence(b, f, count, t);
        return;
    }
    tell_heading(b, f, t);
    if (is_measured_bow(f)) {
        count = 1; /* the other has the same figure */
    }
    if (told_by_range(f, count)) {
        tell_range_of(b, f, count, t);
    } else if (past_one_limit(f, count)) {
        tell_read(b, f, count, t);
        tell_range(t, LENGTH, f);
    } else if (count > 1 && code_words_of(f->code).figure == NO_FIGURE && !speaks_of_notes(f)) {
        tell_list list = strings_of(b, f, count);
        tell(t, ": ");
        tell_which(t, &list);
    } else {
        tell_each_place(b, f, count, t);
    }
    tell(t, ". %s", meaning_of(f));
    if (f->code == SIL_TUNE_OUT) {
        say_tune_out(b, t);
    }
}

static brief_sentence said(brief *b, int first, int count)
{
    telling t = tell_begin(b);
    tell_findings(b, &b->plan->findings[first], count, &t);
    return tell_end(&t);
}

/* What it means where a stage's glance has the figures; otherwise its first sentence. */
static const char *in_short(brief *b, const sil_finding *finding, const char *words)
{
    if (is_measured_bow(finding) || (meaning_of(finding) && brief_at_a_glance(finding->code))) {
        return meaning_of(finding);
    }
    const char *end = strstr(words, ". ");
    return end ? text_keep_bytes(&b->store, words, (size_t)(end - words) + 1) : words;
}

void brief_fill_findings(brief *b)
{
    int count = b->plan->finding_count, told = 0;
    b->findings = text_store_room(&b->store, (size_t)(count + 1) * sizeof *b->findings);
    for (int k = 0; b->findings && k < count; k++) {
        brief_finding *finding = &b->findings[k];
        int alike = count_alike(b->plan, k);
        *finding = (brief_finding){.alone = said(b, k, 1), .alike = alike};
        finding->together = finding->alone;
        if (k >= told && alike > 1) { /* the sentence for a group belongs to its first finding */
            finding->together = said(b, k, alike);
            told = k + alike;
        }
        finding->in_short = in_short(b, &b->plan->findings[k], finding->together.words);
    }
}

const char *brief_level(sil_level level)
{
    switch (level) {
    case SIL_LEVEL_FINE:
        return "note";
    case SIL_LEVEL_WATCH:
        return "watch";
    case SIL_LEVEL_ACT:
        return "do";
    case SIL_LEVEL_STOP:
        return "stop";
    }
    return "";
}
