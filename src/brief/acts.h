/* SPDX-License-Identifier: MIT */
/* Within the brief: the words of an act. */
#ifndef SILLET_BRIEF_ACTS_H
#define SILLET_BRIEF_ACTS_H

#include "say.h"

typedef struct act_words {
    const char *word;  /* fixed, for scripts */
    say *what, *check; /* the sentences of its step */
    const char *next;  /* at most 25 letters; NULL for a step that is not work on the instrument */
} act_words;

act_words act_words_of(sil_act act);

#endif
