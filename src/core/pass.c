/* SPDX-License-Identifier: MIT */
/* How much of a cut is made in its first pass. See docs/arithmetic.md, "How sure". */
#include "pass.h"

#include "height.h"

double sil_first_pass(double cut, double to_low, double u, double guard)
{
    if (!sil_known(cut) || !sil_known(to_low) || !sil_known(u)) {
        return SIL_UNKNOWN;
    }
    return fmax(0.0, fmin(cut, to_low - guard * u));
}

double sil_stroke(double cut, double leave)
{
    return sil_known(cut) ? fmax(cut - leave, fmin(cut, leave)) : SIL_UNKNOWN;
}

double sil_first_stroke(double cut, double leave, double to_low, double u, double guard)
{
    double pass = sil_first_pass(cut, to_low, u, guard);
    return sil_known(pass) ? fmax(0.0, fmin(pass, sil_stroke(cut, leave))) : SIL_UNKNOWN;
}

/* Less than this is no pass that a person could make, mm. */
static const double least_pass = 0.01;

/* Whether a string that stays in its range, and was cut short of its target since it was last read,
 * is brought to the target now: only while it is over it by more than can be left. */
static bool finishes(double cut, double leave, double to_low, double u, double guard)
{
    return cut > fmax(u, leave / 2.0) && sil_first_pass(cut, to_low, u, guard) >= least_pass;
}

bool core_finish_slots(const sil_bench *bench, sil_stages *stages)
{
    bool any = false;
    for (int i = 0; i < bench->board.strings; i++) {
        bool left = stages->nut[i] == SIL_LEAVE && bench->finish_slot[i] && !bench->zero_fret;
        stages->finish_slot[i] =
            left && finishes(stages->deepen[i], bench->leave_slot, sil_nut_to_low(bench, stages, i),
                             stages->deepen_u[i], SIL_GUARD_ONE);
        any = any || stages->finish_slot[i];
    }
    return any;
}

bool core_finish_saddle(const sil_bench *bench, sil_stages *stages)
{
    bool any = false;
    for (int i = 0; i < bench->board.strings; i++) {
        bool left = stages->saddle[i] == SIL_LEAVE && bench->finish_saddle[i];
        stages->finish_saddle[i] = left && finishes(stages->lower[i], bench->leave_saddle,
                                                    sil_saddle_to_low(bench, stages, i),
                                                    stages->lower_u[i], SIL_GUARD_SET);
        any = any || stages->finish_saddle[i];
    }
    return any;
}

double sil_nut_to_low(const sil_bench *bench, const sil_stages *stages, int string)
{
    const sil_board *board = &bench->board;
    sil_hold hold = bench->targets.first_held;
    double over =
        sil_slot_gap(bench, &stages->fit[SIL_FRETS], string) - bench->targets.first[string].low;
    double share = hold == SIL_HOLD_OPEN ? board->fret_x[string][1] / board->saddle_x[string]
                                         : core_held_share(board, string, hold);
    return over / (1.0 - share);
}

double sil_saddle_to_low(const sil_bench *bench, const sil_stages *stages, int string)
{
    double action = sil_action(&bench->board, &stages->fit[SIL_NUT], string, 12);
    return (action - bench->targets.action[string].low) / sil_leverage(&bench->board, string);
}
