/* SPDX-License-Identifier: MIT */
/* Heights from readings, and the stages that follow from them. */
#include "instrument.h"
#include "published/values.h"

/* A neck bent to an even arc, its crowns placed by the circle itself, against the program's line.
 */
static void an_even_bend_is_an_arc_of_a_circle(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit fit;
    make_instrument(&bench, &fit);
    const sil_board *board = &bench.board;
    double x1 = board->spine_x[1];
    double xj = board->spine_x[14];
    double half = (xj - x1) / 2.0;
    double sagitta = 0.3;
    double radius = (half * half + sagitta * sagitta) / (2.0 * sagitta);
    double read =
        sqrt(radius * radius - pow(board->spine_x[7] - x1 - half, 2.0)) - (radius - sagitta);
    fit.bend = sil_bend(board, read);
    for (int n = 1; n <= 14; n++) {
        double arc =
            sqrt(radius * radius - pow(board->spine_x[n] - x1 - half, 2.0)) - (radius - sagitta);
        near(sil_sag(board, fit.bend, board->spine_x[n]), arc, 1e-6);
    }
}

static void the_same_neck_comes_out_of_every_way_to_read_relief(void **state)
{
    (void)state;
    static const sil_relief_reading ways[] = {
        {.over = 7, .low = 1, .high = 14, .string = -1},
        {.over = 7, .low = 1, .high = 20, .string = -1, .straightedge = true},
        {.over = 6, .low = 2, .high = 12, .string = 5},
        {.over = 9, .low = 1, .high = 14, .string = 0},
    };
    for (size_t k = 0; k < sizeof ways / sizeof *ways; k++) {
        sil_bench bench;
        sil_fit truth;
        make_instrument(&bench, &truth);
        sil_crowns worn = {0};
        worn.off[0][1] = -0.06;
        truth.crowns = worn;
        bench.board.fallaway = 0.2;
        bench.relief = ways[k];
        read_instrument(&bench, &truth);
        double bend = sil_bend_from_relief(&bench.board, &bench.crowns, &bench.relief);
        near(bend * 1e5, truth.bend * 1e5, 1e-9);
    }
}

/* Common practice: an edge over the whole board of a bowed neck reads about half as much again as a
 * string held at the join. */
static void a_long_edge_reads_half_as_much_again(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    read_instrument(&bench, &truth);
    double held = bench.relief.gap;
    bench.relief.high = 20;
    read_instrument(&bench, &truth);
    near(bench.relief.gap / held, 1.5, 0.15);
}

static void heights_come_back_from_every_reading_form(void **state)
{
    (void)state;
    for (int form = 0; form < 6; form++) {
        sil_bench bench;
        sil_fit truth;
        make_instrument(&bench, &truth);
        sil_crowns worn = {0};
        worn.off[3][2] = -0.05;
        truth.crowns = worn;
        bench.gaps.first_held = (sil_hold[]){SIL_HOLD_3, SIL_HOLD_2, SIL_HOLD_OPEN}[form % 3];
        bench.gaps.action_at = form < 3 ? 12 : 15;
        read_instrument(&bench, &truth);
        sil_fit fit = {.bend = truth.bend, .crowns = truth.crowns};
        sil_fit_read(&bench.board, &bench.gaps, &fit);
        for (int i = 0; i < 6; i++) {
            near(fit.nut_height[i], truth.nut_height[i], 1e-12);
            near(fit.saddle_height[i], truth.saddle_height[i], 1e-12);
        }
    }
}

/* By hand: with a capo the string is the line from crown 1 to the saddle. */
static void a_capo_takes_the_nut_out_of_the_action(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    read_instrument(&bench, &truth);
    const sil_board *board = &bench.board;
    bench.gaps.capo = true;
    for (int i = 0; i < 6; i++) {
        double x1 = board->fret_x[i][1];
        double c1 = sil_crown_height(board, &truth, i, 1);
        double slope = (truth.saddle_height[i] - c1) / (board->saddle_x[i] - x1);
        bench.gaps.action[i] =
            c1 + slope * (board->fret_x[i][12] - x1) - sil_crown_height(board, &truth, i, 12);
    }
    sil_fit fit = {.bend = truth.bend};
    sil_fit_read(board, &bench.gaps, &fit);
    for (int i = 0; i < 6; i++) {
        near(fit.saddle_height[i], truth.saddle_height[i], 1e-12);
        near(fit.nut_height[i], truth.nut_height[i], 1e-12);
    }
}

/* One slot, two ways to hold: the gaps stand as 1 - x1/x2 to 1 - x1/x3, places from the published
 * fret table of 650 mm (on a straight, flat board). */
