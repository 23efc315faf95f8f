/* SPDX-License-Identifier: MIT */
#ifndef SILLET_PART_POINT_H
#define SILLET_PART_POINT_H

typedef struct part_point {
    double x, y; /* mm */
} part_point;

/* A corner of a closed outline, and the way from it to the next one. The bulge is the tangent of a
 * quarter of the angle of an arc that goes there, + if it turns to the left; 0 for a straight line. */
typedef struct part_corner {
    double x, y, bulge;
} part_corner;

/* An arc from one corner to the next: its centre, where it starts as seen from there, and how far it
 * turns, + to the left, rad. */
typedef struct part_arc {
    double x, y, radius;
    double from, turn;
} part_arc;

/* part_arc_to: the arc from a corner whose bulge is not 0 to the next one. */
part_arc part_arc_to(part_corner corner, part_corner next);

#endif
