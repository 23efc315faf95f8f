/* SPDX-License-Identifier: MIT */
/* The quick question of one string that is sharp or flat at fret 12. */
#include "figure.h"
#include "quick.h"

/* What a tuner reads to, plus or minus, cents; and how near to in tune is near enough. Common practice,
 * no source. */
static const double tuner = 2.0;
static const double near_enough = 3.0;

static brief_figure note(brief_quick *answer, const char *of, brief_way way, brief_figure figure)
{
    answer->said[answer->said_count++] = (brief_said){
        .of = of, .string = -1, .fret = -1, .end = BRIEF_NO_END, .way = way, .figure = figure};
    return figure;
}

/* " (about 3-3/8 turns)", where the travel of a turn is known. */
static const char *turned(double turns, brief_way way, brief_quick *answer)
{
    if (!sil_known(turns)) {
        return "";
    }
    brief_figure figure = note(answer, "tune-turns", way, figure_turns(turns));
    return text_keep(&answer->store, " (%s)", brief_turns(&answer->store, figure));
}

void brief_quick_tune(double scale, double setback, double cents, double pitch, sil_unit unit,
                      brief_quick *answer)
{
    double open = scale + setback, fret = sil_fret_place(scale, 12);
    const char *name = unit == SIL_MM ? "mm" : "in";
    double a_cent =
        (sil_tune_move(open, fret, cents + 0.5) - sil_tune_move(open, fret, cents - 0.5));
    *answer = (brief_quick){.change = sil_tune_move(open, fret, cents),
                            .u = sil_rectangular(tuner) * a_cent,
                            .first_pass = SIL_UNKNOWN};
    if (cents == 0.0) {
        answer->words = text_keep(&answer->store, "In tune at the 12th fret: leave it.\n");
        answer->words = answer->store.failed ? NULL : answer->words;
        return;
    }
    brief_way way = answer->change < 0.0 ? BRIEF_FORWARD : BRIEF_BACK;
    brief_figure by =
        note(answer, "tune", way, figure_length(unit, fabs(answer->change), SIL_NEAREST));
    const char *turns = turned(answer->change / pitch, way, answer);
    brief_figure sure =
        note(answer, "sure", BRIEF_NO_WAY, figure_length(unit, 2.0 * answer->u, SIL_UP));
    brief_figure read = note(answer, "tool", BRIEF_NO_WAY, figure_number(tuner, 0));
    answer->words = text_keep(
        &answer->store,
        "Move the string's saddle %s %s %s%s, %s.\nRead to \u00b1%s cents, so good to \u00b1%s %s: "
        "%s\n",
        way == BRIEF_BACK ? "back" : "forward", by.shown, name, turns,
        way == BRIEF_BACK ? "away from the nut" : "toward the nut", read.shown, sure.shown, name,
        fabs(cents) <= near_enough
            ? "near enough by ear, so leave it unless the bridge has a screw "
              "for each string."
            : "set the height first, move it, tune, and read it again.");
    answer->words = answer->store.failed ? NULL : answer->words;
}
