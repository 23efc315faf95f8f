/* SPDX-License-Identifier: MIT */
#include "owner.h"

#include <string.h>

#include "tell.h"

static const sil_visit *first_visit(const brief *b)
{
    return &b->plan->visits[0];
}

static bool seen_again(const brief *b)
{
    return b->plan->visit_count > 1;
}

/* Whether there was work in a stage before the last visit, or, where there was only one visit, whether
 * there is any to do. */
static bool worked(const brief *b, sil_stage_name stage)
{
    for (int k = 0; k < b->plan->visit_count && seen_again(b); k++) {
        if (b->plan->visits[k].worked[stage]) {
            return true;
        }
    }
    return !seen_again(b) && b->plan->stages.changed[stage];
}

static void add(brief_owner_list *list, telling *t)
{
    brief_sentence line = tell_end(t);
    if (list->count < BRIEF_OWNER_LINES) {
        list->line[list->count++] = line;
    }
}

static void add_words(brief *b, brief_owner_list *list, const char *words)
{
    telling t = tell_begin(b);
    tell(&t, "%s", words);
    add(list, &t);
}

/* How far the actions of the first visit are past one end of their ranges, at the most: over the top,
 * or under the bottom; 0 where none is. */
static double most_off(const brief *b, bool over)
{
    double most = 0;
    for (int i = 0; i < b->strings && b->plan->visit_count > 0; i++) {
        sil_band range = b->plan->bench.targets.action[i];
        double read = first_visit(b)->read[i];
        bool out = over ? sil_above(read, range.high) : sil_below(read, range.low);
        most = out ? fmax(most, over ? read - range.high : range.low - read) : most;
    }
    return most;
}

static void find_action(brief *b, brief_owner_list *found)
{
    double high = most_off(b, true), low = most_off(b, false);
    bool one = b->strings == 1, again = seen_again(b);
    if (!worked(b, SIL_SADDLE) || (high <= 0 && low <= 0)) {
        return;
    }
    if (high > 0 && low > 0) {
        add_words(b, found,
                  again ? "Some strings were too high over the neck, others too low."
                        : "Some strings are too high over the neck, others too low.");
        return;
    }
    telling t = tell_begin(b);
    tell(&t, one ? "The string %s " : "The strings %s ",
         one ? (again ? "was" : "is") : (again ? "were" : "are"));
    t.way = t.figure_way = high > 0 ? BRIEF_UP : BRIEF_DOWN;
    tell(&t, high > 0 ? "too high over the neck, by " : "too low over the neck, by ");
    tell_length(&t, "past-range", -1, figure_length(b->unit, fmax(high, low), SIL_NEAREST));
    tell(&t, one ? "." : " at the most.");
    add(found, &t);
}

static void find_relief(brief *b, brief_owner_list *found)
{
    sil_band range = b->plan->bench.targets.relief;
    double relief = b->plan->visit_count > 0 ? first_visit(b)->relief : SIL_UNKNOWN;
    bool again = seen_again(b);
    if (!worked(b, SIL_ROD)) {
        return;
    }
    if (sil_above(relief, range.high)) {
        add_words(b, found,
                  again ? "The neck was bowed more than it should be."
                        : "The neck is bowed more than it should be.");
    } else if (sil_below(relief, range.low)) {
        add_words(b, found,
                  again ? "The neck was too straight: it needs a slight bow."
                        : "The neck is too straight: it needs a slight bow.");
    } else {
        add_words(b, found,
                  again ? "The bow of the neck was not as it should be."
                        : "The bow of the neck is not as it should be.");
    }
}

/* What stops the work, in everyday words, and what to do about it. A saddle at the end of its way is not
 * among them: its cause always comes with it. */
typedef struct stop {
    sil_code code;
    const char *found, *next;
} stop;

static const char neck_found[] = "The neck is bowed or tilted too far for a set-up.";
static const char neck_next[] = "First have the neck looked at by a qualified repairer.";

static const stop stops[] = {
    {SIL_BRIDGE_LIFTED, "The bridge is coming away from the body.",
     "First have the bridge glued by a qualified repairer."},
    {SIL_BRACES_LOOSE, "A brace inside is loose.",
     "First have the brace glued by a qualified repairer."},
    {SIL_CLIMATE, "It was kept in air that is too dry or too damp.",
     "First keep it in the right air for a few days."},
    {SIL_NOT_TUNED, "It was not in tune, so its readings do not count.",
     "First tune it and let it settle."},
    {SIL_ROD_LIMIT, neck_found, neck_next},
    {SIL_SHORT_BY_BOW, neck_found, neck_next},
    {SIL_NECK_ANGLE, neck_found, neck_next},
    {SIL_SHORT_BY_BRIDGE, "The bridge cannot come down far enough.",
     "First have the bridge and its feet looked at by a qualified repairer."}};

