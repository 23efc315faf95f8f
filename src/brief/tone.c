/* SPDX-License-Identifier: MIT */
/* The figures that are shown for clearance and for intonation. */
#include "within.h"

const char *const brief_assumed_words =
    "* Its core was not given: a usual one is assumed, and nothing is cut by this.";

/* Real strings are stiff, so their waves run apart and reach deeper: see docs/arithmetic.md,
 * "Clearance". */
const char *brief_bound(void)
{
    return "Computed for an ideal string. Open strings are good to 2 %. A fretted note may buzz at "
           "up "
           "to a tenth less, at the last frets up to a third less. It touches at the fret named or "
           "near it, often nearer the fretted note.";
}

static brief_weakest weakest(const brief *b, const sil_clearance *clean, int i)
{
    brief_weakest found = {.stop = -1, .on = -1, .force = figure_none()};
    double least = SIL_UNKNOWN;
    for (int stop = 1; stop < b->plan->bench.board.frets; stop++) {
        double force = clean->force[i][stop];
        if (sil_known(force) && !(force >= least)) {
            least = force;
            found.stop = stop;
            found.on = clean->at_fret[i][stop];
        }
    }
    found.force = figure_number(least, 2);
    return found;
}

/* The cents that are farthest from 0. */
static double worst_of(const double *cents)
{
    double worst = cents[1];
    for (int n = 2; n <= SIL_PITCH_FRETS; n++) {
        worst = fabs(cents[n]) > fabs(worst) ? cents[n] : worst;
    }
    return worst;
}

static void fill_pitch(const brief *b, int i, brief_tone *tone)
{
    const sil_compensation *told = &b->plan->compensation[i];
    tone->built = figure_nearest(b, b->plan->job->saddle.setback[i]);
    tone->in_tune = figure_nearest(b, told->saddle_only);
    tone->setback = figure_nearest(b, told->best.setback);
    tone->advance = figure_nearest(b, told->best.advance);
    tone->cents = figure_number(told->as_built[SIL_PITCH_FRETS], 1);
    tone->worst = figure_number(worst_of(told->as_built), 1);
    tone->move = figure_nearest(b, told->move);
}

static void fill_lowest(brief *b)
{
    const sil_board *board = &b->plan->bench.board;
    const sil_lowest *lowest = &b->plan->lowest;
    bool known = sil_known(lowest->relief);
    b->lowest.relief = figure_nearest(b, lowest->relief);
    for (int i = 0; i < b->strings; i++) {
        double action = known ? sil_action(board, &lowest->fit, i, 12) : SIL_UNKNOWN;
        double first = known ? sil_first_gap(board, &lowest->fit, i, SIL_HOLD_3) : SIL_UNKNOWN;
        b->lowest.action[i] = figure_length(b->unit, action, SIL_UP);
        b->lowest.first[i] = figure_length(b->unit, first, SIL_UP);
    }
}

void brief_fill_tone(brief *b)
{
    const sil_plan *plan = b->plan;
    fill_lowest(b);
    for (int i = 0; i < b->strings; i++) {
        brief_tone *tone = &b->tone[i];
        tone->assumed = plan->core_assumed[i] ? "*" : "";
        tone->picked = figure_number(plan->job->attack.force[i], 2);
        tone->open_now = figure_number(plan->clean_now.force[i][0], 2);
        tone->open_after = figure_number(plan->clean_after.force[i][0], 2);
        tone->now = weakest(b, &plan->clean_now, i);
        tone->after = weakest(b, &plan->clean_after, i);
        fill_pitch(b, i, tone);
    }
}
