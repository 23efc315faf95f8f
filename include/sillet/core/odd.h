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

/* sil_off_the_others: a value less the median of the others.
 * Given:    count  of values, unknown ones among them
 *           which  0..count - 1
 * Returned: mm; SIL_UNKNOWN with fewer than three others that are known
 */
double sil_off_the_others(int count, const double *value, int which);

#ifdef __cplusplus
}
#endif
#endif
