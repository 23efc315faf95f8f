/* SPDX-License-Identifier: MIT */
#include "within.h"

/* The slope at a point is that of the straight line between the points on either side. */
static double slope(const part_curve *c, int i)
{
    int before = i > 0 ? i - 1 : i, after = i + 1 < c->count ? i + 1 : i;
    double run = c->x[after] - c->x[before];
    return run > 0 ? (c->y[after] - c->y[before]) / run : 0;
}

/* Between two points the curve is a cubic Hermite polynomial. */
double part_curve_at(const part_curve *c, double x)
{
    int last = c->count - 1;
    if (x <= c->x[0]) {
        return c->y[0] + (x - c->x[0]) * slope(c, 0);
    }
    if (x >= c->x[last]) {
        return c->y[last] + (x - c->x[last]) * slope(c, last);
    }
    int i = 0;
    while (x > c->x[i + 1]) {
        i++;
    }
    double run = c->x[i + 1] - c->x[i], t = (x - c->x[i]) / run, s = 1 - t;
    return c->y[i] * s * s * (1 + 2 * t) + c->y[i + 1] * t * t * (1 + 2 * s) +
           run * t * s * (s * slope(c, i) - t * slope(c, i + 1));
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
        int pieces = curve->count < 2 ? 1 : (int)fmax(1, ceil(fabs(stop - start) / step));
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
