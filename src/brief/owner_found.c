/* SPDX-License-Identifier: MIT */
/* What the owner is told was found: of each stage that was worked or is to be, and what stops the
 * work. */
#include <string.h>

#include "owner_parts.h"
#include "say.h"

#include "../plan/plan.h"

/* The first visit after work in a stage; 0 where there was none. */
static int first_worked(const brief *b, sil_stage_name stage)
{
    for (int k = 1; k < b->plan->visit_count; k++) {
        if (b->plan->visits[k].worked[stage]) {
            return k;
        }
    }
    return 0;
}

owner_when owner_worked(const brief *b, sil_stage_name stage)
{
    return first_worked(b, stage) > 0       ? OWNER_BEFORE
           : b->plan->stages.changed[stage] ? OWNER_TODAY
                                            : OWNER_NEVER;
}

/* The visit whose readings show why it is worked: the one before that work, or today's. */
static const sil_visit *reason_for(const brief *b, sil_stage_name stage)
{
    int after = first_worked(b, stage);
    return &b->plan->visits[after > 0 ? after - 1 : b->plan->visit_count - 1];
}

void owner_add(brief_owner_list *list, telling *t)
{
    brief_sentence line = tell_end(t);
    if (list->count < BRIEF_OWNER_LINES) {
        list->line[list->count++] = line;
    }
}

void owner_add_words(brief *b, brief_owner_list *list, const char *words)
{
    telling t = tell_begin(b);
    tell(&t, "%s", words);
    owner_add(list, &t);
}

bool owner_has(const brief *b, sil_code code)
{
    for (int k = 0; k < b->plan->finding_count; k++) {
        if (b->plan->findings[k].code == code) {
            return true;
        }
    }
    return false;
}

bool owner_tunes(const brief *b)
{
    switch (b->tuning.remedy) {
    case SIL_TUNE_SCREWS:
    case SIL_TUNE_ENDS:
    case SIL_TUNE_PEAKS:
    case SIL_TUNE_REPLACE:
        return true;
    case SIL_TUNE_NONE:
    case SIL_TUNE_NOTE:
    case SIL_TUNE_WAIT:
        break;
    }
    return false;
}

static void add_when(brief *b, brief_owner_list *list, owner_when at, const char *before,
                     const char *today)
{
    owner_add_words(b, list, at == OWNER_BEFORE ? before : today);
}

/* The strings whose action is past one end of its range, and how far the farthest is. */
static tell_list past_range(const brief *b, bool over, double *most)
{
    tell_list past = {.count = b->strings};
    *most = 0.0;
    for (int i = 0; i < b->strings; i++) {
        sil_band range = b->plan->bench.targets.action[i];
        double read = reason_for(b, SIL_SADDLE)->read[i];
        past.chosen[i] = over ? sil_above(read, range.high) : sil_below(read, range.low);
        double by = over ? read - range.high : range.low - read;
        *most = past.chosen[i] ? fmax(*most, by) : *most;
    }
    return past;
}

static void find_action(brief *b, brief_owner_list *found)
{
    owner_when at = owner_worked(b, SIL_SADDLE);
    if (at == OWNER_NEVER || b->plan->visit_count == 0) {
        return;
    }
    double over, under;
    tell_list high = past_range(b, true, &over), low = past_range(b, false, &under);
    tell_list *past = tell_chosen(&high) > 0 ? &high : &low;
    if (tell_chosen(&high) > 0 && tell_chosen(&low) > 0) {
        add_when(b, found, at, "Some strings were too high over the neck, others too low.",
                 "Some strings are too high over the neck, others too low.");
    } else if (tell_chosen(past) > 0) {
        telling t = tell_begin(b);
        bool one = tell_chosen(past) == 1;
        tell_which_first(&t, past);
        tell(&t, at == OWNER_BEFORE ? (one ? " was " : " were up to ")
                                    : (one ? " is " : " are up to "));
        tell_length(&t, "past-range", -1, figure_nearest(b, fmax(over, under)));
        tell(&t, past == &high ? " too high over the neck." : " too low over the neck.");
        owner_add(found, &t);
    } else if (b->plan->bench.fresh.saddle) {
        owner_add_words(
            b, found, "A new saddle is needed: the strip on the bridge that carries the strings.");
    }
}

static void find_relief(brief *b, brief_owner_list *found)
{
    owner_when at = owner_worked(b, SIL_ROD);
    if (at == OWNER_NEVER) {
        return;
    }
    if (b->plan->stages.changed[SIL_ROD]) { /* though the rod was turned before, too */
        at = OWNER_TODAY;
    }
    sil_band range = b->plan->bench.targets.relief;
    double relief = b->plan->visit_count > 0 ? reason_for(b, SIL_ROD)->relief : SIL_UNKNOWN;
    if (sil_above(relief, range.high)) {
        add_when(b, found, at, "The neck was bowed more than it should be.",
                 "The neck is bowed more than it should be.");
    } else if (relief < 0.0) {
        add_when(b, found, at, "The neck was bent backward: it needs a slight bow forward.",
                 "The neck is bent backward: it needs a slight bow forward.");
    } else if (sil_below(relief, range.low)) {
        add_when(b, found, at, "The neck was too straight: it needs a slight bow.",
                 "The neck is too straight: it needs a slight bow.");
    } else {
        add_when(b, found, at, "The bow of the neck was not as it should be.",
                 "The bow of the neck is not as it should be.");
    }
}

