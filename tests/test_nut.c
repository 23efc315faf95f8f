/* SPDX-License-Identifier: MIT */
/* The nut: centres, files, floors, feelers. */
#include "instrument.h"

static void gaps_between_string_edges_are_equal(void **state)
{
    (void)state;
    double gauge[] = {0.30, 0.41, 0.61, 0.81, 1.07, 1.35};
    double z[6];
    double gap;
    sil_nut_centres(&(sil_courses){6, each_a_course, 0.0}, gauge, 43.0, 3.0, 3.2, SIL_EQUAL_GAP, z,
                    &gap);
    near(43.0 / 2.0 - z[0] - gauge[0] / 2.0, 3.0, 1e-12);
    near(z[5] - gauge[5] / 2.0 + 43.0 / 2.0, 3.2, 1e-12);
    for (int i = 1; i < 6; i++) {
        near(z[i - 1] - gauge[i - 1] / 2.0 - (z[i] + gauge[i] / 2.0), gap, 1e-12);
    }
    sil_nut_centres(&(sil_courses){6, each_a_course, 0.0}, gauge, 43.0, 3.0, 3.2, SIL_EQUAL_CENTRE,
                    z, &gap);
    near(z[0] - z[1], z[4] - z[5], 1e-12);
    assert_false(sil_known(gap));
    sil_nut_centres(&(sil_courses){1, each_a_course, 0.0}, gauge, 10.0, 4.85, 4.85, SIL_EQUAL_GAP,
                    z, &gap);
    near(z[0], 0.0, 1e-12);
    assert_false(sil_known(gap));
}

static void a_file_is_of_its_string(void **state)
{
    (void)state;
    double files[] = {0.50, 0.25, 0.33, 0.41};
    near(sil_file_width(0.30, 0.04, files, 4), 0.33, 0.0);
    near(sil_file_width(0.35, 0.00, files, 4), 0.41, 0.0);
    near(sil_file_width(0.33, 0.04, files, 4), 0.33, 0.0); /* 0.33 and 0.41 as near: the narrower */
    near(sil_file_width(0.24, 0.10, files, 4), 0.33, 0.0); /* nearer than 0.25, though wider */
    near(sil_file_width(0.24, 0.10, (const double[]){0.33, 0.25}, 2), 0.33, 0.0);
    near(sil_file_width(0.90, 0.08, files, 4), 0.98, 1e-12); /* none is wide enough */
    near(sil_file_width(0.4064, 0.04, (const double[]){0.41, 0.66}, 2), 0.41, 0.0); /* its own */
    near(sil_file_width(0.43, 0.04, (const double[]){0.33, 0.66}, 2), 0.47, 1e-12); /* too wide */
    near(sil_file_width(0.30, 0.04, files, 0), 0.34, 1e-12);
}

/* The nut is the frets' own zero, whatever stood in the board before. */
static void frets_are_laid_from_the_nut(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    bench.board.spine_x[0] = bench.board.fret_x[3][0] = 5.0;
    lay_again(&bench.board);
    near(sil_axis_x(&bench.board, -1, 0), 0.0, 0.0);
    near(sil_axis_x(&bench.board, 3, 0), 0.0, 0.0);
}

/* What rounding may add up to is no fault: a millionth of a millimetre, and no more. */
static void a_range_ends_a_millionth_late(void **state)
{
    (void)state;
    assert_false(sil_below(-1e-6, 0.0) || sil_above(1e-6, 0.0));
    assert_true(sil_below(-1.1e-6, 0.0) && sil_above(1.1e-6, 0.0));
}

static void make_nut(sil_nut_given *make)
{
    *make = (sil_nut_given){.seat_to_board = 6.5, .head_angle_deg = 14.0, .fall_share = 0.5};
    for (int i = 0; i < 6; i++) {
        make->gauge[i] = 0.3 + 0.2 * i;
        make->bury[i] = i < 2 ? 1.0 : 0.5;
    }
}

static void work(const sil_bench *bench, sil_stages *stages, sil_nut_work *nut)
{
    sil_nut_given make;
    make_nut(&make);
    sil_stages_run(bench, stages);
    sil_nut_cut(bench, stages, &make, nut);
}

/* On a straight flat neck, by hand: the floor is the crowns' height over the board plus the
 * string's over the crowns, and the feelers are that much. On a bowed neck the board's end has
 * risen. */
