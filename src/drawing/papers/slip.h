/* SPDX-License-Identifier: MIT */
/* What the templates share: slips of paper to cut out. */
#ifndef SILLET_DRAWING_SLIP_H
#define SILLET_DRAWING_SLIP_H

#include "../board/paper.h"

/* How a slip is used: glued on the part, or laid with its upper edge along it. */
typedef enum slip_use { SLIP_GLUED, SLIP_LAID } slip_use;

/* paper_slip_around: makes a slip of everything drawn so far.
 * Given:    name  the name on the slip, which stays with it when it is cut out
 *           up    the word for what is above it: "UP", "NUT"
 *           use   a slip to lay is cut right at the drawing; one to glue says to take it off before
 *                 anything is measured, where its band has room
 * Returned: the line to cut the paper along, mm
 */
draw_box paper_slip_around(const draw_draft *draft, draw_shapes *list, const char *name,
                           const char *up, slip_use use);

/* paper_slip_numbers: writes each string's number, the middle of its top at a place of its own; where it
 * would touch its neighbour there, as in a course, at its other place, so that none is left out.
 * Given:    under, other  both places of each string; where y is not known there is no such place
 *           moved         for each string, to be filled: whether its number is at the other place;
 *                         or NULL
 */
void paper_slip_numbers(const draw_draft *draft, draw_shapes *list, const draw_point *under,
                        const draw_point *other, bool *moved);

/* paper_slip_fits:  whether the slip of a part of this length goes on the paper.
 * paper_slip_over:  the place of a string's number that stands on the top of a part, so high at x, mm.
 * paper_slip_proof: dimensions the length of the part below its slip, to check the print with.
 * paper_slip_put:   puts a slip under its title, with a line of what to do with it.
 * paper_slip_none:  puts words instead of a slip that cannot be drawn: of what, and why. */
bool paper_slip_fits(double length);
draw_point paper_slip_over(draw_place place, double x, double top);
void paper_slip_proof(const draw_draft *draft, draw_shapes *list, draw_place place,
                      brief_figure length, draw_box slip);
void paper_slip_put(draw_flow *flow, draw_shapes *list, const char *title, const char *use);
void paper_slip_none(draw_flow *flow, const char *what, const char *why);

/* The slips of a saddle; why there are none, where it waits or is not cut. */
void paper_saddle_slips(draw_flow *flow);

#endif
