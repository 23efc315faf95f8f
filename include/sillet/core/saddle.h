/* SPDX-License-Identifier: MIT */
/* The saddle: how much to sand off its bottom or dress off its top, its shim, its height, and how
 * far it comes out of the bridge. */
#ifndef SILLET_SADDLE_H
#define SILLET_SADDLE_H

#include "fit.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef enum sil_saddle_kind {
    SIL_SADDLE_KIND_NOT_GIVEN,
    SIL_SADDLE_SLOTTED,    /* loose in a slot: it is sanded at the bottom and shimmed underneath */
    SIL_SADDLE_GLUED,      /* cannot be taken out: only its top can be worked */
    SIL_SADDLE_INDIVIDUAL, /* a height screw, or screws, for each string */
    SIL_SADDLE_TWO_POST,   /* one bridge on two posts */
    SIL_SADDLE_FLOATING    /* loose on the guitar's top: it has thumbwheels where their pitch is
                              given, otherwise it is worked at its feet */
} sil_saddle_kind;

/* How the string height at the saddle is changed. Everything that depends on the kind of saddle
 * uses this. */
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

/* sil_saddle_working: how the string height at a saddle is changed.
 * Given:    kind   the kind of saddle
 *           pitch  travel of a height screw or thumbwheel in one turn, mm; a floating bridge has
 *                  thumbwheels if this is known
 * Returned: SIL_WORKING_NOT_GIVEN where the kind is not given
 */
sil_working sil_saddle_working(sil_saddle_kind kind, double pitch);

/* sil_working_in_slot: whether the saddle is in a slot of the bridge.
 * sil_working_cuts:    whether wood or bone is taken off, so that a first pass is needed.
 * sil_working_turns:   whether screws, posts or thumbwheels are turned, which can be turned back.
 * sil_working_on_two:  whether the bridge is on two posts or two thumbwheels, so that all strings
 *                      move together.
 * sil_working_floats:  whether only the strings hold the bridge in place.
 */
bool sil_working_in_slot(sil_working working);
bool sil_working_cuts(sil_working working);
bool sil_working_turns(sil_working working);
bool sil_working_on_two(sil_working working);
bool sil_working_floats(sil_working working);

/* The dimensions and limits for work at the saddle. */
typedef struct sil_saddle_given {
    sil_working working;
    double length;             /* of the saddle, mm; its ends are at +-length/2 */
    double slot_depth, pickup; /* depth of the slot below the bridge's top; thickness of the pickup
                                  under the saddle, mm */
    double pin_distance[SIL_STRINGS_MAX]; /* from the saddle to where the string enters the
                                                  bridge, mm */
    double exit_height;                   /* height of that place above the bridge's top, mm */
    double pitch;                         /* travel in one turn, mm */
    double post_spread;                   /* from post to post, mm */
    double most_shim, shim_step;          /* mm */
    double present_treble, present_bass;  /* read with a caliper from the saddle's bottom to the
                                                  underside of strings 1 and N, mm */
    double bridge_top_treble, bridge_top_bass; /* from a straightedge on the crowns down to the
                                                  bridge's top, mm */
    double stands_out[SIL_STRINGS_MAX]; /* from the bridge's top to the underside of the string, by
                                           ruler, mm; where only the outer strings are known, the
                                           others follow from their heights */
    double least_protrusion;            /* the least that the saddle may stand out, mm */
    double least_break_deg;             /* the least break angle */
    double travel;                      /* how far screws, posts or thumbwheels can go down, mm */
    double leave_base, leave_top;       /* what a first pass leaves on, mm */
    bool copied;                  /* a new saddle is a copy, and not made to the target action */
    double copy[SIL_STRINGS_MAX]; /* of a copy: its heights over its bottom, mm */
} sil_saddle_given;

typedef enum sil_saddle_remedy {
    SIL_SADDLE_NONE,
    SIL_SADDLE_SAND, /* at the bottom if it comes out, otherwise at the top */
    SIL_SADDLE_SHIM,
    SIL_SADDLE_SCREW,
    SIL_SADDLE_REPLACE,
    SIL_SADDLE_WAIT
} sil_saddle_remedy;

/* A straight line across the bridge, b0 + b1 z, mm; as what is sanded off the saddle's bottom. */
typedef struct sil_line {
    double b0, b1;
} sil_line;

/* sil_line_at: the value of a line at a distance from the centre line.
 * Given:    line  b0 mm, b1 mm per mm
 *           z     mm from the centre line, + toward string 1
 * Returned: b0 + b1 z, mm
 */
