/* SPDX-License-Identifier: MIT */
/* Each stage at a glance: whether it is in its range, and by which figures. */
#include <math.h>
#include <string.h>

#include "acts.h"
#include "codes.h"
#include "out.h"
#include "within.h"

#include "../plan/plan.h"

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
static void tell_waiting(const brief *b, const sil_withheld *withheld, bool more, telling *t)
{
    tell_things things = {.joint = ", "};
    for (int k = 0; k < withheld->count; k++) {
        const char *what = code_wait_of(withheld->by[k]).for_what;
        tell(t, "%s", what && things.told == 0 ? "for " : "");
        tell_thing(t, &things, what, what);
    }
    if (withheld->count == 0) {
        brief_missing missing = brief_missing_of(b->plan);
        tell(t, missing.until ? "" : "for ");
        tell_thing(t, &things, missing.until ? missing.until : missing.for_what, true);
    }
    tell(t, "%s", more && things.told > 0 ? "; " : "");
}

/* A stage that has a reading of every string. */
typedef struct of_strings {
    const char *name, *what; /* of the stage, and of its reading */
    sil_stage_name stage;
    const brief_reading *readings;
    const brief_stage *is;
    const sil_withheld *withheld;
} of_strings;

/* A verdict in words, and what kind it is. */
typedef struct verdict {
    const char *words;
    brief_state state;
} verdict;

static const verdict unread = {"not measured", BRIEF_UNREAD}, waiting = {"wait", BRIEF_WAIT},
                     in_range = {"in range", BRIEF_RIGHT};

const char *brief_from_to(text_store *store, const char *least, const char *most)
{
    return strcmp(least, most) == 0 ? text_keep(store, "%s", least)
                                    : text_keep(store, "%s to %s", least, most);
}

/* The least and the most of what was read: "0.06 to 0.10", and of actions in inches on a rule,
 * "0.083 to 0.104 (5/64 to 7/64)"; "" for nothing. */
static const char *span_of(brief *b, const tell_list *list)
{
    const brief_figure *least = NULL, *most = NULL;
    for (int i = 0; i < list->count; i++) {
        const brief_figure *one = &list->figure[i];
        if (list->chosen[i]) {
            least = !least || one->exact < least->exact ? one : least;
            most = !most || one->exact > most->exact ? one : most;
        }
    }
    if (!least) {
        return "";
    }
    const char *read = brief_from_to(&b->store, least->shown, most->shown);
    return least->marks[0] && most->marks[0]
               ? text_keep(&b->store, "%s (%s)", read,
                           brief_from_to(&b->store, least->marks, most->marks))
               : read;
}

/* Ends the sentence `t` with the figures of a stage. */
static brief_glance glance_of(const char *name, verdict is, const char *span, telling *t)
{
    return (brief_glance){name, is.words, is.state, span, tell_end(t)};
}

static verdict strings_verdict(const of_strings *of, const tell_list *now, bool over, bool under)
{
    if (of->is->waits) {
        return waiting;
    }
    if (over || under) {
        return (verdict){over && under ? "high and low"
                         : over        ? "too high"
                                       : "too low",
                         BRIEF_WORK};
    }
    if (of->is->unread) {
        return unread;
    }
    return tell_chosen(now) < now->count ? (verdict){"not all read", BRIEF_UNREAD} : in_range;
}

/* A stage's figures with so much left out. */
static telling tell_strings(brief *b, const of_strings *of, const out_of_range *high,
                            const out_of_range *low, brevity cut)
{
    bool over = tell_chosen(&high->read) > 0, under = tell_chosen(&low->read) > 0;
    bool waits = of->is->waits;
    telling t = tell_begin(b);
    if (waits) {
        tell_waiting(b, of->withheld, over || under, &t);
    }
    if (over) {
        tell_out(high, true, under || waits, cut, &t);
    }
    tell(&t, over && under ? "; " : "");
    if (under) {
        tell_out(low, false, over || waits, cut, &t);
    }
    if (!over && !under && !waits && !of->is->unread) {
        tell_list now = now_of(b, of->readings);
        tell(&t, "%s ", of->what);
        tell_span(&t, "read", &now);
        if (of->stage == SIL_SADDLE) {
            tell_marks(&now, &t);
        }
    }
    return t;
}

