/* SPDX-License-Identifier: MIT */
#include "views.h"

static void mark_slots(const part_nut *nut, draw_shapes *list, draw_place place)
{
    draw_line(list, DRAW_OUTLINE, draw_at(place, 0, 0), draw_at(place, nut->length, 0));
    for (int i = 0; i < nut->strings; i++) {
        double x = nut->along[i];
        draw_of(list, i + 1);
        draw_line(list, DRAW_SLOT, draw_at(place, x, 0), draw_at(place, x, 4 / place.up));
    }
    draw_of(list, 0);
}

void view_nut_face(const draw_draft *draft, draw_shapes *list, draw_place place, bool whole)
{
    const part_nut *nut = &draft->brief->nut_part;
    draw_point points[PART_NUT_POINTS];
    int count = part_nut_outline(nut, whole, points);
    if (count == 0) {
        mark_slots(nut, list, place);
        return;
    }
    draw_place_points(place, points, count);
    draw_path(list, DRAW_OUTLINE, points, count, true);
    for (int i = 0; i < nut->strings; i++) {
        double x = nut->along[i], floor = nut->floor[i], r = nut->gauge[i] / 2;
        if (!sil_known(floor)) {
            continue;
        }
        draw_of(list, i + 1);
        if (whole) {
            draw_circle(list, DRAW_STRING, draw_at(place, x, floor + r), r * place.up);
        } else {
            draw_line(list, DRAW_SLOT, draw_at(place, x, floor),
                      draw_at(place, x, part_curve_at(&nut->top, x)));
        }
    }
    draw_of(list, 0);
}