double sil_line_at(sil_line line, double z);

/* The ways to know how far a saddle stands out of its bridge. */
typedef enum sil_stands_by { SIL_BY_CALIPER, SIL_BY_BRIDGE_TOP, SIL_BY_RULER } sil_stands_by;

/* Two of them that differ: under which string, by what, and how far out it stands by each, mm. */
typedef struct sil_stands_apart {
    int string;
    sil_stands_by by[2];
    double out[2];
} sil_stands_apart;

typedef struct sil_saddle_work {
    sil_working working;
    sil_saddle_remedy remedy;
    sil_verdict verdict[SIL_STRINGS_MAX]; /* of the saddle stage; or to wait, where other
                                             strings must be read first */
    double first_pass[SIL_STRINGS_MAX];   /* how far to lower the string before measuring again, at
                                             bottom and top together; 0 if left or raised, unknown
                                             where the saddle is to be replaced. The part of it at
                                             the bottom is cut_first */
    sil_line cut, cut_first;              /* off the bottom: the whole cut, and its first pass */
    double dress[SIL_STRINGS_MAX];        /* off the top, after the bottom is sanded or shimmed; 0
                                             where the saddle is to be replaced */
    double dress_first[SIL_STRINGS_MAX];  /* the part of it to take before measuring again; 0 while
                                             the bottom has more to lose after its first pass */
    double goal[SIL_STRINGS_MAX];         /* how far the string comes down in all, + down: to its
                                             target, or less where the saddle has no room */
    double stands[SIL_STRINGS_MAX];       /* above the bridge's top, now; unknown where not read, or
                                             where two readings of it disagree */
    double room[SIL_STRINGS_MAX];         /* how far the string can come down; unknown where no
                                             limit is known */
    bool aim_short[SIL_STRINGS_MAX];      /* it ends in its range, but above its target */
    double missing[SIL_STRINGS_MAX];      /* how much too little room it has to reach the high edge
                                             of its range; 0 where it reaches it */
    /* Where a string at its goal would buzz under the pluck: it ends above its target, where the
     * action at which it rings clean is in range (aim_raised); or else how far down a first pass may
     * go (hold, otherwise unknown), and that action (clean). */
    bool aim_raised[SIL_STRINGS_MAX];
    double hold[SIL_STRINGS_MAX], clean[SIL_STRINGS_MAX];
    double to_clean[SIL_STRINGS_MAX]; /* how far the string can come down and still ring clean, mm;
                                         unknown where there is no pluck to hold to */
    double present[SIL_STRINGS_MAX];  /* from the saddle's bottom to the underside of the
                                             string, now */
    double height[SIL_STRINGS_MAX];   /* the same when finished, including a shim */
    double leave[SIL_STRINGS_MAX];    /* of a new saddle: how much higher it is made at first, mm;
                                         otherwise 0 */
    double protrusion[SIL_STRINGS_MAX]; /* above the bridge's top, finished */
    double in_slot[SIL_STRINGS_MAX];    /* share of the saddle's height inside its slot, 0..1 */
    double break_angle_deg[SIL_STRINGS_MAX];
    double turns[SIL_STRINGS_MAX]; /* + down; unknown unless each string has height screws */
    double post[2], post_turns[2]; /* treble, bass: mm and turns, + down; unknown unless posts */
    double shim;                   /* unknown unless one goes under the saddle */
    double top_radius;             /* unknown with fewer than three strings, for a radius over
                                      3000, and for a top that is not higher in the middle */
    sil_stands_apart
        stands_apart;      /* the two readings of how far it stands out that are farthest apart
                                      */
    bool bottom;           /* the bottom is to be sanded */
    bool stops;            /* a string does not reach the high edge of its range */
    bool posts;            /* two posts or thumbwheels are to be turned */
    bool thick_shim;       /* it is replaced, since a shim would be thicker than most_shim */
    bool present_disagree; /* two readings of how far it stands out disagree: none is used */
} sil_saddle_work;

/* Less than this is too little to file off a saddle's top, so it is left on, mm. */
#define SIL_LEAST_DRESSED 0.1

/* sil_saddle_line: the best straight line to sand off a saddle's bottom.
 * Given:    count   of strings, 1 or more
 *           z       of each string, mm from the centre line
 *           cap     the most that may come off under each string, mm
 *           wanted  whether each string is to be lowered
 *           half    half the saddle's length, mm; the line is 0 or more at +-half
 *           most    a line that must not be exceeded at +-half, or NULL
 * Returned: the line that stays within every cap and takes off the most in total under the strings
 *           to be lowered; where several do, the one with the least slope. With one string the line
 *           is parallel to the bottom
 * Accuracy: exact, because the best line is at a corner of the constraints
 */
