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
    bool pack; /* its whole pack is drawn, which takes long; otherwise the owner's page alone */
    random_job made;
    sil_plan plan;
    sil_drawing *drawing;
    const draw_draft *draft;
    const brief *b;
    bool left;
} scene;

/* A plan is drawn, in millimetres. */
static inline void set_up_drawing(scene *s)
{
    sil_draw_options order = {.part = SIL_PART_ALL, .paper = SIL_A4, .unit = SIL_MM, .all = true};
    sil_status made = s->pack ? sil_drawing_make(&s->plan, &order, &s->drawing)
                              : sil_drawing_owner(&s->plan, &order, &s->drawing);
    assert_true(made >= SIL_DONE);
    s->draft = &s->drawing->draft;
    s->b = s->draft->brief;
    s->left = s->plan.job->instrument.handed == SIL_LEFT_HANDED;
}

static inline void set_up(scene *s)
{
    plan_into(&s->made.job, &s->plan);
    set_up_drawing(s);
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
