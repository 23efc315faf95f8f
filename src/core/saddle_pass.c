/* SPDX-License-Identifier: MIT */
/* How much of the work at the saddle is done in its first pass. See docs/arithmetic.md, "How much at a
 * time". */
#include "fresh.h"
#include "room.h"

bool core_all_finished(const sil_bench *bench, const sil_saddle_work *work)
{
    for (int i = 0; i < bench->board.strings; i++) {
        if (work->verdict[i] == SIL_TAKE && !bench->finish_saddle[i]) {
            return false;
        }
    }
    return true;
}

/* How far a string to lower comes down before it is measured again, at bottom and top together. */
static double first_of(const sil_bench *bench, const sil_saddle_given *make,
                       const sil_stages *stages, const sil_saddle_work *work, int i)
{
    bool base = work->bottom && work->remedy == SIL_SADDLE_SAND;
    bool again = base ? core_all_finished(bench, work) : bench->finish_saddle[i];
    bool whole = !sil_working_cuts(make->working) || again;
    double leave = whole ? 0.0 : base ? make->leave_base : make->leave_top;
    double pass = sil_first_stroke(work->goal[i], leave, sil_saddle_to_low(bench, stages, i),
                                   stages->lower_u[i], base ? SIL_GUARD_SET : SIL_GUARD_ONE);
    if (work->verdict[i] == SIL_WAIT) {
        return SIL_UNKNOWN; /* unread, or to be read again */
    }
    if (work->verdict[i] != SIL_TAKE && sil_known(pass)) {
        return 0.0;
    }
    return sil_known(pass) ? fmin(pass, work->hold[i]) : pass;
}

/* Less than this is too little to be left at the bottom for another pass, mm. */
static const double least_left = 0.005;

/* Whether the bottom has more to lose after its first pass, so that the top waits. */
static bool bottom_first(const sil_saddle_given *make, const sil_saddle_work *work)
{
    sil_line left = {work->cut.b0 - work->cut_first.b0, work->cut.b1 - work->cut_first.b1};
    double half = make->length / 2.0;
    return work->bottom && fmax(sil_line_at(left, half), sil_line_at(left, -half)) >= least_left;
}

/* The first pass at the top. A string counts from where the bottom, or a shim, has brought it. */
static double dress_first_of(const sil_bench *bench, const sil_saddle_given *make,
                             const sil_stages *stages, const sil_saddle_work *work, int i)
{
    double to_low = sil_saddle_to_low(bench, stages, i);
    double under = work->remedy == SIL_SADDLE_SHIM ? work->shim : 0.0;
    double off = work->bottom ? sil_line_at(work->cut, bench->board.saddle_z[i]) : 0.0;
    double leave = bench->finish_saddle[i] ? 0.0 : make->leave_top;
    double pass = sil_first_stroke(work->dress[i], leave, to_low + under - off, stages->lower_u[i],
                                   SIL_GUARD_ONE);
    if (work->dress[i] == 0.0 || bottom_first(make, work)) {
        return 0.0;
    }
    bool held = sil_known(pass) && sil_known(work->hold[i]);
    return held ? fmin(pass, fmax(0.0, work->hold[i] + under - off)) : pass;
}

double core_saddle_leave(const sil_bench *bench, double over_low, double u, int i)
{
    double spare = over_low / sil_leverage(&bench->board, i);
    return fmax(bench->leave_saddle, SIL_GUARD_SET * u - spare);
}

/* What stays on a new saddle at first. */
static double stays_on(const sil_bench *bench, const sil_stages *stages, int i)
{
    double action = sil_action(&bench->board, &stages->fit[SIL_SADDLE], i, 12);
    return core_saddle_leave(bench, action - bench->targets.action[i].low, stages->lower_u[i], i);
}

void core_saddle_passes(const sil_bench *bench, const sil_saddle_given *make,
                        const sil_stages *stages, sil_saddle_work *work)
{
    bool one_part = make->working != SIL_WORKING_SCREWS;
    for (int i = 0; i < bench->board.strings; i++) {
        work->first_pass[i] = first_of(bench, make, stages, work, i);
        work->dress_first[i] = dress_first_of(bench, make, stages, work, i);
        if (work->remedy == SIL_SADDLE_WAIT && one_part) {
            work->first_pass[i] = work->dress_first[i] = SIL_UNKNOWN;
        }
        if (work->remedy == SIL_SADDLE_REPLACE) {
            work->first_pass[i] = SIL_UNKNOWN; /* nothing comes off the old one */
            work->leave[i] = stays_on(bench, stages, i);
        }
    }
}
