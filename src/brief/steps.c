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

/* How to be safe from each danger. */
static const struct {
    act_danger danger;
    const char *care;
} cares[] = {
    {ACT_PARTING, "Slacken the strings before the part comes out."},
    {ACT_CUTTING, "Wear eye protection. Use dust extraction and a mask."},
    {ACT_GLUING, "Ventilate where glue is used."},
};

/* How to be safe from the dangers among `dangers`; "" for none. */
static const char *care_for(brief *b, unsigned dangers)
{
    text words = {0};
    for (size_t k = 0; k < sizeof cares / sizeof *cares; k++) {
        if (dangers & cares[k].danger) {
            text_add(&words, "%s%s", words.length > 0 ? " " : "", cares[k].care);
        }
    }
    return dangers ? text_keep_made(&b->store, &words) : "";
}

/* Each caution is said once, at the first step that has its danger. */
void brief_fill_steps(brief *b)
{
    const sil_plan *plan = b->plan;
    unsigned told = 0; /* the dangers that an earlier step warned of */
    b->steps = text_store_room(&b->store, SIL_STEPS_MAX * sizeof *b->steps);
    for (int k = 0; b->steps && k < plan->step_count; k++) {
        const sil_step *step = &plan->steps[k];
        act_words words = act_words_of(step->act);
        b->steps[k] = (brief_step){.stage = step->stage,
                                   .act = step->act,
                                   .what = said(b, words.what),
                                   .check = said(b, words.check),
                                   .first = words.first ? said(b, words.first).words : "",
                                   .care = care_for(b, words.dangers & ~told),
                                   .goes_on = words.goes_on && k + 1 < plan->step_count};
        told |= words.dangers;
    }
}
