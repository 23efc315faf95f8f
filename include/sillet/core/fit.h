/* SPDX-License-Identifier: MIT */
/* The fit: computes string heights from readings, then follows them through each stage of the work.
 *
 * Every height is to the underside of the string, because that is what a ruler and a feeler gauge
 * measure.
 */
#ifndef SILLET_FIT_H
#define SILLET_FIT_H

#include "bench.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef enum sil_stage_name {
    SIL_NOW,
    SIL_ROD,
    SIL_FRETS,
    SIL_NUT,
    SIL_SADDLE,
    SIL_STAGES,           /* those that change heights */
    SIL_TUNE = SIL_STAGES /* the last stage of a plan: it moves strings along, not up and down */
} sil_stage_name;

/* What is done with one string in a stage, from its height and the range of its target: leave it,
 * take wood or bone off to lower it, raise it, or wait. */
typedef enum sil_verdict { SIL_LEAVE, SIL_TAKE, SIL_RAISE, SIL_WAIT } sil_verdict;

/* Where a value is to its range. The edges have a width: just past one counts as in the range. */
typedef enum sil_side {
    SIL_WITHIN, /* in the range, or not known */
    SIL_AT_LOW, /* past the edge by less than its width */
    SIL_AT_HIGH,
    SIL_UNDER, /* out of the range */
    SIL_OVER
} sil_side;

/* Work on the frets. */
typedef enum sil_fretwork {
    SIL_FRETS_LEAVE,
    SIL_FRETS_SEAT, /* proud crowns are seated or spot-dressed; nothing else changes */
    SIL_FRETS_LEVEL,
    SIL_FRETS_NEW
} sil_fretwork;

/* The result of running the stages. It holds no pointers, so it can be copied and kept. */
typedef struct sil_stages {
    sil_fit fit[SIL_STAGES]; /* the instrument after each stage */
    bool changed[SIL_STAGES];
    bool forecast[SIL_STAGES]; /* depends on the rod being turned, or on the frets being
                                  levelled or replaced */
    sil_fretwork fretwork;
    double level_depth; /* how much levelling takes off every crown, mm; otherwise 0 */
    /* What each stage judges, where it is to its range, and its standard uncertainty, mm: the
     * relief as read, the gap at fret 1 after the frets, the action after the nut. */
    sil_side relief_side, first_side[SIL_STRINGS_MAX], action_side[SIL_STRINGS_MAX];
    double relief_u, first_u[SIL_STRINGS_MAX], action_u[SIL_STRINGS_MAX];
    sil_verdict nut[SIL_STRINGS_MAX];
    double deepen[SIL_STRINGS_MAX];   /* slot to its target, mm, + deeper, for any verdict */
    double deepen_u[SIL_STRINGS_MAX]; /* its standard uncertainty, mm */
    double stand_u[SIL_STRINGS_MAX];  /* standard uncertainty of the height of the finished slot
                                         over the board's end, without the error of the fret
                                         height, mm */
    bool on_fret[SIL_STRINGS_MAX]; /* the string lies on fret 1, so that by how much its slot is too
                                         low is not known; it is raised to its target all the same.
                                         Over a zero fret the slot is left and the fret is raised */
    /* Where the slot at its target would have the open string buzz under the pluck: how far over its
     * target it ends instead, where that is in range, mm (otherwise 0); or else how far down a first
     * pass may go (otherwise unknown), and the gap at which the string rings clean. */
    double nut_raised[SIL_STRINGS_MAX], slot_hold[SIL_STRINGS_MAX], slot_clean[SIL_STRINGS_MAX];
    /* The shim under the nut, mm; unknown where none goes there. With it: the slots that stay as it leaves
     * them, since they are then not past the high edge of their range, though they may be over the
     * target (by nut_raised); and what is filed back today of a slot that was not too high before, 0
     * where it stays, otherwise unknown. */
    double shim, filed_back[SIL_STRINGS_MAX];
    bool shim_leaves[SIL_STRINGS_MAX];
    /* In range, and brought to the target all the same: cut before, and not all the way. */
    bool finish_slot[SIL_STRINGS_MAX], finish_saddle[SIL_STRINGS_MAX];
    sil_verdict saddle[SIL_STRINGS_MAX];
    double lower[SIL_STRINGS_MAX];   /* saddle to its target, mm, + down, for any verdict */
    double lower_u[SIL_STRINGS_MAX]; /* its standard uncertainty, mm */
} sil_stages;

