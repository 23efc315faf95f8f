/* SPDX-License-Identifier: MIT */
/* The drawing room: shapes and their boxes, and what must hold of every sheet whatever the job. */
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

#include <sillet/drawing.h>

#include "../src/drawing/sheet.h"
#include "../src/drawing/views.h"
#include "random_job.h"

static const double degree = 0.017453292519943295;

/* --- letters and shapes ----------------------------------------------------------------------- */

static sil_letters *letters;

static int open_letters(void **state)
{
    (void)state;
    letters = sil_letters_open();
    return letters ? 0 : -1;
}

static int close_letters(void **state)
{
    (void)state;
    sil_letters_close(letters);
    return 0;
}

static void utf8_is_read_and_written(void **state)
{
    (void)state;
    static const uint32_t codes[] = {'a', 0x7F, 0x80, 0x7FF, 0x800, 0xFFFD, 0x10000, 0x10FFFF};
    for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
        char text[8] = {0};
        int length = sil_utf8_put(codes[i], text);
        const char *at = text;
        assert_int_equal(sil_utf8_next(&at), codes[i]);
        assert_int_equal(at - text, length);
        assert_int_equal(sil_utf8_next(&at), 0);
    }
    /* Cut short, too long a form, a surrogate, past the last plane: each byte is one U+FFFD. */
    static const char *const broken[] = {"\xC3", "\xC0\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80",
                                         "\xFF", "\x80"};
    for (size_t i = 0; i < sizeof broken / sizeof *broken; i++) {
        const char *at = broken[i];
        size_t count = 0;
        for (uint32_t code; (code = sil_utf8_next(&at)) != 0; count++) {
            assert_int_equal(code, 0xFFFD);
        }
        assert_int_equal(count, strlen(broken[i]));
    }
    const char *at = "\xC3(";
    assert_int_equal(sil_utf8_next(&at), 0xFFFD);
    assert_int_equal(sil_utf8_next(&at), '(');
}

static void missing_letters_are_spelled(void **state)
{
    (void)state;
    char out[64];
    sil_letters *own = sil_letters_open();
    assert_int_equal(sil_letters_warnings(own), 0);
    sil_letters_spell(own, "a\tb \xF0\x9F\x8E\xB8", out, sizeof out);
    assert_string_equal(out, "a b U+1F3B8");
    assert_int_equal(sil_letters_spell(own, "abc", out, 3), 3);
    assert_string_equal(out, "ab");
    assert_int_equal(sil_letters_warnings(own), 1);
    sil_letters_warning(own, 0, out, sizeof out);
    assert_non_null(strstr(out, "U+1F3B8"));
    sil_letters_close(own);
}

/* Capitals stand on the base line and are as high as asked; a text is as wide as its letters. */
static void text_is_measured(void **state)
{
    (void)state;
    sil_ink ink = sil_letters_ink(letters, "H", 3.5);
    near(ink.top, 3.5, 1e-9);
    near(ink.bottom, 0.0, 1e-9);
    double sum = sil_letters_advance(letters, 'H', 3.5) + sil_letters_advance(letters, 'g', 3.5);
    near(sil_letters_ink(letters, "Hg", 3.5).advance, sum, 1e-9);
    assert_true(sil_letters_ink(letters, "g", 3.5).bottom < -0.5);
    assert_true(ink.left > 0.0 && ink.right < ink.advance);
}

static void text_boxes_follow_anchor_and_direction(void **state)
{
    (void)state;
    sil_shapes *list = sil_shapes_new(letters);
    for (int anchor = SIL_LEFT; anchor <= SIL_RIGHT; anchor++) {
        for (int turn = 0; turn <= 90; turn += 90) {
            sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){10, 20}, 2.5, (sil_anchor)anchor, turn,
                          "HAH");
        }
    }
    sil_ink ink = sil_letters_ink(letters, "HAH", 2.5);
    for (int i = 0; i < list->count; i++) {
        const sil_shape *text = &list->shapes[i];
        double start = -ink.advance * text->anchor / 2.0;
        double low = text->from == 0.0 ? text->box.left - 10 : text->box.bottom - 20;
        near(low, start + ink.left, 1e-9);
        double tall = text->from == 0.0 ? sil_box_height(text->box) : sil_box_width(text->box);
        near(tall, ink.top - ink.bottom, 1e-9);
        near(text->from == 0.0 ? text->box.bottom - 20 : 10 - text->box.right, ink.bottom, 1e-9);
    }
    sil_shapes_free(list);
}

