/* SPDX-License-Identifier: MIT */
/* Nut and saddle made from a blank: the feelers and heights need no reading of the old part, and the
 * new one, read back, is at its targets. */
#include "instrument.h"

/* The nut worked out by hand in docs/arithmetic.md, "A new nut": a straight six-string of 645 mm,
 * 305 mm radius, relief 0.15 over the 7th fret, string 1, held at the 3rd. The figures there are
 * rounded to four places. */
static void the_hand_computation_in_the_docs(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    bench.fresh.nut = true;
    bench.relief = (sil_relief_reading){
        .gap = 0.15, .over = 7, .low = 1, .high = 14, .string = -1, .straightedge = true};
    sil_stages stages;
    sil_nut_work nut;
    const sil_nut_given make = {.seat_to_board = 6.5, .head_angle_deg = 14.0, .fall_share = 0.5};
    bench.leave_slot = 0.05;
    for (int i = 0; i < 6; i++) {
        bench.gaps.first[i] = bench.gaps.first_open[i] = bench.gaps.action[i] = SIL_UNKNOWN;
    }
    sil_stages_run(&bench, &stages);
    sil_nut_make(&bench, &stages, &make, &nut);
    near(nut.stack[0], 1.1 + 0.0927 - 0.0218 + 0.0012, 1e-4);
    near(nut.stack[0], 1.1721, 1e-4);
    near(nut.floor[0], 7.1405, 1e-4);
    assert_int_equal(nut.remedy, SIL_NUT_REPLACE);
    assert_false(sil_known(nut.first_pass[0]));
    near(nut.leave[0], 0.05, 0.0);
    near(nut.fall_angle_deg, 7.0, 1e-12);
    /* A worn spot of 0.04 in the 3rd fret: the string lies lower there, so the slot is higher. */
    bench.crowns.off[0][3] = -0.04;
    sil_stages_run(&bench, &stages);
    sil_nut_make(&bench, &stages, &make, &nut);
    near(nut.stack[0], 1.1721 + 0.0218, 1e-4);
    /* One in the 1st fret does not lower the slot, whatever is proud there does raise it. */
    bench.crowns.off[0][3] = 0.0;
    bench.crowns.off[0][1] = -0.04;
    sil_stages_run(&bench, &stages);
    sil_nut_make(&bench, &stages, &make, &nut);
    near(nut.stack[0], 1.1721, 1e-4);
    near(nut.floor[0], 7.1405, 1e-4);
    bench.crowns.off[0][1] = 0.03;
    sil_stages_run(&bench, &stages);
    sil_nut_make(&bench, &stages, &make, &nut);
    near(nut.stack[0], 1.1721 + 0.03 * 1.54503, 1e-4);
}

static sil_hold any_hold(uint64_t *seed)
{
    const sil_hold holds[] = {SIL_HOLD_OPEN, SIL_HOLD_2, SIL_HOLD_3};
    return holds[(int)uniform(seed, 0.0, 2.999)];
}

/* A random board: its radius compound, its scales fanned, its neck bowed either way, its crowns worn
 * and proud within the limit. */
static void make_random(uint64_t *seed, sil_bench *bench, sil_fit *truth)
{
    make_instrument(bench, truth);
    sil_board *board = &bench->board;
    double setback[SIL_STRINGS_MAX], scale = uniform(seed, 350.0, 860.0);
    board->frets = 14 + (int)uniform(seed, 0.0, 9.0);
    board->join = 10 + (int)uniform(seed, 0.0, 4.0);
    board->radius_nut = uniform(seed, 180.0, 500.0);
    board->radius_end = uniform(seed, 180.0, 600.0);
    board->fallaway = uniform(seed, 0.0, 0.5);
    for (int i = 0; i < 6; i++) {
        setback[i] = uniform(seed, 0.0, 5.0);
        board->course[i] = i;
        bench->targets.action[i].aim = uniform(seed, 1.2, 2.8);
        bench->targets.first[i].aim = uniform(seed, 0.03, 0.5);
        for (int n = 1; n <= 12; n++) {
            truth->crowns.off[i][n] = uniform(seed, -0.07, 0.07);
        }
    }
    sil_board_fan(board, &(sil_fan){scale, scale * uniform(seed, 1.0, 1.1), 5}, setback);
    bench->targets.first_held = bench->gaps.first_held = any_hold(seed);
    bench->crown = uniform(seed, 0.8, 1.4);
    truth->bend = sil_bend(board, uniform(seed, -0.1, 0.5));
    bench->targets.relief = (sil_band){-9.0, 0.1, 9.0};
    bench->relief.high = board->join;
    bench->relief.straightedge = true;
    set_to_aims(bench, truth);
}

