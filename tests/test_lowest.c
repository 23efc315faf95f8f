/* SPDX-License-Identifier: MIT */
/* The lowest clean set-up: every note rings clean at the pluck, and nothing can go lower. On a
 * straight neck it is the best of all corners of the linear programme, tried one by one. */
#include "lowest.h"

/* By how much the string that comes worst off misses what is asked of it, in mm of height. */
static double short_of(const sil_board *board, const sil_fit *fit, const sil_lowest_wish *wish,
                       int string)
{
    sil_clearance clean;
    sil_clearance_find(board, fit, &pluck, &clean);
    double worst = wish->least_first - sil_first_gap(board, fit, string, SIL_HOLD_3);
    for (int stop = 0; stop < board->frets; stop++) {
        int fret = clean.at_fret[string][stop];
        double from = stop ? board->fret_x[string][stop] : 0.0;
        double length = board->saddle_x[string] - from;
        double depth = sil_pluck_depth(pluck.tension[string], length, pluck.at) *
                       sil_envelope(length, pluck.at, board->fret_x[string][fret] - from);
        worst = fmax(worst, (wish->force[string] - clean.force[string][stop]) * depth);
    }
    return worst;
}

/* Lowered by a ten-thousandth at 12 in whatever mix of nut and saddle, a string misses something.
 */
static void cannot_go_lower(const sil_board *board, const sil_lowest *lowest,
                            const sil_lowest_wish *wish, int string)
{
    double t = sil_leverage(board, string);
    for (int k = 0; k <= 200; k++) {
        double nut = 0.02 * (k - 100) / 100.0; /* the nut up or down, the rest at the saddle */
        sil_fit fit = lowest->fit;
        fit.nut_height[string] += nut;
        fit.saddle_height[string] -= (1e-4 + nut * (1.0 - t)) / t;
        near(sil_action(board, &fit, string, 12),
             sil_action(board, &lowest->fit, string, 12) - 1e-4, 1e-9);
        assert_true(short_of(board, &fit, wish, string) > 1e-9);
    }
}

static void is_lowest(const sil_board *board, const sil_crowns *crowns, const sil_lowest_wish *wish)
{
    sil_lowest lowest;
    assert_int_equal(find_lowest(board, crowns, &pluck, wish, &lowest), 0);
    assert_true(lowest.relief >= -1e-12 && lowest.relief <= wish->most_relief + 1e-12);
    near(sil_relief(board, lowest.fit.bend), lowest.relief, 1e-12);
    for (int i = 0; i < board->strings; i++) {
        assert_true(short_of(board, &lowest.fit, wish, i) <= 1e-9);
        cannot_go_lower(board, &lowest, wish, i);
        /* Of equal actions the lowest nut: lower still, with the saddle to match, misses too. */
        sil_fit fit = lowest.fit;
        double t = sil_leverage(board, i);
        fit.nut_height[i] -= 1e-4;
        fit.saddle_height[i] += 1e-4 * (1.0 - t) / t;
        assert_true(short_of(board, &fit, wish, i) > 1e-9);
    }
}

static void wear(sil_crowns *crowns, uint64_t *seed)
{
    *crowns = (sil_crowns){0};
    for (int i = 0; i < 6; i++) {
        for (int n = 1; n <= 20; n++) {
            crowns->off[i][n] = uniform(seed, -0.06, 0.03);
        }
    }
}

static void notes_stand_the_pluck_and_nothing_goes_lower(void **state)
{
    (void)state;
    uint64_t seed = 11;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    sil_lowest_wish light = wish_for(0.4, 0.5), firm = wish_for(0.9, 0.5);
    is_lowest(&bench.board, NULL, &light);
    is_lowest(&bench.board, NULL, &firm);
    for (int k = 0; k < 6; k++) {
        sil_crowns crowns;
        wear(&crowns, &seed);
        is_lowest(&bench.board, &crowns, k % 2 ? &light : &firm);
    }
    bench.board.fallaway = 0.4;
    is_lowest(&bench.board, NULL, &light);
    bench.board.fallaway = -0.4; /* the tongue stands up */
    is_lowest(&bench.board, NULL, &firm);
    bench.board.frets = SIL_FRETS_MAX;
    lay_again(&bench.board);
    is_lowest(&bench.board, NULL, &firm);
    bench.board.frets = 20;
    bench.board.fallaway = 0.4;
    bench.board.radius_end = 410.0;
    lay_again(&bench.board);
    is_lowest(&bench.board, NULL, &firm);
}

static void a_harder_pluck_wants_a_higher_setup(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    double before = 0.0;
    for (double force = 0.1; force < 2.0; force += 0.1) {
        sil_lowest_wish wish = wish_for(force, 0.5);
        sil_lowest lowest;
        find_lowest(&bench.board, NULL, &pluck, &wish, &lowest);
        double mean = mean_action(&bench.board, &lowest.fit);
        assert_true(mean > before);
        before = mean;
    }
}

