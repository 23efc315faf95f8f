/* SPDX-License-Identifier: MIT */
/* Plans for tests, which look into one as the rooms above it do. */
#ifndef SILLET_TESTS_PLANNED_H
#define SILLET_TESTS_PLANNED_H

#include <sillet/sheet.h>

#include <stdio.h>
#include <string.h>

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

/* The plan of a sheet on the steel-string profile: the lines of its parts, then its readings. The job
 * lives on in the plan, so the sheet stays open until the next. */
static inline void plan_readings(const char *parts, const char *readings, sil_plan *plan)
{
    static sil_sheet *sheet;
    static char bytes[4096];
    sil_sheet_free(sheet);
    snprintf(bytes, sizeof bytes, "sillet: 1\nprofile: steel-string-acoustic\n%sreadings:\n%s",
             parts, readings);
    sil_sheet_read_bytes(bytes, strlen(bytes), "a sheet", "profiles", &sheet);
    assert_non_null(sil_sheet_job(sheet));
    plan_into(sil_sheet_job(sheet), plan);
}

#endif
