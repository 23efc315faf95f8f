/* SPDX-License-Identifier: MIT */
/* Any job there can be, and a look over every page that is drawn of one: no text lies on another or on
 * a line, and nothing leaves its frame. */
#ifndef TESTS_LOOKED_OVER_H
#define TESTS_LOOKED_OVER_H

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <sillet/drawing.h>

#include "../src/drawing/board/paper.h"
#include "planned.h"
#include "random_job.h"

static const double degree = 0.017453292519943295;

typedef struct scene {
    const sil_drawing *drawing;
    int page, job, strings;
} scene;

static bool boxes_meet(draw_box a, draw_box b, double apart)
{
    return a.left < b.right + apart && b.left < a.right + apart && a.bottom < b.top + apart &&
           b.bottom < a.top + apart;
}

/* Liang and Barsky's clip: whether a line enters a box. */
static bool line_enters(draw_point p, draw_point q, draw_box box)
{
    double dx = q.x - p.x, dy = q.y - p.y, first = 0, last = 1;
    const double run[] = {-dx, dx, -dy, dy};
    const double room[] = {p.x - box.left, box.right - p.x, p.y - box.bottom, box.top - p.y};
    for (int i = 0; i < 4; i++) {
        if (run[i] == 0.0) {
            if (room[i] < 0.0) {
                return false;
            }
            continue;
        }
        double at = room[i] / run[i];
        if (run[i] < 0.0) {
            first = fmax(first, at);
        } else {
            last = fmin(last, at);
        }
    }
    return first <= last;
}

static bool shape_enters(const draw_shapes *list, const draw_shape *shape, draw_box box)
{
    enum { STEPS = 36 };
    if (shape->kind == DRAW_SHAPE_TEXT || !boxes_meet(shape->box, box, 0.0)) {
        return false;
    }
    bool arc = shape->kind == DRAW_SHAPE_ARC;
    int pieces = arc ? STEPS : shape->count - !shape->closed;
    for (int i = 0; i < pieces; i++) {
        draw_point ends[2];
        for (int k = 0; k < 2; k++) {
            double turn = (shape->from + (shape->to - shape->from) * (i + k) / STEPS) * degree;
            ends[k] = arc ? (draw_point){shape->at.x + shape->size * cos(turn),
                                         shape->at.y + shape->size * sin(turn)}
                          : list->points[shape->first + (i + k) % shape->count];
        }
        if (line_enters(ends[0], ends[1], box)) {
            return true;
        }
    }
    return false;
}

static void complain(const scene *s, const char *words, const char *what)
{
    print_error("job %d, %d strings, paper %d, unit %d, sheet %d: '%s' %s\n", s->job, s->strings,
                s->drawing->order.paper, s->drawing->order.unit, s->page + 1, words, what);
    fail();
}

/* Which shapes reach into each strip of a sheet, so that a text is held only against those of its
 * own height. */
enum { STRIPS = 60, STRIP = 5 };
typedef struct strips {
    int first[STRIPS + 1];
    int *shape;
} strips;

static int strip(double y)
{
    return y < 0 ? 0 : y >= STRIPS * STRIP ? STRIPS - 1 : (int)(y / STRIP);
}

static strips sort_into_strips(const draw_shapes *list)
{
    strips s = {{0}, NULL};
    int next[STRIPS] = {0};
    for (int i = 0; i < list->count; i++) {
        for (int k = strip(list->shapes[i].box.bottom); k <= strip(list->shapes[i].box.top); k++) {
            s.first[k + 1]++;
        }
    }
    for (int k = 0; k < STRIPS; k++) {
        s.first[k + 1] += s.first[k];
        next[k] = s.first[k];
    }
    s.shape = malloc(sizeof *s.shape * (size_t)(s.first[STRIPS] + 1));
    assert_non_null(s.shape);
    for (int i = 0; i < list->count; i++) {
        for (int k = strip(list->shapes[i].box.bottom); k <= strip(list->shapes[i].box.top); k++) {
            s.shape[next[k]++] = i;
        }
    }
    return s;
}

