/* SPDX-License-Identifier: MIT */
/* The nut: the place, width and depth of each slot, and the stack of feelers to file it down to. */
#ifndef SILLET_NUT_H
#define SILLET_NUT_H

#include "fit.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef enum sil_spacing { SIL_EQUAL_GAP, SIL_EQUAL_CENTRE } sil_spacing;

/* How the strings are grouped in courses. */
typedef struct sil_courses {
    int strings;       /* 1..SIL_STRINGS_MAX */
    const int *course; /* the course of each string, from 0, in rising order; as in sil_board */
    double pair;       /* from centre to centre inside a course, mm; not used where every course
                          has one string */
} sil_courses;

/* sil_nut_centres: how far each string is from the centre line at the nut.
 * Given:    courses      1 or more strings
 *           gauge        of each string, mm
 *           width        board width at the nut, mm
 *           edge_treble  board edge to the outer edge of string 1, mm
 *           edge_bass    board edge to the outer edge of the last string, mm
 *           spacing      between courses: equal gaps between string edges, or equal steps from
 *                        centre to centre
 * Returned: nut_z        mm from the centre line, + toward string 1
 *           gap          between string edges, mm; unknown for equal centres and for one course
 * Notes:    a single course of several strings is centred between the two edge distances
 */
void sil_nut_centres(const sil_courses *courses, const double *gauge, double width,
                     double edge_treble, double edge_bass, sil_spacing spacing, double *nut_z,
                     double *gap);

/* sil_saddle_centres: how far each string is from the centre line at the saddle, with equal steps
 * between courses.
 * Given:    courses   as for sil_nut_centres
 *           spread    string spacing at the saddle, between the centres of the outer strings, mm
 * Returned: saddle_z  mm from the centre line, + toward string 1; a single course is in the middle
 */
void sil_saddle_centres(const sil_courses *courses, double spread, double *saddle_z);

/* sil_file_width: the width to cut a slot to.
 * Given:    gauge, allowance  mm
 *           files, count      the shop's nut files, mm, in any order; count 0: no list
 * Returned: of the files of the string's size or wider, the one nearest to gauge + allowance (of two
 *           equally near, the narrower); gauge + allowance itself where no list is given, or no file
 *           is so wide or all are wider by more than 0.1: a narrower one is rolled
 */
double sil_file_width(double gauge, double allowance, const double *files, int count);

/* The dimensions and limits for work at the nut. */
typedef struct sil_nut_given {
    double seat_to_board;              /* height of the board's surface above the floor of the nut's
                                          slot in the neck, on the centre line, mm */
    double head_angle_deg, fall_share; /* headstock angle, and the share of it by which a nut slot
                                          slopes down toward the tuners */
    double gauge[SIL_STRINGS_MAX];
    double bury[SIL_STRINGS_MAX]; /* depth of the slot below the finished top, as a share of the
                                     gauge */
    double caliper;               /* how closely the fret height was read, plus or minus, mm */
    double copy[SIL_STRINGS_MAX]; /* of a nut that is a copy: its slot floors, mm */
} sil_nut_given;

typedef enum sil_nut_remedy {
    SIL_NUT_NONE,
    SIL_NUT_FILE,
    SIL_NUT_FILL, /* one low slot filled and recut; or two, where a string lies on its fret or the others are left */
    SIL_NUT_SHIM,
    SIL_NUT_REPLACE,
    SIL_NUT_WAIT
} sil_nut_remedy;

typedef struct sil_nut_work {
    sil_nut_remedy remedy;
    sil_verdict verdict[SIL_STRINGS_MAX]; /* of the nut stage; or to wait, where other strings
                                             must be read first */
    double first_pass[SIL_STRINGS_MAX];   /* 0 for a slot that is left or raised; unknown where the
                                             nut is to be replaced */
    double floor[SIL_STRINGS_MAX];        /* finished slot floor, at the front face, above the floor
                                             of the nut's slot in the neck */
    double stack[SIL_STRINGS_MAX];        /* stack of feelers to file down to, on the board, hard
                                             against the nut's front face */
    double stack_u[SIL_STRINGS_MAX];      /* its standard uncertainty, mm */
    double stack_bend[SIL_STRINGS_MAX];   /* how far stiffness may lift the string over its floor,
                                             mm; unknown until a plan sets it */
    bool stack_moved[SIL_STRINGS_MAX];    /* the stack follows from the one filed to before and the
                                             gap read since, not from the fret height */
    bool stack_stays[SIL_STRINGS_MAX];    /* a pass was called for before, but the gap did not come
                                             down: stiffness may hold the string up */
    double leave[SIL_STRINGS_MAX]; /* of a slot that is cut from above, in a new nut or once it
                                             is filled, and of one that is filed back over a shim: how
                                             much higher than its stack it is filed at first, mm;
                                             otherwise 0 */
    double depth[SIL_STRINGS_MAX]; /* depth of the slot below the finished top */
    double shim;                   /* unknown unless one goes under the nut */
    double fall_angle_deg;         /* slope of the slots down toward the tuners */
    double top;                    /* height of the nut: the greatest floor + depth */
} sil_nut_work;

