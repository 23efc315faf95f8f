/* SPDX-License-Identifier: MIT */
/* The fixed words of the steps, for programs. */
#include <sillet/plan.h>

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
