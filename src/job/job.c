/* SPDX-License-Identifier: MIT */
/* An empty job and an empty reading. */
#include <sillet/job.h>

#include <string.h>

#include "fields.h"

void sil_job_clear(sil_job *job)
{
    memset(job, 0, sizeof *job);
    job_table_clear(&job_table_all, job);
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        job_table_clear(&job_table_string, &job->strings[i]);
    }
    for (int i = 0; i < SIL_MATERIALS; i++) {
        job_table_clear(&job_table_material, &job->materials[i]);
    }
    job->saddle.kind = SIL_SADDLE_KIND_NOT_GIVEN;
    job->instrument.fallaway = 0.0;
    job->nut.advance = 0.0;
    job->saddle.pickup = 0.0;
    job->saddle.exit_height = 0.0;
    job->model.press = 0.0;
    job->targets.first_held = SIL_HOLD_3;
    job->tools.cents = 2.0;
    /* Common practice, no source. */
    job->tools.ruler = 0.3;
    job->allowances.leave_slot = 0.05;
    job->allowances.leave_base = 0.15;
    job->allowances.leave_top = 0.1;
}

void sil_reading_clear(sil_reading *reading)
{
    memset(reading, 0, sizeof *reading);
    job_table_clear(&job_table_reading, reading);
    reading->relief.string = -1;
    reading->gaps.action_at = 12;
    reading->gaps.first_held = SIL_HOLD_3;
}
