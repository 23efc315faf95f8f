/* SPDX-License-Identifier: MIT */
/* The work in its order: now, rod, frets, nut, saddle. See docs/arithmetic.md, "The order of
 * work" and "How sure". */
#include "height.h"

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
}

static const double edge = 1e-6;

bool sil_below(double value, double low)
{
    return value < low - edge;
}

bool sil_above(double value, double high)
{
    return value > high + edge;
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

static double wanted_nut_height(const sil_bench *bench, const sil_fit *fit, int i)
{
    const sil_targets *targets = &bench->targets;
    if (targets->first_held != SIL_HOLD_OPEN) {
        return core_nut_from_held(&bench->board, fit, i, targets->first_held,
                                  targets->first[i].aim);
    }
    return core_nut_from_open(&bench->board, fit, i, targets->first[i].aim, 12,
                              targets->action[i].aim);
}

static sil_verdict judge(double value, sil_band band, double cut)
{
    if (!sil_known(value) || !sil_known(cut)) {
        return SIL_WAIT;
    }
    if (sil_above(value, band.high) && cut > 0.0) {
        return SIL_TAKE;
    }
    return sil_below(value, band.low) && cut < 0.0 ? SIL_RAISE : SIL_LEAVE;
}

static double wanted_saddle_height(const sil_bench *bench, const sil_fit *fit, int i)
{
    return core_saddle_from_action(&bench->board, fit, i, 12, bench->targets.action[i].aim,
                                   fit->nut_height[i]);
}

/* Whether a verdict puts a string to its aim. */
static bool is_worked(sil_verdict verdict)
{
    return verdict == SIL_TAKE || verdict == SIL_RAISE;
}

static void work_nut(const sil_bench *bench, sil_stages *stages)
{
    sil_fit *fit = &stages->fit[SIL_NUT];
    for (int i = 0; i < bench->board.strings; i++) {
        double gap = sil_first_gap(&bench->board, fit, i, bench->targets.first_held);
        double wanted = wanted_nut_height(bench, fit, i);
        stages->deepen[i] = fit->nut_height[i] - wanted;
        stages->nut[i] = judge(gap, bench->targets.first[i], stages->deepen[i]);
        if (bench->zero_fret && stages->nut[i] != SIL_WAIT) {
            stages->nut[i] = SIL_LEAVE; /* the nut slots only guide */
        }
        if (is_worked(stages->nut[i])) {
            fit->nut_height[i] = wanted;
            stages->changed[SIL_NUT] = true;
        }
    }
}

static void work_saddle(const sil_bench *bench, sil_stages *stages)
{
    sil_fit *fit = &stages->fit[SIL_SADDLE];
    for (int i = 0; i < bench->board.strings; i++) {
        double action = sil_action(&bench->board, fit, i, 12);
        double wanted = wanted_saddle_height(bench, fit, i);
        stages->lower[i] = fit->saddle_height[i] - wanted;
        stages->saddle[i] = judge(action, bench->targets.action[i], stages->lower[i]);
        if (is_worked(stages->saddle[i])) {
            fit->saddle_height[i] = wanted;
            stages->changed[SIL_SADDLE] = true;
        }
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
            fit->nut_height[i] = wanted_nut_height(bench, fit, i);
        }
        if (remedy == SIL_TO_SADDLE) {
            fit->saddle_height[i] = wanted_saddle_height(bench, fit, i);
        }
    }
}

/* Runs all stages, each from a copy of the state the one before leaves. */
static void run(const sil_bench *bench, sil_stages *stages)
{
    sil_fit *fit = stages->fit;
    read_now(bench, &(nudge){0}, &fit[SIL_NOW]);
    double relief = sil_relief(&bench->board, fit[SIL_NOW].bend);
    sil_band range = bench->targets.relief;

    fit[SIL_ROD] = fit[SIL_NOW];
    stages->changed[SIL_ROD] = bench->rod_works && sil_board_bends(&bench->board) &&
                               (sil_below(relief, range.low) || sil_above(relief, range.high));
    if (stages->changed[SIL_ROD]) {
        turn_rod(bench, bench->rod_ratio, &fit[SIL_ROD]);
    }

    fit[SIL_FRETS] = fit[SIL_ROD];
    work_frets(bench, stages, &fit[SIL_FRETS]);

    fit[SIL_NUT] = fit[SIL_FRETS];
    work_nut(bench, stages);

    fit[SIL_SADDLE] = fit[SIL_NUT];
    work_saddle(bench, stages);
}

/* The height of a slot over the board's end there, less the fret height. */
static double stand(const sil_board *board, const sil_fit *fit, int i)
{
    return fit->nut_height[i] + sil_sag(board, fit->bend, board->nut_x[i]);
}

