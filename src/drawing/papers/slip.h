/* SPDX-License-Identifier: MIT */
/* What the templates share: slips of paper to cut out. */
#ifndef SILLET_DRAWING_SLIP_H
#define SILLET_DRAWING_SLIP_H

#include "../board/draft.h"

/* The width of the tab at each end of a slip, mm. */
double paper_slip_tab(void);

/* paper_slip_around: makes a slip of everything drawn so far.
 * Given:    name  the name on the slip, which stays with it when it is cut out
 *           up    the word for what is above it: "UP", "NUT"
 *           edge  cut the paper right at the drawing, so that it can be laid along an edge
 * Returned: the line to cut the paper along, mm
 */
draw_box paper_slip_around(const draw_draft *draft, draw_shapes *list, const char *name,
                           const char *up, bool edge);

/* paper_slip_numbers: writes each string's number under a place of its own. It leaves out
 * numbers that would touch their neighbour, as in a course, and those whose place is not known. */
void paper_slip_numbers(const draw_draft *draft, draw_shapes *list, const draw_point *under);

#endif
