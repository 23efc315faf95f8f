/* SPDX-License-Identifier: MIT */
/* Computes the stages and the work at nut and saddle from one reading. */
#include "plan.h"

#include <string.h>

static sil_nut_given nut_given(const sil_job *job)
{
    const sil_allowances *allow = &job->allowances;
    sil_nut_given make = {.seat_to_board = job->nut.seat_to_board,
                          .head_angle_deg = job->instrument.head_angle_deg,
                          .fall_share = allow->fall_share,
                          .caliper = job->tools.caliper};
    for (int i = 0; i < job->string_count; i++) {
        bool wound = sil_material_wound(job->strings[i].material);
        make.gauge[i] = job->strings[i].gauge;
        make.copy[i] = job->nut.floors[i];
        make.bury[i] = wound ? allow->bury_wound : allow->bury_plain;
    }
    return make;
}

static void work_nut(const sil_job *job, sil_plan *plan)
{
    const sil_allowances *allow = &job->allowances;
    sil_nut_given make = nut_given(job);
    sil_courses courses = {job->string_count, plan->bench.board.course, job->nut.pair};
    double nut_z[SIL_STRINGS_MAX];
    sil_nut_centres(&courses, make.gauge, job->nut.width, job->nut.edge_treble, job->nut.edge_bass,
                    job->nut.spacing, nut_z, &plan->nut_gap);
    if (sil_known(job->nut.centres[0])) {
        plan->nut_gap = SIL_UNKNOWN; /* the slots stay where they were, whatever is between them */
    }
    for (int i = 0; i < job->string_count; i++) {
        bool wound = sil_material_wound(job->strings[i].material);
        plan->slot_width[i] =
            sil_file_width(make.gauge[i], wound ? allow->slot_wound : allow->slot_plain, job->files,
                           job->file_count);
    }
    if (plan->bench.fresh.nut) {
        sil_nut_make(&plan->bench, &plan->stages, &make, &plan->nut);
    } else {
        sil_nut_cut(&plan->bench, &plan->stages, &make, &plan->nut);
    }
}

static void work_saddle(const sil_job *job, const sil_reading *reading, sil_plan *plan)
{
    const sil_job_saddle *sheet = &job->saddle;
    sil_saddle_given make = {.working = sil_saddle_working(sheet->kind, sheet->pitch),
                             .length = sheet->length,
                             .slot_depth = sheet->slot_depth,
                             .pickup = sheet->pickup,
                             .exit_height = sheet->exit_height,
                             .pitch = sheet->pitch,
                             .post_spread = sheet->post_spread,
                             .most_shim = job->limits.most_shim,
                             .shim_step = job->allowances.shim_step,
                             .copied = sil_known(sheet->old[0]),
                             .present_treble = SIL_UNKNOWN,
                             .present_bass = SIL_UNKNOWN,
                             .bridge_top_treble = SIL_UNKNOWN,
                             .bridge_top_bass = SIL_UNKNOWN,
                             .least_protrusion = job->limits.least_protrusion,
                             .least_break_deg = job->limits.least_break_deg,
                             .travel = sheet->travel,
                             .leave_base = job->allowances.leave_base,
                             .leave_top = job->allowances.leave_top};
    if (reading) {
        make.present_treble = reading->saddle_height_treble;
        make.present_bass = reading->saddle_height_bass;
        make.bridge_top_treble = reading->bridge_top_treble;
        make.bridge_top_bass = reading->bridge_top_bass;
    }
    for (int i = 0; i < job->string_count; i++) {
        make.pin_distance[i] = sheet->pin_distance[i];
        make.stands_out[i] = reading ? reading->stands_out[i] : SIL_UNKNOWN;
        make.copy[i] = sheet->old[i];
    }
    if (plan->bench.fresh.saddle) {
        sil_saddle_make(&plan->bench, &make, &plan->stages, &plan->saddle);
    } else {
        sil_saddle_cut(&plan->bench, &make, &plan->stages, &plan->saddle);
    }
}

static void work(sil_plan *plan)
{
    plan->nut_withheld.count = plan->saddle_withheld.count = 0;
    sil_stages_run(&plan->bench, &plan->stages);
    work_nut(plan->job, plan);
    work_saddle(plan->job, sil_plan_reading(plan), plan);
    plan_zero_fret(plan);
    plan_withhold(plan);
    plan_tuning(plan);
}

void plan_work(sil_plan *plan)
{
    plan->bench.straighten = false;
    plan_as_read(plan);
    work(plan);
    if (plan_straightens(plan)) {
        plan->bench.straighten = true;
        work(plan);
    }
    plan_even(plan, work);
}

void plan_lay(const sil_job *job, int reading, const sil_plan *before, double ratio, double spread,
              sil_plan *plan)
{
    plan->job = job;
    plan->reading = reading;
    plan->odd = (sil_odd){.curve = -1};
    memset(&plan->carried, -1, sizeof plan->carried); /* every visit -1: nothing is taken over */
    if (reading >= 0) {
        plan->read = job->readings[reading];
        plan_carry(before, plan);
    }
    sil_job_bench_read(job, reading, reading < 0 ? NULL : &plan->read, &plan->bench);
    plan_begin_fresh(before, plan);
    plan->bench.rod_ratio = ratio;
    plan->bench.rod_spread = spread;
    plan->season = false;
    plan->saddle_jump = SIL_UNKNOWN;
    plan_hold_to_pluck(job, &plan->bench);
    if (reading < 0) {
        return;
    }
    if (before) {
        plan_carry_gaps(before, plan);
    }
    plan_find_odd(before, plan);
    plan_clear_odd(plan);
    if (before) {
        plan_settle(before, plan);
    }
}