/* What is uncertain of each string. */
typedef struct outcome {
    double deepen[SIL_STRINGS_MAX], stand[SIL_STRINGS_MAX], lower[SIL_STRINGS_MAX];
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
        double nut = wanted_nut_height(bench, &fit, i);
        out->deepen[i] = fit.nut_height[i] - nut;
        fit.nut_height[i] = is_worked(held->nut[i]) ? nut : fit.nut_height[i];
        out->stand[i] = stand(&bench->board, &fit, i);
        out->lower[i] = fit.saddle_height[i] - wanted_saddle_height(bench, &fit, i);
    }
}

/* Adds one uncertain input to the variance of each cut. Cuts are linear in it, so the change over a
 * step of 1 is the slope. */
static void add_spread(const sil_bench *bench, const nudge *by, double u, sil_stages *stages)
{
    outcome then;
    run_nudged(bench, by, stages, &then);
    for (int i = 0; i < bench->board.strings; i++) {
        double deeper = (then.deepen[i] - stages->deepen[i]) * u;
        double higher = (then.stand[i] - stand(&bench->board, &stages->fit[SIL_NUT], i)) * u;
        double down = (then.lower[i] - stages->lower[i]) * u;
        stages->deepen_u[i] += deeper * deeper;
        stages->stand_u[i] += higher * higher;
        stages->lower_u[i] += down * down;
    }
}

double sil_rectangular(double half_width)
{
    return half_width / sqrt(3.0);
}

/* For stages that start with no uncertainty. */
static void weigh(const sil_bench *bench, sil_stages *stages)
{
    const sil_tools *tools = &bench->tools;
    add_spread(bench, &(nudge){.action = 1.0}, sil_rectangular(tools->action), stages);
    add_spread(bench, &(nudge){.first = 1.0}, sil_rectangular(tools->first), stages);
    add_spread(bench, &(nudge){.relief = 1.0}, sil_rectangular(tools->relief), stages);
    if (stages->changed[SIL_ROD]) {
        add_spread(bench, &(nudge){.rod_ratio = 1.0}, bench->rod_spread, stages);
    }
    for (int i = 0; i < bench->board.strings; i++) {
        stages->deepen_u[i] = sqrt(stages->deepen_u[i]);
        stages->stand_u[i] = sqrt(stages->stand_u[i]);
        stages->lower_u[i] = sqrt(stages->lower_u[i]);
    }
}

/* All but the crowns of each state, which are copied whole from the bench. */
static void clear(sil_stages *stages)
{
    for (int stage = SIL_NOW; stage < SIL_STAGES; stage++) {
        stages->changed[stage] = stages->forecast[stage] = false;
    }
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        stages->fit[SIL_NOW].nut_height[i] = stages->fit[SIL_NOW].saddle_height[i] = 0.0;
        stages->nut[i] = stages->saddle[i] = SIL_LEAVE;
        stages->deepen[i] = stages->deepen_u[i] = stages->stand_u[i] = 0.0;
        stages->lower[i] = stages->lower_u[i] = 0.0;
    }
}

void sil_stages_run(const sil_bench *bench, sil_stages *stages)
{
    clear(stages);
    stages->fretwork = judge_frets(bench, &stages->level_depth);
    stages->changed[SIL_FRETS] = stages->fretwork != SIL_FRETS_LEAVE;
    run(bench, stages);
    weigh(bench, stages);
    bool awaited = stages->changed[SIL_ROD];
    stages->forecast[SIL_ROD] = awaited;
    awaited = awaited || stages->fretwork >= SIL_FRETS_LEVEL;
    for (int stage = SIL_FRETS; stage < SIL_STAGES; stage++) {
        stages->forecast[stage] = awaited;
    }
}

double sil_first_pass(double cut, double to_low, double u, double guard)
{
    if (!sil_known(cut) || !sil_known(to_low) || !sil_known(u)) {
        return SIL_UNKNOWN;
    }
    return fmax(0.0, fmin(cut, to_low - guard * u));
}

double sil_shim_thickness(double rise, double step)
{
    /* A rise that is a whole number of steps up to rounding does not take another step. */
    return ceil(rise / step - 1e-9) * step;
}

double sil_nut_to_low(const sil_bench *bench, const sil_stages *stages, int string)
{
    const sil_board *board = &bench->board;
    sil_hold hold = bench->targets.first_held;
    double over = sil_first_gap(board, &stages->fit[SIL_FRETS], string, hold) -
                  bench->targets.first[string].low;
    double share = hold == SIL_HOLD_OPEN ? board->fret_x[string][1] / board->saddle_x[string]
                                         : core_held_share(board, string, hold);
    return over / (1.0 - share);
}

double sil_saddle_to_low(const sil_bench *bench, const sil_stages *stages, int string)
{
    double action = sil_action(&bench->board, &stages->fit[SIL_NUT], string, 12);
    return (action - bench->targets.action[string].low) / sil_leverage(&bench->board, string);
}
