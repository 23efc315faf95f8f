/* SPDX-License-Identifier: MIT */
/* What a job says of how its strings are brought into tune, with what is usual where it says
 * nothing. */
#include <sillet/job.h>

static sil_working working_of(const sil_job *job)
{
    return sil_saddle_working(job->saddle.kind, job->saddle.pitch);
}

sil_intonation sil_job_intonation(const sil_job *job)
{
    if (job->saddle.intonation != SIL_INTONATION_NOT_GIVEN) {
        return job->saddle.intonation;
    }
    switch (working_of(job)) {
    case SIL_WORKING_SCREWS:
    case SIL_WORKING_POSTS:
        return SIL_INTONATION_SCREWS;
    case SIL_WORKING_FEET:
    case SIL_WORKING_THUMBWHEELS:
        return SIL_INTONATION_ENDS;
    case SIL_WORKING_NOT_GIVEN:
    case SIL_WORKING_BASE:
    case SIL_WORKING_TOP:
    case SIL_WORKINGS:
        break;
    }
    return SIL_INTONATION_NONE;
}

double sil_job_peak(const sil_job *job, int string)
{
    double given = job->saddle.peak[string];
    bool slotted = sil_working_in_slot(working_of(job));
    return sil_known(given) || !slotted ? given : job->saddle.thickness / 2.0;
}
