/* SPDX-License-Identifier: MIT */
/* Within the brief: the words of an act. */
#ifndef SILLET_BRIEF_ACTS_H
#define SILLET_BRIEF_ACTS_H

#include "large.h"
#include "say.h"

/* What a step is worked to, by the fixed word of its figures in `of`, and what a bench card calls it.
 * Where the step stops at that figure, `until` is how it goes on from the step's title. */
typedef struct act_figure {
    const char *of, *label, *until;
} act_figure;

/* What is dangerous in an act, so that its step says how to be safe. */
typedef enum act_danger {
    ACT_PARTING = 1, /* a part comes out from under the strings' pull */
    ACT_CUTTING = 2, /* chips and dust */
    ACT_GLUING = 4   /* fumes */
} act_danger;

typedef struct act_words {
    const char *word;  /* fixed, for scripts */
    say *what, *check; /* the sentences of its step */
    say *first;        /* what the first of them may begin with, to be done before; NULL for none */
    const char *next;  /* at most 25 letters; NULL for a step that is not work on the instrument */
    const char *main;  /* the figure of the step that says how much, as in `of`; NULL for none */
    unsigned dangers;  /* of act_danger, together; 0 for none */
    bool goes_on;      /* the step after it can be begun at once, with nothing to measure between */
    act_figure
        large[BRIEF_LARGE_ROWS]; /* set large on a bench card; NULL where there are no more */
} act_words;

act_words act_words_of(sil_act act);

/* What a step is called in a few words on this instrument; NULL for one that is no work on it. */
const char *act_called(const sil_plan *plan, sil_act act);

#endif