/* The mean is convex in the relief: held under its best, the relief goes as far as it may. */
static void relief_goes_to_its_bound(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    sil_lowest free_one, bound;
    sil_lowest_wish wish = wish_for(0.8, 0.5);
    find_lowest(&bench.board, NULL, &pluck, &wish, &free_one);
    assert_true(free_one.relief > 0.05 && free_one.relief < 0.499);
    double before = (double)INFINITY;
    for (double most = 0.0; most < free_one.relief; most += 0.02) {
        sil_lowest_wish tighter = wish_for(0.8, most);
        assert_int_equal(find_lowest(&bench.board, NULL, &pluck, &tighter, &bound), 0);
        near(bound.relief, most, 1e-9);
        double mean = mean_action(&bench.board, &bound.fit);
        assert_true(mean < before && mean > mean_action(&bench.board, &free_one.fit));
        before = mean;
        is_lowest(&bench.board, NULL, &tighter);
    }
    /* More room than it wants changes nothing. */
    sil_lowest_wish wider = wish_for(0.8, 2.0);
    find_lowest(&bench.board, NULL, &pluck, &wider, &bound);
    near(bound.relief, free_one.relief, 1e-9);
}

/* --- a straight neck: every corner of one string's programme
 * ------------------------------------*/

typedef struct edge_line {
    double nut, saddle, least; /* nut H^n + saddle H^s >= least */
} edge_line;

/* What is asked of one string with no relief, from first principles. */
static int ask(const sil_board *board, const sil_fit *flat, const sil_pluck *hand,
               const sil_lowest_wish *wish, int i, edge_line *lines)
{
    int count = 0;
    double part = board->fret_x[i][1] / board->fret_x[i][3];
    lines[count++] = (edge_line){1.0 - part, 0.0,
                                 wish->least_first + sil_crown_height(board, flat, i, 1) -
                                     part * sil_crown_height(board, flat, i, 3)};
    for (int stop = 0; stop < board->frets; stop++) {
        double from = stop ? board->fret_x[i][stop] : 0.0;
        double length = board->saddle_x[i] - from;
        double depth = sil_pluck_depth(hand->tension[i], length, hand->at) * wish->force[i];
        for (int n = stop + 1; n <= board->frets; n++) {
            double u = board->fret_x[i][n] - from, t = u / length;
            double least =
                sil_crown_height(board, flat, i, n) + depth * sil_envelope(length, hand->at, u);
            if (stop) {
                least -= (1.0 - t) * sil_crown_height(board, flat, i, stop);
            }
            lines[count++] = (edge_line){stop ? 0.0 : 1.0 - t, t, least};
        }
    }
    return count;
}

static bool all_hold(const edge_line *lines, int count, double nut, double saddle)
{
    for (int k = 0; k < count; k++) {
        if (lines[k].nut * nut + lines[k].saddle * saddle < lines[k].least - 1e-11) {
            return false;
        }
    }
    return true;
}

/* The lowest action of all corners, and of those the lowest nut. */
static void try_corners(const edge_line *lines, int count, double t, double *nut, double *saddle)
{
    double best = (double)INFINITY;
    *nut = *saddle = (double)INFINITY;
    for (int a = 0; a < count; a++) {
        for (int b = 0; b < a; b++) {
            double det = lines[a].nut * lines[b].saddle - lines[b].nut * lines[a].saddle;
            double h_n =
                (lines[a].least * lines[b].saddle - lines[b].least * lines[a].saddle) / det;
            double h_s = (lines[a].nut * lines[b].least - lines[b].nut * lines[a].least) / det;
            double action = (1.0 - t) * h_n + t * h_s;
            if (fabs(det) < 1e-9 || action > best + 1e-12 ||
                (action > best - 1e-12 && h_n > *nut) || !all_hold(lines, count, h_n, h_s)) {
                continue;
            }
            best = action;
            *nut = h_n;
            *saddle = h_s;
        }
    }
}

/* The mean action of the best corners at a bend; where `lowest` is given, its heights are they. */
static double mean_of_corners(const sil_board *board, const sil_fit *flat, const sil_pluck *hand,
                              const sil_lowest_wish *wish, const sil_lowest *lowest)
{
    enum { LINES_MAX = 1 + SIL_FRETS_MAX * (SIL_FRETS_MAX + 1) / 2 };
    static edge_line lines[LINES_MAX];
    sil_fit best = *flat;
    for (int i = 0; i < board->strings; i++) {
        int count = ask(board, flat, hand, wish, i, lines);
        try_corners(lines, count, sil_leverage(board, i), &best.nut_height[i],
                    &best.saddle_height[i]);
        if (lowest) {
            near(lowest->fit.nut_height[i], best.nut_height[i], 1e-9);
            near(lowest->fit.saddle_height[i], best.saddle_height[i], 1e-9);
        }
    }
    return mean_action(board, &best);
}

