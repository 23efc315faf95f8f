/* SPDX-License-Identifier: MIT */
/* The finding that strings end in their range, but above their targets. */
#include "codes.h"
#include "say.h"

#include "../plan/plan.h"

static brief_figure nearest(const telling *t, double mm)
{
    return figure_length(t->b->unit, mm, SIL_NEAREST);
}

/* How little of the saddle would stand out of the bridge at the target of a string. */
static void tell_left(const sil_plan *plan, int string, telling *t)
{
    double left = plan->saddle.stands[string] - plan->stages.lower[string];
    if (sil_working_in_slot(plan->saddle.working)) {
        tell(t, ", where the saddle would stand out only ");
        tell_length(t, "out", string, nearest(t, left));
    }
}

void say_aim_short(const brief *b, const sil_finding *f, int count, telling *t)
{
    tell(t, "Action at the 12th stops short of its target");
    for (int k = 0; k < count; k++) {
        tell(t, k == 0 ? ": " : "; ");
        if (b->strings > 1) {
            tell(t, "string ");
            tell_string(t, f[k].string);
            tell(t, " ");
        }
        tell(t, "to ");
        tell_length(t, "read", f[k].string, nearest(t, f[k].read));
        tell(t, ", not ");
        tell_length(t, "aim", f[k].string, nearest(t, f[k].low));
        tell_left(b->plan, f[k].string, t);
    }
    tell(t, b->saddle.in_slot
                ? ". That is in range, and leaves the saddle and its break angle sound."
                : ". That is in range, and as far as the screws, posts or thumbwheels go.");
}
