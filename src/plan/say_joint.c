/* SPDX-License-Identifier: MIT */
/* The words of the steps at the zero fret and where neck meets body. */
#include "say.h"

void plan_say_zero_fret(const sil_plan *plan, text *t)
{
    string_list high = {.count = plan->job->string_count};
    for (int i = 0; i < high.count; i++) {
        high.chosen[i] = plan_zero_fret_high(plan, i);
        high.value[i] = plan->stages.deepen[i];
    }
    plan_text_add(t,
                  "The zero fret, not the slots, sets the height at the nut. Its crown is too high "
                  "under ");
    plan_text_which(t, &high);
    plan_text_add(t, " by ");
    plan_text_strings(t, &high, SIL_NEAREST);
    plan_say_unit(t);
    plan_text_add(
        t, ". Work it as a fret is worked, along its whole length: pressed home and dressed, a "
           "little at a time. Leave every slot deeper than the string needs.");
}

void plan_check_zero_fret(const sil_plan *plan, text *t)
{
    plan_text_add(t,
                  "Read the gap at the 1st fret, %s, after each pass; then read everything again.",
                  sil_hold_words(plan->bench.targets.first_held));
}

static bool on_screws(const sil_plan *plan)
{
    return !sil_working_in_slot(plan->saddle.working);
}

void plan_say_neck_angle(const sil_plan *plan, text *t)
{
    plan_text_add(t,
                  on_screws(plan)
                      ? "Stop at the saddle: its screws end before the action wanted. "
                      : "Stop at the saddle: lowered as far as wanted it would stand too low over "
                        "the bridge. ");
    plan_text_add(t, "The neck's angle is at fault; have a qualified repairer look at it.");
}

void plan_check_neck_angle(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(t, "Until then the saddle stays as it is.");
}

static void add_lift(const sil_plan *plan, text *t)
{
    plan_text_add(t, "the line of the frets must pass the saddle ");
    plan_text_length_unit(t, plan->neck.lift, SIL_NEAREST);
    plan_text_add(t, " higher");
    if (plan->job->string_count > 1) {
        plan_text_add(t, " (string %d asks for most)", plan->neck.string + 1);
    }
}

void plan_say_neck_shim(const sil_plan *plan, text *t)
{
    plan_text_add(t, "Advice, for a bolt-on neck: ");
    add_lift(plan, t);
    plan_text_add(t,
                  ". That is a wedge across the whole floor of the neck's pocket, nothing at its "
                  "front edge and about ");
    plan_text_length_unit(t, plan->neck.shim, SIL_NEAREST);
    plan_text_add(t, " at the end toward the bridge, of hard material, full width.");
}

void plan_say_neck_reset(const sil_plan *plan, text *t)
{
    plan_text_add(t, "Advice, for a qualified repairer: ");
    add_lift(plan, t);
    plan_text_add(t, ". On this neck that is about ");
    plan_text_length_unit(t, plan->neck.heel, SIL_NEAREST);
    plan_text_add(t,
                  " off the end of the heel, running out to nothing at the board. An estimate to "
                  "judge the work by, not a cut.");
}

void plan_check_neck(const sil_plan *plan, text *t)
{
    (void)plan;
    plan_text_add(t, "Strung and tuned again, read everything again: relief, gap at the 1st fret, "
                     "action, saddle.");
}