static void it_matters_which_crown_the_string_lies_on(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    bench.board.radius_nut = bench.board.radius_end = INFINITY;
    lay_again(&bench.board);
    truth.bend = 0.0;
    double by3 = sil_first_gap(&bench.board, &truth, 2, SIL_HOLD_3);
    double by2 = sil_first_gap(&bench.board, &truth, 2, SIL_HOLD_2);
    double ratio = (1.0 - fret_650[0] / fret_650[1]) / (1.0 - fret_650[0] / fret_650[2]);
    near(by2 / by3, ratio, 1e-5);
}

static void nought_is_at_or_under_and_gives_no_figure(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    read_instrument(&bench, &truth);
    bench.gaps.first[1] = 0.0;
    bench.gaps.action[2] = 0.0;
    sil_stages stages;
    sil_stages_run(&bench, &stages);
    assert_false(sil_known(stages.fit[SIL_NOW].nut_height[1]));
    assert_int_equal(stages.nut[1], SIL_WAIT);
    assert_int_equal(stages.saddle[1], SIL_WAIT);
    assert_true(sil_known(stages.fit[SIL_NOW].nut_height[2]));
    assert_false(sil_known(stages.lower[2]));
    bench.gaps.first_open[1] = sil_first_gap(&bench.board, &truth, 1, SIL_HOLD_OPEN);
    sil_stages_run(&bench, &stages);
    near(stages.fit[SIL_NOW].nut_height[1], truth.nut_height[1], 1e-12);
    bench.gaps.first_open[0] = 2.0 * sil_first_gap(&bench.board, &truth, 0, SIL_HOLD_OPEN);
    sil_stages_run(&bench, &stages); /* both read: the held one, by which the nut is judged */
    near(stages.fit[SIL_NOW].nut_height[0], truth.nut_height[0], 1e-12);
    bench.gaps.first_open[3] = 0.0; /* it lies on fret 1, whatever was read held down */
    sil_stages_run(&bench, &stages);
    assert_false(sil_known(stages.fit[SIL_NOW].nut_height[3]));
    assert_int_not_equal(stages.nut[3], SIL_TAKE);
}

/* Common practice: relief taken out of a neck lowers the action at fret 12 by a multiple of it; an
 * even bend gives 2.5 times. */
static void a_rod_moves_the_action_two_and_a_half_times(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    truth.bend = sil_bend(&bench.board, 0.45);
    for (int i = 0; i < 6; i++) {
        truth.nut_height[i] += 0.3;
    }
    read_instrument(&bench, &truth);
    sil_stages stages;
    sil_stages_run(&bench, &stages);
    assert_true(stages.changed[SIL_ROD] && stages.forecast[SIL_NUT] && stages.forecast[SIL_SADDLE]);
    near(sil_relief(&bench.board, stages.fit[SIL_ROD].bend), 0.15, 1e-12);
    double before = sil_action(&bench.board, &stages.fit[SIL_NOW], 2, 12);
    double after = sil_action(&bench.board, &stages.fit[SIL_ROD], 2, 12);
    near((before - after) / 0.30, 2.5, 0.05);
}

static void levelling_takes_every_crown_to_the_deepest_dent(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    sil_crowns worn = {0};
    worn.off[1][1] = -0.15;
    worn.off[4][3] = -0.05;
    truth.crowns = worn;
    read_instrument(&bench, &truth);
    sil_stages stages;
    sil_stages_run(&bench, &stages);
    assert_int_equal(stages.fretwork, SIL_FRETS_LEVEL);
    near(stages.level_depth, 0.15, 0.0);
    near(stages.fit[SIL_FRETS].nut_height[0], truth.nut_height[0] + 0.15, 1e-12);
    assert_true(stages.fit[SIL_FRETS].crowns.off[1][1] == 0.0);
    bench.crown = 0.7;
    sil_stages_run(&bench, &stages);
    assert_int_equal(stages.fretwork, SIL_FRETS_NEW);
    near(stages.fit[SIL_FRETS].nut_height[0], truth.nut_height[0], 1e-12);
    bench.crowns = (sil_crowns){0};
    bench.crowns.off[2][9] = 0.2;
    bench.crowns.off[3][bench.board.frets] = 0.15;
    bench.crowns.off[4][5] = -0.01; /* within the limit: stays */
    sil_stages_run(&bench, &stages);
    assert_int_equal(stages.fretwork, SIL_FRETS_SEAT);
    const sil_crowns *seated = &stages.fit[SIL_FRETS].crowns;
    assert_true(seated->off[2][9] == 0.0 && seated->off[3][bench.board.frets] == 0.0);
    near(seated->off[4][5], -0.01, 0.0);
    assert_false(stages.forecast[SIL_NUT]);
}

