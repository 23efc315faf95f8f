/* SPDX-License-Identifier: MIT */
/* Within the core: how deep a string swings that sounds from one stop. */
#ifndef SILLET_CORE_SWING_H
#define SILLET_CORE_SWING_H

#include <sillet/core/clearance.h>

/* What a stop fixes. Let a = place plucked from the saddle and b = length - a; a string pulled by 1
 * N goes aside by a b / (T l) there, and swings inside the lines from either end to that depth at
 * both a and b from the stop. */
typedef struct core_swing {
    double length;
    double steep, shallow; /* depth per mm from an end: b / (T l) up to a, a / (T l) up to b */
} core_swing;

core_swing core_swing_from(const sil_board *board, const sil_pluck *pluck, int string, int stop);

/* Depth at u from the stop, mm by 1 N. */
static inline double core_swing_at(const core_swing *swing, double u)
{
    double from_stop = u;
    double from_saddle = swing->length - u;
    /* Plucked at b from the stop: shallow up to there, steep beyond; mirrored: the other way. */
    double pulled = from_stop * swing->shallow;
    double beyond = from_saddle * swing->steep;
    double mirrored = from_stop * swing->steep;
    double behind = from_saddle * swing->shallow;
    double as_pulled = pulled < beyond ? pulled : beyond;
    double as_mirrored = mirrored < behind ? mirrored : behind;
    return as_pulled > as_mirrored ? as_pulled : as_mirrored;
}

#endif