static sil_nut_given any_nut(void)
{
    return (sil_nut_given){.seat_to_board = 6.0, .head_angle_deg = 14.0, .fall_share = 0.5};
}

/* The route there was: an old nut read, its slots filed to their target; and the new one read back. */
static void a_new_nut_needs_no_old_one(void **state)
{
    (void)state;
    uint64_t seed = 7;
    double most = 0.0;
    for (int k = 0; k < 1000; k++) {
        sil_bench bench;
        sil_fit truth;
        sil_stages stages;
        sil_nut_work filed, made;
        const sil_nut_given make = any_nut();
        make_random(&seed, &bench, &truth);
        sil_fit old = truth;
        for (int i = 0; i < 6; i++) {
            old.nut_height[i] += uniform(&seed, 0.3, 0.6);
        }
        read_instrument(&bench, &old);
        sil_stages_run(&bench, &stages);
        sil_nut_cut(&bench, &stages, &make, &filed);
        for (int i = 0; i < 6; i++) {
            bench.gaps.first[i] = bench.gaps.action[i] = SIL_UNKNOWN;
        }
        bench.fresh.nut = true;
        sil_stages_run(&bench, &stages);
        sil_nut_make(&bench, &stages, &make, &made);
        for (int i = 0; i < 6; i++) {
            const sil_board *board = &bench.board;
            double surface = -sil_sag(board, truth.bend, board->nut_x[i]) - bench.crown;
            sil_fit back = truth;
            back.nut_height[i] = surface - board->drop[i][0] + made.stack[i];
            double dent = fmax(0.0, -back.crowns.off[i][1]); /* not cut down to */
            double t = sil_leverage(board, i);               /* the action stays where it is */
            back.saddle_height[i] -= (back.nut_height[i] - truth.nut_height[i]) * (1.0 - t) / t;
            near(sil_first_gap(board, &back, i, bench.targets.first_held),
                 bench.targets.first[i].aim + dent, 1e-9);
            near(sil_slot_gap(&bench, &back, i), bench.targets.first[i].aim, 1e-9);
            near(made.floor[i], 6.0 + back.nut_height[i] - surface, 1e-9);
            near(stages.fit[SIL_NUT].nut_height[i], back.nut_height[i], 1e-9);
            if (filed.verdict[i] == SIL_TAKE && dent == 0.0) {
                near(made.stack[i], filed.stack[i], 1e-9);
                near(made.floor[i], filed.floor[i], 1e-9);
                most = fmax(most, fabs(made.stack[i] - filed.stack[i]));
            }
        }
    }
    assert_true(most > 0.0); /* some were filed */
}

/* Relief that was not read: its target stands, and the feelers feel it by K x_1 x_h. */
static void relief_moves_the_feelers_little(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    sil_stages stages;
    sil_nut_work nut;
    const sil_nut_given make = any_nut();
    make_instrument(&bench, &truth);
    bench.fresh = (sil_fresh){.nut = true, .relief_stands = true};
    bench.relief.gap = 0.15;
    bench.relief.straightedge = true;
    sil_stages_run(&bench, &stages);
    sil_nut_make(&bench, &stages, &make, &nut);
    const double *x = bench.board.fret_x[0];
    double per = x[1] * x[3] / ((x[7] - x[1]) * (x[14] - x[7]));
    near(stages.relief_u, 0.1 / sqrt(3.0), 1e-12);
    near(nut.stack_u[0], per * 0.1 / sqrt(3.0), 1e-9);
    near(per * 0.1, 0.015, 0.001); /* "some 0.015 mm for 0.1" */
}

