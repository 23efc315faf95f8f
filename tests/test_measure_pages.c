/* SPDX-License-Identifier: MIT */
/* What must be true of every measuring sheet and every owner's page, for any job. */
#include "looked_over.h"

static void nothing_overlaps_or_leaves_its_frame(void **state)
{
    (void)state;
    static random_job made;
    static sil_plan plan;
    uint64_t seed = 1;
    for (int job = 0; job < 204; job++) {
        make_any_job(&made, &seed, job);
        plan_into(&made.job, &plan);
        take_another_way(&plan, job);
        for (int paper = SIL_A4; paper <= SIL_LETTER; paper++) {
            for (int unit = SIL_MM; unit <= SIL_INCH; unit++) {
                look_at_measuring(&plan,
                                  &(sil_draw_options){SIL_PART_ALL, (sil_paper)paper,
                                                      (sil_unit)unit, job % 2 == 1, job % 4 < 2},
                                  job);
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(nothing_overlaps_or_leaves_its_frame)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
