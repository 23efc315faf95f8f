/* SPDX-License-Identifier: MIT */
/* The graphs of cents and the tables of clean force, read back: every note at its fret and level,
 * shaded where it buzzes, marked where it was heard. */
#include "viewed.h"

enum { JOBS = 60, WIDTH = 166 };

/* --- cents over frets ------------------------------------------------------------------------- */

/* Where so many cents lie in a string's graph, by the figures along its axis. */
static double level_of(const draw_shapes *list, int string, double cents)
{
    double x[2] = {NAN, NAN}, y[2] = {NAN, NAN};
    int count = 0;
    for (int i = 0; i < list->count; i++) {
        const draw_shape *told = &list->shapes[i];
        bool label = told->kind == DRAW_SHAPE_TEXT && told->string == string &&
                     told->anchor == DRAW_RIGHT && strpbrk(words_of(list, i), "abc") == NULL;
        if (label) {
            int k = count++ > 0;
            x[k] = atoi(words_of(list, i));
            y[k] = told->at.y + told->size / 2;
            assert_true((x[k] > 0) == (words_of(list, i)[0] == '+'));
        }
    }
    assert_true(count > 1);
    return y[0] + (cents - x[0]) * (y[1] - y[0]) / (x[1] - x[0]);
}

static double fret_number_x(const draw_shapes *list, int string, int fret)
{
    for (int i = 0; i < list->count; i++) {
        const draw_shape *told = &list->shapes[i];
        if (told->kind == DRAW_SHAPE_TEXT && told->string == string && told->size == DRAW_NOTE &&
            told->anchor == DRAW_MIDDLE && atoi(words_of(list, i)) == fret &&
            told->at.y < level_of(list, string, 0)) {
            return told->at.x;
        }
    }
    return NAN;
}

static void look_at_curve(const draw_shapes *list, draw_layer layer, int string,
                          const double *cents)
{
    int curves = 0;
    for (int i = 0; i < list->count; i++) {
        const draw_point *p = points_of(list, i);
        if (!is_path(list, i, layer, SIL_PITCH_FRETS) || list->shapes[i].string != string) {
            continue;
        }
        curves++;
        assert_false(list->shapes[i].closed);
        for (int fret = 1; fret <= SIL_PITCH_FRETS; fret++) {
            near(p[fret - 1].y, level_of(list, string, cents[fret]), 1e-6);
        }
        for (int k = 0; k < 6; k++) {
            int fret = (const int[]){1, 3, 5, 7, 9, 12}[k];
            near(p[fret - 1].x, fret_number_x(list, string, fret), 1e-6);
        }
    }
    assert_int_equal(curves, 1);
}

static double farthest_of(const double *cents)
{
    double far = 0;
    for (int fret = 1; fret <= SIL_PITCH_FRETS; fret++) {
        far = sil_known(cents[fret]) && sil_known(far) ? fmax(far, fabs(cents[fret])) : SIL_UNKNOWN;
    }
    return far;
}

static void look_at_graph(const scene *s, const draw_shapes *list, int i)
{
    const sil_compensation *told = &s->plan.compensation[i];
    double built = farthest_of(told->as_built), best = farthest_of(told->at_best);
    char words[64], first[16], second[16];
    if (!sil_known(built + best)) {
        assert_non_null(text_with(list, "not known"));
        return;
    }
    sil_number_write(first, sizeof first, built, 1);
    sil_number_write(second, sizeof second, best, 1);
    snprintf(words, sizeof words, "%s, best %s", first, second);
    assert_non_null(text_with(list, words));
    look_at_curve(list, DRAW_PRESENT, i + 1, told->as_built);
    look_at_curve(list, DRAW_OUTLINE, i + 1, told->at_best);
    double zero = level_of(list, i + 1, 0);
    int lines = 0;
    for (int k = 0; k < list->count; k++) {
        bool own = list->shapes[k].string == i + 1 && is_path(list, k, DRAW_DIMENSION, 2);
        lines += own;
        assert_true(!own || fabs(points_of(list, k)[0].y - zero) < 1e-6);
    }
    assert_int_equal(lines, 1); /* only the line of no cents is drawn through */
}

