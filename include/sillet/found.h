/* SPDX-License-Identifier: MIT */
/* What a plan says: the codes of its findings, and the acts of its steps. */
#ifndef SILLET_FOUND_H
#define SILLET_FOUND_H

#include "core/fit.h"

#ifdef __cplusplus
extern "C" {
#endif

/* What a finding is about. sil_code_word gives the word for it in the result. */
typedef enum sil_code {
    SIL_BACK_BOW,
    SIL_RELIEF_LOW,
    SIL_RELIEF_HIGH,
    SIL_RELIEF_FIRST, /* in its range, but more than the saddle has room for */
    SIL_RELIEF_UNKNOWN,
    SIL_ROD_LIMIT,
    SIL_FRET_WORN,
    SIL_FRET_HIGH,
    SIL_CROWN_THIN,
    SIL_CROWNS_UNREAD,
    SIL_SLOT_LOW,
    SIL_SLOT_HIGH,
    SIL_SADDLE_LOW,
    SIL_SADDLE_HIGH,
    SIL_PROTRUSION_LOW,
    SIL_PROTRUSION_HIGH,
    SIL_SEAT_SHALLOW,
    SIL_BREAK_ANGLE_LOW,
    SIL_NECK_ANGLE,
    SIL_CLIMATE,
    SIL_BRIDGE_LIFTED,
    SIL_BRACES_LOOSE,
    SIL_NOT_TUNED,
    SIL_READINGS_DISAGREE,
    SIL_TOOL_COARSE,
    SIL_FORECAST,
    SIL_ADJUST_LIMIT,
    SIL_EDGE_NARROW,
    SIL_TWIST, /* read: how much higher over its target the action is at the treble than at the bass */
    SIL_TECHNIQUE,
    SIL_UNEXPLAINED,
    SIL_TOO_CLOSE,
    SIL_SADDLE_LOOSE,
    SIL_ATTACK,
    SIL_STRING_UNKNOWN,
    SIL_STRING_STIFF,
    SIL_OFF_SADDLE,
    SIL_OFF_FORECAST,
    SIL_MOVED,
    SIL_ROD_UNKNOWN,
    SIL_WRONG_WAY,
    SIL_ZERO_FRET_LOW,
    SIL_ZERO_FRET_HIGH,
    SIL_CORE_ASSUMED,
    SIL_SADDLE_UNREAD,   /* it is not known how far the saddle stands out of the bridge */
    SIL_SADDLE_MOVED,    /* its height by caliper changed, though it was not worked */
    SIL_AIM_RAISED,      /* a string ends above its target, where it still rings clean */
    SIL_AIM_SHORT,       /* a string stops above its target, since the saddle has no room left */
    SIL_SHORT_BY_BOW,    /* the saddle has no room left, and the neck's bow accounts for it */
    SIL_SHORT_BY_BRIDGE, /* the same on a floating bridge: its notches or feet come first */
    SIL_AT_EDGE,
    SIL_READING_ODD,
    SIL_SADDLE_CURVE,
    SIL_CARRIED,
    SIL_TUNE_OUT,         /* a string is sharp or flat at fret 12 */
    SIL_TUNE_LEFT,        /* what moving the bridge's ends leaves of that */
    SIL_TUNE_SHORT,       /* the piece ends before the place where the string should leave it */
    SIL_TUNE_UNUSED,      /* cents were read of worn strings */
    SIL_MAKE_NUT,         /* a nut is made from a blank */
    SIL_MAKE_SADDLE,      /* a saddle is made from a blank */
    SIL_RELIEF_AS_TARGET, /* relief could not be read, and its target stands for it */
    SIL_NUT_AS_TARGET,    /* gaps at fret 1 could not be read, and their targets stand for them */
    SIL_NUT_OVER_DENT,    /* fret 1 is worn under a string; the new slot is not cut down to it */
    SIL_IMPOSSIBLE,       /* a figure of a part comes out as no part can be */
    SIL_BRIDGE_SAG, /* a bridge in one piece that is lower in its middle than the board is curved */
    SIL_UNDER_FRETS,   /* a string would lie on the frets once rod and frets are worked */
    SIL_READING_ORDER, /* a list of readings may have been begun at the wrong end */
    SIL_CODES
} sil_code;

typedef enum sil_level {
    SIL_LEVEL_FINE,  /* a note; nothing to do */
    SIL_LEVEL_WATCH, /* all right for now, or not certain */
    SIL_LEVEL_ACT,   /* a step puts it right */
    SIL_LEVEL_STOP   /* must be put right before any other work */
} sil_level;

#define SIL_FINDINGS_MAX 192

typedef struct sil_finding {
    sil_code code;
    sil_level level;
    int string;           /* index, or -1 */
    int fret;             /* or -1 */
    double read;          /* the figure that caused it, in its own unit; may be unknown */
    double low, high;     /* the range or limit that the figure is compared with */
    sil_stage_name stage; /* the stage that puts it right; SIL_NOW where none does */
} sil_finding;

/* What a step of work does. It also decides which figures the step has. */
typedef enum sil_act {
    SIL_ACT_PREPARE, /* condition, strings, pitch, playing position, climate */
    SIL_ACT_STOP,    /* bridge, braces or climate must be put right first */
    SIL_ACT_MEASURE_RELIEF,
    SIL_ACT_STRAIGHTEDGE, /* relief read as 0 under a string: the neck is straight or back-bowed */
    SIL_ACT_READ_CROWNS,
    SIL_ACT_LOOK_AT_SADDLE,
    SIL_ACT_FIT_SADDLE,
    SIL_ACT_MEASURE_FIRST,
    SIL_ACT_MEASURE_ACTION,
    SIL_ACT_READ_GAPS_AGAIN, /* the gaps read held and open do not agree */
    SIL_ACT_READ_ODD,        /* readings that may be slips of the pen */
    SIL_ACT_MEASURE_CROWN,
    SIL_ACT_MEASURE_SADDLE,
    SIL_ACT_FIND_ROD,   /* find out whether there is a truss rod */
    SIL_ACT_ROD_BY_EAR, /* turn until a tapped string just pings; measure after that */
    SIL_ACT_NECK_BOW,   /* the neck is bowed too far for a set-up, and has no rod */
    SIL_ACT_ROD_FIRST,  /* a rod that cannot take the bow out is put right, or the neck is */
    SIL_ACT_BACK_BOW,   /* a back-bow that no rod can ease */
    SIL_ACT_ROD,
    SIL_ACT_READ_AGAIN, /* everything, after work on the rod or the frets */
    SIL_ACT_SEAT_FRETS,
    SIL_ACT_LEVEL_FRETS,
    SIL_ACT_NEW_FRETS,
    SIL_ACT_FILE_SLOTS,
    SIL_ACT_FILL_SLOT,
    SIL_ACT_SHIM_NUT,
    SIL_ACT_SAND_SADDLE,
    SIL_ACT_DRESS_SADDLE,
    SIL_ACT_SHIM_SADDLE,
    SIL_ACT_NEW_SADDLE,
    SIL_ACT_TURN_SCREWS,
    SIL_ACT_TURN_POSTS,
    SIL_ACT_BRIDGE_CURVE,    /* string heights that two posts cannot give */
    SIL_ACT_ZERO_FRET,       /* it is too high */
    SIL_ACT_RAISE_ZERO_FRET, /* it is too low */
    SIL_ACT_NECK_ANGLE,
    SIL_ACT_NECK_SHIM,
    SIL_ACT_NECK_RESET,
    SIL_ACT_TUNE_SCREWS,
    SIL_ACT_TUNE_ENDS,
    SIL_ACT_FILE_PEAKS,     /* of the saddle's top, to where the strings should leave it */
    SIL_ACT_TUNED_SADDLE,   /* a new saddle for that */
    SIL_ACT_FIT_NUT,        /* a nut from a blank: bottom, thickness and length */
    SIL_ACT_MARK_NUT,       /* the line of the frets and the centres of its slots */
    SIL_ACT_CUT_NUT,        /* its slots, to feelers and what is left on at first */
    SIL_ACT_SHAPE_NUT,      /* its top */
    SIL_ACT_MEASURE_BRIDGE, /* what a new saddle's height follows from */
    SIL_ACT_FIT_BLANK,      /* a saddle from a blank: bottom, thickness and length */
    SIL_ACT_SHAPE_SADDLE,   /* its heights, with what is left on at first */
    SIL_ACT_READ_NEW,       /* strings on, tune and read, with the new part in */
    SIL_ACT_CHOOSE, /* a target would have strings buzz under the pick: say which gives way */
    SIL_ACT_CHECK,  /* tune, and read everything again */
    SIL_ACTS
} sil_act;

#define SIL_STEPS_MAX 24

typedef struct sil_step {
    sil_stage_name stage;
    sil_act act;
} sil_step;

/* sil_code_word, sil_level_word, sil_act_word: the word for it in the result, for scripts.
 * Returned: fixed text, not to be freed; a word keeps its meaning within a major version
 */
const char *sil_code_word(sil_code code);
const char *sil_level_word(sil_level level);
const char *sil_act_word(sil_act act);

#ifdef __cplusplus
}
#endif
#endif
