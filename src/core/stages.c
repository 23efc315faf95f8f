/* SPDX-License-Identifier: MIT */
/* The work in its order: now, rod, frets, nut, saddle. See docs/arithmetic.md, "The order of
 * work" and "How sure". */
#include "height.h"
#include "pass.h"
#include "verdict.h"

/* A small change of the readings, to see how much a cut changes with it. */
typedef struct nudge {
    double action, first, relief, rod_ratio;
} nudge;

static double nudged(double gap, double by)
{
    return gap > 0.0 ? gap + by : gap;
}

static void read_now(const sil_bench *bench, const nudge *by, sil_fit *now)
{
    sil_gaps gaps = bench->gaps;
    for (int i = 0; i < bench->board.strings; i++) {
        gaps.action[i] = nudged(gaps.action[i], by->action);
        gaps.first[i] = nudged(gaps.first[i], by->first);
        gaps.first_open[i] = nudged(gaps.first_open[i], by->first);
    }
    sil_relief_reading relief = bench->relief;
    relief.gap += by->relief;
    now->crowns = bench->crowns;
    now->bend = sil_bend_from_relief(&bench->board, &bench->crowns, &relief);
    sil_fit_read(&bench->board, &gaps, now);
    for (int i = 0; i < bench->board.strings && bench->fresh.saddle; i++) {
        if (!sil_known(now->nut_height[i])) {
            now->nut_height[i] = core_new_nut_height(bench, now, 0.0, i);
        }
    }
}

/* The nut is fixed to the neck and the saddle to the body; the chord moves between them. */
void sil_neck_moves(const sil_board *board, double bend, double ratio, sil_fit *fit)
{
    double shift = (bend - fit->bend) * ratio;
    double first = board->spine_x[1];
    double join = board->spine_x[board->join];
    for (int i = 0; i < board->strings; i++) {
        double nut = board->nut_x[i];
        fit->nut_height[i] += shift * (first - nut) * (join - nut);
        fit->saddle_height[i] += shift * (join - first) * (sil_saddle_axis_x(board, i) - join);
    }
    fit->bend = bend;
}

static void turn_rod(const sil_bench *bench, double ratio, sil_fit *fit)
{
    sil_neck_moves(&bench->board, sil_bend(&bench->board, bench->targets.relief.aim), ratio, fit);
}

/* How far the worst crown is off the line in one direction, without sign. */
static double farthest_crown(const sil_bench *bench, double sign)
{
    double most = 0.0;
    for (int i = 0; i < bench->board.strings; i++) {
        for (int n = 1; n <= bench->board.frets; n++) {
            most = fmax(most, sign * bench->crowns.off[i][n]);
        }
    }
    return most;
}

static sil_fretwork judge_frets(const sil_bench *bench, double *level_depth)
{
    double wear = farthest_crown(bench, -1.0);
    *level_depth = 0.0;
    if (bench->standing.crowns_odd) {
        return SIL_FRETS_LEAVE; /* before they were looked at again */
    }
    if (sil_above(wear, bench->wear_limit)) {
        if (sil_below(bench->crown - wear, bench->least_crown)) {
            return SIL_FRETS_NEW;
        }
        *level_depth = wear;
        return SIL_FRETS_LEVEL;
    }
    return sil_above(farthest_crown(bench, 1.0), bench->wear_limit) ? SIL_FRETS_SEAT
                                                                    : SIL_FRETS_LEAVE;
}

/* The crowns as the frets stage leaves them: none off the line, or none but those within the limit.
 */
static void work_crowns(const sil_bench *bench, sil_fretwork work, sil_crowns *crowns)
{
    if (work != SIL_FRETS_SEAT) {
        *crowns = (sil_crowns){0};
        return;
    }
    for (int i = 0; i < bench->board.strings; i++) {
        for (int n = 1; n <= bench->board.frets; n++) {
            double *off = &crowns->off[i][n];
            *off = sil_above(*off, bench->wear_limit) ? 0.0 : *off;
        }
    }
}

static void work_frets(const sil_bench *bench, const sil_stages *stages, sil_fit *fit)
{
    if (stages->fretwork != SIL_FRETS_LEAVE) {
        work_crowns(bench, stages->fretwork, &fit->crowns);
    }
    for (int i = 0; i < bench->board.strings; i++) {
        fit->nut_height[i] += stages->level_depth;
        fit->saddle_height[i] += stages->level_depth;
    }
}

