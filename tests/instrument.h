/* SPDX-License-Identifier: MIT */
/* Instruments for tests: a true one, and the readings a tool takes of it. Figures are invented. */
#ifndef SILLET_TESTS_INSTRUMENT_H
#define SILLET_TESTS_INSTRUMENT_H

#include <sillet/sillet.h>

#include "near.h"

/* The courses of strings that stand alone. */
static const int each_a_course[SIL_STRINGS_MAX] = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11};

/* Puts every string at its aims, for the bend and crowns it has. */
static inline void set_to_aims(sil_bench *bench, sil_fit *truth)
{
    for (int i = 0; i < bench->board.strings; i++) {
        bench->gaps.first[i] = bench->targets.first[i].aim;
        bench->gaps.action[i] = bench->targets.action[i].aim;
        bench->gaps.first_open[i] = SIL_UNKNOWN;
    }
    sil_fit_read(&bench->board, &bench->gaps, truth);
}

/* Lays the board of the instrument out again, its radius or places changed. */
static inline void lay_again(sil_board *board)
{
    double setback[SIL_STRINGS_MAX];
    for (int i = 0; i < board->strings; i++) {
        setback[i] = board->saddle_x[i] - board->scale[i];
    }
    sil_board_lay(board, board->scale[0], setback);
}

/* A six-string of 645 mm, board of 305 mm radius, crowns sound, every height at its
 * aim. */
static inline void make_instrument(sil_bench *bench, sil_fit *truth)
{
    *bench = (sil_bench){.rod_works = true,
                         .rod_ratio = 1.0,
                         .rod_spread = 0.25,
                         .wear_limit = 0.08,
                         .shim_step = 0.1,
                         .most_shim = 0.8,
                         .crown = 1.1,
                         .least_crown = 0.6,
                         .tools = {.action = 0.1, .first = 0.02, .relief = 0.02, .caliper = 0.05}};
    sil_board *board = &bench->board;
    *board = (sil_board){.strings = 6, .frets = 20, .join = 14, .relief_at = 7};
    board->radius_nut = board->radius_end = 305.0;
    double setback[SIL_STRINGS_MAX];
    for (int i = 0; i < 6; i++) {
        board->nut_z[i] = 18.0 - 7.2 * i;
        setback[i] = 2.0 + 0.5 * i;
        bench->targets.action[i] = (sil_band){1.5 + 0.1 * i, 1.75 + 0.1 * i, 2.0 + 0.1 * i};
        bench->targets.first[i] = (sil_band){0.03, 0.06, 0.12};
    }
    sil_saddle_centres(&(sil_courses){6, each_a_course, 0.0}, 54.0, board->saddle_z);
    sil_board_lay(board, 645.0, setback);
    bench->targets.relief = (sil_band){0.10, 0.15, 0.25};
    bench->targets.first_held = SIL_HOLD_3;
    *truth = (sil_fit){.bend = sil_bend(board, 0.18)};
    bench->gaps.action_at = 12;
    bench->gaps.first_held = SIL_HOLD_3;
    bench->relief = (sil_relief_reading){.over = 7, .low = 1, .high = 14, .string = -1};
    set_to_aims(bench, truth);
}

/* Reads an instrument without error, in the forms the bench asks for. */
static inline void read_instrument(sil_bench *bench, const sil_fit *truth)
{
    const sil_board *board = &bench->board;
    const sil_relief_reading *r = &bench->relief;
    int string = r->straightedge ? -1 : r->string;
    double low = sil_crown_height(board, truth, string, r->low);
    double high = sil_crown_height(board, truth, string, r->high);
    double share = (board->spine_x[r->over] - board->spine_x[r->low]) /
                   (board->spine_x[r->high] - board->spine_x[r->low]);
    bench->relief.gap =
        low + (high - low) * share - sil_crown_height(board, truth, string, r->over);
    bench->crowns = truth->crowns;
    for (int i = 0; i < board->strings; i++) {
        bench->gaps.first[i] = sil_first_gap(board, truth, i, bench->gaps.first_held);
        bench->gaps.action[i] = sil_action(board, truth, i, bench->gaps.action_at);
    }
}

#endif
