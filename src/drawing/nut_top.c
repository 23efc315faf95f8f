/* SPDX-License-Identifier: MIT */
#include "views.h"

void sil_nut_top(const sil_draft *draft, sil_shapes *list, sil_place place)
{
    const sil_plan *plan = draft->plan;
    double width = plan->job->nut.width, thickness = plan->job->nut.thickness;
    const sil_point corners[] = {sil_at(place, 0, 0), sil_at(place, width, 0),
                                 sil_at(place, width, thickness), sil_at(place, 0, thickness)};
    sil_draw_path(list, SIL_LAYER_OUTLINE, corners, 4, true);
    /* The strings cross a nut that leans aslant: back by the thickness, aside by its share. */
    double slant = draft->board->nut_slant, aside = thickness * tan(slant);
    for (int i = 0; i < plan->job->string_count; i++) {
        double x = sil_on_nut(draft, i);
        double half = plan->slot_width[i] / 2 / cos(slant);
        sil_draw_of(list, i + 1);
        sil_draw_line(list, SIL_LAYER_SLOT, sil_at(place, x - half, 0),
                      sil_at(place, x - half + aside, thickness));
        sil_draw_line(list, SIL_LAYER_SLOT, sil_at(place, x + half, 0),
                      sil_at(place, x + half + aside, thickness));
    }
    sil_draw_of(list, 0);
}
