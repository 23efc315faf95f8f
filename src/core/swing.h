/* SPDX-License-Identifier: MIT */
/* Used inside the core: how deep a string swings when it sounds from one fret, or open. */
#ifndef SILLET_CORE_SWING_H
#define SILLET_CORE_SWING_H

#include <sillet/core/clearance.h>

/* What is fixed by the fret the string sounds from. Let a = the distance of the pluck from the
 * saddle and b = length - a. A string pulled by 1 N moves aside by a b / (T l) there. It swings
 * inside the lines from either end to that depth at both a and b from the fret. */
typedef struct core_swing {
    double length;
    double steep, shallow; /* depth per mm from an end: b / (T l) up to a, a / (T l) up to b */
} core_swing;

core_swing core_swing_from(const sil_board *board, const sil_pluck *pluck, int string, int stop);

/* Depth at u from the fret, mm for 1 N. */
static inline double core_swing_at(const core_swing *swing, double u)
{
    double from_stop = u;
    double from_saddle = swing->length - u;
    /* Plucked at b from the fret: shallow up to there, steep beyond; mirrored, the other way
     * round. */
    double pulled = from_stop * swing->shallow;
    double beyond = from_saddle * swing->steep;
    double mirrored = from_stop * swing->steep;
    double behind = from_saddle * swing->shallow;
    double as_pulled = pulled < beyond ? pulled : beyond;
    double as_mirrored = mirrored < behind ? mirrored : behind;
    return as_pulled > as_mirrored ? as_pulled : as_mirrored;
}

#endif
