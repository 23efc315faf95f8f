/* SPDX-License-Identifier: MIT */
/* The saddle from above in its slot: where each string plays in tune, and a better slot. */
#include "sound.h"

static const double farthest = 12; /* of a point off the slot, mm, that can still be shown */

/* How far behind the middle of the slot as built a line lies. */
static double behind(const sil_draft *draft, sil_line line, double x)
{
    double z = x - draft->plan->job->saddle.length / 2;
    return sil_line_at(line, z) - sil_line_at(draft->plan->slot_as_built, z);
}

static void draw_slot(const sil_draft *draft, sil_shapes *list, sil_place place, sil_line line,
                      sil_layer layer)
{
    double length = draft->plan->job->saddle.length, half = draft->plan->job->saddle.thickness / 2;
    double upright = cos(draft->board->saddle_slant);
    double bass = -behind(draft, line, 0) * upright;
    double treble = -behind(draft, line, length) * upright;
    const sil_point corners[] = {
        sil_at(place, 0, bass - half), sil_at(place, length, treble - half),
        sil_at(place, length, treble + half), sil_at(place, 0, bass + half)};
    sil_draw_path(list, layer, corners, 4, true);
}

static bool can_be_shown(const sil_draft *draft)
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

bool sil_best_slot_fits(const sil_draft *draft)
{
    sil_line best = draft->plan->slot_best;
    double length = draft->plan->job->saddle.length;
    return sil_saddle_any_outside(draft) && fabs(behind(draft, best, 0)) <= farthest &&
           fabs(behind(draft, best, length)) <= farthest;
}

void sil_slot_view(const sil_draft *draft, sil_shapes *list, double scale)
{
    const sil_plan *plan = draft->plan;
    double length = plan->job->saddle.length;
    if (list == NULL || !sil_saddle_in_slot(draft) || !can_be_shown(draft)) {
        return;
    }
    sil_place place = sil_place_part(draft, length, scale);
    sil_ordinates numbers = {.numbered = true};
    draw_slot(draft, list, place, plan->slot_as_built, SIL_LAYER_OUTLINE);
    if (sil_best_slot_fits(draft)) {
        draw_slot(draft, list, place, plan->slot_best, SIL_LAYER_HIDDEN);
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        double x = sil_on_saddle(draft, i);
        double off = plan->compensation[i].off_slot;
        if (!sil_known(off)) {
            continue;
        }
        sil_point at = sil_behind_saddle(draft, place, x, off);
        sil_draw_of(list, i + 1);
        sil_draw_cross(list, at);
        numbers.from[numbers.count] = (sil_point){at.x, at.y + 1.2};
        numbers.number[numbers.count++] = i + 1;
    }
    sil_draw_of(list, 0);
    numbers.reach = sil_shapes_box(list).top + 5.5;
    sil_dim_ordinates(list, &numbers);
}
