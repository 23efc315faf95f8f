/* SPDX-License-Identifier: MIT */
/* The board: the place of each fret, the bend of the neck, and the height of each crown.
 *
 * Axes: x runs from the front face of the nut toward the saddle. z runs across the board from the
 * centre line, positive toward string 1. y is the height above the chord, which is the straight
 * line on the centre line through the crowns of fret 1 and of the fret at the body joint. Lengths
 * are in mm. Strings are counted from 0 in C (string 1 of the bench is index 0). Frets are counted
 * as on the bench, and 0 is the nut.
 */
#ifndef SILLET_BOARD_H
#define SILLET_BOARD_H

#include "units.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The dimensions that a set-up does not change. */
typedef struct sil_board {
    int strings;       /* 1..SIL_STRINGS_MAX */
    int frets;         /* 1..SIL_FRETS_MAX, the last fret */
    int join;          /* fret at the body joint, 1..frets */
    int relief_at;     /* fret over which relief is reported, 1 < relief_at < join */
    double radius_nut; /* board radius at the nut, INFINITY for a flat board */
    double radius_end; /* board radius at the last fret */
    double fallaway;   /* how far the board over the body drops away by the last fret, >= 0 */
    /* Place of each fret: spine_x on the centre line, along which the neck bends, and fret_x under
     * each string. Index 12 is always filled, even with fewer frets, because action is given at
     * fret 12. */
    double spine_x[SIL_FRETS_MAX + 1];
    double fret_x[SIL_STRINGS_MAX][SIL_FRETS_MAX + 1];
    double nut_x[SIL_STRINGS_MAX];    /* on a fan: how far the nut at this string
                                                        is from its middle, measured along the
                                                        centre line; otherwise 0 */
    double nut_slant, saddle_slant;   /* on a fan: rad, + if the bass end leans back */
    double scale[SIL_STRINGS_MAX];    /* nut to saddle without compensation, > 0 */
    double saddle_x[SIL_STRINGS_MAX]; /* where the string leaves the saddle: scale +
                                                        setback */
    double nut_z[SIL_STRINGS_MAX];    /* centre of the string at the nut */
    double saddle_z[SIL_STRINGS_MAX]; /* centre of the string at the saddle */
    double drop[SIL_STRINGS_MAX][SIL_FRETS_MAX + 1]; /* how far the round board drops below its
                                                        centre line under a string at a fret */
    int course[SIL_STRINGS_MAX];                     /* course of the string, from 0 */
} sil_board;

/* How far each crown is above or below the line of the sound crowns, as [string][fret], mm.
 * Negative: the depth of a worn spot below the rest of the same crown. Positive: how far the crown
 * is proud. 0: the crown is sound. */
typedef struct sil_crowns {
    double off[SIL_STRINGS_MAX][SIL_FRETS_MAX + 1];
} sil_crowns;

/* A state of the instrument: the bend of the neck, the crowns, and the height of each string.
 * sil_bend_from_relief and sil_fit_read compute it from readings. It holds no pointers, so it can
 * be copied. */
typedef struct sil_fit {
    double bend;                           /* K of the crown line, 1/mm; + relief, - back-bow */
    double nut_height[SIL_STRINGS_MAX];    /* underside of the string above the chord at the nut */
    double saddle_height[SIL_STRINGS_MAX]; /* the same at the saddle */
    sil_crowns crowns;                     /* the crowns in this state; all 0: all sound */
} sil_fit;

/* A gap judged by tapping the string onto the crown, where no gauge was used. PING: the string just
 * pings on the crown. WIDE: the string visibly moves before it touches. Where it does not move at
 * all, the gap is given as 0. */
typedef enum sil_tap { SIL_NOT_TAPPED, SIL_TAP_PING, SIL_TAP_WIDE } sil_tap;

/* How relief was read: a string or a straightedge touches two crowns, and the gap is measured over
 * a third crown between them. */
typedef struct sil_relief_reading {
    double gap;        /* mm; with a straightedge on two equal shims: the gap less the shim, which
                          may be negative */
    int over;          /* the fret at which the gap is measured */
    int low, high;     /* the crowns it touches, low < over < high */
    int string;        /* index of the string held, or -1: the centre line over sound crowns */
    bool straightedge; /* a straightedge was used: it is on the centre line, whatever string says */
    sil_tap tap;       /* used where the gap is not known */
} sil_relief_reading;

/* sil_fret_place: distance of a fret from the nut.
 * Given:    scale  mm, > 0
 *           fret   0..SIL_FRETS_MAX
 * Returned: scale (1 - 2^(-fret/12)), mm
 * Notes:    twelve-tone equal temperament. ISO 16 fixes the pitch of A4, not this ratio.
 */
double sil_fret_place(double scale, int fret);

/* sil_board_lay: lays out a board whose strings all have the same scale, by computing the places
 * of its frets.
 * Given:    board    strings, frets, radii, nut_z and saddle_z set; lay it out again if one of them
 *                    changes
 *           scale    mm, > 0
 *           setback  saddle setback of each string, mm, + longer
 * Returned: board    spine_x, fret_x, scale, saddle_x, drop and course; nut_x and slants 0
 */
void sil_board_lay(sil_board *board, double scale, const double *setback);

/* The two scales of a fanned board, and the fret that is square to the centre line. */
typedef struct sil_fan {
    double treble, bass; /* scale of the first string and of the last, mm, > 0 */
    int square;          /* 0 (the nut) or more; not used where the two scales are equal */
} sil_fan;

