/* SPDX-License-Identifier: MIT */
/* Clearance of every string at every fret. See docs/arithmetic.md, "Clearance". */
#include "swing.h"

/* Even a hand near the neck plucks no nearer to the fretted note than a quarter of the sounding
 * length. */
static double place(double length, double at)
{
    return fmin(at, 0.75 * length);
}

double sil_pluck_depth(double tension, double length, double at)
{
    double p = place(length, at);
    return p * (length - p) / (tension * length);
}

double sil_envelope(double length, double at, double u)
{
    double p = place(length, at), depth = p * (length - p);
    core_swing by_one = {length, (length - p) / depth, p / depth};
    return core_swing_at(&by_one, u);
}

core_swing core_swing_from(const sil_board *board, const sil_pluck *pluck, int string, int stop)
{
    double length = board->saddle_x[string] - board->fret_x[string][stop];
    double p = place(length, pluck->at);
    double stiffness = pluck->tension[string] * length;
    return (core_swing){length, (length - p) / stiffness, p / stiffness};
}

/* Frets as near as this, as a share of the pluck, are equal: rounding must not choose among them. */
static const double TIE = 1e-9;

/* The hardest clean pluck of one note and the fret that limits it, of equal ones the first. */
static double clean_force(const sil_board *board, const sil_fit *fit, const double *crown,
                          const core_swing *swing, int string, int stop, int *at_fret)
{
    const double *x = board->fret_x[string];
    double from = stop == 0 ? fit->nut_height[string] : crown[stop];
    double slope = (fit->saddle_height[string] - from) / swing->length;
    double least = (double)INFINITY;
    *at_fret = 0;
    for (int n = stop + 1; n <= board->frets; n++) {
        double u = x[n] - x[stop];
        double force = (from + slope * u - crown[n]) / core_swing_at(swing, u);
        if (force < least) {
            bool nearer = *at_fret == 0 || force < least - TIE * fabs(least);
            *at_fret = nearer ? n : *at_fret;
            least = force;
        }
    }
    return *at_fret > 0 ? least : SIL_UNKNOWN;
}

bool sil_buzzes_under(double force, double attack)
{
    return sil_number_shown(force, 2) < sil_number_shown(attack, 2);
}

static void fill_crowns(const sil_board *board, const sil_fit *fit, int string, int from,
                        double *crown)
{
    for (int n = from; n <= board->frets; n++) {
        crown[n] = sil_crown_height(board, fit, string, n);
    }
}

void sil_clearance_find(const sil_board *board, const sil_fit *fit, const sil_pluck *pluck,
                        sil_clearance *clearance)
{
    double crown[SIL_FRETS_MAX + 1];
    for (int i = 0; i < board->strings; i++) {
        fill_crowns(board, fit, i, 1, crown);
        for (int stop = 0; stop < board->frets; stop++) {
            core_swing swing = core_swing_from(board, pluck, i, stop);
            clearance->force[i][stop] =
                clean_force(board, fit, crown, &swing, i, stop, &clearance->at_fret[i][stop]);
        }
    }
}

double sil_clearance_of(const sil_board *board, const sil_fit *fit, const sil_pluck *pluck,
                        int string, int stop)
{
    double crown[SIL_FRETS_MAX + 1];
    int at_fret;
    if (stop >= board->frets) {
        return SIL_UNKNOWN;
    }
    fill_crowns(board, fit, string, stop > 0 ? stop : 1, crown);
    core_swing swing = core_swing_from(board, pluck, string, stop);
    return clean_force(board, fit, crown, &swing, string, stop, &at_fret);
}
