/* SPDX-License-Identifier: MIT */
/* The fields of a job, one row for each: its key, how it is written, where it is kept, and its
 * likely range. The check goes through these rows for a job, and the sheet reader for a sheet. */
#ifndef SILLET_JOB_FIELDS_H
#define SILLET_JOB_FIELDS_H

#include <sillet/job.h>

/* How a field is written in a sheet, which also decides how it is kept. */
typedef enum job_kind {
    JOB_AS_FIGURE,     /* double */
    JOB_AS_SCALE,      /* in sil_instrument: one scale, or treble, bass and the square fret */
    JOB_AS_PER_STRING, /* double[SIL_STRINGS_MAX]: a list, two ends, or one value for all */
    JOB_AS_OUTER, /* the same; two ends, or one value for both, are of the outer strings alone */
    JOB_AS_FIRST, /* the same of a reading's gaps at fret 1; each may be judged by ear */
    JOB_AS_RELIEF_GAP, /* double; or judged by ear */
    JOB_AS_PAIR,       /* two doubles, treble and bass: two ends, or one value for both */
    JOB_AS_TRAVEL,     /* two doubles, down and up: a mapping, or down alone */
    JOB_AS_RADIUS,     /* two doubles, nut and last fret: a figure, flat, or a mapping */
    JOB_AS_BAND,       /* sil_band: a mapping of low, aim, high, or the aim alone */
    JOB_AS_BANDS,      /* sil_band[SIL_STRINGS_MAX], treble to bass */
    JOB_AS_FILES,      /* the shop's nut files */
    JOB_AS_COUNT,      /* int, low..high */
    JOB_AS_INDEX,      /* int: a string counted from 1, kept from 0 */
    JOB_AS_SPAN,       /* two ints: [low, high] */
    JOB_AS_WORD,       /* an enum, by its words */
    JOB_AS_FLAG,       /* a bool, by its words */
    JOB_AS_TEXT,       /* const char * */
    JOB_AS_NOTE,       /* a note in sil_string: its text and its frequency */
    JOB_AS_PART,       /* a mapping of further fields */
    JOB_AS_RELIEF,     /* a mapping of further fields, or a value for the first of them alone */
    JOB_AS_STRINGS,
    JOB_AS_READINGS,
    JOB_AS_CROWNS,
    JOB_AS_BUZZ,
    JOB_AS_MAKE,    /* sil_make: one of its words, or a list of them */
    JOB_AS_MARKED,  /* bool[SIL_STRINGS_MAX]: a list of strings, counted from 1 */
    JOB_AS_ATTACK,  /* a mapping of further fields, or the name of one of the attacks */
    JOB_AS_ATTACKS, /* attacks by name */
    JOB_AS_STYLE,   /* const char *: the name of one of the styles */
    JOB_AS_STYLES,  /* styles by name, each a job_style */
    JOB_AS_MATERIALS,
    JOB_AS_PLAUSIBLE,
    JOB_AS_FORMAT, /* belongs to the sheet itself: nothing is kept */
    JOB_KINDS
} job_kind;

/* The parts that JOB_AS_MAKE names. */
enum { JOB_MAKES_NUT, JOB_MAKES_SADDLE };

typedef enum job_sign { JOB_ANY_SIGN, JOB_FROM_ZERO, JOB_OVER_ZERO } job_sign;

/* A word and its value. */
typedef struct job_word {
    const char *text;
    int value;
} job_word;

enum { JOB_WORDS_MAX = 8, JOB_NOT_KEPT = 0xffff };

typedef struct job_table job_table;

typedef struct job_field {
    const char *key;
    job_kind kind;
    bool required;
    size_t at; /* offset in the struct the table is of, or JOB_NOT_KEPT */
    sil_measure measure;
    job_sign sign;
    double low, high; /* likely range; for a count, the only range possible */
    const job_table *of;
    const job_word *words; /* ends with a NULL text */
    int marked; /* 1 + a sil_marked: fractions of an inch tell how closely it was read; 0: not */
} job_field;

/* What a style of playing gives. */
typedef struct job_style {
    sil_targets targets;
    sil_attack attack;
} job_style;

struct job_table {
    const job_field *fields;
    int count;
};

extern const job_table job_table_all;
extern const job_table job_table_string;
extern const job_table job_table_reading;
extern const job_table job_table_material;
extern const job_table job_table_crown;
extern const job_table job_table_buzz;
extern const job_word job_material_words[];
extern const job_word job_attack_words[];

/* job_table_find: the field of a key, or NULL. */
const job_field *job_table_find(const job_table *table, const char *key, size_t length);

/* job_field_find: the field of a path without list indexes ("strings.gauge"), or NULL if the path
 * does not lead to a figure. */
const job_field *job_field_find(const char *path);

/* job_field_factor: what a figure in its measure's unit is multiplied by to be kept (a unit mass is
 * written in g/m and kept in kg/m). */
double job_field_factor(const job_field *field);

/* job_field_place: where a field of a struct is kept. */
void *job_field_place(const job_field *field, void *base);
const void *job_field_seen(const job_field *field, const void *base);

/* job_table_clear: makes every figure of a struct unknown. */
void job_table_clear(const job_table *table, void *base);

/* Whether 0 is a count like others here, so that one that was not given is -1. */
bool job_counts_from_nought(const job_field *field);

#endif