static void cents_are_drawn_over_frets(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 52;
    for (int job = 0; job < 2 * JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        for (int i = 0; i < s.b->strings && job % 5 == 0; i += 2) {
            s.plan.compensation[i].at_best[1 + job % SIL_PITCH_FRETS] = SIL_UNKNOWN;
        }
        view_cents_scale scale = view_cents_measure(s.draft);
        s.plan.compensation[0].as_built[0] += 1000; /* the open string is no fret's */
        view_cents_scale again = view_cents_measure(s.draft);
        assert_memory_equal(&scale, &again, sizeof scale);
        for (int first = 0; first < s.b->strings; first += VIEW_GRAPHS_ABREAST) {
            draw_shapes *list = empty_list(&s);
            view_cents(s.draft, list, &scale, first, WIDTH);
            for (int i = 0; i < s.b->strings; i++) {
                bool here = i >= first && i < first + VIEW_GRAPHS_ABREAST;
                int shapes = 0;
                for (int k = 0; k < list->count; k++) {
                    shapes += list->shapes[k].string == i + 1;
                }
                assert_true((shapes > 0) == here);
                if (here) {
                    look_at_graph(&s, list, i);
                }
            }
            draw_shapes_free(list);
        }
        take_down(&s);
    }
}

/* --- clean force ------------------------------------------------------------------------------ */

/* Where a string's column is, by the ring in the head, and where a row is, by its name. */
static double column_x(const draw_shapes *list, int number)
{
    for (int i = 1; i < list->count; i++) {
        if (list->shapes[i - 1].kind == DRAW_SHAPE_ARC && atoi(words_of(list, i)) == number) {
            return list->shapes[i].at.x;
        }
    }
    return NAN;
}

static double row_y(const draw_shapes *list, int stop)
{
    const double top = -20.6; /* the first row begins here */
    for (int i = 0; i < list->count; i++) {
        const char *words = words_of(list, i);
        bool name = list->shapes[i].anchor == DRAW_RIGHT && list->shapes[i].size == DRAW_NOTE &&
                    list->shapes[i].at.y < top && list->shapes[i].at.x < 14;
        if (name && (stop == 0 ? strcmp(words, "open") == 0 : atoi(words) == stop)) {
            return list->shapes[i].at.y + DRAW_NOTE / 2;
        }
    }
    return NAN;
}

/* The lines of shading in a cell, and how far apart they are; 0 for none. */
static double shading(const draw_shapes *list, double x, double y, double half)
{
    double level[256];
    int count = 0;
    for (int i = 0; i < list->count && count < 256; i++) {
        const draw_point *p = points_of(list, i);
        bool in = list->shapes[i].layer == DRAW_HATCH && fabs((p[0].x + p[1].x) / 2 - x) < half &&
                  fabs((p[0].y + p[1].y) / 2 - y) < 2.6;
        if (in) {
            level[count++] = (p[0].y - p[0].x) * sqrt(0.5);
        }
    }
    double least = 0;
    for (int a = 0; a < count; a++) {
        for (int b = 0; b < a; b++) {
            double apart = fabs(level[a] - level[b]);
            least = apart > 1e-6 && (least == 0 || apart < least) ? apart : least;
        }
    }
    return least;
}

/* Whether a corner of a cell is marked. */
static bool is_marked(const draw_shapes *list, double x, double y, double half)
{
    for (int i = 0; i < list->count; i++) {
        const draw_point *p = points_of(list, i);
        if (list->shapes[i].filled && fabs(p[0].x - (x - half)) < 1e-6 &&
            fabs(p[0].y - (y + 2.6)) < 1e-6 && p[1].x > p[0].x && p[2].y < p[0].y) {
            return true;
        }
    }
    return false;
}

static bool was_heard(const scene *s, int string, int stop)
{
    for (int k = 0; k < s->plan.cause_count; k++) {
        const sil_cause *note = &s->plan.causes[k];
        if (note->heard && note->string == string && note->fret == stop) {
            return true;
        }
    }
    return false;
}