/* sil_action: the action of the open string at a fret.
 * Given:    board   laid
 *           fit     bend, crowns and heights
 *           string  0..strings - 1
 *           fret    1..frets, or 12
 * Returned: mm; negative where the string's line passes below that crown; SIL_UNKNOWN where a
 *           height is unknown
 */
double sil_action(const sil_board *board, const sil_fit *fit, int string, int fret);

/* sil_first_gap: the gap at fret 1, with the string open or held down on fret 2 or 3.
 * Given:    board, fit, string  as sil_action
 *           hold                how the string is held
 * Returned: mm; SIL_UNKNOWN where a height is unknown, or the board has no such fret
 */
double sil_first_gap(const sil_board *board, const sil_fit *fit, int string, sil_hold hold);

/* sil_slot_gap: the gap at fret 1 that a slot is judged by, as the target holds the string.
 * Given:    bench   its board, targets and what is made from a blank are used
 *           fit, string  as sil_action
 * Returned: mm; as sil_first_gap, but of a nut made from a blank the gap over the sound crown: less
 *           what fret 1 is worn there
 */
double sil_slot_gap(const sil_bench *bench, const sil_fit *fit, int string);

/* sil_leverage: how much the action at fret 12 changes when the saddle height changes by 1 mm.
 * Given:    board   laid
 *           string  0..strings - 1
 * Returned: mm per mm, about a half
 */
double sil_leverage(const sil_board *board, int string);

/* sil_first_read: the gap at fret 1 that decides the height of a slot.
 * Given:    gaps    as read
 *           string  0..strings - 1
 * Returned: mm; the one read as first_held says where it is over 0, else the open one if it was read; 0
 *           where the string lies on fret 1, which gives no height; SIL_UNKNOWN where neither was read
 */
double sil_first_read(const sil_gaps *gaps, int string);

/* sil_first_settles: whether the height of a slot follows from its gap at fret 1.
 * Given:    gaps    as read
 *           string  0..strings - 1
 * Returned: false where it was not read, or the string lies on fret 1
 */
bool sil_first_settles(const sil_gaps *gaps, int string);

/* sil_first_touches: whether a string was read lying on fret 1, held down or open.
 * Given:    gaps    as read
 *           string  0..strings - 1
 */
bool sil_first_touches(const sil_gaps *gaps, int string);

/* sil_fit_read: computes string heights at nut and saddle from the readings.
 * Given:    board  laid
 *           gaps   as read; no height follows from 0 or from an unknown reading
 *           fit    bend and crowns set
 * Returned: fit    nut_height, saddle_height, mm; SIL_UNKNOWN where they do not follow from the
 *                  readings
 * Notes:    a gap read with the string held gives the nut height by itself, because it does not
 *           depend on the saddle. A gap read with the string open gives it only together with the
 *           action.
 */
void sil_fit_read(const sil_board *board, const sil_gaps *gaps, sil_fit *fit);

/* sil_stages_run: computes the stages from the readings: rod, frets, nut and saddle. Each stage
 * starts from the state the one before it leaves, and gives verdicts, whole cuts and their
 * uncertainties.
 * Given:    bench   every field set
 * Returned: stages  complete, except that strings left alone in the saddle stage keep their present
 *                   height; sil_saddle_cut lowers them by what is sanded off the bottom of the
 *                   saddle
 * Notes:    the standard uncertainty of a cut is computed from the rectangular spread of each
 *           reading and, after the rod is turned, from the spread of the rod ratio. The verdicts
 *           are kept fixed for this. Every cut is linear in the readings, so its slopes are exact.
 *           A target given for the open string needs a cut at the nut and one at the saddle
 *           together. If the gap's range calls for one direction and that pair of cuts for the
 *           other, the slot is left and the saddle does the work.
 * Reference: JCGM 100:2008, 4.3.7
 */
void sil_stages_run(const sil_bench *bench, sil_stages *stages);

/* sil_neck_moves: changes the bend of a neck, as when its rod is turned or when it moves by itself.
 * Given:    board  laid
 *           bend   the new bend, 1/mm
 *           ratio  the neck's rod_ratio, as in sil_bench
 *           fit    the state before
 * Returned: fit    the state after: the new bend, and the heights above the chord in its new place
 * Accuracy: exact for an even bend and a ratio of 1; on real necks the action changes by half as
 *           much to as much again (common practice, no source)
 */
void sil_neck_moves(const sil_board *board, double bend, double ratio, sil_fit *fit);

/* One thing brought to its target: the relief (by the rod), the crowns (all sound), the nut slot or
 * the saddle. */
typedef enum sil_remedy { SIL_TO_RELIEF, SIL_TO_CROWNS, SIL_TO_SLOT, SIL_TO_SADDLE } sil_remedy;

