/* SPDX-License-Identifier: MIT */
/* The drawing sheet for buzz and intonation has every figure of the plan, with the right marks. */
#include <stdlib.h>
#include <string.h>

#include <sillet/drawing.h>

#include "../src/drawing/board/paper.h"
#include "../src/drawing/views/tone.h"
#include "planned.h"
#include "random_job.h"

typedef struct scene {
    random_job made;
    sil_plan plan;
    sil_drawing *drawing;
} scene;

static bool is_sound(const draw_paper *page)
{
    return strcmp(page->heading.part, "Buzz and intonation") == 0;
}

/* A job whose pick is heavy enough to buzz here and there, with notes heard. */
static void draw(scene *s, uint64_t *seed, int strings, sil_part part)
{
    static sil_buzz buzz[4];
    make_random_job(&s->made, seed, strings);
    sil_job *job = &s->made.job;
    job->attack.name = one_in(seed, 2) ? "firm" : NULL;
    for (int i = 0; i < strings; i++) {
        job->attack.force[i] = uniform(seed, 0.3, 2.5);
    }
    s->made.reading.buzz = buzz;
    s->made.reading.buzz_count = whole(seed, 0, 4);
    for (int k = 0; k < s->made.reading.buzz_count; k++) {
        buzz[k] = (sil_buzz){whole(seed, 1, strings), 3 * k};
    }
    plan_into(job, &s->plan);
    sil_draw_options order = {.part = part, .paper = (sil_paper)whole(seed, SIL_A4, SIL_LETTER)};
    assert_true(sil_drawing_make(&s->plan, &order, &s->drawing) >= SIL_DONE);
}

/* The texts and filled marks of a layer over all pages of the sheet. */
enum { WORDS_MAX = 8192 };
typedef struct found {
    const char *words[WORDS_MAX];
    int count, fills;
} found;

static void collect(const sil_drawing *drawing, bool warnings_only, found *f)
{
    f->count = f->fills = 0;
    for (int page = 0; page < drawing->paper_count; page++) {
        const draw_shapes *list = drawing->papers[page].shapes;
        for (int i = 0; i < list->count && is_sound(&drawing->papers[page]); i++) {
            const draw_shape *shape = &list->shapes[i];
            bool warning = shape->layer == DRAW_WARNING;
            f->fills += warning && shape->filled;
            if (shape->kind == DRAW_SHAPE_TEXT && (warning || !warnings_only)) {
                assert_true(f->count < WORDS_MAX);
                f->words[f->count++] = list->bytes + shape->first;
            }
        }
    }
}

static bool take(found *f, const char *word)
{
    for (int i = 0; i < f->count; i++) {
        if (strcmp(f->words[i], word) == 0) {
            f->words[i] = f->words[--f->count];
            return true;
        }
    }
    return false;
}

/* A clean force as the sheet has it, told again here. */
static void write_force(double newtons, char *out, size_t size)
{
    int decimals = newtons >= 99.95 ? 0 : newtons >= 9.995 ? 1 : 2;
    snprintf(out, size, "dead");
    if (!(newtons < 0)) {
        sil_number_write(out, size, newtons, decimals);
    }
}

static bool any_known(const sil_plan *plan)
{
    bool any = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        any = any || sil_known(plan->clean_now.force[i][0]) ||
              sil_known(plan->clean_after.force[i][0]);
    }
    return any;
}

/* Each clean force now and after is printed, the fret it would touch too, and just those under the
 * pick are in the lettering of a warning. */
static void every_force_is_on_the_sheet(void **state)
{
    (void)state;
    static scene s;
    static found all, warned;
    uint64_t seed = 21;
    char word[16];
    int under = 0;
    for (int job = 0; job < 60; job++) {
        draw(&s, &seed, 1 + job % SIL_STRINGS_MAX, SIL_PART_ALL);
        collect(s.drawing, false, &all);
        collect(s.drawing, true, &warned);
        const sil_clearance *tables[] = {&s.plan.clean_now, &s.plan.clean_after};
        int cells = any_known(&s.plan) ? 2 * s.made.job.string_count : 0;
        for (int k = 0; k < cells; k++) {
            int i = k / 2;
            for (int stop = 0; stop < s.made.job.instrument.frets; stop++) {
                double force = tables[k % 2]->force[i][stop];
                write_force(force, word, sizeof word);
                assert_true(take(&all, word));
                if (round(100.0 * force) <
                    round(100.0 * s.made.job.attack.force[i])) { /* as shown */
                    assert_true(take(&warned, word));
                    under++;
                }
                snprintf(word, sizeof word, "%d", tables[k % 2]->at_fret[i][stop]);
                assert_true(!sil_known(force) || take(&all, word));
            }
        }
        assert_int_equal(warned.count, 0);
        sil_drawing_free(s.drawing);
    }
    assert_true(under > 1000);
}

