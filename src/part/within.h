/* SPDX-License-Identifier: MIT */
/* Used by both parts. */
#ifndef SILLET_PART_WITHIN_H
#define SILLET_PART_WITHIN_H

#include "part.h"

/* part_curve_through: the curve of a top through the strings whose height is known. */
part_curve part_curve_through(int strings, const double *along, const double *height);

#endif