/* sil_remedy_fit: brings one thing to its target and leaves everything else. This is how the
 * possible causes of a buzz are tried.
 * Given:    bench   its targets and rod_ratio are used
 *           remedy  what is brought to its target
 *           fit     the state before: bend, heights and crowns
 * Returned: fit     the state after
 */
void sil_remedy_fit(const sil_bench *bench, sil_remedy remedy, sil_fit *fit);

/* sil_rectangular: the standard uncertainty of a tool that reads to plus or minus half_width, where
 * every value in that range is equally likely.
 * Given:    half_width  mm, >= 0
 * Returned: half_width / sqrt(3), mm
 * Reference: JCGM 100:2008, 4.3.7
 */
double sil_rectangular(double half_width);

/* How far a first pass stays above the low edge of a target range, in standard uncertainties. With
 * GUARD_ONE at most one cut in twenty goes past the edge, with any mix of rectangular readings.
 * With GUARD_SET at most one set of strings in twenty has a cut that does. */
#define SIL_GUARD_ONE 1.68
#define SIL_GUARD_SET 2.2

/* sil_first_pass: how much of a cut to take before measuring again.
 * Given:    cut     whole cut to the target, mm
 *           to_low  cut that would bring the string to the low edge of its target range, mm
 *           u       standard uncertainty of the cut, mm
 *           guard   SIL_GUARD_ONE or SIL_GUARD_SET
 * Returned: min(cut, max(0, to_low - guard u)), mm, never negative; SIL_UNKNOWN where one of the
 *           figures given is unknown
 */
double sil_first_pass(double cut, double to_low, double u, double guard);

/* sil_stroke: a cut less what is left on for a later pass.
 * Given:    cut    whole cut, mm, >= 0
 *           leave  what to leave on, mm, >= 0
 * Returned: max(cut - leave, min(cut, leave)), mm: a cut of no more than leave is made whole, and
 *           of one up to twice as large no less than leave is taken; SIL_UNKNOWN where the cut is
 *           unknown
 */
double sil_stroke(double cut, double leave);

/* sil_first_stroke: the first pass of a cut of which a stroke is left on.
 * Given:    cut, to_low, u, guard  as for sil_first_pass
 *           leave                  as for sil_stroke
 * Returned: the lesser of the two, mm, never negative; SIL_UNKNOWN where one of the figures given is unknown
 */
double sil_first_stroke(double cut, double leave, double to_low, double u, double guard);

/* sil_below, sil_above: whether a figure is past the edge of a range.
 * Given:    value, low, high  mm
 * Returned: false where either figure is unknown, and within a millionth of a millimetre of the
 *           edge
 * Notes:    a figure on the edge is in the range. The millionth covers rounding errors, which are
 *           far smaller, and no tool can read it.
 */
bool sil_below(double value, double low);
bool sil_above(double value, double high);

/* sil_side_of: where a value is to its range.
 * Given:    value  mm
 *           range  mm; aim is not used
 *           width  of the edges, mm: the value's standard uncertainty
 *           heard  a note that is too low here was heard to buzz: the low edge then has no width
 * Returned: SIL_WITHIN where a figure is unknown
 */
sil_side sil_side_of(double value, sil_band range, double width, bool heard);

/* sil_side_out:  whether a side is out of the range.
 * sil_side_edge: whether it is past an edge by no more than the edge's width, which counts as in.
 */
bool sil_side_out(sil_side side);
bool sil_side_edge(sil_side side);

/* How much less closely a reading is known that was taken over from the visit before: its standard
 * uncertainty times CARRIED_WIDER, and of relief a half-width in square as well, mm (common
 * practice, no source). */
#define SIL_CARRIED_WIDER 1.5
#define SIL_CARRIED_RELIEF 0.03

/* sil_relief_u, sil_action_u, sil_first_u: standard uncertainty of a reading.
 * Given:    bench   its tools and standing are used
 *           string  0..strings - 1
 * Returned: mm
 */
double sil_relief_u(const sil_bench *bench);
double sil_action_u(const sil_bench *bench, int string);
double sil_first_u(const sil_bench *bench, int string);

/* sil_shim_thickness: the thickness of shim for a rise, rounded up to a whole number of steps.
 * Given:    rise  mm
 *           step  mm, > 0
 * Returned: mm
 * Notes:    a rounding error does not add a step
 */
double sil_shim_thickness(double rise, double step);

/* sil_nut_to_low, sil_saddle_to_low: the cut at the nut or saddle that would bring a string to the
 * low edge of its target range, counted from the state before that stage.
 * Given:    bench   its board and targets are used
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
