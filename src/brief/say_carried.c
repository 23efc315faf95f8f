/* SPDX-License-Identifier: MIT */
/* The sentence for readings that were taken over from earlier visits. */
#include "say.h"

#include "../plan/plan.h"

static void tell_part(telling *t, const char **gap, const char *what, bool when)
{
    if (when) {
        tell(t, "%s%s", *gap, what);
        *gap = ", ";
    }
}

static void tell_strings(const brief *b, telling *t, const char **gap, const char *what,
                         const int *from, int visit)
{
    tell_list list = {.count = b->strings};
    for (int i = 0; i < b->strings; i++) {
        list.chosen[i] = from[i] == visit;
    }
    if (tell_chosen(&list) > 0) {
        tell(t, "%s%s", *gap, what);
        tell_which(t, &list);
        *gap = ", ";
    }
}

static void tell_visit(const brief *b, int visit, telling *t)
{
    const plan_carried *c = &b->plan->carried;
    const char *gap = "";
    tell(t, "From %s, not measured since: ", b->plan->job->readings[visit].date);
    tell_part(t, &gap, "the relief", c->relief == visit);
    tell_part(t, &gap, "the crowns", c->frets == visit);
    tell_strings(b, t, &gap, "the gap at the 1st fret of ", c->first, visit);
    tell_strings(b, t, &gap, "the action of ", c->action, visit);
    tell_part(t, &gap, "the saddle's height", c->saddle_height == visit);
    tell_part(t, &gap, "the bridge's top", c->bridge_top == visit);
    tell_part(t, &gap, "that the bridge is sound", c->bridge == visit);
    tell_part(t, &gap, "that the braces are sound", c->braces == visit);
    tell(t, ". ");
}

void say_carried(const brief *b, double by, telling *t)
{
    (void)by;
    for (int visit = 0; visit < b->plan->reading; visit++) {
        if (plan_carries(&b->plan->carried, visit)) {
            tell_visit(b, visit, t);
        }
    }
    tell(t,
         "Nothing has been worked that moves it. Its measuring error counts half as much again.");
}
