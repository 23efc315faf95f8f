/* SPDX-License-Identifier: MIT */
/* What is too long for a paper: a part is reduced, and text goes on to more sheets. */
#include "looked_over.h"

static void say_nothing(void *with, sil_severity severity, const char *path, const char *wanted)
{
    (void)with, (void)severity, (void)path, (void)wanted;
}

static bool says(const draw_shapes *list, const char *words)
{
    for (int i = 0; i < list->count; i++) {
        const draw_shape *shape = &list->shapes[i];
        if (shape->kind == DRAW_SHAPE_TEXT && strcmp(list->bytes + shape->first, words) == 0) {
            return true;
        }
    }
    return false;
}

/* A part that is too long for a paper at 1:1 is reduced, and the title block says so. */
static void a_long_part_is_reduced(void **state)
{
    (void)state;
    static random_job made;
    static sil_plan plan;
    static const double lengths[] = {167, 255, 400, 900};
    enum { LENGTHS = sizeof lengths / sizeof *lengths };
    uint64_t seed = 7;
    int drawn = 0;
    for (int job = 0; job < 60; job++) {
        make_random_job(&made, &seed, 1 + job % SIL_STRINGS_MAX);
        double length = lengths[job % LENGTHS];
        made.job.saddle.length = length;
        if (sil_job_check(&made.job, say_nothing, NULL) > 0) {
            continue; /* there is no such instrument */
        }
        look_at_pack(&made, job);
        plan_into(&made.job, &plan);
        sil_draw_options order = {SIL_PART_SADDLE, SIL_LETTER, SIL_MM, false, true};
        look_at_measuring(&plan, &order, job);
        sil_drawing *drawing;
        assert_true(sil_drawing_make(&plan, &order, &drawing) >= SIL_DONE);
        const char *scale = length < 276 ? "1:2" : length < 690 ? "1:5" : "1:10";
        const brief_saddle *saddle = &drawing->brief->saddle;
        if (!sil_working_turns(saddle->working) && saddle->remedy != SIL_SADDLE_WAIT) {
            assert_true(says(drawing->papers[0].shapes, scale));
            drawn++;
        }
        sil_drawing_free(drawing);
    }
    assert_true(drawn >= 10);
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
    plan_into(&made.job, &plan);
    sil_draw_options order = {.paper = SIL_LETTER};
    sil_drawing *drawing;
    assert_true(sil_drawing_make(&plan, &order, &drawing) >= SIL_DONE);
    assert_true(sil_drawing_pages(drawing) > 20);
    for (int page = 0; page < sil_drawing_pages(drawing); page += 7) {
        look_over(&(scene){drawing, page, 0, 6});
    }
    sil_drawing_free(drawing);
    free(notes);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_long_part_is_reduced),
        cmocka_unit_test(much_text_flows_on),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
