/* SPDX-License-Identifier: MIT */
/* Heights from readings and readings from heights. See docs/arithmetic.md, "From readings to
 * heights". */
#include "height.h"

double sil_action(const sil_board *board, const sil_fit *fit, int string, int fret)
{
    double t = board->fret_x[string][fret] / board->saddle_x[string];
    return fit->nut_height[string] * (1.0 - t) + fit->saddle_height[string] * t -
           sil_crown_height(board, fit, string, fret);
}

double sil_leverage(const sil_board *board, int string)
{
    return board->fret_x[string][12] / board->saddle_x[string];
}

double sil_first_gap(const sil_board *board, const sil_fit *fit, int string, sil_hold hold)
{
    if (hold == SIL_HOLD_OPEN) {
        return sil_action(board, fit, string, 1);
    }
    if ((int)hold > board->frets) {
        return SIL_UNKNOWN;
    }
    double share = core_held_share(board, string, hold);
    return fit->nut_height[string] * (1.0 - share) +
           sil_crown_height(board, fit, string, (int)hold) * share -
           sil_crown_height(board, fit, string, 1);
}

double core_held_share(const sil_board *board, int string, sil_hold hold)
{
    return board->fret_x[string][1] / board->fret_x[string][hold];
}

double core_nut_from_held(const sil_board *board, const sil_fit *fit, int string, sil_hold hold,
                          double gap)
{
    double share = core_held_share(board, string, hold);
    double first = sil_crown_height(board, fit, string, 1);
    double bearing = sil_crown_height(board, fit, string, (int)hold);
    return (gap + first - bearing * share) / (1.0 - share);
}

double core_saddle_from_action(const sil_board *board, const sil_fit *fit, int string, int fret,
                               double action, double nut_height)
{
    double t = board->fret_x[string][fret] / board->saddle_x[string];
    double over = action + sil_crown_height(board, fit, string, fret);
    return (over - nut_height * (1.0 - t)) / t;
}

/* The straight line through a point over crown 1 and one over another crown, carried on to nut and
 * saddle: two equations. */
double core_nut_from_open(const sil_board *board, const sil_fit *fit, int string, double first,
                          int fret, double action)
{
    double x_first = board->fret_x[string][1];
    double x_over = board->fret_x[string][fret];
    double at_first = first + sil_crown_height(board, fit, string, 1);
    double at_over = action + sil_crown_height(board, fit, string, fret);
    return at_first - (at_over - at_first) * x_first / (x_over - x_first);
}

/* With a capo at fret 1 the string runs from that crown: the nut is not in the reading. */
static double saddle_from_capo(const sil_board *board, const sil_fit *fit, int string, int fret,
                               double action)
{
    double x_first = board->fret_x[string][1];
    double u = (board->fret_x[string][fret] - x_first) / (board->saddle_x[string] - x_first);
    double first = sil_crown_height(board, fit, string, 1);
    double over = action + sil_crown_height(board, fit, string, fret);
    return (over - first * (1.0 - u)) / u;
}

/* The nut's height where the saddle's is already known, from an open gap. */
static double nut_from_first(const sil_board *board, const sil_fit *fit, int string, double first,
                             double saddle_height)
{
    double t = board->fret_x[string][1] / board->saddle_x[string];
    double over = first + sil_crown_height(board, fit, string, 1);
    return (over - saddle_height * t) / (1.0 - t);
}

/* A gap of 0 is "at or under" the crown: it settles nothing. */
static double settled(double gap)
{
    return gap > 0.0 ? gap : SIL_UNKNOWN;
}

/* The gap that was read as the nut is judged decides. The open one does where that one gives no height,
 * or where it is 0 itself. */
static bool open_decides(const sil_gaps *gaps, int string)
{
    double open = gaps->first_open[string];
    return sil_known(open) && !(gaps->first[string] > 0.0 && open > 0.0);
}

double sil_first_read(const sil_gaps *gaps, int string)
{
    double open = gaps->first_open[string];
    return open_decides(gaps, string) ? open : gaps->first[string];
}

bool sil_first_settles(const sil_gaps *gaps, int string)
{
    return sil_first_read(gaps, string) > 0.0;
}

bool sil_first_touches(const sil_gaps *gaps, int string)
{
    return gaps->first[string] == 0.0 || gaps->first_open[string] == 0.0;
}

static void read_string(const sil_board *board, const sil_gaps *gaps, int string, sil_fit *fit)
{
    double action = settled(gaps->action[string]);
    int fret = gaps->action_at;
    double first = settled(sil_first_read(gaps, string));
    sil_hold hold = open_decides(gaps, string) ? SIL_HOLD_OPEN : gaps->first_held;
    double *nut = &fit->nut_height[string];
    double *saddle = &fit->saddle_height[string];
    *saddle = gaps->capo ? saddle_from_capo(board, fit, string, fret, action) : SIL_UNKNOWN;
    if (hold != SIL_HOLD_OPEN) {
        *nut = core_nut_from_held(board, fit, string, hold, first);
    } else if (gaps->capo) {
        *nut = nut_from_first(board, fit, string, first, *saddle);
    } else {
        *nut = core_nut_from_open(board, fit, string, first, fret, action);
    }
    if (!gaps->capo) {
        *saddle = core_saddle_from_action(board, fit, string, fret, action, *nut);
    }
}

void sil_fit_read(const sil_board *board, const sil_gaps *gaps, sil_fit *fit)
{
    for (int i = 0; i < board->strings; i++) {
        read_string(board, gaps, i, fit);
    }
}
