/* SPDX-License-Identifier: MIT */
/* Within the brief: the words of an act. */
#ifndef SILLET_BRIEF_ACTS_H
#define SILLET_BRIEF_ACTS_H

#include "say.h"

typedef struct act_words {
    const char *word;  /* fixed, for scripts */
    say *what, *check; /* the sentences of its step */
    const char *next;  /* at most 25 letters; NULL for a step that is not work on the instrument */
    const char *main;  /* the figure of the step that says how much, as in `of`; NULL for none */
} act_words;

act_words act_words_of(sil_act act);

/* How to be safe in a step that cuts, glues or takes the strings' pull off; "" for any other. */
const char *act_care(sil_act act);

#endif
