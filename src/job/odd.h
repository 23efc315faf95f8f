/* SPDX-License-Identifier: MIT */
/* Readings that ask to be taken again, found in one reading by itself. The check of a job warns by
 * this, and the plan holds parts back by it. */
#ifndef SILLET_JOB_ODD_H
#define SILLET_JOB_ODD_H

#include <sillet/job.h>

typedef enum job_odd_why {
    JOB_NOT_ODD,
    JOB_ODD_UNLIKELY, /* outside what is likely on such an instrument */
    JOB_ODD_LINE,     /* an action off the straight line of the others */
    JOB_ODD_OTHERS,   /* a gap off the median of the others */
    JOB_ODD_MOVED     /* not as at the visit before, though nothing was worked there */
} job_odd_why;

typedef struct job_odd_one {
    job_odd_why why;
    double read; /* as on the sheet, mm */
    double off;    /* how far from the line, the median, or the visit before, mm */
    bool believed; /* confirmed, or read again the same: the plan sets this */
} job_odd_one;

typedef struct job_odd {
    job_odd_one relief, crowns, saddle; /* saddle: its heights by caliper or from the bridge's top;
                                           read is that of the first that is odd */
    job_odd_one action[SIL_STRINGS_MAX], first[SIL_STRINGS_MAX];
    int curve; /* the string whose action shows best that the actions follow a curve, or -1 */
    double curve_off;
} job_odd;

/* What is odd in a reading by itself. board: laid, for where the strings are. Whether it has been
 * confirmed is not looked at. */
void job_find_odd(const sil_job *job, const sil_reading *reading, const sil_board *board,
                  job_odd *odd);

/* How far a gap at fret 1 or an action may have moved between visits and still be the same, mm:
 * past it, it is odd where nothing was worked. u: of the reading. */
double job_moved_limit(double u);

#endif
