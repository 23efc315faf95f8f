/* SPDX-License-Identifier: MIT */
/* The views: each draws into a list at a place, in millimetres of the part, y up, and knows nothing
 * of papers. A part's origin is at the bass end of its bottom, x to the treble end. */
#ifndef SILLET_DRAWING_VIEWS_H
#define SILLET_DRAWING_VIEWS_H

#include "../board/draft.h"

/* The nut's front face. Whole: with its slots as cut and the strings in them; else a closed outline
 * and a line a slot, from its floor to the top. Where no floor is known, its bottom and a
 * mark a slot. */
void view_nut_face(const draw_draft *draft, draw_shapes *list, draw_place place, bool whole);
/* The nut from above, its front edge at y 0 and its back above that. */
void view_nut_top(const draw_draft *draft, draw_shapes *list, draw_place place);
/* A section along one slot: board at the left, head at the right, x 0 at the front face. */
void view_nut_section(const draw_draft *draft, draw_shapes *list, draw_place place, int string);

/* The saddle's front face: as it is now, what comes off its bottom and top, a shim under it. */
void view_saddle_face(const draw_draft *draft, draw_shapes *list, draw_place place);
/* The same to cut by: its outline closed, from the bottom as it is to the finished top, both cut
 * lines across it and the present top over it. Where no height is known, the bottom and the cuts.
 */
void view_saddle_outline(const draw_draft *draft, draw_shapes *list, draw_place place);
/* The saddle from above, the nut up, its middle at y 0: a cross where each string has to leave it
 * to play in tune. Points farther off its middle than reach are left out. */
void view_saddle_top(const draw_draft *draft, draw_shapes *list, draw_place place, double reach);
void view_cross(draw_shapes *list, draw_point at);
/* Where a string has to leave the saddle: so far behind its middle along the string, and aside as
 * well, where the saddle leans. */
draw_point view_behind_saddle(const draw_draft *draft, draw_place place, int string);
/* The saddle end on, in its slot, one string over it: x 0 at its middle, y 0 at its bottom. */
void view_saddle_end(const draw_draft *draft, draw_shapes *list, draw_place place, int string);

/* A string over the crowns from the side, heights magnified, now and after, on a width. Nothing
 * where no height is known. */
void view_side(const draw_draft *draft, draw_shapes *list, int string, double width);

/* Who and what: owner, instrument, strings. Returned: the bottom, mm. */
double view_facts(const draw_draft *draft, draw_shapes *list, double width);

/* What each stage comes to, one cell each, to be read at arm's length. */
void view_outlook(const draw_draft *draft, draw_shapes *list, double width);

/* Readings now, wanted and predicted, a row a string. */
void view_readings(const draw_draft *draft, draw_shapes *list, double width);

/* The last visits: read, and over it what was to be expected. */
void view_visits(const draw_draft *draft, draw_shapes *list, double width);

/* A step: a box to tick, what to do, what to check by, and blanks to write in. */
void view_step(const draw_draft *draft, draw_shapes *list, int step, double width);

#endif
