/* SPDX-License-Identifier: MIT */
/* A shim under the nut: whether one will do, and which slots are filed once it is in. See
 * docs/arithmetic.md, "The nut". */
#include "shim.h"

#include "edge.h"

double sil_shim_thickness(double rise, double step)
{
    /* A rise that is a whole number of steps up to rounding does not take another step. */
    return ceil(rise / step - 1e-9) * step;
}

/* Less than this is no pass that a person could make, mm. */
static const double least_pass = 0.01;

/* Up to two low slots of so many strings are filled, where none of the others is worked: a shim would
 * lift them all, and have them filed again. Common practice, no source. */
enum { most_filled = 2, least_strings = 6 };

bool core_fills_two(const sil_bench *bench, const sil_stages *stages)
{
    int raised = 0;
    for (int i = 0; i < bench->board.strings; i++) {
        bool low = stages->nut[i] == SIL_RAISE;
        bool little = low && !sil_above(-stages->deepen[i], bench->most_shim);
        if (!little && stages->nut[i] != SIL_LEAVE) {
            return false;
        }
        raised += low;
    }
    return raised == most_filled && bench->board.strings >= least_strings;
}

/* The thickness for which two slots or more must rise by known amounts, and none waits to be read;
 * otherwise unknown, as where it would be too thick. */
static double shim_of(const sil_bench *bench, const sil_stages *stages)
{
    double rise = 0.0;
    int raised = 0;
    for (int i = 0; i < bench->board.strings; i++) {
        if (stages->nut[i] == SIL_WAIT || stages->on_fret[i]) {
            return SIL_UNKNOWN;
        }
        if (stages->nut[i] == SIL_RAISE) {
            rise = fmax(rise, -stages->deepen[i]);
            raised++;
        }
    }
    bool shims = raised > 1 && !core_fills_two(bench, stages);
    double shim = shims ? sil_shim_thickness(rise, bench->shim_step) : SIL_UNKNOWN;
    return sil_above(shim, bench->most_shim) ? SIL_UNKNOWN : shim;
}

/* Whether a slot is past the high edge of its range with the shim under it. */
static bool too_high(const sil_bench *bench, const sil_stages *stages, int i)
{
    sil_fit up = stages->fit[SIL_FRETS];
    up.nut_height[i] += stages->shim;
    double width = core_edge_width(stages->first_u[i], false);
    return sil_side_of(sil_slot_gap(bench, &up, i), bench->targets.first[i], width, false) ==
           SIL_OVER;
}

/* What is filed back today of a slot that is too high over the shim. */
static double back_today(const sil_bench *bench, const sil_stages *stages, int i)
{
    double down = stages->nut[i] == SIL_RAISE ? stages->deepen[i] : 0.0;
    double to_low = sil_nut_to_low(bench, stages, i) + stages->shim;
    double pass = sil_first_stroke(stages->shim + down, bench->leave_slot, to_low,
                                   stages->deepen_u[i], SIL_GUARD_ONE);
    return pass >= least_pass ? pass : 0.0;
}

void core_put_shim(const sil_bench *bench, sil_stages *stages)
{
    sil_fit *fit = &stages->fit[SIL_NUT];
    stages->shim = shim_of(bench, stages);
    for (int i = 0; i < bench->board.strings; i++) {
        stages->shim_leaves[i] = false;
        stages->filed_back[i] = SIL_UNKNOWN;
        if (!sil_known(stages->shim) || stages->nut[i] == SIL_TAKE) {
            continue;
        }
        stages->filed_back[i] = too_high(bench, stages, i) ? back_today(bench, stages, i) : 0.0;
        stages->shim_leaves[i] = stages->filed_back[i] == 0.0;
        if (stages->shim_leaves[i]) {
            bool raised = stages->nut[i] == SIL_RAISE;
            fit->nut_height[i] = stages->fit[SIL_FRETS].nut_height[i] + stages->shim;
            stages->nut_raised[i] = raised ? stages->shim + stages->deepen[i] : 0.0;
        }
    }
}
