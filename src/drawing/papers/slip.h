/* SPDX-License-Identifier: MIT */
/* Slips of paper to cut out: what the templates share. */
#ifndef SILLET_DRAWING_SLIP_H
#define SILLET_DRAWING_SLIP_H

#include "../board/draft.h"

/* The width of the tab at either end of a slip, mm. */
double paper_slip_tab(void);

/* paper_slip_around: makes a slip of all that is drawn so far.
 * Given:    name  what it is, to be read when it is cut out
 *           up    what lies above it: "UP", "NUT"
 *           edge  the paper ends at what is drawn, so that this can be laid along an edge
 * Returned: the line to cut the paper along, mm
 */
draw_box paper_slip_around(const draw_draft *draft, draw_shapes *list, const char *name,
                           const char *up, bool edge);

/* paper_slip_numbers: each string's number under a place of its own, passing over those that would
 * touch their neighbour (a course) and those whose place is no number. */
void paper_slip_numbers(const draw_draft *draft, draw_shapes *list, const draw_point *under);

#endif
