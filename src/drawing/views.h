/* SPDX-License-Identifier: MIT */
/* The views: each draws into a list at a place, in millimetres of the part, y up, and knows nothing
 * of sheets. A part's origin is at the bass end of its seat, x to the treble end. */
#ifndef SILLET_DRAWING_VIEWS_H
#define SILLET_DRAWING_VIEWS_H

#include "draft.h"

/* A part's top: a smooth line through a point a string whose height is known, beyond the outer ones
 * straight on. */
typedef struct sil_curve {
    int count;
    double x[SIL_STRINGS_MAX], y[SIL_STRINGS_MAX]; /* x rising: last string first */
} sil_curve;

sil_curve sil_curve_through(const sil_draft *draft, double length, const double *z,
                            const double *height);
double sil_curve_at(const sil_curve *curve, double x);

/* sil_curve_points: the line from one x to another, either way, close enough that no facet shows
 * and through each of its own points.
 * Returned: how many points were put, at most SIL_CURVE_POINTS
 */
enum { SIL_CURVE_POINTS = 180 };
int sil_curve_points(const sil_curve *curve, double from, double to, sil_point *out);

void sil_place_points(sil_place place, sil_point *points, int count);

/* The nut's front face. Whole: with its slots as cut and the strings in them; else a closed outline
 * and a line a slot, from its floor to the top. Where no floor is known, its seat and a mark a
 * slot. */
void sil_nut_face(const sil_draft *draft, sil_shapes *list, sil_place place, bool whole);
/* The nut from above, its front edge at y 0 and its back above that. */
void sil_nut_top(const sil_draft *draft, sil_shapes *list, sil_place place);
/* A section along one slot: board at the left, head at the right, x 0 at the front face. */
void sil_nut_section(const sil_draft *draft, sil_shapes *list, sil_place place, int string);

/* The saddle's front face: as it is now, what comes off its base and top, a shim under it. */
void sil_saddle_face(const sil_draft *draft, sil_shapes *list, sil_place place);
/* The same to cut by: its outline closed, from the seat as it is to the finished top, both cut
 * lines across it and the present top over it. Where no height is known, the seat and the cuts. */
void sil_saddle_outline(const sil_draft *draft, sil_shapes *list, sil_place place);
/* The finished top of it at a string, over the present base; of a new saddle, over its seat. */
double sil_saddle_profile(const sil_draft *draft, int string);
/* The saddle from above, the nut up, its middle at y 0: a cross where each string has to leave it
 * to play in tune. Points farther off its middle than reach are left out. */
void sil_saddle_top(const sil_draft *draft, sil_shapes *list, sil_place place, double reach);
/* How far behind the middle of the saddle that is, mm; as built where it is not reckoned. */
double sil_contact_off(const sil_draft *draft, int string);
void sil_draw_cross(sil_shapes *list, sil_point at);
/* Where a point lies that is x from the bass end along the saddle's middle and then so far behind
 * it along the string: aside as well, where the saddle leans. */
sil_point sil_behind_saddle(const sil_draft *draft, sil_place place, double x, double off);
/* The saddle end on, in its slot, one string over it: x 0 at its middle, y 0 at the seat. */
void sil_saddle_end(const sil_draft *draft, sil_shapes *list, sil_place place, int string);

/* A string over the crowns from the side, heights magnified, now and after, on a width. Nothing
 * where no height is known. */
void sil_side_view(const sil_draft *draft, sil_shapes *list, int string, double width);

/* Who and what: owner, instrument, strings. Returned: the bottom, mm. */
double sil_facts(const sil_draft *draft, sil_shapes *list, double width);

/* What each stage comes to, one cell each, to be read at arm's length. */
void sil_outlook(const sil_draft *draft, sil_shapes *list, double width);

/* Readings now, wanted and predicted, a row a string. */
void sil_readings(const sil_draft *draft, sil_shapes *list, double width);

/* The last visits: read, and over it what was to be expected. */
void sil_visits(const sil_draft *draft, sil_shapes *list, double width);

/* A step: a box to tick, what to do, what to check by, and blanks to write in. */
void sil_step_view(const sil_draft *draft, sil_shapes *list, int step, double width);

/* What to file each slot down to, or which way and how far each screw goes: a column a string. */
typedef struct sil_grid_row {
    const char *label[2];
    double height; /* of the lettering; 0: a blank to write in */
    sil_words cell[SIL_STRINGS_MAX];
} sil_grid_row;

enum { SIL_GRID_ROWS = 4 };
typedef struct sil_grid {
    int rows;
    bool as_seen; /* strings in the order of the board, else string 1 first */
    sil_grid_row row[SIL_GRID_ROWS];
} sil_grid;

/* sil_draw_grid: strings across, rows down, its top at y. Returned: the bottom, mm. */
double sil_draw_grid(const sil_draft *draft, sil_shapes *list, double x, double top, double width,
                     const sil_grid *grid);

#endif
