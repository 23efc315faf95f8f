/* SPDX-License-Identifier: MIT */
#include "views.h"

void view_cross(draw_shapes *list, draw_point at)
{
    const double arm = 1.2;
    draw_line(list, DRAW_CONTACT, (draw_point){at.x - arm, at.y}, (draw_point){at.x + arm, at.y});
    draw_line(list, DRAW_CONTACT, (draw_point){at.x, at.y - arm}, (draw_point){at.x, at.y + arm});
}

draw_point view_behind_saddle(const draw_draft *draft, draw_place place, int string, double off)
{
    const part_saddle *part = &draft->brief->saddle_part;
    double x = part->along[string];
    return draw_at(place, x - off * sin(part->slant), -off * cos(part->slant));
}

void view_saddle_top(const draw_draft *draft, draw_shapes *list, draw_place place, double reach)
{
    const part_saddle *part = &draft->brief->saddle_part;
    double length = part->length, half = part->thickness / 2;
    const draw_point corners[] = {draw_at(place, 0, -half), draw_at(place, length, -half),
                                  draw_at(place, length, half), draw_at(place, 0, half)};
    draw_path(list, DRAW_OUTLINE, corners, 4, true);
    double over = place.across > 0 ? 3 : -3;
    draw_line(list, DRAW_CENTRE, (draw_point){draw_at(place, 0, 0).x - over, place.y},
              (draw_point){draw_at(place, length, 0).x + over, place.y});
    for (int i = 0; i < part->strings; i++) {
        draw_of(list, i + 1);
        if (fabs(part->peak[i]) <= reach) {
            view_cross(list, view_behind_saddle(draft, place, i, part->peak[i]));
        }
    }
    draw_of(list, 0);
}
