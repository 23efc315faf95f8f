/* SPDX-License-Identifier: MIT */
/* Where the bottom of the saddle is, from a caliper or from the bridge's top. See
 * docs/arithmetic.md, "The saddle". */
#include "fresh.h"

/* If caliper and straightedge differ by more than this, one of them was misread. */
static const double most_apart = 0.3;

/* The two crowns that a straightedge rests on, on the centre line with no fret worn. Of all pairs
 * on either side of its middle it is the one whose chord is highest there. */
static void touched_crowns(const sil_board *board, const double *y, double middle, int *low,
                           int *high)
{
    const double *x = board->spine_x;
    double highest = -(double)INFINITY;
    for (int a = 1; a < board->frets && x[a] <= middle; a++) {
        for (int b = board->frets; b > a && x[b] >= middle; b--) {
            double at_middle = y[a] + (y[b] - y[a]) * (middle - x[a]) / (x[b] - x[a]);
            if (at_middle > highest + 1e-12) {
                highest = at_middle;
                *low = a;
                *high = b;
            }
        }
    }
}

double sil_edge_at_saddle(const sil_board *board, double bend, double saddle_x)
{
    const double *x = board->spine_x;
    double y[SIL_FRETS_MAX + 1];
    for (int n = 1; n <= board->frets; n++) {
        y[n] = -sil_sag(board, bend, x[n]);
    }
    /* A straightedge whose middle is past the last crown is held down on the board, so it lies like
     * one whose middle is over the last two crowns. */
    double past = (x[board->frets - 1] + x[board->frets]) / 2.0;
    /* With its middle right over a crown it could tip either way; a hair toward the nut is
     * taken. */
    double middle = fmin((x[1] + sil_saddle_axis_x(board, 0)) / 2.0, past) - 1e-6;
    int low = 1;
    int high = 1;
    touched_crowns(board, y, middle, &low, &high);
    if (low == high) {
        return SIL_UNKNOWN; /* a straightedge does not rest on one crown */
    }
    return y[low] + (y[high] - y[low]) * (saddle_x - x[low]) / (x[high] - x[low]);
}

/* The height of the saddle's bottom over the chord at one outer string, by caliper and by the
 * bridge's top. */
typedef struct two_ways {
    double caliper, bridge;
} two_ways;

static two_ways seat_at(const sil_bench *bench, const sil_saddle_given *make, const sil_fit *now,
                        int i, double caliper, double gap)
{
    two_ways seat = {now->saddle_height[i] - caliper, SIL_UNKNOWN};
    if (sil_known(gap)) {
        const sil_board *board = &bench->board;
        double top = sil_edge_at_saddle(board, now->bend, sil_saddle_axis_x(board, i)) - gap;
        seat.bridge = top - (make->slot_depth - make->pickup);
    }
    return seat;
}

static bool disagree(two_ways seat)
{
    return fabs(seat.caliper - seat.bridge) > most_apart;
}

bool core_saddle_seat(const sil_bench *bench, const sil_saddle_given *make,
                      const sil_stages *stages, double *seat)
{
    const sil_fit *now = &stages->fit[SIL_NOW];
    const double *z = bench->board.saddle_z;
    int last = bench->board.strings - 1;
    two_ways treble = seat_at(bench, make, now, 0, make->present_treble, make->bridge_top_treble);
    two_ways bass = seat_at(bench, make, now, last, make->present_bass, make->bridge_top_bass);
    bool apart = disagree(treble) || (last > 0 && disagree(bass));
    /* Both ends are taken from the same tool: two tools up to 0.3 apart would tilt the bottom. */
    bool by_caliper = sil_known(treble.caliper) && (last == 0 || sil_known(bass.caliper));
    double at_treble = by_caliper ? treble.caliper : treble.bridge;
    double at_bass = by_caliper ? bass.caliper : bass.bridge;
    for (int i = 0; i <= last; i++) {
        double share = last > 0 ? (z[0] - z[i]) / (z[0] - z[last]) : 0.0;
        seat[i] = last > 0 ? at_treble + (at_bass - at_treble) * share : at_treble;
        seat[i] = apart ? SIL_UNKNOWN : seat[i];
    }
    return apart;
}

void sil_saddle_present(const sil_bench *bench, const sil_saddle_given *make,
                        const sil_stages *stages, sil_saddle_work *work)
{
    double seat[SIL_STRINGS_MAX];
    work->present_disagree = core_saddle_seat(bench, make, stages, seat);
    for (int i = 0; i < bench->board.strings; i++) {
        work->present[i] = stages->fit[SIL_NOW].saddle_height[i] - seat[i];
    }
}
