/* SPDX-License-Identifier: MIT */
/* A finished part between its two faces, by sections. All sections get their points by the same shares
 * of the same stretches, so that each point has its fellow. */
#include "slot.h"

static const double sagitta = 0.001; /* mm: how far a chord may be off its arc */

enum { FLOOR_PIECES = 32, LAND_PIECES = 1000 };
enum { SHARES = LAND_PIECES + PART_SECTIONS * SIL_STRINGS_MAX };

/* A solid being made along its top, from the treble end to the bass end. */
typedef struct trace {
    part_solid *solid;
    const part_curve *top;
    double x[PART_SECTIONS]; /* how far each section has come */
} trace;

static void put(trace *t, int section, double x, double y)
{
    t->solid->at[section][t->solid->count] = (part_point){x, y};
}

/* The shares at which a stretch of an arc is cut into chords. */
static int shares_of_arc(const trace *t, const double *to, double *share)
{
    double longest = 0;
    for (int k = 0; k < t->solid->sections; k++) {
        longest = fmax(longest, t->x[k] - to[k]);
    }
    double pieces = ceil(1.5 * longest / sqrt(8 * t->top->radius * sagitta));
    int count = (int)fmin(fmax(pieces, 1), LAND_PIECES);
    for (int i = 0; i < count; i++) {
        share[i] = (double)i / count;
    }
    return count;
}

/* The shares at which a stretch of another top bends in any of the sections, in rising order. */
static int shares_of_bends(const trace *t, const double *to, double *share)
{
    int count = 0;
    share[count++] = 0;
    for (int k = 0; k < t->solid->sections; k++) {
        for (int i = 0; i < t->top->count; i++) {
            double at = (t->x[k] - t->top->x[i]) / (t->x[k] - to[k]);
            if (!(at > 0) || !(at < 1)) {
                continue;
            }
            int place = count++;
            for (; place > 1 && share[place - 1] > at; place--) {
                share[place] = share[place - 1];
            }
            share[place] = at;
        }
    }
    return count;
}

/* Follows the top as far as a place in each section, whose points are left to what comes next. */
static void follow(trace *t, const double *to)
{
    double share[SHARES];
    int count = t->top->radius > 0 ? shares_of_arc(t, to, share) : shares_of_bends(t, to, share);
    for (int i = 0; i < count; i++, t->solid->count++) {
        for (int k = 0; k < t->solid->sections; k++) {
            double x = t->x[k] + (to[k] - t->x[k]) * share[i];
            put(t, k, x, part_curve_at(t->top, x));
        }
    }
    for (int k = 0; k < t->solid->sections; k++) {
        t->x[k] = to[k];
    }
}

static double turn_at(const part_slot *slot, int piece)
{
    double treble = part_slot_turn(slot, 0), bass = part_slot_turn(slot, 1);
    const int middle = FLOOR_PIECES / 2; /* its deepest place is a point */
    return piece < middle ? treble * (middle - piece) / middle : -bass * (piece - middle) / middle;
}

static void put_floor(trace *t, const part_slot *slots, int piece)
{
    for (int k = 0; k < t->solid->sections; k++) {
        const part_slot *slot = &slots[k];
        double turn = turn_at(slot, piece), r = slot->radius;
        put(t, k, slot->x + r * sin(turn), slot->floor + r - r * cos(turn));
    }
    t->solid->count++;
}

static void cut(trace *t, const part_slot *slots)
{
    const int sections = t->solid->sections;
    double treble[PART_SECTIONS];
    for (int k = 0; k < sections; k++) {
        treble[k] = slots[k].x + slots[k].half[0];
    }
    follow(t, treble);
    for (int k = 0; k < sections; k++) {
        put(t, k, treble[k], part_curve_at(t->top, treble[k]));
        t->x[k] = slots[k].x - slots[k].half[1];
    }
    t->solid->count++;
    for (int piece = 0; piece <= FLOOR_PIECES; piece++) {
        put_floor(t, slots, piece);
    }
}

static trace begin(part_solid *solid, const part_curve *top, double length, double thickness,
                   int sections)
{
    trace t = {.solid = solid, .top = top};
    solid->count = 2;
    solid->sections = sections;
    solid->thickness = thickness;
    for (int k = 0; k < sections; k++) {
        solid->at[k][0] = (part_point){0, 0};
        solid->at[k][1] = (part_point){length, 0};
        t.x[k] = length;
    }
    return t;
}

static void finish(trace *t)
{
    const double bass[PART_SECTIONS] = {0};
    follow(t, bass);
    for (int k = 0; k < t->solid->sections; k++) {
        put(t, k, 0, part_curve_at(t->top, 0));
    }
    t->solid->count++;
}

static bool fits(const trace *t, const part_slot *slots)
{
    const double least_land = 0.01;
    for (int k = 0; k < t->solid->sections; k++) {
        if (!(slots[k].x + slots[k].half[0] < t->x[k] - least_land) ||
            !(slots[k].x - slots[k].half[1] > least_land)) {
            return false;
        }
    }
    return true;
}

/* Lets all but the bottom fall toward the tuners, by so much at the last section. Returned: whether all
 * of it stays over the bottom. */
static bool let_fall(part_solid *solid, double fall)
{
    bool over = true;
    for (int k = 0; k < solid->sections; k++) {
        for (int i = 2; i < solid->count; i++) {
            double *y = &solid->at[k][i].y;
            *y -= fall * k / (solid->sections - 1);
            over = over && *y > 0;
        }
    }
    return over;
}

bool part_nut_solid(const part_nut *nut, part_solid *solid)
{
    const double degree = 0.017453292519943295;
    part_corner corners[PART_CORNERS];
    double fall = nut->thickness / cos(nut->slant) * tan(nut->fall_deg * degree);
    double aside = nut->thickness * tan(nut->slant);
    if (part_nut_corners(nut, PART_FINISHED, corners) == 0 || !(nut->thickness > 0) ||
        !sil_known(fall)) {
        return false;
    }
    trace t = begin(solid, &nut->top, nut->length, nut->thickness, PART_SECTIONS);
    for (int i = 0; i < nut->strings; i++) {
        part_slot slots[PART_SECTIONS];
        for (int k = 0; k < PART_SECTIONS; k++) {
            double share = (double)k / (PART_SECTIONS - 1);
            slots[k] = part_slot_at(&nut->top, nut->along[i] + aside * share, nut->floor[i],
                                    nut->mouth[i]);
        }
        if (!fits(&t, slots)) {
            return false;
        }
        cut(&t, slots);
    }
    finish(&t);
    return let_fall(solid, fall);
}

bool part_saddle_solid(const part_saddle *saddle, part_solid *solid)
{
    part_corner corners[PART_CORNERS];
    if (part_saddle_corners(saddle, PART_FINISHED, corners) == 0 || !(saddle->thickness > 0)) {
        return false;
    }
    trace t = begin(solid, &saddle->finished_top, saddle->length, saddle->thickness, 2);
    finish(&t);
    for (int i = 2; i < solid->count && saddle->base; i++) { /* from the bottom as it will be */
        part_point *at = &solid->at[0][i];
        at->y -= part_base_at(saddle, saddle->base_all, at->x);
        solid->at[1][i] = *at;
    }
    return true;
}