/* A text keeps clear of every other and of every line. */
static void look_at_text(const scene *s, const strips *sorted, int i)
{
    const double apart = 0.3;
    const draw_shapes *list = s->drawing->papers[s->page].shapes;
    const draw_shape *a = &list->shapes[i];
    const char *words = list->bytes + a->first;
    int from = strip(a->box.bottom - apart), to = strip(a->box.top + apart);
    for (int at = sorted->first[from]; at < sorted->first[to + 1]; at++) {
        int k = sorted->shape[at];
        const draw_shape *b = &list->shapes[k];
        if (k > i && b->kind == DRAW_SHAPE_TEXT && boxes_meet(a->box, b->box, apart)) {
            complain(s, words, list->bytes + b->first);
        }
        if (shape_enters(list, b, a->box)) {
            complain(s, words, draw_layer_look(b->layer)->word);
        }
    }
}

/* And everything keeps inside the frame. */
static void look_over(const scene *s)
{
    const draw_shapes *list = s->drawing->papers[s->page].shapes;
    draw_box frame = draw_paper_frame(s->drawing);
    strips sorted = sort_into_strips(list);
    for (int i = 0; i < list->count; i++) {
        const draw_shape *a = &list->shapes[i];
        if (a->box.left < frame.left - 1e-9 || a->box.right > frame.right + 1e-9 ||
            a->box.bottom < frame.bottom - 1e-9 || a->box.top > frame.top + 1e-9) {
            complain(s, a->kind == DRAW_SHAPE_TEXT ? list->bytes + a->first : "a line",
                     "leaves the frame");
        }
        if (a->kind == DRAW_SHAPE_TEXT) {
            look_at_text(s, &sorted, i);
        }
    }
    free(sorted.shape);
}

static inline void look_at_pages(const sil_drawing *drawing, int job, int strings)
{
    for (int page = 0; page < sil_drawing_pages(drawing); page++) {
        look_over(&(scene){drawing, page, job, strings});
    }
}

/* Light and heavy picks, in words and in newtons, one for all strings or each its own; none; long
 * necks; strings whose core is not known; notes heard, cents read; every way the ends are held. */
static inline void vary_tone(random_job *made, uint64_t *seed)
{
    static sil_buzz buzz[12];
    static const char *const names[] = {NULL, "light", "medium", "firm"};
    sil_job *job = &made->job;
    double pick = one_in(seed, 8) ? SIL_UNKNOWN : uniform(seed, 0.1, 4.0);
    job->attack.name = sil_known(pick) ? names[whole(seed, 0, 3)] : NULL;
    job->attack.at = sil_known(pick) ? uniform(seed, 60.0, 200.0) : SIL_UNKNOWN;
    job->model.ends = (sil_ends)whole(seed, SIL_CLAMPED_PINNED, SIL_CLAMPED);
    job->instrument.frets = one_in(seed, 6) ? SIL_FRETS_MAX : job->instrument.frets;
    for (int i = 0; i < job->string_count; i++) {
        sil_string *string = &job->strings[i];
        job->attack.force[i] = one_in(seed, 2) ? pick : pick * uniform(seed, 0.5, 5.0);
        string->core = one_in(seed, 12) ? SIL_UNKNOWN : string->core;
        made->reading.cents[i] = one_in(seed, 3) ? uniform(seed, -9.0, 9.0) : SIL_UNKNOWN;
    }
    made->reading.buzz = buzz;
    made->reading.buzz_count = one_in(seed, 2) ? whole(seed, 1, 12) : 0;
    for (int k = 0; k < made->reading.buzz_count; k++) {
        buzz[k] = (sil_buzz){whole(seed, 1, job->string_count), k};
    }
}

static inline void complain_of(void *with, sil_severity severity, const char *path,
                               const char *wanted)
{
    if (severity == SIL_ERROR) {
        print_error("random job %d: %s: %s\n", *(int *)with, path, wanted);
    }
}

/* Any instrument that there can be, with much or little written on it. */
static inline void make_any_job(random_job *made, uint64_t *seed, int job)
{
    static const char *const titles[] = {
        NULL, "Lower the saddle",
        "A title that goes on and on, longer than any block has room for, to see it cut short"};
    static const char *const owners[] = {"Ελένη Παπαδοπούλου", "Жанна Щукина-Преображенская", "O",
                                         NULL};
    make_random_job(made, seed, 1 + job % SIL_STRINGS_MAX);
    make_from_blank(made, *seed);
    vary_tone(made, seed);
    made->job.about.title = titles[job % 3];
    made->job.about.owner = owners[job % 4];
    made->job.about.ref = job % 2 ? "A reference no block has room for either, 26-0417" : "7";
    made->job.about.notes = job % 5 ? NULL
                                    : "A note.\nWith a second line, and then one that "
                                      "goes on until it has to be broken somewhere.";
    assert_int_equal(sil_job_check(&made->job, complain_of, &job), 0);
}

