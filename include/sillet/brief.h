/* SPDX-License-Identifier: MIT */
/* A plan in words: what a person is told, each sentence with its figures as data. */
#ifndef SILLET_BRIEF_FACE_H
#define SILLET_BRIEF_FACE_H

#include "plan.h"
#include "status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Everything a person is told of a plan, worked out once. */
typedef struct sil_brief sil_brief;

/* sil_brief_make: the words of a plan.
 * Given:    plan   made; must outlive the brief
 *           unit   of every length in the words
 * Returned: made   to be freed with sil_brief_free; NULL on error
 * Status:   SIL_DONE or SIL_NO_MEMORY
 */
sil_status sil_brief_make(const sil_plan *plan, sil_unit unit, sil_brief **made);
void sil_brief_free(sil_brief *brief);

/* sil_brief_finding: a finding as a sentence or two.
 * sil_brief_step:    what a step says to do.
 * sil_brief_check:   how to tell that it is done.
 * Given:    index  0 .. of the plan's findings, or of its steps
 * Returned: UTF-8; lives as long as the brief
 */
const char *sil_brief_finding(const sil_brief *brief, int index);
const char *sil_brief_step(const sil_brief *brief, int index);
const char *sil_brief_check(const sil_brief *brief, int index);

/* sil_brief_next:  the next work in a few words, "turn the truss rod"; "" where nothing is to be
 *                  put right.
 * sil_brief_waits: what nut and saddle wait for, "the truss rod, a look at the frets"; "" where
 *                  neither waits.
 * Returned: live as long as the brief
 */
const char *sil_brief_next(const sil_brief *brief);
const char *sil_brief_waits(const sil_brief *brief);

/* A figure inside a step's sentence, as data. */
typedef struct sil_said {
    const char *of;    /* what it is: a fixed word, as in the result */
    int string;        /* from 0, or -1 */
    double value;      /* exact: mm, or degrees, turns, %, as the sentence has it */
    const char *shown; /* as written in the sentence, no unit behind it */
} sil_said;

/* sil_brief_said: the figures of what a step says to do, in the order of the sentence.
 * Given:    step   0 .. of the plan's steps
 *           index  0 ..
 * Returned: said
 * Status:   false where there are no more
 */
bool sil_brief_said(const sil_brief *brief, int step, int index, sil_said *said);

/* sil_code_waits: why a part waits, for a person ("the truss rod is turned first").
 * Given:    code
 * Returned: fixed text; NULL for a code that holds nothing up
 */
const char *sil_code_waits(sil_code code);

#ifdef __cplusplus
}
#endif
#endif
