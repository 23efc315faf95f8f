/* SPDX-License-Identifier: MIT */
/* The fields of a measuring sheet as a person sees them: the label of each field, how to measure
 * it, the words for its choices, and which fields apply to an instrument. Everything that asks for
 * readings, on paper or on a screen, takes its words from here.
 *
 * A field is named by its path without the indices of lists: "readings.first", "strings.gauge".
 */
#ifndef SILLET_FIELDS_H
#define SILLET_FIELDS_H

#include "job.h"

#ifdef __cplusplus
extern "C" {
#endif

/* What kind of value a field has. */
typedef enum sil_field_kind {
    SIL_FIELD_PART,    /* holds further fields, and has no value of its own */
    SIL_FIELD_FIGURE,  /* one figure */
    SIL_FIELD_ENDS,    /* a figure at each of two ends, or one for both */
    SIL_FIELD_EACH,    /* a figure for each string */
    SIL_FIELD_COUNT,   /* a whole number: a fret, a string */
    SIL_FIELD_CHOICE,  /* one of its choices */
    SIL_FIELD_TEXT,    /* a text */
    SIL_FIELD_TARGET,  /* a target: low, aim and high */
    SIL_FIELD_TARGETS, /* a target for each string */
    SIL_FIELD_LIST     /* a list of any length */
} sil_field_kind;

/* One choice of a field: its word in a sheet, and the words shown for it. */
typedef struct sil_choice {
    const char *word, *shown;
} sil_choice;

typedef struct sil_field {
    const char *path;
    const char *label; /* a short name, as printed over a blank */
    const char *hint;  /* one line: what it is, how to measure it or how to write it */
    sil_field_kind kind;
    const char *ends[2]; /* for SIL_FIELD_ENDS, the sheet's names for the ends; otherwise NULL */
    sil_measure measure; /* of its figures; has no meaning for fields without figures */
    const char *unit;    /* "deg", ..; "length" for a length in the sheet's units; "" for none */
    bool asked;          /* whether a blank measuring sheet has a place for it */
    int order;           /* its place in the order of work at the bench, from 0 */
    int choice_count;    /* a figure can have choices too, as a radius can be flat */
    const sil_choice *choices;
} sil_field;

/* sil_field_count, sil_field_at: all fields, in the order in which they are filled in at the bench.
 * Given:    order  0..sil_field_count() - 1
 */
int sil_field_count(void);
sil_field sil_field_at(int order);

/* sil_field_find: finds a field by its path.
 * Given:    path   without the indices of lists
 * Returned: field  untouched where there is none
 * Status:   true if there is one
 */
bool sil_field_find(const char *path, sil_field *field);

/* sil_field_within: whether a field is directly inside a part, as "nut.width" is inside "nut". */
bool sil_field_within(const char *path, const char *part);

/* sil_field_applies: whether a field applies to an instrument. The pitch of a screw applies only
 * where there are screws, and the depth of the saddle slot only where there is one.
 * Given:    path  of a field
 *           job   need not be checked; where the kind of saddle is not given, every saddle field
 *                 applies
 * Returned: false for a path that is not a field
 */
bool sil_field_applies(const char *path, const sil_job *job);

/* The value of a field in a job. */
typedef struct sil_field_value {
    int count; /* figures: 1; 2 for two ends; one for each string; 0 where it has none */
    double figure[SIL_STRINGS_MAX]; /* in the unit of its measure; SIL_UNKNOWN: not given */
    int choice;                     /* index of the choice, or -1 */
    const char *text;               /* the text, or NULL */
} sil_field_value;

/* sil_field_read: reads the value of a field from a job.
 * Given:    field    one with figures, a choice or a text
 *           job      need not be checked
 *           reading  index of the reading, for a field inside readings; -1: no reading
 * Returned: value    empty for fields of other kinds and for fields inside the rows of a list
 * Status:   true if a value is given
 * Notes:    a flat radius is INFINITY
 */
bool sil_field_read(const sil_field *field, const sil_job *job, int reading,
                    sil_field_value *value);

#ifdef __cplusplus
}
#endif
#endif
