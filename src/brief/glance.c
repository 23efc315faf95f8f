/* SPDX-License-Identifier: MIT */
/* Each stage at a glance: whether it is in its range, and by which figures. */
#include <math.h>
#include <string.h>

#include "acts.h"
#include "codes.h"
#include "within.h"

#include "../plan/plan.h"

bool brief_at_a_glance(sil_code code)
{
    return code == SIL_RELIEF_LOW || code == SIL_RELIEF_HIGH || code == SIL_SLOT_LOW ||
           code == SIL_SLOT_HIGH || code == SIL_SADDLE_LOW || code == SIL_SADDLE_HIGH ||
           code == SIL_ZERO_FRET_LOW || code == SIL_ZERO_FRET_HIGH;
}

static bool says_high(sil_code code)
{
    return code == SIL_RELIEF_HIGH || code == SIL_SLOT_HIGH || code == SIL_SADDLE_HIGH ||
           code == SIL_ZERO_FRET_HIGH;
}

/* The strings that findings call too high, or too low, at a stage. */
typedef struct out_of_range {
    tell_list read, by;     /* by: how far past the edge of its range each is */
    const sil_finding *one; /* the last of them */
} out_of_range;

static out_of_range find_out(const brief *b, sil_stage_name stage, bool high)
{
    out_of_range out = {.read = {.count = b->strings}, .by = {.count = b->strings}};
    for (int k = 0; k < b->plan->finding_count; k++) {
        const sil_finding *f = &b->plan->findings[k];
        if (f->stage != stage || f->string < 0 || !brief_at_a_glance(f->code) ||
            says_high(f->code) != high) {
            continue;
        }
        double off = high ? f->read - f->high : f->low - f->read;
        out.read.chosen[f->string] = out.by.chosen[f->string] = true;
        out.read.figure[f->string] = stage == SIL_SADDLE
                                         ? figure_action(b->unit, f->read)
                                         : figure_length(b->unit, f->read, SIL_NEAREST);
        out.by.figure[f->string] = figure_length(b->unit, off, SIL_NEAREST);
        out.one = f;
    }
    return out;
}

/* Writes "0.05 to 0.30", a target range. */
static void tell_band(telling *t, double low, double high, int string)
{
    tell(t, " (target ");
    tell_figure(t, "low", string, figure_length(t->b->unit, low, SIL_NEAREST));
    tell(t, " to ");
    tell_figure(t, "high", string, figure_length(t->b->unit, high, SIL_NEAREST));
    tell(t, ")");
}

static bool all_known(const tell_list *list)
{
    for (int i = 0; i < list->count; i++) {
        if (list->chosen[i] && !brief_known(list->figure[i])) {
            return false;
        }
    }
    return true;
}

/* Writes " (5/64 to 7/64)" behind actions in inches. */
static void tell_marks(const tell_list *list, telling *t)
{
    const brief_figure *least = NULL, *most = NULL;
    for (int i = 0; i < list->count; i++) {
        const brief_figure *it = &list->figure[i];
        least = list->chosen[i] && (!least || it->exact < least->exact) ? it : least;
        most = list->chosen[i] && (!most || it->exact > most->exact) ? it : most;
    }
    const char *low = least ? least->marks : "", *high = most ? most->marks : "";
    if (low[0] && high[0]) {
        bool one = strcmp(low, high) == 0;
        tell(t, " (%s%s%s)", low, one ? "" : " to ", one ? "" : high);
    }
}

/* Writes "string 1: 0.01 (target 0.03 to 0.10)", or "strings 1 and 4: 0.12 to 0.15, over by 0.02".
 * named: with the word for the side, where the verdict does not have it. */
static void tell_out(const out_of_range *out, bool high, bool named, telling *t)
{
    tell_which(t, &out->read);
    if (named) {
        tell(t, high ? " high" : " low");
    }
    if (!out->one || !all_known(&out->read)) {
        return;
    }
    tell(t, ": ");
    tell_span(t, "read", &out->read);
    if (out->one->stage == SIL_SADDLE && !named) {
        tell_marks(&out->read, t);
    }
    if (tell_chosen(&out->read) == 1) {
        tell_band(t, out->one->low, out->one->high, out->one->string);
    } else {
        tell(t, ", %s by ", high ? "over" : "under");
        tell_span(t, "out", &out->by);
    }
}

static tell_list now_of(const brief *b, const brief_reading *readings)
{
    tell_list now = {.count = b->strings};
    for (int i = 0; i < now.count; i++) {
        now.figure[i] = readings[i].now;
        now.chosen[i] = brief_known(readings[i].now);
    }
    return now;
}

/* Writes "for the truss rod; " with everything that a part waits for. */
static void tell_waiting(const sil_withheld *withheld, bool more, telling *t)
{
    tell_things things = {.joint = ", "};
    for (int k = 0; k < withheld->count; k++) {
        const char *what = code_words_of(withheld->by[k]).for_what;
        tell(t, "%s", what && things.told == 0 ? "for " : "");
        tell_thing(t, &things, what, what);
    }
    tell(t, "%s", more && things.told > 0 ? "; " : "");
}

/* A stage that has a reading of every string. */
typedef struct of_strings {
    const char *name, *what; /* of the stage, and of its reading */
    sil_stage_name stage;
    const brief_reading *readings;
    bool waits;
    const sil_withheld *withheld;
} of_strings;