static void arcs_know_their_boxes(void **state)
{
    (void)state;
    uint64_t seed = 5;
    for (int k = 0; k < 200; k++) {
        double from = uniform(&seed, -360, 360), to = from + uniform(&seed, 0, 360);
        double radius = uniform(&seed, 0.1, 20);
        sil_shapes *list = sil_shapes_new(letters);
        sil_draw_arc(list, SIL_LAYER_OUTLINE, (sil_point){3, 4}, radius, from, to);
        sil_box box = {INFINITY, INFINITY, -INFINITY, -INFINITY};
        for (int i = 0; i <= 20000; i++) {
            double turn = (from + (to - from) * i / 20000.0) * degree;
            double x = 3 + radius * cos(turn), y = 4 + radius * sin(turn);
            box = sil_box_around(box, (sil_box){x, y, x, y});
        }
        near(list->box.left, box.left, 1e-6 * radius);
        near(list->box.right, box.right, 1e-6 * radius);
        near(list->box.bottom, box.bottom, 1e-6 * radius);
        near(list->box.top, box.top, 1e-6 * radius);
        sil_shapes_free(list);
    }
}

/* Lining covers an L-shape evenly and stays inside: length times spacing is the area. */
static void lining_fills_its_outline(void **state)
{
    (void)state;
    static const sil_point ell[] = {{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 12}, {0, 12}};
    for (int way = -1; way <= 1; way += 2) {
        sil_shapes *list = sil_shapes_new(letters);
        sil_draw_hatch(list, ell, 6, 0.05 * way);
        double length = 0.0;
        for (int i = 0; i < list->count; i++) {
            const sil_point *p = &list->points[list->shapes[i].first];
            length += hypot(p[1].x - p[0].x, p[1].y - p[0].y);
            near((p[1].y - p[0].y) - way * (p[1].x - p[0].x), 0.0, 1e-9);
            sil_point middle = {(p[0].x + p[1].x) / 2, (p[0].y + p[1].y) / 2};
            assert_true(middle.x >= 0 && middle.y >= 0 && middle.x <= 10 && middle.y <= 12);
            assert_true(middle.x <= 4 || middle.y <= 4);
        }
        near(length * 0.05, 72.0, 0.5);
        sil_shapes_free(list);
    }
}

static void a_fault_sticks_and_nothing_follows_it(void **state)
{
    (void)state;
    sil_shapes *list = sil_shapes_new(letters), *other = sil_shapes_new(letters);
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){0, 0}, (sil_point){NAN, 1});
    assert_true(list->no_number);
    assert_int_equal(list->count, 0);
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){0, 0}, 2.5, SIL_LEFT, 0, "after");
    assert_int_equal(list->count, 0);
    sil_shapes_add(other, list, 0, 0);
    assert_true(other->no_number);
    sil_shapes_free(list);
    sil_shapes_free(other);
}

static void lists_are_copied_moved(void **state)
{
    (void)state;
    sil_shapes *list = sil_shapes_new(letters), *other = sil_shapes_new(letters);
    sil_draw_line(other, SIL_LAYER_CUT, (sil_point){0, 0}, (sil_point){1, 2});
    sil_draw_text(other, SIL_LAYER_TEXT, (sil_point){5, 5}, 2.5, SIL_LEFT, 0, "one");
    sil_shapes_add(list, other, 10, 20);
    sil_shapes_add(list, other, 30, 40);
    assert_int_equal(list->count, 4);
    assert_string_equal(list->bytes + list->shapes[3].first, "one");
    near(list->points[list->shapes[2].first + 1].x, 31, 0);
    near(list->shapes[3].at.y, 45, 0);
    near(list->box.left, 10, 0);
    near(list->box.top, other->box.top + 40, 1e-12);
    sil_shapes_free(list);
    sil_shapes_free(other);
}

/* --- dimensions and curves -------------------------------------------------------------------- */

/* Spread places keep order and pitch, and no shift of one pool would bring them nearer. */
static void crowded_figures_are_spread(void **state)
{
    (void)state;
    uint64_t seed = 9;
    for (int k = 0; k < 500; k++) {
        int count = whole(&seed, 1, SIL_STRINGS_MAX);
        double wished[SIL_STRINGS_MAX], place[SIL_STRINGS_MAX], moved = 0.0;
        wished[0] = uniform(&seed, -5, 5);
        for (int i = 1; i < count; i++) {
            wished[i] = wished[i - 1] + uniform(&seed, 0, 8);
        }
        memcpy(place, wished, sizeof place);
        sil_spread(count, place, 4.0);
        for (int i = 0; i < count; i++) {
            moved += place[i] - wished[i];
            assert_true(i == 0 || place[i] - place[i - 1] >= 4.0 - 1e-9);
        }
        near(moved, 0.0, 1e-9);
    }
    double apart[] = {0, 10, 20};
    sil_spread(3, apart, 4.0);
    near(apart[1], 10, 0);
}

