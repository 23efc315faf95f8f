/* SPDX-License-Identifier: MIT */
/* How far the neck would have to be tilted back where the saddle cannot come down far enough. See
 * docs/arithmetic.md, "The neck's angle". */
#include "plan.h"

void plan_lift(sil_plan *plan)
{
    const sil_instrument *it = &plan->job->instrument;
    const sil_board *board = &plan->bench.board;
    plan->neck.lift = plan->neck.shim = plan->neck.heel = SIL_UNKNOWN;
    plan->neck.string = -1;
    if (!plan_sinks_too_low(plan)) {
        return;
    }
    for (int i = 0; i < board->strings; i++) {
        double lift = plan->neck.short_by[i];
        if (lift > 0.0 && !(lift <= plan->neck.lift)) {
            plan->neck.lift = lift;
            plan->neck.string = i;
        }
    }
    double saddle = sil_saddle_axis_x(board, plan->neck.string);
    double join = board->spine_x[board->join];
    double pocket = sil_known(it->pocket_at) ? it->pocket_at : join;
    plan->neck.shim = it->pocket * plan->neck.lift / (saddle - pocket);
    plan->neck.heel = it->heel * plan->neck.lift / (saddle - join);
}
