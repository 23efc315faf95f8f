/* SPDX-License-Identifier: MIT */
/* What the tests of the lowest setup share. */
#ifndef SILLET_TESTS_LOWEST_H
#define SILLET_TESTS_LOWEST_H

#include <sillet/sillet.h>
#include <stdlib.h>

#include "instrument.h"

static const sil_pluck pluck = {.at = 110.0, .tension = {72.0, 68.0, 74.0, 76.0, 80.0, 82.0}};

static inline sil_lowest_wish wish_for(double force, double most_relief)
{
    sil_lowest_wish wish = {.most_relief = most_relief, .least_first = 0.04};
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        wish.force[i] = force * (1.0 + 0.15 * i);
    }
    return wish;
}

/* sil_lowest_find in room of its own. */
static inline sil_status find_lowest(const sil_board *board, const sil_crowns *crowns,
                                     const sil_pluck *plucked, const sil_lowest_wish *wish,
                                     sil_lowest *lowest)
{
    void *room = malloc(sil_lowest_room(board->strings, board->frets));
    assert_non_null(room);
    int status = sil_lowest_find(board, crowns, plucked, wish, room, lowest);
    free(room);
    return status;
}

static inline double mean_action(const sil_board *board, const sil_fit *fit)
{
    double sum = 0.0;
    for (int i = 0; i < board->strings; i++) {
        sum += sil_action(board, fit, i, 12);
    }
    return sum / board->strings;
}

#endif