sil_line sil_saddle_line(int count, const double *z, const double *cap, const bool *wanted,
                         double half, const sil_line *most);

/* sil_level_line: the straight line that fits values over z with the least sum of squares.
 * Given:    count     1 or more
 *           z, value  mm
 * Returned: the line; level at their mean where there is one value, or all are at the same z
 */
sil_line sil_level_line(int count, const double *z, const double *value);

/* sil_saddle_cut: computes the work at the saddle.
 * Given:    bench   the one given to sil_stages_run
 *           make    dimensions and limits; unknown ones give unknown results
 *           stages  from sil_stages_run, where strings left alone in the saddle stage still have
 *                   their present height
 * Returned: work
 *           stages  strings to lower end where their goal is; strings left alone are lowered by what
 *                   is sanded off the bottom under them; on two posts all strings are moved by the
 *                   straight line that comes nearest to what each needs
 * Notes:    where a string cannot even reach the high edge of its range, `stops` is set and the
 *           figures are a forecast of the whole way to the target, not to be cut by
 */
void sil_saddle_cut(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                    sil_saddle_work *work);

/* sil_break_angle: the angle at which a string bends over the saddle's top.
 * Given:    rise      how far the top stands over the edge where the string enters the bridge, mm
 *           distance  from the top to that edge, along the string, mm, > 0
 * Returned: degrees; negative where the top is lower; SIL_UNKNOWN where one of them is unknown
 */
double sil_break_angle(double rise, double distance);

/* sil_saddle_present: the present height of the saddle under each string, from its bottom.
 * Given:    bench, make, stages  as sil_saddle_cut
 * Returned: work                 present and stands, mm, and present_disagree
 * Notes:    the bottom and the bridge's top are taken as straight between strings 1 and N. A caliper
 *           reading is used before one to the bridge's top, and that before a ruler's, which gives
 *           stands alone. Where two of them differ by more than 0.3 mm, and by more than two
 *           standard uncertainties of the difference, none is used.
 */
void sil_saddle_present(const sil_bench *bench, const sil_saddle_given *make,
                        const sil_stages *stages, sil_saddle_work *work);

/* sil_saddle_make: computes a saddle that is made from a blank, as sil_saddle_cut does one that is
 * there.
 * Given:    bench, make  as for sil_saddle_cut, with fresh.saddle; the saddle is in a slot
 *           stages       run
 * Returned: work         heights over the bottom: from the old saddle's where its action and its
 *                        height by caliper were read, otherwise from the bridge's top, or as copied.
 *                        A string whose saddle would stand out too little, or that would buzz, is
 *                        made higher, in its range. `leave` is the greater of the bench's and what
 *                        keeps every string in its range at first. The remedy is to replace, or to
 *                        wait where a height is not known
 *           stages       the saddle of a copy
 */
void sil_saddle_make(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                     sil_saddle_work *work);

/* sil_saddle_await: makes the whole saddle wait, by removing every figure that someone could cut
 * to.
 * Given:    strings  1..SIL_STRINGS_MAX
 *           work     as sil_saddle_cut gave it
 * Returned: work     remedy and verdicts are to wait; bottom and posts are false; first passes,
 *                    dressing, turns and shim are unknown. Heights, protrusion and break angle are
 *                    kept as a forecast
 */
void sil_saddle_await(int strings, sil_saddle_work *work);

/* sil_top_radius: radius of the circle that fits points with the least sum of squared radial
 * distances.
 * Given:    count      of points
 *           z, height  mm
 * Returned: mm; SIL_UNKNOWN with fewer than three points, for a radius over 3000 mm, and where the
 *           points are lower in the middle
 */
double sil_top_radius(int count, const double *z, const double *height);

/* sil_edge_at_saddle: how high above the chord a straightedge on the crowns is, at the saddle.
 * Given:    board     laid
 *           bend      1/mm
 *           saddle_x  mm from the nut along the centre line
 * Returned: mm
 * Notes:    the crowns are taken as sound; the straightedge rests on the two crowns on either side
 *           of its middle
 */
double sil_edge_at_saddle(const sil_board *board, double bend, double saddle_x);

#ifdef __cplusplus
}
#endif
#endif
