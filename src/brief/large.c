/* SPDX-License-Identifier: MIT */
#include "large.h"

#include <ctype.h>
#include <string.h>

#include "acts.h"

/* What a step is worked to, by the fixed word of its figures. */
typedef struct worked_to {
    const char *of, *label;
} worked_to;

typedef struct worked_by {
    worked_to row[BRIEF_LARGE_ROWS];
} worked_by;

static worked_by worked_by_of(const brief *b, sil_act act)
{
    bool last = b->saddle.takes_all && !b->saddle.one_pass;
    switch (act) {
    case SIL_ACT_ROD:
        return (worked_by){{{"relief-target", "bring the relief to"}, {"relief", "it is now"}}};
    case SIL_ACT_NECK_BOW:
        return (worked_by){{{"relief", "the relief is"}, {"relief-limit", "at most"}}};
    case SIL_ACT_SEAT_FRETS:
        return (worked_by){{{"proud", "stands proud by"}}};
    case SIL_ACT_LEVEL_FRETS:
        return (worked_by){{{"level", "off every fret"}}};
    case SIL_ACT_NEW_FRETS:
        return (worked_by){{{"worn", "worn by"}}};
    case SIL_ACT_ZERO_FRET:
        return (worked_by){{{"zero-fret", "too high by"}}};
    case SIL_ACT_FILE_SLOTS:
        return (worked_by){{{"stack", "stop at feelers of"}, {"slot", "deeper, this pass"}}};
    case SIL_ACT_FILL_SLOT:
        return (worked_by){{{"stack", "recut to feelers of"}, {"slot", "too low by"}}};
    case SIL_ACT_SHIM_NUT:
        return (worked_by){{{"shim", "shim, full length"}, {"stack", "then to feelers of"}}};
    case SIL_ACT_NEW_NUT:
        return (worked_by){{{"stack", "cut to feelers of"}}};
    case SIL_ACT_FIT_NUT:
    case SIL_ACT_FIT_BLANK:
        return (worked_by){{{"thickness", "push fit, about"}, {"length", "cut it to a length of"}}};
    case SIL_ACT_MARK_NUT:
        return (worked_by){{{"centre", "from the bass end"}}};
    case SIL_ACT_CUT_NUT:
        return (worked_by){{{"stack-first", "at first, feelers of"}, {"stack", "for good"}}};
    case SIL_ACT_SHAPE_NUT:
        return (worked_by){{{"depth", "depth when done"}, {"height", "height of the nut"}}};
    case SIL_ACT_SAND_SADDLE:
        if (!b->saddle.takes_first) { /* nothing is sanded with this tool */
            break;
        }
        return (worked_by){
            {{"caliper", "caliper, bottom to string"}, {"base", "off the bottom, this pass"}}};
    case SIL_ACT_DRESS_SADDLE:
        return (worked_by){{{"top", last ? "off the top, in all" : "off the top, this pass"}}};
    case SIL_ACT_SHIM_SADDLE:
        return (worked_by){{{"shim", "shim, full length"}}};
    case SIL_ACT_NEW_SADDLE:
        return (worked_by){{{"height", "height over its bottom"}}};
    case SIL_ACT_SHAPE_SADDLE:
        return (worked_by){{{"height-first", "at first, over its bottom"}, {"height", "for good"}}};
    case SIL_ACT_TURN_SCREWS:
        return (worked_by){{{"turns", "turns, both screws"}, {"screw", "which moves it by"}}};
    case SIL_ACT_TURN_POSTS:
        return (worked_by){{{"turns", "turns"}, {"screw", "which moves it by"}}};
    case SIL_ACT_TUNE_SCREWS:
        return (worked_by){{{"tune", "move it by"}, {"tune-turns", "turns"}}};
    case SIL_ACT_TUNE_ENDS:
        return (worked_by){{{"tune-end", "move that end by"}}};
    case SIL_ACT_FILE_PEAKS:
        return (worked_by){{{"peak", "peak, from the front edge"}}};
    case SIL_ACT_TUNED_SADDLE:
        return (worked_by){{{"thick", "as thick as"}}};
    case SIL_ACT_NECK_SHIM:
        return (worked_by){{{"wedge", "wedge, at its thick end"}, {"lift", "frets higher by"}}};
    case SIL_ACT_NECK_RESET:
        return (worked_by){{{"heel", "off the heel, about"}, {"lift", "frets higher by"}}};
    case SIL_ACT_PREPARE:
    case SIL_ACT_STOP:
    case SIL_ACT_MEASURE_RELIEF:
    case SIL_ACT_STRAIGHTEDGE:
    case SIL_ACT_READ_CROWNS:
    case SIL_ACT_LOOK_AT_SADDLE:
    case SIL_ACT_FIT_SADDLE:
    case SIL_ACT_MEASURE_FIRST:
    case SIL_ACT_MEASURE_ACTION:
    case SIL_ACT_READ_GAPS_AGAIN:
    case SIL_ACT_READ_ODD:
    case SIL_ACT_MEASURE_CROWN:
    case SIL_ACT_MEASURE_SADDLE:
    case SIL_ACT_FIND_ROD:
    case SIL_ACT_ROD_BY_EAR:
    case SIL_ACT_READ_AGAIN:
    case SIL_ACT_BRIDGE_CURVE:
    case SIL_ACT_NECK_ANGLE:
    case SIL_ACT_MEASURE_BRIDGE:
    case SIL_ACT_READ_NEW:
    case SIL_ACT_CHOOSE:
    case SIL_ACT_CHECK:
    case SIL_ACTS:
        break;
    }
    return (worked_by){{{NULL, NULL}}};
}

