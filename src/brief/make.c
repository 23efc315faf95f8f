/* SPDX-License-Identifier: MIT */
/* Makes a brief. Its parts are filled one after another, each from the plan and from the parts
 * before it. */
#include <stdlib.h>

#include "within.h"

static void fill(brief *b)
{
    const sil_instrument *it = &b->plan->job->instrument;
    part_nut_solve(b->plan, &b->nut_part);
    part_saddle_solve(b->plan, &b->saddle_part);
    b->scale = figure_plain(b->unit, it->scale);
    b->scale_bass = figure_plain(b->unit, it->scale_bass);
    brief_fill_readings(b);
    brief_fill_nut(b);
    brief_fill_saddle(b);
    brief_fill_tuning(b);
    brief_fill_stages(b);
    brief_fill_tone(b);
    brief_fill_visits(b);
    brief_fill_findings(b);
    brief_fill_steps(b);
    brief_fill_glance(b);
    b->row = brief_row_of(b->plan, &b->store);
    brief_fill_next(b);
}

brief *brief_make(const sil_plan *plan, sil_unit unit)
{
    brief *b = calloc(1, sizeof *b);
    if (!b) {
        return NULL;
    }
    b->plan = plan;
    b->unit = unit;
    b->unit_name = unit == SIL_MM ? "mm" : "in";
    b->strings = plan->job->string_count;
    fill(b);
    if (b->store.failed) {
        brief_free(b);
        return NULL;
    }
    return b;
}

void brief_free(brief *b)
{
    if (b) {
        text_store_free(&b->store);
        free(b);
    }
}
