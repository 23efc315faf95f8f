/* SPDX-License-Identifier: MIT */
/* The sentence for readings that were taken over from earlier visits. */
#include "say.h"

#include "../plan/plan.h"

static tell_list carried_from(const brief *b, const int *from, int visit)
{
    tell_list list = {.count = b->strings};
    for (int i = 0; i < b->strings; i++) {
        list.chosen[i] = from[i] == visit;
    }
    return list;
}

static void tell_visit(const brief *b, int visit, telling *t)
{
    const plan_carried *c = &b->plan->carried;
    tell_list first = carried_from(b, c->first, visit), action = carried_from(b, c->action, visit);
    tell_things things = {.joint = ", "};
    tell(t, "From %s: ", b->plan->job->readings[visit].date);
    tell_thing(t, &things, "the relief", c->relief == visit);
    tell_thing(t, &things, "the frets", c->frets == visit);
    tell_thing_of(t, &things, "the gap at the 1st fret of ", &first);
    tell_thing_of(t, &things, "the action of ", &action);
    tell_thing(t, &things, "the saddle's height", c->saddle_height == visit);
    tell_thing(t, &things, "the bridge's top", c->bridge_top == visit);
    tell_thing(t, &things, "how far the saddle stands out", c->stands_out == visit);
    tell_thing(t, &things, "a sound bridge", c->bridge == visit);
    tell_thing(t, &things, "sound braces", c->braces == visit);
    tell(t, ". ");
}

void say_carried(const brief *b, const sil_finding *f, int count, telling *t)
{
    (void)f, (void)count;
    for (int visit = 0; visit < b->plan->reading; visit++) {
        if (plan_carries(&b->plan->carried, visit)) {
            tell_visit(b, visit, t);
        }
    }
    tell(t, "Taken over, since no work was done that would change them. Their measuring error is "
            "counted one and a half times.");
}
