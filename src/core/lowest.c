/* SPDX-License-Identifier: MIT */
/* The lowest clean setup: a linear programme solved at its corners. See docs/arithmetic.md, "The
 * lowest clean setup".
 *
 * For a bend K each string has two heights, Hn and Hs, and (1 - t) Hn + t Hs is to be as low as
 * possible. The limits are lines Hn >= alpha + beta K - gamma Hs (the open string, fret by fret;
 * the gap at fret 1) and lines Hs >= alpha + beta K (every fretted note and every fret past it).
 * Two searches are made, over Hs for one bend and over the bend. Both look for the lowest point of
 * a convex curve made of straight pieces: take the point where the tangents from either side meet,
 * until that point lies on the curve. */
#include "swing.h"

enum { STEPS_MAX = 200 };

/* A value this close to a tangent counts as lying on it, mm. */
static const double slack = 1e-11;

/* A lower limit of a height: alpha + beta K - gamma Hs. */
typedef struct floor_line {
    double alpha, beta, gamma;
} floor_line;

enum { OPEN_MAX = SIL_FRETS_MAX + 1, STOPPED_MAX = SIL_FRETS_MAX * SIL_FRETS_MAX / 2 };

/* One string's programme: lower limits of Hn, lower limits of Hs, and what its action is made
 * of. */
typedef struct programme {
    floor_line *open, *stopped; /* in the caller's room */
    int open_count, stopped_count;
    double leverage;  /* action at 12 = (1 - t) Hn + t Hs - C_12(K) */
    double crown12_k; /* slope of C_12 in K; its value at K = 0 does not move the lowest point */
} programme;

/* A value, its slope, and the place it belongs to. */
typedef struct tangent {
    double at, value, slope;
} tangent;

/* Crown heights are linear in the bend: the height at K = 0, and the slope. */
typedef struct crown_lines {
    double flat[SIL_FRETS_MAX + 1], per_bend[SIL_FRETS_MAX + 1];
} crown_lines;

/* crowned: a state with the crowns; its bend is used up. */
static void draw_crowns(const sil_board *board, sil_fit *crowned, int string, crown_lines *lines)
{
    int last = board->frets < 12 ? 12 : board->frets;
    for (int n = 1; n <= last; n++) {
        crowned->bend = 0.0;
        lines->flat[n] = sil_crown_height(board, crowned, string, n);
        crowned->bend = 1.0;
        lines->per_bend[n] = sil_crown_height(board, crowned, string, n) - lines->flat[n];
    }
}

/* Hn (1 - t) + Hs t >= C_n + swing. */
static void add_open(const sil_board *board, const crown_lines *crown, int string, int fret,
                     double swing, programme *p)
{
    double t = board->fret_x[string][fret] / board->saddle_x[string];
    p->open[p->open_count++] = (floor_line){(crown->flat[fret] + swing) / (1.0 - t),
                                            crown->per_bend[fret] / (1.0 - t), t / (1.0 - t)};
}

/* C_k (1 - w) + Hs w >= C_n + swing. */
static void add_stopped(const sil_board *board, const crown_lines *crown, int string, int stop,
                        int fret, double swing, programme *p)
{
    const double *x = board->fret_x[string];
    double w = (x[fret] - x[stop]) / (board->saddle_x[string] - x[stop]);
    p->stopped[p->stopped_count++] =
        (floor_line){.alpha = (crown->flat[fret] + swing - crown->flat[stop] * (1.0 - w)) / w,
                     .beta = (crown->per_bend[fret] - crown->per_bend[stop] * (1.0 - w)) / w};
}

static void pose(const sil_board *board, sil_fit *crowned, const sil_pluck *pluck,
                 const sil_lowest_wish *wish, int i, programme *p)
{
    crown_lines crown;
    draw_crowns(board, crowned, i, &crown);
    p->open_count = p->stopped_count = 0;
    p->leverage = sil_leverage(board, i);
    p->crown12_k = crown.per_bend[12];
    const double *x = board->fret_x[i];
    for (int stop = 0; stop < board->frets; stop++) {
        core_swing swing = core_swing_from(board, pluck, i, stop);
        for (int n = stop + 1; n <= board->frets; n++) {
            double depth = wish->force[i] * core_swing_at(&swing, x[n] - x[stop]);
            if (stop == 0) {
                add_open(board, &crown, i, n, depth, p);
            } else {
                add_stopped(board, &crown, i, stop, n, depth, p);
            }
        }
    }
    /* Gap at fret 1 with the string held at 3: Hn (1 - s) + C_3 s - C_1 >= least. */
    double s = board->fret_x[i][1] / board->fret_x[i][3];
    p->open[p->open_count++] =
        (floor_line){(wish->least_first + crown.flat[1] - crown.flat[3] * s) / (1.0 - s),
                     (crown.per_bend[1] - crown.per_bend[3] * s) / (1.0 - s), 0.0};
}