static void look_at_clearance(const scene *s, bool after, int first, int end)
{
    draw_shapes *list = empty_list(s);
    view_clearance_form form = view_clearance_measure(s->draft, list, WIDTH);
    const sil_clearance *clean = after ? &s->plan.clean_after : &s->plan.clean_now;
    bool names = !(after && form.paired);
    form.paired = form.paired && after;
    view_clearance_table(s->draft, list, &form, after, first, end);
    const char *when = !after ? "Now" : s->b->forecast ? "After, about" : "After";
    assert_non_null(
        text_with(list, first > 0 ? draw_say(s->draft, "%s, from fret %d", when, first) : when));
    assert_true((text_with(list, "pick") != NULL) == names);
    for (int stop = first; stop < end && names; stop++) {
        double y = row_y(list, stop), half = form.cell / 2;
        near(y, -20.6 - (stop - first + 0.5) * 5.2, 1e-6);
        for (int i = 0; i < s->b->strings; i++) {
            double force = clean->force[i][stop], pick = s->made.job.attack.force[i];
            bool under = round(100.0 * force) < round(100.0 * pick); /* as shown */
            double apart = under ? 0.6 : force < 1.25 * pick ? 1.3 : 0;
            double x = column_x(list, i + 1), found = shading(list, x, y, half);
            assert_true((apart > 0) == (found > 0));
            assert_true(found == 0 || fabs(found - apart) < 1e-6);
            assert_true(is_marked(list, x, y, half) == (!after && was_heard(s, i, stop)));
        }
    }
    draw_shapes_free(list);
}

static void notes_are_shaded_that_buzz(void **state)
{
    (void)state;
    static scene s;
    static sil_buzz buzz[3];
    uint64_t seed = 53;
    for (int job = 0; job < JOBS; job++) {
        int strings = 1 + job % SIL_STRINGS_MAX;
        make_random_job(&s.made, &seed, strings);
        for (int i = 0; i < strings; i++) {
            s.made.job.attack.force[i] = uniform(&seed, 0.3, 2.5);
        }
        for (int k = 0; k < 3; k++) {
            buzz[k] = (sil_buzz){whole(&seed, 1, strings), 2 * k};
        }
        s.made.reading.buzz = buzz;
        s.made.reading.buzz_count = 3;
        set_up(&s);
        int frets = s.plan.bench.board.frets, from = job % 2 == 0 ? 0 : 2;
        look_at_clearance(&s, false, from, frets);
        look_at_clearance(&s, true, from, frets);
        take_down(&s);
    }
}

/* As many notes as a table of clean force tells, or just those under the pick. */
static int count_notes(const scene *s, const sil_clearance *clean, bool under)
{
    int count = 0;
    for (int i = 0; i < s->b->strings; i++) {
        for (int stop = 0; stop < s->plan.bench.board.frets; stop++) {
            double force = clean->force[i][stop];
            count += under ? round(100.0 * force) < round(100.0 * s->made.job.attack.force[i])
                           : sil_known(force);
        }
    }
    return count;
}

static const char *buzz_title(const scene *s)
{
    int now = count_notes(s, &s->plan.clean_now, true), heard = 0;
    int after = count_notes(s, &s->plan.clean_after, true);
    int all = s->b->strings * s->plan.bench.board.frets;
    int known = count_notes(s, &s->plan.clean_now, false);
    for (int k = 0; k < s->plan.cause_count; k++) {
        heard += s->plan.causes[k].heard;
    }
    if (known == 0) {
        return "Will it buzz?";
    }
    if (now + after == 0) {
        return draw_say(s->draft, "Will it buzz? Not under a light pick%s%s",
                        known < all ? ", where known" : "",
                        heard > 0 ? draw_say(s->draft, "; yet %d heard", heard) : "");
    }
    const char *so_many = now > 0 ? draw_say(s->draft, "%d now", now) : "none now";
    const char *then = after > 0
                           ? draw_say(s->draft, "%s%d after", s->b->forecast ? "about " : "", after)
                           : "none after";
    return draw_say(s->draft, "Will it buzz? Notes under a light pick: %s, %s", so_many, then);
}

