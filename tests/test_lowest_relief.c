/* SPDX-License-Identifier: MIT */
/* The lowest set-up over all reliefs: no other relief allows a lower one. */
#include "lowest.h"

/* The least mean at one relief alone: the bend is put into the crowns, and none is left to find. */
static double mean_at(const sil_board *board, const sil_crowns *crowns, const sil_pluck *plucked,
                      sil_lowest_wish wish, double relief)
{
    sil_crowns bent = {0};
    sil_fit straight = {.crowns = *crowns};
    sil_fit bowed = {.bend = sil_bend(board, relief), .crowns = *crowns};
    sil_lowest lowest;
    for (int i = 0; i < board->strings; i++) {
        for (int n = 1; n <= board->frets; n++) {
            bent.off[i][n] = crowns->off[i][n] + sil_crown_height(board, &bowed, i, n) -
                             sil_crown_height(board, &straight, i, n);
        }
    }
    wish.most_relief = 0.0;
    assert_int_equal(find_lowest(board, &bent, plucked, &wish, &lowest), 0);
    return mean_action(board, &lowest.fit);
}

/* Plucked in its middle a string hangs on crown 12, and where that is dented between two others. */
static void no_other_relief_is_lower(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    const sil_board *board = &bench.board;
    for (int form = 0; form < 12; form++) {
        sil_crowns crowns = {0};
        sil_lowest lowest;
        sil_lowest_wish wish = wish_for(0.8, 0.5);
        sil_pluck plucked = pluck;
        plucked.at = form % 2 ? 322.5 : pluck.at;
        for (int i = 0; i < 6; i++) {
            crowns.off[i][12] = -0.02 * (form / 2);
        }
        assert_int_equal(find_lowest(board, &crowns, &plucked, &wish, &lowest), 0);
        double least = mean_action(board, &lowest.fit);
        near(mean_at(board, &crowns, &plucked, wish, lowest.relief), least, 1e-9);
        for (double off = 0.0003; off < 0.1; off *= 3.0) {
            double more = mean_at(board, &crowns, &plucked, wish, lowest.relief + off);
            double less = mean_at(board, &crowns, &plucked, wish, lowest.relief - off);
            assert_true(more >= least - 1e-9);
            assert_true(less >= least - 1e-9 || lowest.relief - off < 0.0);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_other_relief_is_lower),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
