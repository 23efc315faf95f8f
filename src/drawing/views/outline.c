/* SPDX-License-Identifier: MIT */
/* The parts as a machine cuts them: closed outlines, one layer for each state of the piece. */
#include "views.h"

static const draw_layer layer_of[] = {
    [PART_PRESENT] = DRAW_PRESENT, [PART_FIRST] = DRAW_CUT_FIRST, [PART_FINISHED] = DRAW_FINISHED};

static void put(draw_shapes *list, draw_place place, part_when when, draw_corner *corners,
                int count)
{
    draw_place_corners(place, corners, count);
    draw_outline(list, layer_of[when], corners, count);
}

bool view_nut_outline(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const part_nut *nut = &draft->brief->nut_part;
    draw_corner corners[PART_CORNERS];
    int count = part_nut_corners(nut, PART_FINISHED, corners);
    put(list, place, PART_FINISHED, corners, count);
    if (nut->more) {
        put(list, place, PART_FIRST, corners, part_nut_corners(nut, PART_FIRST, corners));
    }
    return count > 0;
}

void view_nut_plan(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const part_nut *nut = &draft->brief->nut_part;
    draw_point a = draw_at(place, 0, 0), b = draw_at(place, nut->length, nut->thickness);
    draw_rectangle(list, DRAW_FINISHED, (draw_box){fmin(a.x, b.x), a.y, fmax(a.x, b.x), b.y});
    for (int i = 0; i < nut->strings; i++) {
        draw_point slot[4];
        part_nut_slot(nut, i, slot);
        draw_place_points(place, slot, 4);
        draw_of(list, i + 1);
        draw_path(list, DRAW_SLOT, slot, 4, true);
    }
    draw_of(list, 0);
}

bool view_saddle_outline(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const part_saddle *saddle = &draft->brief->saddle_part;
    draw_corner corners[PART_CORNERS];
    int count = part_saddle_corners(saddle, PART_FINISHED, corners);
    put(list, place, PART_FINISHED, corners, count);
    if (saddle->more && saddle->takes) { /* else it would be the saddle as it is */
        put(list, place, PART_FIRST, corners, part_saddle_corners(saddle, PART_FIRST, corners));
    }
    if (saddle->cut) {
        put(list, place, PART_PRESENT, corners, part_saddle_corners(saddle, PART_PRESENT, corners));
    }
    return count > 0;
}

void view_saddle_plan(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const part_saddle *saddle = &draft->brief->saddle_part;
    double half = saddle->thickness / 2, over = 3;
    draw_point a = draw_at(place, 0, -half), b = draw_at(place, saddle->length, half);
    double left = fmin(a.x, b.x), right = fmax(a.x, b.x);
    draw_rectangle(list, DRAW_FINISHED, (draw_box){left, a.y, right, b.y});
    draw_line(list, DRAW_CENTRE, (draw_point){left - over, place.y},
              (draw_point){right + over, place.y});
    for (int i = 0; i < saddle->strings; i++) {
        draw_of(list, i + 1);
        if (sil_known(saddle->peak[i])) {
            view_cross(list, view_behind_saddle(draft, place, i, saddle->peak[i]));
        }
    }
    draw_of(list, 0);
}
