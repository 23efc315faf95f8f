/* SPDX-License-Identifier: MIT */
/* Why a saddle cannot come down far enough, and how far the neck would have to be tilted back. See
 * docs/arithmetic.md, "The neck's angle". */
#include "plan.h"

/* The string that has most too little room. */
static int shortest(const sil_plan *plan)
{
    int worst = 0;
    for (int i = 1; i < plan->job->string_count; i++) {
        worst = plan->saddle.missing[i] > plan->saddle.missing[worst] ? i : worst;
    }
    return worst;
}

/* How much farther down a string would come with the relief at its target, mm at the saddle; 0 where
 * it is no farther over its target than it may be misread. */
static double bow_costs(const sil_plan *plan, int i)
{
    const sil_bench *bench = &plan->bench;
    const sil_board *board = &bench->board;
    double aim = bench->targets.relief.aim;
    if (!sil_board_bends(board) || !sil_above(sil_relief_now(plan), aim + bench->tools.relief)) {
        return 0.0;
    }
    /* Only the change counts; the string of a saddle made from a blank may not have been read. */
    sil_fit straight = plan->stages.fit[bench->fresh.saddle ? SIL_SADDLE : SIL_NUT];
    double before = sil_action(board, &straight, i, 12);
    sil_neck_moves(board, sil_bend(board, aim), bench->rod_ratio, &straight);
    return (before - sil_action(board, &straight, i, 12)) / sil_leverage(board, i);
}

/* The same where no rod can take the bow out; 0 where it is not known whether there is one. */
static double bow_explains(const sil_plan *plan, int i)
{
    bool for_good = !plan->bench.rod_works && plan->job->instrument.rod != SIL_ROD_NOT_GIVEN;
    return for_good ? bow_costs(plan, i) : 0.0;
}

bool plan_straightens(const sil_plan *plan)
{
    const sil_stages *stages = &plan->stages;
    bool turns = plan->bench.rod_works && !plan->bench.standing.relief_odd;
    if (!turns || stages->changed[SIL_ROD] || !plan_sinks_too_low(plan)) {
        return false;
    }
    int worst = shortest(plan);
    return bow_costs(plan, worst) >= plan->saddle.missing[worst];
}

static sil_short_cause cause_of(const sil_plan *plan, double explains, double missing)
{
    if (explains > 0.0) {
        return explains >= missing ? SIL_SHORT_RELIEF : SIL_SHORT_BOTH;
    }
    return sil_working_floats(plan->saddle.working) ? SIL_SHORT_BRIDGE : SIL_SHORT_ANGLE;
}

/* A neck is set for years, so that the saddle then stands well out, or the screws are in the middle
 * of their travel. Where it is not known how far they go up, it is only what is missing. */
static double wants(const sil_plan *plan, int i)
{
    const sil_job_saddle *saddle = &plan->job->saddle;
    const sil_limits *limits = &plan->job->limits;
    double middle = (saddle->travel_up + saddle->travel) / 2.0;
    double good =
        fmax(limits->good_protrusion, limits->least_protrusion) - limits->least_protrusion;
    bool in_slot = sil_working_in_slot(plan->saddle.working);
    double more = in_slot ? good : sil_known(middle) ? middle : 0.0;
    return plan->neck.short_by[i] + more;
}

static void tilt(sil_plan *plan)
{
    const sil_instrument *it = &plan->job->instrument;
    const sil_board *board = &plan->bench.board;
    sil_neck *neck = &plan->neck;
    neck->lift = neck->shim = neck->heel = neck->degrees = neck->explains = SIL_UNKNOWN;
    neck->string = -1;
    neck->cause = SIL_NOT_SHORT;
    if (!plan_sinks_too_low(plan)) {
        return;
    }
    int worst = shortest(plan);
    double explains = bow_explains(plan, worst);
    neck->cause = cause_of(plan, explains, plan->saddle.missing[worst]);
    neck->explains = explains > 0.0 ? explains : SIL_UNKNOWN;
    if (neck->cause == SIL_SHORT_RELIEF || neck->cause == SIL_SHORT_BRIDGE) {
        return;
    }
    for (int i = 0; i < board->strings; i++) {
        double lift = wants(plan, i);
        if (lift > 0.0 && !(lift <= neck->lift)) {
            neck->lift = lift;
            neck->string = i;
        }
    }
    double saddle = sil_saddle_axis_x(board, neck->string);
    double join = board->spine_x[board->join];
    double pocket = sil_known(it->pocket_at) ? it->pocket_at : join;
    double from = sil_known(it->pocket) ? pocket : join;
    neck->shim = it->pocket * neck->lift / (saddle - pocket);
    neck->heel = it->heel * neck->lift / (saddle - join);
    neck->degrees = atan2(neck->lift, saddle - from) * 180.0 / 3.14159265358979323846;
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

/* See docs/arithmetic.md, "Half a cure". */
static void half_cure(sil_plan *plan)
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
        double angle = sil_break_angle(out - saddle->exit_height, saddle->pin_distance[i]);
        neck->half_action[i] =
            offered ? action - off[i] * sil_leverage(&plan->bench.board, i) : SIL_UNKNOWN;
        neck->half_out[i] = offered ? out : SIL_UNKNOWN;
        neck->half_break_deg[i] = offered ? angle : SIL_UNKNOWN;
    }
}

void plan_lift(sil_plan *plan)
{
    tilt(plan);
    half_cure(plan);
    plan_accept_bow(plan);
}
