/* SPDX-License-Identifier: MIT */
/* The nut. See docs/arithmetic.md, "The nut". */
#include "fresh.h"
#include "height.h"
#include "shim.h"

/* Steps from each string to the next. Inside a course it is the distance of the pair. The rest of
 * the width is shared evenly between courses, plus something for each string (half its gauge, or
 * nothing). */
static double share_steps(const sil_courses *courses, double treble, double bass,
                          const double *half, double *z)
{
    int strings = courses->strings;
    int between = courses->course[strings - 1];
    double left = treble - bass;
    for (int i = 1; i < strings; i++) {
        bool paired = courses->course[i] == courses->course[i - 1];
        left -= paired ? courses->pair : half[i - 1] + half[i];
    }
    double step = between > 0 ? left / between : SIL_UNKNOWN;
    /* A single course goes in the middle; a single string goes where its distance to the edge puts
     * it. */
    z[0] = between > 0 || strings == 1 ? treble : treble - left / 2.0;
    for (int i = 1; i < strings; i++) {
        bool paired = courses->course[i] == courses->course[i - 1];
        z[i] = z[i - 1] - (paired ? courses->pair : half[i - 1] + step + half[i]);
    }
    return step;
}

void sil_nut_centres(const sil_courses *courses, const double *gauge, double width,
                     double edge_treble, double edge_bass, sil_spacing spacing, double *nut_z,
                     double *gap)
{
    int last = courses->strings - 1;
    double treble = width / 2.0 - edge_treble - gauge[0] / 2.0;
    double bass = -width / 2.0 + edge_bass + gauge[last] / 2.0;
    double half[SIL_STRINGS_MAX] = {0};
    for (int i = 0; i <= last && spacing == SIL_EQUAL_GAP; i++) {
        half[i] = gauge[i] / 2.0;
    }
    double step = share_steps(courses, treble, bass, half, nut_z);
    *gap = spacing == SIL_EQUAL_GAP ? step : SIL_UNKNOWN;
}

void sil_saddle_centres(const sil_courses *courses, double spread, double *saddle_z)
{
    static const double nothing[SIL_STRINGS_MAX] = {0};
    int last = courses->strings - 1;
    double half = last > 0 ? spread / 2.0 : 0.0;
    share_steps(courses, half, -half, nothing, saddle_z);
}

/* A file of 0.43 is the one for a string of 0.4318: both are named by a round size, mm. */
static const double same_size = 0.01;

/* In a slot wider than wanted by more than this the string wanders and sings, mm: common practice, no
 * source. */
static const double too_wide = 0.1;

double sil_file_width(double gauge, double allowance, const double *files, int count)
{
    double wanted = gauge + allowance;
    double best = SIL_UNKNOWN;
    for (int i = 0; i < count; i++) {
        if (files[i] < gauge - same_size - 1e-9 || files[i] > wanted + too_wide + 1e-9) {
            continue;
        }
        /* Files and gauges are given in hundredths, so two that are equally near differ only by
         * rounding. */
        double nearer = fabs(best - wanted) - fabs(files[i] - wanted);
        if (!sil_known(best) || nearer > 1e-9 || (nearer > -1e-9 && files[i] < best)) {
            best = files[i];
        }
    }
    return sil_known(best) ? best : wanted;
}

static int count_verdicts(const sil_nut_work *work, int strings, sil_verdict verdict)
{
    int count = 0;
    for (int i = 0; i < strings; i++) {
        count += work->verdict[i] == verdict;
    }
    return count;
}

/* As many slots with a string on its fret are filled; with more, a new nut is less work. */
enum { most_filled = 2 };

static int count_on_fret(const sil_stages *stages, int strings)
{
    int count = 0;
    for (int i = 0; i < strings; i++) {
        count += stages->on_fret[i] && stages->nut[i] == SIL_RAISE;
    }
    return count;
}

double core_slot_leave(const sil_bench *bench, double over_low, double u)
{
    return fmax(bench->leave_slot,
                SIL_GUARD_ONE * u - over_low); /* fmax leaves out what is not known */
}

double core_aim_over_low(const sil_bench *bench, int string)
{
    const sil_board *board = &bench->board;
    int h = core_far_fret(&bench->targets);
    double share = bench->targets.first_held == SIL_HOLD_OPEN
                       ? board->fret_x[string][1] / board->saddle_x[string]
                       : board->fret_x[string][1] / board->fret_x[string][h];
    return (bench->targets.first[string].aim - bench->targets.first[string].low) / (1.0 - share);
}

/* What stays on at first of the slots that are cut from above, because the nut is made anew or the slot
 * is filled: the feelers alone do not keep them in their ranges. */
static void leave_a_stroke(const sil_bench *bench, const sil_stages *stages, int strings,
                           sil_nut_work *work)
{
    for (int i = 0; i < strings; i++) {
        bool anew = work->remedy == SIL_NUT_REPLACE ||
                    (work->remedy == SIL_NUT_FILL && work->verdict[i] == SIL_RAISE);
        double over_low = work->verdict[i] == SIL_LEAVE ? sil_nut_to_low(bench, stages, i)
                                                        : core_aim_over_low(bench, i);
        work->leave[i] = anew ? core_slot_leave(bench, over_low, work->stack_u[i]) : 0.0;
        if (stages->filed_back[i] > 0.0) {
            double own = work->verdict[i] == SIL_RAISE ? stages->deepen[i] : 0.0,
                   back = stages->shim + own;
            work->leave[i] = back - stages->filed_back[i];
        }
    }
}

