/* SPDX-License-Identifier: MIT */
/* The sentences for the steps that prepare, measure, and end a visit. */
#include "say.h"

#include "../plan/plan.h"

static const char *bridge_ready(sil_working working)
{
    switch (working) {
    case SIL_WORKING_NOT_GIVEN:
        return "bridge or cone firm";
    case SIL_WORKING_TOP: /* glued, as on a resonator's cone */
        return "bridge or cone firm, no loose brace";
    case SIL_WORKING_BASE:
        return "bridge flat on the top, no loose brace";
    case SIL_WORKING_SCREWS:
        return "bridge firm on the body";
    case SIL_WORKING_POSTS:
        return "bridge upright on its posts";
    case SIL_WORKING_FEET:
    case SIL_WORKING_THUMBWHEELS:
        return "bridge upright in its place, its feet flat on the top";
    case SIL_WORKINGS:
        break;
    }
    return "";
}

void say_prepare(const brief *b, telling *t)
{
    const sil_reading *reading = sil_plan_reading(b->plan);
    const sil_limits *limits = &b->plan->job->limits;
    if (reading && reading->condition.strings == SIL_UNSOUND) {
        tell(t,
             "Fit new strings first: these are worn. Tune, let them settle, and measure again. ");
    }
    tell(t, "Readings count only with: %s, %shumidity ", bridge_ready(b->saddle.working),
         plan_makes(b->plan) ? "" : "good strings at pitch, the instrument in playing position, ");
    tell_figure(t, "humidity-low", -1, figure_number(limits->humidity_low_pct, 0));
    tell(t, " to ");
    tell_figure(t, "humidity-high", -1, figure_number(limits->humidity_high_pct, 0));
    tell(t, " %%.");
}

void say_check_prepare(const brief *b, telling *t)
{
    (void)b;
    tell(t, "Were all readings taken in that state? If not, measure again.");
}

void say_stop(const brief *b, telling *t)
{
    const sil_withheld *why = &b->plan->nut_withheld;
    const char *gap = "";
    if (sil_withheld_by(why, SIL_BRIDGE_LIFTED) || sil_withheld_by(why, SIL_BRACES_LOOSE)) {
        tell(t, "Stop: slacken the strings, and have a qualified repairer glue bridge and braces.");
        gap = " ";
    }
    if (sil_withheld_by(why, SIL_CLIMATE)) {
        tell(t, "%sStop: keep the instrument within its humidity limits for a few days.", gap);
        gap = " ";
    }
    if (sil_withheld_by(why, SIL_NOT_TUNED)) {
        tell(t, "%sTune to pitch and let the neck settle.", gap);
    }
}

void say_check_stop(const brief *b, telling *t)
{
    (void)b;
    tell(t, "Cut nothing until that is put right.");
}

void say_measure_relief(const brief *b, telling *t)
{
    const sil_board *board = &b->plan->bench.board;
    tell(t,
         "Measure the relief: hold a string down at frets 1 and %d and measure the gap at fret %d "
         "with a feeler; or lay a straightedge on the same frets.",
         board->join, board->relief_at);
}

void say_straightedge(const brief *b, telling *t)
{
    const sil_board *board = &b->plan->bench.board;
    tell(
        t,
        "With the strings at pitch, lay a straightedge on frets 1 and %d. Light under it at fret "
        "%d "
        "is relief. If it rocks on the frets between, put two equal shims under it, one on each of "
        "those two. "
        "Subtract their thickness from the gap, as 0.26 - 0.30 = -0.04: that is a back-bow, and is "
        "written with its minus.",
        board->join, board->relief_at);
}

void say_read_crowns(const brief *b, telling *t)
{
    (void)b;
    tell(t, "Look at the crowns of frets 1 to 3 under each string: worn spots and flats by eye and "
            "fingertip, a fret rocker across each three. Write how deep they are, or that they are "
            "sound.");
}

void say_look_at_saddle(const brief *b, telling *t)
{
    (void)b;
    tell(
        t,
        "Check the saddle's fit before its height: push its top back and forth, and rock it end to "
        "end. It must stand upright and firm in its slot. Write that it is firm, or loose.");
}

void say_fit_saddle(const brief *b, telling *t)
{
    (void)b;
    tell(t, "Make the saddle stand firm: bed it flat on the floor of its slot, and where it leans "
            "or has play, fit a thicker blank. Cut nothing to a height read over a loose saddle.");
}

void say_check_fit(const brief *b, telling *t)
{
    (void)b;
    tell(t, "It neither leans nor rocks. Tune, and measure every action again.");
}

/* Strings whose gap at fret 1 was read as 0 (on_the_fret), or was not read. */
static tell_list first_missing(const brief *b, bool on_the_fret)
{
    const sil_gaps *gaps = &b->plan->bench.gaps;
    tell_list list = {.count = b->strings};
    for (int i = 0; i < list.count; i++) {
        double read = sil_first_read(gaps, i);
        bool mended = b->plan->stages.on_fret[i]; /* without a figure */
        list.chosen[i] = !(read > 0.0) && (read == 0.0) == on_the_fret && !mended;
    }
    return list;
}

void say_measure_first(const brief *b, telling *t)
{
    tell_list missing = first_missing(b, false), on_fret = first_missing(b, true);
    if (tell_chosen(&missing) > 0) {
        tell(t, "Measure the gap at the 1st fret of ");
        tell_which(t, &missing);
        tell(t, ", fretted at the 3rd.%s", tell_chosen(&on_fret) > 0 ? " " : "");
    }
    if (tell_chosen(&on_fret) > 0) {
        bool one = tell_chosen(&on_fret) == 1;
        tell(t, "Fretted at the 3rd, ");
        tell_which(t, &on_fret);
        tell(t,
             " %s on the 1st fret, so there is no gap to measure. Measure the gap of the open "
             "string there and write it as the open gap.%s",
             one ? "lies" : "lie",
             b->plan->bench.zero_fret ? ""
                                      : " If the string lies on the fret when open, too, put a "
                                        "slip of paper under it in its slot and measure then.");
    }
}

