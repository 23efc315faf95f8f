/* SPDX-License-Identifier: MIT */
#include "slot.h"

part_arc part_arc_to(part_corner corner, part_corner next)
{
    double dx = next.x - corner.x, dy = next.y - corner.y, b = corner.bulge;
    double chord = hypot(dx, dy), radius = chord * (1 + b * b) / (4 * fabs(b));
    double to_left = chord * (1 - b * b) / (4 * b); /* from the middle of the chord to the centre */
    part_arc arc = {.x = (corner.x + next.x) / 2 - dy / chord * to_left,
                    .y = (corner.y + next.y) / 2 + dx / chord * to_left,
                    .radius = radius,
                    .turn = 4 * atan(b)};
    arc.from = atan2(corner.y - arc.y, corner.x - arc.x);
    return arc;
}

/* An outline that is being made along its top, from the treble end to the bass end. */
typedef struct trace {
    const part_curve *top;
    part_corner *out;
    int count;
    double x; /* how far it has come */
} trace;

static void put(trace *t, double x, double y, double bulge)
{
    t->out[t->count++] = (part_corner){x, y, bulge};
}

/* Follows the top as far as x, whose corner is left to what comes next. */
static void follow(trace *t, double x)
{
    const part_curve *top = t->top;
    double bulge = 0;
    if (top->radius > 0) {
        double turn =
            asin((t->x - top->centre) / top->radius) - asin((x - top->centre) / top->radius);
        bulge = tan(turn / 4);
    }
    put(t, t->x, part_curve_at(top, t->x), bulge);
    for (int i = top->count - 1; i >= 0 && !(top->radius > 0); i--) {
        if (top->x[i] < t->x && top->x[i] > x) {
            put(t, top->x[i], top->y[i], 0);
        }
    }
    t->x = x;
}

part_slot part_slot_at(const part_curve *top, double x, double floor, double mouth)
{
    const double least_wall = 1e-6;
    part_slot slot = {.x = x, .floor = floor, .radius = mouth / 2};
    for (int side = 0; side < 2; side++) {
        double way = side == 0 ? 1 : -1, r = slot.radius, low = 0, high = r;
        slot.wall[side] = part_curve_at(top, x + way * r) - floor - r > least_wall;
        for (int i = 0; i < 60 && !slot.wall[side]; i++) {
            double half = (low + high) / 2, round = floor + r - sqrt(r * r - half * half);
            bool under = round < part_curve_at(top, x + way * half);
            low = under ? half : low;
            high = under ? high : half;
        }
        slot.half[side] = slot.wall[side] ? r : low;
    }
    return slot;
}

double part_slot_turn(const part_slot *slot, int side)
{
    return asin(slot->half[side] / slot->radius);
}

static void cut(trace *t, const part_slot *slot)
{
    double bulge = -tan((part_slot_turn(slot, 0) + part_slot_turn(slot, 1)) / 4);
    double treble = slot->x + slot->half[0], bass = slot->x - slot->half[1];
    follow(t, treble);
    if (slot->wall[0]) {
        put(t, treble, part_curve_at(t->top, treble), 0);
        put(t, treble, slot->floor + slot->radius, bulge);
    } else {
        put(t, treble, part_curve_at(t->top, treble), bulge);
    }
    if (slot->wall[1]) {
        put(t, bass, slot->floor + slot->radius, 0);
    }
    t->x = bass;
}

static int finish(trace *t)
{
    follow(t, 0);
    put(t, 0, part_curve_at(t->top, 0), 0);
    return t->count;
}

int part_nut_corners(const part_nut *nut, part_when when, part_corner *out)
{
    const double least_land = 0.01;
    bool first = when == PART_FIRST;
    trace t = {.top = first ? &nut->first_top : &nut->top, .out = out, .x = nut->length};
    if (when == PART_PRESENT || !sil_known(nut->height) || t.top->count == 0) {
        return 0;
    }
    put(&t, 0, 0, 0);
    put(&t, nut->length, 0, 0);
    for (int i = 0; i < nut->strings; i++) {
        double floor = first ? nut->first[i] : nut->floor[i];
        part_slot slot = part_slot_at(t.top, nut->along[i], floor, nut->mouth[i]);
        if (!(floor > 0) || !(slot.x + slot.half[0] < t.x - least_land) ||
            !(slot.x - slot.half[1] > least_land)) {
            return 0;
        }
        cut(&t, &slot);
    }
    return finish(&t);
}

static const part_curve *top_of(const part_saddle *saddle, part_when when)
{
    switch (when) {
    case PART_PRESENT:
        return &saddle->present_top;
    case PART_FIRST:
        return &saddle->first_top;
    case PART_FINISHED:
        break;
    }
    return &saddle->finished_top;
}

static double bottom_of(const part_saddle *saddle, part_when when, double x)
{
    if (!saddle->base || when == PART_PRESENT) {
        return 0;
    }
    return part_base_at(saddle, when == PART_FIRST ? saddle->base_first : saddle->base_all, x);
}

int part_saddle_corners(const part_saddle *saddle, part_when when, part_corner *out)
{
    trace t = {.top = top_of(saddle, when), .out = out, .x = saddle->length};
    if (t.top->count == 0) {
        return 0;
    }
    put(&t, 0, bottom_of(saddle, when, 0), 0);
    put(&t, saddle->length, bottom_of(saddle, when, saddle->length), 0);
    return finish(&t);
}

void part_nut_slot(const part_nut *nut, int string, part_point out[4])
{
    const double past = 1; /* mm */
    double half = nut->mouth[string] / 2, slope = tan(nut->slant), x = nut->along[string];
    double front = -past, back = nut->thickness + past;
    out[0] = (part_point){x - half + front * slope, front};
    out[1] = (part_point){x + half + front * slope, front};
    out[2] = (part_point){x + half + back * slope, back};
    out[3] = (part_point){x - half + back * slope, back};
}