static void add_row(const brief *b, const brief_sentence *sentence, worked_to worked,
                    brief_large *next)
{
    brief_large_row *row = &next->row[next->rows];
    *row = (brief_large_row){.label = worked.label, .is_length = strcmp(worked.of, "turns") != 0};
    for (int i = sentence->first; i < sentence->first + sentence->count; i++) {
        const brief_said *said = &b->said[i];
        if (strcmp(said->of, worked.of) == 0 && brief_known(said->figure) &&
            row->count < BRIEF_LARGE_FIGURES) {
            row->said[row->count++] = said;
        }
    }
    next->rows += row->count > 0;
}

/* Filing and dressing where no pass is safe with the tools of the sheet: the step then is to measure
 * with a finer one. */
static bool measures_finer(sil_act act, const brief_large *next)
{
    bool cuts =
        act == SIL_ACT_FILE_SLOTS || act == SIL_ACT_SAND_SADDLE || act == SIL_ACT_DRESS_SADDLE;
    return cuts && next->rows == 0;
}

/* Words that begin with a capital. */
static const char *with_capital(const char *words, text_store *store)
{
    return words[0] != '\0' ? text_keep(store, "%c%s", toupper((unsigned char)words[0]), words + 1)
                            : "";
}

static const char *title_of(const brief *b, int k, const brief_large *next, text_store *store)
{
    const brief_step *step = &b->steps[k];
    const char *words = act_words_of(step->act).next;
    if (measures_finer(step->act, next)) {
        return "Measure with a finer tool";
    }
    if (step->act == SIL_ACT_STOP) {
        return b->row.next[0] != '\0' ? text_keep(store, "Stop: %s", b->row.next) : "Stop";
    }
    if (step->act == SIL_ACT_PREPARE) {
        return k == b->next.step ? with_capital(b->row.next, store) : "Get ready";
    }
    if (step->act == SIL_ACT_CHECK) {
        return b->plan->done ? "Done: play it and listen" : "Tune, and measure all again";
    }
    if (step->act == SIL_ACT_ROD) {
        return step->what.way == BRIEF_EASE ? "Ease the truss rod" : "Tighten the truss rod";
    }
    if (step->act == SIL_ACT_TURN_POSTS && b->saddle.floats) {
        return "Turn the thumbwheels";
    }
    return with_capital(words != NULL ? words : "", store);
}

brief_large brief_large_of(const brief *b, int step, text_store *store)
{
    const brief_step *it = &b->steps[step];
    worked_by worked = worked_by_of(b, it->act);
    brief_large next = {.title = ""};
    for (int r = 0; r < BRIEF_LARGE_ROWS && worked.row[r].of != NULL; r++) {
        add_row(b, &it->what, worked.row[r], &next);
    }
    next.title = title_of(b, step, &next, store);
    return next;
}
