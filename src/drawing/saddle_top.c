/* SPDX-License-Identifier: MIT */
#include "views.h"

void sil_draw_cross(sil_shapes *list, sil_point at)
{
    const double arm = 1.2;
    sil_draw_line(list, SIL_LAYER_CONTACT, (sil_point){at.x - arm, at.y},
                  (sil_point){at.x + arm, at.y});
    sil_draw_line(list, SIL_LAYER_CONTACT, (sil_point){at.x, at.y - arm},
                  (sil_point){at.x, at.y + arm});
}

sil_point sil_behind_saddle(const sil_draft *draft, sil_place place, double x, double off)
{
    double slant = draft->board->saddle_slant;
    return sil_at(place, x - off * sin(slant), -off * cos(slant));
}

double sil_contact_off(const sil_draft *draft, int string)
{
    const sil_plan *plan = draft->plan;
    double off = plan->compensation[string].off_slot, z = plan->bench.board.saddle_z[string];
    return sil_known(off) ? off
                          : plan->job->saddle.setback[string] - sil_line_at(plan->slot_as_built, z);
}

void sil_saddle_top(const sil_draft *draft, sil_shapes *list, sil_place place, double reach)
{
    const sil_job *job = draft->plan->job;
    double length = job->saddle.length, half = job->saddle.thickness / 2;
    const sil_point corners[] = {sil_at(place, 0, -half), sil_at(place, length, -half),
                                 sil_at(place, length, half), sil_at(place, 0, half)};
    sil_draw_path(list, SIL_LAYER_OUTLINE, corners, 4, true);
    double over = place.across > 0 ? 3 : -3;
    sil_draw_line(list, SIL_LAYER_CENTRE, (sil_point){sil_at(place, 0, 0).x - over, place.y},
                  (sil_point){sil_at(place, length, 0).x + over, place.y});
    for (int i = 0; i < job->string_count; i++) {
        double x = sil_on_saddle(draft, i);
        double off = sil_contact_off(draft, i);
        sil_draw_of(list, i + 1);
        if (fabs(off) <= reach) {
            sil_draw_cross(list, sil_behind_saddle(draft, place, x, off));
        }
    }
    sil_draw_of(list, 0);
}
