/* SPDX-License-Identifier: MIT */
/* The fit: from readings to heights, and from heights through the work in its order.
 *
 * Every height is to the underside of the string, which is what a ruler and a feeler see.
 */
#ifndef SILLET_FIT_H
#define SILLET_FIT_H

#include "board.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How the gap at the first fret is read: the string open, or lying on the crown of fret 2 or 3. */
typedef enum sil_hold { SIL_HOLD_OPEN = 0, SIL_HOLD_2 = 2, SIL_HOLD_3 = 3 } sil_hold;

/* Readings at the strings. 0 in action or in a held gap is "at or under": no figure follows. What
 * was not read is SIL_UNKNOWN, not 0: begin with those of sil_reading_clear. */
typedef struct sil_gaps {
    double action[SIL_STRINGS_MAX];     /* over fret action_at, mm, > 0 or unknown */
    int action_at;                      /* 5..frets */
    bool capo;                          /* action read with a capo at fret 1 */
    double first[SIL_STRINGS_MAX];      /* gap at fret 1, mm */
    sil_tap first_tap[SIL_STRINGS_MAX]; /* where no gauge was used */
    sil_hold first_held;
    double first_open[SIL_STRINGS_MAX]; /* open gap read as well; where known, it decides */
} sil_gaps;

typedef struct sil_band {
    double low, aim, high;
} sil_band;

typedef struct sil_targets {
    sil_band relief;
    sil_band action[SIL_STRINGS_MAX]; /* open string, at fret 12 */
    sil_band first[SIL_STRINGS_MAX];
    sil_hold first_held;
} sil_targets;

/* What each tool reads to, plus or minus, mm. */
typedef struct sil_tools {
    double action, first, relief, caliper;
} sil_tools;

/* How a neck follows its rod against an even bend: what it may be, and its standard uncertainty
 * before it is known and once two visits have shown it (common practice, no source). */
#define SIL_ROD_RATIO_LEAST 0.4
#define SIL_ROD_RATIO_MOST 1.2
#define SIL_ROD_SPREAD 0.25
#define SIL_ROD_SPREAD_KNOWN 0.1

/* All that the stages need, as plain figures. */
typedef struct sil_bench {
    sil_board board;
    sil_relief_reading relief;
    sil_gaps gaps;
    sil_crowns crowns; /* as read; all 0 where they were called sound or not read */
    sil_targets targets;
    sil_tools tools;
    bool rod_works;     /* a rod is there and moves */
    double rod_ratio;   /* change of heights this neck shows over what an even bend gives; 1 */
    double rod_spread;  /* standard uncertainty of that ratio */
    double wear_limit;  /* a crown further off the line than this is worked, mm */
    double crown;       /* crown height over the board where sound, mm; may be unknown */
    double least_crown; /* under this, new frets, mm */
    bool zero_fret;     /* the crown of fret 0 sets the height at the nut: no slot is filed */
} sil_bench;

typedef enum sil_stage_name {
    SIL_NOW,
    SIL_ROD,
    SIL_FRETS,
    SIL_NUT,
    SIL_SADDLE,
    SIL_STAGES
} sil_stage_name;

/* What a stage finds for one string, against the range of its target. */
typedef enum sil_verdict { SIL_LEAVE, SIL_TAKE, SIL_RAISE, SIL_WAIT } sil_verdict;

/* Work on the frets. */
typedef enum sil_fretwork {
    SIL_FRETS_LEAVE,
    SIL_FRETS_SEAT, /* proud crowns seated or spot-dressed; nothing else moves */
    SIL_FRETS_LEVEL,
    SIL_FRETS_NEW
} sil_fretwork;

/* What the stages hold. It points at nothing: it can be copied and kept. */
typedef struct sil_stages {
    sil_fit fit[SIL_STAGES]; /* the state each stage leaves */
    bool changed[SIL_STAGES];
    bool forecast[SIL_STAGES]; /* rests on a rod turned, frets levelled or frets replaced */
    sil_fretwork fretwork;
    double level_depth; /* taken off every crown by levelling, mm; else 0 */
    sil_verdict nut[SIL_STRINGS_MAX];
    double deepen[SIL_STRINGS_MAX];   /* slot to its aim, mm, + deeper, whatever the verdict */
    double deepen_u[SIL_STRINGS_MAX]; /* its standard uncertainty, mm */
    sil_verdict saddle[SIL_STRINGS_MAX];
    double lower[SIL_STRINGS_MAX];   /* saddle to its aim, mm, + down, whatever the verdict */
    double lower_u[SIL_STRINGS_MAX]; /* its standard uncertainty, mm */
} sil_stages;

/* sil_action: open-string action over a fret, to the underside of the string.
 * Given:    board   laid
 *           fit     bend, crowns and heights
 *           string  0..strings - 1
 *           fret    1..frets, or 12
 * Returned: mm, negative where the string would lie under that crown; SIL_UNKNOWN where a height is
 */
double sil_action(const sil_board *board, const sil_fit *fit, int string, int fret);

/* sil_first_gap: gap at fret 1, the string open or bearing on the crown of fret 2 or 3.
 * Given:    board, fit, string  as sil_action
 *           hold                how the string is held
 * Returned: mm; SIL_UNKNOWN where a height is, or the board has no such fret
 */
