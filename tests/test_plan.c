/* SPDX-License-Identifier: MIT */
/* The public functions of a plan, copies of a plan, and the words for a status. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <sillet/sillet.h>

#include "planned.h"
#include "random_job.h"

/* Every view shows its own field of the plan. */
static void views_show_what_stands_in_the_plan(void **state)
{
    (void)state;
    for (int job = 0; job < 40; job++) {
        random_job made;
        uint64_t seed = 700 + (uint64_t)job;
        make_random_job(&made, &seed, whole(&seed, 1, 12));
        sil_plan *plan;
        int findings, steps, causes, visits;
        assert_int_equal(sil_plan_make(&made.job, &plan), SIL_DONE);
        assert_ptr_equal(sil_plan_job(plan), &made.job);
        assert_ptr_equal(sil_plan_reading(plan), plan->reading < 0 ? NULL : &plan->read);
        assert_int_equal(sil_plan_done(plan), plan->done);
        assert_ptr_equal(sil_plan_bench(plan), &plan->bench);
        assert_ptr_equal(sil_plan_stages(plan), &plan->stages);
        assert_ptr_equal(sil_plan_nut_withheld(plan), &plan->nut_withheld);
        assert_ptr_equal(sil_plan_saddle_withheld(plan), &plan->saddle_withheld);
        assert_ptr_equal(sil_plan_nut(plan), &plan->nut);
        assert_ptr_equal(sil_plan_saddle(plan), &plan->saddle);
        assert_ptr_equal(sil_plan_slot_widths(plan), plan->slot_width);
        assert_ptr_equal(sil_plan_neck(plan), &plan->neck);
        assert_ptr_equal(sil_plan_unit_masses(plan), plan->unit_mass_kg_m);
        assert_ptr_equal(sil_plan_pluck(plan), &plan->pluck);
        assert_ptr_equal(sil_plan_clean_now(plan), &plan->clean_now);
        assert_ptr_equal(sil_plan_clean_after(plan), &plan->clean_after);
        assert_ptr_equal(sil_plan_lowest(plan), &plan->lowest);
        assert_ptr_equal(sil_plan_compensation(plan), plan->compensation);
        assert_ptr_equal(sil_plan_findings(plan, &findings), plan->findings);
        assert_ptr_equal(sil_plan_steps(plan, &steps), plan->steps);
        assert_ptr_equal(sil_plan_causes(plan, &causes), plan->causes);
        assert_ptr_equal(sil_plan_visits(plan, &visits), plan->visits);
        assert_true(findings == plan->finding_count && steps == plan->step_count &&
                    causes == plan->cause_count && visits == plan->visit_count);
        double gap = sil_plan_nut_gap(plan);
        sil_blank nut = sil_plan_nut_blank(plan), saddle = sil_plan_saddle_blank(plan);
        sil_zero_fret zero = sil_plan_zero_fret(plan);
        assert_memory_equal(&zero, &plan->zero_fret, sizeof zero);
        sil_line built = sil_plan_slot_as_built(plan), best = sil_plan_slot_best(plan);
        assert_memory_equal(&gap, &plan->nut_gap, sizeof gap);
        assert_memory_equal(&nut, &plan->nut_blank, sizeof nut);
        assert_memory_equal(&saddle, &plan->saddle_blank, sizeof saddle);
        assert_memory_equal(&built, &plan->slot_as_built, sizeof built);
        assert_memory_equal(&best, &plan->slot_best, sizeof best);
        sil_plan_free(plan);
    }
}

/* Nothing in a plan points into it: a copy tells the same once the plan it was taken of is gone. */
static void a_copy_stands_on_its_own(void **state)
{
    (void)state;
    for (int job = 0; job < 20; job++) {
        random_job made;
        uint64_t seed = 900 + (uint64_t)job;
        make_random_job(&made, &seed, whole(&seed, 1, 12));
        sil_plan *plan;
        static sil_plan copy;
        assert_int_equal(sil_plan_make(&made.job, &plan), SIL_DONE);
        char *told = sil_report_json(plan, SIL_MM);
        copy = *plan;
        memset(plan, 0xA5, sizeof *plan);
        sil_plan_free(plan);
        char *again = sil_report_json(&copy, SIL_MM);
        assert_string_equal(told, again);
        free(told);
        free(again);
    }
}

/* Each status has words of its own, and any other number some. */
static void every_status_has_its_words(void **state)
{
    (void)state;
    static const sil_status all[] = {
        SIL_DOUBTFUL,  SIL_DONE,  SIL_NOT_A_NUMBER, SIL_NO_UNIT, SIL_OTHER_UNIT,
        SIL_NO_NOTE,   SIL_WRONG, SIL_NOT_KNOWN,    SIL_NO_FACE, SIL_UNREADABLE,
        SIL_NOT_SAVED, SIL_FAULT, SIL_NO_MEMORY};
    const size_t count = sizeof all / sizeof *all;
    for (size_t k = 0; k < count; k++) {
        const char *words = sil_status_text(all[k]);
        assert_true(strlen(words) > 3 && strcmp(words, "unknown status") != 0);
        for (size_t other = 0; other < k; other++) {
            assert_string_not_equal(words, sil_status_text(all[other]));
        }
        assert_true(k == count - 1 || all[k] > SIL_NO_MEMORY); /* it comes before all else */
    }
    assert_string_equal(sil_status_text((sil_status)7), "unknown status");
}

/* The text of the version is its numbers. */
static void the_version_says_its_numbers(void **state)
{
    (void)state;
    int major, minor, patch, length = 0;
    assert_int_equal(sscanf(SILLET_VERSION, "%d.%d.%d%n", &major, &minor, &patch, &length), 3);
    assert_int_equal(length, (int)strlen(SILLET_VERSION));
    assert_true(major == SILLET_VERSION_MAJOR && minor == SILLET_VERSION_MINOR &&
                patch == SILLET_VERSION_PATCH);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(views_show_what_stands_in_the_plan),
                                       cmocka_unit_test(a_copy_stands_on_its_own),
                                       cmocka_unit_test(every_status_has_its_words),
                                       cmocka_unit_test(the_version_says_its_numbers)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