/* And no relief near by gives a lower mean, which is convex in it. */
static void is_best_corner(const sil_board *board, const sil_crowns *crowns, const sil_pluck *hand,
                           const sil_lowest_wish *wish)
{
    sil_lowest lowest;
    assert_int_equal(find_lowest(board, crowns, hand, wish, &lowest), 0);
    assert_true(lowest.relief >= 0.0 && lowest.relief <= wish->most_relief);
    sil_fit flat = {.crowns = lowest.fit.crowns, .bend = lowest.fit.bend};
    double mean = mean_of_corners(board, &flat, hand, wish, &lowest);
    for (int side = -1; side <= 1; side += 2) {
        double relief = lowest.relief + side * 0.004;
        if (relief >= 0.0 && relief <= wish->most_relief) {
            flat.bend = sil_bend(board, relief);
            assert_true(mean_of_corners(board, &flat, hand, wish, NULL) >= mean - 1e-9);
        }
    }
}

static void on_a_straight_neck_it_is_the_best_corner(void **state)
{
    (void)state;
    uint64_t seed = 12;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    for (int k = 0; k < 8; k++) {
        sil_crowns crowns;
        wear(&crowns, &seed);
        bench.board.frets = k % 2 ? 20 : 9;
        bench.board.join = k % 2 ? 14 : 9;
        sil_pluck hand = pluck;
        hand.at = uniform(&seed, 60.0, 320.0);
        sil_lowest_wish wish = wish_for(uniform(&seed, 0.05, 1.0), 0.0);
        is_best_corner(&bench.board, &crowns, &hand, &wish);
    }
}

/* Plucked at its middle, the open string swings deepest over fret 12, where nut and saddle cost the
 * same: of all that are as low, the lowest nut. */
static void at_its_middle_nut_and_saddle_cost_the_same(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    for (int k = 0; k < 8; k++) {
        sil_pluck hand = pluck;
        hand.at = 322.0 + 0.25 * k;
        sil_lowest_wish wish = wish_for(1.9, k % 2 ? 0.5 : 0.0);
        is_best_corner(&bench.board, NULL, &hand, &wish);
    }
}

/* All but untouched, over three level crowns: the saddle comes down to the crowns, and the nut is
 * as low as the first gap lets it be. */
static void a_string_hardly_plucked_lies_on_the_frets(void **state)
{
    (void)state;
    sil_board board = {.strings = 1, .frets = 3, .join = 3, .relief_at = 2};
    double setback[SIL_STRINGS_MAX] = {2.0};
    board.radius_nut = board.radius_end = (double)INFINITY;
    sil_board_lay(&board, 645.0, setback);
    sil_lowest_wish wish = wish_for(1e-9, 0.0);
    sil_lowest lowest;
    assert_int_equal(find_lowest(&board, NULL, &pluck, &wish, &lowest), 0);
    double nut = 0.04 / (1.0 - board.fret_x[0][1] / board.fret_x[0][3]);
    near(lowest.fit.nut_height[0], nut, 1e-9);
    near(lowest.fit.saddle_height[0], 0.0, 1e-6);
    near(sil_action(&board, &lowest.fit, 0, 12), nut * (1.0 - sil_leverage(&board, 0)), 1e-6);
}

static void without_tension_force_or_a_third_fret_nothing_is_told(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    sil_lowest lowest;
    sil_lowest_wish wish = wish_for(0.6, 0.5);
    sil_pluck unknown = pluck;
    unknown.tension[4] = SIL_UNKNOWN;
    assert_int_equal(find_lowest(&bench.board, NULL, &unknown, &wish, &lowest), SIL_NOT_KNOWN);
    assert_false(sil_known(lowest.relief));
    sil_lowest_wish no_force = wish;
    no_force.force[0] = SIL_UNKNOWN;
    assert_int_equal(find_lowest(&bench.board, NULL, &pluck, &no_force, &lowest), SIL_NOT_KNOWN);
    assert_false(sil_known(lowest.relief));
    bench.board.frets = 2;
    bench.board.join = 2;
    assert_int_equal(find_lowest(&bench.board, NULL, &pluck, &wish, &lowest), SIL_NOT_KNOWN);
    assert_false(sil_known(lowest.relief));
}

/* A join so near the nut that nothing between can bend: no relief, and still a lowest setup. */
static void a_neck_that_cannot_bend_has_no_relief(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    bench.board.join = 2;
    sil_lowest lowest;
    sil_lowest_wish wish = wish_for(0.6, 0.5);
    assert_int_equal(find_lowest(&bench.board, NULL, &pluck, &wish, &lowest), 0);
    assert_true(lowest.relief == 0.0 && lowest.fit.bend == 0.0);
    is_lowest(&bench.board, NULL, &wish);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(notes_stand_the_pluck_and_nothing_goes_lower),
        cmocka_unit_test(a_harder_pluck_wants_a_higher_setup),
        cmocka_unit_test(relief_goes_to_its_bound),
        cmocka_unit_test(on_a_straight_neck_it_is_the_best_corner),
        cmocka_unit_test(at_its_middle_nut_and_saddle_cost_the_same),
        cmocka_unit_test(a_string_hardly_plucked_lies_on_the_frets),
        cmocka_unit_test(without_tension_force_or_a_third_fret_nothing_is_told),
        cmocka_unit_test(a_neck_that_cannot_bend_has_no_relief),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