/* The title counts the notes; the saddle from above is at the largest scale that fits. */
static void buzz_and_tune_are_summed_up(void **state)
{
    (void)state;
    static scene s = {.pack = true};
    uint64_t seed = 70;
    int clean = 0, long_ = 0, slots = 0;
    for (int job = 0; job < 3 * JOBS; job++) {
        make_random_job(&s.made, &seed, 1 + job % SIL_STRINGS_MAX);
        for (int i = 0; i < s.made.job.string_count; i++) {
            s.made.job.attack.force[i] = job % 2 == 0 ? 0.01 : 0.6;
        }
        s.made.job.saddle.thickness = 0.5;
        set_up(&s);
        int page = sil_drawing_find(s.drawing, "clearance");
        const draw_shapes *list = s.drawing->papers[page].shapes;
        const char *title = buzz_title(&s), *caption = NULL;
        assert_int_equal(count_words(list, title), 1);
        clean += strstr(title, "where known") != NULL;
        for (; caption == NULL && page < s.drawing->paper_count; page++) {
            caption = text_with(s.drawing->papers[page].shapes, "Saddle from above ");
        }
        if (caption != NULL) {
            bool fits = 2 * s.b->saddle_part.length <= DRAW_COLUMN;
            assert_int_equal(strncmp(caption + 18, fits ? "2:1" : "1:1", 3), 0);
            assert_true((strstr(caption, "; dashed: best slot") != NULL) ==
                        view_best_slot_fits(s.draft));
            long_ += !fits;
            slots++;
        }
        take_down(&s);
    }
    assert_true(clean > 0 && long_ > 0 && slots > 30);
}

/* --- setbacks --------------------------------------------------------------------------------- */

/* Words in two lines over one column: the upper one as far up as heads are apart, in line with the other. */
static void look_at_head(const draw_shapes *list, const char *upper, const char *lower, bool there)
{
    int found = 0;
    for (int i = 0; i < list->count; i++) {
        for (int k = 0; k < list->count && strcmp(words_of(list, i), upper) == 0; k++) {
            const draw_shape *over = &list->shapes[i], *under = &list->shapes[k];
            found += strcmp(words_of(list, k), lower) == 0 &&
                     fabs(over->at.x - under->at.x) < 1e-9 &&
                     fabs(over->at.y - under->at.y - 5) < 1e-9;
        }
    }
    assert_int_equal(found, there);
}

/* Each column of setbacks has both lines of its head, and is there where it has a figure. */
static void setbacks_are_headed(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 71;
    int read = 0, unread = 0, placed = 0;
    for (int job = 0; job < JOBS; job++) {
        make_random_job(&s.made, &seed, 1 + job % SIL_STRINGS_MAX);
        for (int i = 0; i < s.made.job.string_count; i++) {
            s.made.reading.cents[i] = job % 2 == 0 ? 3 - i : SIL_UNKNOWN;
        }
        set_up(&s);
        bool nut = false, moves = false, places = false;
        for (int i = 0; i < s.b->strings; i++) {
            nut = nut || brief_known(s.b->tone[i].advance);
            moves = moves || brief_known(s.b->tone[i].move);
            places = places ||
                     (view_saddle_in_slot(s.draft) && sil_known(view_saddle_outside(s.draft, i)));
        }
        draw_shapes *list = empty_list(&s);
        view_pitch(s.draft, list, WIDTH);
        look_at_head(list, "best nut", "compensation", nut);
        look_at_head(list, "cents", "read", job % 2 == 0 && s.made.job.reading_count > 0);
        look_at_head(list, "move by", "the tuner", moves);
        look_at_head(list, "on the", "saddle", places);
        read += moves;
        unread += !moves;
        placed += places;
        draw_shapes_free(list);
        take_down(&s);
    }
    assert_true(read > 10 && unread > 10 && placed > 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(cents_are_drawn_over_frets),
        cmocka_unit_test(notes_are_shaded_that_buzz),
        cmocka_unit_test(buzz_and_tune_are_summed_up),
        cmocka_unit_test(setbacks_are_headed),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
