/* SPDX-License-Identifier: MIT */
/* The height of a new nut at each string, from its targets alone. See docs/arithmetic.md, "A new
 * nut". */
#include <sillet/core/nut.h>

#include "height.h"

int core_far_fret(const sil_targets *targets)
{
    return targets->first_held == SIL_HOLD_OPEN ? 12 : (int)targets->first_held;
}

double core_dent_left(const sil_bench *bench, const sil_fit *fit, int string)
{
    bool made = bench->fresh.nut || bench->fresh.nut_made;
    return made ? fmax(0.0, -fit->crowns.off[string][1]) : 0.0;
}

double sil_slot_gap(const sil_bench *bench, const sil_fit *fit, int string)
{
    return sil_first_gap(&bench->board, fit, string, bench->targets.first_held) -
           core_dent_left(bench, fit, string);
}

/* The string runs straight over crown 1, `aim` above it, and over crown h, on it or at the target
 * action above it. Carried on to the nut, anything that changes along it counts by that line. */
static double at_nut(double share, double first, double far)
{
    return (first - share * far) / (1.0 - share);
}

double sil_new_slot_over(const sil_bench *bench, const sil_fit *fit, int string)
{
    const sil_board *board = &bench->board;
    const sil_targets *targets = &bench->targets;
    int h = core_far_fret(targets);
    if (bench->fresh.copied || h > SIL_FRETS_MAX || (h != 12 && h > board->frets)) {
        return SIL_UNKNOWN;
    }
    double share = board->fret_x[string][1] / board->fret_x[string][h];
    double far = targets->first_held == SIL_HOLD_OPEN ? targets->action[string].aim : 0.0;
    const double *drop = board->drop[string], *off = fit->crowns.off[string];
    double first = off[1] + core_dent_left(bench, fit, string);
    double sag[3];
    const int at[] = {0, 1, h};
    for (int k = 0; k < 3; k++) {
        sag[k] = sil_sag(board, fit->bend, sil_axis_x(board, string, at[k]));
    }
    return at_nut(share, targets->first[string].aim, far) + at_nut(share, first, off[h]) + drop[0] -
           at_nut(share, drop[1], drop[h]) + sag[0] - at_nut(share, sag[1], sag[2]);
}

/* How far the line of the fret tops is below the chord under a string's nut. */
static double tops_below(const sil_board *board, const sil_fit *fit, int i)
{
    return sil_sag(board, fit->bend, board->nut_x[i]) + board->drop[i][0];
}

double core_new_nut_height(const sil_bench *bench, const sil_fit *fit, double level_depth,
                           int string)
{
    const sil_board *board = &bench->board;
    double below = tops_below(board, fit, string);
    if (!bench->fresh.copied) {
        return sil_new_slot_over(bench, fit, string) - below;
    }
    return bench->fresh.copy_over[string] - (bench->crown - level_depth) + board->drop[string][0] -
           below;
}