static void curves_go_through_their_points(void **state)
{
    (void)state;
    sil_curve curve = {.count = 4, .x = {1, 5, 11, 14}, .y = {2, 3.5, 3, 1}};
    for (int i = 0; i < curve.count; i++) {
        near(sil_curve_at(&curve, curve.x[i]), curve.y[i], 1e-12);
        double before = sil_curve_at(&curve, curve.x[i] - 1e-6);
        double after = sil_curve_at(&curve, curve.x[i] + 1e-6);
        near(after - before, 0.0, 1e-5);
    }
    sil_curve one = {.count = 1, .x = {3}, .y = {7}};
    near(sil_curve_at(&one, -100), 7, 0);
    near(sil_curve_at(&one, 100), 7, 0);
    sil_point points[SIL_CURVE_POINTS];
    int count = sil_curve_points(&curve, 20, 0, points);
    near(points[0].x, 20, 0);
    near(points[count - 1].x, 0, 0);
    assert_true(sil_curve_points(&curve, 0, 1e4, points) <= SIL_CURVE_POINTS);
}

/* --- every sheet ------------------------------------------------------------------------------ */

typedef struct scene {
    const sil_drawing *drawing;
    int page, job, strings;
} scene;

static bool boxes_meet(sil_box a, sil_box b, double apart)
{
    return a.left < b.right + apart && b.left < a.right + apart && a.bottom < b.top + apart &&
           b.bottom < a.top + apart;
}

/* Liang and Barsky's clip: whether a line enters a box. */
static bool line_enters(sil_point p, sil_point q, sil_box box)
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

static bool shape_enters(const sil_shapes *list, const sil_shape *shape, sil_box box)
{
    enum { STEPS = 36 };
    if (shape->kind == SIL_SHAPE_TEXT || !boxes_meet(shape->box, box, 0.0)) {
        return false;
    }
    bool arc = shape->kind == SIL_SHAPE_ARC;
    int pieces = arc ? STEPS : shape->count - !shape->closed;
    for (int i = 0; i < pieces; i++) {
        sil_point ends[2];
        for (int k = 0; k < 2; k++) {
            double turn = (shape->from + (shape->to - shape->from) * (i + k) / STEPS) * degree;
            ends[k] = arc ? (sil_point){shape->at.x + shape->size * cos(turn),
                                        shape->at.y + shape->size * sin(turn)}
                          : list->points[shape->first + (i + k) % shape->count];
        }
        if (line_enters(ends[0], ends[1], box)) {
            return true;
        }
    }
    return false;
}

static void complain(const scene *s, const char *text, const char *what)
{
    print_error("job %d, %d strings, paper %d, unit %d, sheet %d: '%s' %s\n", s->job, s->strings,
                s->drawing->order.paper, s->drawing->order.unit, s->page + 1, text, what);
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

static strips sort_into_strips(const sil_shapes *list)
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
    const sil_shapes *list = s->drawing->pages[s->page].shapes;
    const sil_shape *a = &list->shapes[i];
    const char *text = list->bytes + a->first;
    int from = strip(a->box.bottom - apart), to = strip(a->box.top + apart);
    for (int at = sorted->first[from]; at < sorted->first[to + 1]; at++) {
        int k = sorted->shape[at];
        const sil_shape *b = &list->shapes[k];
        if (k > i && b->kind == SIL_SHAPE_TEXT && boxes_meet(a->box, b->box, apart)) {
            complain(s, text, list->bytes + b->first);
        }
        if (shape_enters(list, b, a->box)) {
            complain(s, text, sil_layer_look(b->layer)->word);
        }
    }
}

/* And everything keeps inside the frame. */
static void look_over(const scene *s)
{
    const sil_shapes *list = s->drawing->pages[s->page].shapes;
    sil_box frame = sil_sheet_frame(s->drawing);
    strips sorted = sort_into_strips(list);
    for (int i = 0; i < list->count; i++) {
        const sil_shape *a = &list->shapes[i];
        if (a->box.left < frame.left - 1e-9 || a->box.right > frame.right + 1e-9 ||
            a->box.bottom < frame.bottom - 1e-9 || a->box.top > frame.top + 1e-9) {
            complain(s, a->kind == SIL_SHAPE_TEXT ? list->bytes + a->first : "a line",
                     "leaves the frame");
        }
        if (a->kind == SIL_SHAPE_TEXT) {
            look_at_text(s, &sorted, i);
        }
    }
    free(sorted.shape);
}