static void size_slot(const sil_bench *bench, const sil_stages *stages, const sil_nut_given *make,
                      int i, sil_nut_work *work)
{
    const sil_board *board = &bench->board;
    const sil_fit *fit = &stages->fit[SIL_NUT];
    double u = stages->deepen_u[i];
    double to_low = sil_nut_to_low(bench, stages, i);
    double leave = bench->finish_slot[i] ? 0.0 : bench->leave_slot;
    double pass = sil_first_stroke(stages->deepen[i] - stages->nut_raised[i], leave, to_low, u,
                                   SIL_GUARD_ONE);
    /* Not into the string's own buzz; where nothing limits it, that is unknown. */
    work->first_pass[i] = work->verdict[i] == SIL_TAKE ? fmin(pass, stages->slot_hold[i]) : 0.0;
    /* The board's surface at the nut, on the centre line, in the frame of the crowns. */
    double crown = bench->crown - stages->level_depth;
    double surface = -sil_sag(board, fit->bend, board->nut_x[i]) - crown;
    double over_surface = fit->nut_height[i] - surface;
    work->floor[i] = make->seat_to_board + over_surface;
    work->stack[i] = over_surface + board->drop[i][0];
    work->stack_u[i] = sil_known(work->stack[i])
                           ? hypot(stages->stand_u[i], sil_rectangular(make->caliper))
                           : SIL_UNKNOWN;
    work->stack_bend[i] = SIL_UNKNOWN;
    work->depth[i] = make->bury[i] * make->gauge[i];
    if (bench->zero_fret) {
        /* With a zero fret the string lies on the fret, not on a slot's floor. */
        work->floor[i] = work->stack[i] = work->stack_u[i] = work->depth[i] = SIL_UNKNOWN;
    }
    work->top = fmax(work->top, work->floor[i] + work->depth[i]);
}

static void await_slot(int i, sil_nut_work *work)
{
    work->verdict[i] = SIL_WAIT;
    work->first_pass[i] = SIL_UNKNOWN;
    work->floor[i] = work->stack[i] = work->depth[i] = SIL_UNKNOWN;
    work->stack_u[i] = work->stack_bend[i] = SIL_UNKNOWN;
    work->stack_moved[i] = work->stack_stays[i] = false;
    work->leave[i] = 0.0;
}

void sil_nut_await(int strings, sil_nut_work *work)
{
    for (int i = 0; i < strings; i++) {
        await_slot(i, work);
    }
    work->remedy = SIL_NUT_WAIT;
    work->shim = work->top = SIL_UNKNOWN;
}

double core_fall_angle_deg(const sil_nut_given *make)
{
    double fall = make->head_angle_deg * make->fall_share;
    return sil_known(fall) ? fmin(10.0, fmax(3.0, fall)) : SIL_UNKNOWN;
}

/* A nut that is to be replaced is neither filed nor shimmed. */
static void drop_old(int strings, sil_nut_work *work)
{
    work->shim = SIL_UNKNOWN;
    for (int i = 0; i < strings; i++) {
        work->first_pass[i] = SIL_UNKNOWN;
    }
}

void sil_nut_cut(const sil_bench *bench, const sil_stages *stages, const sil_nut_given *make,
                 sil_nut_work *work)
{
    int strings = bench->board.strings;
    *work = (sil_nut_work){.shim = SIL_UNKNOWN, .top = SIL_UNKNOWN};
    work->fall_angle_deg = core_fall_angle_deg(make);
    for (int i = 0; i < strings; i++) {
        work->verdict[i] = stages->nut[i];
    }
    int raised = count_verdicts(work, strings, SIL_RAISE), on_fret = count_on_fret(stages, strings);
    int unread = count_verdicts(work, strings, SIL_WAIT);
    if (unread > 0 && (raised > on_fret || on_fret > most_filled)) {
        /* Whether to fill or to shim depends on the slots that were not read. */
        sil_nut_await(strings, work);
        return;
    }
    for (int i = 0; i < strings; i++) {
        if (work->verdict[i] == SIL_WAIT) {
            await_slot(i, work);
        } else {
            size_slot(bench, stages, make, i, work);
        }
    }
    if (on_fret > 0) {
        /* By how much they must rise is not known, so no shim can be chosen. */
        work->remedy = raised > most_filled ? SIL_NUT_REPLACE : SIL_NUT_FILL;
    } else if (raised == 1 || core_fills_two(bench, stages)) {
        work->remedy = SIL_NUT_FILL;
    } else if (raised > 1) {
        work->shim = stages->shim;
        work->remedy = sil_known(work->shim) ? SIL_NUT_SHIM : SIL_NUT_REPLACE;
    } else if (count_verdicts(work, strings, SIL_TAKE) > 0) {
        work->remedy = SIL_NUT_FILE;
    } else {
        work->remedy = unread > 0 ? SIL_NUT_WAIT : SIL_NUT_NONE;
    }
    if (work->remedy == SIL_NUT_REPLACE) {
        drop_old(strings, work);
    }
    leave_a_stroke(bench, stages, strings, work);
    if (unread > 0 || bench->zero_fret) {
        work->top = SIL_UNKNOWN;
    }
}
