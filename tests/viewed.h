/* SPDX-License-Identifier: MIT */
/* Views and papers of random jobs, and what is drawn in them. */
#ifndef SILLET_TESTS_VIEWED_H
#define SILLET_TESTS_VIEWED_H

#include <stdlib.h>
#include <string.h>

#include <sillet/drawing.h>

#include "../src/drawing/board/paper.h"
#include "../src/drawing/views/tone.h"
#include "planned.h"
#include "random_job.h"

/* A job with all that its papers are drawn with. */
typedef struct scene {
    random_job made;
    sil_plan plan;
    sil_drawing *drawing;
    const draw_draft *draft;
    const brief *b;
    bool left;
} scene;

/* The whole pack of a job, in millimetres. */
static inline void set_up(scene *s)
{
    sil_draw_options order = {.part = SIL_PART_ALL, .paper = SIL_A4, .unit = SIL_MM, .all = true};
    plan_into(&s->made.job, &s->plan);
    assert_true(sil_drawing_make(&s->plan, &order, &s->drawing) >= SIL_DONE);
    s->draft = &s->drawing->draft;
    s->b = s->draft->brief;
    s->left = s->made.job.instrument.handed == SIL_LEFT_HANDED;
}

static inline void set_up_random(scene *s, uint64_t *seed, int strings)
{
    make_random_job(&s->made, seed, strings);
    set_up(s);
}

/* Every string lies too low at nut and saddle, and all was read, so that shims are called for. */
static inline void set_up_low(scene *s, uint64_t *seed, int strings)
{
    make_random_job(&s->made, seed, strings);
    sil_reading *reading = &s->made.reading;
    reading->relief.gap = s->made.job.targets.relief.aim;
    reading->crowns_read = SIL_CROWNS_SOUND;
    for (int i = 0; i < strings; i++) {
        reading->gaps.first[i] = fmax(s->made.job.targets.first[i].low - 0.03, 0.01);
        reading->gaps.action[i] = s->made.job.targets.action[i].low - 0.15;
        reading->confirmed[i] = true;
    }
    set_up(s);
}

static inline void take_down(scene *s)
{
    sil_drawing_free(s->drawing);
}

static inline draw_shapes *empty_list(const scene *s)
{
    draw_shapes *list = draw_shapes_new(s->draft->letters);
    assert_non_null(list);
    return list;
}

static inline const char *words_of(const draw_shapes *list, int i)
{
    return list->shapes[i].kind == DRAW_SHAPE_TEXT ? list->bytes + list->shapes[i].first : "";
}

static inline const draw_point *points_of(const draw_shapes *list, int i)
{
    return list->points + list->shapes[i].first;
}

static inline bool is_path(const draw_shapes *list, int i, draw_layer layer, int count)
{
    const draw_shape *shape = &list->shapes[i];
    return shape->kind == DRAW_SHAPE_PATH && shape->layer == layer && shape->count == count;
}

/* How many texts are just these words. */
static inline int count_words(const draw_shapes *list, const char *words)
{
    int count = 0;
    for (int i = 0; i < list->count; i++) {
        count += words[0] != '\0' && strcmp(words_of(list, i), words) == 0;
    }
    return count;
}

/* The first text that has these words in it, or NULL. */
static inline const char *text_with(const draw_shapes *list, const char *words)
{
    for (int i = 0; i < list->count; i++) {
        if (strstr(words_of(list, i), words) != NULL) {
            return words_of(list, i);
        }
    }
    return NULL;
}

static inline bool alike(draw_point a, draw_point b)
{
    return fabs(a.x - b.x) < 1e-7 && fabs(a.y - b.y) < 1e-7;
}

/* Takes one path off what is still to be accounted for: with these points, from either end, of
 * that string. A path accounted for is marked by the string -1. */
static inline bool take_path(draw_shapes *list, draw_layer layer, int string, bool closed,
                             int count, const draw_point *points)
{
    for (int i = 0; i < list->count; i++) {
        draw_shape *shape = &list->shapes[i];
        const draw_point *has = points_of(list, i);
        bool same = is_path(list, i, layer, count) && shape->string == string &&
                    shape->closed == closed && !shape->filled;
        bool there = same, back = same;
        for (int k = 0; k < count && same; k++) {
            there = there && alike(has[k], points[k]);
            back = back && alike(has[k], points[count - 1 - k]);
        }
        if (there || back) {
            shape->string = -1;
            return true;
        }
    }
    return false;
}

