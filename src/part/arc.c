/* SPDX-License-Identifier: MIT */
/* The arc of a finished top: the circle whose distances from the wanted heights differ the least. */
#include "within.h"

static const double least_radius = 20, most_radius = 3000; /* mm; flatter is straight at a bench */

enum { STEPS = 48 };

/* A circle over a piece, given by its radius and the place of its crest. */
typedef struct circle {
    double radius, centre;
    double low, high; /* how far the wanted heights are above an arc whose crest is at 0 */
} circle;

static circle measured(const part_curve *c, double radius, double centre)
{
    circle it = {radius, centre, (double)INFINITY, -(double)INFINITY};
    for (int i = 0; i < c->count; i++) {
        double aside = c->x[i] - centre;
        double under = aside * aside / (radius + sqrt(radius * radius - aside * aside));
        it.low = fmin(it.low, c->y[i] + under);
        it.high = fmax(it.high, c->y[i] + under);
    }
    return it;
}

/* The best crest of one radius, somewhere over the piece. How far the heights spread is nearly convex
 * in it, so the bounds close in on it from both sides. */
static circle best_centre(const part_curve *c, double radius, double length)
{
    double low = fmax(0, length - radius * 0.999), high = fmin(length, radius * 0.999);
    for (int i = 0; i < STEPS && low < high; i++) {
        double third = (high - low) / 3;
        circle a = measured(c, radius, low + third), b = measured(c, radius, high - third);
        if (a.high - a.low < b.high - b.low) {
            high -= third;
        } else {
            low += third;
        }
    }
    return measured(c, radius, (low + high) / 2);
}

static circle best_circle(const part_curve *c, double length)
{
    double low = 1 / most_radius, high = 1 / fmax(least_radius, length * 0.51);
    for (int i = 0; i < STEPS; i++) {
        double third = (high - low) / 3;
        circle a = best_centre(c, 1 / (low + third), length);
        circle b = best_centre(c, 1 / (high - third), length);
        if (a.high - a.low < b.high - b.low) {
            high -= third;
        } else {
            low += third;
        }
    }
    circle best = best_centre(c, round(2 / (low + high)), length);
    return measured(c, best.radius, round(best.centre * 100) / 100);
}

/* Three points or fewer always lie on a circle, so a straight top is looked for first. */
static bool straight(const part_curve *c, double within)
{
    int last = c->count - 1;
    for (int i = 1; i < last; i++) {
        double share = (c->x[i] - c->x[0]) / (c->x[last] - c->x[0]);
        if (!(fabs(c->y[0] + share * (c->y[last] - c->y[0]) - c->y[i]) <= within)) {
            return false;
        }
    }
    return true;
}

void part_curve_round(part_curve *curve, double length, double under, double over)
{
    const double step = 0.01, nearly = 1e-9;
    if (curve->count < 3 || !(length > 0) || straight(curve, fmax(under, step))) {
        return;
    }
    circle best = best_circle(curve, length);
    double crest = under > 0 ? round((best.low + best.high) / 2 / step) * step
                             : ceil(best.high / step - nearly) * step;
    if (crest - best.low <= over + nearly && best.high - crest <= under + nearly &&
        best.radius < most_radius) {
        curve->radius = best.radius;
        curve->centre = best.centre;
        curve->crest = crest;
    }
}
