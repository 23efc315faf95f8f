/* SPDX-License-Identifier: MIT */
/* Dimensions read back from what is drawn, and held against the edges they lead out of. */
#ifndef SILLET_TESTS_DIMENSIONS_H
#define SILLET_TESTS_DIMENSIONS_H

#include "viewed.h"

/* A dimension as it is drawn: two lines that lead out of the part, the dimension line, two arrow
 * heads, the figure. */
typedef struct dimension {
    bool up;            /* of a height: all its places are along y, otherwise along x */
    double tip[2];      /* along */
    double value, last; /* the figure in mm or in, and what its last digit counts */
    const char *words;
} dimension;

enum { DIMENSION_SHAPES = 6 };

static inline double along_of(bool up, draw_point p)
{
    return up ? p.y : p.x;
}

static inline double off_of(bool up, draw_point p)
{
    return up ? -p.x : p.y;
}

static inline void read_value(dimension *d)
{
    const char *figure = d->words + (d->words[0] == '('); /* for reference, in brackets */
    const char *point = strpbrk(figure, ".,");
    d->value = atof(figure);
    d->last = point != NULL ? pow(10, -(double)strspn(point + 1, "0123456789")) : 1.0;
}

/* Whether the shapes from i on are a dimension; if so, that it is drawn as ISO 129-1 wants it: its
 * lines lead from the part past the dimension line, on which both tips are, away from each other
 * where there is room between them; the figure stands above the line, read from below or from the
 * right. */
static inline bool read_dimension(const draw_shapes *list, int i, dimension *d)
{
    const double room = 7.5; /* two heads and as much again between them */
    if (i + DIMENSION_SHAPES > list->count || !is_path(list, i, DRAW_DIMENSION, 2) ||
        !is_path(list, i + 1, DRAW_DIMENSION, 2) || !is_path(list, i + 2, DRAW_DIMENSION, 2) ||
        !list->shapes[i + 3].filled || !list->shapes[i + 4].filled ||
        list->shapes[i + 5].kind != DRAW_SHAPE_TEXT) {
        return false;
    }
    const draw_point *line = points_of(list, i + 2);
    const draw_shape *told = &list->shapes[i + 5];
    d->up = told->from > 45;
    d->words = words_of(list, i + 5);
    double level = off_of(d->up, line[0]),
           ends[2] = {along_of(d->up, line[0]), along_of(d->up, line[1])};
    near(off_of(d->up, line[1]), level, 1e-9);
    for (int k = 0; k < 2; k++) {
        const draw_point *head = points_of(list, i + 3 + k);
        d->tip[k] = along_of(d->up, head[0]);
        near(off_of(d->up, head[0]), level, 1e-9);
        assert_true(d->tip[k] >= fmin(ends[0], ends[1]) && d->tip[k] <= fmax(ends[0], ends[1]));
    }
    double apart = d->tip[1] - d->tip[0];
    for (int k = 0; k < 2; k++) {
        const draw_point *head = points_of(list, i + 3 + k), *out = points_of(list, i + k);
        double back = (along_of(d->up, head[1]) + along_of(d->up, head[2])) / 2 - d->tip[k];
        near((off_of(d->up, head[1]) + off_of(d->up, head[2])) / 2, level, 1e-9);
        assert_true((back * (k == 0 ? 1 : -1) > 0) == (apart >= room));
        near(along_of(d->up, out[0]), along_of(d->up, out[1]), 1e-9);
        bool own = fabs(along_of(d->up, out[0]) - d->tip[k]) < 1e-9;
        bool other = fabs(along_of(d->up, out[0]) - d->tip[1 - k]) < 1e-9;
        assert_true(own || other);
        assert_true((off_of(d->up, out[0]) - level) * (off_of(d->up, out[1]) - level) < 0);
    }
    double at = along_of(d->up, told->at), half = told->advance / 2;
    assert_true(off_of(d->up, told->at) > level && off_of(d->up, told->at) < level + 2);
    assert_int_equal(told->anchor, DRAW_MIDDLE);
    assert_true(apart > 0 || strcmp(d->words, "-") == 0);
    if (apart >= told->advance + 1) {
        near(at, (d->tip[0] + d->tip[1]) / 2, 1e-9);
    } else {
        assert_true(at - half >= d->tip[1] && at + half <= fmax(ends[0], ends[1]));
    }
    read_value(d);
    return true;
}

/* Whether a shape that is no dimension has a corner or end at this place along. */
static inline bool has_edge(const draw_shapes *list, bool up, double along)
{
    for (int i = 0; i < list->count; i++) {
        draw_layer layer = list->shapes[i].layer;
        bool of_part = list->shapes[i].kind == DRAW_SHAPE_PATH && layer != DRAW_DIMENSION &&
                       layer != DRAW_HATCH && layer != DRAW_FRAME && layer != DRAW_RULE;
        for (int k = 0; of_part && k < list->shapes[i].count; k++) {
            if (fabs(along_of(up, points_of(list, i)[k]) - along) < 1e-6) {
                return true;
            }
        }
    }
    return false;
}

/* Whether the lines of a dimension lead out of the near half of what is drawn. */
static inline bool leads_out(const draw_shapes *list, int i, bool up)
{
    draw_box box = box_of_layer(list, DRAW_OUTLINE);
    double middle = up ? -(box.left + box.right) / 2 : (box.bottom + box.top) / 2;
    double level = off_of(up, points_of(list, i + 2)[0]);
    for (int k = 0; k < 2; k++) {
        const draw_point *out = points_of(list, i + k);
        for (int end = 0; end < 2; end++) {
            if ((off_of(up, out[end]) - middle) * (level - middle) <= 0) {
                return false;
            }
        }
    }
    return true;
}

/* All dimensions of a view in mm, drawn at a scale: each from one edge of the part to another, and
 * its figure what lies between them. Returned: how many there are. */
static inline int hold_dimensions(const draw_shapes *list, double scale)
{
    int count = 0;
    dimension d;
    for (int i = 0; i < list->count; i++) {
        if (!read_dimension(list, i, &d)) {
            continue;
        }
        count++;
        if (strcmp(d.words, "-") != 0) {
            near((d.tip[1] - d.tip[0]) / scale, d.value, d.last + 1e-9);
        }
        assert_true(has_edge(list, d.up, d.tip[0]) && has_edge(list, d.up, d.tip[1]));
        assert_true(leads_out(list, i, d.up));
    }
    return count;
}

#endif
