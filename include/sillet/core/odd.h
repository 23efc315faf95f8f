/* SPDX-License-Identifier: MIT */
/* One reading that does not go with the others, as after a slip of the pen. */
#ifndef SILLET_ODD_H
#define SILLET_ODD_H

#include "units.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How far off the others a reading must be, at least, mm (common practice, no source), and in
 * standard uncertainties of the reading. */
#define SIL_ODD_ACTION 0.5
#define SIL_ODD_FIRST 0.15
#define SIL_ODD_U 6.0

/* How far a list must fall from string 1 to the last, against a target that rises, before anybody is
 * asked which end it was begun at: mm for the action (common practice, no source), and in standard
 * uncertainties of the reading. A list of gaps is asked about only along with one of actions, and by
 * less. */
#define SIL_ORDER_ACTION 0.2
#define SIL_ORDER_U 4.0
#define SIL_ORDER_FIRST_U 2.0

typedef struct sil_stray {
    int which;  /* the one that is off, or -1 */
    bool curve; /* others are off as well: together they are a curve, and none is a slip */
    double off; /* how far it is from the line of the others, mm; unknown where none is off */
} sil_stray;

/* sil_stray_from_line: the value that is off the straight line of the others.
 * Given:    count     of values, 4 or more; fewer show nothing
 *           z, value  mm
 *           limit     how far off, mm
 * Returned: by least squares, s = e / sqrt(1 - h) of each, e its residual and h its leverage. Only
 *           the largest |s| can be off, and is past limit. With 5 or more it is a curve where,
 *           without it, |s| of another exceeds half the limit
 * Reference: R. D. Cook and S. Weisberg, Residuals and Influence in Regression (1982), 2.1
 */
sil_stray sil_stray_from_line(int count, const double *z, const double *value, double limit);

/* Two strings of a list; -1: none. */
typedef struct sil_two {
    int first, second;
} sil_two;

/* How far a list must lie off a straight line before two of it can be swapped, and how near it must lie
 * once they are put back, in standard uncertainties of the reading; and what share of it may be left. */
#define SIL_SWAPPED_U 3.0
#define SIL_PUT_BACK_U 1.0
#define SIL_PUT_BACK_SHARE (1.0 / 3.0)

/* sil_swapped: the two values of a list that look swapped.
 * Given:    count     of values, 5 or more; of fewer too little is left to tell
 *           z, value  mm
 *           u         standard uncertainty of a value, mm
 * Returned: the only two that bring the list to a straight line when they change places, by its
 *           residual standard deviation (with count - 2 degrees of freedom); -1 where that is near
 *           enough as it is, or where no two or more than two do
 */
sil_two sil_swapped(int count, const double *z, const double *value, double u);

/* sil_off_the_others: a value less the median of the others.
 * Given:    count  of values, unknown ones among them
 *           which  0..count - 1
 * Returned: mm; SIL_UNKNOWN with fewer than three others that are known
 */
double sil_off_the_others(int count, const double *value, int which);

/* sil_fall_against: how far a list falls from its first value to its last, where its target rises.
 * Given:    count          of values, 4 or more; fewer show nothing
 *           z              mm, + toward the first
 *           value, target  mm
 *           step           a value that stands over the one before it by no more than this is no
 *                          higher, mm
 * Returned: mm, over the whole width, by the line of least squares; SIL_UNKNOWN where a value is
 *           higher than the one before it, where the line rises, or where the target does not
 * Notes:    such a list fits the slope of its target better when it is turned round, always: what
 *           falls is nearest to what rises in the opposite order
 */
double sil_fall_against(int count, const double *z, const double *value, const double *target,
                        double step);

#ifdef __cplusplus
}
#endif
#endif
