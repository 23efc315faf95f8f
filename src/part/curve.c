/* SPDX-License-Identifier: MIT */
#include "within.h"

/* Strings nearer to each other than this are a course, mm. A plain one beside a wound one says nothing
 * of how the piece goes on. */
static const double course = 4.5;

/* The two points whose line is followed at x. Past the outer ones it goes on as it comes from the
 * string next to theirs that is no part of their course; past a single course it stays level. */
static void line_at(const part_curve *c, double x, int *from, int *to)
{
    int last = c->count - 1;
    *from = 0;
    *to = 1;
    if (x < c->x[0]) {
        while (*to <= last && c->x[*to] - c->x[0] < course) {
            ++*to;
        }
        *to = *to > last ? 0 : *to;
        return;
    }
    while (*to < last && x > c->x[*to]) {
        ++*to;
    }
    *from = *to - 1;
    while (x > c->x[last] && *from >= 0 && c->x[last] - c->x[*from] < course) {
        --*from;
    }
    *from = *from < 0 ? last : *from;
}

double part_curve_at(const part_curve *c, double x)
{
    int last = c->count - 1;
    if (c->radius > 0) {
        double aside = x - c->centre; /* crest - (R - sqrt(R^2 - aside^2)) without cancellation */
        return c->crest - aside * aside / (c->radius + sqrt(c->radius * c->radius - aside * aside));
    }
    if (last == 0) {
        return c->y[0];
    }
    int i, k;
    line_at(c, x, &i, &k);
    double share = i == k ? 0 : (c->y[k] - c->y[i]) / (c->x[k] - c->x[i]);
    return x > c->x[last] ? c->y[last] + share * (x - c->x[last]) : c->y[i] + share * (x - c->x[i]);
}

/* The next of the curve's own points on the way from x to an end, or that end. */
static double next_stop(const part_curve *curve, double x, double to)
{
    double stop = to;
    for (int i = 0; i < curve->count; i++) {
        bool between =
            to > x ? curve->x[i] > x && curve->x[i] < stop : curve->x[i] < x && curve->x[i] > stop;
        stop = between ? curve->x[i] : stop;
    }
    return stop;
}

int part_curve_points(const part_curve *curve, double from, double to, part_point *out)
{
    const double most = PART_CURVE_POINTS - 2 - SIL_STRINGS_MAX;
    double step = fmax(1, fabs(to - from) / most), x = from;
    int count = 0;
    out[count++] = (part_point){x, part_curve_at(curve, x)};
    while (x != to) {
        double start = x, stop = curve->count < 2 ? to : next_stop(curve, x, to);
        int pieces = curve->radius <= 0 ? 1 : (int)fmax(1, ceil(fabs(stop - start) / step));
        for (int i = 1; i <= pieces; i++) {
            x = i == pieces ? stop : start + (stop - start) * i / pieces;
            out[count++] = (part_point){x, part_curve_at(curve, x)};
        }
    }
    return count;
}

part_curve part_curve_through(int strings, const double *along, const double *height)
{
    part_curve curve = {0};
    for (int i = strings - 1; i >= 0; i--) {
        if (sil_known(height[i])) {
            curve.x[curve.count] = along[i];
            curve.y[curve.count++] = height[i];
        }
    }
    return curve;
}
