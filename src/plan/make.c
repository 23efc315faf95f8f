/* SPDX-License-Identifier: MIT */
/* Makes a plan from a job. */
#include "plan.h"

#include <stdlib.h>
#include <string.h>

static double greatest(int count, const double *values)
{
    double most = -(double)INFINITY;
    for (int i = 0; i < count; i++) {
        if (!sil_known(values[i])) {
            return SIL_UNKNOWN;
        }
        most = fmax(most, values[i]);
    }
    return most;
}

static void order_blanks(const sil_job *job, sil_plan *plan)
{
    const sil_allowances *allow = &job->allowances;
    const sil_board *board = &plan->bench.board;
    /* The width is given square across the board, so it is longer along a nut at an angle. */
    double nut = job->nut.width / cos(board->nut_slant);
    double saddle = job->saddle.length / cos(board->saddle_slant);
    plan->nut_blank =
        (sil_blank){nut + allow->blank_length, job->nut.thickness + allow->blank_thickness,
                    plan->nut.top + allow->blank_height};
    plan->saddle_blank =
        (sil_blank){saddle + allow->blank_length, job->saddle.thickness + allow->blank_thickness,
                    greatest(job->string_count, plan->saddle.height) + allow->blank_height};
}

sil_status sil_plan_make(const sil_job *job, sil_plan **plan)
{
    /* One block holds the plan and, after it, memory to work in. Visits, finer readings and the
     * lowest set-up use that memory one after another. */
    size_t room = sil_lowest_room(job->string_count, job->instrument.frets);
    sil_plan *made = malloc(sizeof *made + (room > sizeof *made ? room : sizeof *made));
    *plan = made;
    if (!made) {
        return SIL_NO_MEMORY;
    }
    memset(made, 0, offsetof(sil_plan, findings));
    made->job = job;
    made->only_stage = -1;
    plan_visits(made, made + 1);
    plan_look_finer(made, made + 1);
    plan_lift(made);
    plan_weigh(made);
    plan_bend_stacks(made);
    order_blanks(job, made);
    plan_finish_curve(made);
    plan_ring(made, made + 1);
    plan_tune(made);
    plan_find(made);
    plan_order(made);
    return SIL_DONE;
}

void sil_plan_free(sil_plan *plan)
{
    free(plan);
}

void sil_plan_keep(sil_plan *plan, sil_stage_name stage)
{
    int findings = 0;
    int steps = 0;
    plan->only_stage = (int)stage;
    for (int k = 0; k < plan->finding_count; k++) {
        if (plan->findings[k].stage == stage || plan->findings[k].level == SIL_LEVEL_STOP) {
            plan->findings[findings++] = plan->findings[k];
        }
    }
    for (int k = 0; k < plan->step_count; k++) {
        if (plan->steps[k].stage == stage || plan->steps[k].act == SIL_ACT_STOP) {
            plan->steps[steps++] = plan->steps[k];
        }
    }
    plan->finding_count = findings;
    plan->step_count = steps;
}
