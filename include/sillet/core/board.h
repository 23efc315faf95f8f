/* SPDX-License-Identifier: MIT */
/* The board: where the frets stand, how the neck bends, and how high each crown is.
 *
 * The frame. x runs from the front face of the nut toward the saddle; z runs across the board from
 * the centre line, + toward string 1; y is up from the chord, the straight line on the centre line
 * through the crowns of fret 1 and of the fret at the body join. Lengths in mm. Strings are
 * counted from 0 in C (string 1 of the bench is index 0); frets are counted as on the bench, with
 * 0 for the nut.
 */
#ifndef SILLET_BOARD_H
#define SILLET_BOARD_H

#include "units.h"

#ifdef __cplusplus
extern "C" {
#endif

/* What does not change while an instrument is set up. */
typedef struct sil_board {
    int strings;       /* 1..SIL_STRINGS_MAX */
    int frets;         /* 1..SIL_FRETS_MAX, the last fret */
    int join;          /* fret at the body join, 1..frets */
    int relief_at;     /* fret over which relief is reported, 1 < relief_at < join */
    double radius_nut; /* board radius at the nut, INFINITY for a flat board */
    double radius_end; /* board radius at the last fret */
    double fallaway;   /* how much the board over the body has fallen off at the last fret, >= 0 */
    /* Place of each fret on the centre line, where the neck bends, and under each string.
     * Index 12 is always filled, whatever the number of frets: action is told there. */
    double spine_x[SIL_FRETS_MAX + 1];
    double fret_x[SIL_STRINGS_MAX][SIL_FRETS_MAX + 1];
    double nut_x[SIL_STRINGS_MAX];                   /* of a fan: the nut there, along the centre
                                                        line from its middle; else 0 */
    double nut_slant, saddle_slant;                  /* of a fan, rad, + leaning back at the bass */
    double scale[SIL_STRINGS_MAX];                   /* nut to saddle without compensation, > 0 */
    double saddle_x[SIL_STRINGS_MAX];                /* scale + saddle setback */
    double nut_z[SIL_STRINGS_MAX];                   /* centre of the string at the nut */
    double saddle_z[SIL_STRINGS_MAX];                /* and at the saddle */
    double drop[SIL_STRINGS_MAX][SIL_FRETS_MAX + 1]; /* of the board under a string at a fret */
    int course[SIL_STRINGS_MAX];                     /* course of the string, from 0 */
} sil_board;

/* Crowns off the line of the sound ones: minus the depth of a dent against the same crown beside
 * it, plus what a crown stands proud. [string][fret]; 0 where sound. */
typedef struct sil_crowns {
    double off[SIL_STRINGS_MAX][SIL_FRETS_MAX + 1];
} sil_crowns;

/* A state of the instrument: how the neck bends, how its crowns lie and where each string runs.
 * sil_bend_from_relief and sil_fit_read make it of readings. It points at nothing: a copy is a
 * state of its own. */
typedef struct sil_fit {
    double bend;                           /* K of the crown line, 1/mm; + relief, - back-bow */
    double nut_height[SIL_STRINGS_MAX];    /* underside of the string over the chord at the nut */
    double saddle_height[SIL_STRINGS_MAX]; /* and at the saddle */
    sil_crowns crowns;                     /* as they are in this state; all 0: sound */
} sil_fit;

/* What finger and ear tell of a gap where no gauge was used: tapped, the string just pings on the
 * crown, or has a clear way to go. Nothing at all is a gap of 0. */
typedef enum sil_tap { SIL_NOT_TAPPED, SIL_TAP_PING, SIL_TAP_WIDE } sil_tap;

/* How relief was read: a string or an edge laid on two crowns, a gap over a third. */
typedef struct sil_relief_reading {
    double gap;        /* mm; under an edge on two equal shims: gap less shim, may be negative */
    int over;          /* fret read over */
    int low, high;     /* crowns it lies on, low < over < high */
    int string;        /* index of the string held, or -1: the centre line over sound crowns */
    bool straightedge; /* an edge lies on the centre line, whatever the string named */
    sil_tap tap;       /* where the gap is not known */
} sil_relief_reading;

/* sil_fret_place: distance of a fret from the nut.
 * Given:    scale  mm, > 0
 *           fret   0..SIL_FRETS_MAX
 * Returned: scale (1 - 2^(-fret/12)), mm
 * Notes:    equal temperament of twelve steps; ISO 16 fixes the pitch, not the ratio.
 */
double sil_fret_place(double scale, int fret);

/* sil_board_lay: lays out a board whose strings share one scale: what follows from its figures.
 * Given:    board    strings, frets, radii, nut_z, saddle_z set; to be laid again if one changes
 *           scale    mm, > 0
 *           setback  saddle setback of each string, mm, + longer
 * Returned: board's spine_x, fret_x, scale, saddle_x, drop and course
 */
void sil_board_lay(sil_board *board, double scale, const double *setback);

/* Two scales, and the fret that stands square to the centre line. */
typedef struct sil_fan {
    double treble, bass; /* mm, > 0; of the first and the last course */
    int square;          /* 0 (the nut) or more; no matter where the two are equal */
} sil_fan;

/* sil_board_fan: lays out a board of two scales, run evenly by course.
 * Given:    board    as above, and course
 *           fan      two equal scales give what sil_board_lay gives
 *           setback  as above, along each string
 * Returned: as above but course; and nut_x, nut_slant, saddle_slant
 * Notes:    x of a string runs from its own contact at the nut. The neck bends along the centre
 *           line, whose scale is the mean of the two: everything square across moves together, so
 *           a crown's sag is that of its place along the centre line, nut_x + fret_x.
 */
void sil_board_fan(sil_board *board, const sil_fan *fan, const double *setback);

/* sil_course_share: where a string's course stands across the board.
 * Given:    course   of each string, from 0 and never falling
 *           strings  1..SIL_STRINGS_MAX
 *           string   0..strings - 1
 * Returned: 0 at the first course, 1 at the last, evenly between; 0 where there is one course
 */
double sil_course_share(const int *course, int strings, int string);

/* sil_axis_x: a crown's place along the centre line under a string.
 * sil_saddle_axis_x: the same of where the string leaves the saddle.
 * Given:    board   laid
 *           string  0..strings - 1; for sil_axis_x also -1, the centre line itself
 *           fret    0 (the nut)..frets, or 12
 * Returned: mm from the nut's front face on the centre line, + toward the saddle
 */
double sil_axis_x(const sil_board *board, int string, int fret);
double sil_saddle_axis_x(const sil_board *board, int string);

/* sil_radius_drop: how far a round board has dropped at z from its centre line.
 * Given:    radius  mm, > |z|, else the result is no number; INFINITY for flat
 *           z       mm from the centre line
 * Returned: radius - sqrt(radius^2 - z^2), mm, computed without cancellation
 */
double sil_radius_drop(double radius, double z);

/* sil_board_radius: the board's radius, straight from the nut's to the last fret's.
 * Given:    board  radii and frets laid
 *           x      mm from the nut along the centre line; past the last fret the line goes on
 * Returned: mm; INFINITY where the board is flat at either end
 */
double sil_board_radius(const sil_board *board, double x);

/* sil_string_z: lateral place of a string.
 * Given:    board   laid
 *           string  0..strings - 1
 *           x       mm along the string, from its contact at the nut
 * Returned: mm from the centre line, + toward string 1
 */
double sil_string_z(const sil_board *board, int string, double x);

/* sil_sag: the crown line's depth under the chord on the centre line, sound crowns.
 * Given:    bend  K, 1/mm
 *           x     mm; up to the join a parabola, past it the tangent there less the fall-away
 * Returned: mm, + below the chord
 */
double sil_sag(const sil_board *board, double bend, double x);

/* sil_crown_height: height of a crown over the chord under a string.
 * Given:    board   laid
 *           fit     for its bend and its crowns
 *           string  0..strings - 1, or -1 for the centre line over sound crowns
 *           fret    1..frets, or 12
 * Returned: mm, mostly 0 or less; SIL_UNKNOWN where the bend is
 * Accuracy: exact for a neck that bends to the line of sil_sag
 */
double sil_crown_height(const sil_board *board, const sil_fit *fit, int string, int fret);

/* sil_bend_from_relief: the neck's bend from a relief reading of any form.
 * Given:    board    laid
 *           crowns   as they stand under the string held; NULL: all sound
 *           reading  1 <= low < over < high <= frets
 * Returned: K, 1/mm; SIL_UNKNOWN where the gap is unknown
 * Notes:    exact: the gap is linear in K. An edge on crowns 1 and the last of a bowed neck reads
 *           about half as much again as one on 1 and the join; the same K comes out of both.
 */
double sil_bend_from_relief(const sil_board *board, const sil_crowns *crowns,
                            const sil_relief_reading *reading);

/* sil_board_bends: whether a crown stands between 1 and the join, so that the neck can be told to
 * bend at all.
 * Given:    board  join set
 * Returned: whether the join is over 2. Where it is not, relief and bend are taken as 0
 */
bool sil_board_bends(const sil_board *board);

/* sil_relief: relief on the centre line over fret board->relief_at, of a bend.
 * sil_bend:   the bend of a relief there.
 * Given:    board   laid
 *           bend    1/mm, + relief, - back-bow
 *           relief  mm, signed as bend
 * Returned: mm; 1/mm. 0 where the board does not bend
 * Accuracy: exact, and each undoes the other
 */
double sil_relief(const sil_board *board, double bend);
double sil_bend(const sil_board *board, double relief);

#ifdef __cplusplus
}
#endif
#endif