void say_measure_action(const brief *b, telling *t)
{
    tell_list missing = {.count = b->strings};
    for (int i = 0; i < missing.count; i++) {
        missing.chosen[i] = !(b->plan->bench.gaps.action[i] > 0.0);
    }
    tell(t, "Measure the action at the 12th fret of ");
    tell_which(t, &missing);
    tell(t, ", open. Where a string lies on a fret, raise it at the saddle until it is clear, and "
            "leave it so: a packing stays in. Then measure.");
}

void say_gaps_again(const brief *b, telling *t)
{
    tell_list open = {.count = b->strings}, crown = open;
    for (int i = 0; i < open.count; i++) {
        open.chosen[i] = b->nut.slot[i].apart && plan_open_apart(b->plan, i);
        crown.chosen[i] = b->nut.slot[i].apart && !open.chosen[i];
    }
    if (tell_chosen(&open) > 0) {
        tell(t, "Measure the gap at the 1st fret of ");
        tell_which(t, &open);
        tell(t, " again, both fretted and open: the two readings do not fit the same slot.%s",
             tell_chosen(&crown) > 0 ? " " : "");
    }
    if (tell_chosen(&crown) > 0) {
        tell(t, "Measure the gap at the 1st fret of ");
        tell_which(t, &crown);
        tell(t,
             " again, %s. There lay a straightedge on the other frets, too, and measure how far "
             "the zero fret's crown is off it. The two readings do not fit together.",
             brief_hold(b->plan->bench.targets.first_held));
    }
}

void say_measure_crown(const brief *b, telling *t)
{
    (void)b;
    tell(t,
         "Measure the fret height: how far the 1st fret stands over the board where it is sound. "
         "The feeler stacks depend on it, and any error in it is an error in them.");
}

void say_measure_saddle(const brief *b, telling *t)
{
    bool again = b->plan->saddle.present_disagree ||
                 sil_withheld_by(&b->plan->saddle_withheld, SIL_SADDLE_MOVED);
    tell(t, again
                ? "The saddle's readings do not fit together: measure it again. Take how far it "
                  "stands out of the bridge by ruler, from the bridge's top to the underside of "
                : "Measure how far the saddle stands out of the bridge, by ruler from the bridge's "
                  "top to the underside of ");
    tell_outer_strings(t);
    tell(t,
         b->saddle.working == SIL_WORKING_TOP
             ? ". Cut nothing off it before that."
             : ". If it comes out, a caliper is better: measure from its bottom to its top where "
               "the string sits, and the depth of its slot. Then the caliper can also say where to "
               "stop. Cut nothing off it before that.");
}

void say_check_written(const brief *b, telling *t)
{
    (void)b;
    tell(t, "Write it on the sheet and plan again.");
}

void say_read_again(const brief *b, telling *t)
{
    (void)b;
    tell(t,
         "Tune, let it settle overnight if you can, and measure everything again: relief, gap at "
         "the 1st fret, action.");
}

void say_check_read_again(const brief *b, telling *t)
{
    (void)b;
    tell(t, "Do not cut nut or saddle before that: their figures today are a forecast.");
}

/* Whether the relief is out of its range and no rod is there, or left, to put it right. */
static bool relief_stays(const brief *b)
{
    sil_side side = b->plan->stages.relief_side;
    return side == SIL_UNDER || side == SIL_OVER;
}

void say_check(const brief *b, telling *t)
{
    tell(t,
         b->plan->done
             ? relief_stays(b)
                   ? "Nothing is left to cut: every reading is in its range but the relief, "
                     "which stays as it is. Play every string at every fret and listen."
                   : "Nothing is left to cut: every reading is in its range. Play every string at "
                     "every fret and listen."
         : plan_makes(b->plan)
             ? "The new part waits for that. Then write it on the sheet, and plan again."
         : b->slackens
             ? "The strings were slack: tune, and let the neck settle, overnight if you can. "
               "Read the relief first, then everything else, write it and plan again."
             : "Tune, measure everything again, write it on the sheet and plan again.");
    if (b->asks_cents) {
        tell(t,
             " Then fret each string at 12, read the tuner against the octave of the open string, "
             "and write down the cents.");
    }
}

void say_check_check(const brief *b, telling *t)
{
    tell(t, b->plan->done ? "Every note rings clean, as hard as the owner plays."
                          : "Done when every reading is in its range, or at its edge.");
}

void say_finished(const brief *b, sil_stage_name stage, telling *t)
{
    const sil_stages *stages = &b->plan->stages;
    const bool *again = stage == SIL_NUT ? stages->finish_slot : stages->finish_saddle;
    bool any = false;
    for (int i = 0; i < b->strings; i++) {
        any = any || again[i];
    }
    if (any) {
        tell(
            t,
            " Last time's cut stopped short of its target on purpose. This is the rest of it, even "
            "where a string is in its range by now.");
    }
}

void say_finer(const brief *b, sil_stage_name stage, telling *t)
{
    double tool = plan_finer_tool(b->plan, stage);
    if (!sil_known(tool)) {
        tell(t, ", and a finer reading alone would not help: the range is too narrow.");
        return;
    }
    tell(t, ". Measured to \u00b1");
    tell_length(t, "tool", -1, figure_nearest(b, tool));
    tell(t, " (%s) a pass can be given.",
         tool >= 0.05   ? "feelers under the string"
         : tool >= 0.02 ? "feelers in fine steps, or a dial gauge"
                        : "a dial indicator");
}
