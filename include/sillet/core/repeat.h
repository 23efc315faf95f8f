/* SPDX-License-Identifier: MIT */
/* What a tool proves to read to: the same thing read twice. */
#ifndef SILLET_REPEAT_H
#define SILLET_REPEAT_H

#ifdef __cplusplus
extern "C" {
#endif

/* How many pairs it takes before anything is said of a tool: with 12, the figure itself is good to
 * about a fifth (1/sqrt(2 x 11)). */
#define SIL_PAIRS_LEAST 12

typedef struct sil_repeat {
    int dropped; /* pairs that were left out, as something else than the tool */
    double u;    /* standard uncertainty of one reading, mm; unknown with fewer than
                    SIL_PAIRS_LEAST pairs */
} sil_repeat;

/* sil_readings_step: the step in which readings were taken.
 * Given:    values, count  readings, mm
 * Returned: the largest usual step, in mm or in inches, that nine readings in ten are a multiple
 *           of, mm; 0 where there is none
 */
double sil_readings_step(const double *values, int count);

/* sil_repeat_find: the standard uncertainty of a reading, from pairs of readings of the same thing.
 * Given:    difference, count  between the readings of each pair, mm
 *           graduation         of the tool, mm, 0 or more
 *           stated             what the tool is said to read to, as a standard uncertainty, mm, 0
 *                              or more
 * Returned: difference         sorted
 *           repeat             its u is the standard deviation of the differences over sqrt 2,
 *                              without those more than 4 robust standard deviations (1.4826 median
 *                              absolute deviations) from their median. It is never under
 *                              graduation/sqrt 12, nor under half of what is stated
 * Accuracy: 1/sqrt(2 (count - 1)) of itself
 * Notes:    the robust one is never taken smaller than two roundings make it, graduation/sqrt 6:
 *           with a coarse tool most differences are 0
 */
void sil_repeat_find(double *difference, int count, double graduation, double stated,
                     sil_repeat *repeat);

#ifdef __cplusplus
}
#endif
#endif
