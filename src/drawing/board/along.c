/* SPDX-License-Identifier: MIT */
/* A nut or saddle that leans is drawn as it lies on the bench: measured along itself. */
#include "paper.h"

static void stretch(double *z, int count, double by)
{
    for (int i = 0; i < count; i++) {
        z[i] *= by;
    }
}

/* The same line, told over places farther apart. */
static void flatten(sil_line *line, double by)
{
    line->b1 /= by;
}

void draw_plan_along(const sil_plan *plan, sil_job *job, sil_plan *along)
{
    double nut = 1 / cos(plan->bench.board.nut_slant);
    double saddle = 1 / cos(plan->bench.board.saddle_slant);
    *job = *plan->job;
    *along = *plan;
    along->job = job;
    job->nut.width *= nut;
    job->saddle.length *= saddle;
    stretch(along->bench.board.nut_z, job->string_count, nut);
    stretch(along->bench.board.saddle_z, job->string_count, saddle);
    flatten(&along->saddle.cut, saddle);
    flatten(&along->saddle.cut_first, saddle);
    flatten(&along->slot_as_built, saddle);
    flatten(&along->slot_best, saddle);
    if (saddle > 1 && sil_working_in_slot(plan->saddle.working)) {
        along->saddle.top_radius =
            sil_top_radius(job->string_count, along->bench.board.saddle_z, along->saddle.height);
    }
    along->nut_gap *= nut;
}

bool draw_on_screws(const draw_draft *draft)
{
    return sil_working_turns(draft->plan->saddle.working);
}

double draw_moved_down(const draw_draft *draft, int string)
{
    const sil_plan *plan = draft->plan;
    const sil_fit *fit = plan->stages.fit;
    if (plan->saddle.verdict[string] == SIL_WAIT) {
        return SIL_UNKNOWN;
    }
    return fit[SIL_NUT].saddle_height[string] - fit[SIL_SADDLE].saddle_height[string];
}
