/* SPDX-License-Identifier: MIT */
/* What must be true of every measuring sheet and every owner's page, for any job. */
#include "looked_over.h"

/* The measuring sheet of a job, and of its kind of instrument, its readings taken in every way. */
static void measure_job(sil_plan *plan, const sil_draw_options *order, int job)
{
    static const sil_hold holds[] = {SIL_HOLD_3, SIL_HOLD_2, SIL_HOLD_OPEN};
    sil_gaps *gaps = &plan->bench.gaps;
    gaps->first_held = holds[job % 3];
    gaps->action_at = job % 4 ? 12 : 5 + job % 14;
    gaps->capo = job % 5 == 0;
    gaps->first_open[0] = job % 6 ? SIL_UNKNOWN : 0.55;
    plan->bench.relief.straightedge = job % 7 == 0;
    plan->bench.relief.high = job % 8 ? plan->job->instrument.join : plan->job->instrument.frets;
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

static void nothing_overlaps_or_leaves_its_frame(void **state)
{
    (void)state;
    static random_job made;
    static sil_plan plan;
    uint64_t seed = 1;
    for (int job = 0; job < 204; job++) {
        make_any_job(&made, &seed, job);
        plan_into(&made.job, &plan);
        for (int paper = SIL_A4; paper <= SIL_LETTER; paper++) {
            for (int unit = SIL_MM; unit <= SIL_INCH; unit++) {
                measure_job(&plan,
                            &(sil_draw_options){SIL_PART_ALL, (sil_paper)paper, (sil_unit)unit,
                                                job % 2 == 1, job % 4 < 2},
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
