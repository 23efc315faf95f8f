/* SPDX-License-Identifier: MIT */
/* The saddle: the line to sand off its base, what is dressed off its top, shim, height and what it
 * stands out of the bridge. */
#ifndef SILLET_SADDLE_H
#define SILLET_SADDLE_H

#include "fit.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef enum sil_saddle_kind {
    SIL_SADDLE_KIND_NOT_GIVEN,
    SIL_SADDLE_SLOTTED,    /* stands loose in a slot: sanded at the base, shimmed underneath */
    SIL_SADDLE_GLUED,      /* stays where it is: only its top can be worked */
    SIL_SADDLE_INDIVIDUAL, /* a screw a string */
    SIL_SADDLE_TWO_POST,   /* one bridge on two posts */
    SIL_SADDLE_FLOATING    /* stands loose on the top: on wheels where their pitch is given, else it
                              is worked at its feet */
} sil_saddle_kind;

/* How the height of the strings at the saddle is worked: the one answer to everything that depends
 * on it. */
typedef enum sil_working {
    SIL_WORKING_NOT_GIVEN,   /* the kind of saddle was not given */
    SIL_WORKING_BASE,        /* a loose saddle in its slot: sanded at the bottom, or shimmed */
    SIL_WORKING_TOP,         /* a glued saddle: only its top can be reached */
    SIL_WORKING_FEET,        /* a floating bridge without thumbwheels: worked at its feet */
    SIL_WORKING_SCREWS,      /* height screws of each string */
    SIL_WORKING_POSTS,       /* one bridge on two posts */
    SIL_WORKING_THUMBWHEELS, /* a floating bridge that thumbwheels raise and lower */
    SIL_WORKINGS
} sil_working;

/* sil_saddle_working: how a saddle is worked.
 * Given:    kind
 *           pitch  travel of one turn, mm; a floating bridge has thumbwheels where it is known
 */
sil_working sil_saddle_working(sil_saddle_kind kind, double pitch);

/* sil_working_in_slot: the saddle stands in a slot of the bridge.
 * sil_working_cuts:    height comes off wood or bone, so a first pass counts.
 * sil_working_turns:   height is turned by screws, posts or thumbwheels and can be turned back.
 * sil_working_on_two:  one bridge on two posts or thumbwheels: all strings move along one line.
 * sil_working_floats:  only the strings hold the bridge.
 */
bool sil_working_in_slot(sil_working working);
bool sil_working_cuts(sil_working working);
bool sil_working_turns(sil_working working);
bool sil_working_on_two(sil_working working);
bool sil_working_floats(sil_working working);

typedef struct sil_saddle_given {
    sil_working working;
    double length;             /* of the saddle, mm; its ends at +-length/2 */
    double slot_depth, pickup; /* from the bridge's top; what lies under the saddle, mm */
    double pin_distance[SIL_STRINGS_MAX];      /* saddle to where the string enters the bridge */
    double exit_height;                        /* of that edge over the bridge's top, mm */
    double pitch;                              /* travel of a turn, mm */
    double post_spread;                        /* from post to post, mm */
    double most_shim, shim_step;               /* mm */
    double present_treble, present_bass;       /* caliper, seat to underside, strings 1 and N */
    double bridge_top_treble, bridge_top_bass; /* straightedge on the crowns down to the bridge */
} sil_saddle_given;

typedef enum sil_saddle_remedy {
    SIL_SADDLE_NONE,
    SIL_SADDLE_SAND, /* at the base where it comes out, else at the top */
    SIL_SADDLE_SHIM,
    SIL_SADDLE_SCREW,
    SIL_SADDLE_REPLACE,
    SIL_SADDLE_WAIT
} sil_saddle_remedy;

/* A straight line over z: what comes off the base, b0 + b1 z, mm. */
typedef struct sil_line {
    double b0, b1;
} sil_line;

/* sil_line_at: what a line has at a place across.
 * Given:    line  b0 mm, b1 mm by mm
 *           z     mm from the centre line, + toward string 1
 * Returned: b0 + b1 z, mm
 */
double sil_line_at(sil_line line, double z);

