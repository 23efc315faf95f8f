/* SPDX-License-Identifier: MIT */
/* The arc of a finished top: the circle whose distances from the wanted heights differ the least. */
#include "within.h"

static const double least_radius = 20, most_radius = 3000; /* mm; flatter is straight at a bench */

/* A curvature to half a millimetre of the flattest radius. A crest takes four or five steps. */
enum { CENTRE_STEPS = 20, CURVATURE_STEPS = 30 };

/* A circle over a piece, given by its radius and the place of its crest. */
typedef struct circle {
    double radius, centre;
    double low, high; /* how far the wanted heights are above an arc whose crest is at 0 */
    double slope;     /* by how much they spread more for a crest a little farther along */
} circle;

/* How the height of a wanted point over the arc changes with the place of the crest. */
static double slope_at(double aside, double down)
{
    return -aside / down;
}

/* The arc's own heights come first, and what is least and most of them after: as one loop it would
 * wait for every root and turn with every point. */
static circle measured(const part_curve *c, double radius, double centre)
{
    double aside[SIL_STRINGS_MAX], down[SIL_STRINGS_MAX], above[SIL_STRINGS_MAX];
    int low = 0, high = 0, k = 0;
    do { /* there are three points at least */
        aside[k] = c->x[k] - centre;
        down[k] = sqrt(radius * radius - aside[k] * aside[k]);
        above[k] = c->y[k] + aside[k] * aside[k] / (radius + down[k]);
    } while (++k < c->count);
    for (int i = 1; i < c->count; i++) {
        low = above[i] < above[low] ? i : low;
        high = above[i] > above[high] ? i : high;
    }
    return (circle){radius, centre, above[low], above[high],
                    slope_at(aside[high], down[high]) - slope_at(aside[low], down[low])};
}

static double spread(circle it)
{
    return it.high - it.low;
}

/* What is searched for a curvature: the crest with which the heights spread the least. */
typedef struct search {
    const part_curve *curve;
    double length;
} search;

/* The crest is somewhere over the piece. How far the heights spread is a chain of nearly straight
 * lines over its place, which bends upward only, so the next place to try is where the lines of the
 * two bounds meet; nothing can be under them. */
static circle with_curvature(const search *s, double curvature)
{
    const double enough = 1e-7; /* mm */
    double radius = 1 / curvature;
    circle a = measured(s->curve, radius, fmax(0, s->length - radius * 0.999));
    circle b = measured(s->curve, radius, fmin(s->length, radius * 0.999));
    for (int i = 0; i < CENTRE_STEPS && a.slope < 0 && b.slope > 0; i++) {
        double run = b.centre - a.centre;
        double along = (spread(b) - spread(a) - b.slope * run) / (a.slope - b.slope);
        double least = spread(a) + a.slope * along;
        circle next = measured(s->curve, radius, a.centre + fmin(fmax(along, 0), run));
        *(next.slope < 0 ? &a : &b) = next;
        if (spread(next) <= least + enough) {
            return next;
        }
    }
    return spread(a) < spread(b) ? a : b;
}

/* The same least is nearly convex in the curvature, so the bounds close in on it from both sides, by
 * the golden section: each place is tried once. A radius is wanted to whole millimetres, so where the
 * bounds are the same one, the search is over. */
static circle narrowed(const search *s, double low, double high)
{
    const double golden = 0.6180339887498949;
    double left = high - golden * (high - low), right = low + golden * (high - low);
    circle a = with_curvature(s, left), b = with_curvature(s, right);
    for (int i = 0; i < CURVATURE_STEPS && low < high && round(1 / low) > round(1 / high); i++) {
        if (spread(a) < spread(b)) {
            high = right;
            right = left;
            b = a;
            left = high - golden * (high - low);
            a = with_curvature(s, left);
        } else {
            low = left;
            left = right;
            a = b;
            right = low + golden * (high - low);
            b = with_curvature(s, right);
        }
    }
    return spread(a) < spread(b) ? a : b;
}

static circle best_circle(const part_curve *c, double length)
{
    search s = {c, length};
    circle best = narrowed(&s, 1 / most_radius, 1 / fmax(least_radius, length * 0.51));
    best = with_curvature(&s, 1 / round(best.radius));
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
