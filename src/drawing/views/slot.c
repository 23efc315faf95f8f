/* SPDX-License-Identifier: MIT */
/* The saddle from above in its slot: where each string plays in tune, and a better slot. */
#include "sound.h"

static const double farthest = 12; /* of a point off the slot, mm, that can still be shown */

/* How far behind the middle of the slot as built a line lies. */
static double behind(const draw_draft *draft, sil_line line, double x)
{
    double z = x - draft->plan->job->saddle.length / 2;
    return sil_line_at(line, z) - sil_line_at(draft->plan->slot_as_built, z);
}

static void draw_slot(const draw_draft *draft, draw_shapes *list, draw_place place, sil_line line,
                      draw_layer layer)
{
    double length = draft->plan->job->saddle.length, half = draft->plan->job->saddle.thickness / 2;
    double upright = cos(draft->board->saddle_slant);
    double bass = -behind(draft, line, 0) * upright;
    double treble = -behind(draft, line, length) * upright;
    const draw_point corners[] = {
        draw_at(place, 0, bass - half), draw_at(place, length, treble - half),
        draw_at(place, length, treble + half), draw_at(place, 0, bass + half)};
    draw_path(list, layer, corners, 4, true);
}

static bool can_be_shown(const draw_draft *draft)
{
    int known = 0;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        double off = draft->plan->compensation[i].off_slot;
        known += sil_known(off);
        if (fabs(off) > farthest) {
            return false;
        }
    }
    return known > 0;
}

bool view_best_slot_fits(const draw_draft *draft)
{
    sil_line best = draft->plan->slot_best;
    double length = draft->plan->job->saddle.length;
    return view_saddle_any_outside(draft) && fabs(behind(draft, best, 0)) <= farthest &&
           fabs(behind(draft, best, length)) <= farthest;
}

void view_slot(const draw_draft *draft, draw_shapes *list, double scale)
{
    const sil_plan *plan = draft->plan;
    double length = plan->job->saddle.length;
    if (list == NULL || !view_saddle_in_slot(draft) || !can_be_shown(draft)) {
        return;
    }
    draw_place place = draw_place_part(draft, length, scale);
    draw_ordinates numbers = {.numbered = true};
    draw_slot(draft, list, place, plan->slot_as_built, DRAW_OUTLINE);
    if (view_best_slot_fits(draft)) {
        draw_slot(draft, list, place, plan->slot_best, DRAW_HIDDEN);
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        double x = draw_on_saddle(draft, i);
        double off = plan->compensation[i].off_slot;
        if (!sil_known(off)) {
            continue;
        }
        draw_point at = view_behind_saddle(draft, place, x, off);
        draw_of(list, i + 1);
        view_cross(list, at);
        numbers.from[numbers.count] = (draw_point){at.x, at.y + 1.2};
        numbers.number[numbers.count++] = i + 1;
    }
    draw_of(list, 0);
    numbers.reach = draw_shapes_box(list).top + 5.5;
    draw_dim_ordinates(list, &numbers);
}