/* A string over its slot. */
typedef struct sil_slot_bend {
    double stiffness_n_mm2; /* E I of what carries the bending: the core of a wound string */
    double tension;         /* N */
    double length;          /* of the slot, along the string, mm; unknown: long */
    double fall_deg;        /* slope of its floor down toward the tuners */
    double behind_deg;      /* slope of the string behind the nut; where it is less than fall_deg,
                               or unknown: fall_deg */
} sil_slot_bend;

/* sil_slot_lift: how far a stiff string stands over the front edge of its slot's floor.
 * Given:    bend
 * Returned: mm: the height over that edge of the straight line in which the string runs toward the
 *           frets, a few lambda = sqrt(E I/T) away; SIL_UNKNOWN where stiffness, tension or fall is
 * Accuracy: exact for a beam under tension and small slopes; a real string takes a set at the edge
 *           with time, and then stands lower
 * Notes:    the string does not lie on the floor. It turns over the front and the back edge of the
 *           slot, and is free between them. In a slot that is long beside lambda, and in any slot
 *           that the string leaves along its floor, the lift is lambda tan(fall)/2. In a short slot
 *           the bend over the back edge reaches the front edge: where the string behind the nut is
 *           more than twice as steep as the floor, it stands lower for it, and otherwise higher.
 */
double sil_slot_lift(const sil_slot_bend *bend);

/* sil_new_slot_over: how high the floor of a slot of a new nut is over the line of the fret tops,
 * without any reading of the old nut. With the fret height added it is the stack of feelers.
 * Given:    bench   its board, targets and the rest of what the nut is made to are used
 *           fit     its bend and crowns are used
 *           string  0..strings - 1
 * Returned: mm above the surface through the fret tops, carried on under this string to the nut; for a
 *           copied nut SIL_UNKNOWN
 * Accuracy: exact for a neck that bends as sil_sag describes
 * Notes:    with s = x_1/x_h and the string lying on crown h, up to the body joint it is
 *           aim/(1 - s) - K x_1 x_h + (e_1 - s e_h)/(1 - s) + drop_0 - (drop_1 - s drop_h)/(1 - s),
 *           with e_1 = 0 where fret 1 is worn: a slot is not cut down to a worn spot.
 *           For an open string h is 12, and aim less s times the target action is in place of aim
 */
double sil_new_slot_over(const sil_bench *bench, const sil_fit *fit, int string);

/* sil_nut_cut: computes the work at the nut.
 * Given:    bench, stages  after sil_stages_run
 *           make           dimensions and limits; unknown ones give unknown results
 * Returned: work
 * Notes:    floor = B + (f - q) + H - K x_1 x_J and stack = (f - q) + H + drop - K x_1 x_J. Both
 *           take the board's own surface at the nut, with heights above the chord. stack_u has in
 *           it the relief (K x_1 x_h, for a gap with the string held), the error of the fret height
 *           and, for a slot that is left, that of its gap. A slot that is left keeps its height. Where two or more slots must be raised, the nut is shimmed by
 *           the greatest rise, rounded up to a whole step, and the other slots are then filed to
 *           the floors they should have.
 *           By how much the slot of a string on its fret is too low is not known: up to two are
 *           filled and recut, with more the nut is replaced, and no shim is given.
 *           The slots slope by fall_share of the headstock angle, at least 3 and at most 10
 *           degrees.
 */
void sil_nut_cut(const sil_bench *bench, const sil_stages *stages, const sil_nut_given *make,
                 sil_nut_work *work);

/* sil_nut_make: computes a nut that is made from a blank, as sil_nut_cut does a nut that is there.
 * Given:    bench, stages  after sil_stages_run, with fresh.nut
 *           make           as for sil_nut_cut
 * Returned: work           every slot is to be cut, and the remedy is to replace. First passes are
 *                          unknown; `leave` is the greater of the bench's and what keeps a slot in its
 *                          range at its first pass
 * Accuracy: as sil_new_slot_over; stack_u has the relief in it and the error of the fret height
 */
void sil_nut_make(const sil_bench *bench, const sil_stages *stages, const sil_nut_given *make,
                  sil_nut_work *work);

/* sil_nut_await: makes the whole nut wait, by removing every figure that someone could cut to.
 * Given:    strings  1..SIL_STRINGS_MAX
 *           work     as sil_nut_cut gave it
 * Returned: work     remedy and verdicts are to wait; first passes, floors, feelers, depths and
 *                    shim are unknown
 */
void sil_nut_await(int strings, sil_nut_work *work);

#ifdef __cplusplus
}
#endif
#endif
