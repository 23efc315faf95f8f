/* SPDX-License-Identifier: MIT */
/* The least height at which a string rings clean under the pick. See docs/arithmetic.md, "Not into its
 * own buzz". */
#include "clean.h"

#include "height.h"
#include "swing.h"

/* Over the first crowns it is the slot that decides, past them the saddle. */
enum { LAST_OF_SLOT = 4 };

double core_pluck_of(const sil_bench *bench, int string)
{
    return bench->attack[string] > 0.0 ? bench->attack[string] : SIL_UNKNOWN;
}

static sil_pluck pluck_of(const sil_bench *bench)
{
    sil_pluck pluck = {.at = bench->pluck_at};
    for (int i = 0; i < bench->board.strings; i++) {
        pluck.tension[i] = bench->tension[i];
    }
    return pluck;
}

/* The crowns of a string as if all were sound: what a proud or a worn one adds is its own matter. */
static void sound_crowns(const sil_board *board, const sil_fit *fit, int string, double *crown)
{
    for (int n = 1; n <= board->frets; n++) {
        crown[n] = sil_crown_height(board, fit, string, n) - fit->crowns.off[string][n];
    }
}

/* A note's gap over a crown at u of its length l is from + (Hs - from) u / l - crown. It must be at
 * least what the pluck makes of the envelope there, so Hs follows. */
static double for_one_note(const sil_board *board, const core_swing *swing, double force,
                           const double *crown, double from, int string, int stop)
{
    const double *x = board->fret_x[string];
    double most = -(double)INFINITY;
    for (int n = stop == 0 ? LAST_OF_SLOT + 1 : stop + 1; n <= board->frets; n++) {
        double u = x[n] - x[stop];
        double over = force * core_swing_at(swing, u) + crown[n] - from;
        most = fmax(most, from + over * swing->length / u);
    }
    return most;
}

double core_clean_saddle(const sil_bench *bench, const sil_fit *fit, int string)
{
    const sil_board *board = &bench->board;
    double force = core_pluck_of(bench, string), crown[SIL_FRETS_MAX + 1];
    double least = -(double)INFINITY, open = fit->nut_height[string];
    sil_pluck pluck = pluck_of(bench);
    if (!sil_known(force + pluck.at + pluck.tension[string] + fit->bend + open)) {
        return SIL_UNKNOWN;
    }
    sound_crowns(board, fit, string, crown);
    for (int stop = 0; stop < board->frets; stop++) {
        core_swing swing = core_swing_from(board, &pluck, string, stop);
        double from = stop == 0 ? open : crown[stop];
        least = fmax(least, for_one_note(board, &swing, force, crown, from, string, stop));
    }
    return isinf(least) ? SIL_UNKNOWN : least;
}

/* The open string passes the height of its action over fret 12, whatever its slot: the action is set
 * at the saddle. */
double core_clean_nut(const sil_bench *bench, const sil_fit *fit, double action, int string)
{
    const sil_board *board = &bench->board;
    const double *x = board->fret_x[string];
    double force = core_pluck_of(bench, string), crown[SIL_FRETS_MAX + 1];
    double least = -(double)INFINITY;
    sil_pluck pluck = pluck_of(bench);
    if (!sil_known(force + pluck.at + pluck.tension[string] + fit->bend + action)) {
        return SIL_UNKNOWN;
    }
    sound_crowns(board, fit, string, crown);
    double over_12 = action + sil_crown_height(board, fit, string, 12);
    core_swing swing = core_swing_from(board, &pluck, string, 0);
    for (int n = 1; n <= LAST_OF_SLOT && n <= board->frets; n++) {
        double t = x[n] / x[12];
        double needs = force * core_swing_at(&swing, x[n]) + crown[n];
        least = fmax(least, (needs - over_12 * t) / (1.0 - t));
    }
    return least;
}
