/* SPDX-License-Identifier: MIT */
/* Used inside the core: what is to be done at each string, at the nut and at the saddle. */
#ifndef SILLET_CORE_VERDICT_H
#define SILLET_CORE_VERDICT_H

#include <sillet/core/fit.h>

/* The height over the chord that gives a string its target, mm: of a slot that is there; of one that
 * may be made from a blank; and at the saddle. fit: its bend, crowns and the other height are used. */
double core_wanted_slot(const sil_bench *bench, const sil_fit *fit, int string);
double core_wanted_nut(const sil_bench *bench, const sil_stages *stages, const sil_fit *fit,
                       int string);
double core_wanted_saddle(const sil_bench *bench, const sil_fit *fit, int string);

/* Whether a verdict puts a string to its aim. */
bool core_is_worked(sil_verdict verdict);

/* Judge every string by the fit of its stage, which holds the state before it, and put those that
 * are worked to where they are to end. */
void core_judge_nut(const sil_bench *bench, sil_stages *stages);
void core_judge_saddle(const sil_bench *bench, sil_stages *stages);

#endif