static bool has_layer(const sil_page *page, sil_layer layer)
{
    for (int i = 0; i < page->shapes->count; i++) {
        if (page->shapes->shapes[i].layer == layer) {
            return true;
        }
    }
    return false;
}

/* What a withheld part may not show. */
static void look_for_cuts(const scene *s, const sil_plan *plan)
{
    const sil_page *page = &s->drawing->pages[s->page];
    bool nut = strcmp(page->heading.part, "Nut") == 0;
    bool saddle = strcmp(page->heading.part, "Saddle") == 0;
    bool waits = (nut && plan->nut.remedy == SIL_NUT_WAIT) ||
                 (saddle && plan->saddle.remedy == SIL_SADDLE_WAIT);
    bool cut = has_layer(page, SIL_LAYER_CUT) || has_layer(page, SIL_LAYER_CUT_FIRST);
    if (waits && (cut || has_layer(page, SIL_LAYER_PRESENT) || has_layer(page, SIL_LAYER_HATCH))) {
        complain(s, page->heading.part, "is withheld and drawn");
    }
    if (cut && !saddle) {
        complain(s, page->heading.part, "has a cut line");
    }
}

/* Light and heavy picks, in words and in newtons, one for all strings or each its own; none; long
 * necks; strings whose core is not known; notes heard, cents read; every way the ends are held. */
static void vary_sound(random_job *made, uint64_t *seed)
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

static void draw_job(const random_job *made, int job)
{
    static sil_plan plan;
    sil_plan_make(&made->job, &plan);
    for (int paper = SIL_A4; paper <= SIL_LETTER; paper++) {
        for (int unit = SIL_MM; unit <= SIL_INCH; unit++) {
            sil_draw_order order = {SIL_PART_ALL, (sil_paper)paper, (sil_unit)unit};
            sil_drawing *drawing;
            assert_true(sil_drawing_make(&plan, &order, &drawing) >= SIL_DRAWING_DONE);
            for (int page = 0; page < sil_drawing_pages(drawing); page++) {
                scene s = {drawing, page, job, made->job.string_count};
                look_over(&s);
                look_for_cuts(&s, &plan);
            }
            sil_drawing_free(drawing);
        }
    }
}

static void complain_of(void *with, sil_severity severity, const char *path, const char *wanted)
{
    if (severity == SIL_ERROR) {
        print_error("random job %d: %s: %s\n", *(int *)with, path, wanted);
    }
}

static void nothing_overlaps_or_leaves_its_frame(void **state)
{
    (void)state;
    static random_job made;
    static const char *const titles[] = {
        NULL, "Lower the saddle",
        "A title that goes on and on, longer than any block has room for, to see it cut short"};
    static const char *const owners[] = {"Ελένη Παπαδοπούλου", "Жанна Щукина-Преображенская", "O",
                                         NULL};
    uint64_t seed = 1;
    for (int job = 0; job < 204; job++) {
        make_random_job(&made, &seed, 1 + job % SIL_STRINGS_MAX);
        vary_sound(&made, &seed);
        made.job.about.title = titles[job % 3];
        made.job.about.owner = owners[job % 4];
        made.job.about.ref = job % 2 ? "A reference no block has room for either, 26-0417" : "7";
        made.job.about.notes = job % 5 ? NULL
                                       : "A note.\nWith a second line, and then one that "
                                         "goes on until it has to be broken somewhere.";
        assert_int_equal(sil_job_check(&made.job, complain_of, &job), 0);
        draw_job(&made, job);
    }
}

/* A note as long as a sheet may be, and as many findings as there can be, go on to more sheets. */
static void much_text_flows_on(void **state)
{
    (void)state;
    static random_job made;
    static sil_plan plan;
    uint64_t seed = 3;
    size_t size = 100 * 1000;
    char *notes = malloc(size + 1);
    assert_non_null(notes);
    for (size_t i = 0; i < size; i++) {
        notes[i] = i % 9 == 8 ? ' ' : 'm';
    }
    notes[size] = '\0';
    make_random_job(&made, &seed, 6);
    made.job.about.notes = notes;
    sil_plan_make(&made.job, &plan);
    sil_draw_order order = {SIL_PART_ALL, SIL_LETTER, SIL_MM};
    sil_drawing *drawing;
    assert_true(sil_drawing_make(&plan, &order, &drawing) >= SIL_DRAWING_DONE);
    assert_true(sil_drawing_pages(drawing) > 20);
    for (int page = 0; page < sil_drawing_pages(drawing); page += 7) {
        look_over(&(scene){drawing, page, 0, 6});
    }
    sil_drawing_free(drawing);
    free(notes);
}

