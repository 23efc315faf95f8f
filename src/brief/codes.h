/* SPDX-License-Identifier: MIT */
/* Within the brief: the words of a code. */
#ifndef SILLET_BRIEF_CODES_H
#define SILLET_BRIEF_CODES_H

#include "say.h"

/* What the figure behind a finding is. */
typedef enum code_figure { NO_FIGURE, LENGTH, PERCENT, SHARE, DEGREES, NEWTONS } code_figure;

/* A code without a sentence of its own is told as "SUBJECT, string 2: FIGURE (target LOW to HIGH).
 * MEANING". */
typedef struct code_words {
    const char *word; /* fixed, for scripts */
    code_figure figure;
    const char *subject; /* what was read; "%" stands for the fret */
    const char *meaning; /* and what of it */
    void (*sentence)(const brief *b, double read, telling *t); /* or one of its own */
    const char *why;      /* of one that holds a part up, as a clause: "relief was not measured" */
    const char *for_what; /* what the part then waits for: "the relief" */
    const char *next;     /* of one that stops all work: what to do about it */
} code_words;

code_words code_words_of(sil_code code);

#endif
