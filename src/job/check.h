/* SPDX-License-Identifier: MIT */
/* Within the check of a job: where it stands and how it tells. */
#ifndef SILLET_JOB_CHECK_H
#define SILLET_JOB_CHECK_H

#include "fields.h"

/* A place in a job, up to its root: a key, or with no key a place in a list. Lives on the stack of
 * whoever walks; the path's text is made only where there is something to tell. */
typedef struct sil_place {
    const struct sil_place *up;
    const char *key;
    int index;
} sil_place;

/* A likely range of the job's own, over the one built in. */
typedef struct sil_range {
    const sil_field *field;
    double low, high;
} sil_range;

enum { SIL_RANGES_MAX = 128 };

typedef struct sil_check {
    const sil_job *job;
    sil_tell *tell;
    void *with;
    int errors;
    sil_range ranges[SIL_RANGES_MAX];
    int range_count;
} sil_check;

/* What the check says of a field that must be given and is not; known by its address. */
extern const char sil_missing[];

sil_place sil_key(const sil_place *up, const char *key);
sil_place sil_item(const sil_place *up, int index);

void sil_check_missing(sil_check *check, const sil_place *place);
void sil_check_say(sil_check *check, sil_severity severity, const sil_place *place,
                   const char *format, ...) __attribute__((format(printf, 4, 5)));

/* A figure as a person wrote it or would: at most four decimals, no zeros behind. */
typedef struct sil_figure {
    char text[32];
} sil_figure;
sil_figure sil_figure_of(double value);
sil_figure sil_length_of(const sil_check *check, double mm); /* with its unit */

/* Whether a figure can be and is likely; value as kept in the job. */
void sil_check_figure(sil_check *check, const sil_field *field, const sil_place *place,
                      double value);

/* A date that is none is told as a warning. */
void sil_check_date(sil_check *check, const sil_place *up, const char *date);

/* Whether scale, frets, join and strings are there and can be laid out. */
bool sil_check_can_lay(const sil_job *job);

/* A relief reading with what it leaves open filled in: where the string lay, the fret read over. */
sil_relief_reading sil_relief_laid(const sil_job *job, const sil_reading *reading);

/* What must agree across fields. */
void sil_check_instrument(sil_check *check);
void sil_check_readings(sil_check *check);

#endif