static inline bool take_line(draw_shapes *list, draw_layer layer, int string, draw_point a,
                             draw_point b)
{
    return take_path(list, layer, string, false, 2, (const draw_point[]){a, b});
}

/* How many paths of a layer are not accounted for. */
static inline int left_over(const draw_shapes *list, draw_layer layer)
{
    int count = 0;
    for (int i = 0; i < list->count; i++) {
        const draw_shape *shape = &list->shapes[i];
        count += shape->kind == DRAW_SHAPE_PATH && shape->layer == layer && shape->string != -1;
    }
    return count;
}

/* The box around all of a layer. */
static inline draw_box box_of_layer(const draw_shapes *list, draw_layer layer)
{
    draw_box box = {INFINITY, INFINITY, -INFINITY, -INFINITY};
    for (int i = 0; i < list->count; i++) {
        if (list->shapes[i].layer == layer) {
            box = draw_box_around(box, list->shapes[i].box);
        }
    }
    return box;
}

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
        bool drawn = list->shapes[i].kind == DRAW_SHAPE_PATH && layer != DRAW_DIMENSION &&
                     layer != DRAW_HATCH && layer != DRAW_FRAME && layer != DRAW_RULE;
        for (int k = 0; drawn && k < list->shapes[i].count; k++) {
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

/* A scene for tests of the drawing board itself, which lends them its letters. */
static scene drawn;

static inline int set_up_letters(void **state)
{
    (void)state;
    uint64_t seed = 7;
    set_up_random(&drawn, &seed, 6);
    return 0;
}

static inline int take_down_letters(void **state)
{
    (void)state;
    take_down(&drawn);
    return 0;
}

static inline brief_figure figure_of(double value)
{
    brief_figure made = {.exact = value};
    snprintf(made.shown, sizeof made.shown, "%.2f", value);
    return made;
}

/* --- rows of words ---------------------------------------------------------------------------- */

static inline double level_of_text(const draw_shape *told)
{
    return told->at.y + told->size / 2;
}

/* The texts on a level, from left to right, with a bar between each two. */
static inline const char *row_at(const draw_shapes *list, double level, double from, double to)
{
    static char row[4096];
    row[0] = '\0';
    for (double after = from;;) {
        int next = -1;
        for (int i = 0; i < list->count; i++) {
            const draw_shape *told = &list->shapes[i];
            if (told->kind == DRAW_SHAPE_TEXT && fabs(level_of_text(told) - level) < 0.05 &&
                told->box.left > after && told->box.left < to &&
                (next < 0 || told->box.left < list->shapes[next].box.left)) {
                next = i;
            }
        }
        if (next < 0) {
            return row;
        }
        size_t used = strlen(row);
        snprintf(row + used, sizeof row - used, "%s%s", used > 0 ? "|" : "", words_of(list, next));
        after = list->shapes[next].box.left;
    }
}

/* How many rows of a list are just these words. */
static inline int count_rows(const draw_shapes *list, const char *row)
{
    int count = 0;
    size_t first = strcspn(row, "|");
    for (int i = 0; i < list->count; i++) {
        const char *words = words_of(list, i);
        if (strlen(words) == first && strncmp(words, row, first) == 0) {
            const draw_shape *told = &list->shapes[i];
            count +=
                strcmp(row_at(list, level_of_text(told), told->box.left - 1e-6, 1e4), row) == 0;
        }
    }
    return count;
}

/* The cells of a table as it is to be; NULL for an empty one. */
typedef const char *table_cells[DRAW_ROWS_MAX][DRAW_COLUMNS_MAX];

/* The words of a row, without the columns that have nothing but dashes. */
static inline const char *row_told(const scene *s, table_cells cell, int rows, int row)
{
    const char *words = "";
    for (int c = 0; c < DRAW_COLUMNS_MAX; c++) {
        bool told = false;
        for (int r = 0; r < rows; r++) {
            told = told || (cell[r][c] != NULL && strcmp(cell[r][c], "-") != 0);
        }
        if (told && cell[row][c] != NULL) {
            words =
                words[0] == '\0' ? cell[row][c] : draw_say(s->draft, "%s|%s", words, cell[row][c]);
        }
    }
    return words;
}

/* The same over all papers of that name from one on; a text may be the whole of a row's rest. */
static inline int rows_on(const scene *s, int from, const char *part, const char *row)
{
    int count = 0;
    for (int page = from; page < s->drawing->paper_count; page++) {
        if (strcmp(s->drawing->papers[page].heading.part, part) == 0) {
            count += count_rows(s->drawing->papers[page].shapes, row);
        }
    }
    return count;
}

#endif