/* A first pass never brings a slot under its range, whatever the tools. */
static void the_first_pass_leaves_more_where_less_is_known(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    sil_stages stages;
    sil_nut_work nut;
    make_instrument(&bench, &truth);
    bench.fresh.nut = true;
    bench.leave_slot = 0.05;
    read_instrument(&bench, &truth);
    sil_stages_run(&bench, &stages);
    sil_nut_make(&bench, &stages, &(sil_nut_given){.caliper = 0.2}, &nut);
    const double *x = bench.board.fret_x[0];
    double spare = 0.03 / (1.0 - x[1] / x[3]);
    near(nut.leave[0], 1.68 * nut.stack_u[0] - spare, 1e-12);
    assert_true(nut.leave[0] > 0.05);
    bench.crown = SIL_UNKNOWN;
    sil_stages_run(&bench, &stages);
    sil_nut_make(&bench, &stages, &(sil_nut_given){.fall_share = 0.5}, &nut);
    near(nut.leave[0], 0.05, 0.0);
    assert_false(sil_known(nut.stack[0]));
    sil_nut_await(bench.board.strings, &nut);
    near(nut.leave[0], 0.0, 0.0); /* a slot that waits is not cut at all */
}

/* A nut that is copied has its old floors; its strings are where those put them. */
static void a_copied_nut_keeps_its_floors(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    sil_stages stages;
    sil_nut_work nut;
    sil_nut_given make = any_nut();
    make_instrument(&bench, &truth);
    read_instrument(&bench, &truth);
    bench.fresh = (sil_fresh){.nut = true, .copied = true};
    for (int i = 0; i < 6; i++) {
        make.copy[i] = 7.3;
        bench.fresh.copy_over[i] = 1.3;
    }
    sil_stages_run(&bench, &stages);
    sil_nut_make(&bench, &stages, &make, &nut);
    const sil_board *board = &bench.board;
    double end = truth.bend * board->spine_x[1] * board->spine_x[14];
    near(nut.floor[2], 7.3, 1e-12);
    near(nut.stack[2], 1.3 + board->drop[2][0], 1e-12);
    near(stages.fit[SIL_NUT].nut_height[2], 1.3 - 1.1 + end, 1e-9);
}

static sil_saddle_given any_saddle(void)
{
    sil_saddle_given make = {.working = SIL_WORKING_BASE,
                             .length = 72.0,
                             .slot_depth = 5.0,
                             .pickup = 0.0,
                             .exit_height = 0.0,
                             .least_protrusion = SIL_UNKNOWN,
                             .least_break_deg = SIL_UNKNOWN,
                             .present_treble = SIL_UNKNOWN,
                             .present_bass = SIL_UNKNOWN,
                             .bridge_top_treble = SIL_UNKNOWN,
                             .bridge_top_bass = SIL_UNKNOWN};
    for (int i = 0; i < 6; i++) {
        make.stands_out[i] = SIL_UNKNOWN;
    }
    return make;
}

/* What a straightedge on the crowns shows over a bridge whose top is so far under the chord. */
static double bridge_gap(const sil_bench *bench, const sil_fit *truth, int i, double top)
{
    return sil_edge_at_saddle(&bench->board, truth->bend, sil_saddle_axis_x(&bench->board, i)) -
           top;
}

/* From the bridge's top alone: stood on the bottom of its slot, the new saddle gives the target
 * action, with a nut that is read, or new, or not known and taken to be at its target. */
