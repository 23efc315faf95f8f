/* SPDX-License-Identifier: MIT */
/* The arc of a finished top: the circle whose distances from the wanted heights differ the least. */
#include "within.h"

static const double least_radius = 20, most_radius = 3000; /* mm; flatter is straight at a bench */

/* A centre to 0.005 mm of 75, and a curvature to half a millimetre of the flattest radius. */
enum { CENTRE_STEPS = 20, CURVATURE_STEPS = 30 };

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

/* What is searched: the crest of a given radius, or the radius with its best crest. */
typedef struct search {
    const part_curve *curve;
    double length, radius;
} search;

typedef circle tried_at(const search *s, double place);

/* How far the heights spread is nearly convex in the crest and in the curvature, so the bounds close
 * in on the least from both sides, by the golden section: each place is tried once. */
static circle narrowed(const search *s, double low, double high, int steps, tried_at *at)
{
    const double golden = 0.6180339887498949;
    double left = high - golden * (high - low), right = low + golden * (high - low);
    circle a = at(s, left), b = at(s, right);
    for (int i = 0; i < steps && low < high; i++) {
        if (a.high - a.low < b.high - b.low) {
            high = right;
            right = left;
            b = a;
            left = high - golden * (high - low);
            a = at(s, left);
        } else {
            low = left;
            left = right;
            a = b;
            right = low + golden * (high - low);
            b = at(s, right);
        }
    }
    return a.high - a.low < b.high - b.low ? a : b;
}

static circle with_crest(const search *s, double centre)
{
    return measured(s->curve, s->radius, centre);
}

/* The crest is somewhere over the piece. */
static circle with_curvature(const search *s, double curvature)
{
    double radius = 1 / curvature, length = s->length;
    search of = {s->curve, length, radius};
    return narrowed(&of, fmax(0, length - radius * 0.999), fmin(length, radius * 0.999),
                    CENTRE_STEPS, with_crest);
}

static circle best_circle(const part_curve *c, double length)
{
    search s = {c, length, SIL_UNKNOWN};
    circle best = narrowed(&s, 1 / most_radius, 1 / fmax(least_radius, length * 0.51),
                           CURVATURE_STEPS, with_curvature);
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
