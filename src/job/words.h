/* SPDX-License-Identifier: MIT */
/* The words for each field, one row for each, in the order in which they are filled in at the
 * bench. The rows of fields.h are for the program; these are for the person who measures. */
#ifndef SILLET_JOB_WORDS_H
#define SILLET_JOB_WORDS_H

#include <sillet/fields.h>

/* The instruments that a field applies to. */
typedef enum job_where {
    JOB_EVERYWHERE,
    JOB_ON_A_FAN,          /* there are two scales */
    JOB_WHERE_IT_BENDS,    /* there is a fret between the 1st and the body joint */
    JOB_BOLTED_ON,         /* by the dimensions given, the neck may be bolted on */
    JOB_SET_IN,            /* by the dimensions given, the neck may be set in */
    JOB_WITH_WOUND,        /* some string is wound */
    JOB_IN_COURSES,        /* some strings are in pairs */
    JOB_SEVERAL_STRINGS,   /* more than one */
    JOB_SLOTS_BEAR,        /* the nut slots set the height, and not a zero fret */
    JOB_IN_A_SLOT,         /* the saddle is in a slot of the bridge */
    JOB_IN_ONE_PIECE,      /* the saddle is cut to its height: in a slot, or at its feet */
    JOB_ON_SCREWS,         /* height screws, posts or thumbwheels carry the strings */
    JOB_PERHAPS_ON_SCREWS, /* the same, or a floating bridge, which may have thumbwheels */
    JOB_ON_POSTS,          /* one bridge on two posts, or on two thumbwheels */
    JOB_NOWHERE
} job_where;

typedef struct job_words {
    const char *path, *label, *hint;
    job_where where;
    bool asked;                /* a blank measuring sheet has a place for it */
    const sil_choice *choices; /* ends with a NULL word */
} job_words;

extern const job_words job_words_table[];
extern const int job_words_count;

/* job_words_of: the words of a path, or NULL. */
const job_words *job_words_of(const char *path);

#endif
