/* SPDX-License-Identifier: MIT */
#include "views.h"

/* How much of a saddle is drawn whose height nobody has measured, mm. */
static const double stump = 6;

typedef struct saddle {
    sil_shapes *list;
    sil_place place;
    double length;
    sil_curve present, finished;
} saddle;

double sil_saddle_profile(const sil_draft *draft, int string)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    return work->remedy == SIL_SADDLE_REPLACE ? work->height[string]
                                              : work->present[string] - work->dress[string];
}

/* Heights over the present seat, so that what comes off shows in its place: a shim lifts the whole
 * piece and changes nothing in it; a new saddle is drawn as it will stand. */
static saddle measure(const sil_draft *draft, sil_shapes *list, sil_place place)
{
    const sil_plan *plan = draft->plan;
    const sil_saddle_work *work = &plan->saddle;
    double top[SIL_STRINGS_MAX];
    saddle s = {list, place, plan->job->saddle.length, {0}, {0}};
    for (int i = 0; i < plan->job->string_count; i++) {
        top[i] = sil_saddle_profile(draft, i);
    }
    const double *z = plan->bench.board.saddle_z;
    s.present = sil_curve_through(draft, s.length, z, work->present);
    s.finished = sil_curve_through(draft, s.length, z, top);
    return s;
}

static double base_at(const saddle *s, sil_line cut, double x)
{
    return sil_line_at(cut, x - s->length / 2);
}

static void draw_curve(const saddle *s, sil_layer layer, const sil_curve *curve)
{
    sil_point points[SIL_CURVE_POINTS];
    int count = sil_curve_points(curve, 0, s->length, points);
    sil_place_points(s->place, points, count);
    sil_draw_path(s->list, layer, points, count, false);
}

static void draw_upright(const saddle *s, sil_layer layer, double x, double from, double to)
{
    sil_draw_line(s->list, layer, sil_at(s->place, x, from), sil_at(s->place, x, to));
}

static void draw_base(const saddle *s, sil_layer layer, sil_line cut)
{
    sil_draw_line(s->list, layer, sil_at(s->place, 0, base_at(s, cut, 0)),
                  sil_at(s->place, s->length, base_at(s, cut, s->length)));
}

/* Broken off above: a free line across. */
static void draw_break(const saddle *s)
{
    enum { WAVES = 12 };
    sil_point points[2 * WAVES + 1];
    for (int i = 0; i <= 2 * WAVES; i++) {
        points[i] = sil_at(s->place, s->length * i / (2 * WAVES),
                           stump + (i % 2 == 0   ? 0
                                    : i % 4 == 1 ? 0.25
                                                 : -0.25));
    }
    sil_draw_path(s->list, SIL_LAYER_DIMENSION, points, 2 * WAVES + 1, false);
}

static void draw_shim(const saddle *s, double shim)
{
    sil_point points[] = {{0, -shim}, {s->length, -shim}, {s->length, 0}, {0, 0}};
    sil_place_points(s->place, points, 4);
    sil_draw_path(s->list, SIL_LAYER_OUTLINE, points, 4, true);
    sil_draw_hatch(s->list, points, 4, 1.0);
}

void sil_saddle_face(const sil_draft *draft, sil_shapes *list, sil_place place)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    const sil_line none = {0, 0};
    saddle s = measure(draft, list, place);
    bool whole = s.finished.count > 0, anew = work->remedy == SIL_SADDLE_REPLACE;
    sil_line first = work->bottom ? work->cut_first : none;
    for (int end = 0; end < 2; end++) {
        double x = end * s.length, top = whole ? sil_curve_at(&s.finished, x) : stump;
        draw_upright(&s, SIL_LAYER_OUTLINE, x, base_at(&s, first, x), top);
        if (s.present.count > 0) {
            draw_upright(&s, SIL_LAYER_PRESENT, x, 0, sil_curve_at(&s.present, x));
        } else if (work->bottom) {
            draw_upright(&s, SIL_LAYER_PRESENT, x, 0, base_at(&s, first, x));
        }
    }
    if (whole) {
        draw_curve(&s, SIL_LAYER_OUTLINE, &s.finished);
    } else {
        draw_break(&s);
    }
    if (s.present.count > 0 && work->remedy != SIL_SADDLE_NONE) {
        draw_curve(&s, SIL_LAYER_PRESENT, &s.present);
    }
    if (work->bottom) {
        draw_base(&s, SIL_LAYER_PRESENT, none);
        draw_base(&s, SIL_LAYER_CUT, work->cut);
        draw_base(&s, SIL_LAYER_CUT_FIRST, work->cut_first);
    } else {
        draw_base(&s, SIL_LAYER_OUTLINE, none);
    }
    if (sil_known(work->shim) && !anew) {
        draw_shim(&s, work->shim);
    }
}

static void draw_closed(const saddle *s)
{
    sil_point points[SIL_CURVE_POINTS + 2] = {{0, 0}, {s->length, 0}};
    int count = 2 + sil_curve_points(&s->finished, s->length, 0, points + 2);
    sil_place_points(s->place, points, count);
    sil_draw_path(s->list, SIL_LAYER_OUTLINE, points, count, true);
}

void sil_saddle_outline(const sil_draft *draft, sil_shapes *list, sil_place place)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    saddle s = measure(draft, list, place);
    if (s.finished.count > 0) {
        draw_closed(&s);
    } else {
        draw_base(&s, SIL_LAYER_PRESENT, (sil_line){0, 0});
    }
    if (s.present.count > 0 && work->remedy != SIL_SADDLE_NONE) {
        draw_curve(&s, SIL_LAYER_PRESENT, &s.present);
    }
    if (work->bottom) {
        draw_base(&s, SIL_LAYER_CUT, work->cut);
        draw_base(&s, SIL_LAYER_CUT_FIRST, work->cut_first);
    }
}
