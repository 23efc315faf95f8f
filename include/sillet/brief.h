/* SPDX-License-Identifier: MIT */
/* A plan in words: the sentences that a person reads, and the figures in them as data. */
#ifndef SILLET_BRIEF_FACE_H
#define SILLET_BRIEF_FACE_H

#include "plan.h"
#include "status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Everything that a plan shows a person, worked out once. */
typedef struct sil_brief sil_brief;

/* sil_brief_make: puts a plan into words.
 * Given:    plan   made; must outlive the brief
 *           unit   of every length in the sentences
 * Returned: made   to be freed with sil_brief_free; NULL on error
 * Status:   SIL_DONE or SIL_NO_MEMORY
 */
sil_status sil_brief_make(const sil_plan *plan, sil_unit unit, sil_brief **made);

/* sil_brief_free: frees a brief; NULL is allowed. */
void sil_brief_free(sil_brief *brief);

/* sil_brief_finding: a finding, in a sentence or two.
 * sil_brief_step:    what to do in a step.
 * sil_brief_check:   how to check that the step is done.
 * Given:    index  of the finding or step in the plan's lists, from 0
 * Returned: UTF-8 text that lives as long as the brief
 */
const char *sil_brief_finding(const sil_brief *brief, int index);
const char *sil_brief_step(const sil_brief *brief, int index);
const char *sil_brief_check(const sil_brief *brief, int index);

/* sil_brief_next:  the next work in a few words, as "turn the truss rod"; "" where nothing needs
 *                  to be put right.
 * sil_brief_waits: what the nut and saddle wait for, as "the truss rod, a look at the frets"; ""
 *                  where neither waits.
 * Returned: UTF-8 text that lives as long as the brief
 */
const char *sil_brief_next(const sil_brief *brief);
const char *sil_brief_waits(const sil_brief *brief);

/* A figure in the sentence of a step, as data. */
typedef struct sil_said {
    const char *of;    /* what the figure is: a fixed word, as in the result */
    int string;        /* from 0; -1 for a figure of no one string */
    double value;      /* exact; in mm, degrees, turns or %, as in the sentence */
    const char *shown; /* as written in the sentence, without its unit */
} sil_said;

/* sil_brief_said: one of the figures in the sentence of a step, in the order of the sentence.
 * Given:    step   of the plan's steps, from 0
 *           index  of the figure, from 0
 * Returned: said   untouched where there is no such figure
 * Status:   false where there is no such figure
 */
bool sil_brief_said(const sil_brief *brief, int step, int index, sil_said *said);

/* sil_code_waits: why a part waits because of a finding, as "the truss rod is turned first".
 * Given:    code  of the finding
 * Returned: fixed text, not to be freed; NULL for a code that no part waits for
 */
const char *sil_code_waits(sil_code code);

#ifdef __cplusplus
}
#endif
#endif
