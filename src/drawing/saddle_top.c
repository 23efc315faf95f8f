/* SPDX-License-Identifier: MIT */
#include "views.h"

void sil_saddle_top(const sil_draft *draft, sil_shapes *list, sil_place place)
{
    const sil_job *job = draft->plan->job;
    const double *z = draft->plan->bench.board.saddle_z;
    double length = job->saddle.length, half = job->saddle.thickness / 2, arm = 1.2;
    sil_line line = draft->plan->slot_as_built;
    const sil_point corners[] = {sil_at(place, 0, -half), sil_at(place, length, -half),
                                 sil_at(place, length, half), sil_at(place, 0, half)};
    sil_draw_path(list, SIL_LAYER_OUTLINE, corners, 4, true);
    double over = place.across > 0 ? 3 : -3;
    sil_draw_line(list, SIL_LAYER_CENTRE, (sil_point){sil_at(place, 0, 0).x - over, place.y},
                  (sil_point){sil_at(place, length, 0).x + over, place.y});
    for (int i = 0; i < job->string_count; i++) {
        sil_draw_of(list, i + 1);
        sil_point at =
            sil_at(place, length / 2 + z[i], -(job->saddle.setback[i] - sil_line_at(line, z[i])));
        sil_draw_line(list, SIL_LAYER_CONTACT, (sil_point){at.x - arm, at.y},
                      (sil_point){at.x + arm, at.y});
        sil_draw_line(list, SIL_LAYER_CONTACT, (sil_point){at.x, at.y - arm},
                      (sil_point){at.x, at.y + arm});
    }
    sil_draw_of(list, 0);
}
