/* SPDX-License-Identifier: MIT */
/* A solid is closed when each edge of each triangle is also the edge of one other triangle, in the
 * other direction. So every point is rounded to the file's own numbers before anything is decided by
 * it, and points that fall together are one. */
#include "stl.h"

#include <math.h>
#include <string.h>

enum { HEADER = 80, COUNT_AT = HEADER };

/* A point, rounded to a float. */
typedef struct corner {
    double x, y, z;
} corner;

/* A solid being written. */
typedef struct body {
    stl_file *file;
    const part_solid *solid;
    bool mirrored;
    double from, length;
} body;

static void put_word(text *out, uint32_t word)
{
    const char bytes[] = {(char)(word & 0xFF), (char)(word >> 8 & 0xFF), (char)(word >> 16 & 0xFF),
                          (char)(word >> 24)};
    text_put_bytes(out, bytes, 4);
}

static void put_float(text *out, double value)
{
    float single = (float)value;
    uint32_t word;
    memcpy(&word, &single, sizeof word);
    put_word(out, word);
}

static void put_corner(text *out, corner c)
{
    put_float(out, c.x);
    put_float(out, c.y);
    put_float(out, c.z);
}

static bool same(corner a, corner b)
{
    return a.x == b.x && a.y == b.y && a.z == b.z;
}

static corner normal_of(corner a, corner b, corner c)
{
    double ux = b.x - a.x, uy = b.y - a.y, uz = b.z - a.z;
    double vx = c.x - a.x, vy = c.y - a.y, vz = c.z - a.z;
    double x = uy * vz - uz * vy, y = uz * vx - ux * vz, z = ux * vy - uy * vx;
    double length = sqrt(x * x + y * y + z * z);
    return (corner){x / length, y / length, z / length};
}

/* Adds a triangle that is counter-clockwise as seen from outside, unless two of its points are one.
 * Mirrored it is taken the other way round. */
static void put_triangle(body *s, corner a, corner b, corner c)
{
    text *out = s->file->out;
    if (same(a, b) || same(b, c) || same(c, a)) {
        return;
    }
    if (s->mirrored) {
        corner other = b;
        b = c;
        c = other;
    }
    put_corner(out, normal_of(a, b, c));
    put_corner(out, a);
    put_corner(out, b);
    put_corner(out, c);
    text_put_bytes(out, "\0\0", 2);
    s->file->triangles++;
}

static double rounded(double value)
{
    return (double)(float)value;
}

static corner corner_at(const body *s, int section, int i)
{
    part_point at = s->solid->at[section][i];
    double x = s->mirrored ? s->length - at.x : at.x;
    double y = s->from + s->solid->thickness * section / (s->solid->sections - 1);
    return (corner){rounded(x), rounded(y), rounded(at.y)};
}

static double cross(const body *s, corner a, corner b, corner c)
{
    double way = s->mirrored ? -1 : 1;
    return way * ((b.x - a.x) * (c.z - a.z) - (b.z - a.z) * (c.x - a.x));
}

/* A face as a ring of different points, of which ears are cut off one by one. */
typedef struct ring {
    corner at[PART_SOLID_POINTS];
    int count;
} ring;

/* Whether the point is convex and nothing else of the ring is in or on its triangle. */
static bool is_ear(const body *s, const ring *r, int i)
{
    corner a = r->at[(i + r->count - 1) % r->count], b = r->at[i], c = r->at[(i + 1) % r->count];
    if (!(cross(s, a, b, c) > 0)) {
        return false;
    }
    for (int k = 0; k < r->count; k++) {
        corner p = r->at[k];
        bool own = same(p, a) || same(p, b) || same(p, c);
        if (!own && cross(s, a, b, p) >= 0 && cross(s, b, c, p) >= 0 && cross(s, c, a, p) >= 0) {
            return false;
        }
    }
    return true;
}

static void put_face(body *s, int section)
{
    bool front = section == 0;
    ring r = {.count = 0};
    for (int i = 0; i < s->solid->count; i++) {
        corner at = corner_at(s, section, i);
        if (r.count == 0 || !same(at, r.at[r.count - 1])) {
            r.at[r.count++] = at;
        }
    }
    for (int i = 0, missed = 0; r.count > 2 && missed <= r.count;) {
        i %= r.count;
        if (!is_ear(s, &r, i)) {
            i++;
            missed++;
            continue;
        }
        corner a = r.at[(i + r.count - 1) % r.count], b = r.at[i], c = r.at[(i + 1) % r.count];
        put_triangle(s, a, front ? b : c, front ? c : b);
        memmove(&r.at[i], &r.at[i + 1], (size_t)(r.count - i - 1) * sizeof *r.at);
        r.count--;
        missed = 0;
    }
}

/* The band between a section and the next one. */
static void put_band(body *s, int section)
{
    const part_solid *solid = s->solid;
    for (int i = 0; i < solid->count; i++) {
        int next = (i + 1) % solid->count;
        corner a = corner_at(s, section, i), b = corner_at(s, section, next);
        corner c = corner_at(s, section + 1, i), d = corner_at(s, section + 1, next);
        put_triangle(s, a, c, b);
        put_triangle(s, b, c, d);
    }
}

void stl_add(stl_file *file, const part_solid *solid, bool mirrored, double from)
{
    body s = {file, solid, mirrored, from, solid->at[0][1].x};
    put_face(&s, 0);
    put_face(&s, solid->sections - 1);
    for (int section = 0; section + 1 < solid->sections; section++) {
        put_band(&s, section);
    }
}

stl_file stl_begin(text *out)
{
    const char about[HEADER] =
        "sillet: millimetres, x along the part, y toward the headstock, z up";
    text_put_bytes(out, about, sizeof about);
    put_word(out, 0);
    return (stl_file){out, 0};
}

void stl_end(stl_file *file)
{
    uint32_t count = file->triangles;
    for (int i = 0; i < 4 && !file->out->failed; i++) {
        file->out->bytes[COUNT_AT + i] = (char)(count >> 8 * i & 0xFF);
    }
}
