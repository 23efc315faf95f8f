/* SPDX-License-Identifier: MIT */
/* The sentences for readings that do not fit together: both figures, and how far apart they are. */
#include <math.h>

#include "codes.h"
#include "say.h"

#include "../plan/plan.h"

/* Two ways to one gap, of some strings. */
typedef struct two_ways {
    tell_list read, told, apart;
} two_ways;

static void put_gap(tell_list *list, const telling *t, int i, double gap)
{
    list->chosen[i] = true;
    list->figure[i] = gap > 0.0 ? figure_nearest(t->b, gap) : figure_number(0.0, 0);
}

/* Writes " 5: 0.06, 6: 0.16 mm". */
static void tell_gaps(telling *t, const char *of, const tell_list *gaps)
{
    tell(t, " ");
    tell_each(t, of, gaps);
    tell_unit(t);
}

/* Writes "The gap at the 1st fret of string 5, fretted at the 3rd, was read as 0.06 mm. By the open gap
 * it would be 0.20 mm, which is 0.14 mm off." */
static void tell_apart(telling *t, const two_ways *ways, sil_hold held, const char *from)
{
    tell(t, "The gap at the 1st fret of ");
    tell_which(t, &ways->read);
    tell(t, ", %s, was read as", brief_hold(held));
    tell_gaps(t, "read", &ways->read);
    tell(t, ". By %s it would be", from);
    tell_gaps(t, "told", &ways->told);
    tell(t, ", which is ");
    tell_span(t, "apart", &ways->apart);
    tell_unit(t);
    tell(t, " off.");
}

static two_ways no_ways(const brief *b)
{
    tell_list none = {.count = b->strings};
    return (two_ways){none, none, none};
}

static void tell_open_apart(const brief *b, const sil_finding *f, int count, telling *t)
{
    const sil_gaps *gaps = &b->plan->bench.gaps;
    two_ways ways = no_ways(b);
    tell_list open = {.count = b->strings};
    for (int k = 0; k < count; k++) {
        int i = f[k].string;
        if (plan_open_apart(b->plan, i)) {
            double told = fmax(plan_open_told(b->plan, i), 0.0);
            put_gap(&ways.read, t, i, gaps->first[i]);
            put_gap(&open, t, i, gaps->first_open[i]);
            put_gap(&ways.told, t, i, told);
            put_gap(&ways.apart, t, i, fabs(told - gaps->first[i]));
        }
    }
    if (tell_chosen(&open) == 0) {
        return;
    }
    tell_apart(t, &ways, gaps->first_held, "the open gap");
    tell(t, " The open gap was read as");
    tell_gaps(t, "read-open", &open);
    tell(t, ". The two do not fit one slot, by more than the tools explain: measure both again.");
}

static void tell_zero_fret_apart(const brief *b, const sil_finding *f, int count, telling *t)
{
    const sil_plan *plan = b->plan;
    two_ways ways = no_ways(b);
    tell_list off = {.count = b->strings};
    for (int k = 0; k < count; k++) {
        int i = f[k].string;
        if (!plan_open_apart(plan, i)) {
            double told = plan_zero_fret_told(plan, i), now = sil_first_now(plan, i);
            put_gap(&ways.read, t, i, now);
            put_gap(&ways.told, t, i, told);
            put_gap(&ways.apart, t, i, fabs(told - now));
            off.chosen[i] = true;
            off.figure[i] = figure_nearest(t->b, plan->bench.zero_fret_off[i]);
        }
    }
    if (tell_chosen(&off) == 0) {
        return;
    }
    tell_apart(t, &ways, plan->bench.targets.first_held, "the zero fret's crown");
    tell(t, " That crown was read against the other frets");
    tell_gaps(t, "read-zero-fret", &off);
    tell(t, ". The tools do not explain so much: measure both again.");
}

void say_gaps_apart(const brief *b, const sil_finding *f, int count, telling *t)
{
    bool open = false, crown = false;
    for (int k = 0; k < count; k++) {
        bool is = plan_open_apart(b->plan, f[k].string);
        open = open || is;
        crown = crown || !is;
    }
    tell_open_apart(b, f, count, t);
    tell(t, open && crown ? " " : "");
    tell_zero_fret_apart(b, f, count, t);
}

static const char *way_to_stand(sil_stands_by by)
{
    switch (by) {
    case SIL_BY_CALIPER:
        return "the caliper and the slot's depth";
    case SIL_BY_BRIDGE_TOP:
        return "the gap to the bridge's top";
    case SIL_BY_RULER:
        return "the ruler";
    }
    return "";
}

void say_seats_apart(const brief *b, const sil_finding *f, int count, telling *t)
{
    (void)f, (void)count;
    const sil_stands_apart *apart = &b->plan->saddle.stands_apart;
    sil_unit unit = b->unit;
    if (b->strings > 1) {
        tell(t, "At string ");
        tell_string(t, apart->string);
        tell(t, " the saddle");
    } else {
        tell(t, "The saddle");
    }
    tell(t, " stands ");
    tell_length(t, "stands-out", apart->string, figure_length(unit, apart->out[0], SIL_NEAREST));
    tell(t, " out of the bridge by %s, but ", way_to_stand(apart->by[0]));
    tell_length(t, "stands-out", apart->string, figure_length(unit, apart->out[1], SIL_NEAREST));
    tell(t, " by %s: ", way_to_stand(apart->by[1]));
    tell_length(t, "apart", apart->string,
                figure_length(unit, fabs(apart->out[0] - apart->out[1]), SIL_NEAREST));
    tell(t, " apart. That is more than the tools explain, so the plan uses neither: measure it "
            "again.");
}
