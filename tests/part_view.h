/* SPDX-License-Identifier: MIT */
/* Views of a solved nut or saddle: where a place of the part lies in them, and what is taken out of them
 * as drawn where it belongs. */
#ifndef SILLET_TESTS_PART_VIEW_H
#define SILLET_TESTS_PART_VIEW_H

#include "viewed.h"

enum { JOBS = 120 };

/* Where a place of a part lies in its view: its bass end is at the left, or at the right for the
 * left hand. */
typedef struct seen {
    double length, scale;
    bool left;
} seen;

static inline draw_point at(seen v, double x, double y)
{
    return (draw_point){(v.left ? v.length - x : x) * v.scale, y * v.scale};
}

static inline bool take_box(draw_shapes *list, draw_layer layer, seen v, draw_box box)
{
    const draw_point corners[] = {at(v, box.left, box.bottom), at(v, box.right, box.bottom),
                                  at(v, box.right, box.top), at(v, box.left, box.top)};
    return take_path(list, layer, 0, true, 4, corners);
}

static inline bool take_upright(draw_shapes *list, draw_layer layer, int string, seen v, double x,
                                double from, double to)
{
    return take_line(list, layer, string, at(v, x, from), at(v, x, to));
}

/* A curve over the whole part: it goes through the known heights, and nowhere else. */
static inline bool take_curve(draw_shapes *list, draw_layer layer, seen v, const part_curve *curve)
{
    draw_point points[PART_CURVE_POINTS];
    int count = part_curve_points(curve, 0, v.length, points);
    for (int i = 0; i < count; i++) {
        points[i] = at(v, points[i].x, points[i].y);
    }
    return take_path(list, layer, 0, false, count, points);
}

static inline void nothing_left(const draw_shapes *list)
{
    for (int layer = DRAW_OUTLINE; layer <= DRAW_STRING; layer++) {
        assert_true(layer == DRAW_DIMENSION || left_over(list, (draw_layer)layer) == 0);
    }
}

#endif
