/* SPDX-License-Identifier: MIT */
/* The sentence for a bridge in one piece that has sagged. */
#include "codes.h"
#include "say.h"

#include "../plan/plan.h"

void say_sag(const brief *b, const sil_finding *f, int count, telling *t)
{
    bool turns = b->plan->saddle.working != SIL_WORKING_FEET;
    tell(t, "The bridge sags in the middle");
    for (int k = 0; k < count; k++) {
        say_next_string(f, k, t);
        tell(t, "by ");
        tell_length(t, "read", f[k].string, figure_nearest(b, f[k].read));
    }
    tell(t, ", measured from the board's curve through the outer strings");
    tell(t,
         ". %s cannot cure that. Replace a bridge that has sunk. Or raise it until the lowest "
         "string is at its target, and deepen the notches that are then too high, where they may "
         "be filed.",
         !turns             ? "Its feet"
         : b->saddle.floats ? "The thumbwheels"
                            : "The posts");
}