/* sil_board_fan: lays out a fanned board. Frets are straight lines through the frets of the outer
 * strings, and so are the nut and the line where the scales end. A string between has its frets, and
 * its scale, where it crosses them.
 * Given:    board    as for sil_board_lay, with course also set; nut_z and saddle_z fall from string
 *                    1 to the last
 *           fan      with two equal scales, or a single string, the result is that of sil_board_lay
 *                    at the treble scale
 *           setback  as for sil_board_lay, along each string
 * Returned: board    as from sil_board_lay, except that course is left as it was; also nut_x,
 *                    nut_slant and saddle_slant
 * Accuracy: exact, with every length along a string taken along the centre line
 * Notes:    each string's x starts where that string leaves the nut. The places on an outer string
 *           are scale (1 - 2^(-n/12)). Those on an inner one are so only where it lies at the same
 *           share of the width at nut and saddle. The neck bends along the centre line. All points
 *           at the same place along the centre line move up and down together, so the sag of a
 *           crown is the sag at nut_x + fret_x.
 */
void sil_board_fan(sil_board *board, const sil_fan *fan, const double *setback);

/* sil_course_share: how far across the board a string's course is.
 * Given:    course   the course of each string, counted from 0, in rising order
 *           strings  1..SIL_STRINGS_MAX
 *           string   0..strings - 1
 * Returned: 0 for the first course, 1 for the last, equal steps between; 0 where there is only one
 *           course
 */
double sil_course_share(const int *course, int strings, int string);

/* sil_axis_x: the place, along the centre line, of a crown under a string.
 * sil_saddle_axis_x: the same for the point where the string leaves the saddle.
 * Given:    board   laid
 *           string  0..strings - 1; sil_axis_x also takes -1 for the centre line itself
 *           fret    0 (the nut)..frets, or 12
 * Returned: mm from the nut's front face on the centre line, + toward the saddle
 */
double sil_axis_x(const sil_board *board, int string, int fret);
double sil_saddle_axis_x(const sil_board *board, int string);

/* sil_radius_drop: how far a round board drops at a distance z from its centre line.
 * Given:    radius  mm, > |z|, otherwise the result is not a number; INFINITY for a flat board
 *           z       mm from the centre line
 * Returned: radius - sqrt(radius^2 - z^2), mm
 * Accuracy: computed in a form that loses no digits where z is small
 */
double sil_radius_drop(double radius, double z);

/* sil_board_radius: the board's radius at a place. It changes in a straight line from the radius at
 * the nut to the radius at the last fret.
 * Given:    board  laid
 *           x      mm from the nut along the centre line; past the last fret the same straight line
 *                  continues
 * Returned: mm; INFINITY where the board is flat at either end
 */
double sil_board_radius(const sil_board *board, double x);

/* sil_string_z: how far a string is from the centre line.
 * Given:    board   laid
 *           string  0..strings - 1
 *           x       mm along the string, from its contact at the nut
 * Returned: mm from the centre line, + toward string 1
 */
double sil_string_z(const sil_board *board, int string, double x);

/* sil_sag: how far the line of the sound crowns is below the chord, on the centre line.
 * Given:    board  laid
 *           bend   K, 1/mm
 *           x      mm along the centre line
 * Returned: mm, + below the chord
 * Notes:    the line is a parabola up to the body joint. Past it, it follows the tangent at the
 *           joint and drops by the fall-away.
 */
double sil_sag(const sil_board *board, double bend, double x);

/* sil_crown_height: height of a crown above the chord, under a string.
 * Given:    board   laid
 *           fit     its bend and crowns are used
 *           string  0..strings - 1, or -1 for the centre line over sound crowns
 *           fret    1..frets, or 12
 * Returned: mm, usually 0 or negative; SIL_UNKNOWN where the bend is unknown
 * Accuracy: exact for a neck that bends as sil_sag describes
 */
double sil_crown_height(const sil_board *board, const sil_fit *fit, int string, int fret);

/* sil_bend_from_relief: the neck's bend, from a relief reading taken in any of the ways.
 * Given:    board    laid
 *           crowns   used under the string held; NULL: all sound
 *           reading  1 <= low < over < high <= frets
 * Returned: K, 1/mm; SIL_UNKNOWN where the gap is unknown
 * Accuracy: exact, because the gap is linear in K
 * Notes:    on a bowed neck, a straightedge on the first and last crowns shows about half as much
 *           gap again as one on crown 1 and the crown at the body joint. Both give the same K.
 */
double sil_bend_from_relief(const sil_board *board, const sil_crowns *crowns,
                            const sil_relief_reading *reading);

/* sil_board_bends: whether there is a crown between fret 1 and the body joint. Without one, relief
 * cannot be measured.
 * Given:    board  join set
 * Returned: true if the joint is past fret 2. If false, relief and bend are taken as 0
 */
bool sil_board_bends(const sil_board *board);

/* sil_relief: the relief that a bend gives, on the centre line at fret board->relief_at.
 * sil_bend:   the bend that gives a relief there.
 * Given:    board   laid
 *           bend    1/mm, + relief, - back-bow
 *           relief  mm, + relief, - back-bow
 * Returned: sil_relief mm, sil_bend 1/mm; 0 where sil_board_bends is false
 * Accuracy: exact; each is the inverse of the other
 */
double sil_relief(const sil_board *board, double bend);
double sil_bend(const sil_board *board, double relief);

#ifdef __cplusplus
}
#endif
#endif
