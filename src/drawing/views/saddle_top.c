/* SPDX-License-Identifier: MIT */
#include "views.h"

void view_cross(draw_shapes *list, draw_point at)
{
    const double arm = 1.2;
    draw_line(list, DRAW_CONTACT, (draw_point){at.x - arm, at.y}, (draw_point){at.x + arm, at.y});
    draw_line(list, DRAW_CONTACT, (draw_point){at.x, at.y - arm}, (draw_point){at.x, at.y + arm});
}

draw_point view_behind_saddle(const draw_draft *draft, draw_place place, double x, double off)
{
    double slant = draft->board->saddle_slant;
    return draw_at(place, x - off * sin(slant), -off * cos(slant));
}

double view_contact_off(const draw_draft *draft, int string)
{
    const sil_plan *plan = draft->plan;
    double off = plan->compensation[string].off_slot, z = plan->bench.board.saddle_z[string];
    return sil_known(off) ? off
                          : plan->job->saddle.setback[string] - sil_line_at(plan->slot_as_built, z);
}

void view_saddle_top(const draw_draft *draft, draw_shapes *list, draw_place place, double reach)
{
    const sil_job *job = draft->plan->job;
    double length = job->saddle.length, half = job->saddle.thickness / 2;
    const draw_point corners[] = {draw_at(place, 0, -half), draw_at(place, length, -half),
                                  draw_at(place, length, half), draw_at(place, 0, half)};
    draw_path(list, DRAW_OUTLINE, corners, 4, true);
    double over = place.across > 0 ? 3 : -3;
    draw_line(list, DRAW_CENTRE, (draw_point){draw_at(place, 0, 0).x - over, place.y},
              (draw_point){draw_at(place, length, 0).x + over, place.y});
    for (int i = 0; i < job->string_count; i++) {
        double x = draw_on_saddle(draft, i);
        double off = view_contact_off(draft, i);
        draw_of(list, i + 1);
        if (fabs(off) <= reach) {
            view_cross(list, view_behind_saddle(draft, place, x, off));
        }
    }
    draw_of(list, 0);
}
