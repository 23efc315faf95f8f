/* SPDX-License-Identifier: MIT */
/* A bow of the neck that its rod cannot put right: what waits for it, what it costs where it is left
 * as it is, and how far a saddle goes short of work on the neck. See docs/arithmetic.md, "A bow that
 * no rod takes out" and "Half a cure". */
#include "plan.h"

static bool has_rod(const sil_instrument *it)
{
    return it->rod == SIL_ROD_ONE_WAY || it->rod == SIL_ROD_TWO_WAY;
}

/* Whether the relief was read and is past one edge of its range, and no rod works on it. */
static bool past_the_rod(const sil_plan *plan, sil_side side)
{
    return sil_board_bends(&plan->bench.board) && !plan->bench.fresh.relief_stands &&
           sil_known(plan->stages.fit[SIL_NOW].bend) && plan->stages.relief_side == side &&
           !plan->bench.rod_works && plan->job->instrument.rod != SIL_ROD_NOT_GIVEN;
}

bool plan_rod_first(const sil_plan *plan)
{
    const sil_instrument *it = &plan->job->instrument;
    return past_the_rod(plan, SIL_OVER) && has_rod(it) && it->rod_state != SIL_ROD_ACCEPTED;
}

bool plan_back_bowed(const sil_plan *plan)
{
    return past_the_rod(plan, SIL_UNDER) && plan->bench.relief.gap < 0.0;
}

/* Whether a string is to come down and every one was read; then something comes off a saddle without
 * screws, or one that is lower is made. */
static bool would_lower(const sil_plan *plan)
{
    bool lowers = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan->stages.saddle[i] == SIL_WAIT) {
            return false;
        }
        lowers = lowers || plan->stages.saddle[i] == SIL_TAKE;
    }
    return lowers && sil_working_cuts(plan->saddle.working);
}

bool plan_bow_holds_saddle(const sil_plan *plan)
{
    bool copies = plan->bench.fresh.saddle && sil_known(plan->job->saddle.old[0]);
    return (plan_rod_first(plan) || plan_back_bowed(plan)) && !copies &&
           (would_lower(plan) || plan_files_at_height(plan));
}

bool plan_bow_holds_nut(const sil_plan *plan)
{
    bool files = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        files = files || plan->stages.nut[i] == SIL_TAKE || plan_zero_fret_high(plan, i);
    }
    return plan_back_bowed(plan) && files && !plan->bench.fresh.nut;
}

/* How much lower a string would be over fret 12 with the relief at its target. Only the change
 * counts, so the heights may be anything. */
static double costs(const sil_plan *plan, int i)
{
    const sil_board *board = &plan->bench.board;
    sil_fit fit = plan->stages.fit[SIL_NOW];
    fit.nut_height[i] = fit.saddle_height[i] = 0.0;
    double before = sil_action(board, &fit, i, 12);
    sil_neck_moves(board, sil_bend(board, plan->bench.targets.relief.aim), plan->bench.rod_ratio,
                   &fit);
    return before - sil_action(board, &fit, i, 12);
}

void plan_accept_bow(sil_plan *plan)
{
    plan->neck.accepted = SIL_UNKNOWN;
    if (!past_the_rod(plan, SIL_OVER) || plan_rod_first(plan) || plan_bowed_for_good(plan)) {
        return;
    }
    double most = 0.0;
    for (int i = 0; i < plan->job->string_count; i++) {
        most = fmax(most, costs(plan, i));
    }
    plan->neck.accepted = most;
}

/* Less than this at fret 12 is not worth what the saddle loses by it, mm: common practice, no
 * source. */
static const double least_gained = 0.2;

/* How far down a string may come short of work on the neck: no farther than its target, and while the
 * saddle stands out by enough. One that is left stays in its range. */
static double half_cap(const sil_plan *plan, int i)
{
    const sil_stages *stages = &plan->stages;
    double down = stages->saddle[i] == SIL_TAKE ? stages->lower[i]
                                                : sil_saddle_to_low(&plan->bench, stages, i) -
                                                      SIL_GUARD_ONE * stages->lower_u[i];
    return fmax(0.0, fmin(down, plan->saddle.room[i]));
}

/* What comes off under each string: a straight line off the bottom, or of a glued saddle string by
 * string off the top. False where strings are to rise or were not read. */
static bool half_off(const sil_plan *plan, double *off)
{
    int strings = plan->job->string_count;
    const double *z = plan->bench.board.saddle_z;
    double cap[SIL_STRINGS_MAX];
    bool wanted[SIL_STRINGS_MAX];
    for (int i = 0; i < strings; i++) {
        sil_verdict verdict = plan->stages.saddle[i];
        if (verdict != SIL_TAKE && verdict != SIL_LEAVE) {
            return false;
        }
        wanted[i] = verdict == SIL_TAKE;
        cap[i] = half_cap(plan, i);
    }
    sil_line line = sil_saddle_line(strings, z, cap, wanted, plan->job->saddle.length / 2.0, NULL);
    for (int i = 0; i < strings; i++) {
        double top = wanted[i] ? cap[i] : 0.0;
        off[i] = plan->saddle.working == SIL_WORKING_BASE ? sil_line_at(line, z[i]) : top;
    }
    return true;
}

void plan_half_cure(sil_plan *plan)
{
    const sil_job_saddle *saddle = &plan->job->saddle;
    sil_neck *neck = &plan->neck;
    int strings = plan->job->string_count;
    double off[SIL_STRINGS_MAX] = {0}, most = 0.0;
    bool offered = plan_sinks_too_low(plan) && sil_working_in_slot(plan->saddle.working) &&
                   !plan->bench.fresh.saddle && half_off(plan, off);
    for (int i = 0; i < strings; i++) {
        most = fmax(most, off[i] * sil_leverage(&plan->bench.board, i));
    }
    offered = offered && !sil_below(most, least_gained);
    for (int i = 0; i < strings; i++) {
        double action = sil_action(&plan->bench.board, &plan->stages.fit[SIL_NUT], i, 12);
        double out = plan->saddle.stands[i] - off[i];
        double angle = atan2(out - saddle->exit_height, saddle->pin_distance[i]);
        neck->half_action[i] =
            offered ? action - off[i] * sil_leverage(&plan->bench.board, i) : SIL_UNKNOWN;
        neck->half_out[i] = offered ? out : SIL_UNKNOWN;
        neck->half_break_deg[i] = offered ? angle * 180.0 / 3.14159265358979323846 : SIL_UNKNOWN;
    }
}
