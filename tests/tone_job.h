/* SPDX-License-Identifier: MIT */
/* A sound job for tests to spoil: open_sheet and close_sheet frame the group of tests. */
#ifndef SILLET_TESTS_SOUND_JOB_H
#define SILLET_TESTS_SOUND_JOB_H

#include <sillet/sheet.h>

#include "near.h"

/* A sound job of which everything can be written to. */
typedef struct spoilt {
    sil_job job;
    sil_reading reading;
    sil_crown_off crowns[2];
    sil_buzz buzz[2];
} spoilt;

static sil_sheet *sheet;

static inline int open_sheet(void **state)
{
    (void)state;
    return sil_sheet_read("tests/sheets/good-reading.yaml", "profiles", &sheet);
}

static inline int close_sheet(void **state)
{
    (void)state;
    sil_sheet_free(sheet);
    return 0;
}

static inline void make_tone(spoilt *to)
{
    to->job = *sil_sheet_job(sheet);
    to->reading = to->job.readings[0];
    to->job.readings = &to->reading;
    to->reading.crowns = to->crowns;
    to->reading.buzz = to->buzz;
    to->crowns[0] = to->crowns[1] = (sil_crown_off){2, 3, -0.05};
    to->buzz[0] = to->buzz[1] = (sil_buzz){1, 0};
}

#endif
