/* SPDX-License-Identifier: MIT */
/* The finished nut and saddle as geometry, solved once from a plan.
 *
 * A part's own frame: mm, the origin at the bass end of its bottom, x along the part to the treble
 * end, y up. On a fan a part leans, and what is told square across the board is longer along it;
 * `across` keeps the places square to the board's centre line, from the same end.
 */
#ifndef SILLET_PART_H
#define SILLET_PART_H

#include "../plan/plan.h"
#include "point.h"

/* A part's top: a smooth line through a point for each string whose height is known, going straight
 * on beyond the outer ones. */
typedef struct part_curve {
    int count;
    double x[SIL_STRINGS_MAX], y[SIL_STRINGS_MAX]; /* x rising: the last string first */
} part_curve;

double part_curve_at(const part_curve *curve, double x);

/* part_curve_points: the line from one x to another, either way, so close that no facet shows, and
 * through each of its own points.
 * Returned: how many points were put, at most PART_CURVE_POINTS
 */
enum { PART_CURVE_POINTS = 180 };
int part_curve_points(const part_curve *curve, double from, double to, part_point *out);

typedef struct part_nut {
    int strings;
    double length, thickness;        /* along the nut; thickness as given */
    double slant;                    /* of the board: radians, - the bass end toward the head */
    double along[SIL_STRINGS_MAX];   /* slot centres from the bass end */
    double across[SIL_STRINGS_MAX];  /* the same, square to the centre line */
    double width[SIL_STRINGS_MAX];   /* of the slots */
    double gauge[SIL_STRINGS_MAX];   /* of the strings in them */
    double floor[SIL_STRINGS_MAX];   /* finished, over the nut's bottom at the front face */
    double depth[SIL_STRINGS_MAX];   /* of the slot under the finished top */
    double stack[SIL_STRINGS_MAX];   /* feelers on the board to file down to */
    part_curve top;                  /* empty where no floor is known */
    double height;                   /* the highest place of the top */
    double top_radius, floor_radius; /* unknown: flat, hollow, or under three strings */
    double fall_deg;                 /* of the slots toward the tuners */
    double gap;                      /* between string edges, along; unknown for equal centres */
    double shim;                     /* that the nut stands on when done; 0 for none */
} part_nut;

typedef struct part_saddle {
    int strings;
    double length, thickness;
    double slant;
    double along[SIL_STRINGS_MAX];    /* string centres from the bass end */
    double across[SIL_STRINGS_MAX];   /* the same, square to the centre line */
    double present[SIL_STRINGS_MAX];  /* bottom to string as it is */
    double finished[SIL_STRINGS_MAX]; /* the finished top over the present bottom; of a new saddle
                                         over its own */
    double bridge[SIL_STRINGS_MAX];   /* the bridge's top over the saddle's bottom */
    part_curve present_top, finished_top;
    bool base;                     /* the bottom is sanded */
    sil_line base_all, base_first; /* what comes off it over z along the saddle, z = x - length/2 */
    double shim;                   /* that goes under it; 0 for none */
    bool anew;                     /* a new saddle is made */
    double top_radius;
    double contact[SIL_STRINGS_MAX]; /* how far behind the middle of its thickness a string has to
                                        leave it to play in tune, along the string; as built where
                                        that is not known */
    bool contact_known[SIL_STRINGS_MAX]; /* reckoned, not as built */
    sil_line slot_built, slot_best;      /* setback over z along the saddle */
} part_saddle;

/* part_nut_solve, part_saddle_solve: a part from a plan. What is not known stays SIL_UNKNOWN. */
void part_nut_solve(const sil_plan *plan, part_nut *nut);
void part_saddle_solve(const sil_plan *plan, part_saddle *saddle);

/* part_base_at: what a line takes off the saddle's bottom at x from the bass end. */
double part_base_at(const part_saddle *saddle, sil_line line, double x);

/* part_nut_outline: the finished front face as a closed line from the bass end of the bottom on.
 * Given:    slots  with each slot as the file leaves it; else the top runs over them
 * Returned: how many points were put, at most PART_NUT_POINTS; 0 where no floor is known
 * part_saddle_outline: the saddle from its present bottom to its finished top, as a closed line.
 * Returned: how many points were put, at most PART_SADDLE_POINTS; 0 where no height is known
 */
enum {
    PART_SLOT_POINTS = 12,
    PART_NUT_POINTS = (SIL_STRINGS_MAX + 1) * (PART_CURVE_POINTS + PART_SLOT_POINTS + 5),
    PART_SADDLE_POINTS = PART_CURVE_POINTS + 2
};
int part_nut_outline(const part_nut *nut, bool slots, part_point *out);
int part_saddle_outline(const part_saddle *saddle, part_point *out);

#endif