void sil_remedy_fit(const sil_bench *bench, sil_remedy remedy, sil_fit *fit)
{
    const sil_board *board = &bench->board;
    if (remedy == SIL_TO_RELIEF && sil_board_bends(board)) {
        turn_rod(bench, bench->rod_ratio, fit);
    }
    if (remedy == SIL_TO_CROWNS) {
        fit->crowns = (sil_crowns){0};
    }
    for (int i = 0; i < board->strings; i++) {
        if (remedy == SIL_TO_SLOT) {
            fit->nut_height[i] = core_wanted_slot(bench, fit, i);
        }
        if (remedy == SIL_TO_SADDLE) {
            fit->saddle_height[i] = core_wanted_saddle(bench, fit, i);
        }
    }
}

/* The height of a slot over the board's end there, less the fret height. */
static double stand(const sil_board *board, const sil_fit *fit, int i)
{
    return fit->nut_height[i] + sil_sag(board, fit->bend, board->nut_x[i]);
}

/* What is uncertain of each string: the gap that the nut is judged by, its cut, the finished slot,
 * and the cut at the saddle. */
typedef struct outcome {
    double first[SIL_STRINGS_MAX], deepen[SIL_STRINGS_MAX], stand[SIL_STRINGS_MAX],
        lower[SIL_STRINGS_MAX];
} outcome;

/* Runs all stages on nudged readings for these figures alone, on one state. What `held` judged
 * stands: the rod, the fretwork, the verdicts. */
static void run_nudged(const sil_bench *bench, const nudge *by, const sil_stages *held,
                       outcome *out)
{
    sil_fit fit;
    read_now(bench, by, &fit);
    if (held->changed[SIL_ROD]) {
        turn_rod(bench, bench->rod_ratio + by->rod_ratio, &fit);
    }
    work_frets(bench, held, &fit);
    for (int i = 0; i < bench->board.strings; i++) {
        double nut = core_wanted_nut(bench, held, &fit, i);
        out->first[i] = sil_first_gap(&bench->board, &fit, i, bench->targets.first_held);
        out->deepen[i] = fit.nut_height[i] - nut;
        if (held->shim_leaves[i]) {
            fit.nut_height[i] += held->shim;
        } else if (core_is_worked(held->nut[i])) {
            fit.nut_height[i] = nut + held->nut_raised[i];
        }
        out->stand[i] = stand(&bench->board, &fit, i);
        out->lower[i] = fit.saddle_height[i] - core_wanted_saddle(bench, &fit, i);
    }
}

/* Adds one uncertain input to the variance of each cut, and of the gap that the nut is judged by.
 * They are linear in it, so the change over a step of 1 is the slope. */
static void add_spread(const sil_bench *bench, const nudge *by, const double *u,
                       const outcome *whole, sil_stages *stages)
{
    outcome then;
    run_nudged(bench, by, stages, &then);
    for (int i = 0; i < bench->board.strings; i++) {
        double gap = (then.first[i] - whole->first[i]) * u[i];
        double deeper = (then.deepen[i] - whole->deepen[i]) * u[i];
        double higher = (then.stand[i] - whole->stand[i]) * u[i];
        double down = (then.lower[i] - whole->lower[i]) * u[i];
        stages->first_u[i] += gap * gap;
        stages->deepen_u[i] += deeper * deeper;
        stages->stand_u[i] += higher * higher;
        stages->lower_u[i] += down * down;
    }
}

/* The uncertainties of all cuts with the verdicts as they stand in stages. */
static void weigh(const sil_bench *bench, sil_stages *stages)
{
    int strings = bench->board.strings;
    double action[SIL_STRINGS_MAX], first[SIL_STRINGS_MAX], relief[SIL_STRINGS_MAX],
        rod[SIL_STRINGS_MAX];
    outcome whole;
    for (int i = 0; i < strings; i++) {
        action[i] = sil_action_u(bench, i);
        first[i] = sil_first_u(bench, i);
        relief[i] = sil_relief_u(bench);
        rod[i] = bench->rod_spread;
        stages->first_u[i] = stages->deepen_u[i] = 0.0;
        stages->stand_u[i] = stages->lower_u[i] = 0.0;
    }
    run_nudged(bench, &(nudge){0}, stages, &whole);
    add_spread(bench, &(nudge){.action = 1.0}, action, &whole, stages);
    add_spread(bench, &(nudge){.first = 1.0}, first, &whole, stages);
    add_spread(bench, &(nudge){.relief = 1.0}, relief, &whole, stages);
    if (stages->changed[SIL_ROD]) {
        add_spread(bench, &(nudge){.rod_ratio = 1.0}, rod, &whole, stages);
    }
    for (int i = 0; i < strings; i++) {
        stages->first_u[i] = sqrt(stages->first_u[i]);
        stages->deepen_u[i] = sqrt(stages->deepen_u[i]);
        stages->stand_u[i] = sqrt(stages->stand_u[i]);
        stages->lower_u[i] = sqrt(stages->lower_u[i]);
    }
}

