/* SPDX-License-Identifier: MIT */
/* Intonation: where each string should leave the nut and saddle. See docs/arithmetic.md,
 * "Compensation". */
#include "plan.h"

sil_pitch_string plan_pitch_string(const sil_plan *plan, const sil_fit *fit, int i)
{
    const sil_job *job = plan->job;
    const sil_string *string = &job->strings[i];
    const sil_board *board = &plan->bench.board;
    double modulus = string->modulus_gpa;
    sil_pitch_string pitch = {
        .fret_x = board->fret_x[i],
        .scale = board->scale[i],
        .nut_height = fit->nut_height[i],
        .saddle_height = fit->saddle_height[i],
        .unit_mass_kg_m = plan->unit_mass_kg_m[i],
        .hz = string->hz,
        .modulus_gpa = sil_known(modulus) ? modulus : job->materials[string->material].modulus_gpa,
        .core = sil_stiff_diameter(string->material, string->gauge, plan->core[i]),
        .press = job->model.press,
        .ends = job->model.ends};
    for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
        pitch.crown[n] = sil_crown_height(board, fit, i, n);
    }
    return pitch;
}

static void tune_string(sil_plan *plan, int i)
{
    const sil_job *job = plan->job;
    sil_compensation *told = &plan->compensation[i];
    sil_pitch_string last = plan_pitch_string(plan, &plan->finished, i);
    double setback = job->saddle.setback[i];
    double advance = job->nut.advance;
    told->saddle_only = sil_saddle_only(&last, advance);
    told->best = sil_best_pair_find(&last);
    told->stiffness = sil_stiffness(&last, setback, advance);
    sil_cents_fill(&last, setback, advance, told->as_built);
    sil_cents_fill(&last, told->best.setback, told->best.advance, told->at_best);
    told->move = plan->tuning.move[i];
}

/* What physics would move a string by that nobody read with a tuner. */
static void propose(sil_plan *plan, int i)
{
    const sil_job_saddle *saddle = &plan->job->saddle;
    bool read = sil_known(plan->tuning.cents[i]);
    if (!read && saddle->setback_read && !plan->core_assumed[i]) {
        plan->tuning.proposed[i] = plan->compensation[i].saddle_only - saddle->setback[i];
    }
}

/* The setback that puts a string in tune at fret 12: by a tuner where one was read, else by its
 * physics. A saddle is filed and a slot is cut by it, so it is not told of a core that is assumed. */
static double in_tune_at_12(const sil_plan *plan, int i)
{
    double move = plan->tuning.move[i];
    double modelled = plan->core_assumed[i] ? SIL_UNKNOWN : plan->compensation[i].saddle_only;
    return sil_known(move) ? plan->job->saddle.setback[i] + move : modelled;
}

/* A saddle slot is straight. Finds how far each place in tune is from the line of the present slot,
 * and the line of the best slot. */
static void lay_slot(sil_plan *plan)
{
    int strings = plan->job->string_count;
    const double *z = plan->bench.board.saddle_z;
    double wanted[SIL_STRINGS_MAX];
    plan->slot_as_built = sil_slot_line(strings, z, plan->job->saddle.setback);
    for (int i = 0; i < strings; i++) {
        wanted[i] = in_tune_at_12(plan, i);
        plan->compensation[i].off_slot = wanted[i] - sil_line_at(plan->slot_as_built, z[i]);
    }
    plan->slot_best = sil_slot_line(strings, z, wanted);
}

void plan_tune(sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        tune_string(plan, i);
        propose(plan, i);
    }
    plan_propose_peaks(plan);
    lay_slot(plan);
}
