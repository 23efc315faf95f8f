/* SPDX-License-Identifier: MIT */
/* What is to do in each stage, in two or three words. */
#include "within.h"

static brief_stage relief_stage(brief *b)
{
    const sil_plan *plan = b->plan;
    brief_stage stage = {.figure = figure_none()};
    if (!brief_known(b->relief.now)) {
        stage.words = "read it";
    } else if (plan->stages.changed[SIL_ROD]) {
        stage.figure = b->relief.wanted.aim;
        stage.words = text_keep(&b->store, "set to %s", stage.figure.shown);
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
                         .figure = figure_none()};
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

/* The first reason a part waits; NULL where none is known. */
static const char *first_reason(const sil_withheld *withheld)
{
    return withheld->count > 0 ? brief_waits(withheld->by[0]) : NULL;
}

static brief_stage nut_stage(const brief *b)
{
    bool waits = b->nut.remedy == SIL_NUT_WAIT;
    /* Only the saddle waits for a zero fret, but the work is at the nut. */
    bool zero_fret = !waits && sil_withheld_by(&b->plan->saddle_withheld, SIL_ZERO_FRET_HIGH);
    return (brief_stage){.words = zero_fret ? "zero fret" : nut_words(b->nut.remedy),
                         .figure = figure_none(),
                         .waits = waits,
                         .why = waits ? first_reason(&b->plan->nut_withheld) : NULL};
}

static brief_stage saddle_stage(const brief *b)
{
    bool waits = b->saddle.remedy == SIL_SADDLE_WAIT;
    return (brief_stage){.words = saddle_words(&b->saddle),
                         .figure = figure_none(),
                         .waits = waits,
                         .why = waits ? first_reason(&b->plan->saddle_withheld) : NULL};
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
                         .why = waits ? brief_tune_waits(b->plan->tuning.waits) : NULL};
}

void brief_fill_stages(brief *b)
{
    b->stage[BRIEF_RELIEF] = relief_stage(b);
    b->stage[BRIEF_FRETS] = frets_stage(b);
    b->stage[BRIEF_NUT] = nut_stage(b);
    b->stage[BRIEF_SADDLE] = saddle_stage(b);
    b->stage[BRIEF_TUNE] = tune_stage(b);
}
