/* SPDX-License-Identifier: MIT */
/* What is taken off a saddle, at its bottom and its top. */
#include "plan.h"

static double dress(const sil_plan *plan, int string)
{
    double off = plan->saddle.dress[string];
    return off > 0.0 ? off : 0.0;
}

/* A little that is left over from the bottom is not worth filing. Where it is the whole of a cut, the
 * string is out of its range, and no other step brings it there. */
double sil_dressed_off(const sil_plan *plan, int string)
{
    const sil_saddle_work *work = &plan->saddle;
    double off = dress(plan, string);
    bool whole = !work->bottom && work->verdict[string] == SIL_TAKE;
    return whole || off >= SIL_LEAST_DRESSED ? off : 0.0;
}

double sil_left_on(const sil_plan *plan, int string)
{
    return dress(plan, string) - sil_dressed_off(plan, string);
}

double sil_action_after(const sil_plan *plan, int string)
{
    const sil_board *board = &plan->bench.board;
    return plan_action_over(plan, &plan->finished, string) +
           sil_left_on(plan, string) * sil_leverage(board, string);
}

/* Where almost nothing may be sanded off the bottom, it is not sanded and the top is dressed
 * instead. */
bool plan_takes_anything(const sil_plan *plan, sil_line line)
{
    double half = plan->job->saddle.length / 2.0;
    return sil_line_at(line, half) >= 0.01 || sil_line_at(line, -half) >= 0.01;
}

double plan_saddle_pass(const sil_plan *plan, int i)
{
    const sil_saddle_work *work = &plan->saddle;
    bool base = work->bottom && plan_takes_anything(plan, work->cut_first);
    double top = sil_dressed_off(plan, i) > 0.0 ? work->dress_first[i] : 0.0;
    return top + (base ? sil_line_at(work->cut_first, plan->bench.board.saddle_z[i]) : 0.0);
}
