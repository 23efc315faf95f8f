/* SPDX-License-Identifier: MIT */
/* Where the saddle's seat lies, from a caliper or from the bridge's top. See docs/arithmetic.md,
 * "The saddle". */
#include <sillet/saddle.h>

/* A caliper and a straightedge that differ by more tell of a slip in one of them. */
static const double most_apart = 0.3;

/* The two crowns a straightedge touches where its middle is, sound crowns on the centre line: of
 * all pairs about that place the one whose chord stands highest. */
static void touched_crowns(const sil_board *board, double bend, double middle, int *low, int *high)
{
    double highest = -INFINITY;
    *low = 1;
    *high = board->frets;
    for (int a = 1; a < board->frets && board->spine_x[a] <= middle; a++) {
        for (int b = board->frets; b > a && board->spine_x[b] >= middle; b--) {
            double y_a = -sil_sag(board, bend, board->spine_x[a]);
            double y_b = -sil_sag(board, bend, board->spine_x[b]);
            double share = (middle - board->spine_x[a]) / (board->spine_x[b] - board->spine_x[a]);
            double y = y_a + (y_b - y_a) * share;
            if (y > highest + 1e-12) {
                highest = y;
                *low = a;
                *high = b;
            }
        }
    }
}

double sil_edge_at_saddle(const sil_board *board, double bend, double saddle_x)
{
    double last = board->spine_x[board->frets];
    double middle = fmin((board->spine_x[1] + board->saddle_x[0]) / 2.0, last);
    int low;
    int high;
    touched_crowns(board, bend, middle, &low, &high);
    double y_low = -sil_sag(board, bend, board->spine_x[low]);
    double y_high = -sil_sag(board, bend, board->spine_x[high]);
    double slope = (y_high - y_low) / (board->spine_x[high] - board->spine_x[low]);
    return low == high ? SIL_UNKNOWN : y_low + slope * (saddle_x - board->spine_x[low]);
}

/* Height over the seat at one outer string, by caliper and by the bridge's top. */
typedef struct two_ways {
    double caliper, bridge;
} two_ways;

static two_ways measure_outer(const sil_bench *bench, const sil_saddle_make *make,
                              const sil_fit *now, int i, double caliper, double gap)
{
    const sil_board *board = &bench->board;
    double top = sil_edge_at_saddle(board, now->bend, board->saddle_x[i]) - gap;
    double seat = top - (make->slot_depth - make->pickup);
    return (two_ways){caliper, now->saddle_height[i] - seat};
}

static bool disagree(two_ways way)
{
    return fabs(way.caliper - way.bridge) > most_apart;
}

void sil_saddle_present(const sil_bench *bench, const sil_saddle_make *make,
                        const sil_stages *stages, sil_saddle_work *work)
{
    const sil_fit *now = &stages->fit[SIL_NOW];
    const double *z = bench->board.saddle_z;
    int last = bench->board.strings - 1;
    two_ways treble =
        measure_outer(bench, make, now, 0, make->present_treble, make->bridge_top_treble);
    two_ways bass =
        measure_outer(bench, make, now, last, make->present_bass, make->bridge_top_bass);
    work->present_disagree = disagree(treble) || (last > 0 && disagree(bass));
    bool by_caliper = sil_known(treble.caliper) && (last == 0 || sil_known(bass.caliper));
    double p_treble = by_caliper ? treble.caliper : treble.bridge;
    double p_bass = by_caliper ? bass.caliper : bass.bridge;
    for (int i = 0; i <= last; i++) {
        double share = last > 0 ? (z[0] - z[i]) / (z[0] - z[last]) : 0.0;
        double seat_treble = now->saddle_height[0] - p_treble;
        double seat_bass = last > 0 ? now->saddle_height[last] - p_bass : seat_treble;
        double seat = seat_treble + (seat_bass - seat_treble) * share;
        work->present[i] = work->present_disagree ? SIL_UNKNOWN : now->saddle_height[i] - seat;
    }
}