static void find_frets(brief *b, brief_owner_list *found)
{
    bool worn = owner_has(b, SIL_FRET_WORN), high = owner_has(b, SIL_FRET_HIGH);
    switch (owner_worked(b, SIL_FRETS)) {
    case OWNER_BEFORE:
        owner_add_words(b, found, "The frets were not even: some were worn, or stood too high.");
        return;
    case OWNER_TODAY:
        owner_add_words(b, found,
                        worn && high
                            ? "The frets are not even: some are worn, and some stand too high."
                        : high ? "The frets are not even: some stand too high."
                               : "The frets are not even: some are worn.");
        return;
    case OWNER_NEVER:
        return;
    }
}

/* Of the slots that today's plan lowers, or raises. */
static void find_slots(brief *b, brief_owner_list *found)
{
    tell_list high = say_slots(b, SIL_TAKE), low = say_slots(b, SIL_RAISE);
    tell_list *off = tell_chosen(&high) > 0 ? &high : &low;
    if (b->plan->bench.fresh.nut) {
        owner_add_words(b, found,
                        "A new nut is needed: the slotted strip that carries the strings at the "
                        "headstock.");
    } else if (tell_chosen(&high) > 0 && tell_chosen(&low) > 0) {
        owner_add_words(b, found,
                        "Close to the headstock some strings are too high, others too low.");
    } else if (tell_chosen(off) > 0) {
        telling t = tell_begin(b);
        tell(&t, "Close to the headstock ");
        tell_which(&t, off);
        tell(&t, tell_chosen(off) == 1 ? " is" : " are");
        tell(&t, off == &high ? " too high: hard to press down."
                 : plan_any(b->plan->stages.on_fret, b->strings)
                     ? " too low: open strings lie on the first fret."
                     : " too low, and may rattle.");
        owner_add(found, &t);
    }
}

static void find_nut(brief *b, brief_owner_list *found)
{
    if (owner_has(b, SIL_ZERO_FRET_HIGH)) {
        owner_add_words(
            b, found,
            "The fret beside the nut stands too high: the first notes are hard to press "
            "down, and sharp.");
    } else if (owner_has(b, SIL_ZERO_FRET_LOW)) {
        owner_add_words(b, found,
                        "The fret beside the nut is too low, so that open strings may rattle.");
    }
    switch (owner_worked(b, SIL_NUT)) {
    case OWNER_BEFORE:
        owner_add_words(b, found,
                        "Close to the headstock the strings were not at the right height.");
        return;
    case OWNER_TODAY:
        find_slots(b, found);
        return;
    case OWNER_NEVER:
        return;
    }
}

/* What stops the work, in everyday words, and what to do about it. A saddle at the end of its way is not
 * among them: its cause always comes with it. */
typedef struct stop {
    sil_code code;
    const char *found, *next;
} stop;

static const char neck_next[] = "First the neck itself needs work by a qualified repairer.";

static const stop stops[] = {
    {SIL_BRIDGE_LIFTED, "The bridge is coming away from the body.",
     "First the bridge must be glued by a qualified repairer."},
    {SIL_BRACES_LOOSE, "A brace inside is loose.",
     "First the brace must be glued by a qualified repairer."},
    {SIL_CLIMATE, "It was kept in air that is too dry or too damp.",
     "First keep it in the right air for a few days."},
    {SIL_NOT_TUNED, "It was not in tune, so its readings do not count.",
     "First tune it and let it settle."},
    {SIL_ROD_LIMIT, "The neck is bowed too far for the rod inside it to put right.", neck_next},
    {SIL_SHORT_BY_BOW,
     "The neck is bowed so far that the strings cannot come down far enough at the bridge.",
     neck_next},
    {SIL_NECK_ANGLE,
     "The neck leans too far forward: the strings cannot come down far enough at the bridge.",
     neck_next},
    {SIL_SHORT_BY_BRIDGE, "The bridge cannot come down far enough.",
     "First a qualified repairer must look at the bridge and its feet."}};

static bool says(const brief_owner_list *list, const char *words)
{
    for (int k = 0; k < list->count; k++) {
        if (strcmp(list->line[k].words, words) == 0) {
            return true;
        }
    }
    return false;
}

static void find_stops(brief *b, brief_owner_list *found, brief_owner_list *next)
{
    for (int k = 0; k < b->plan->finding_count; k++) {
        const sil_finding *f = &b->plan->findings[k];
        for (size_t i = 0; i < sizeof stops / sizeof *stops && f->level == SIL_LEVEL_STOP; i++) {
            if (stops[i].code == f->code && !says(found, stops[i].found)) {
                owner_add_words(b, found, stops[i].found);
                if (!says(next, stops[i].next)) {
                    owner_add_words(b, next, stops[i].next);
                }
            }
        }
    }
}

void owner_found(brief *b, brief_owner_list *found, brief_owner_list *next)
{
    find_stops(b, found, next);
    find_relief(b, found);
    find_frets(b, found);
    find_nut(b, found);
    find_action(b, found);
    if (owner_tunes(b)) {
        owner_add_words(b, found, "Up the neck the notes are not in tune.");
    }
    if (found->count == 0) {
        owner_add_words(b, found,
                        b->plan->done ? "Everything is as it should be."
                                      : "Not everything could be measured yet.");
    }
}