static bool says(const brief_owner_list *list, const char *words)
{
    for (int k = 0; k < list->count; k++) {
        if (strcmp(list->line[k].words, words) == 0) {
            return true;
        }
    }
    return false;
}

static void tell_stops(brief *b, brief_owner_list *found, brief_owner_list *next)
{
    for (int k = 0; k < b->plan->finding_count; k++) {
        const sil_finding *f = &b->plan->findings[k];
        for (size_t i = 0; i < sizeof stops / sizeof *stops && f->level == SIL_LEVEL_STOP; i++) {
            if (stops[i].code == f->code && !says(found, stops[i].found)) {
                add_words(b, found, stops[i].found);
                add_words(b, next, stops[i].next);
            }
        }
    }
}

/* Whether something is done today so that it plays in tune up the neck. */
static bool tunes(const brief *b)
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

static void fill_found(brief *b, brief_owner_list *found)
{
    bool again = seen_again(b);
    find_relief(b, found);
    if (worked(b, SIL_FRETS)) {
        add_words(b, found,
                  again ? "The frets were not even: some were worn, or stood too high."
                        : "The frets are not even: some are worn, or stand too high.");
    }
    if (worked(b, SIL_NUT)) {
        add_words(b, found,
                  again ? "Close to the headstock the strings were not at the right height."
                        : "Close to the headstock the strings are not at the right height.");
    }
    find_action(b, found);
    if (tunes(b)) {
        add_words(b, found, "Up the neck the notes are not in tune.");
    }
    if (found->count == 0) {
        add_words(b, found,
                  b->plan->done ? "Everything is as it should be."
                                : "Not everything was measured yet.");
    }
}

static void fill_done(brief *b, brief_owner_list *done)
{
    bool turns = sil_working_turns(b->saddle.working);
    if (!seen_again(b)) {
        return;
    }
    if (worked(b, SIL_ROD)) {
        add_words(b, done, "The rod inside the neck was adjusted, for the slight bow it needs.");
    }
    if (worked(b, SIL_FRETS)) {
        add_words(b, done, "The frets were made even, so that no note is choked.");
    }
    if (worked(b, SIL_NUT)) {
        add_words(b, done,
                  "The nut, which carries the strings at the headstock, was worked, so that they "
                  "are easy to press down and ring clear.");
    }
    if (worked(b, SIL_SADDLE)) {
        add_words(b, done,
                  turns
                      ? "The height of the strings was set at the bridge."
                      : "The height of the strings was set at the saddle, the strip on the bridge "
                        "that carries them.");
    }
    if (done->count == 0) {
        add_words(b, done, "It was measured again; no height had to be changed.");
    }
}

static const char *next_nut(sil_nut_remedy remedy)
{
    switch (remedy) {
    case SIL_NUT_FILE:
    case SIL_NUT_FILL:
        return "Work the nut, which carries the strings at the headstock, so that they are easy to "
               "press down and ring clear.";
    case SIL_NUT_SHIM:
        return "Raise the nut, which carries the strings at the headstock.";
    case SIL_NUT_REPLACE:
        return "Make a new nut, which carries the strings at the headstock.";
    case SIL_NUT_NONE:
    case SIL_NUT_WAIT:
        break;
    }
    return NULL;
}

static const char *next_saddle(const brief_saddle *saddle)
{
    switch (saddle->remedy) {
    case SIL_SADDLE_SAND:
        return "Lower the strings at the saddle, the strip on the bridge that carries them.";
    case SIL_SADDLE_SHIM:
        return "Raise the strings at the saddle, the strip on the bridge that carries them.";
    case SIL_SADDLE_SCREW:
        return "Set the height of the strings at the bridge.";
    case SIL_SADDLE_REPLACE:
        return saddle->floats ? "Make a new bridge."
                              : "Make a new saddle, the strip on the bridge that carries the "
                                "strings.";
    case SIL_SADDLE_NONE:
    case SIL_SADDLE_WAIT:
        break;
    }
    return NULL;
}

