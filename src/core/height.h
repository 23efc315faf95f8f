/* SPDX-License-Identifier: MIT */
/* Used inside the core: one height from one gap. Lengths in mm, strings counted from 0. */
#ifndef SILLET_CORE_HEIGHT_H
#define SILLET_CORE_HEIGHT_H

#include <sillet/core/fit.h>

/* x_1 / x_h: where the first fret is along a string lying on crown h, as a share of the way. */
double core_held_share(const sil_board *board, int string, sil_hold hold);

/* Nut height from the gap at fret 1 of a string lying on crown 2 or 3. */
double core_nut_from_held(const sil_board *board, const sil_fit *fit, int string, sil_hold hold,
                          double gap);

/* Nut height from two gaps of the open string, at fret 1 and at another. */
double core_nut_from_open(const sil_board *board, const sil_fit *fit, int string, double first,
                          int fret, double action);

/* Saddle height from the open string's action over a fret, the nut's height known. */
double core_saddle_from_action(const sil_board *board, const sil_fit *fit, int string, int fret,
                               double action, double nut_height);

/* The fret that a string of a new nut is judged by: the crown it is held on, or for an open string
 * the fret of its action. */
int core_far_fret(const sil_targets *targets);

/* How far down the crown at fret 1 is worn under a string whose slot is, or was, made from a blank, mm;
 * otherwise 0. A slot cut over the worn spot would be too low once the fret is put right. */
double core_dent_left(const sil_bench *bench, const sil_fit *fit, int string);

/* Nut height of a string of a new nut: at its target, or that of a copy. fit: its bend and crowns
 * are used. level_depth: what the frets were levelled by, mm. */
double core_new_nut_height(const sil_bench *bench, const sil_fit *fit, double level_depth,
                           int string);

#endif
