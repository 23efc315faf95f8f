/* SPDX-License-Identifier: MIT */
/* The saddle slot from above: where each string plays in tune, and a slot that would suit them
 * better. */
#include "tone.h"

static const double farthest = 12; /* the farthest point from the slot that can be shown, mm */

/* How far a line is behind the middle of the slot as built. */
static double behind(const part_saddle *part, sil_line line, double x)
{
    double z = x - part->length / 2;
    return sil_line_at(line, z) - sil_line_at(part->slot_built, z);
}

static void draw_slot(const part_saddle *part, draw_shapes *list, draw_place place, sil_line line,
                      draw_layer layer)
{
    double length = part->length, half = part->thickness / 2, upright = cos(part->slant);
    double bass = -behind(part, line, 0) * upright;
    double treble = -behind(part, line, length) * upright;
    const draw_point corners[] = {
        draw_at(place, 0, bass - half), draw_at(place, length, treble - half),
        draw_at(place, length, treble + half), draw_at(place, 0, bass + half)};
    draw_path(list, layer, corners, 4, true);
}

static bool can_be_shown(const part_saddle *part)
{
    int known = 0;
    for (int i = 0; i < part->strings; i++) {
        known += part->contact_known[i];
        if (part->contact_known[i] && fabs(part->contact[i]) > farthest) {
            return false;
        }
    }
    return known > 0;
}

bool view_best_slot_fits(const draw_draft *draft)
{
    const part_saddle *part = &draft->brief->saddle_part;
    return view_saddle_any_outside(draft) && fabs(behind(part, part->slot_best, 0)) <= farthest &&
           fabs(behind(part, part->slot_best, part->length)) <= farthest;
}

void view_slot(const draw_draft *draft, draw_shapes *list, double scale)
{
    const part_saddle *part = &draft->brief->saddle_part;
    if (list == NULL || !view_saddle_in_slot(draft) || !can_be_shown(part)) {
        return;
    }
    draw_place place = draw_place_part(draft, part->length, scale);
    const double ring = 1.2; /* no cross: that is where a string leaves the finished top */
    draw_ordinates numbers = {.numbered = true};
    draw_slot(part, list, place, part->slot_built, DRAW_OUTLINE);
    if (view_best_slot_fits(draft)) {
        draw_slot(part, list, place, part->slot_best, DRAW_HIDDEN);
    }
    for (int i = 0; i < part->strings; i++) {
        if (!part->contact_known[i]) {
            continue;
        }
        draw_point at = view_behind_saddle(draft, place, i, part->contact[i]);
        draw_of(list, i + 1);
        draw_circle(list, DRAW_CONTACT, at, ring);
        numbers.from[numbers.count] = (draw_point){at.x, at.y + ring};
        numbers.number[numbers.count++] = i + 1;
    }
    draw_of(list, 0);
    numbers.reach = draw_shapes_box(list).top + 5.5;
    draw_dim_ordinates(draft, list, &numbers);
}
