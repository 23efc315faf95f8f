/* SPDX-License-Identifier: MIT */
/* The sheet on buzz and intonation: its two parts and their views. */
#ifndef SILLET_DRAWING_SOUND_H
#define SILLET_DRAWING_SOUND_H

#include "sheet.h"
#include "views.h"

void sil_flow_buzz(sil_flow *flow);
void sil_flow_tune(sil_flow *flow);

/* What is left of a note's clean force over the pick. */
typedef enum sil_shade { SIL_SHADE_NONE, SIL_SHADE_NEAR, SIL_SHADE_BUZZES } sil_shade;

sil_shade sil_clearance_shade(const sil_draft *draft, const sil_clearance *clean, int string,
                              int stop);

/* How the tables of clean force are laid out, the one now and the one after alike. */
typedef struct sil_clearance_form {
    double label, figure, fret; /* widths of the stops' names, of a force, of the fret beside it */
    double cell;                /* width of a column */
    bool paired;                /* both side by side on the width, stops named once */
    double second;              /* where the one after then begins */
} sil_clearance_form;

sil_clearance_form sil_clearance_measure(const sil_draft *draft, const sil_shapes *list,
                                         double width);

/* sil_clearance_table: stops first .. end of the table now or after, its top left corner at the
 * origin. */
void sil_clearance_table(const sil_draft *draft, sil_shapes *list, const sil_clearance_form *form,
                         bool after, int first, int end);
double sil_clearance_height(int rows);
int sil_clearance_rows(double height); /* as many as go into a height */

/* What the shading means, on one line. */
void sil_clearance_key(const sil_draft *draft, sil_shapes *list);

/* Relief, gap and action that would just ring clean, beside what the work leaves. */
void sil_lowest_view(const sil_draft *draft, sil_shapes *list, double width);

/* Graphs of the cents at frets 1 to 12, all to one scale, as many as go side by side on a width:
 * as built dashed, at the best pair solid. */
enum { SIL_GRAPHS_ABREAST = 3 };
typedef struct sil_cents_scale {
    int low, high, step; /* cents */
} sil_cents_scale;

sil_cents_scale sil_cents_measure(const sil_draft *draft);
void sil_cents_view(const sil_draft *draft, sil_shapes *list, const sil_cents_scale *scale,
                    int first, double width);
void sil_cents_key(sil_shapes *list);

/* The string's note farthest from in tune, cents: its size; unknown where it is not known. */
double sil_cents_worst(const double *cents);

/* Where each string is to leave nut and saddle, a row a string. */
void sil_pitch_table(const sil_draft *draft, sil_shapes *list, double width);

/* Whether the saddle is one piece whose thickness is known, in which contact points have to fall.
 */
bool sil_saddle_in_slot(const sil_draft *draft);
/* How far a string's contact point falls outside it, mm: - in front of it, + behind, 0 inside. */
double sil_saddle_outside(const sil_draft *draft, int string);
bool sil_saddle_any_outside(const sil_draft *draft);

/* The saddle from above, the nut up: where each string plays in tune, and the best straight slot
 * where it is another one. Nothing where no such point is known, or one is far off. */
void sil_slot_view(const sil_draft *draft, sil_shapes *list, double scale);
/* sil_best_slot_fits: whether a better slot is shown with it: there is one, and not so steep that
 * it runs off the view. */
bool sil_best_slot_fits(const sil_draft *draft);

#endif
