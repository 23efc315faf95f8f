/* SPDX-License-Identifier: MIT */
#include "owner.h"

#include "owner_parts.h"

#include "../plan/plan.h"

static const sil_visit *first_visit(const brief *b)
{
    return &b->plan->visits[0];
}

static bool seen_again(const brief *b)
{
    return b->plan->visit_count > 1;
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
    if (owner_worked(b, SIL_ROD) == OWNER_BEFORE) {
        owner_add_words(
            b, done,
            b->plan->stages.changed[SIL_ROD]
                ? "The rod inside the neck was turned part of the way."
                : "The rod inside the neck was adjusted, to give the neck the slight bow it "
                  "needs.");
    }
    if (owner_worked(b, SIL_FRETS) == OWNER_BEFORE) {
        owner_add_words(b, done, "The frets were made even, so that every note rings clear.");
    }
    if (owner_worked(b, SIL_NUT) == OWNER_BEFORE) {
        owner_add_words(
            b, done,
            "The nut, the slotted strip at the headstock, was adjusted, so that the strings "
            "are easy to press down and ring clear.");
    }
    if (owner_worked(b, SIL_SADDLE) == OWNER_BEFORE) {
        owner_add_words(b, done, done_saddle(b));
    }
    if (done->count == 0) {
        owner_add_words(b, done, "It was measured again; no height had to be changed.");
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
        owner_add_words(
            b, next,
            owner_worked(b, SIL_ROD) == OWNER_BEFORE
                ? "Turn the rod inside the neck the rest of the way, to leave the neck the slight "
                  "bow it needs."
                : "Adjust the rod inside the neck, to leave the neck the slight bow it needs.");
    }
    if (plan_rod_first(b->plan)) {
        owner_add_words(b, next,
                        "First put the rod inside the neck right, or have a qualified repairer "
                        "straighten the neck.");
    }
    if (plan_back_bowed(b->plan)) {
        owner_add_words(b, next,
                        "First let the neck come forward: heavier strings, some days of rest, and "
                        "a qualified repairer if that is not enough.");
    }
    if (b->plan->stages.fretwork != SIL_FRETS_LEAVE) {
        owner_add_words(b, next, "Make the frets even, or fit new ones.");
    }
}

static void next_strings(brief *b, brief_owner_list *next)
{
    const char *nut = next_nut(b->nut.remedy), *saddle = next_saddle(&b->saddle);
    if (owner_has(b, SIL_ZERO_FRET_HIGH)) {
        owner_add_words(b, next, "Bring the fret beside the nut down.");
    } else if (owner_has(b, SIL_ZERO_FRET_LOW)) {
        owner_add_words(b, next, "Replace the fret beside the nut with a higher one.");
    }
    if (nut) {
        owner_add_words(b, next, nut);
    }
    if (saddle) {
        owner_add_words(b, next, saddle);
    }
    for (int k = 0; k < b->plan->step_count; k++) {
        if (b->steps[k].act == SIL_ACT_BRIDGE_CURVE) {
            owner_add_words(b, next,
                            "Reshape the top of the bridge, or replace it: some strings sit "
                            "too high or too low on it.");
        }
    }
    if (owner_tunes(b)) {
        owner_add_words(
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
    owner_add_words(b, next,
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
    owner_add(care, &t);
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
    owner_add(care, &t);
    care_strings(b, care);
    owner_add_words(
        b, care,
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
    owner->relief[0] = last >= 0 ? figure_nearest(b, first_visit(b)->relief) : figure_none();
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
    owner_found(b, &owner->found, &owner->next);
    fill_done(b, &owner->done);
    fill_next(b, &owner->next);
    fill_care(b, &owner->care);
    fill_readings(b, owner);
}
