/* SPDX-License-Identifier: MIT */
/* A bow of the neck that its rod cannot put right: what waits for it, and what it costs where it is
 * left as it is. See docs/arithmetic.md, "A bow that no rod takes out". */
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

bool plan_bowed_for_good(const sil_plan *plan)
{
    double relief = sil_relief_now(plan);
    return !plan->bench.rod_works && plan->job->instrument.rod != SIL_ROD_NOT_GIVEN &&
           sil_above(relief, plan->job->limits.most_relief);
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

bool plan_would_lower(const sil_plan *plan)
{
    bool lowers = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan->stages.saddle[i] == SIL_WAIT) {
            return false;
        }
        lowers = lowers || plan->stages.saddle[i] == SIL_TAKE;
    }
    return lowers;
}

/* Then something comes off a saddle without screws, or one that is lower is made. */
static bool would_cut(const sil_plan *plan)
{
    return plan_would_lower(plan) && sil_working_cuts(plan->saddle.working);
}

bool plan_bow_holds_saddle(const sil_plan *plan)
{
    bool copies = plan->bench.fresh.saddle && sil_known(plan->job->saddle.old[0]);
    return (plan_rod_first(plan) || plan_back_bowed(plan)) && !copies &&
           (would_cut(plan) || plan_files_at_height(plan));
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
