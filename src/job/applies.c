/* SPDX-License-Identifier: MIT */
/* Which instruments a field applies to. */
#include "words.h"

static bool any_wound(const sil_job *job)
{
    bool wound = job->string_count == 0;
    for (int i = 0; i < job->string_count; i++) {
        wound = wound || sil_material_wound(job->strings[i].material);
    }
    return wound;
}

static bool any_course(const sil_job *job)
{
    int course[SIL_STRINGS_MAX];
    sil_job_courses(job, course);
    return job->string_count > 0 && course[job->string_count - 1] < job->string_count - 1;
}

bool sil_field_applies(const char *path, const sil_job *job)
{
    const job_words *words = job_words_of(path);
    const sil_instrument *it = &job->instrument;
    sil_working working = sil_saddle_working(job->saddle.kind, job->saddle.pitch);
    bool open = working == SIL_WORKING_NOT_GIVEN; /* it may be any kind */
    switch (words ? words->where : JOB_NOWHERE) {
    case JOB_NOWHERE:
        return false;
    case JOB_EVERYWHERE:
        return true;
    case JOB_ON_A_FAN:
        return sil_known(it->scale_bass);
    case JOB_WHERE_IT_BENDS:
        return it->join == 0 || it->join > 2;
    case JOB_BOLTED_ON:
        return sil_known(it->pocket) || !sil_known(it->heel);
    case JOB_SET_IN:
        return sil_known(it->heel) || !sil_known(it->pocket);
    case JOB_WITH_WOUND:
        return any_wound(job);
    case JOB_IN_COURSES:
        return any_course(job);
    case JOB_SEVERAL_STRINGS:
        return job->string_count != 1;
    case JOB_SLOTS_BEAR:
        return job->nut.kind == SIL_NUT_SLOTTED;
    case JOB_IN_A_SLOT:
        return open || sil_working_in_slot(working);
    case JOB_IN_ONE_PIECE:
        return open || sil_working_cuts(working);
    case JOB_ON_SCREWS:
        return open || sil_working_turns(working);
    case JOB_PERHAPS_ON_SCREWS:
        return !sil_working_in_slot(working);
    case JOB_ON_POSTS:
        return open || sil_working_on_two(working);
    }
    return false;
}
