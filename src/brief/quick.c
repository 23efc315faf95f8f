/* SPDX-License-Identifier: MIT */
/* Quick questions about one string, without a sheet. */
#include "quick.h"
#include "figure.h"

/* How closely the usual tools read, plus or minus, mm: a ruler at the 12th fret, feelers at the
 * 1st. Common practice, no source. */
static const double ruler = 0.1;
static const double feelers = 0.02;

/* How far under its target a string may be, and what a first pass leaves on, at the bottom of the
 * saddle and in a nut slot, mm: as in the profiles. Common practice, no source. */
static const double band_action = 0.15, band_first = 0.03;
static const double leave_base = 0.15, leave_slot = 0.05;

/* Less than this is too little to file, mm. */
static const double least_pass = 0.02;

typedef struct question {
    const char *of;     /* "saddle" or "slot" */
    const char *lower;  /* what to do where something comes off */
    const char *raise;  /* what to do where it must be raised */
    const char *after;  /* the words after the amount */
    double change;      /* exact, + comes off, mm */
    double tool, share; /* reading error; how much of a change at the part shows at the reading */
    double band, leave; /* how far under its target it may be read; what a first pass leaves on */
    double guard;       /* the saddle carries a whole set of strings, a slot one */
    sil_unit unit;
} question;

static brief_figure note(brief_quick *answer, const char *of, brief_way way, brief_figure figure)
{
    answer->said[answer->said_count++] = (brief_said){
        .of = of, .string = -1, .fret = -1, .end = BRIEF_NO_END, .way = way, .figure = figure};
    return figure;
}

/* Says how much to take off first: what a plan gives for the same figures. */
static const char *advice(const question *q, brief_quick *answer, const char *unit)
{
    double to_low = q->change + q->band / q->share;
    double first = sil_first_stroke(q->change, q->leave, to_low, answer->u, q->guard);
    answer->first_pass = q->change > 0.0 ? first : 0.0;
    if (first >= least_pass) {
        brief_figure pass =
            note(answer, "first-pass", BRIEF_DOWN, figure_length(q->unit, first, SIL_DOWN));
        return text_keep(&answer->store, "take %s %s first, tune, and measure again.", pass.shown,
                         unit);
    }
    return q->change > 0.0 ? "too coarse for so small a cut; measure it finer first."
                           : "measure again before you cut anything.";
}

static void answer_question(const question *q, brief_quick *answer)
{
    const char *unit = q->unit == SIL_MM ? "mm" : "in";
    bool off = q->change >= 0.0;
    *answer = (brief_quick){.change = q->change, .u = sil_rectangular(q->tool) / q->share};
    brief_figure by = note(answer, q->of, off ? BRIEF_DOWN : BRIEF_UP,
                           figure_length(q->unit, fabs(q->change), SIL_DOWN));
    brief_figure tool =
        note(answer, "tool", BRIEF_NO_WAY, figure_length(q->unit, q->tool, SIL_NEAREST));
    brief_figure sure =
        note(answer, "sure", BRIEF_NO_WAY, figure_length(q->unit, 2.0 * answer->u, SIL_UP));
    const char *pass = advice(q, answer, unit);
    answer->words = text_keep(
        &answer->store, "%s by %s %s%s\nMeasured to \u00b1%s %s, so good to \u00b1%s %s: %s\n",
        off ? q->lower : q->raise, by.shown, unit, q->after, tool.shown, unit, sure.shown, unit,
        pass);
    answer->words = answer->store.failed ? NULL : answer->words;
}

void brief_quick_saddle(double scale, double setback, double now, double want, int fraction,
                        sil_unit unit, brief_quick *answer)
{
    double share = sil_fret_place(scale, 12) / (scale + setback);
    const question q = {.of = "saddle",
                        .lower = "Lower the saddle",
                        .raise = "Raise the saddle",
                        .after = " at that string, twice the change at the 12th fret.",
                        .change = (now - want) / share,
                        .tool = fmax(ruler, sil_graduation(fraction)),
                        .band = band_action,
                        .leave = leave_base,
                        .guard = SIL_GUARD_SET,
                        .share = share,
                        .unit = unit};
    answer_question(&q, answer);
}

void brief_quick_nut(double scale, double now, double want, int fraction, sil_hold held,
                     sil_unit unit, brief_quick *answer)
{
    double first = sil_fret_place(scale, 1);
    double bearing = held == SIL_HOLD_OPEN ? scale : sil_fret_place(scale, (int)held);
    double share = 1.0 - first / bearing;
    const char *const after[] = {
        [SIL_HOLD_OPEN] = " (gap at the 1st fret measured open).",
        [SIL_HOLD_2] = " (gap at the 1st fret measured fretted at the 2nd).",
        [SIL_HOLD_3] = " (gap at the 1st fret measured fretted at the 3rd)."};
    const question q = {.of = "slot",
                        .lower = "File down the nut slot",
                        .raise = "Raise the nut slot",
                        .after = after[held],
                        .change = (now - want) / share,
                        .tool = fmax(feelers, sil_graduation(fraction)),
                        .band = band_first,
                        .leave = leave_slot,
                        .guard = SIL_GUARD_ONE,
                        .share = share,
                        .unit = unit};
    answer_question(&q, answer);
}

void brief_quick_free(brief_quick *answer)
{
    text_store_free(&answer->store);
}
