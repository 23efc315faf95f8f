/* SPDX-License-Identifier: MIT */
#include "views.h"

void view_nut_top(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const sil_plan *plan = draft->plan;
    double width = plan->job->nut.width, thickness = plan->job->nut.thickness;
    const draw_point corners[] = {draw_at(place, 0, 0), draw_at(place, width, 0),
                                  draw_at(place, width, thickness), draw_at(place, 0, thickness)};
    draw_path(list, DRAW_OUTLINE, corners, 4, true);
    /* The strings cross a nut that leans aslant: back by the thickness, aside by its share. */
    double slant = draft->board->nut_slant, aside = thickness * tan(slant);
    for (int i = 0; i < plan->job->string_count; i++) {
        double x = draw_on_nut(draft, i);
        double half = plan->slot_width[i] / 2 / cos(slant);
        draw_of(list, i + 1);
        draw_line(list, DRAW_SLOT, draw_at(place, x - half, 0),
                  draw_at(place, x - half + aside, thickness));
        draw_line(list, DRAW_SLOT, draw_at(place, x + half, 0),
                  draw_at(place, x + half + aside, thickness));
    }
    draw_of(list, 0);
}
