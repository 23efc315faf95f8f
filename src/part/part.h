/* SPDX-License-Identifier: MIT */
/* The finished nut and saddle as geometry, computed once from a plan.
 *
 * Axes of a part: mm, with the origin at the bass end of its bottom, x along the part to the treble
 * end, and y up. On a fan a part is at an angle, so lengths along it are longer than those square
 * across the board. `across` has the places measured square to the board's centre line, from the
 * same end.
 */
#ifndef SILLET_PART_H
#define SILLET_PART_H

#include "../plan/plan.h"
#include "point.h"

/* The top of a part, through a point for each string whose height is known. It is an arc of a circle
 * if one comes close enough to all points, and otherwise straight from point to point, and straight on
 * beyond the outer ones. */
typedef struct part_curve {
    int count;
    double x[SIL_STRINGS_MAX], y[SIL_STRINGS_MAX]; /* x rising: the last string first */
    double radius; /* of the arc: whole mm; 0 for a top that is straight from point to point */
    double centre, crest; /* of the arc: x of its highest point, and how high that is, to 0.01 */
} part_curve;

double part_curve_at(const part_curve *curve, double x);

/* part_curve_points: points on the curve from one x to another, in either direction, close enough
 * together to look smooth. The curve's own points are among them.
 * Returned: how many points were written, at most PART_CURVE_POINTS
 */
enum { PART_CURVE_POINTS = 180 };
int part_curve_points(const part_curve *curve, double from, double to, part_point *out);

typedef struct part_nut {
    int strings;
    double length, thickness; /* along the nut; thickness as given */
    double slant;             /* angle across the board, rad; -: bass end toward the headstock */
    double along[SIL_STRINGS_MAX];  /* slot centres from the bass end */
    double across[SIL_STRINGS_MAX]; /* the same, square to the centre line */
    double width[SIL_STRINGS_MAX];  /* of the slots */
    double
        mouth[SIL_STRINGS_MAX]; /* the same along the nut, which a string may cross at an angle */
    double gauge[SIL_STRINGS_MAX]; /* of the strings in them */
    double floor[SIL_STRINGS_MAX]; /* finished, above the nut's own bottom, at the front face */
    double depth[SIL_STRINGS_MAX]; /* of the slot, below the finished top; with an arc
                                        a little more than the string's share, never less */
    double stack[SIL_STRINGS_MAX]; /* stack of feelers on the board to file down to */
    double first[SIL_STRINGS_MAX]; /* the floors after the first pass */
    bool more;                     /* a slot has more to lose after its first pass */
    part_curve top;                /* empty where no floor is known */
    part_curve first_top;          /* over the floors of the first pass, by the same rule */
    double height;                 /* the highest place of the top */
    double top_radius;             /* of an arc; unknown for another top */
    double floor_radius;           /* unknown: flat, hollow, or fewer than three strings */
    double fall_deg;               /* slope of the slots toward the tuners */
    double gap;                    /* between string edges, along; unknown for equal centres */
    double shim;                   /* under the finished nut; 0 for none */
} part_nut;

typedef struct part_saddle {
    int strings;
    double length, thickness;
    double slant;
    double along[SIL_STRINGS_MAX];    /* string centres from the bass end */
    double across[SIL_STRINGS_MAX];   /* the same, square to the centre line */
    double present[SIL_STRINGS_MAX];  /* from the bottom to the string, now */
    double finished[SIL_STRINGS_MAX]; /* the finished top above the present bottom; for a new
                                         saddle, above its own bottom */
    double bridge[SIL_STRINGS_MAX];   /* the bridge's top above the saddle's bottom */
    part_curve present_top, finished_top;
    part_curve first_top; /* after the first pass; of a new saddle as it is made at first */
    bool cut;             /* something comes off the present saddle, at bottom or top */
    bool more;            /* the first pass is not all: something stays on for a later one */
    bool takes;           /* the first pass takes something off, or a new saddle is made */
    bool base;            /* the bottom is sanded */
    sil_line base_all, base_first; /* how much comes off along the saddle, over z = x - length/2 */
    double shim;                   /* under the saddle; 0 for none */
    bool anew;                     /* a new saddle is made */
    double top_radius;             /* of the finished top if it is an arc, otherwise unknown */
    double
        contact[SIL_STRINGS_MAX]; /* where the string should leave the saddle to play in tune: how
                                        far behind the middle of the saddle's thickness, along the
                                        string; where it leaves now, if that is not known */
    bool contact_known[SIL_STRINGS_MAX]; /* contact is the place in tune, not the present one */
    double peak[SIL_STRINGS_MAX]; /* where the string leaves the finished top: how far behind the
                                     middle of the thickness, along the string; contact where the
                                     saddle is in no slot */
    double
        in_tune[SIL_STRINGS_MAX];   /* where it should leave it, in the same way, whether or not the
                                        piece reaches so far: by the cents read, else by its physics;
                                        unknown where neither is */
    bool filed[SIL_STRINGS_MAX];    /* the peak is filed to that place */
    sil_line slot_built, slot_best; /* setback over z along the saddle */
} part_saddle;

/* part_nut_solve, part_saddle_solve: compute a part from a plan. What is not known is SIL_UNKNOWN.
 */
void part_nut_solve(const sil_plan *plan, part_nut *nut);
void part_saddle_solve(const sil_plan *plan, part_saddle *saddle);

/* part_saddle_has_ends: whether its finished top, straight on beyond its outer strings, stays over its
 * bottom at both ends. */
bool part_saddle_has_ends(const part_saddle *saddle);

/* part_base_at: how much a cut takes off the saddle's bottom at x from the bass end. */
double part_base_at(const part_saddle *saddle, sil_line line, double x);

/* part_nut_outline: the finished front face as a closed line, starting at the bass end of the
 * bottom.
 * Given:    slots  whether to include the slots; otherwise the top is drawn without them
 * Returned: how many points were written, at most PART_NUT_POINTS; 0 where no floor is known
 */
enum {
    PART_SLOT_POINTS = 12,
    PART_NUT_POINTS = (SIL_STRINGS_MAX + 1) * (PART_CURVE_POINTS + PART_SLOT_POINTS + 5)
};
int part_nut_outline(const part_nut *nut, bool slots, part_point *out);

#endif
