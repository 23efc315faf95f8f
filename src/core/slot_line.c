/* SPDX-License-Identifier: MIT */
/* The straight line for a saddle's slot: the one whose greatest distance from the best setbacks is
 * least. */
#include <sillet/core/pitch.h>

/* For one slope, the line midway between the highest and the lowest point, and how far apart they
 * are. */
static double centre(int count, const double *z, const double *setback, sil_line *line)
{
    double low = (double)INFINITY;
    double high = -(double)INFINITY;
    for (int i = 0; i < count; i++) {
        double level = setback[i] - line->b1 * z[i];
        low = level < low ? level : low;
        high = level > high ? level : high;
    }
    line->b0 = (low + high) / 2.0;
    return high - low;
}

sil_line sil_slot_line(int count, const double *z, const double *setback)
{
    for (int i = 0; i < count; i++) {
        if (!sil_known(setback[i])) {
            return (sil_line){SIL_UNKNOWN, SIL_UNKNOWN};
        }
    }
    sil_line best = {.b1 = 0.0};
    double least = centre(count, z, setback, &best);
    /* The best slope is the slope between two of the points, a side of their hull. */
    for (int i = 0; i < count; i++) {
        for (int k = i + 1; k < count; k++) {
            sil_line line = {.b1 = (setback[k] - setback[i]) / (z[k] - z[i])};
            double apart = centre(count, z, setback, &line);
            if (apart < least) {
                least = apart;
                best = line;
            }
        }
    }
    return best;
}
