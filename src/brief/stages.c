/* SPDX-License-Identifier: MIT */
/* What is to do in each stage, in two or three words. */
#include "within.h"

static brief_stage relief_stage(brief *b)
{
    const sil_plan *plan = b->plan;
    brief_stage stage = {.figure = figure_none(), .unread = !brief_known(b->relief.now)};
    if (stage.unread) {
        stage.words = "read it";
    } else if (plan->stages.changed[SIL_ROD]) {
        stage.figure = b->relief.wanted.aim;
        stage.words = text_keep(&b->store, "set to %s", stage.figure.shown);
    } else if (plan_bowed_for_good(plan) || plan_back_bowed(plan)) {
        stage.words = "see the neck";
    } else if (plan_rod_first(plan)) {
        stage.words = "see the rod";
    } else {
        stage.words = "leave it";
    }
    return stage;
}

static const char *fretwork_words(sil_fretwork work)
{
    switch (work) {
    case SIL_FRETS_LEAVE:
        return "leave them";
    case SIL_FRETS_SEAT:
        return "seat them";
    case SIL_FRETS_LEVEL:
        return "level them";
    case SIL_FRETS_NEW:
        return "new frets";
    }
    return "";
}

static brief_stage frets_stage(const brief *b)
{
    const sil_reading *reading = sil_plan_reading(b->plan);
    bool unread = !reading || reading->crowns_read == SIL_CROWNS_NOT_READ;
    return (brief_stage){.words =
                             unread ? "look at them" : fretwork_words(b->plan->stages.fretwork),
                         .figure = figure_none(),
                         .unread = unread};
}

static const char *nut_words(sil_nut_remedy remedy)
{
    switch (remedy) {
    case SIL_NUT_NONE:
        return "leave it";
    case SIL_NUT_FILE:
        return "file slots";
    case SIL_NUT_FILL:
        return "fill a nut slot";
    case SIL_NUT_SHIM:
        return "shim it";
    case SIL_NUT_REPLACE:
        return "new nut";
    case SIL_NUT_WAIT:
        return "WAIT";
    }
    return "";
}

static const char *saddle_words(const brief_saddle *saddle)
{
    switch (saddle->remedy) {
    case SIL_SADDLE_NONE:
        return "leave it";
    case SIL_SADDLE_SAND:
        return "lower it";
    case SIL_SADDLE_SHIM:
        return "shim it";
    case SIL_SADDLE_SCREW:
        return saddle->working == SIL_WORKING_THUMBWHEELS ? "thumbwheels"
               : saddle->posts                            ? "turn posts"
                                                          : "turn screws";
    case SIL_SADDLE_REPLACE:
        return saddle->floats ? "new bridge" : "new saddle";
    case SIL_SADDLE_WAIT:
        return "WAIT";
    }
    return "";
}

static bool none_read(const brief *b, const brief_reading *readings)
{
    for (int i = 0; i < b->strings; i++) {
        if (brief_known(readings[i].now)) {
            return false;
        }
    }
    return true;
}

static brief_stage part_stage(const brief *b, const char *words, bool waits,
                              const sil_withheld *withheld, const brief_reading *readings)
{
    brief_stage stage = {
        .words = words, .figure = figure_none(), .waits = waits, .unread = none_read(b, readings)};
    if (waits) {
        brief_fill_whys(b->plan, withheld, &stage);
    }
    return stage;
}

static brief_stage nut_stage(const brief *b)
{
    bool waits = b->nut.remedy == SIL_NUT_WAIT;
    /* Only the saddle waits for a zero fret, but the work is at the nut. */
    const sil_withheld *saddle = &b->plan->saddle_withheld;
    bool zero_fret = !waits && (sil_withheld_by(saddle, SIL_ZERO_FRET_HIGH) ||
                                sil_withheld_by(saddle, SIL_ZERO_FRET_LOW));
    return part_stage(b, zero_fret ? "zero fret" : nut_words(b->nut.remedy), waits,
                      &b->plan->nut_withheld, b->first);
}

static brief_stage saddle_stage(const brief *b)
{
    return part_stage(b, saddle_words(&b->saddle), b->saddle.remedy == SIL_SADDLE_WAIT,
                      &b->plan->saddle_withheld, b->action);
}

static const char *tune_words(const brief_tuning *tuning)
{
    switch (tuning->remedy) {
    case SIL_TUNE_NONE:
        return tuning->read ? "leave it" : "read cents";
    case SIL_TUNE_SCREWS:
        return "turn screws";
    case SIL_TUNE_ENDS:
        return "move bridge";
    case SIL_TUNE_PEAKS:
        return "file peaks";
    case SIL_TUNE_REPLACE:
        return "new saddle";
    case SIL_TUNE_NOTE:
        return "leave it";
    case SIL_TUNE_WAIT:
        return "WAIT";
    }
    return "";
}

static brief_stage tune_stage(const brief *b)
{
    bool waits = b->tuning.remedy == SIL_TUNE_WAIT;
    return (brief_stage){.words = tune_words(&b->tuning),
                         .figure = figure_none(),
                         .waits = waits,
                         .unread = !b->tuning.read,
                         .why = {waits ? brief_tune_waits(b->plan->tuning.waits) : NULL},
                         .whys = waits};
}

void brief_fill_stages(brief *b)
{
    b->stage[BRIEF_RELIEF] = relief_stage(b);
    b->stage[BRIEF_FRETS] = frets_stage(b);
    b->stage[BRIEF_NUT] = nut_stage(b);
    b->stage[BRIEF_SADDLE] = saddle_stage(b);
    b->stage[BRIEF_TUNE] = tune_stage(b);
}
