/* SPDX-License-Identifier: MIT */
/* The figures that a plan is computed from, as a job gives them. */
#include "tone_job.h"

static void the_bench_holds_the_reading_that_counts(void **state)
{
    (void)state;
    spoilt s;
    sil_bench bench;
    make_tone(&s);
    s.reading.crown_count = 1;
    s.job.instrument.rod = SIL_ROD_TWO_WAY;
    sil_job_bench(&s.job, 0, &bench);
    assert_int_equal(bench.board.strings, 6);
    assert_int_equal(bench.board.relief_at, 7);
    assert_int_equal(bench.relief.low, 1);
    assert_int_equal(bench.relief.high, 14);
    near(bench.board.saddle_x[5], 649.5, 1e-12);
    near(bench.board.saddle_z[0], 27.0, 1e-12);
    near(bench.board.nut_z[0], 21.5 - 3.0 - 0.1524, 1e-12);
    near(bench.crowns.off[1][3], -0.05, 0.0);
    near(bench.crowns.off[0][3], 0.0, 0.0);
    near(bench.gaps.action[5], 2.8, 0.0);
    near(bench.targets.action[5].aim, 2.25, 1e-15);
    near(bench.rod_ratio, 1.0, 0.0);
    near(bench.rod_spread, 0.25, 0.0);
    near(bench.wear_limit, 0.08, 0.0);
    assert_true(bench.rod_works);
}

static void relief_is_told_in_the_middle_of_a_short_neck(void **state)
{
    (void)state;
    static const int joins[][2] = {{14, 7}, {8, 7}, {7, 4}, {6, 3}, {3, 2}};
    for (size_t i = 0; i < sizeof joins / sizeof joins[0]; i++) {
        spoilt s;
        sil_bench bench;
        make_tone(&s);
        s.job.instrument.join = joins[i][0];
        sil_job_bench(&s.job, 0, &bench);
        assert_int_equal(bench.board.relief_at, joins[i][1]);
        assert_int_equal(bench.relief.high, joins[i][0]);
    }
}

static void a_rod_works_where_it_is_there_and_moves(void **state)
{
    (void)state;
    static const struct {
        sil_rod rod;
        sil_rod_state rod_state;
        bool works;
    } rods[] = {{SIL_ROD_NOT_GIVEN, SIL_ROD_WORKS, false},
                {SIL_ROD_NONE, SIL_ROD_WORKS, false},
                {SIL_ROD_ONE_WAY, SIL_ROD_STATE_NOT_GIVEN, true},
                {SIL_ROD_TWO_WAY, SIL_ROD_WORKS, true},
                {SIL_ROD_TWO_WAY, SIL_ROD_SLACK, false},
                {SIL_ROD_TWO_WAY, SIL_ROD_AT_END, false},
                {SIL_ROD_TWO_WAY, SIL_ROD_STUCK, false},
                {SIL_ROD_ONE_WAY, SIL_ROD_ACCEPTED, false}};
    for (size_t i = 0; i < sizeof rods / sizeof rods[0]; i++) {
        spoilt s;
        sil_bench bench;
        make_tone(&s);
        s.job.instrument.rod = rods[i].rod;
        s.job.instrument.rod_state = rods[i].rod_state;
        sil_job_bench(&s.job, 0, &bench);
        assert_int_equal(bench.rod_works, rods[i].works);
    }
}

static void a_job_without_a_reading_has_a_bench_of_unknowns(void **state)
{
    (void)state;
    spoilt s;
    sil_bench bench;
    make_tone(&s);
    s.job.reading_count = 0;
    sil_job_bench(&s.job, -1, &bench);
    assert_false(sil_known(bench.relief.gap) || sil_known(bench.gaps.action[0]));
    assert_int_equal(bench.gaps.action_at, 12);
    assert_int_equal(bench.board.relief_at, 7);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_bench_holds_the_reading_that_counts),
        cmocka_unit_test(relief_is_told_in_the_middle_of_a_short_neck),
        cmocka_unit_test(a_rod_works_where_it_is_there_and_moves),
        cmocka_unit_test(a_job_without_a_reading_has_a_bench_of_unknowns),
    };
    return cmocka_run_group_tests(tests, open_sheet, close_sheet);
}
