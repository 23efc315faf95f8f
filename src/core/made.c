/* SPDX-License-Identifier: MIT */
/* The work at a nut and a saddle made from a blank. See docs/arithmetic.md, "A new nut" and "A new
 * saddle". */
#include "clean.h"
#include "fresh.h"
#include "height.h"
#include "room.h"

static void make_slot(const sil_bench *bench, const sil_stages *stages, const sil_nut_given *make,
                      int i, sil_nut_work *work)
{
    const sil_board *board = &bench->board;
    const sil_fit *fit = &stages->fit[SIL_NUT];
    double crown = bench->crown - stages->level_depth;
    if (bench->fresh.copied) {
        work->floor[i] = make->copy[i];
        work->stack[i] = bench->fresh.copy_over[i] + board->drop[i][0];
        work->stack_u[i] = sil_rectangular(make->caliper);
        work->leave[i] = bench->leave_slot;
    } else {
        work->stack[i] = crown + sil_new_slot_over(bench, fit, i) + stages->nut_raised[i];
        work->floor[i] = make->seat_to_board + work->stack[i] - board->drop[i][0];
        work->stack_u[i] = hypot(stages->stand_u[i], sil_rectangular(make->caliper));
        work->leave[i] = core_slot_leave(bench, core_aim_over_low(bench, i), work->stack_u[i]);
    }
    work->stack_u[i] = sil_known(work->stack[i]) ? work->stack_u[i] : SIL_UNKNOWN;
    work->stack_bend[i] = SIL_UNKNOWN;
    work->first_pass[i] = SIL_UNKNOWN;
    work->depth[i] = make->bury[i] * make->gauge[i];
    work->top = fmax(work->top, work->floor[i] + work->depth[i]);
}

void sil_nut_make(const sil_bench *bench, const sil_stages *stages, const sil_nut_given *make,
                  sil_nut_work *work)
{
    *work = (sil_nut_work){.remedy = SIL_NUT_REPLACE, .shim = SIL_UNKNOWN, .top = SIL_UNKNOWN};
    work->fall_angle_deg = core_fall_angle_deg(make);
    for (int i = 0; i < bench->board.strings; i++) {
        work->verdict[i] = SIL_TAKE;
        make_slot(bench, stages, make, i, work);
    }
}

/* Height of the saddle's top over the chord that gives the target action, with the nut at a height
 * that follows the bend or stays. */
static double wanted_top(const sil_bench *bench, const sil_fit *fit, int i)
{
    return core_saddle_from_action(&bench->board, fit, i, 12, bench->targets.action[i].aim,
                                   fit->nut_height[i]);
}

/* Where a straightedge on the crowns comes to over the saddle. It is read at the outer strings, and
 * the bottom of the slot runs straight between them. */
static double edge_over(const sil_board *board, double bend, int i)
{
    const double *z = board->saddle_z;
    int last = board->strings - 1;
    double treble = sil_edge_at_saddle(board, bend, sil_saddle_axis_x(board, 0));
    double bass = sil_edge_at_saddle(board, bend, sil_saddle_axis_x(board, last));
    return last > 0 ? treble + (bass - treble) * (z[0] - z[i]) / (z[0] - z[last]) : treble;
}

/* Height of the finished top over the bottom that the bridge's top gives, less its part that does
 * not change with the bend. */
static double over_edge(const sil_bench *bench, const sil_stages *stages, double bend, int i)
{
    sil_fit fit = stages->fit[SIL_NUT];
    fit.bend = bend;
    if (bench->fresh.nut || !sil_first_settles(&bench->gaps, i)) {
        fit.nut_height[i] = core_new_nut_height(bench, &fit, stages->level_depth, i);
    }
    return wanted_top(bench, &fit, i) - edge_over(&bench->board, bend, i);
}

/* How sure the finished height is where it follows from the bridge's top: by the straightedge, the
 * relief and, where the nut stays, its gap. */
static double edge_u(const sil_bench *bench, const sil_stages *stages, int i)
{
    const sil_board *board = &bench->board;
    double bend = stages->fit[SIL_NUT].bend, step = sil_bend(board, stages->relief_u);
    double bowed = over_edge(bench, stages, bend + step, i) - over_edge(bench, stages, bend, i);
    double gap = sil_first_settles(&bench->gaps, i) ? sil_first_u(bench, i)
                                                    : sil_rectangular(SIL_FIRST_STANDS);
    double share = board->fret_x[i][1] / board->fret_x[i][board->frets < 3 ? 2 : 3];
    double t = sil_leverage(board, i);
    double nut = bench->fresh.nut ? 0.0 : gap / (1.0 - share) * (1.0 - t) / t;
    return hypot(hypot(bowed, nut), sil_rectangular(bench->tools.caliper));
}

/* What stays on at first; by_old: the heights follow from those of the old one. */
static double stays_on(const sil_bench *bench, const sil_stages *stages, bool by_old, int i)
{
    const sil_band *action = &bench->targets.action[i];
    double u = by_old ? hypot(stages->lower_u[i], sil_rectangular(bench->tools.caliper))
                      : edge_u(bench, stages, i);
    return core_saddle_leave(bench, action->aim - action->low, u, i);
}

