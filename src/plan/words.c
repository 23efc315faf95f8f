/* SPDX-License-Identifier: MIT */
/* Fixed words for programs: they stay as they are, whatever a person is told. */
#include <sillet/plan.h>

const char *sil_code_word(sil_code code)
{
    switch (code) {
    case SIL_BACK_BOW:
        return "back-bow";
    case SIL_RELIEF_LOW:
        return "relief-low";
    case SIL_RELIEF_HIGH:
        return "relief-high";
    case SIL_RELIEF_UNKNOWN:
        return "relief-unknown";
    case SIL_ROD_LIMIT:
        return "rod-limit";
    case SIL_FRET_WORN:
        return "fret-worn";
    case SIL_FRET_HIGH:
        return "fret-high";
    case SIL_CROWN_THIN:
        return "crown-thin";
    case SIL_CROWNS_UNREAD:
        return "crowns-unread";
    case SIL_SLOT_LOW:
        return "slot-low";
    case SIL_SLOT_HIGH:
        return "slot-high";
    case SIL_SADDLE_LOW:
        return "saddle-low";
    case SIL_SADDLE_HIGH:
        return "saddle-high";
    case SIL_PROTRUSION_LOW:
        return "protrusion-low";
    case SIL_PROTRUSION_HIGH:
        return "protrusion-high";
    case SIL_SEAT_SHALLOW:
        return "seat-shallow";
    case SIL_BREAK_ANGLE_LOW:
        return "break-angle-low";
    case SIL_NECK_ANGLE:
        return "neck-angle";
    case SIL_CLIMATE:
        return "climate";
    case SIL_BRIDGE_LIFTED:
        return "bridge-lifted";
    case SIL_BRACES_LOOSE:
        return "braces-loose";
    case SIL_NOT_TUNED:
        return "not-tuned";
    case SIL_READINGS_DISAGREE:
        return "readings-disagree";
    case SIL_TOOL_COARSE:
        return "tool-coarse";
    case SIL_FORECAST:
        return "forecast";
    case SIL_ADJUST_LIMIT:
        return "adjust-limit";
    case SIL_EDGE_NARROW:
        return "edge-narrow";
    case SIL_TWIST:
        return "twist";
    case SIL_TECHNIQUE:
        return "technique";
    case SIL_UNEXPLAINED:
        return "unexplained";
    case SIL_ATTACK:
        return "attack";
    case SIL_STRING_UNKNOWN:
        return "string-unknown";
    case SIL_STRING_STIFF:
        return "string-stiff";
    case SIL_OFF_SADDLE:
        return "off-saddle";
    case SIL_OFF_FORECAST:
        return "off-forecast";
    case SIL_ROD_UNKNOWN:
        return "rod-unknown";
    case SIL_WRONG_WAY:
        return "wrong-way";
    case SIL_MOVED:
        return "moved";
    case SIL_ZERO_FRET_LOW:
        return "zero-fret-low";
    case SIL_ZERO_FRET_HIGH:
        return "zero-fret-high";
    case SIL_CODES:
        break;
    }
    return NULL;
}

const char *sil_level_word(sil_level level)
{
    switch (level) {
    case SIL_LEVEL_FINE:
        return "fine";
    case SIL_LEVEL_WATCH:
        return "watch";
    case SIL_LEVEL_ACT:
        return "act";
    case SIL_LEVEL_STOP:
        return "stop";
    }
    return NULL;
}

const char *sil_stage_word(sil_stage_name stage)
{
    switch (stage) {
    case SIL_NOW:
        return "now";
    case SIL_ROD:
        return "rod";
    case SIL_FRETS:
        return "frets";
    case SIL_NUT:
        return "nut";
    case SIL_SADDLE:
        return "saddle";
    case SIL_STAGES:
        break;
    }
    return NULL;
}

const char *sil_cause_word(sil_cause_name cause)
{
    switch (cause) {
    case SIL_CAUSE_RELIEF:
        return "relief";
    case SIL_CAUSE_CROWN:
        return "crown";
    case SIL_CAUSE_SLOT:
        return "slot";
    case SIL_CAUSE_SADDLE:
        return "saddle";
    case SIL_CAUSE_COMBINED:
        return "combined";
    case SIL_CAUSE_ATTACK:
        return "attack";
    case SIL_CAUSE_TECHNIQUE:
        return "technique";
    case SIL_CAUSE_UNEXPLAINED:
        return "unexplained";
    }
    return NULL;
}

const char *sil_act_word(sil_act act)
{
    switch (act) {
    case SIL_ACT_PREPARE:
        return "prepare";
    case SIL_ACT_STOP:
        return "stop";
    case SIL_ACT_MEASURE_RELIEF:
        return "measure-relief";
    case SIL_ACT_STRAIGHTEDGE:
        return "straightedge";
    case SIL_ACT_READ_CROWNS:
        return "look-at-frets";
    case SIL_ACT_MEASURE_FIRST:
        return "measure-first";
    case SIL_ACT_MEASURE_ACTION:
        return "measure-action";
    case SIL_ACT_READ_GAPS_AGAIN:
        return "measure-gaps-again";
    case SIL_ACT_MEASURE_CROWN:
        return "measure-fret-height";
    case SIL_ACT_MEASURE_SADDLE:
        return "measure-saddle";
    case SIL_ACT_FIND_ROD:
        return "find-rod";
    case SIL_ACT_ROD_BY_EAR:
        return "rod-by-ear";
    case SIL_ACT_NECK_BOW:
        return "neck-bow";
    case SIL_ACT_ROD:
        return "rod";
    case SIL_ACT_READ_AGAIN:
        return "measure-again";
    case SIL_ACT_SEAT_FRETS:
        return "seat-frets";
    case SIL_ACT_LEVEL_FRETS:
        return "level-frets";
    case SIL_ACT_NEW_FRETS:
        return "new-frets";
    case SIL_ACT_FILE_SLOTS:
        return "file-slots";
    case SIL_ACT_FILL_SLOT:
        return "fill-slot";
    case SIL_ACT_SHIM_NUT:
        return "shim-nut";
    case SIL_ACT_NEW_NUT:
        return "new-nut";
    case SIL_ACT_SAND_SADDLE:
        return "sand-saddle";
    case SIL_ACT_DRESS_SADDLE:
        return "dress-saddle";
    case SIL_ACT_SHIM_SADDLE:
        return "shim-saddle";
    case SIL_ACT_NEW_SADDLE:
        return "new-saddle";
    case SIL_ACT_TURN_SCREWS:
        return "turn-screws";
    case SIL_ACT_TURN_POSTS:
        return "turn-posts";
    case SIL_ACT_BRIDGE_CURVE:
        return "bridge-curve";
    case SIL_ACT_ZERO_FRET:
        return "zero-fret";
    case SIL_ACT_NECK_ANGLE:
        return "neck-angle";
    case SIL_ACT_NECK_SHIM:
        return "neck-shim";
    case SIL_ACT_NECK_RESET:
        return "neck-reset";
    case SIL_ACT_CHECK:
        return "check";
    case SIL_ACTS:
        break;
    }
    return NULL;
}
