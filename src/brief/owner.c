/* SPDX-License-Identifier: MIT */
#include "owner.h"

#include <string.h>

#include "tell.h"

#include "../plan/plan.h"

static const sil_visit *first_visit(const brief *b)
{
    return &b->plan->visits[0];
}

static bool seen_again(const brief *b)
{
    return b->plan->visit_count > 1;
}

/* When a stage is worked: before the last visit, or by today's plan. */
typedef enum when { NEVER, BEFORE, TODAY } when;

static when worked(const brief *b, sil_stage_name stage)
{
    for (int k = 0; k < b->plan->visit_count && seen_again(b); k++) {
        if (b->plan->visits[k].worked[stage]) {
            return BEFORE;
        }
    }
    return b->plan->stages.changed[stage] ? TODAY : NEVER;
}

/* The visit whose readings show why it is worked. */
static const sil_visit *visit_of(const brief *b, when at)
{
    return at == BEFORE ? first_visit(b) : first_visit(b) + b->plan->visit_count - 1;
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

static void add_when(brief *b, brief_owner_list *list, when at, const char *before,
                     const char *today)
{
    add_words(b, list, at == BEFORE ? before : today);
}

/* The strings whose action is past one end of its range, and how far the farthest is. */
static tell_list past_range(const brief *b, when at, bool over, double *most)
{
    tell_list past = {.count = b->strings};
    *most = 0.0;
    for (int i = 0; i < b->strings; i++) {
        sil_band range = b->plan->bench.targets.action[i];
        double read = visit_of(b, at)->read[i];
        past.chosen[i] = over ? sil_above(read, range.high) : sil_below(read, range.low);
        double by = over ? read - range.high : range.low - read;
        *most = past.chosen[i] ? fmax(*most, by) : *most;
    }
    return past;
}

static void find_action(brief *b, brief_owner_list *found)
{
    when at = worked(b, SIL_SADDLE);
    if (at == NEVER || b->plan->visit_count == 0) {
        return;
    }
    double over, under;
    tell_list high = past_range(b, at, true, &over), low = past_range(b, at, false, &under);
    tell_list *past = tell_chosen(&high) > 0 ? &high : &low;
    if (tell_chosen(&high) > 0 && tell_chosen(&low) > 0) {
        add_when(b, found, at, "Some strings were too high over the neck, others too low.",
                 "Some strings are too high over the neck, others too low.");
    } else if (tell_chosen(past) > 0) {
        telling t = tell_begin(b);
        bool one = tell_chosen(past) == 1;
        tell_which_first(&t, past);
        tell(&t, at == BEFORE ? (one ? " was " : " were up to ") : (one ? " is " : " are up to "));
        t.way = t.figure_way = past == &high ? BRIEF_UP : BRIEF_DOWN;
        tell_length(&t, "past-range", -1, figure_length(b->unit, fmax(over, under), SIL_NEAREST));
        tell(&t, past == &high ? " too high over the neck." : " too low over the neck.");
        add(found, &t);
    } else if (plan_makes_saddle(b->plan)) {
        add_words(b, found,
                  "A new saddle is needed: the strip on the bridge that carries the strings.");
    }
}

static void find_relief(brief *b, brief_owner_list *found)
{
    when at = worked(b, SIL_ROD);
    if (at == NEVER) {
        return;
    }
    sil_band range = b->plan->bench.targets.relief;
    double relief = b->plan->visit_count > 0 ? visit_of(b, at)->relief : SIL_UNKNOWN;
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

static bool has(const brief *b, sil_code code)
{
    for (int k = 0; k < b->plan->finding_count; k++) {
        if (b->plan->findings[k].code == code) {
            return true;
        }
    }
    return false;
}

static void find_frets(brief *b, brief_owner_list *found)
{
    bool worn = has(b, SIL_FRET_WORN), high = has(b, SIL_FRET_HIGH);
    switch (worked(b, SIL_FRETS)) {
    case BEFORE:
        add_words(b, found, "The frets were not even: some were worn, or stood too high.");
        return;
    case TODAY:
        add_words(b, found,
                  worn && high ? "The frets are not even: some are worn, and some stand too high."
                  : high       ? "The frets are not even: some stand too high."
                               : "The frets are not even: some are worn.");
        return;
    case NEVER:
        return;
    }
}

/* The slots that today's plan lowers, or raises. */
static tell_list slots_with(const brief *b, sil_verdict verdict)
{
    tell_list list = {.count = b->strings};
    for (int i = 0; i < list.count; i++) {
        list.chosen[i] = b->nut.slot[i].verdict == verdict;
    }
    return list;
}

static void find_slots(brief *b, brief_owner_list *found)
{
    tell_list high = slots_with(b, SIL_TAKE), low = slots_with(b, SIL_RAISE);
    tell_list *off = tell_chosen(&high) > 0 ? &high : &low;
    if (plan_makes_nut(b->plan)) {
        add_words(b, found,
                  "A new nut is needed: the slotted strip that carries the strings at the "
                  "headstock.");
    } else if (tell_chosen(&high) > 0 && tell_chosen(&low) > 0) {
        add_words(b, found, "Close to the headstock some strings are too high, others too low.");
    } else if (tell_chosen(off) > 0) {
        telling t = tell_begin(b);
        t.way = off == &high ? BRIEF_UP : BRIEF_DOWN;
        tell(&t, "Close to the headstock ");
        tell_which(&t, off);
        tell(&t, tell_chosen(off) == 1 ? " is" : " are");
        tell(&t, off == &high ? " too high: hard to press down." : " too low, and may rattle.");
        add(found, &t);
    }
}

static void find_nut(brief *b, brief_owner_list *found)
{
    if (has(b, SIL_ZERO_FRET_HIGH)) {
        add_words(b, found,
                  "The fret beside the nut stands too high: the first notes are hard to press "
                  "down, and sharp.");
    } else if (has(b, SIL_ZERO_FRET_LOW)) {
        add_words(b, found, "The fret beside the nut is too low, so that open strings may rattle.");
    }
    switch (worked(b, SIL_NUT)) {
    case BEFORE:
        add_words(b, found, "Close to the headstock the strings were not at the right height.");
        return;
    case TODAY:
        find_slots(b, found);
        return;
    case NEVER:
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

static void tell_stops(brief *b, brief_owner_list *found, brief_owner_list *next)
{
    for (int k = 0; k < b->plan->finding_count; k++) {
        const sil_finding *f = &b->plan->findings[k];
        for (size_t i = 0; i < sizeof stops / sizeof *stops && f->level == SIL_LEVEL_STOP; i++) {
            if (stops[i].code == f->code && !says(found, stops[i].found)) {
                add_words(b, found, stops[i].found);
                if (!says(next, stops[i].next)) {
                    add_words(b, next, stops[i].next);
                }
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
    find_relief(b, found);
    find_frets(b, found);
    find_nut(b, found);
    find_action(b, found);
    if (tunes(b)) {
        add_words(b, found, "Up the neck the notes are not in tune.");
    }
    if (found->count == 0) {
        add_words(b, found,
                  b->plan->done ? "Everything is as it should be."
                                : "Not everything could be measured yet.");
    }
}

static const char *done_saddle(const brief *b)
{
    return sil_working_in_slot(b->saddle.working)
               ? "The height of the strings was set at the saddle, the strip on the bridge that "
                 "carries them."
               : "The height of the strings was set at the bridge.";
}

static void fill_done(brief *b, brief_owner_list *done)
{
    if (!seen_again(b)) {
        return;
    }
    if (worked(b, SIL_ROD) == BEFORE) {
        add_words(
            b, done,
            "The rod inside the neck was adjusted, to give the neck the slight bow it needs.");
    }
    if (worked(b, SIL_FRETS) == BEFORE) {
        add_words(b, done, "The frets were made even, so that every note rings clear.");
    }
    if (worked(b, SIL_NUT) == BEFORE) {
        add_words(b, done,
                  "The nut, the slotted strip at the headstock, was adjusted, so that the strings "
                  "are easy to press down and ring clear.");
    }
    if (worked(b, SIL_SADDLE) == BEFORE) {
        add_words(b, done, done_saddle(b));
    }
    if (done->count == 0) {
        add_words(b, done, "It was measured again; no height had to be changed.");
    }
}

static const char *next_nut(sil_nut_remedy remedy)
{
    switch (remedy) {
    case SIL_NUT_FILE:
        return "Lower the strings at the nut, the slotted strip at the headstock.";
    case SIL_NUT_FILL:
        return "Raise the low strings at the nut, the slotted strip at the headstock.";
    case SIL_NUT_SHIM:
        return "Raise the nut, the slotted strip at the headstock.";
    case SIL_NUT_REPLACE:
        return "Make a new nut, the slotted strip at the headstock.";
    case SIL_NUT_NONE:
    case SIL_NUT_WAIT:
        break;
    }
    return NULL;
}

static const char *next_saddle(const brief_saddle *saddle)
{
    bool slotted = sil_working_in_slot(saddle->working);
    switch (saddle->remedy) {
    case SIL_SADDLE_SAND:
        return slotted ? "Lower the strings at the saddle, the strip on the bridge that carries "
                         "them."
                       : "Lower the bridge that carries the strings.";
    case SIL_SADDLE_SHIM:
        return slotted ? "Raise the strings at the saddle, the strip on the bridge that carries "
                         "them."
                       : "Raise the bridge that carries the strings.";
    case SIL_SADDLE_SCREW:
        return "Set the height of the strings at the bridge.";
    case SIL_SADDLE_REPLACE:
        return saddle->floats
                   ? "Make a new bridge."
                   : "Make a new saddle, the strip on the bridge that carries the strings.";
    case SIL_SADDLE_NONE:
    case SIL_SADDLE_WAIT:
        break;
    }
    return NULL;
}

static void next_neck(brief *b, brief_owner_list *next)
{
    if (b->plan->stages.changed[SIL_ROD]) {
        add_words(b, next,
                  "Adjust the rod inside the neck, to give the neck the slight bow it needs.");
    }
    if (plan_rod_first(b->plan)) {
        add_words(b, next,
                  "First put the rod inside the neck right, or have a qualified repairer "
                  "straighten the neck.");
    }
    if (plan_back_bowed(b->plan)) {
        add_words(b, next,
                  "First let the neck come forward: heavier strings, some days of rest, and "
                  "a qualified repairer if that is not enough.");
    }
    if (b->plan->stages.fretwork != SIL_FRETS_LEAVE) {
        add_words(b, next, "Make the frets even, or fit new ones.");
    }
}

static void next_strings(brief *b, brief_owner_list *next)
{
    const char *nut = next_nut(b->nut.remedy), *saddle = next_saddle(&b->saddle);
    if (has(b, SIL_ZERO_FRET_HIGH)) {
        add_words(b, next, "Bring the fret beside the nut down.");
    } else if (has(b, SIL_ZERO_FRET_LOW)) {
        add_words(b, next, "Replace the fret beside the nut with a higher one.");
    }
    if (nut) {
        add_words(b, next, nut);
    }
    if (saddle) {
        add_words(b, next, saddle);
    }
    for (int k = 0; k < b->plan->step_count; k++) {
        if (b->steps[k].act == SIL_ACT_BRIDGE_CURVE) {
            add_words(b, next, "Put the curve of the bridge right, which some strings need.");
        }
    }
    if (tunes(b)) {
        add_words(
            b, next,
            "Set at the bridge where the strings end, so that they play in tune up the neck.");
    }
}

static void fill_next(brief *b, brief_owner_list *next)
{
    bool waits = b->stage[BRIEF_NUT].waits || b->stage[BRIEF_SADDLE].waits;
    if (b->plan->done) {
        return;
    }
    next_neck(b, next);
    next_strings(b, next);
    add_words(b, next,
              waits ? "Measure everything again: what comes after depends on that."
                    : "Measure everything again.");
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
    tell(&t, "Use strings as thick as these");
    if (brief_known(thin) && b->strings > 1) {
        tell(&t, ", ");
        tell_figure(&t, "thinnest", -1, thin);
        tell(&t, " to ");
        tell_length(&t, "thickest", -1, thick);
    }
    tell(&t, ": others change the set-up. Put on new ones when they sound dull or feel rough, and "
             "keep the instrument in tune.");
    add(care, &t);
}

static void fill_care(brief *b, brief_owner_list *care)
{
    const sil_limits *limits = &b->plan->job->limits;
    telling t = tell_begin(b);
    tell(&t, "Keep the instrument where the humidity is ");
    tell_figure(&t, "humidity-low", -1, figure_number(limits->humidity_low_pct, 0));
    tell(&t, " to ");
    tell_figure(&t, "humidity-high", -1, figure_number(limits->humidity_high_pct, 0));
    tell(&t,
         " %%: in its case, with a humidifier in the heating season. Keep it away from radiators "
         "and direct sun, and never leave it in a closed car.");
    add(care, &t);
    care_strings(b, care);
    add_words(b, care,
              "Wood moves with the seasons. If the instrument begins to buzz or becomes harder to "
              "play, have it measured again.");
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
                                   : "expected";
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
