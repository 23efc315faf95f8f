/* SPDX-License-Identifier: MIT */
/* The functions by which programs read a plan. */
#include "plan.h"

const sil_job *sil_plan_job(const sil_plan *plan)
{
    return plan->job;
}

const sil_reading *sil_plan_reading(const sil_plan *plan)
{
    return plan->reading < 0 ? NULL : &plan->read;
}

bool sil_plan_done(const sil_plan *plan)
{
    return plan->done;
}

const sil_bench *sil_plan_bench(const sil_plan *plan)
{
    return &plan->bench;
}

const sil_stages *sil_plan_stages(const sil_plan *plan)
{
    return &plan->stages;
}

const sil_withheld *sil_plan_nut_withheld(const sil_plan *plan)
{
    return &plan->nut_withheld;
}

const sil_withheld *sil_plan_saddle_withheld(const sil_plan *plan)
{
    return &plan->saddle_withheld;
}

const sil_nut_work *sil_plan_nut(const sil_plan *plan)
{
    return &plan->nut;
}

const sil_saddle_work *sil_plan_saddle(const sil_plan *plan)
{
    return &plan->saddle;
}

const sil_tuning *sil_plan_tuning(const sil_plan *plan)
{
    return &plan->tuning;
}

double sil_plan_nut_gap(const sil_plan *plan)
{
    return plan->nut_gap;
}

const double *sil_plan_slot_widths(const sil_plan *plan)
{
    return plan->slot_width;
}

sil_zero_fret sil_plan_zero_fret(const sil_plan *plan)
{
    return plan->zero_fret;
}

sil_blank sil_plan_nut_blank(const sil_plan *plan)
{
    return plan->nut_blank;
}

sil_blank sil_plan_saddle_blank(const sil_plan *plan)
{
    return plan->saddle_blank;
}

const sil_neck *sil_plan_neck(const sil_plan *plan)
{
    return &plan->neck;
}

const double *sil_plan_unit_masses(const sil_plan *plan)
{
    return plan->unit_mass_kg_m;
}

bool sil_plan_core_assumed(const sil_plan *plan, int string)
{
    return plan->core_assumed[string];
}

const sil_pluck *sil_plan_pluck(const sil_plan *plan)
{
    return &plan->pluck;
}

const sil_clearance *sil_plan_clean_now(const sil_plan *plan)
{
    return &plan->clean_now;
}

const sil_clearance *sil_plan_clean_after(const sil_plan *plan)
{
    return &plan->clean_after;
}

const sil_lowest *sil_plan_lowest(const sil_plan *plan)
{
    return &plan->lowest;
}

const sil_compensation *sil_plan_compensation(const sil_plan *plan)
{
    return plan->compensation;
}

sil_line sil_plan_slot_as_built(const sil_plan *plan)
{
    return plan->slot_as_built;
}

sil_line sil_plan_slot_best(const sil_plan *plan)
{
    return plan->slot_best;
}

const sil_finding *sil_plan_findings(const sil_plan *plan, int *count)
{
    *count = plan->finding_count;
    return plan->findings;
}

const sil_step *sil_plan_steps(const sil_plan *plan, int *count)
{
    *count = plan->step_count;
    return plan->steps;
}

const sil_cause *sil_plan_causes(const sil_plan *plan, int *count)
{
    *count = plan->cause_count;
    return plan->causes;
}

const sil_visit *sil_plan_visits(const sil_plan *plan, int *count)
{
    *count = plan->visit_count;
    return plan->visits;
}
