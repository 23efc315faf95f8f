/* SPDX-License-Identifier: MIT */
/* The sentence for a bridge in one piece that has sagged. */
#include "codes.h"
#include "say.h"

#include "../plan/plan.h"

void say_sag(const brief *b, const sil_finding *f, int count, telling *t)
{
    tell_list sag = {.count = b->strings};
    for (int k = 0; k < count; k++) {
        sag.chosen[f[k].string] = true;
        sag.figure[f[k].string] = figure_nearest(b, f[k].read);
    }
    bool turns = b->plan->saddle.working != SIL_WORKING_FEET;
    tell(t, "The bridge sags in the middle: under ");
    tell_which(t, &sag);
    tell(t, " by ");
    tell_each(t, "read", &sag);
    tell_unit(t);
    tell(t, ", measured from the board's curve through the outer strings");
    tell(t,
         ". %s cannot cure that. Replace a bridge that has sunk. Or, where its notches may be "
         "filed, deepen the outer ones by as much, and then raise the bridge.",
         !turns             ? "Its feet"
         : b->saddle.floats ? "The thumbwheels"
                            : "The posts");
}
