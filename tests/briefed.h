/* SPDX-License-Identifier: MIT */
/* Used by tests: briefs of random jobs, one after another. */
#ifndef SILLET_TESTS_BRIEFED_H
#define SILLET_TESTS_BRIEFED_H

#include "../src/brief/within.h"
#include "planned.h"
#include "random_job.h"

enum { JOBS = 240 };

static random_job made;
static sil_plan plan;

/* The brief of the next job, in millimetres, to be freed; its plan is in `plan`. */
static inline brief *next_brief(uint64_t *seed, int job)
{
    make_random_job(&made, seed, 1 + job % SIL_STRINGS_MAX);
    plan_into(&made.job, &plan);
    brief *b = brief_make(&plan, SIL_MM);
    assert_non_null(b);
    return b;
}

#endif
