/* SPDX-License-Identifier: MIT */
#include "views.h"

/* How much to draw of a saddle whose height has not been measured, mm. */
static const double stump = 6;
static const sil_line none = {0, 0};

/* The saddle's face and its place. Heights are measured from the present bottom, so that what
 * comes off is shown where it comes off. A shim lifts the whole piece and does not change its
 * shape. A new saddle is drawn in its finished shape. */
typedef struct face {
    draw_shapes *list;
    draw_place place;
    const part_saddle *part;
    bool present; /* draw the present top, because something is done to the saddle */
} face;

static face begin(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const part_saddle *part = &draft->brief->saddle_part;
    bool worked = draft->brief->saddle.remedy != SIL_SADDLE_NONE;
    return (face){list, place, part, part->present_top.count > 0 && worked};
}

static void put_curve(const face *f, draw_layer layer, const part_curve *curve)
{
    draw_point points[PART_CURVE_POINTS];
    int count = part_curve_points(curve, 0, f->part->length, points);
    draw_place_points(f->place, points, count);
    draw_path(f->list, layer, points, count, false);
}

/* How much higher than finished the saddle is now at x: as at the strings, from one to the next, and past
 * the outer ones as there. So both tops have the same shape where nothing is done. */
static double over_finished(const part_saddle *part, double x)
{
    const part_curve *now = &part->present_top;
    int k = 0;
    while (k < now->count && now->x[k] < x) {
        k++;
    }
    int from = k > 0 ? k - 1 : 0, to = k < now->count ? k : now->count - 1;
    double under = now->y[from] - part_curve_at(&part->finished_top, now->x[from]);
    double over = now->y[to] - part_curve_at(&part->finished_top, now->x[to]);
    double width = now->x[to] - now->x[from];
    return width > 0 ? under + (over - under) * (x - now->x[from]) / width : over;
}

/* The top as it is now, where that is not the finished one. */
static void put_present(const face *f)
{
    const part_saddle *part = f->part;
    const double same = 0.011; /* mm: an arc may be as far off a height as its last figure */
    draw_point points[PART_CURVE_POINTS];
    int count = part_curve_points(&part->finished_top, 0, part->length, points), first = 0;
    bool apart = false;
    for (int i = 0; i < count; i++) {
        double over = over_finished(part, points[i].x);
        bool touches = !(fabs(over) > same);
        points[i] = draw_at(f->place, points[i].x, points[i].y + (touches ? 0 : over));
        if (touches || i == count - 1) {
            if (apart) {
                draw_path(f->list, DRAW_PRESENT, points + first, i - first + 1, false);
            }
            first = i;
            apart = false;
        }
        apart = apart || !touches;
    }
}

static void draw_upright(const face *f, draw_layer layer, double x, double from, double to)
{
    draw_line(f->list, layer, draw_at(f->place, x, from), draw_at(f->place, x, to));
}

static void draw_bottom(const face *f, draw_layer layer, sil_line cut)
{
    double length = f->part->length;
    draw_line(f->list, layer, draw_at(f->place, 0, part_base_at(f->part, cut, 0)),
              draw_at(f->place, length, part_base_at(f->part, cut, length)));
}

static void draw_cuts(const face *f)
{
    draw_bottom(f, DRAW_CUT, f->part->base_all);
    draw_bottom(f, DRAW_CUT_FIRST, f->part->base_first);
}

/* Draws a wavy line across, for a saddle that is broken off above. */
static void draw_break(const face *f)
{
    enum { WAVES = 12 };
    draw_point points[2 * WAVES + 1];
    for (int i = 0; i <= 2 * WAVES; i++) {
        points[i] = draw_at(f->place, f->part->length * i / (2 * WAVES),
                            stump + (i % 2 == 0   ? 0
                                     : i % 4 == 1 ? 0.25
                                                  : -0.25));
    }
    draw_path(f->list, DRAW_DIMENSION, points, 2 * WAVES + 1, false);
}

static void draw_shim(const face *f)
{
    double length = f->part->length, shim = f->part->shim;
    draw_point points[] = {{0, -shim}, {length, -shim}, {length, 0}, {0, 0}};
    draw_place_points(f->place, points, 4);
    draw_path(f->list, DRAW_OUTLINE, points, 4, true);
    draw_hatch(f->list, points, 4, 1.0);
}

static void draw_end(const face *f, double x)
{
    const part_saddle *part = f->part;
    double low = part_base_at(part, part->base ? part->base_first : none, x);
    bool whole = part->finished_top.count > 0;
    draw_upright(f, DRAW_OUTLINE, x, low, whole ? part_curve_at(&part->finished_top, x) : stump);
    if (part->present_top.count > 0) {
        double top = whole ? part_curve_at(&part->finished_top, x) + over_finished(part, x)
                           : part_curve_at(&part->present_top, x);
        draw_upright(f, DRAW_PRESENT, x, 0, top);
    } else if (part->base) {
        draw_upright(f, DRAW_PRESENT, x, 0, low);
    }
}

void view_saddle_face(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    face f = begin(draft, list, place);
    draw_end(&f, 0);
    draw_end(&f, f.part->length);
    if (f.part->finished_top.count > 0) {
        put_curve(&f, DRAW_OUTLINE, &f.part->finished_top);
    } else {
        draw_break(&f);
    }
    if (f.present && f.part->finished_top.count > 0) {
        put_present(&f);
    } else if (f.present) {
        put_curve(&f, DRAW_PRESENT, &f.part->present_top);
    }
    draw_bottom(&f, f.part->base ? DRAW_PRESENT : DRAW_OUTLINE, none);
    if (f.part->base) {
        draw_cuts(&f);
    }
    if (f.part->shim > 0) {
        draw_shim(&f);
    }
}
