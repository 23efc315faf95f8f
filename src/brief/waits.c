/* SPDX-License-Identifier: MIT */
/* Why a part waits, what for, and what is done about it. */
#include "codes.h"
#include "within.h"

code_wait code_wait_of(sil_code code)
{
    switch (code) {
    case SIL_BACK_BOW:
        return (code_wait){.why = "the neck may be back-bowed, which a string cannot show",
                           .for_what = "a straightedge"};
    case SIL_RELIEF_UNKNOWN:
        return (code_wait){.why = "relief was not measured", .for_what = "the relief"};
    case SIL_ROD_LIMIT:
        return (code_wait){
            .why = "the neck's bow comes first, and no truss rod puts it right as it is",
            .for_what = "the neck's bow"};
    case SIL_FRET_WORN:
        return (code_wait){.why = "the frets are levelled first", .for_what = "the frets"};
    case SIL_CROWN_THIN:
        return (code_wait){.why = "new frets come first", .for_what = "new frets"};
    case SIL_CROWNS_UNREAD:
        return (code_wait){.why = "nobody has looked at the frets for wear",
                           .for_what = "a look at the frets"};
    case SIL_PROTRUSION_LOW:
        return (code_wait){.why = "the saddle would stand too low even at the top of the range",
                           .for_what = "the neck's angle"};
    case SIL_CLIMATE:
        return (code_wait){.why = "the humidity is outside its limits",
                           .for_what = "the humidity",
                           .next = "bring the humidity back"};
    case SIL_BRIDGE_LIFTED:
        return (code_wait){
            .why = "the bridge is lifting", .for_what = "the bridge", .next = "glue the bridge"};
    case SIL_BRACES_LOOSE:
        return (code_wait){
            .why = "a brace is loose", .for_what = "a brace", .next = "glue the brace"};
    case SIL_NOT_TUNED:
        return (code_wait){.why = "the strings were not at pitch",
                           .for_what = "strings at pitch",
                           .next = "tune, and measure again"};
    case SIL_READINGS_DISAGREE:
        return (code_wait){.why = "two readings of one thing do not fit together",
                           .for_what = "readings that fit together"};
    case SIL_FORECAST:
        return (code_wait){.why = "the truss rod is turned first", .for_what = "the truss rod"};
    case SIL_ADJUST_LIMIT:
        return (code_wait){
            .why = "the saddle reaches the end of its travel before the strings are in range",
            .for_what = "a repairer"};
    case SIL_SADDLE_LOOSE:
        return (code_wait){.why = "the saddle is not firm, so no action read over it is true",
                           .for_what = "a firm saddle"};
    case SIL_ATTACK:
        return (code_wait){.why = "its target is too low for the pick that was chosen",
                           .for_what = "a target, or a pick"};
    case SIL_ROD_UNKNOWN:
        return (code_wait){.why = "it is not known whether there is a truss rod",
                           .for_what = "a look for a rod"};
    case SIL_MOVED:
        return (code_wait){.why = "the season has moved the instrument since the visit before",
                           .for_what = "its usual humidity"};
    case SIL_ZERO_FRET_LOW:
    case SIL_ZERO_FRET_HIGH:
        return (code_wait){.why = "the zero fret is put right first", .for_what = "the zero fret"};
    case SIL_SADDLE_UNREAD:
        return (code_wait){.why = "it is not known how far the saddle stands out of the bridge",
                           .for_what = "the saddle's height"};
    case SIL_SADDLE_MOVED:
        return (code_wait){.why = "the saddle was not worked, and yet the caliper reads otherwise",
                           .for_what = "the saddle's height"};
    case SIL_READING_ODD:
        return (code_wait){.why = "a reading stands out and must be taken again",
                           .for_what = "a second reading",
                           .next = "measure again"};
    case SIL_READING_ORDER:
        return (code_wait){.why = "a list of readings may have been begun at the wrong end",
                           .for_what = "the order of the strings",
                           .next = "look at the list again"};
    case SIL_TUNE_OUT:
        return (code_wait){.why = "its peaks are filed first, while it has the height for them",
                           .for_what = "its peaks"};
    case SIL_MAKE_NUT:
        return (code_wait){.why = "a new nut comes first", .for_what = "the new nut"};
    case SIL_IMPOSSIBLE:
        return (code_wait){.why = "a figure comes out as no part can be",
                           .for_what = "figures that can be",
                           .next = "measure again"};
    /* No part waits for these. */
    case SIL_RELIEF_LOW:
    case SIL_RELIEF_HIGH:
    case SIL_RELIEF_FIRST:
    case SIL_FRET_HIGH:
    case SIL_SLOT_LOW:
    case SIL_SLOT_HIGH:
    case SIL_SADDLE_LOW:
    case SIL_SADDLE_HIGH:
    case SIL_PROTRUSION_HIGH:
    case SIL_SEAT_SHALLOW:
    case SIL_BREAK_ANGLE_LOW:
    case SIL_NECK_ANGLE:
    case SIL_TOOL_COARSE:
    case SIL_EDGE_NARROW:
    case SIL_TWIST:
    case SIL_TECHNIQUE:
    case SIL_UNEXPLAINED:
    case SIL_TOO_CLOSE:
    case SIL_STRING_UNKNOWN:
    case SIL_STRING_STIFF:
    case SIL_OFF_SADDLE:
    case SIL_OFF_FORECAST:
    case SIL_WRONG_WAY:
    case SIL_CORE_ASSUMED:
    case SIL_AIM_RAISED:
    case SIL_AIM_SHORT:
    case SIL_SHORT_BY_BOW:
    case SIL_SHORT_BY_BRIDGE:
    case SIL_AT_EDGE:
    case SIL_CARRIED:
    case SIL_SADDLE_CURVE:
    case SIL_BRIDGE_SAG:
    case SIL_TUNE_LEFT:
    case SIL_TUNE_SHORT:
    case SIL_TUNE_UNUSED:
    case SIL_MAKE_SADDLE:
    case SIL_RELIEF_AS_TARGET:
    case SIL_NUT_AS_TARGET:
    case SIL_NUT_OVER_DENT:
    case SIL_UNDER_FRETS:
    case SIL_CODES:
        break;
    }
    return (code_wait){NULL, NULL, NULL};
}