/* Reading the instrument that the plan predicts gives the aims back, and nothing left to do. */
static void the_predicted_instrument_reads_as_aimed(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    for (int i = 0; i < 6; i++) {
        truth.nut_height[i] += 0.2;
        truth.saddle_height[i] += 0.8;
    }
    read_instrument(&bench, &truth);
    sil_stages stages;
    sil_stages_run(&bench, &stages);
    assert_true(stages.changed[SIL_NUT] && stages.changed[SIL_SADDLE]);
    sil_fit predicted = stages.fit[SIL_SADDLE];
    read_instrument(&bench, &predicted);
    for (int i = 0; i < 6; i++) {
        near(bench.gaps.first[i], bench.targets.first[i].aim, 1e-12);
        near(bench.gaps.action[i], bench.targets.action[i].aim, 1e-12);
    }
    sil_stages_run(&bench, &stages);
    assert_false(stages.changed[SIL_NUT] || stages.changed[SIL_SADDLE]);
}

/* JCGM 100:2008, 4.3.7: a reading to plus or minus a has u = a/sqrt(3). With a perfect gap and
 * relief a saddle cut carries the action's alone, divided by the leverage. */
static void uncertainty_is_rectangular(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    read_instrument(&bench, &truth);
    bench.tools = (sil_tools){.action = 0.1};
    sil_stages stages;
    sil_stages_run(&bench, &stages);
    near(stages.lower_u[0], 0.1 / sqrt(3.0) / sil_leverage(&bench.board, 0), 1e-12);
    near(stages.deepen_u[0], 0.0, 1e-15);
    bench.tools = (sil_tools){.first = 0.02};
    sil_stages_run(&bench, &stages);
    double share = bench.board.fret_x[0][1] / bench.board.fret_x[0][3];
    near(stages.deepen_u[0], 0.02 / sqrt(3.0) / (1.0 - share), 1e-12);
}

/* Monte Carlo (JCGM 101:2008): readings wrong by anything within the tools, all places as likely.
 * Of cuts taken to their first pass at most one in twenty goes past the low edge of its range. */
static void a_first_pass_oversteps_at_most_once_in_twenty(void **state)
{
    (void)state;
    enum { TRIALS = 4000 };
    uint64_t seed = 20260314;
    int past_nut = 0;
    int past_saddle = 0;
    int cuts = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
        sil_bench bench;
        sil_fit truth;
        make_instrument(&bench, &truth);
        bench.rod_works = false;
        bench.tools.first = uniform(&seed, 0.002, 0.02);
        bench.tools.relief = uniform(&seed, 0.002, 0.1);
        truth.nut_height[0] += 0.3;
        truth.saddle_height[0] += 1.0;
        /* An aim at the low edge and below leaves the guard alone to keep the string up. */
        bench.targets.first[0].aim = bench.targets.first[0].low - 0.05;
        bench.targets.action[0].aim = bench.targets.action[0].low - 0.5;
        read_instrument(&bench, &truth);
        bench.relief.gap += uniform(&seed, -1.0, 1.0) * bench.tools.relief;
        bench.gaps.first[0] += uniform(&seed, -1.0, 1.0) * bench.tools.first;
        bench.gaps.action[0] += uniform(&seed, -1.0, 1.0) * bench.tools.action;
        sil_stages stages;
        sil_stages_run(&bench, &stages);
        double nut = sil_first_pass(stages.deepen[0], sil_nut_to_low(&bench, &stages, 0),
                                    stages.deepen_u[0], SIL_GUARD_ONE);
        sil_fit cut = truth;
        cut.nut_height[0] -= nut;
        cuts++;
        past_nut += sil_first_gap(&bench.board, &cut, 0, SIL_HOLD_3) < bench.targets.first[0].low;
        /* The saddle's cut counts on the slot as it was read and left. */
        bench.targets.first[0] = (sil_band){0.0, 0.2, 9.0};
        sil_stages_run(&bench, &stages);
        double saddle = sil_first_pass(stages.lower[0], sil_saddle_to_low(&bench, &stages, 0),
                                       stages.lower_u[0], SIL_GUARD_ONE);
        cut = truth;
        cut.saddle_height[0] -= saddle;
        past_saddle += sil_action(&bench.board, &cut, 0, 12) < bench.targets.action[0].low;
    }
    /* One in twenty, and three standard deviations of counting so many. */
    double most = 0.05 + 3.0 * sqrt(0.05 * 0.95 / cuts);
    assert_true(past_nut > 0 && past_saddle > 0);
    near(past_nut / (double)cuts, most / 2.0, most / 2.0);
    near(past_saddle / (double)cuts, most / 2.0, most / 2.0);
}

