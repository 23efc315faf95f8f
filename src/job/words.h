/* SPDX-License-Identifier: MIT */
/* What a person is told of each field, one row a field, in the order they are taken at the bench.
 * The rows of fields.h are for the machine; these are for whoever measures. */
#ifndef SILLET_JOB_WORDS_H
#define SILLET_JOB_WORDS_H

#include <sillet/fields.h>

/* On which instruments a field makes sense. */
typedef enum job_where {
    JOB_EVERYWHERE,
    JOB_ON_A_FAN,          /* the outer strings have a scale each */
    JOB_WHERE_IT_BENDS,    /* a fret stands between the 1st and the body joint */
    JOB_BOLTED_ON,         /* the neck, as far as anything is said of it */
    JOB_SET_IN,            /* the neck, likewise */
    JOB_WITH_WOUND,        /* some string is wound */
    JOB_IN_COURSES,        /* some strings run in pairs */
    JOB_SEVERAL_STRINGS,   /* more than one */
    JOB_SLOTS_BEAR,        /* the slots of the nut set the height: no zero fret does */
    JOB_IN_A_SLOT,         /* the saddle stands in a slot of the bridge */
    JOB_IN_ONE_PIECE,      /* the saddle is cut to its height: in a slot, or at its feet */
    JOB_ON_SCREWS,         /* height screws, posts or thumbwheels carry the strings */
    JOB_PERHAPS_ON_SCREWS, /* the same, or a floating bridge whose pitch would say so */
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