const char *brief_waits(sil_code code)
{
    return code_wait_of(code).why;
}

static bool any_unread(const sil_plan *plan, const double *gaps, const double *instead)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (!sil_known(gaps[i]) && !(instead && sil_known(instead[i]))) {
            return true;
        }
    }
    return false;
}

static bool any_odd(const sil_plan *plan)
{
    const sil_standing *standing = &plan->bench.standing;
    bool odd = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        odd = odd || standing->action_odd[i] || standing->first_odd[i];
    }
    return odd;
}

brief_missing brief_missing_of(const sil_plan *plan)
{
    const sil_gaps *gaps = &plan->bench.gaps;
    if (plan_makes(plan)) {
        return (brief_missing){"a reading is missing", "missing readings", NULL};
    }
    if (any_unread(plan, gaps->first, gaps->first_open)) {
        return (brief_missing){"the gap at the 1st fret is missing", "gaps at the 1st fret", NULL};
    }
    if (any_unread(plan, gaps->action, NULL)) {
        return (brief_missing){"the action is missing", "the action", NULL};
    }
    if (any_odd(plan)) {
        code_wait again = code_wait_of(SIL_READING_ODD);
        return (brief_missing){again.why, again.for_what, NULL};
    }
    return (brief_missing){"a string lies on a fret, and that comes first", "a string off a fret",
                           "until no string lies on a fret"};
}

void brief_fill_whys(const sil_plan *plan, const sil_withheld *withheld, brief_stage *stage)
{
    for (int k = 0; k < withheld->count; k++) {
        stage->why[stage->whys++] = brief_waits(withheld->by[k]);
    }
    if (stage->whys == 0) {
        stage->why[stage->whys++] = brief_missing_of(plan).why;
    }
}
