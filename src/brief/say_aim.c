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
    double over = sil_action(&plan->bench.board, &plan->stages.fit[SIL_SADDLE], string, 12) -
                  plan->bench.targets.action[string].aim;
    double left = plan->saddle.protrusion[string] - over / sil_leverage(&plan->bench.board, string);
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

/* What a finding speaks of: the gap at the 1st fret, as its target is held, or the action. */
static void tell_what(const brief *b, const sil_finding *f, telling *t)
{
    if (f->stage == SIL_NUT) {
        tell(t, "a gap at the 1st fret, %s, of ", brief_hold(b->plan->bench.targets.first_held));
    } else {
        tell(t, "an action at the 12th of ");
    }
}

void say_aim_raised(const brief *b, const sil_finding *f, int count, telling *t)
{
    tell(t, "Ends above its target, so as to ring clean under this pick");
    for (int k = 0; k < count; k++) {
        tell(t, k == 0 ? ": " : "; ");
        if (b->strings > 1) {
            tell(t, "string ");
            tell_string(t, f[k].string);
            tell(t, " ");
        }
        tell(t, "at ");
        tell_what(b, &f[k], t);
        tell_length(t, "read", f[k].string, nearest(t, f[k].read));
        tell(t, ", not ");
        tell_length(t, "aim", f[k].string, nearest(t, f[k].low));
    }
    tell(t, ". That is in range.");
}

/* Says from where on a string rings clean, and where its target range ends. */
static void tell_clean_from(const brief *b, const sil_finding *f, bool first, telling *t)
{
    if (b->strings > 1) {
        tell(t, first ? "string " : "; string ");
        tell_string(t, f->string);
    } else {
        tell(t, first ? "it" : "; it");
    }
    tell(t, first ? " rings clean from " : " from ");
    tell_what(b, f, t);
    tell_length(t, "read", f->string, nearest(t, f->read));
    tell(t, " up, and its target range ends at ");
    tell_length(t, "high", f->string, nearest(t, f->high));
}

void say_attack(const brief *b, const sil_finding *f, int count, telling *t)
{
    tell(t, "The target is too low for this pick: ");
    for (int k = 0; k < count; k++) {
        tell_clean_from(b, &f[k], k == 0, t);
    }
    tell(t, ". A cut to the target would buzz.");
}

/* By the plan and not by its findings, of which only those of one stage may be shown. */
void say_choose(const brief *b, telling *t)
{
    const sil_targets *targets = &b->plan->bench.targets;
    bool first = true;
    tell(t, "Choose before you cut any further. The target is too low for this pick: ");
    for (sil_stage_name part = SIL_NUT; part <= SIL_SADDLE; part++) {
        for (int i = 0; i < b->strings; i++) {
            sil_band range = part == SIL_NUT ? targets->first[i] : targets->action[i];
            sil_finding f = {.stage = part,
                             .string = i,
                             .read = plan_choice(b->plan, part, i),
                             .high = range.high};
            if (sil_known(f.read)) {
                tell_clean_from(b, &f, first, t);
                first = false;
            }
        }
    }
    tell(t, ". Give a higher target, choose a lighter pick, or write attack: any and accept the "
            "buzz.");
}
