/* SPDX-License-Identifier: MIT */
/* The fields of a measuring sheet in a person's words: what stands over a blank, how to take the
 * figure, which words a choice has, and which fields an instrument has at all. Whoever asks for
 * readings, on paper or on a screen, takes the words from here.
 *
 * A field is named by its path without list places: "readings.first", "strings.gauge".
 */
#ifndef SILLET_FIELDS_H
#define SILLET_FIELDS_H

#include "job.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How a field is given. */
typedef enum sil_field_kind {
    SIL_FIELD_PART,    /* holds further fields, and has no value of its own */
    SIL_FIELD_FIGURE,  /* one figure */
    SIL_FIELD_ENDS,    /* a figure at each of two ends, or one for both */
    SIL_FIELD_EACH,    /* a figure for each string */
    SIL_FIELD_COUNT,   /* a whole number: a fret, a string */
    SIL_FIELD_CHOICE,  /* one of its choices */
    SIL_FIELD_TEXT,    /* a text */
    SIL_FIELD_TARGET,  /* low, aim and high */
    SIL_FIELD_TARGETS, /* low, aim and high for each string */
    SIL_FIELD_LIST     /* as many as there are */
} sil_field_kind;

/* A word as a sheet has it, and the words a person reads for it. */
typedef struct sil_choice {
    const char *word, *shown;
} sil_choice;

typedef struct sil_field {
    const char *path;
    const char *label; /* short, as over a blank */
    const char *hint;  /* one line: what it is, how to measure it or what form it takes */
    sil_field_kind kind;
    const char *ends[2]; /* of SIL_FIELD_ENDS: what the sheet calls them; else NULL */
    sil_measure measure; /* of its figures; of no meaning for other kinds */
    const char *unit;    /* "length", which is in the sheet's units; "deg", ..; "" where none */
    bool asked;          /* a blank measuring sheet has a place for it */
    int order;           /* its place in the order of the bench, from 0 */
    int choice_count;    /* a figure may have choices too: a radius can be flat */
    const sil_choice *choices;
} sil_field;

/* sil_field_count, sil_field_at: all fields, in the order they are taken at the bench.
 * Given:    order  0..count - 1
 */
int sil_field_count(void);
sil_field sil_field_at(int order);

/* sil_field_find: the field of a path.
 * Returned: field  untouched where there is none
 * Status:   whether there is one
 */
bool sil_field_find(const char *path, sil_field *field);

/* sil_field_within: whether a path is that of a field directly in a part: "nut.width" in "nut". */
bool sil_field_within(const char *path, const char *part);

/* sil_field_applies: whether a field makes sense on an instrument: the pitch of a screw only where
 * there are screws, the depth of the saddle slot only where there is a slot.
 * Given:    path  of a field; any other does not apply
 *           job   need not be checked; a saddle whose kind is not given rules nothing out
 */
bool sil_field_applies(const char *path, const sil_job *job);

/* What a job has for a field. */
typedef struct sil_field_value {
    int count; /* of figures: 1; 2 of ends; one a string; 0 where the field has none */
    double figure[SIL_STRINGS_MAX]; /* in the unit of its measure; SIL_UNKNOWN: not given */
    int choice;                     /* its place among the choices, or -1 */
    const char *text;               /* of a text, or NULL */
} sil_field_value;

/* sil_field_read: what a job has for a field that is a figure, figures, a choice or a text.
 * Given:    reading  index of the reading for a field within readings, or -1: nothing is read
 * Returned: value    nothing for the other kinds, and within the rows of a list
 * Status:   whether anything is given
 * Notes:    a flat radius is INFINITY
 */
bool sil_field_read(const sil_field *field, const sil_job *job, int reading,
                    sil_field_value *value);

#ifdef __cplusplus
}
#endif
#endif