static brief_glance strings_glance(brief *b, const of_strings *of)
{
    const int line = 56; /* letters beside the verdict on a screen of 80 columns */
    out_of_range high = brief_out_of_range(b, of->stage, true),
                 low = brief_out_of_range(b, of->stage, false);
    tell_list now = now_of(b, of->readings);
    bool over = tell_chosen(&high.read) > 0, under = tell_chosen(&low.read) > 0;
    telling t = tell_strings(b, of, &high, &low, IN_FULL);
    for (brevity cut = NO_NAMES;
         cut <= NO_FIGURES && text_letters(text_read(&t.words), t.words.length) > line; cut++) {
        text_free(&t.words);
        t = tell_strings(b, of, &high, &low, cut);
    }
    return glance_of(of->name, strings_verdict(of, &now, over, under), span_of(b, &now), &t);
}

static verdict relief_verdict(const brief *b)
{
    verdict is = b->stage[BRIEF_RELIEF].unread ? unread : in_range;
    for (int k = 0; k < b->plan->finding_count; k++) {
        sil_code code = b->plan->findings[k].code;
        if (code == SIL_RELIEF_LOW || code == SIL_RELIEF_HIGH) {
            return (verdict){code == SIL_RELIEF_HIGH ? "too high" : "too low", BRIEF_WORK};
        }
        is = code == SIL_BACK_BOW       ? (verdict){"straight?", BRIEF_WORK}
             : code == SIL_RELIEF_FIRST ? (verdict){"over target", BRIEF_WORK}
                                        : is;
    }
    return is;
}

static brief_glance relief_glance(brief *b)
{
    telling t = tell_begin(b);
    bool read = !b->stage[BRIEF_RELIEF].unread;
    if (read) {
        tell_figure(&t, "read", -1, b->relief.now);
        tell_band(&t, b->relief.wanted.low.exact, b->relief.wanted.high.exact, -1);
    }
    if (read && brief_known(b->saddle.bow_accepted)) {
        tell(&t, "; taken as it is, it costs ");
        tell_figure(&t, "bow-action", -1, b->saddle.bow_accepted);
        tell(&t, " of the action");
    }
    return glance_of("relief", relief_verdict(b), read ? b->relief.now.shown : "", &t);
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
    tell_figure(t, "read", worst->string, figure_nearest(b, worst->read));
    t->fret = -1;
}

static brief_glance frets_glance(brief *b)
{
    const sil_finding *worn = NULL, *proud = NULL;
    int worn_count = count_of(b, SIL_FRET_WORN, &worn),
        proud_count = count_of(b, SIL_FRET_HIGH, &proud);
    telling t = tell_begin(b);
    if (worn) {
        tell_worst(b, worn, worn_count, worn_count > 1 ? "worn spots" : "worn spot", &t);
    }
    tell(&t, worn && proud ? "; " : "");
    if (proud) {
        tell_worst(b, proud, proud_count, "proud", &t);
    }
    verdict is = worn                           ? (verdict){"worn", BRIEF_WORK}
                 : proud                        ? (verdict){"proud", BRIEF_WORK}
                 : b->stage[BRIEF_FRETS].unread ? (verdict){"not checked", BRIEF_UNREAD}
                                                : (verdict){"sound", BRIEF_RIGHT};
    return glance_of("frets", is, "", &t);
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
    const brief_stage *stage = &b->stage[BRIEF_TUNE];
    verdict is = stage->waits    ? waiting
                 : stage->unread ? unread
                 : left          ? in_range
                                 : (verdict){"out of tune", BRIEF_WORK};
    return glance_of("tuning", is, span_of(b, &cents), &t);
}

void brief_fill_glance(brief *b)
{
    b->glance[BRIEF_TUNE] = tune_glance(b);
    b->glance[BRIEF_RELIEF] = relief_glance(b);
    b->glance[BRIEF_FRETS] = frets_glance(b);
    b->glance[BRIEF_NUT] =
        strings_glance(b, &(of_strings){"nut", "gap at the 1st fret", SIL_NUT, b->first,
                                        &b->stage[BRIEF_NUT], &b->plan->nut_withheld});
    b->glance[BRIEF_SADDLE] =
        strings_glance(b, &(of_strings){"saddle", "action at the 12th", SIL_SADDLE, b->action,
                                        &b->stage[BRIEF_SADDLE], &b->plan->saddle_withheld});
}