static void feelers_are_what_lies_between_board_and_string(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    bench.board.radius_nut = bench.board.radius_end = INFINITY;
    lay_again(&bench.board);
    bench.targets.relief = (sil_band){0.0, 0.0, 0.3};
    truth.bend = 0.0;
    set_to_aims(&bench, &truth);
    read_instrument(&bench, &truth);
    bench.relief.straightedge = true;
    sil_stages stages;
    sil_nut_work nut;
    work(&bench, &stages, &nut);
    near(nut.stack[0], 1.1 + stages.fit[SIL_NUT].nut_height[0], 1e-12);
    near(nut.floor[0], 6.5 + nut.stack[0], 1e-12);
    near(nut.depth[0], 0.3, 1e-12);
    double top = 0.0;
    for (int i = 0; i < 6; i++) {
        top = fmax(top, nut.floor[i] + nut.depth[i]); /* the highest mouth of a slot */
    }
    near(nut.top, top, 1e-12);
    near(nut.fall_angle_deg, 7.0, 1e-12);
    truth.bend = sil_bend(&bench.board, 0.2);
    set_to_aims(&bench, &truth);
    read_instrument(&bench, &truth);
    work(&bench, &stages, &nut);
    double end = truth.bend * bench.board.spine_x[1] * bench.board.spine_x[14];
    near(nut.stack[0], 1.1 + stages.fit[SIL_NUT].nut_height[0] - end, 1e-12);
}

static void cutting_to_the_feelers_gives_the_gap_aimed_at(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    for (int i = 0; i < 6; i++) {
        truth.nut_height[i] += 0.25;
    }
    read_instrument(&bench, &truth);
    sil_stages stages;
    sil_nut_work nut;
    work(&bench, &stages, &nut);
    assert_int_equal(nut.remedy, SIL_NUT_FILE);
    const sil_board *board = &bench.board;
    for (int i = 0; i < 6; i++) {
        /* From the board's surface beside the slot up the feelers: the string's height there. */
        double surface = -sil_sag(board, truth.bend, 0.0) - bench.crown -
                         sil_radius_drop(305.0, board->nut_z[i]);
        sil_fit cut = truth;
        cut.nut_height[i] = surface + nut.stack[i];
        near(sil_first_gap(board, &cut, i, SIL_HOLD_3), bench.targets.first[i].aim, 1e-12);
        near(nut.first_pass[i], fmax(0.0, fmin(stages.deepen[i], nut.first_pass[i])), 0.0);
        assert_true(nut.first_pass[i] > 0.0 && nut.first_pass[i] <= stages.deepen[i]);
    }
}

static void up_to_two_low_slots_are_filled_and_more_are_shimmed(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    truth.nut_height[0] -= 0.09;
    read_instrument(&bench, &truth);
    sil_stages stages;
    sil_nut_work nut;
    work(&bench, &stages, &nut);
    assert_int_equal(nut.remedy, SIL_NUT_FILL);
    assert_false(sil_known(nut.shim));
    truth.nut_height[3] -= 0.08;
    read_instrument(&bench, &truth);
    work(&bench, &stages, &nut);
    assert_int_equal(nut.remedy, SIL_NUT_FILL); /* before, all six were shimmed for two */
    assert_false(sil_known(nut.shim));
    assert_int_equal(nut.verdict[1], SIL_LEAVE);
    near(stages.fit[SIL_NUT].nut_height[1], stages.fit[SIL_FRETS].nut_height[1], 0.0);
    bench.targets.first[1] = (sil_band){0.0, 0.001, 0.002}; /* filed, so a shim is no more work */
    work(&bench, &stages, &nut);
    assert_int_equal(nut.verdict[1], SIL_TAKE);
    assert_int_equal(nut.remedy, SIL_NUT_SHIM);
    bench.targets.first[1] = bench.targets.first[2];
    truth.nut_height[1] -= 0.08;
    read_instrument(&bench, &truth);
    work(&bench, &stages, &nut);
    assert_int_equal(nut.remedy, SIL_NUT_SHIM);
    assert_true(nut.shim >= -stages.deepen[3] && nut.shim < -stages.deepen[3] + 0.1);
    bench.targets.first[0] = (sil_band){0.2, 0.3, 0.4}; /* the greatest rise at the first string */
    work(&bench, &stages, &nut);
    assert_true(nut.shim >= -stages.deepen[0] && nut.shim < -stages.deepen[0] + 0.1);
    bench.gaps.first[4] = 0.0;
    work(&bench, &stages, &nut);
    assert_int_equal(nut.remedy, SIL_NUT_WAIT);
    assert_int_equal(nut.verdict[1], SIL_WAIT);
    assert_false(sil_known(nut.stack[1]));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(gaps_between_string_edges_are_equal),
        cmocka_unit_test(a_file_is_of_its_string),
        cmocka_unit_test(frets_are_laid_from_the_nut),
        cmocka_unit_test(a_range_ends_a_millionth_late),
        cmocka_unit_test(feelers_are_what_lies_between_board_and_string),
        cmocka_unit_test(cutting_to_the_feelers_gives_the_gap_aimed_at),
        cmocka_unit_test(up_to_two_low_slots_are_filled_and_more_are_shimmed),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
