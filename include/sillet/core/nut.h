/* SPDX-License-Identifier: MIT */
/* The nut: where the slots stand, how wide, how deep, and the feelers to file each down to. */
#ifndef SILLET_NUT_H
#define SILLET_NUT_H

#include "fit.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef enum sil_spacing { SIL_EQUAL_GAP, SIL_EQUAL_CENTRE } sil_spacing;

/* Strings by course, and the distance of their centres inside one. */
typedef struct sil_courses {
    int strings;       /* 1..SIL_STRINGS_MAX */
    const int *course; /* of each string, from 0 and never falling; as sil_board's */
    double pair;       /* mm; no matter where each string is a course */
} sil_courses;

/* sil_nut_centres: lateral place of each string at the nut.
 * Given:    courses      1 or more strings
 *           gauge        of each string, mm
 *           width        board width at the nut, mm
 *           edge_treble  board edge to the outer edge of string 1, mm
 *           edge_bass    board edge to the outer edge of the last string, mm
 *           spacing      between courses: equal gaps between string edges, or equal steps from
 *                        centre to centre
 * Returned: nut_z        mm from the centre line, + toward string 1
 *           gap          between string edges, mm; unknown for equal centres and for one course
 * Notes:    one course of several strings stands midway between what the edges leave.
 */
void sil_nut_centres(const sil_courses *courses, const double *gauge, double width,
                     double edge_treble, double edge_bass, sil_spacing spacing, double *nut_z,
                     double *gap);

/* sil_saddle_centres: lateral place of each string at the saddle, in equal steps between courses.
 * Given:    courses   as above
 *           spread    centre to centre of the outer strings, mm
 * Returned: saddle_z  mm from the centre line, + toward string 1; one course stands in the middle
 */
void sil_saddle_centres(const sil_courses *courses, double spread, double *saddle_z);

/* sil_file_width: the width to cut a slot to.
 * Given:    gauge, allowance  mm
 *           files, count      the shop's nut files, mm, any order; count 0: no list
 * Returned: the file nearest gauge + allowance that is not under the gauge (of two as near, the
 *           narrower); gauge + allowance where no list is given or no file is wide enough
 */
double sil_file_width(double gauge, double allowance, const double *files, int count);

/* What a nut is made to, beyond the slots' depths. */
typedef struct sil_nut_given {
    double seat_to_board;              /* board surface over the nut's seat, centre line, mm */
    double head_angle_deg, fall_share; /* the head's angle, and the share of it a slot falls by */
    double gauge[SIL_STRINGS_MAX];
    double bury[SIL_STRINGS_MAX]; /* depth under the finished top, in gauges */
    double most_shim, shim_step;  /* mm */
} sil_nut_given;

typedef enum sil_nut_remedy {
    SIL_NUT_NONE,
    SIL_NUT_FILE,
    SIL_NUT_FILL, /* one low slot filled and recut */
    SIL_NUT_SHIM,
    SIL_NUT_REPLACE,
    SIL_NUT_WAIT
} sil_nut_remedy;

typedef struct sil_nut_work {
    sil_nut_remedy remedy;
    sil_verdict verdict[SIL_STRINGS_MAX]; /* the stage's, or to wait: with others not yet read */
    double first_pass[SIL_STRINGS_MAX];   /* 0 for a slot left or raised */
    double floor[SIL_STRINGS_MAX];        /* finished floor over the nut's seat, front face */
    double stack[SIL_STRINGS_MAX];        /* feelers on the board beside the slot to file down to */
    double depth[SIL_STRINGS_MAX];        /* slot depth under the finished top */
    double shim;                          /* unknown where none is asked for */
    double fall_angle_deg;                /* the slot's fall toward the tuners */
    double top;                           /* greatest floor + depth, the nut's height */
} sil_nut_work;

/* sil_nut_cut: the work at the nut.
 * Given:    bench, stages  stages run
 *           make           as above; unknown figures give unknown results
 * Returned: work
 * Notes:    floor = B + (f - q) + H - K x_1 x_J and stack = (f - q) + H + drop - K x_1 x_J: the
 *           board's own surface at the nut, in the frame of the crowns. A slot to leave keeps its
 *           height. Two or more slots to raise: the nut is shimmed by the greatest rise, rounded
 *           up to the shim's step, and the others are filed to the same floors.
 *           The fall is fall_share of the head's angle, at least 3 and at most 10 degrees.
 */
void sil_nut_cut(const sil_bench *bench, const sil_stages *stages, const sil_nut_given *make,
                 sil_nut_work *work);

/* sil_nut_await: takes back all figures one could cut to: the whole nut is to wait.
 * Given:    strings  1..SIL_STRINGS_MAX
 *           work     as sil_nut_cut gave it
 * Returned: work     remedy and verdicts to wait, first passes, floors, feelers, depths and shim
 *                    unknown
 */
void sil_nut_await(int strings, sil_nut_work *work);

#ifdef __cplusplus
}
#endif
#endif