double sil_first_gap(const sil_board *board, const sil_fit *fit, int string, sil_hold hold);

/* sil_leverage: how much the action at fret 12 moves for 1 mm at the saddle.
 * Given:    board   laid
 *           string  0..strings - 1
 * Returned: mm by mm, about a half
 */
double sil_leverage(const sil_board *board, int string);

/* sil_fit_read: heights at nut and saddle from the readings, for the bend and crowns in fit.
 * Given:    board  laid
 *           gaps   as read; 0 and unknown ones settle nothing
 *           fit    bend and crowns set
 * Returned: fit    nut_height, saddle_height, mm; SIL_UNKNOWN where the readings do not settle them
 * Notes:    an open gap settles the nut together with the action; a held gap alone, since it does
 *           not see the saddle.
 */
void sil_fit_read(const sil_board *board, const sil_gaps *gaps, sil_fit *fit);

/* sil_stages_run: from the readings through rod, frets, nut and saddle, each from what the one
 * before leaves, to verdicts, whole cuts and how sure each is.
 * Given:    bench   all of it
 * Returned: stages  all but the saddle stage's strings left alone: sil_saddle_cut lowers them by
 *                   what the base loses
 * Notes:    the standard uncertainty of a cut follows each reading's rectangular spread
 *           (JCGM 100:2008, 4.3.7) and, after a rod is turned, the spread of the rod's ratio, with
 *           the verdicts held. Every cut is linear in the readings, so the slopes are exact.
 *           A target for the open string can be met at nut and saddle together only; where its
 *           range and that joint cut disagree in direction, the slot is left to the saddle.
 */
void sil_stages_run(const sil_bench *bench, sil_stages *stages);

/* sil_neck_moves: a state on a neck that has come to another bend, by its rod or by itself.
 * Given:    board  laid
 *           bend   the new one, 1/mm
 *           ratio  of this neck, as in sil_bench
 *           fit    as it was
 * Returned: fit    nut and saddle heights over the line through the crowns as it now lies
 * Accuracy: exact for an even bend and ratio 1; real necks move the action by half as much to as
 *           much again (common practice, no source).
 */
void sil_neck_moves(const sil_board *board, double bend, double ratio, sil_fit *fit);

/* One thing put to its aim: relief (as a rod moves it), crowns (none off), slot or saddle. */
typedef enum sil_remedy { SIL_TO_RELIEF, SIL_TO_CROWNS, SIL_TO_SLOT, SIL_TO_SADDLE } sil_remedy;

/* sil_remedy_fit: a state with one thing put to its aim and all else as it is.
 * Given:    bench   its targets, and the ratio of its rod
 *           remedy  the one thing
 *           fit     bend, heights and crowns
 * Returned: fit     as the stage of that name would leave it
 * Notes:    what the causes of a buzz are tried by
 */
void sil_remedy_fit(const sil_bench *bench, sil_remedy remedy, sil_fit *fit);

/* sil_rectangular: the standard uncertainty of a tool read to plus or minus half_width, every place
 * in between as likely.
 * Given:    half_width  mm, >= 0
 * Returned: half_width / sqrt(3), mm
 * Reference: JCGM 100:2008, 4.3.7
 */
double sil_rectangular(double half_width);

/* Guards, in standard uncertainties: at most one cut in twenty goes past the low edge of a range
 * (one string, readings rectangular in any mix), and one set of strings in twenty. */
#define SIL_GUARD_ONE 1.68
#define SIL_GUARD_SET 2.2

/* sil_first_pass: how much of a cut to take before reading again, mm.
 * Given:    cut     whole cut to the aim, mm
 *           to_low  cut that would bring the string to the low edge of its range, mm
 *           u       standard uncertainty of the cut, mm
 *           guard   SIL_GUARD_ONE or SIL_GUARD_SET
 * Returned: min(cut, max(0, to_low - guard u)), mm, never negative; SIL_UNKNOWN where one of these
 *           is
 */
double sil_first_pass(double cut, double to_low, double u, double guard);

/* sil_below, sil_above: whether a figure is past an edge.
 * Given:    value, low, high  mm
 * Returned: false for a figure on the edge, whatever the last bit of the arithmetic says: within a
 *           millionth of a millimetre, far under any tool and far over the rounding. False where
 *           either is unknown
 */
bool sil_below(double value, double low);
bool sil_above(double value, double high);

/* sil_shim_thickness: a rise rounded up to the step shims come in.
 * Given:    rise  mm
 *           step  mm, > 0
 * Returned: mm; a rise that is a whole number of steps but for rounding takes no step more
 */
double sil_shim_thickness(double rise, double step);

/* sil_nut_to_low, sil_saddle_to_low: the cut that would bring a string to the low edge of its
 * range, on the state that stage starts from.
 * Given:    bench   its board and targets
 *           stages  run
 *           string  0..strings - 1
 * Returned: mm, + down
 */
double sil_nut_to_low(const sil_bench *bench, const sil_stages *stages, int string);
double sil_saddle_to_low(const sil_bench *bench, const sil_stages *stages, int string);

#ifdef __cplusplus
}
#endif
#endif
