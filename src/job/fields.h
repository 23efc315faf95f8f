/* SPDX-License-Identifier: MIT */
/* What a job holds, one row a field: its key, how it is written, where it is kept, and what it is
 * likely to be. The check walks these rows over a job; the sheet reader walks them over a sheet. */
#ifndef SILLET_JOB_FIELDS_H
#define SILLET_JOB_FIELDS_H

#include <sillet/job.h>

/* How a field is written in a sheet, and so what is kept of it. */
typedef enum sil_kind {
    SIL_AS_FIGURE,     /* double */
    SIL_AS_SCALE,      /* in sil_instrument: one scale, or treble, bass and the square fret */
    SIL_AS_PER_STRING, /* double[SIL_STRINGS_MAX]: a list, two ends, or one value for all */
    SIL_AS_FIRST,      /* the same of a reading's gaps at fret 1; each may be judged by ear */
    SIL_AS_RELIEF_GAP, /* double; or judged by ear */
    SIL_AS_PAIR,       /* two doubles, treble and bass: two ends, or one value for both */
    SIL_AS_RADIUS,     /* two doubles, nut and last fret: a figure, flat, or a mapping */
    SIL_AS_BAND,       /* sil_band: a mapping of low, aim, high, or the aim alone */
    SIL_AS_BANDS,      /* sil_band[SIL_STRINGS_MAX], treble to bass */
    SIL_AS_FILES,      /* the shop's nut files */
    SIL_AS_COUNT,      /* int, low..high */
    SIL_AS_INDEX,      /* int: a string counted from 1, kept from 0 */
    SIL_AS_SPAN,       /* two ints: [low, high] */
    SIL_AS_WORD,       /* an enum, by its words */
    SIL_AS_FLAG,       /* a bool, by its words */
    SIL_AS_TEXT,       /* const char * */
    SIL_AS_NOTE,       /* a note in sil_string: its text and its frequency */
    SIL_AS_PART,       /* a mapping of further fields */
    SIL_AS_RELIEF,     /* a mapping of further fields, or the first of them alone */
    SIL_AS_STRINGS,
    SIL_AS_READINGS,
    SIL_AS_CROWNS,
    SIL_AS_BUZZ,
    SIL_AS_ATTACK,  /* a mapping of further fields, or the name of one of the attacks */
    SIL_AS_ATTACKS, /* attacks by name */
    SIL_AS_MATERIALS,
    SIL_AS_PLAUSIBLE,
    SIL_AS_FORMAT, /* of the sheet itself: nothing is kept */
    SIL_KINDS
} sil_kind;

typedef enum sil_sign { SIL_ANY_SIGN, SIL_FROM_ZERO, SIL_OVER_ZERO } sil_sign;

/* A word and what it stands for. */
typedef struct sil_word {
    const char *text;
    int value;
} sil_word;

enum { SIL_WORDS_MAX = 8, SIL_NOT_KEPT = 0xffff };

typedef struct sil_table sil_table;

typedef struct sil_field {
    const char *key;
    sil_kind kind;
    bool required;
    size_t at; /* offset in the struct the table is of, or SIL_NOT_KEPT */
    sil_measure measure;
    sil_sign sign;
    double low, high; /* likely range; for a count, all it can be */
    const sil_table *of;
    const sil_word *words; /* ends with a NULL text */
} sil_field;

struct sil_table {
    const sil_field *fields;
    int count;
};

extern const sil_table sil_job_table;
extern const sil_table sil_string_table;
extern const sil_table sil_reading_table;
extern const sil_table sil_material_table;
extern const sil_table sil_crown_table;
extern const sil_table sil_buzz_table;
extern const sil_word sil_make_words[];
extern const sil_word sil_attack_words[];

/* sil_table_find: the field of a key, or NULL. */
const sil_field *sil_table_find(const sil_table *table, const char *key, size_t length);

/* sil_field_find: the field of a path without list places ("strings.gauge"), or NULL where the path
 * leads to no figure. */
const sil_field *sil_field_find(const char *path);

/* sil_field_factor: what a figure in its measure's unit is multiplied by to be kept (a unit mass is
 * written in g/m and kept in kg/m). */
double sil_field_factor(const sil_field *field);

/* sil_field_place: where a field of a struct is kept. */
void *sil_field_place(const sil_field *field, void *base);
const void *sil_field_seen(const sil_field *field, const void *base);

/* sil_table_clear: makes every figure of a struct unknown. */
void sil_table_clear(const sil_table *table, void *base);

#endif
