/* SPDX-License-Identifier: MIT */
#include "views.h"

void view_nut_top(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const part_nut *nut = &draft->brief->nut_part;
    double length = nut->length, thickness = nut->thickness;
    const draw_point corners[] = {draw_at(place, 0, 0), draw_at(place, length, 0),
                                  draw_at(place, length, thickness), draw_at(place, 0, thickness)};
    draw_path(list, DRAW_OUTLINE, corners, 4, true);
    /* The strings cross a slanted nut at an angle: they go back by its thickness and sideways
     * with the slant. */
    double aside = thickness * tan(nut->slant);
    for (int i = 0; i < nut->strings; i++) {
        double x = nut->along[i], half = nut->width[i] / 2 / cos(nut->slant);
        draw_of(list, i + 1);
        draw_line(list, DRAW_SLOT, draw_at(place, x - half, 0),
                  draw_at(place, x - half + aside, thickness));
        draw_line(list, DRAW_SLOT, draw_at(place, x + half, 0),
                  draw_at(place, x + half + aside, thickness));
    }
    draw_of(list, 0);
}
