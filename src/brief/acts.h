/* SPDX-License-Identifier: MIT */
/* Within the brief: the words of an act. */
#ifndef SILLET_BRIEF_ACTS_H
#define SILLET_BRIEF_ACTS_H

#include "large.h"
#include "say.h"

/* What a step is worked to, by the fixed word of its figures in `of`, and what a bench card calls it. */
typedef struct act_figure {
    const char *of, *label;
} act_figure;

typedef struct act_words {
    const char *word;  /* fixed, for scripts */
    say *what, *check; /* the sentences of its step */
    const char *next;  /* at most 25 letters; NULL for a step that is not work on the instrument */
    const char *main;  /* the figure of the step that says how much, as in `of`; NULL for none */
    const char
        *care; /* how to be safe where it cuts, glues or takes the strings' pull off, or NULL */
    act_figure
        large[BRIEF_LARGE_ROWS]; /* set large on a bench card; NULL where there are no more */
} act_words;

act_words act_words_of(sil_act act);

#endif
