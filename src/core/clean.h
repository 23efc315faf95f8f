/* SPDX-License-Identifier: MIT */
/* Used inside the core: the least heights at which a string rings clean under the pick. */
#ifndef SILLET_CORE_CLEAN_H
#define SILLET_CORE_CLEAN_H

#include <sillet/core/fit.h>

/* core_clean_saddle: the least height at the saddle at which the notes of a string ring clean under
 *                    its pluck: those fretted over all crowns, the open one from crown 5 up.
 * core_clean_nut:    the least height at the nut at which the open string rings clean over crowns 1
 *                    to 4, with this action over fret 12.
 * Given:    bench   its board, attack, tension and pluck_at are used
 *           fit     bend, and for the saddle the height at the nut; the crowns are taken as sound
 *           action  mm
 * Returned: height over the chord, mm; SIL_UNKNOWN where there is no pluck to hold to, or a figure
 *           is unknown
 * Accuracy: exact for an ideal string, as sil_clearance_find
 */
double core_clean_saddle(const sil_bench *bench, const sil_fit *fit, int string);
double core_clean_nut(const sil_bench *bench, const sil_fit *fit, double action, int string);

/* core_pluck_of: the pluck that cuts must leave a string clean under, N; SIL_UNKNOWN: none. */
double core_pluck_of(const sil_bench *bench, int string);

#endif
