/* SPDX-License-Identifier: MIT */
#include "views.h"

enum { ROUND = 12, MOST = (SIL_STRINGS_MAX + 1) * (SIL_CURVE_POINTS + ROUND + 5) };

/* A slot as the file leaves it, from its treble edge down and up to its bass edge: upright walls on
 * a round floor. */
static int add_slot(sil_point *out, double x, double floor, double width, const sil_curve *top)
{
    double r = width / 2;
    double treble = sil_curve_at(top, x + r), bass = sil_curve_at(top, x - r);
    double depth = fmax(fmin(treble, bass) - floor, 0);
    double widest = depth < r ? acos(1 - depth / r) : acos(0.0);
    int count = 0;
    out[count++] = (sil_point){x + r, treble};
    for (int i = 0; i <= ROUND; i++) {
        double turn = widest * (1 - 2.0 * i / ROUND);
        out[count++] = (sil_point){x + r * sin(turn), floor + r - r * cos(turn)};
    }
    out[count++] = (sil_point){x - r, bass};
    return count;
}

static int outline(const sil_draft *draft, const sil_curve *top, bool slots, sil_point *out)
{
    const sil_plan *plan = draft->plan;
    double width = plan->job->nut.width, x = width;
    int count = 0;
    out[count++] = (sil_point){0, 0};
    out[count++] = (sil_point){width, 0};
    for (int i = 0; slots && i < plan->job->string_count; i++) {
        double centre = sil_on_nut(draft, i), half = plan->slot_width[i] / 2;
        if (!sil_known(plan->nut.floor[i])) {
            continue;
        }
        count += sil_curve_points(top, x, centre + half, out + count);
        count += add_slot(out + count, centre, plan->nut.floor[i], plan->slot_width[i], top);
        x = centre - half;
    }
    return count + sil_curve_points(top, x, 0, out + count);
}

static void mark_slots(const sil_draft *draft, sil_shapes *list, sil_place place)
{
    double width = draft->plan->job->nut.width;
    sil_draw_line(list, SIL_LAYER_OUTLINE, sil_at(place, 0, 0), sil_at(place, width, 0));
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        double x = sil_on_nut(draft, i);
        sil_draw_of(list, i + 1);
        sil_draw_line(list, SIL_LAYER_SLOT, sil_at(place, x, 0), sil_at(place, x, 4 / place.up));
    }
    sil_draw_of(list, 0);
}

void sil_nut_face(const sil_draft *draft, sil_shapes *list, sil_place place, bool whole)
{
    const sil_plan *plan = draft->plan;
    double top_height[SIL_STRINGS_MAX], width = plan->job->nut.width;
    sil_point points[MOST];
    for (int i = 0; i < plan->job->string_count; i++) {
        top_height[i] = plan->nut.floor[i] + plan->nut.depth[i];
    }
    sil_curve top = sil_curve_through(draft, width, plan->bench.board.nut_z, top_height);
    if (top.count == 0) {
        mark_slots(draft, list, place);
        return;
    }
    int count = outline(draft, &top, whole, points);
    sil_place_points(place, points, count);
    sil_draw_path(list, SIL_LAYER_OUTLINE, points, count, true);
    for (int i = 0; i < plan->job->string_count; i++) {
        double x = sil_on_nut(draft, i), floor = plan->nut.floor[i];
        double r = plan->job->strings[i].gauge / 2;
        if (!sil_known(floor)) {
            continue;
        }
        sil_draw_of(list, i + 1);
        if (whole) {
            sil_draw_circle(list, SIL_LAYER_STRING, sil_at(place, x, floor + r), r * place.up);
        } else {
            sil_draw_line(list, SIL_LAYER_SLOT, sil_at(place, x, floor),
                          sil_at(place, x, sil_curve_at(&top, x)));
        }
    }
    sil_draw_of(list, 0);
}