/* How sure the relief is: it is linear in the gap that was read. */
static void judge_relief(const sil_bench *bench, sil_stages *stages)
{
    const sil_board *board = &bench->board;
    sil_relief_reading more = bench->relief;
    more.gap += 1.0;
    double relief = sil_relief(board, stages->fit[SIL_NOW].bend);
    double then = sil_relief(board, sil_bend_from_relief(board, &bench->crowns, &more));
    stages->relief_u = fabs(then - relief) * sil_relief_u(bench);
    stages->relief_side =
        sil_side_of(relief, bench->targets.relief, stages->relief_u, bench->standing.buzz_low);
    bool out = sil_side_out(stages->relief_side);
    stages->changed[SIL_ROD] = bench->rod_works && sil_board_bends(board) &&
                               (out || bench->straighten) && !bench->standing.relief_odd;
}

/* Runs all stages, each from a copy of the state the one before leaves. Each value is judged with
 * its own uncertainty, so the cuts are weighed before the nut is judged, and once more before the
 * saddle where the nut is worked. */
static void run(const sil_bench *bench, sil_stages *stages)
{
    sil_fit *fit = stages->fit;
    read_now(bench, &(nudge){0}, &fit[SIL_NOW]);
    judge_relief(bench, stages);

    fit[SIL_ROD] = fit[SIL_NOW];
    if (stages->changed[SIL_ROD]) {
        turn_rod(bench, bench->rod_ratio, &fit[SIL_ROD]);
    }

    fit[SIL_FRETS] = fit[SIL_ROD];
    work_frets(bench, stages, &fit[SIL_FRETS]);
    weigh(bench, stages);

    fit[SIL_NUT] = fit[SIL_FRETS];
    core_judge_nut(bench, stages);
    if (stages->changed[SIL_NUT]) {
        weigh(bench, stages);
    }

    fit[SIL_SADDLE] = fit[SIL_NUT];
    core_judge_saddle(bench, stages);
    for (int i = 0; i < bench->board.strings && bench->fresh.saddle; i++) {
        if (!sil_first_settles(&bench->gaps, i)) { /* how far off a nut is that was not read */
            stages->deepen[i] = stages->deepen_u[i] = stages->first_u[i] = SIL_UNKNOWN;
        }
    }
}

/* All but the crowns of each state, which are copied whole from the bench. */
static void clear(sil_stages *stages)
{
    stages->shim = SIL_UNKNOWN;
    for (int stage = SIL_NOW; stage < SIL_STAGES; stage++) {
        stages->changed[stage] = stages->forecast[stage] = false;
    }
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        stages->fit[SIL_NOW].nut_height[i] = stages->fit[SIL_NOW].saddle_height[i] = 0.0;
        stages->nut[i] = stages->saddle[i] = SIL_LEAVE;
        stages->deepen[i] = stages->deepen_u[i] = stages->stand_u[i] = 0.0;
        stages->lower[i] = stages->lower_u[i] = 0.0;
        stages->finish_slot[i] = stages->finish_saddle[i] = false;
        stages->nut_raised[i] = 0.0;
        stages->shim_leaves[i] = false;
        stages->filed_back[i] = SIL_UNKNOWN;
        stages->on_fret[i] = false;
        stages->slot_hold[i] = stages->slot_clean[i] = SIL_UNKNOWN;
        stages->first_u[i] = stages->action_u[i] = 0.0;
        stages->first_side[i] = stages->action_side[i] = SIL_WITHIN;
    }
}

void sil_stages_run(const sil_bench *bench, sil_stages *stages)
{
    clear(stages);
    stages->fretwork = judge_frets(bench, &stages->level_depth);
    stages->changed[SIL_FRETS] = stages->fretwork != SIL_FRETS_LEAVE;
    run(bench, stages);
    if (core_finish_slots(bench, stages)) {
        run(bench, stages); /* what is worked at the nut counts at the saddle */
    }
    if (core_finish_saddle(bench, stages)) {
        run(bench, stages);
    }
    bool awaited = stages->changed[SIL_ROD];
    stages->forecast[SIL_ROD] = awaited;
    awaited = awaited || stages->fretwork >= SIL_FRETS_LEVEL;
    for (int stage = SIL_FRETS; stage < SIL_STAGES; stage++) {
        stages->forecast[stage] = awaited;
    }
}