static double floor_at(floor_line line, double bend, double saddle)
{
    return line.alpha + line.beta * bend - line.gamma * saddle;
}

/* The highest lower limit at this Hs; of equal ones the one that falls least as Hs grows. */
static const floor_line *highest(const floor_line *lines, int count, double bend, double saddle)
{
    const floor_line *top = lines;
    double most = -(double)INFINITY;
    for (int k = 0; k < count; k++) {
        double value = floor_at(lines[k], bend, saddle) - slack * lines[k].gamma;
        if (value > most) {
            most = value;
            top = &lines[k];
        }
    }
    return top;
}

/* The same of the lower limits of Hs, in which Hs has no part. */
static const floor_line *highest_stopped(const programme *p, double bend)
{
    const floor_line *top = p->stopped;
    double most = -(double)INFINITY;
    for (int k = 0; k < p->stopped_count; k++) {
        double value = p->stopped[k].alpha + p->stopped[k].beta * bend;
        if (value > most) {
            most = value;
            top = &p->stopped[k];
        }
    }
    return top;
}

/* Drops the lower limits of Hs that are never the highest from no bend to the most. The limits that
 * hold at these two ends cross between them. A limit that lies under their crossing lies under one
 * of them at every bend, since all are straight. */
static void drop_under(programme *p, double most)
{
    const floor_line first = *highest_stopped(p, 0.0), last = *highest_stopped(p, most);
    double turn = last.beta - first.beta;
    double cross = turn > 0.0 ? fmin(fmax((first.alpha - last.alpha) / turn, 0.0), most) : 0.0;
    double level = floor_at(first, cross, 0.0);
    int kept = 0;
    for (int k = 0; k < p->stopped_count; k++) {
        if (floor_at(p->stopped[k], cross, 0.0) >= level - slack) {
            p->stopped[kept++] = p->stopped[k];
        }
    }
    p->stopped_count = kept;
}

/* A string at its lowest for a bend. */
typedef struct settled {
    double nut, saddle;
    double value, slope; /* action at 12 without C_12 at K = 0, and how it changes with the bend */
} settled;

/* How the cost grows with Hs along a lower limit of Hn. Along the limit of the open string over
 * fret 12, which is the action itself, it does not grow: it is exactly 0. Of equal costs the lowest
 * nut is taken, so Hs goes on growing. */
static double cost_slope(const programme *p, const floor_line *line)
{
    double slope = p->leverage - (1.0 - p->leverage) * line->gamma;
    return fabs(slope) < 1e-12 ? 0.0 : slope;
}

static settled conclude(const programme *p, double bend, double saddle, double nut,
                        double nut_slope, double saddle_slope)
{
    double t = p->leverage;
    return (settled){nut, saddle, (1.0 - t) * nut + t * saddle - p->crown12_k * bend,
                     (1.0 - t) * nut_slope + t * saddle_slope - p->crown12_k};
}

/* The lowest setup of a string for a bend. It starts at the least Hs. While the limit of Hn falls
 * faster there than Hs costs, Hs grows to where that limit meets the one that holds beyond. */
