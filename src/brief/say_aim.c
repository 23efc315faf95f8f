/* SPDX-License-Identifier: MIT */
/* The finding that strings end in their range, but above their targets. */
#include "codes.h"
#include "say.h"

#include "../plan/plan.h"

/* How little of the saddle would stand out of the bridge at the target of a string. */
static void tell_left(const sil_plan *plan, int string, telling *t)
{
    double over = sil_action(&plan->bench.board, &plan->stages.fit[SIL_SADDLE], string, 12) -
                  plan->bench.targets.action[string].aim;
    double left = plan->saddle.protrusion[string] - over / sil_leverage(&plan->bench.board, string);
    if (sil_working_in_slot(plan->saddle.working)) {
        tell(t, " (the saddle would then stand out only ");
        tell_length(t, "out", string, figure_nearest(t->b, left));
        tell(t, ")");
    }
}

void say_aim_short(const brief *b, const sil_finding *f, int count, telling *t)
{
    tell(t, "Action at the 12th stops short of its target");
    for (int k = 0; k < count; k++) {
        say_next_string(f, k, t);
        tell(t, "to ");
        tell_length(t, "read", f[k].string, figure_nearest(t->b, f[k].read));
        tell(t, ", not ");
        tell_length(t, "aim", f[k].string, figure_nearest(t->b, f[k].low));
        tell_left(b->plan, f[k].string, t);
    }
    tell(t, b->saddle.in_slot
                ? ". That is in range, and leaves the saddle and its break angle sound."
                : ". That is in range, and as far as the screws, posts or thumbwheels go.");
}

/* What a finding speaks of: the gap at the 1st fret, as its target is held, or the action. */
static void tell_what(const brief *b, sil_stage_name part, telling *t)
{
    if (part == SIL_NUT) {
        tell(t, "a gap at the 1st fret, %s, of ", brief_hold(b->plan->bench.targets.first_held));
    } else {
        tell(t, "an action at the 12th of ");
    }
}

void say_aim_raised(const brief *b, const sil_finding *f, int count, telling *t)
{
    tell(t, "Left above its target, so that it rings clean at this attack");
    for (int k = 0; k < count; k++) {
        say_next_string(f, k, t);
        tell(t, "at ");
        tell_what(b, f[k].stage, t);
        tell_length(t, "read", f[k].string, figure_nearest(t->b, f[k].read));
        tell(t, ", not ");
        tell_length(t, "aim", f[k].string, figure_nearest(t->b, f[k].low));
    }
    tell(t, ". That is in range.");
}

/* Strings for which somebody has to choose: from where on each rings clean, and where its target
 * range ends. */
typedef struct choices {
    tell_list clean, high;
    tell_list
        hopeless; /* rings clean only so far past its range that nobody would set it up there */
} choices;

static choices no_choices(const brief *b)
{
    return (choices){
        .clean.count = b->strings, .high.count = b->strings, .hopeless.count = b->strings};
}

static void add_choice(choices *all, const telling *t, int string, double clean, double low,
                       double high)
{
    if (clean > high + (high - low)) {
        all->hopeless.chosen[string] = true;
        return;
    }
    all->clean.chosen[string] = all->high.chosen[string] = true;
    all->clean.figure[string] = figure_nearest(t->b, clean);
    all->high.figure[string] = figure_nearest(t->b, high);
}

/* Says it of strings for which no height near the range would do. */
static void tell_hopeless(const choices *all, telling *t)
{
    if (tell_chosen(&all->hopeless) > 0) {
        tell(t,
             "%sPicking this hard is too much for this set-up: ", t->words.length > 0 ? " " : "");
        tell_which(t, &all->hopeless);
        tell(t, tell_chosen(&all->hopeless) == 1
                    ? " would still buzz with its height far above its range."
                    : " would still buzz with their heights far above their ranges.");
    }
}

/* Writes a figure of each string, or puts them into a row of the table with a label of its own. */
static void tell_row(telling *t, const char *label, const char *of, const tell_list *list)
{
    if (tell_strip(t, label, list)) {
        tell_span(t, of, list);
    } else {
        tell_each(t, of, list);
    }
}

/* Says it of strings of one part. */
static void tell_clean_from(const brief *b, sil_stage_name part, const choices *all, telling *t)
{
    bool one = tell_chosen(&all->clean) == 1;
    if (tell_chosen(&all->clean) == 0) {
        return;
    }
    tell(t, " ");
    tell_which_first(t, &all->clean);
    tell(t, one ? " rings clean from " : " ring clean from ");
    tell_what(b, part, t);
    tell_row(t, "rings from", "read", &all->clean);
    tell_unit(t);
    tell(t, one ? " up; its range ends at " : " up; their ranges end at ");
    tell_row(t, "range up to", "high", &all->high);
    tell_unit(t);
    tell(t, ".");
}

void say_attack(const brief *b, const sil_finding *f, int count, telling *t)
{
    choices all = no_choices(b);
    for (int k = 0; k < count; k++) {
        add_choice(&all, t, f[k].string, f[k].read, f[k].low, f[k].high);
    }
    if (tell_chosen(&all.clean) > 0) {
        tell(t, "The target is too low for picking this hard.");
    }
    tell_clean_from(b, f->stage, &all, t);
    tell_hopeless(&all, t);
}

/* By the plan and not by its findings, of which only those of one stage may be shown. */
void say_choose(const brief *b, telling *t)
{
    const sil_targets *targets = &b->plan->bench.targets;
    bool any = false;
    tell(t, "Choose before you cut any further.");
    for (sil_stage_name part = SIL_NUT; part <= SIL_SADDLE; part++) {
        choices all = no_choices(b);
        for (int i = 0; i < b->strings; i++) {
            double clean = plan_choice(b->plan, part, i);
            sil_band range = part == SIL_NUT ? targets->first[i] : targets->action[i];
            if (sil_known(clean)) {
                add_choice(&all, t, i, clean, range.low, range.high);
            }
        }
        bool clean = tell_chosen(&all.clean) > 0;
        tell(t, clean && !any ? " The target is too low for this attack." : "");
        any = any || clean;
        tell_clean_from(b, part, &all, t);
        tell_hopeless(&all, t);
    }
    tell(t, any ? " Give a higher target, write a lighter attack, or attack: any and accept the "
                  "buzz."
                : " Write a lighter attack, or attack: any and accept the buzz.");
}
