/* SPDX-License-Identifier: MIT */
/* The pluck that nothing may be cut to buzz under. See docs/arithmetic.md, "Not into its own buzz". */
#include "plan.h"

/* Whether enough is known of a string to cut by how it swings: nothing is cut by an assumed core.
 * Everything that cuts by a string's tension asks here. */
static bool sure_of(const sil_string *string)
{
    return !sil_material_wound(string->material) || sil_known(string->core) ||
           sil_known(string->unit_mass_kg_m);
}

static double unit_mass(const sil_job *job, int i)
{
    const sil_string *string = &job->strings[i];
    double given = string->unit_mass_kg_m;
    return sil_known(given) ? given
                            : sil_unit_mass(string->material, string->gauge, string->core,
                                            &job->materials[string->material]);
}

void plan_hold_to_pluck(const sil_job *job, sil_bench *bench)
{
    bench->pluck_at = job->attack.at;
    for (int i = 0; i < job->string_count; i++) {
        double length = bench->board.saddle_x[i] - job->nut.advance;
        bool chosen = job->attack.chosen && sure_of(&job->strings[i]);
        bench->attack[i] = chosen ? job->attack.force[i] : SIL_UNKNOWN;
        bench->tension[i] = sil_tension(unit_mass(job, i), length, job->strings[i].hz);
    }
}

double plan_choice(const sil_plan *plan, sil_stage_name part, int i)
{
    bool nut = part == SIL_NUT;
    const sil_withheld *withheld = nut ? &plan->nut_withheld : &plan->saddle_withheld;
    sil_verdict verdict = nut ? plan->nut.verdict[i] : plan->saddle.verdict[i];
    double hold = nut ? plan->stages.slot_hold[i] : plan->saddle.hold[i];
    /* A part from a blank waits for the choice, which is asked where nothing else holds it. */
    bool alone = withheld->count == 1 && withheld->by[0] == SIL_ATTACK;
    bool cut = withheld->count == 0 && verdict == SIL_TAKE;
    if (!(cut || alone) || !sil_known(hold)) {
        return SIL_UNKNOWN;
    }
    return nut ? plan->stages.slot_clean[i] : plan->saddle.clean[i];
}
