/* SPDX-License-Identifier: MIT */
/* A saddle's top that is filed as a whole is filed to one line, and not to the steps of a ruler. See
 * docs/arithmetic.md, "The top as one line". */
#include "plan.h"

#include <string.h>

/* Whether all or most strings of a saddle that is glued in are dressed. */
static bool whole_top(const sil_plan *plan)
{
    int dressed = 0, strings = plan->job->string_count;
    for (int i = 0; i < strings; i++) {
        dressed += plan->saddle.verdict[i] == SIL_TAKE;
    }
    return plan->saddle.working == SIL_WORKING_TOP && plan->saddle.remedy == SIL_SADDLE_SAND &&
           2 * dressed >= strings;
}

/* The straight line through the actions, string by string; whether each was read within its tool's
 * error of it. Through two strings any line fits. */
static bool lie_on_line(const sil_plan *plan, double *on_line)
{
    int strings = plan->job->string_count;
    const double *z = plan->bench.board.saddle_z, *read = plan->read.gaps.action;
    bool all = strings > 2;
    for (int i = 0; i < strings; i++) {
        all = all && read[i] > 0.0;
    }
    sil_line line = all ? sil_level_line(strings, z, read) : (sil_line){SIL_UNKNOWN, SIL_UNKNOWN};
    for (int i = 0; i < strings; i++) {
        on_line[i] = sil_line_at(line, z[i]);
        all = all && fabs(read[i] - on_line[i]) <= plan->bench.tools.action + 1e-9;
    }
    return all;
}

void plan_as_read(sil_plan *plan)
{
    memset(plan->off_line, 0, sizeof plan->off_line);
    if (plan->reading >= 0) {
        memcpy(plan->bench.gaps.action, plan->read.gaps.action, sizeof plan->read.gaps.action);
    }
}

void plan_even(sil_plan *plan, void work(sil_plan *plan))
{
    double on_line[SIL_STRINGS_MAX], told[SIL_STRINGS_MAX];
    int strings = plan->job->string_count;
    const sil_board *board = &plan->bench.board;
    if (plan->reading < 0 || !whole_top(plan) || !lie_on_line(plan, on_line)) {
        return;
    }
    for (int i = 0; i < strings; i++) {
        told[i] = sil_action(board, &plan->stages.fit[SIL_NOW], i, 12);
        plan->bench.gaps.action[i] = on_line[i];
    }
    work(plan);
    if (!whole_top(plan)) { /* by the line, some strings are in their range */
        plan_as_read(plan);
        work(plan);
        return;
    }
    for (int i = 0; i < strings; i++) {
        plan->off_line[i] = told[i] - sil_action(board, &plan->stages.fit[SIL_NOW], i, 12);
    }
}
