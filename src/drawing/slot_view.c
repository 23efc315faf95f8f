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
    double bass = -behind(draft, line, 0), treble = -behind(draft, line, length);
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
    if (sil_saddle_any_outside(draft) && sil_known(plan->slot_best.b0)) {
        draw_slot(draft, list, place, plan->slot_best, SIL_LAYER_HIDDEN);
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        double x = length / 2 + plan->bench.board.saddle_z[i];
        double off = plan->compensation[i].off_slot;
        if (!sil_known(off)) {
            continue;
        }
        sil_point at = sil_at(place, x, -off);
        sil_draw_of(list, i + 1);
        sil_draw_cross(list, at);
        numbers.from[numbers.count] = (sil_point){at.x, at.y + 1.2};
        numbers.number[numbers.count++] = i + 1;
    }
    sil_draw_of(list, 0);
    numbers.reach = list->box.top + 5.5;
    sil_dim_ordinates(list, &numbers);
}