static void a_new_saddle_by_the_bridges_top(void **state)
{
    (void)state;
    uint64_t seed = 3;
    for (int k = 0; k < 300; k++) {
        sil_bench bench;
        sil_fit truth;
        sil_stages stages;
        sil_saddle_work work;
        sil_saddle_given make = any_saddle();
        make_random(&seed, &bench, &truth);
        read_instrument(&bench, &truth);
        double top = uniform(&seed, 2.0, 8.0);
        make.bridge_top_treble = bridge_gap(&bench, &truth, 0, top);
        make.bridge_top_bass = bridge_gap(&bench, &truth, 5, top);
        bench.fresh.saddle = true;
        bench.leave_saddle = 0.15;
        bench.fresh.nut = k % 3 == 1;
        for (int i = 0; i < 6; i++) {
            bench.gaps.action[i] = SIL_UNKNOWN;
            bench.gaps.first[i] = k % 3 == 0 && bench.gaps.first_held != SIL_HOLD_OPEN
                                      ? bench.gaps.first[i]
                                      : SIL_UNKNOWN;
        }
        sil_stages_run(&bench, &stages);
        sil_saddle_make(&bench, &make, &stages, &work);
        assert_int_equal(work.remedy, SIL_SADDLE_REPLACE);
        for (int i = 0; i < 6; i++) {
            sil_fit back = truth;
            back.saddle_height[i] = top - 5.0 + work.height[i];
            if (bench.fresh.nut) { /* which is not cut down to a worn spot */
                int h =
                    bench.targets.first_held == SIL_HOLD_OPEN ? 12 : (int)bench.targets.first_held;
                double share = bench.board.fret_x[i][1] / bench.board.fret_x[i][h];
                back.nut_height[i] += fmax(0.0, -back.crowns.off[i][1]) / (1.0 - share);
            }
            near(sil_action(&bench.board, &back, i, 12), bench.targets.action[i].aim, 1e-9);
            near(work.protrusion[i], work.height[i] - 5.0, 1e-12);
            assert_true(work.leave[i] >= 0.15);
        }
    }
}

/* From the old one: its height less what must come off, or with what it lacks. */
static void a_new_saddle_by_the_old_one(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    sil_stages stages;
    sil_saddle_work work;
    sil_saddle_given make = any_saddle();
    make_instrument(&bench, &truth);
    for (int i = 0; i < 6; i++) {
        truth.saddle_height[i] += i < 3 ? 0.7 : -0.4;
    }
    read_instrument(&bench, &truth);
    make.present_treble = 9.0;
    make.present_bass = 10.0;
    bench.fresh.saddle = true;
    bench.leave_saddle = 0.15;
    sil_stages_run(&bench, &stages);
    sil_saddle_make(&bench, &make, &stages, &work);
    near(work.height[0], 9.0 - 0.7, 1e-9);
    near(work.height[5], 10.0 + 0.4, 1e-9);
    make.present_treble = SIL_UNKNOWN;
    sil_stages_run(&bench, &stages);
    sil_saddle_make(&bench, &make, &stages, &work);
    assert_int_equal(work.remedy, SIL_SADDLE_WAIT);
}

static void a_copied_saddle_keeps_its_heights(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    sil_stages stages;
    sil_saddle_work work;
    sil_saddle_given make = any_saddle();
    make_instrument(&bench, &truth);
    read_instrument(&bench, &truth);
    make.copied = true;
    for (int i = 0; i < 6; i++) {
        make.copy[i] = 9.0 + 0.1 * i;
        bench.gaps.action[i] = SIL_UNKNOWN;
    }
    bench.fresh.saddle = true;
    bench.leave_saddle = 0.15;
    sil_stages_run(&bench, &stages);
    sil_saddle_make(&bench, &make, &stages, &work);
    near(work.height[3], 9.3, 0.0);
    near(work.leave[3], 0.15, 0.0);
    assert_int_equal(work.remedy, SIL_SADDLE_REPLACE);
    assert_false(sil_known(stages.fit[SIL_SADDLE].saddle_height[3]));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_hand_computation_in_the_docs),
        cmocka_unit_test(a_new_nut_needs_no_old_one),
        cmocka_unit_test(relief_moves_the_feelers_little),
        cmocka_unit_test(the_first_pass_leaves_more_where_less_is_known),
        cmocka_unit_test(a_copied_nut_keeps_its_floors),
        cmocka_unit_test(a_new_saddle_by_the_bridges_top),
        cmocka_unit_test(a_new_saddle_by_the_old_one),
        cmocka_unit_test(a_copied_saddle_keeps_its_heights),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
