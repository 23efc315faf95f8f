/* SPDX-License-Identifier: MIT */
/* Straight lines along a saddle. The one sanded off its bottom is a linear programme in two unknowns,
 * solved at its corners. See docs/arithmetic.md, "The saddle". */
#include <sillet/core/saddle.h>

/* b0 + b1 z <= limit or >= limit at one z. The least slope has an edge of its own. */
typedef struct edge {
    double c0, c1, limit; /* c0 b0 + c1 b1 <= limit; an equality if it only makes corners */
    bool corner_only;
} edge;

enum { EDGES_MAX = SIL_STRINGS_MAX + 5 };

/* How far rounding can move a corner, mm: far more than it really does, far less than a scratch. */
static const double slack = 1e-11;

double sil_line_at(sil_line line, double z)
{
    return line.b0 + line.b1 * z;
}

sil_line sil_level_line(int count, const double *z, const double *value)
{
    double z_mean = 0.0, mean = 0.0, squares = 0.0, products = 0.0;
    for (int i = 0; i < count; i++) {
        z_mean += z[i] / count;
        mean += value[i] / count;
    }
    for (int i = 0; i < count; i++) {
        squares += (z[i] - z_mean) * (z[i] - z_mean);
        products += (z[i] - z_mean) * (value[i] - mean);
    }
    double slope = squares > 0.0 ? products / squares : 0.0;
    return (sil_line){mean - slope * z_mean, slope};
}

static bool holds_all(const edge *edges, int count, sil_line line)
{
    for (int k = 0; k < count; k++) {
        double over = edges[k].c0 * line.b0 + edges[k].c1 * line.b1 - edges[k].limit;
        if (!edges[k].corner_only && over > slack) {
            return false;
        }
    }
    return true;
}

static bool corner(const edge *p, const edge *q, sil_line *line)
{
    double det = p->c0 * q->c1 - p->c1 * q->c0;
    if (det == 0.0) { /* parallel: the same z */
        return false;
    }
    line->b0 = (p->limit * q->c1 - p->c1 * q->limit) / det;
    line->b1 = (p->c0 * q->limit - p->limit * q->c0) / det;
    return true;
}

/* The edges of the region, and b1 = 0, where a level part of the optimum has its least slope. */
static int draw_edges(int count, const double *z, const double *cap, double half,
                      const sil_line *most, edge *edges)
{
    int n = 0;
    for (int i = 0; i < count; i++) {
        edges[n++] = (edge){1.0, z[i], cap[i], false};
    }
    const double ends[] = {-half, half};
    for (int side = 0; side < 2; side++) {
        double end = ends[side];
        edges[n++] = (edge){-1.0, -end, 0.0, false};
        if (most) {
            edges[n++] = (edge){1.0, end, sil_line_at(*most, end), false};
        }
    }
    edges[n++] = (edge){0.0, 1.0, 0.0, true};
    return n;
}

sil_line sil_saddle_line(int count, const double *z, const double *cap, const bool *wanted,
                         double half, const sil_line *most)
{
    if (count == 1) {
        double parallel = fmax(0.0, cap[0]);
        return (sil_line){most ? fmin(parallel, most->b0) : parallel, 0.0};
    }
    double gain0 = 0.0;
    double gain1 = 0.0;
    for (int i = 0; i < count; i++) {
        gain0 += wanted[i] ? 1.0 : 0.0;
        gain1 += wanted[i] ? z[i] : 0.0;
    }
    edge edges[EDGES_MAX];
    int edge_count = draw_edges(count, z, cap, half, most, edges);
    sil_line best = {0.0, 0.0}; /* taking nothing off is always allowed */
    double best_gain = 0.0;
    for (int p = 0; p < edge_count; p++) {
        for (int q = p + 1; q < edge_count; q++) {
            sil_line line;
            if (!corner(&edges[p], &edges[q], &line)) {
                continue;
            }
            double gain = gain0 * line.b0 + gain1 * line.b1;
            bool level = fabs(gain - best_gain) <= slack;
            if ((level ? fabs(line.b1) < fabs(best.b1) : gain > best_gain) &&
                holds_all(edges, edge_count, line)) {
                best = line;
                best_gain = gain;
            }
        }
    }
    return best;
}
