/* SPDX-License-Identifier: MIT */
/* The straightedge on the crowns, from which the height of the bridge's top is measured. */
#include <sillet/sillet.h>

#include "instrument.h"

/* A back-bowed neck is a crest: an edge rests on the two crowns about its own middle. By hand, the
 * neck being the parabola through crowns 1 and 14. */
static void on_a_crest_the_edge_rests_on_the_crowns_about_its_middle(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    const sil_board *board = &bench.board;
    const double *x = board->spine_x;
    double bend = -sil_bend(board, 0.2), saddle = board->saddle_x[0];
    int low = 1;
    while (x[low + 1] <= (x[1] + saddle) / 2.0) {
        low++;
    }
    assert_true(low > 1 && low < 14);
    double y_low = bend * (x[low] - x[1]) * (x[low] - x[14]);
    double y_high = bend * (x[low + 1] - x[1]) * (x[low + 1] - x[14]);
    double slope = (y_high - y_low) / (x[low + 1] - x[low]);
    near(sil_edge_at_saddle(board, bend, saddle), y_low + slope * (saddle - x[low]), 1e-12);
}

/* Where the board ends before the edge's middle, the edge is held down on the last two crowns. */
static void past_a_short_board_the_edge_lies_on_its_last_two_crowns(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    sil_board *board = &bench.board;
    const double *x = board->spine_x;
    double bend = -sil_bend(board, 0.2), saddle = board->saddle_x[0];
    board->frets = 10;
    double y9 = bend * (x[9] - x[1]) * (x[9] - x[14]);
    double y10 = bend * (x[10] - x[1]) * (x[10] - x[14]);
    double wanted = y9 + (y10 - y9) / (x[10] - x[9]) * (saddle - x[9]);
    near(sil_edge_at_saddle(board, bend, saddle), wanted, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(on_a_crest_the_edge_rests_on_the_crowns_about_its_middle),
        cmocka_unit_test(past_a_short_board_the_edge_lies_on_its_last_two_crowns),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
