/* SPDX-License-Identifier: MIT */
/* Puts the steps into words. */
#include "acts.h"
#include "within.h"

static brief_sentence said(brief *b, say *sentence)
{
    telling t = tell_begin(b);
    sentence(b, &t);
    return tell_end(&t);
}

void brief_fill_steps(brief *b)
{
    const sil_plan *plan = b->plan;
    bool cared = false;
    b->steps = text_store_room(&b->store, SIL_STEPS_MAX * sizeof *b->steps);
    for (int k = 0; b->steps && k < plan->step_count; k++) {
        const sil_step *step = &plan->steps[k];
        act_words words = act_words_of(step->act);
        const char *care = cared || !words.care ? "" : words.care;
        b->steps[k] = (brief_step){.stage = step->stage,
                                   .act = step->act,
                                   .what = said(b, words.what),
                                   .check = said(b, words.check),
                                   .care = care};
        cared = cared || care[0];
    }
}