static settled settle(const programme *p, double bend)
{
    const floor_line *under = highest_stopped(p, bend);
    double saddle = floor_at(*under, bend, 0.0);
    const floor_line *left = highest(p->open, p->open_count, bend, saddle);
    if (cost_slope(p, left) > 0.0) {
        return conclude(p, bend, saddle, floor_at(*left, bend, saddle),
                        left->beta - left->gamma * under->beta, under->beta);
    }
    /* At a large Hs the limit that does not fall holds: the gap at fret 1. */
    const floor_line *right = &p->open[p->open_count - 1];
    for (int step = 0; step < STEPS_MAX; step++) {
        double over = left->alpha + left->beta * bend - right->alpha - right->beta * bend;
        saddle = over / (left->gamma - right->gamma);
        const floor_line *top = highest(p->open, p->open_count, bend, saddle);
        if (floor_at(*top, bend, saddle) <= floor_at(*right, bend, saddle) + slack) {
            break;
        }
        *(cost_slope(p, top) > 0.0 ? &right : &left) = top;
    }
    double falls = cost_slope(p, left);
    double climbs = cost_slope(p, right);
    double theta = climbs / (climbs - falls);
    double nut_slope = theta * left->beta + (1.0 - theta) * right->beta;
    return conclude(p, bend, saddle, floor_at(*right, bend, saddle), nut_slope, 0.0);
}

static tangent sum_at(const programme *p, int strings, double bend)
{
    tangent sum = {.at = bend};
    for (int i = 0; i < strings; i++) {
        settled string = settle(&p[i], bend);
        sum.value += string.value;
        sum.slope += string.slope;
    }
    return sum;
}

/* The bend with the least sum; of equal sums the least bend. */
static double find_bend(programme *p, int strings, double most)
{
    for (int i = 0; i < strings && most > 0.0; i++) {
        drop_under(&p[i], most);
    }
    tangent left = sum_at(p, strings, 0.0);
    tangent right = sum_at(p, strings, most);
    /* Slopes are mm of action per 1/mm of bend, about 1e5, so a flat piece is flat only up to
     * rounding. */
    const double flat = 1e-6;
    if (left.slope >= -flat || most <= 0.0) {
        return 0.0;
    }
    if (right.slope < -flat) {
        return most;
    }
    for (int step = 0; step < STEPS_MAX; step++) {
        double run = right.value - left.value + left.slope * left.at - right.slope * right.at;
        double at = run / (left.slope - right.slope);
        double level = left.value + left.slope * (at - left.at);
        tangent middle = sum_at(p, strings, at);
        if (middle.value <= level + slack * strings) {
            return at;
        }
        *(middle.slope < -flat ? &left : &right) = middle;
    }
    return right.at;
}

static bool told(const sil_board *board, const sil_pluck *pluck, const sil_lowest_wish *wish)
{
    for (int i = 0; i < board->strings; i++) {
        if (!sil_known(pluck->tension[i]) || !sil_known(wish->force[i])) {
            return false;
        }
    }
    return board->frets >= 3 && sil_known(pluck->at) && sil_known(wish->least_first);
}

/* Floors under Hn: one a fret, and the gap at fret 1. Under Hs: one for every two frets. */
static size_t open_most(int frets)
{
    return (size_t)frets + 1;
}

static size_t stopped_most(int frets)
{
    return (size_t)frets * (size_t)(frets - 1) / 2;
}

size_t sil_lowest_room(int strings, int frets)
{
    return (size_t)strings * (open_most(frets) + stopped_most(frets)) * sizeof(floor_line);
}

sil_status sil_lowest_find(const sil_board *board, const sil_crowns *crowns, const sil_pluck *pluck,
                           const sil_lowest_wish *wish, void *room, sil_lowest *lowest)
{
    floor_line *floors = room;
    programme p[SIL_STRINGS_MAX];
    bool known = told(board, pluck, wish);
    double bend = SIL_UNKNOWN;
    *lowest = (sil_lowest){.relief = SIL_UNKNOWN};
    if (crowns) {
        lowest->fit.crowns = *crowns;
    }
    if (known) {
        for (int i = 0; i < board->strings; i++) {
            p[i].open = floors;
            p[i].stopped = floors + open_most(board->frets);
            floors = p[i].stopped + stopped_most(board->frets);
            pose(board, &lowest->fit, pluck, wish, i, &p[i]);
        }
        bend = find_bend(p, board->strings, sil_bend(board, wish->most_relief));
        lowest->relief = sil_relief(board, bend);
    }
    lowest->fit.bend = bend;
    for (int i = 0; i < board->strings; i++) {
        settled string = {SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN};
        if (known) {
            string = settle(&p[i], bend);
        }
        lowest->fit.nut_height[i] = string.nut;
        lowest->fit.saddle_height[i] = string.saddle;
    }
    return known ? SIL_DONE : SIL_NOT_KNOWN;
}