/* How much higher than its target action asks for a string's place is made, so that the saddle stands
 * out by enough; as far as its range goes. Fills missing, aim_short and stops of work, from how far
 * the saddle stands out at the target. */
static double stand_out(const sil_bench *bench, const sil_saddle_given *make, sil_saddle_work *work,
                        int i)
{
    const sil_band *action = &bench->targets.action[i];
    double up = (action->high - action->aim) / sil_leverage(&bench->board, i);
    double spare = make->copied ? 0.0 : up, out = work->protrusion[i];
    double enough = core_least_out(make, i), least = make->least_protrusion;
    work->missing[i] = sil_below(out + spare, least) ? least - out - spare : 0.0;
    work->stops = work->stops || work->missing[i] > 0.0;
    bool raised = !make->copied && sil_below(out, enough);
    work->aim_short[i] = raised;
    return raised ? fmin(enough - out, spare) : 0.0;
}

/* Keeps a string from its own buzz: it is made higher by what is returned, as far as its range goes;
 * past that, it is to be chosen first what gives way, and hold is 0. */
static double keep_clean(const sil_bench *bench, const sil_stages *stages, double height, int i,
                         sil_saddle_work *work)
{
    double over = core_clean_saddle(bench, &stages->fit[SIL_NUT], i) - height;
    if (!sil_above(over, 0.0)) {
        return 0.0;
    }
    double at_aim = stages->fit[SIL_SADDLE].saddle_height[i];
    const sil_band *action = &bench->targets.action[i];
    work->clean[i] = action->aim + (height + over - at_aim) * sil_leverage(&bench->board, i);
    if (sil_above(work->clean[i], action->high)) {
        work->hold[i] = 0.0;
        return 0.0;
    }
    work->aim_raised[i] = true;
    work->aim_short[i] = false;
    return over;
}

/* The heights that the target asks for, or those to copy, and what is not known yet. */
static void begin_string(const sil_bench *bench, const sil_saddle_given *make,
                         const sil_stages *stages, double seat, int i, sil_saddle_work *work)
{
    bool by_old = sil_known(work->present[i]);
    work->height[i] =
        make->copied ? make->copy[i] : stages->fit[SIL_SADDLE].saddle_height[i] - seat;
    work->leave[i] = make->copied ? bench->leave_saddle : stays_on(bench, stages, by_old, i);
    work->protrusion[i] = work->height[i] - (make->slot_depth - make->pickup);
    work->verdict[i] = sil_known(work->height[i]) ? SIL_TAKE : SIL_WAIT;
    work->first_pass[i] = work->turns[i] = work->room[i] = SIL_UNKNOWN;
    work->hold[i] = work->clean[i] = work->to_clean[i] = SIL_UNKNOWN;
}

/* Raises a string's place where it must be, and says where it then stands. */
static void end_string(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                       double up, int i, sil_saddle_work *work)
{
    double at_aim = stages->fit[SIL_SADDLE].saddle_height[i];
    double more = make->copied ? 0.0 : keep_clean(bench, stages, at_aim + up, i, work);
    work->height[i] += up + more;
    work->protrusion[i] += up + more;
}

void sil_saddle_make(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                     sil_saddle_work *work)
{
    int strings = bench->board.strings;
    double seat[SIL_STRINGS_MAX], up[SIL_STRINGS_MAX];
    sil_fit *fit = &stages->fit[SIL_SADDLE];
    bool waits = false;
    *work = (sil_saddle_work){.working = make->working,
                              .remedy = SIL_SADDLE_REPLACE,
                              .shim = SIL_UNKNOWN,
                              .top_radius = SIL_UNKNOWN,
                              .post = {SIL_UNKNOWN, SIL_UNKNOWN},
                              .post_turns = {SIL_UNKNOWN, SIL_UNKNOWN}};
    core_saddle_seat(bench, make, stages, work, seat);
    for (int i = 0; i < strings; i++) {
        work->present[i] = stages->fit[SIL_NOW].saddle_height[i] - seat[i];
        begin_string(bench, make, stages, seat[i], i, work);
        up[i] = stand_out(bench, make, work, i);
        waits = waits || work->verdict[i] == SIL_WAIT;
    }
    for (int i = 0; i < strings; i++) {
        work->aim_short[i] = work->aim_short[i] && !work->stops;
        if (!work->stops) { /* otherwise it stays a forecast, which shows what is missing */
            end_string(bench, make, stages, up[i], i, work);
        }
        fit->saddle_height[i] =
            sil_known(work->height[i]) ? seat[i] + work->height[i] : fit->saddle_height[i];
        work->goal[i] = stages->fit[SIL_NUT].saddle_height[i] - fit->saddle_height[i];
        core_stand_in_slot(make, work, i);
    }
    work->top_radius = sil_top_radius(strings, bench->board.saddle_z, work->height);
    if (waits) {
        sil_saddle_await(strings, work);
    }
}
