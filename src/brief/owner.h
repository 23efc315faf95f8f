/* SPDX-License-Identifier: MIT */
/* What the owner of an instrument is told on one page, in everyday words: what was found, what was
 * done, the readings before and after, and what to look after. */
#ifndef SILLET_BRIEF_OWNER_H
#define SILLET_BRIEF_OWNER_H

#include "brief.h"

enum { BRIEF_OWNER_LINES = 8 };

typedef struct brief_owner_list {
    int count;
    brief_sentence line[BRIEF_OWNER_LINES];
} brief_owner_list;

typedef struct brief_owner {
    brief_owner_list found, done, next,
        care; /* next: what is still to do; empty when all is done */
    const char *before,
        *after; /* what the two columns of readings are; after is NULL for one column */
    brief_figure relief[2];
    brief_figure action[2][SIL_STRINGS_MAX]; /* at fret 12, before and after */
} brief_owner;

/* brief_owner_of: tells the owner. The sentences and their figures are kept in the brief. */
void brief_owner_of(brief *b, brief_owner *owner);

#endif
