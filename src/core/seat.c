/* SPDX-License-Identifier: MIT */
/* Where the bottom of the saddle is, from a caliper or from the bridge's top, and how far it stands
 * out of the bridge. See docs/arithmetic.md, "The saddle". */
#include "fresh.h"

/* If two ways of measuring differ by more than this, one of them was misread, unless their tools are
 * so coarse that they explain it. */
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

/* The ways to know how far the saddle stands out of the bridge. */
enum { WAYS = SIL_BY_RULER + 1, PAIRS = 3 };

/* A height over the chord at strings 1 and N, straight between. */
typedef struct level {
    double treble, bass;
} level;

static double level_at(const sil_board *board, level of, int i)
{
    const double *z = board->saddle_z;
    int last = board->strings - 1;
    double share = last > 0 ? (z[0] - z[i]) / (z[0] - z[last]) : 0.0;
    return last > 0 ? of.treble + (of.bass - of.treble) * share : of.treble;
}

static double bridge_top(const sil_bench *bench, const sil_fit *now, int i, double gap)
{
    const sil_board *board = &bench->board;
    return sil_known(gap) ? sil_edge_at_saddle(board, now->bend, sil_saddle_axis_x(board, i)) - gap
                          : SIL_UNKNOWN;
}

/* How far the saddle stands out under each string, by each way; what was not read is unknown. */
static void stand(const sil_bench *bench, const sil_saddle_given *make, const sil_fit *now,
                  level seat, level top, double out[WAYS][SIL_STRINGS_MAX])
{
    const sil_board *board = &bench->board;
    int last = board->strings - 1;
    double in_slot = make->slot_depth - make->pickup;
    level ruled = {now->saddle_height[0] - make->stands_out[0],
                   now->saddle_height[last] - make->stands_out[last]};
    for (int i = 0; i <= last; i++) {
        double height = now->saddle_height[i];
        out[SIL_BY_CALIPER][i] = height - level_at(board, seat, i) - in_slot;
        out[SIL_BY_BRIDGE_TOP][i] = height - level_at(board, top, i);
        out[SIL_BY_RULER][i] = sil_known(make->stands_out[i]) ? make->stands_out[i]
                                                              : height - level_at(board, ruled, i);
    }
}

/* The standard uncertainty of each way. A caliper reads the saddle and its slot; a gap down to the
 * bridge needs the height of the string as well. */
static double u_of(const sil_bench *bench, sil_stands_by by, int i)
{
    const sil_tools *tools = &bench->tools;
    double action = sil_rectangular(tools->action) / sil_leverage(&bench->board, i);
    double caliper = sil_rectangular(tools->caliper);
    return by == SIL_BY_CALIPER      ? hypot(caliper, caliper)
           : by == SIL_BY_BRIDGE_TOP ? hypot(caliper, action)
                                     : sil_rectangular(tools->ruler);
}

/* Finds the two ways that are farthest apart of those that their tools do not explain; false for none. */
static bool disagree(const sil_bench *bench, double out[WAYS][SIL_STRINGS_MAX],
                     sil_stands_apart *farthest)
{
    static const sil_stands_by pair[][2] = {{SIL_BY_CALIPER, SIL_BY_BRIDGE_TOP},
                                            {SIL_BY_CALIPER, SIL_BY_RULER},
                                            {SIL_BY_BRIDGE_TOP, SIL_BY_RULER}};
    double most = 0.0;
    for (int k = 0; k < bench->board.strings * PAIRS; k++) {
        int i = k / PAIRS;
        sil_stands_by a = pair[k % PAIRS][0], b = pair[k % PAIRS][1];
        double apart = fabs(out[a][i] - out[b][i]);
        if (apart > most && sil_above(apart, most_apart) &&
            sil_above(apart, 2.0 * hypot(u_of(bench, a, i), u_of(bench, b, i)))) {
            most = apart;
            *farthest = (sil_stands_apart){i, {a, b}, {out[a][i], out[b][i]}};
        }
    }
    return most > 0.0;
}

void core_saddle_seat(const sil_bench *bench, const sil_saddle_given *make,
                      const sil_stages *stages, sil_saddle_work *work, double *seat)
{
    const sil_fit *now = &stages->fit[SIL_NOW];
    int last = bench->board.strings - 1;
    double in_slot = make->slot_depth - make->pickup, out[WAYS][SIL_STRINGS_MAX];
    level by_caliper = {now->saddle_height[0] - make->present_treble,
                        now->saddle_height[last] - make->present_bass};
    level top = {bridge_top(bench, now, 0, make->bridge_top_treble),
                 bridge_top(bench, now, last, make->bridge_top_bass)};
    /* Both ends are taken from the same tool: two tools that differ would tilt the bottom. */
    bool measured = sil_known(by_caliper.treble) && (last == 0 || sil_known(by_caliper.bass));
    level bottom = measured ? by_caliper : (level){top.treble - in_slot, top.bass - in_slot};
    stand(bench, make, now, by_caliper, top, out);
    work->present_disagree = disagree(bench, out, &work->stands_apart);
    for (int i = 0; i <= last && sil_working_in_slot(make->working); i++) {
        double stands = sil_known(out[SIL_BY_CALIPER][i])      ? out[SIL_BY_CALIPER][i]
                        : sil_known(out[SIL_BY_BRIDGE_TOP][i]) ? out[SIL_BY_BRIDGE_TOP][i]
                                                               : out[SIL_BY_RULER][i];
        work->stands[i] = work->present_disagree ? SIL_UNKNOWN : stands;
    }
    for (int i = 0; i <= last; i++) {
        seat[i] = work->present_disagree ? SIL_UNKNOWN : level_at(&bench->board, bottom, i);
    }
}

void sil_saddle_present(const sil_bench *bench, const sil_saddle_given *make,
                        const sil_stages *stages, sil_saddle_work *work)
{
    double seat[SIL_STRINGS_MAX] = {0}; /* every one is set below; the analyzer cannot see it */
    core_saddle_seat(bench, make, stages, work, seat);
    for (int i = 0; i < bench->board.strings; i++) {
        work->present[i] = stages->fit[SIL_NOW].saddle_height[i] - seat[i];
    }
}