static void a_reading_on_the_edge_of_its_range_is_in_it(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    read_instrument(&bench, &truth);
    for (int i = 0; i < 6; i++) {
        bench.gaps.action[i] = i % 2 ? bench.targets.action[i].high : bench.targets.action[i].low;
        bench.gaps.first[i] = i % 2 ? bench.targets.first[i].low : bench.targets.first[i].high;
    }
    sil_stages stages;
    sil_stages_run(&bench, &stages);
    for (int i = 0; i < 6; i++) {
        assert_int_equal(stages.nut[i], SIL_LEAVE);
        assert_int_equal(stages.saddle[i], SIL_LEAVE);
    }
}

static void a_board_of_one_fret_has_heights_too(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    bench.board.strings = 1;
    bench.board.frets = bench.board.join = 1;
    double setback = 2.0;
    sil_board_lay(&bench.board, 645.0, &setback);
    truth.bend = 0.0;
    bench.relief.gap = SIL_UNKNOWN;
    bench.gaps.first_held = SIL_HOLD_OPEN;
    bench.gaps.first[0] = sil_first_gap(&bench.board, &truth, 0, SIL_HOLD_OPEN);
    bench.gaps.action[0] = sil_action(&bench.board, &truth, 0, 12);
    bench.targets.first_held = SIL_HOLD_OPEN;
    sil_stages stages;
    sil_stages_run(&bench, &stages);
    near(stages.fit[SIL_NOW].nut_height[0], truth.nut_height[0], 1e-12);
    assert_false(stages.changed[SIL_ROD]);
    assert_false(sil_known(sil_first_gap(&bench.board, &truth, 0, SIL_HOLD_2)));
}

static void every_string_of_twelve_has_its_place(void **state)
{
    (void)state;
    const double setback[SIL_STRINGS_MAX] = {[11] = 3.0};
    sil_board board = {.strings = 12, .frets = 20, .join = 14, .relief_at = 7};
    board.radius_nut = board.radius_end = INFINITY;
    sil_board_lay(&board, 640.0, setback);
    assert_int_equal(board.course[11], 11);
    near(board.fret_x[11][12], 320.0, 1e-12);
    near(board.saddle_x[11], 643.0, 1e-12);
}

/* By hand; and nobody is told to cut on what nobody knows. */
static void a_first_pass_stops_before_the_low_edge(void **state)
{
    (void)state;
    near(sil_first_pass(0.50, 0.80, 0.10, SIL_GUARD_ONE), 0.50, 0.0);
    near(sil_first_pass(0.50, 0.60, 0.10, SIL_GUARD_ONE), 0.432, 1e-12);
    near(sil_first_pass(0.50, 0.10, 0.10, SIL_GUARD_ONE), 0.0, 0.0);
    assert_false(sil_known(sil_first_pass(SIL_UNKNOWN, 0.60, 0.10, SIL_GUARD_ONE)));
    assert_false(sil_known(sil_first_pass(0.50, SIL_UNKNOWN, 0.10, SIL_GUARD_ONE)));
    assert_false(sil_known(sil_first_pass(0.50, 0.60, SIL_UNKNOWN, SIL_GUARD_ONE)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_string_of_twelve_has_its_place),
        cmocka_unit_test(a_first_pass_stops_before_the_low_edge),
        cmocka_unit_test(an_even_bend_is_an_arc_of_a_circle),
        cmocka_unit_test(the_same_neck_comes_out_of_every_way_to_read_relief),
        cmocka_unit_test(a_long_edge_reads_half_as_much_again),
        cmocka_unit_test(heights_come_back_from_every_reading_form),
        cmocka_unit_test(a_capo_takes_the_nut_out_of_the_action),
        cmocka_unit_test(it_matters_which_crown_the_string_lies_on),
        cmocka_unit_test(nought_is_at_or_under_and_gives_no_figure),
        cmocka_unit_test(a_rod_moves_the_action_two_and_a_half_times),
        cmocka_unit_test(levelling_takes_every_crown_to_the_deepest_dent),
        cmocka_unit_test(the_predicted_instrument_reads_as_aimed),
        cmocka_unit_test(uncertainty_is_rectangular),
        cmocka_unit_test(a_first_pass_oversteps_at_most_once_in_twenty),
        cmocka_unit_test(a_reading_on_the_edge_of_its_range_is_in_it),
        cmocka_unit_test(a_board_of_one_fret_has_heights_too),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
