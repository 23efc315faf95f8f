/* SPDX-License-Identifier: MIT */
/* What is shown of bringing the strings into tune. */
#include "within.h"

/* A side of a bridge that would move by less than this stays, mm. */
static const double least_shown = 0.005;

static brief_way way_of(double move)
{
    return move > 0.0 ? BRIEF_BACK : move < 0.0 ? BRIEF_FORWARD : BRIEF_NO_WAY;
}

const char *brief_tune_waits(sil_tune_wait wait)
{
    switch (wait) {
    case SIL_TUNE_READY:
        return NULL;
    case SIL_TUNE_AFTER_STOP:
        return "what stops all work comes first";
    case SIL_TUNE_AFTER_NECK:
        return "relief and frets come first";
    case SIL_TUNE_AFTER_NUT:
        return "the nut comes first";
    case SIL_TUNE_AFTER_SADDLE:
        return "the saddle's height comes first";
    }
    return NULL;
}

/* What is to happen with a string that was read. */
static const char *verdict_of(const sil_tuning *t, int i)
{
    if (!sil_known(t->cents[i])) {
        return "not read";
    }
    if (!t->out[i]) {
        return t->side[i] == SIL_WITHIN ? "in tune" : "at the edge";
    }
    const char *way = t->move[i] > 0.0 ? "back" : "forward";
    return t->remedy == SIL_TUNE_WAIT ? "wait" : plan_stays_out(t, i) ? "leave" : way;
}

static void fill_string(const brief *b, int i, brief_tuned *string)
{
    const sil_tuning *t = &b->plan->tuning;
    bool works = t->remedy != SIL_TUNE_WAIT && t->remedy != SIL_TUNE_NONE;
    string->moves = t->filed[i] || (t->remedy == SIL_TUNE_SCREWS && t->out[i]);
    double move = plan_tune_move(t, i);
    string->verdict = verdict_of(t, i);
    string->way = sil_known(move) ? way_of(move) : BRIEF_NO_WAY;
    string->cents = figure_signed(t->cents[i]);
    string->move = figure_nearest(b, fabs(move));
    string->turns = figure_turns(t->turns[i]);
    string->left = works ? figure_signed(t->left[i]) : figure_none();
    string->peak = figure_nearest(b, t->peak[i]);
    string->drop = t->drop[i] > 0.0 ? figure_nearest(b, t->drop[i]) : figure_none();
}

/* A saddle thicker than this is not made: a quarter of an inch (common practice, no source). */
static const double thickest = 6.35;

/* The thickness on which every peak is as far from either face as it should be: the nearest and the
 * farthest place, and the margin at both. Unknown where no saddle is so thick. */
static double thick_enough(const brief *b)
{
    const sil_tuning *t = &b->plan->tuning;
    double thickness = b->plan->job->saddle.thickness;
    double first = SIL_PEAK_MARGIN, last = thickness - SIL_PEAK_MARGIN;
    bool short_of = false;
    for (int i = 0; i < b->strings; i++) {
        short_of = short_of || fabs(t->peak_short[i]) > 0.0;
        first = fmin(first, t->peak[i] + t->peak_short[i]);
        last = fmax(last, t->peak[i] + t->peak_short[i]);
    }
    double wanted = last - first + 2.0 * SIL_PEAK_MARGIN;
    return short_of && wanted <= thickest ? wanted : SIL_UNKNOWN;
}

static const char *headline_of(const brief *b)
{
    const sil_tuning *t = &b->plan->tuning;
    switch (t->remedy) {
    case SIL_TUNE_NONE:
        return b->tuning.read ? "every string that was read is in tune"
               : t->unused    ? "the cents were read from worn strings, and are not used"
                              : "no cents were read";
    case SIL_TUNE_SCREWS:
        return "turn the intonation screws";
    case SIL_TUNE_ENDS:
        return "move the bridge at its ends";
    case SIL_TUNE_PEAKS:
        return "file the saddle's top to other peaks";
    case SIL_TUNE_REPLACE:
        return "a new saddle with other peaks";
    case SIL_TUNE_NOTE:
        return "out, and left so";
    case SIL_TUNE_WAIT:
        return "wait";
    }
    return "";
}

void brief_fill_tuning(brief *b)
{
    const sil_tuning *t = &b->plan->tuning;
    brief_tuning *shown = &b->tuning;
    double most = 0.0;
    shown->remedy = t->remedy;
    shown->within = figure_signed(b->plan->job->targets.cents);
    for (int i = 0; i < b->strings; i++) {
        fill_string(b, i, &shown->string[i]);
        shown->read = shown->read || sil_known(t->cents[i]);
        most = fmax(most, t->drop[i]);
    }
    for (int end = 0; end < BRIEF_ENDS; end++) {
        bool moves = fabs(t->end[end]) >= least_shown;
        shown->end[end] = moves ? figure_nearest(b, fabs(t->end[end])) : figure_none();
        shown->end_way[end] = moves ? way_of(t->end[end]) : BRIEF_NO_WAY;
    }
    shown->most_drop = most > 0.0 ? figure_length(b->unit, most, SIL_UP) : figure_none();
    shown->thick = figure_length(b->unit, thick_enough(b), SIL_UP);
    shown->headline = headline_of(b);
    b->asks_cents = !shown->read && sil_known(b->plan->job->targets.cents);
}
