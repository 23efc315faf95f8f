/* SPDX-License-Identifier: MIT */
/* Plans for tests, which look into one as the rooms above it do. */
#ifndef SILLET_TESTS_PLANNED_H
#define SILLET_TESTS_PLANNED_H

#include "../src/plan/plan.h"
#include "near.h"

/* The plan of a job, copied to where a test wants it. The one that was made is freed, so that a
 * copy which pointed into it would be seen by the sanitizer. */
static inline void plan_into(const sil_job *job, sil_plan *plan)
{
    sil_plan *made;
    assert_int_equal(sil_plan_make(job, &made), SIL_DONE);
    *plan = *made;
    sil_plan_free(made);
}

#endif
