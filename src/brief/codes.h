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
    const char *subject;                    /* what was read; "%" is replaced by the fret */
    const char *meaning;                    /* what that means */
    const char *meaning_act, *meaning_stop; /* where it is work, or stops it; NULL: the same */
    say_found *sentence;                    /* its own sentence, or NULL */
} code_words;

code_words code_words_of(sil_code code);

/* What a finding of this code means at this level. */
const char *code_meaning_of(sil_code code, sil_level level);

/* A part that waits because of a code. All are NULL for a code that no part waits for. */
typedef struct code_wait {
    const char *why;      /* why it waits, as a clause: "relief was not measured" */
    const char *for_what; /* what it waits for: "the relief" */
    const char *next;     /* for a code that stops all work: what to do about it; else NULL */
} code_wait;

code_wait code_wait_of(sil_code code);

#endif
