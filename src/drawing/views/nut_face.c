/* SPDX-License-Identifier: MIT */
#include "views.h"

enum { ROUND = 12, MOST = (SIL_STRINGS_MAX + 1) * (DRAW_CURVE_POINTS + ROUND + 5) };

/* A slot as the file leaves it, from its treble edge down and up to its bass edge: upright walls on
 * a round floor. */
static int add_slot(draw_point *out, double x, double floor, double width, const draw_curve *top)
{
    double r = width / 2;
    double treble = draw_curve_at(top, x + r), bass = draw_curve_at(top, x - r);
    double depth = fmax(fmin(treble, bass) - floor, 0);
    double widest = depth < r ? acos(1 - depth / r) : acos(0.0);
    int count = 0;
    out[count++] = (draw_point){x + r, treble};
    for (int i = 0; i <= ROUND; i++) {
        double turn = widest * (1 - 2.0 * i / ROUND);
        out[count++] = (draw_point){x + r * sin(turn), floor + r - r * cos(turn)};
    }
    out[count++] = (draw_point){x - r, bass};
    return count;
}

static int outline(const draw_draft *draft, const draw_curve *top, bool slots, draw_point *out)
{
    const sil_plan *plan = draft->plan;
    double width = plan->job->nut.width, x = width;
    int count = 0;
    out[count++] = (draw_point){0, 0};
    out[count++] = (draw_point){width, 0};
    for (int i = 0; slots && i < plan->job->string_count; i++) {
        double centre = draw_on_nut(draft, i), half = plan->slot_width[i] / 2;
        if (!sil_known(plan->nut.floor[i])) {
            continue;
        }
        count += draw_curve_points(top, x, centre + half, out + count);
        count += add_slot(out + count, centre, plan->nut.floor[i], plan->slot_width[i], top);
        x = centre - half;
    }
    return count + draw_curve_points(top, x, 0, out + count);
}

static void mark_slots(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    double width = draft->plan->job->nut.width;
    draw_line(list, DRAW_OUTLINE, draw_at(place, 0, 0), draw_at(place, width, 0));
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        double x = draw_on_nut(draft, i);
        draw_of(list, i + 1);
        draw_line(list, DRAW_SLOT, draw_at(place, x, 0), draw_at(place, x, 4 / place.up));
    }
    draw_of(list, 0);
}

void view_nut_face(const draw_draft *draft, draw_shapes *list, draw_place place, bool whole)
{
    const sil_plan *plan = draft->plan;
    double top_height[SIL_STRINGS_MAX], width = plan->job->nut.width;
    draw_point points[MOST];
    for (int i = 0; i < plan->job->string_count; i++) {
        top_height[i] = plan->nut.floor[i] + plan->nut.depth[i];
    }
    draw_curve top = draw_curve_through(draft, width, plan->bench.board.nut_z, top_height);
    if (top.count == 0) {
        mark_slots(draft, list, place);
        return;
    }
    int count = outline(draft, &top, whole, points);
    draw_place_points(place, points, count);
    draw_path(list, DRAW_OUTLINE, points, count, true);
    for (int i = 0; i < plan->job->string_count; i++) {
        double x = draw_on_nut(draft, i), floor = plan->nut.floor[i];
        double r = plan->job->strings[i].gauge / 2;
        if (!sil_known(floor)) {
            continue;
        }
        draw_of(list, i + 1);
        if (whole) {
            draw_circle(list, DRAW_STRING, draw_at(place, x, floor + r), r * place.up);
        } else {
            draw_line(list, DRAW_SLOT, draw_at(place, x, floor),
                      draw_at(place, x, draw_curve_at(&top, x)));
        }
    }
    draw_of(list, 0);
}
