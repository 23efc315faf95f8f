/* SPDX-License-Identifier: MIT */
#include "within.h"

/* The same line over z stretched by a factor, as along a saddle that is at an angle. */
static sil_line over_longer(sil_line line, double longer)
{
    return (sil_line){line.b0, line.b1 / longer};
}

static void solve_contact(const sil_plan *plan, part_saddle *saddle, int i)
{
    double off = plan->compensation[i].off_slot, z = plan->bench.board.saddle_z[i];
    saddle->contact_known[i] = sil_known(off);
    saddle->contact[i] =
        sil_known(off) ? off : plan->job->saddle.setback[i] - sil_line_at(plan->slot_as_built, z);
}

/* How far behind the middle a place on the top is, along the string, by its distance from the face. */
static double behind_middle(const part_saddle *saddle, double from_face)
{
    return (from_face - saddle->thickness / 2) / cos(saddle->slant);
}

/* A tuner is believed before the string's physics. */
static double solve_in_tune(const sil_plan *plan, const part_saddle *saddle, int i)
{
    const sil_tuning *tuning = &plan->tuning;
    double move = sil_known(tuning->move[i]) ? tuning->move[i] : tuning->proposed[i];
    if (sil_known(move)) {
        return behind_middle(saddle, sil_job_peak(plan->job, i)) + move;
    }
    return saddle->contact_known[i] ? saddle->contact[i] : SIL_UNKNOWN;
}

static void solve_peak(const sil_plan *plan, part_saddle *saddle, int i)
{
    bool slotted = sil_working_in_slot(plan->saddle.working);
    saddle->peak[i] = slotted ? behind_middle(saddle, plan->tuning.peak[i]) : saddle->contact[i];
    saddle->in_tune[i] = slotted ? solve_in_tune(plan, saddle, i) : saddle->contact[i];
    saddle->filed[i] = plan->tuning.filed[i];
}

static void solve_string(const sil_plan *plan, part_saddle *saddle, int i)
{
    const sil_saddle_work *work = &plan->saddle;
    double z = plan->bench.board.saddle_z[i];
    saddle->across[i] = plan->job->saddle.length / 2 + z;
    saddle->along[i] = saddle->length / 2 + z / cos(saddle->slant);
    saddle->present[i] = work->present[i];
    saddle->finished[i] = saddle->anew ? work->height[i] : work->present[i] - work->dress[i];
    saddle->bridge[i] = work->height[i] - work->protrusion[i];
    solve_contact(plan, saddle, i);
    solve_peak(plan, saddle, i);
}

/* How far the arc of a top may be off the heights that are shown, mm: their last figure. */
static const double as_shown = 0.01;

/* Less than this is too little to be left for another pass, mm. */
static const double least_left = 0.005;

/* A new saddle stands a little high at first, so that there is something to take off once it has been
 * measured with its strings on. */
static void first_of_new(const sil_plan *plan, part_saddle *saddle, double *first)
{
    for (int i = 0; i < saddle->strings; i++) {
        first[i] = saddle->finished[i] + plan->saddle.leave[i];
        saddle->more = saddle->more || plan->saddle.leave[i] >= least_left;
    }
}

/* What the first pass leaves of the saddle that is there. */
static void first_of_present(const sil_plan *plan, part_saddle *saddle, double *first)
{
    const sil_saddle_work *work = &plan->saddle;
    for (int i = 0; i < saddle->strings; i++) {
        first[i] = saddle->present[i] - work->dress_first[i];
        saddle->takes = saddle->takes || work->dress_first[i] >= least_left;
        saddle->cut = saddle->cut || work->dress[i] >= least_left;
        saddle->more = saddle->more || work->dress[i] - work->dress_first[i] >= least_left;
    }
    for (int end = 0; end < 2 && saddle->base; end++) {
        double x = end * saddle->length;
        double taken = part_base_at(saddle, saddle->base_first, x);
        double left = part_base_at(saddle, saddle->base_all, x) - taken;
        saddle->takes = saddle->takes || taken >= least_left;
        saddle->more = saddle->more || left >= least_left;
        saddle->cut = true;
    }
    saddle->more = saddle->more && saddle->cut;
}

/* The saddle after the first pass, and whether that leaves anything to take off. */
static void solve_first(const sil_plan *plan, part_saddle *saddle)
{
    double first[SIL_STRINGS_MAX];
    if (saddle->anew) {
        first_of_new(plan, saddle, first);
    } else {
        first_of_present(plan, saddle, first);
    }
    saddle->first_top = part_curve_through(saddle->strings, saddle->along, first);
    part_curve_round(&saddle->first_top, saddle->length, as_shown, as_shown);
}

void part_saddle_solve(const sil_plan *plan, part_saddle *saddle)
{
    const sil_job *job = plan->job;
    const sil_board *board = &plan->bench.board;
    const sil_saddle_work *work = &plan->saddle;
    double longer = 1 / cos(board->saddle_slant);
    *saddle = (part_saddle){.strings = board->strings,
                            .length = job->saddle.length * longer,
                            .thickness = job->saddle.thickness,
                            .slant = board->saddle_slant,
                            .base = work->bottom,
                            .base_all = over_longer(work->cut, longer),
                            .base_first = over_longer(work->cut_first, longer),
                            .shim = work->remedy == SIL_SADDLE_SHIM ? work->shim : 0,
                            .anew = work->remedy == SIL_SADDLE_REPLACE,
                            .takes = work->remedy == SIL_SADDLE_REPLACE,
                            .slot_built = over_longer(plan->slot_as_built, longer),
                            .slot_best = over_longer(plan->slot_best, longer)};
    for (int i = 0; i < saddle->strings; i++) {
        solve_string(plan, saddle, i);
    }
    saddle->present_top = part_curve_through(saddle->strings, saddle->along, saddle->present);
    saddle->finished_top = part_curve_through(saddle->strings, saddle->along, saddle->finished);
    part_curve_round(&saddle->finished_top, saddle->length, as_shown, as_shown);
    solve_first(plan, saddle);
    saddle->top_radius =
        saddle->finished_top.radius > 0 ? saddle->finished_top.radius : SIL_UNKNOWN;
}

double part_base_at(const part_saddle *saddle, sil_line line, double x)
{
    return sil_line_at(line, x - saddle->length / 2);
}

bool part_saddle_has_ends(const part_saddle *saddle)
{
    const double ends[] = {0, saddle->length};
    bool has = saddle->finished_top.count > 0;
    for (int end = 0; end < 2 && has; end++) {
        double bottom = saddle->base ? part_base_at(saddle, saddle->base_all, ends[end]) : 0;
        has = part_curve_at(&saddle->finished_top, ends[end]) > bottom;
    }
    return has;
}