/* A corner a note heard, and one in the key. */
static void every_note_heard_is_marked(void **state)
{
    (void)state;
    static scene s;
    static found f;
    uint64_t seed = 22;
    int marked = 0;
    for (int job = 0; job < 60; job++) {
        draw(&s, &seed, 1 + job % SIL_STRINGS_MAX, SIL_PART_ALL);
        collect(s.drawing, true, &f);
        int heard = s.plan.reading < 0 || !any_known(&s.plan) ? 0 : s.made.reading.buzz_count;
        assert_int_equal(f.fills, heard > 0 ? heard + 1 : 0);
        marked += heard;
        sil_drawing_free(s.drawing);
    }
    assert_true(marked > 50);
}

/* The ring of a string in the head of the first table, by where it stands. */
static double ring_x(const scene *s, int number)
{
    for (int page = 0; page < s->drawing->paper_count; page++) {
        const draw_shapes *list = s->drawing->papers[page].shapes;
        for (int i = 1; i < list->count && is_sound(&s->drawing->papers[page]); i++) {
            bool ringed = list->shapes[i - 1].kind == DRAW_SHAPE_ARC &&
                          list->shapes[i].kind == DRAW_SHAPE_TEXT;
            if (ringed && atoi(list->bytes + list->shapes[i].first) == number) {
                return list->shapes[i].at.x;
            }
        }
    }
    return NAN;
}

/* Bass at the left as the board is seen, and at the right on a left-handed instrument. */
static void strings_stand_as_the_board_is_seen(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 23;
    int seen[2] = {0, 0};
    for (int job = 0; job < 40; job++) {
        int strings = 2 + job % (SIL_STRINGS_MAX - 1);
        draw(&s, &seed, strings, SIL_PART_ALL);
        bool left = s.made.job.instrument.handed == SIL_LEFT_HANDED;
        double one = ring_x(&s, 1), last = ring_x(&s, strings);
        if (any_known(&s.plan)) {
            assert_true(left ? one < last : last < one);
            seen[left]++;
        }
        sil_drawing_free(s.drawing);
    }
    assert_true(seen[0] > 5 && seen[1] > 5);
}

/* All graphs to one scale that holds every note, 0, and no more than six steps of a cent or more.
 */
static void cents_go_on_one_scale(void **state)
{
    (void)state;
    static random_job made;
    static sil_plan plan;
    uint64_t seed = 24;
    for (int job = 0; job < 200; job++) {
        make_random_job(&made, &seed, 1 + job % SIL_STRINGS_MAX);
        plan_into(&made.job, &plan);
        draw_draft draft = {.plan = &plan};
        view_cents_scale scale = view_cents_measure(&draft);
        assert_true(scale.step >= 1 && scale.low < 0 && scale.high > 0);
        assert_true(scale.high - scale.low <= 6 * scale.step);
        assert_int_equal(scale.low % scale.step, 0);
        for (int i = 0; i < made.job.string_count; i++) {
            const sil_compensation *told = &plan.compensation[i];
            double worst = view_cents_worst(told->as_built);
            for (int fret = 1; fret <= SIL_PITCH_FRETS; fret++) {
                assert_false(told->as_built[fret] < scale.low || told->as_built[fret] > scale.high);
                assert_false(told->at_best[fret] < scale.low || told->at_best[fret] > scale.high);
                assert_false(fabs(told->as_built[fret]) > worst);
            }
        }
    }
}

/* A part's own sheets are without it. */
static void it_goes_with_the_whole_pack(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 25;
    for (int part = SIL_PART_ALL; part <= SIL_PART_SADDLE; part++) {
        draw(&s, &seed, 6, (sil_part)part);
        int last = s.drawing->paper_count - 1;
        assert_int_equal(is_sound(&s.drawing->papers[last]), part == SIL_PART_ALL);
        sil_drawing_free(s.drawing);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_force_is_on_the_sheet),
        cmocka_unit_test(every_note_heard_is_marked),
        cmocka_unit_test(strings_stand_as_the_board_is_seen),
        cmocka_unit_test(cents_go_on_one_scale),
        cmocka_unit_test(it_goes_with_the_whole_pack),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
