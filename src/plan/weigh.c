/* SPDX-License-Identifier: MIT */
/* What the strings weigh and how tight they are, by their cores as given or as is usual. */
#include "plan.h"

/* Where nobody gave the core of a wound string, and its mass or its stiffness needs one, takes a
 * typical one. */
static void find_core(const sil_string *string, double *core, bool *assumed)
{
    bool weighed = sil_known(string->unit_mass_kg_m);
    bool by_core = sil_material_wound(string->material) && string->material != SIL_WOUND_NYLON;
    *core = string->core;
    if (!sil_known(*core) && (by_core || !weighed)) {
        *core = sil_typical_core(string->material, string->gauge);
    }
    *assumed = sil_known(*core) && !sil_known(string->core);
}

double plan_tension(const sil_plan *plan, int i, double core, double *mass)
{
    const sil_job *job = plan->job;
    const sil_string *string = &job->strings[i];
    *mass = string->unit_mass_kg_m;
    if (!sil_known(*mass)) {
        *mass =
            sil_unit_mass(string->material, string->gauge, core, &job->materials[string->material]);
    }
    return sil_tension(*mass, plan->bench.board.saddle_x[i] - job->nut.advance, string->hz);
}

void plan_weigh(sil_plan *plan)
{
    const sil_job *job = plan->job;
    for (int i = 0; i < job->string_count; i++) {
        find_core(&job->strings[i], &plan->core[i], &plan->core_assumed[i]);
        plan->pluck.tension[i] = plan_tension(plan, i, plan->core[i], &plan->unit_mass_kg_m[i]);
    }
}