static brief_glance strings_glance(brief *b, const of_strings *of)
{
    out_of_range high = find_out(b, of->stage, true), low = find_out(b, of->stage, false);
    tell_list now = now_of(b, of->readings);
    bool over = tell_chosen(&high.read) > 0, under = tell_chosen(&low.read) > 0;
    telling t = tell_begin(b);
    brief_glance glance = {.name = of->name};
    if (of->waits) {
        tell_waiting(of->withheld, over || under, &t);
    }
    if (over) {
        tell_out(&high, true, under || of->waits, &t);
    }
    tell(&t, over && under ? "; " : "");
    if (under) {
        tell_out(&low, false, over || of->waits, &t);
    }
    if (over || under) {
        glance.verdict = over && under ? "high and low" : over ? "too high" : "too low";
    } else if (tell_chosen(&now) == 0) {
        glance.verdict = "not measured";
    } else if (!of->waits) {
        glance.verdict = tell_chosen(&now) < b->strings ? "not all read" : "in range";
        tell(&t, "%s ", of->what);
        tell_span(&t, "read", &now);
        if (of->stage == SIL_SADDLE) {
            tell_marks(&now, &t);
        }
    }
    glance.verdict = of->waits ? "wait" : glance.verdict;
    glance.figures = tell_end(&t);
    return glance;
}

static const char *relief_verdict(const brief *b)
{
    const char *verdict = brief_known(b->relief.now) ? "in range" : "not measured";
    for (int k = 0; k < b->plan->finding_count; k++) {
        sil_code code = b->plan->findings[k].code;
        if (code == SIL_RELIEF_LOW || code == SIL_RELIEF_HIGH) {
            return code == SIL_RELIEF_HIGH ? "too high" : "too low";
        }
        if (code == SIL_BACK_BOW || code == SIL_ROD_LIMIT) {
            verdict = code == SIL_BACK_BOW ? "straight?" : "no rod can";
        }
        verdict = code == SIL_RELIEF_FIRST ? "over target" : verdict;
    }
    return verdict;
}

static brief_glance relief_glance(brief *b)
{
    telling t = tell_begin(b);
    if (brief_known(b->relief.now)) {
        tell_figure(&t, "read", -1, b->relief.now);
        tell_band(&t, b->relief.wanted.low.exact, b->relief.wanted.high.exact, -1);
    }
    return (brief_glance){"relief", relief_verdict(b), tell_end(&t)};
}

/* How many findings have a code, and the one with the largest figure. */
static int count_of(const brief *b, sil_code code, const sil_finding **worst)
{
    int count = 0;
    for (int k = 0; k < b->plan->finding_count; k++) {
        const sil_finding *f = &b->plan->findings[k];
        if (f->code == code) {
            *worst = count == 0 || f->read > (*worst)->read ? f : *worst;
            count++;
        }
    }
    return count;
}

static void tell_worst(const brief *b, const sil_finding *worst, int count, const char *what,
                       telling *t)
{
    tell(t, count > 1 ? "%s, deepest at fret %d: " : "%s at fret %d: ", what, worst->fret);
    t->fret = worst->fret;
    tell_figure(t, "read", worst->string, figure_length(b->unit, worst->read, SIL_NEAREST));
    t->fret = -1;
}

static brief_glance frets_glance(brief *b)
{
    const sil_finding *worn = NULL, *proud = NULL;
    int worn_count = count_of(b, SIL_FRET_WORN, &worn),
        proud_count = count_of(b, SIL_FRET_HIGH, &proud);
    const sil_reading *reading = sil_plan_reading(b->plan);
    bool unread = !reading || reading->crowns_read == SIL_CROWNS_NOT_READ;
    telling t = tell_begin(b);
    if (worn) {
        tell_worst(b, worn, worn_count, worn_count > 1 ? "worn spots" : "worn spot", &t);
    }
    tell(&t, worn && proud ? "; " : "");
    if (proud) {
        tell_worst(b, proud, proud_count, "proud", &t);
    }
    const char *verdict = worn ? "worn" : proud ? "proud" : unread ? "not checked" : "sound";
    return (brief_glance){"frets", verdict, tell_end(&t)};
}

/* The cents of the strings that were read. */
static brief_glance tune_glance(brief *b)
{
    tell_list cents = {.count = b->strings};
    for (int i = 0; i < b->strings; i++) {
        cents.figure[i] = b->tuning.string[i].cents;
        cents.chosen[i] = brief_known(cents.figure[i]);
    }
    telling t = tell_begin(b);
    bool left = b->tuning.remedy == SIL_TUNE_NONE || b->tuning.remedy == SIL_TUNE_NOTE;
    if (b->tuning.read) {
        tell(&t, "cents at the 12th ");
        tell_span(&t, "cents", &cents);
    }
    const char *verdict = b->stage[BRIEF_TUNE].waits ? "wait"
                          : !b->tuning.read          ? "not measured"
                          : left                     ? "in range"
                                                     : "out of tune";
    return (brief_glance){"tuning", verdict, tell_end(&t)};
}

void brief_fill_glance(brief *b)
{
    b->glance[BRIEF_TUNE] = tune_glance(b);
    b->glance[BRIEF_RELIEF] = relief_glance(b);
    b->glance[BRIEF_FRETS] = frets_glance(b);
    b->glance[BRIEF_NUT] =
        strings_glance(b, &(of_strings){"nut", "gap at the 1st fret", SIL_NUT, b->first,
                                        b->stage[BRIEF_NUT].waits, &b->plan->nut_withheld});
    b->glance[BRIEF_SADDLE] =
        strings_glance(b, &(of_strings){"saddle", "action at the 12th", SIL_SADDLE, b->action,
                                        b->stage[BRIEF_SADDLE].waits, &b->plan->saddle_withheld});
}
