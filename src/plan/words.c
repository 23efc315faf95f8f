/* SPDX-License-Identifier: MIT */
/* The fixed words for programs. They do not change when the words for people do. */
#include <sillet/plan.h>

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
    case SIL_TUNE:
        return "tune";
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
    case SIL_CAUSE_TARGETS:
        return "targets";
    case SIL_CAUSE_TOO_CLOSE:
        return "too-close";
    }
    return NULL;
}

const char *sil_tool_word(sil_tool tool)
{
    switch (tool) {
    case SIL_TOOL_ACTION:
        return "action";
    case SIL_TOOL_FIRST:
        return "first";
    case SIL_TOOL_RELIEF:
        return "relief";
    case SIL_TOOL_CALIPER:
        return "caliper";
    case SIL_TOOLS:
        break;
    }
    return NULL;
}