static void the_same_bytes_twice(void **state)
{
    (void)state;
    static random_job made;
    static sil_plan plan;
    uint64_t seed = 11;
    char *bytes[2];
    size_t size[2];
    make_random_job(&made, &seed, 6);
    sil_plan_make(&made.job, &plan);
    for (int k = 0; k < 2; k++) {
        sil_draw_order order = {SIL_PART_ALL, SIL_A4, SIL_MM};
        sil_drawing *drawing;
        assert_true(sil_drawing_make(&plan, &order, &drawing) >= SIL_DRAWING_DONE);
        assert_int_equal(sil_drawing_write(drawing, SIL_PDF, &bytes[k], &size[k]), 0);
        sil_drawing_free(drawing);
    }
    assert_int_equal(size[0], size[1]);
    assert_memory_equal(bytes[0], bytes[1], size[0]);
    free(bytes[0]);
    free(bytes[1]);
}

/* --- files ------------------------------------------------------------------------------------ */

static char folder[] = "/tmp/sillet-test-XXXXXX";

static int make_folder(void **state)
{
    (void)state;
    return mkdtemp(folder) ? 0 : -1;
}

static int remove_folder(void **state)
{
    (void)state;
    return rmdir(folder);
}

static bool file_holds(const char *path, char with, size_t size)
{
    FILE *file = fopen(path, "rb");
    assert_non_null(file);
    size_t count = 0;
    int byte;
    while ((byte = fgetc(file)) == with) {
        count++;
    }
    fclose(file);
    return byte == EOF && count == size;
}

/* Killed while megabytes are under way: the old file is whole, or the new one is, and the folder
 * holds nothing else (it can be removed after). */
static void a_kill_leaves_a_whole_file(void **state)
{
    (void)state;
    enum { SIZE = 1 << 24 };
    char path[64];
    snprintf(path, sizeof path, "%s/out", folder);
    char *bytes = malloc(SIZE);
    assert_non_null(bytes);
    memset(bytes, 'o', 100);
    assert_int_equal(sil_file_save(path, bytes, 100), 0);
    memset(bytes, 'n', SIZE);
    int cut_short = 0;
    for (int k = 0; k < 50; k++) {
        pid_t child = fork();
        assert_true(child >= 0);
        if (child == 0) {
            sil_file_save(path, bytes, SIZE);
            _exit(0);
        }
        struct timespec pause = {0, 200000L * k};
        nanosleep(&pause, NULL);
        kill(child, SIGKILL);
        waitpid(child, NULL, 0);
        struct stat about;
        assert_int_equal(stat(path, &about), 0);
        bool old = about.st_size == 100;
        cut_short += old;
        assert_true(file_holds(path, old ? 'o' : 'n', old ? 100 : SIZE));
        memset(bytes, 'o', 100);
        assert_int_equal(sil_file_save(path, bytes, 100), 0);
        memset(bytes, 'n', 100);
    }
    assert_true(cut_short > 0);
    unlink(path);
    free(bytes);
}

int main(void)
{
    const struct CMUnitTest shapes[] = {
        cmocka_unit_test(utf8_is_read_and_written),
        cmocka_unit_test(missing_letters_are_spelled),
        cmocka_unit_test(text_is_measured),
        cmocka_unit_test(text_boxes_follow_anchor_and_direction),
        cmocka_unit_test(arcs_know_their_boxes),
        cmocka_unit_test(lining_fills_its_outline),
        cmocka_unit_test(a_fault_sticks_and_nothing_follows_it),
        cmocka_unit_test(lists_are_copied_moved),
        cmocka_unit_test(crowded_figures_are_spread),
        cmocka_unit_test(curves_go_through_their_points),
        cmocka_unit_test(nothing_overlaps_or_leaves_its_frame),
        cmocka_unit_test(much_text_flows_on),
        cmocka_unit_test(the_same_bytes_twice),
        cmocka_unit_test_setup_teardown(a_kill_leaves_a_whole_file, make_folder, remove_folder),
    };
    return cmocka_run_group_tests(shapes, open_letters, close_letters);
}
