/* SPDX-License-Identifier: MIT */
#include "views.h"

/* How much of a saddle is drawn whose height nobody has measured, mm. */
static const double stump = 6;

typedef struct saddle {
    draw_shapes *list;
    draw_place place;
    double length;
    draw_curve present, finished;
} saddle;

double view_saddle_profile(const draw_draft *draft, int string)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    return work->remedy == SIL_SADDLE_REPLACE ? work->height[string]
                                              : work->present[string] - work->dress[string];
}

/* Heights over the present seat, so that what comes off shows in its place: a shim lifts the whole
 * piece and changes nothing in it; a new saddle is drawn as it will stand. */
static saddle measure(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const sil_plan *plan = draft->plan;
    const sil_saddle_work *work = &plan->saddle;
    double top[SIL_STRINGS_MAX];
    saddle s = {list, place, plan->job->saddle.length, {0}, {0}};
    for (int i = 0; i < plan->job->string_count; i++) {
        top[i] = view_saddle_profile(draft, i);
    }
    const double *z = plan->bench.board.saddle_z;
    s.present = draw_curve_through(draft, s.length, z, work->present);
    s.finished = draw_curve_through(draft, s.length, z, top);
    return s;
}

static double base_at(const saddle *s, sil_line cut, double x)
{
    return sil_line_at(cut, x - s->length / 2);
}

static void put_curve(const saddle *s, draw_layer layer, const draw_curve *curve)
{
    draw_point points[DRAW_CURVE_POINTS];
    int count = draw_curve_points(curve, 0, s->length, points);
    draw_place_points(s->place, points, count);
    draw_path(s->list, layer, points, count, false);
}

static void draw_upright(const saddle *s, draw_layer layer, double x, double from, double to)
{
    draw_line(s->list, layer, draw_at(s->place, x, from), draw_at(s->place, x, to));
}

static void draw_base(const saddle *s, draw_layer layer, sil_line cut)
{
    draw_line(s->list, layer, draw_at(s->place, 0, base_at(s, cut, 0)),
              draw_at(s->place, s->length, base_at(s, cut, s->length)));
}

/* Broken off above: a free line across. */
static void draw_break(const saddle *s)
{
    enum { WAVES = 12 };
    draw_point points[2 * WAVES + 1];
    for (int i = 0; i <= 2 * WAVES; i++) {
        points[i] = draw_at(s->place, s->length * i / (2 * WAVES),
                            stump + (i % 2 == 0   ? 0
                                     : i % 4 == 1 ? 0.25
                                                  : -0.25));
    }
    draw_path(s->list, DRAW_DIMENSION, points, 2 * WAVES + 1, false);
}

static void draw_shim(const saddle *s, double shim)
{
    draw_point points[] = {{0, -shim}, {s->length, -shim}, {s->length, 0}, {0, 0}};
    draw_place_points(s->place, points, 4);
    draw_path(s->list, DRAW_OUTLINE, points, 4, true);
    draw_hatch(s->list, points, 4, 1.0);
}

void view_saddle_face(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    const sil_line none = {0, 0};
    saddle s = measure(draft, list, place);
    bool whole = s.finished.count > 0, anew = work->remedy == SIL_SADDLE_REPLACE;
    sil_line first = work->bottom ? work->cut_first : none;
    for (int end = 0; end < 2; end++) {
        double x = end * s.length, top = whole ? draw_curve_at(&s.finished, x) : stump;
        draw_upright(&s, DRAW_OUTLINE, x, base_at(&s, first, x), top);
        if (s.present.count > 0) {
            draw_upright(&s, DRAW_PRESENT, x, 0, draw_curve_at(&s.present, x));
        } else if (work->bottom) {
            draw_upright(&s, DRAW_PRESENT, x, 0, base_at(&s, first, x));
        }
    }
    if (whole) {
        put_curve(&s, DRAW_OUTLINE, &s.finished);
    } else {
        draw_break(&s);
    }
    if (s.present.count > 0 && work->remedy != SIL_SADDLE_NONE) {
        put_curve(&s, DRAW_PRESENT, &s.present);
    }
    if (work->bottom) {
        draw_base(&s, DRAW_PRESENT, none);
        draw_base(&s, DRAW_CUT, work->cut);
        draw_base(&s, DRAW_CUT_FIRST, work->cut_first);
    } else {
        draw_base(&s, DRAW_OUTLINE, none);
    }
    if (sil_known(work->shim) && !anew) {
        draw_shim(&s, work->shim);
    }
}

static void draw_closed(const saddle *s)
{
    draw_point points[DRAW_CURVE_POINTS + 2] = {{0, 0}, {s->length, 0}};
    int count = 2 + draw_curve_points(&s->finished, s->length, 0, points + 2);
    draw_place_points(s->place, points, count);
    draw_path(s->list, DRAW_OUTLINE, points, count, true);
}

void view_saddle_outline(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    saddle s = measure(draft, list, place);
    if (s.finished.count > 0) {
        draw_closed(&s);
    } else {
        draw_base(&s, DRAW_PRESENT, (sil_line){0, 0});
    }
    if (s.present.count > 0 && work->remedy != SIL_SADDLE_NONE) {
        put_curve(&s, DRAW_PRESENT, &s.present);
    }
    if (work->bottom) {
        draw_base(&s, DRAW_CUT, work->cut);
        draw_base(&s, DRAW_CUT_FIRST, work->cut_first);
    }
}
