/* SPDX-License-Identifier: MIT */
/* How the string height at the saddle is changed. Everything else asks these functions. */
#include <sillet/core/saddle.h>

sil_working sil_saddle_working(sil_saddle_kind kind, double pitch)
{
    switch (kind) {
    case SIL_SADDLE_KIND_NOT_GIVEN:
        return SIL_WORKING_NOT_GIVEN;
    case SIL_SADDLE_SLOTTED:
        return SIL_WORKING_BASE;
    case SIL_SADDLE_GLUED:
        return SIL_WORKING_TOP;
    case SIL_SADDLE_INDIVIDUAL:
        return SIL_WORKING_SCREWS;
    case SIL_SADDLE_TWO_POST:
        return SIL_WORKING_POSTS;
    case SIL_SADDLE_FLOATING:
        return sil_known(pitch) ? SIL_WORKING_THUMBWHEELS : SIL_WORKING_FEET;
    }
    return SIL_WORKING_NOT_GIVEN;
}

bool sil_working_in_slot(sil_working working)
{
    return working == SIL_WORKING_BASE || working == SIL_WORKING_TOP;
}

bool sil_working_cuts(sil_working working)
{
    return sil_working_in_slot(working) || working == SIL_WORKING_FEET;
}

bool sil_working_turns(sil_working working)
{
    return working == SIL_WORKING_SCREWS || sil_working_on_two(working);
}

bool sil_working_on_two(sil_working working)
{
    return working == SIL_WORKING_POSTS || working == SIL_WORKING_THUMBWHEELS;
}

bool sil_working_floats(sil_working working)
{
    return working == SIL_WORKING_FEET || working == SIL_WORKING_THUMBWHEELS;
}
