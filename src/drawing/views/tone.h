/* SPDX-License-Identifier: MIT */
/* The views of the paper on buzz and intonation. */
#ifndef SILLET_DRAWING_SOUND_H
#define SILLET_DRAWING_SOUND_H

#include "views.h"

/* How close a note is to buzzing: its clean force compared with the pick. */
typedef enum view_shade { VIEW_SHADE_NONE, VIEW_SHADE_NEAR, VIEW_SHADE_BUZZES } view_shade;

view_shade view_clearance_shade(const draw_draft *draft, const sil_clearance *clean, int string,
                                int stop);

/* The layout of the tables of clean force, the same for the one now and the one after the work. */
typedef struct view_clearance_form {
    double label, figure, fret; /* widths of the row names, of a force, of the fret after it */
    double cell;                /* width of a column */
    bool paired;                /* both tables side by side, with the row names once */
    double second;              /* the left edge of the second table, if they are paired */
} view_clearance_form;

view_clearance_form view_clearance_measure(const draw_draft *draft, const draw_shapes *list,
                                           double width);

/* view_clearance_table: draws the rows from first up to end of the table, now or after the work,
 * with its top left corner at the origin. */
void view_clearance_table(const draw_draft *draft, draw_shapes *list,
                          const view_clearance_form *form, bool after, int first, int end);
double view_clearance_height(const draw_draft *draft, int rows);
int view_clearance_rows(const draw_draft *draft, double height); /* as many as fit into a height */

/* Draws what the shading means, on one line. */
void view_clearance_key(const draw_draft *draft, draw_shapes *list);

/* Draws the relief, gap and action that would just ring clean, compared with those after the
 * work. */
void view_lowest(const draw_draft *draft, draw_shapes *list, double width);

/* Draws graphs of the cents at frets 1 to 12, all to the same scale, as many side by side as fit
 * the width. The line as built is dashed, the line of the best pair is solid. */
enum { VIEW_GRAPHS_ABREAST = 3 };
typedef struct view_cents_scale {
    int low, high, step; /* cents */
} view_cents_scale;

view_cents_scale view_cents_measure(const draw_draft *draft);
void view_cents(const draw_draft *draft, draw_shapes *list, const view_cents_scale *scale,
                int first, double width);
void view_cents_key(draw_shapes *list);

/* How far the worst note of a string is out of tune, in cents and without a sign; unknown if it
 * is not known. */
double view_cents_worst(const double *cents);

/* Draws a table of where each string has to leave the nut and the saddle, one row per string. */
void view_pitch(const draw_draft *draft, draw_shapes *list, double width);

/* Whether the saddle is one piece of known thickness, so that the contact points have to be on
 * it. */
bool view_saddle_in_slot(const draw_draft *draft);
/* How far the contact point of a string is outside the saddle, mm: - in front of it, + behind
 * it, 0 on it. */
double view_saddle_outside(const draw_draft *draft, int string);
bool view_saddle_any_outside(const draw_draft *draft);

/* Draws the saddle from above, with the nut at the top: where each string plays in tune, and the
 * best straight slot if it differs. Draws nothing if no such point is known or one is too far
 * off. */
void view_slot(const draw_draft *draft, draw_shapes *list, double scale);
/* view_best_slot_fits: whether a better slot is drawn too. There has to be one, and it must not
 * be so slanted that it leaves the view. */
bool view_best_slot_fits(const draw_draft *draft);

#endif
