/* SPDX-License-Identifier: MIT */
/* Within the brief: the words of a code. */
#ifndef SILLET_BRIEF_CODES_H
#define SILLET_BRIEF_CODES_H

#include "say.h"

/* What kind of figure a finding has. */
typedef enum code_figure { NO_FIGURE, LENGTH, PERCENT, SHARE, DEGREES, NEWTONS, CENTS } code_figure;

/* A code without a sentence of its own reads "SUBJECT, string 2: FIGURE (target LOW to HIGH).
 * MEANING". */
typedef struct code_words {
    const char *word; /* fixed, for scripts */
    code_figure figure;
    const char *subject;  /* what was read; "%" is replaced by the fret */
    const char *meaning;  /* what that means */
    say_found *sentence;  /* its own sentence, or NULL */
    const char *why;      /* why a part waits, as a clause: "relief was not measured" */
    const char *for_what; /* what the part waits for: "the relief" */
    const char *next;     /* for a code that stops all work: what to do about it */
} code_words;

code_words code_words_of(sil_code code);

#endif
