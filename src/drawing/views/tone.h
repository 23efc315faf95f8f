/* SPDX-License-Identifier: MIT */
/* The views of the paper on buzz and intonation. */
#ifndef SILLET_DRAWING_SOUND_H
#define SILLET_DRAWING_SOUND_H

#include "views.h"

/* What is left of a note's clean force over the pick. */
typedef enum view_shade { VIEW_SHADE_NONE, VIEW_SHADE_NEAR, VIEW_SHADE_BUZZES } view_shade;

view_shade view_clearance_shade(const draw_draft *draft, const sil_clearance *clean, int string,
                                int stop);

/* How the tables of clean force are laid out, the one now and the one after alike. */
typedef struct view_clearance_form {
    double label, figure, fret; /* widths of the stops' names, of a force, of the fret beside it */
    double cell;                /* width of a column */
    bool paired;                /* both side by side on the width, stops named once */
    double second;              /* where the one after then begins */
} view_clearance_form;

view_clearance_form view_clearance_measure(const draw_draft *draft, const draw_shapes *list,
                                           double width);

/* view_clearance_table: stops first .. end of the table now or after, its top left corner at the
 * origin. */
void view_clearance_table(const draw_draft *draft, draw_shapes *list,
                          const view_clearance_form *form, bool after, int first, int end);
double view_clearance_height(int rows);
int view_clearance_rows(double height); /* as many as go into a height */

/* What the shading means, on one line. */
void view_clearance_key(const draw_draft *draft, draw_shapes *list);

/* Relief, gap and action that would just ring clean, beside what the work leaves. */
void view_lowest(const draw_draft *draft, draw_shapes *list, double width);

/* Graphs of the cents at frets 1 to 12, all to one scale, as many as go side by side on a width:
 * as built dashed, at the best pair solid. */
enum { VIEW_GRAPHS_ABREAST = 3 };
typedef struct view_cents_scale {
    int low, high, step; /* cents */
} view_cents_scale;

view_cents_scale view_cents_measure(const draw_draft *draft);
void view_cents(const draw_draft *draft, draw_shapes *list, const view_cents_scale *scale,
                int first, double width);
void view_cents_key(draw_shapes *list);

/* The string's note farthest from in tune, cents: its size; unknown where it is not known. */
double view_cents_worst(const double *cents);

/* Where each string is to leave nut and saddle, a row a string. */
void view_pitch(const draw_draft *draft, draw_shapes *list, double width);

/* Whether the saddle is one piece whose thickness is known, in which contact points have to fall.
 */
bool view_saddle_in_slot(const draw_draft *draft);
/* How far a string's contact point falls outside it, mm: - in front of it, + behind, 0 inside. */
double view_saddle_outside(const draw_draft *draft, int string);
bool view_saddle_any_outside(const draw_draft *draft);

/* The saddle from above, the nut up: where each string plays in tune, and the best straight slot
 * where it is another one. Nothing where no such point is known, or one is far off. */
void view_slot(const draw_draft *draft, draw_shapes *list, double scale);
/* view_best_slot_fits: whether a better slot is shown with it: there is one, and not so steep that
 * it runs off the view. */
bool view_best_slot_fits(const draw_draft *draft);

#endif
