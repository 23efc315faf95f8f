/* SPDX-License-Identifier: MIT */
/* What must be true of every sheet of a pack, for any job. */
#include "looked_over.h"

static void nothing_overlaps_or_leaves_its_frame(void **state)
{
    (void)state;
    static random_job made;
    uint64_t seed = 1;
    for (int job = 0; job < 204; job++) {
        make_any_job(&made, &seed, job);
        look_at_pack(&made, job);
    }
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
    plan_into(&made.job, &plan);
    for (int k = 0; k < 2; k++) {
        sil_draw_options order = {.paper = SIL_A4};
        sil_drawing *drawing;
        assert_true(sil_drawing_make(&plan, &order, &drawing) >= SIL_DONE);
        assert_int_equal(sil_drawing_write(drawing, SIL_PDF, &bytes[k], &size[k]), 0);
        sil_drawing_free(drawing);
    }
    assert_int_equal(size[0], size[1]);
    assert_memory_equal(bytes[0], bytes[1], size[0]);
    free(bytes[0]);
    free(bytes[1]);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nothing_overlaps_or_leaves_its_frame),
        cmocka_unit_test(the_same_bytes_twice),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
