/* SPDX-License-Identifier: MIT */
/* Used inside the check of a job: the place being checked, and how a fault is reported. */
#ifndef SILLET_JOB_CHECK_H
#define SILLET_JOB_CHECK_H

#include "fields.h"

/* A place in a job, linked up to the root: a key, or without a key an index in a list. It lives on
 * the stack of the function that walks the job. Its path is written out only if there is something
 * to report. */
typedef struct job_place {
    const struct job_place *up;
    const char *key;
    int index;
} job_place;

/* A likely range that the job gives itself, in place of the built-in one. */
typedef struct job_range {
    const job_field *field;
    double low, high;
} job_range;

enum { JOB_RANGES_MAX = 128 };

typedef struct job_check {
    const sil_job *job;
    sil_tell *tell;
    void *with;
    int errors;
    bool failed; /* there was no memory: nothing more is reported */
    job_range ranges[JOB_RANGES_MAX];
    int range_count;
} job_check;

/* Reported for a field that must be given and is not. It is recognised by its address. */
extern const char job_missing[];

job_place job_key(const job_place *up, const char *key);
job_place job_item(const job_place *up, int index);

void job_check_missing(job_check *check, const job_place *place);
void job_check_say(job_check *check, sil_severity severity, const job_place *place,
                   const char *format, ...) __attribute__((format(printf, 4, 5)));

/* A figure as a person would write it: at most four decimals, no trailing zeros. */
typedef struct job_figure {
    char text[32];
} job_figure;
job_figure job_figure_of(double value);
job_figure job_length_of(const job_check *check, double mm); /* with its unit */

/* Checks whether a figure is possible and likely; value as kept in the job. */
void job_check_figure(job_check *check, const job_field *field, const job_place *place,
                      double value);

/* A date that cannot be read is reported as a warning. */
void job_check_date(job_check *check, const job_place *up, const char *date);

/* Whether scale, frets, body joint and strings are given and can be laid out. */
bool job_check_can_lay(const sil_job *job);

/* A relief reading with its defaults filled in: where the string lay, and which fret it was read
 * over. */
sil_relief_reading job_relief_laid(const sil_job *job, const sil_reading *reading);

/* Lays out the board of a job that can be laid out, without relief_at. The other function puts the
 * crowns of a reading into crowns that are all 0. */
void job_lay_board(const sil_job *job, sil_board *board);
void job_lay_crowns(const sil_reading *reading, sil_crowns *crowns);

/* Whether a sheet gives a figure of any string. */
bool job_any_given(const double *figures, int count);

/* Checks the parts to make, and where the slots of a new nut are to be. Returned: false where these
 * lie so that nothing else of the board can be checked. */
bool job_check_make(job_check *check, const sil_board *board);

/* Checks that fields agree with each other. */
void job_check_instrument(job_check *check);
void job_check_readings(job_check *check);

#endif
