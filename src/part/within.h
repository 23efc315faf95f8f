/* SPDX-License-Identifier: MIT */
/* Used by both parts. */
#ifndef SILLET_PART_WITHIN_H
#define SILLET_PART_WITHIN_H

#include "part.h"

/* part_curve_through: the curve of a top through the strings whose height is known. */
part_curve part_curve_through(int strings, const double *along, const double *height);

/* part_curve_round: makes the top an arc over the whole piece, if there is one that comes close enough
 * to its points.
 * Given:    under, over  how far the arc may be below and above a point, mm
 */
void part_curve_round(part_curve *curve, double length, double under, double over);

#endif