static void fill_next(brief *b, brief_owner_list *next)
{
    const char *nut = next_nut(b->nut.remedy), *saddle = next_saddle(&b->saddle);
    bool waits = b->stage[BRIEF_NUT].waits || b->stage[BRIEF_SADDLE].waits;
    if (b->plan->done) {
        return;
    }
    if (b->plan->stages.changed[SIL_ROD]) {
        add_words(b, next, "Adjust the rod inside the neck, for the slight bow it needs.");
    }
    if (b->plan->stages.fretwork != SIL_FRETS_LEAVE) {
        add_words(b, next, "Make the frets even, or fit new ones.");
    }
    if (nut) {
        add_words(b, next, nut);
    }
    if (saddle) {
        add_words(b, next, saddle);
    }
    if (tunes(b)) {
        add_words(
            b, next,
            "Set at the bridge where the strings end, so that they play in tune up the neck.");
    }
    add_words(b, next,
              waits ? "Then measure again: the rest is decided by what is found then."
                    : "Then measure everything again.");
}

static void care_strings(brief *b, brief_owner_list *care)
{
    brief_figure thin = b->nut.slot[0].gauge, thick = thin;
    for (int i = 0; i < b->strings; i++) {
        brief_figure gauge = b->nut.slot[i].gauge;
        thin = gauge.exact < thin.exact ? gauge : thin;
        thick = gauge.exact > thick.exact ? gauge : thick;
    }
    telling t = tell_begin(b);
    tell(&t, "Fit strings of the same gauges");
    if (brief_known(thin) && b->strings > 1) {
        tell(&t, ", ");
        tell_figure(&t, "thinnest", -1, thin);
        tell(&t, " to ");
        tell_length(&t, "thickest", -1, thick);
    }
    tell(&t, ": others pull differently and change what was set. Change them when they sound dull "
             "or feel rough, and keep it in tune.");
    add(care, &t);
}

static void fill_care(brief *b, brief_owner_list *care)
{
    const sil_limits *limits = &b->plan->job->limits;
    telling t = tell_begin(b);
    tell(&t, "Keep it where the humidity of the air is ");
    tell_figure(&t, "humidity-low", -1, figure_number(limits->humidity_low_pct, 0));
    tell(&t, " to ");
    tell_figure(&t, "humidity-high", -1, figure_number(limits->humidity_high_pct, 0));
    tell(&t, " %%: in its case, with a humidifier in the heating season, away from radiators, sun "
             "and a closed car.");
    add(care, &t);
    care_strings(b, care);
    add_words(b, care,
              "Wood moves with the seasons. If it begins to buzz or is harder to play, have it "
              "measured again: a small adjustment usually puts it right.");
}

static const char *date_of(const brief *b, int visit)
{
    return b->plan->job->readings[b->plan->visits[visit].reading].date;
}

static void fill_readings(brief *b, brief_owner *owner)
{
    int last = b->plan->visit_count - 1;
    const char *first_date = last >= 0 ? date_of(b, 0) : NULL;
    const char *last_date = last > 0 ? date_of(b, last) : NULL;
    bool waits = b->forecast || b->stage[BRIEF_NUT].waits || b->stage[BRIEF_SADDLE].waits;
    owner->before = first_date ? first_date : "before";
    owner->after = last > 0        ? (last_date ? last_date : "now")
                   : b->plan->done ? NULL
                   : waits         ? "target"
                                   : "when done";
    owner->relief[0] =
        last >= 0 ? figure_length(b->unit, first_visit(b)->relief, SIL_NEAREST) : figure_none();
    owner->relief[1] = last > 0 ? b->relief.now : waits ? b->relief.wanted.aim : b->relief.after;
    for (int i = 0; i < b->strings; i++) {
        owner->action[0][i] =
            last >= 0 ? figure_action(b->unit, first_visit(b)->read[i]) : figure_none();
        owner->action[1][i] = last > 0 ? b->action[i].now
                              : waits  ? b->action[i].wanted.aim
                                       : b->action[i].after;
    }
}

void brief_owner_of(brief *b, brief_owner *owner)
{
    *owner = (brief_owner){.before = ""};
    tell_stops(b, &owner->found, &owner->next);
    fill_found(b, &owner->found);
    fill_done(b, &owner->done);
    fill_next(b, &owner->next);
    fill_care(b, &owner->care);
    fill_readings(b, owner);
}