typedef struct sil_saddle_work {
    sil_working working;
    sil_saddle_remedy remedy;
    sil_verdict verdict[SIL_STRINGS_MAX]; /* the stage's, or to wait: with others not yet read */
    double first_pass[SIL_STRINGS_MAX];   /* how far the string is to come down before it is read
                                             again, base and top together; 0 if left or raised.
                                             What the base loses of it is in cut_first */
    bool bottom;                          /* a cut at the base is asked for */
    sil_line cut, cut_first;              /* whole, and what to take before reading again */
    double dress[SIL_STRINGS_MAX];        /* off the top after the base, or after the shim; 0 where
                                             the saddle is to be replaced */
    double present[SIL_STRINGS_MAX];      /* seat to underside of the string, now */
    double height[SIL_STRINGS_MAX];       /* and finished, a shim counted in */
    double protrusion[SIL_STRINGS_MAX];   /* finished, over the bridge's top */
    double in_slot[SIL_STRINGS_MAX];      /* share of the saddle inside its slot, 0..1 */
    double break_angle_deg[SIL_STRINGS_MAX];
    double turns[SIL_STRINGS_MAX]; /* + down; unknown unless individual */
    bool posts;                    /* two posts or wheels are to be turned */
    double post[2], post_turns[2]; /* treble, bass: mm and turns, + down; unknown unless posts */
    double shim;                   /* unknown unless a string is to raise; where the saddle is to be
                                      replaced, the shim that would have been wanted */
    double top_radius;             /* unknown under three strings, over 3000, or not crowned */
    bool present_disagree;         /* caliper and bridge top differ by over 0.3: neither is used */
} sil_saddle_work;

/* sil_saddle_line: the straight line of most use.
 * Given:    count, z, cap   strings: place and the most that may come off there
 *           wanted          whether the string is to come down
 *           half            half the saddle's length; the line is >= 0 at +-half
 *           most            a line not to be passed at +-half, or NULL
 * Returned: the line under all caps with the greatest sum over the strings wanted; of equal sums
 *           the least slope. One string: parallel. Exact: a vertex of the constraints.
 */
sil_line sil_saddle_line(int count, const double *z, const double *cap, const bool *wanted,
                         double half, const sil_line *most);

/* sil_level_line: the straight line with the least squares of distance through values over z.
 * Given:    count     1 or more
 *           z, value  mm
 * Returned: the line; level through their mean where there is one value, or all are at one place
 */
sil_line sil_level_line(int count, const double *z, const double *value);

/* sil_saddle_cut: the work at the saddle.
 * Given:    bench   as the stages were run on
 *           make    what the saddle is made to; unknown figures give unknown results
 *           stages  run; the strings left alone in the saddle stage still at their present height
 * Returned: work; and in stages the saddle stage's strings left alone, less what the base loses;
 *           on two posts all strings, less the line that comes nearest to what each wants
 */
void sil_saddle_cut(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                    sil_saddle_work *work);

/* sil_saddle_present: height of the saddle over its seat under each string, as it is now.
 * Given:    bench, make, stages  as sil_saddle_cut
 * Returned: work's present, mm, and present_disagree
 * Notes:    the seat runs straight between strings 1 and N. A caliper comes before the bridge's
 *           top; where both were read and differ by more than 0.3 mm neither is used.
 */
void sil_saddle_present(const sil_bench *bench, const sil_saddle_given *make,
                        const sil_stages *stages, sil_saddle_work *work);

/* sil_saddle_await: takes back all figures one could cut to: the whole saddle is to wait.
 * Given:    strings  1..SIL_STRINGS_MAX
 *           work     as sil_saddle_cut gave it
 * Returned: work     remedy and verdicts to wait; bottom and posts false; first passes, dressing,
 *                    turns and shim unknown. Heights, protrusion and angle stay, as a forecast
 */
void sil_saddle_await(int strings, sil_saddle_work *work);

/* sil_top_radius: radius of the least-squares circle (least radial misfit) through points.
 * Given:    count      of points
 *           z, height  mm
 * Returned: mm, convex upward; SIL_UNKNOWN under three points, over 3000 mm, or where hollow
 */
double sil_top_radius(int count, const double *z, const double *height);

/* sil_edge_at_saddle: height over the chord of a straightedge on the crowns, at the saddle.
 * Given:    board     laid
 *           bend      1/mm
 *           saddle_x  mm from the nut along the centre line
 * Returned: mm; the edge lies on the two crowns it touches under its own middle, sound crowns
 */
double sil_edge_at_saddle(const sil_board *board, double bend, double saddle_x);

#ifdef __cplusplus
}
#endif
#endif