static inline bool has_layer(const draw_paper *page, draw_layer layer)
{
    for (int i = 0; i < page->shapes->count; i++) {
        if (page->shapes->shapes[i].layer == layer) {
            return true;
        }
    }
    return false;
}

/* What a withheld part may not show. Only the saddle's own sheet and its template have cuts. */
static inline void look_for_cuts(const scene *s, const sil_plan *plan)
{
    const draw_paper *page = &s->drawing->papers[s->page];
    const char *part = page->heading.part;
    bool nut = plan->nut.remedy == SIL_NUT_WAIT, saddle = plan->saddle.remedy == SIL_SADDLE_WAIT;
    bool templates = strcmp(part, "Templates") == 0, order = strcmp(part, "Blank order") == 0;
    bool own = strcmp(part, "Saddle") == 0;
    bool waits = (strcmp(part, "Nut") == 0 && nut) || (own && saddle) ||
                 ((templates || order) && nut && saddle);
    bool cut = has_layer(page, DRAW_CUT) || has_layer(page, DRAW_CUT_FIRST);
    if (waits && (cut || has_layer(page, DRAW_PRESENT) || has_layer(page, DRAW_HATCH))) {
        complain(s, part, "is withheld and drawn");
    }
    if (cut && (saddle || !(own || templates))) {
        complain(s, part, "has a cut line");
    }
}

/* The same readings, taken in every way. */
static inline void take_another_way(sil_plan *plan, int job)
{
    static const sil_hold holds[] = {SIL_HOLD_3, SIL_HOLD_2, SIL_HOLD_OPEN};
    sil_gaps *gaps = &plan->bench.gaps;
    gaps->first_held = holds[job % 3];
    gaps->action_at = job % 4 ? 12 : 5 + job % 14;
    gaps->capo = job % 5 == 0;
    gaps->first_open[0] = job % 6 ? SIL_UNKNOWN : 0.55;
    plan->bench.relief.straightedge = job % 7 == 0;
    plan->bench.relief.high = job % 8 ? plan->job->instrument.join : plan->job->instrument.frets;
}

/* The owner's page of a job; its measuring sheet, and that of its kind of instrument. */
static inline void look_at_measuring(const sil_plan *plan, const sil_draw_options *order, int job)
{
    sil_drawing *drawing;
    assert_true(sil_drawing_owner(plan, order, &drawing) >= SIL_DONE);
    assert_int_equal(sil_drawing_pages(drawing), 1);
    look_at_pages(drawing, job, plan->job->string_count);
    sil_drawing_free(drawing);
    for (int unread = 0; unread < 2; unread++) {
        assert_true(sil_drawing_measure(plan, order, unread, &drawing) >= SIL_DONE);
        look_at_pages(drawing, job, plan->job->string_count);
        sil_drawing_free(drawing);
    }
}

/* Every page of its pack, on each paper and in each unit; the first with the readings as they are. */
static inline void look_at_pack(const random_job *made, int job)
{
    static sil_plan plan;
    plan_into(&made->job, &plan);
    for (int paper = SIL_A4; paper <= SIL_LETTER; paper++) {
        for (int unit = SIL_MM; unit <= SIL_INCH; unit++) {
            sil_draw_options order = {SIL_PART_ALL, (sil_paper)paper, (sil_unit)unit, job % 2 == 1,
                                      job % 4 < 2};
            sil_drawing *drawing;
            assert_true(sil_drawing_make(&plan, &order, &drawing) >= SIL_DONE);
            for (int page = 0; page < sil_drawing_pages(drawing); page++) {
                scene s = {drawing, page, job, made->job.string_count};
                look_over(&s);
                look_for_cuts(&s, &plan);
            }
            sil_drawing_free(drawing);
            take_another_way(&plan, job);
        }
    }
}

#endif
