/* SPDX-License-Identifier: MIT */
#ifndef SILLET_PART_POINT_H
#define SILLET_PART_POINT_H

typedef struct part_point {
    double x, y; /* mm */
} part_point;

#endif
