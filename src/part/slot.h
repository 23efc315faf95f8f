/* SPDX-License-Identifier: MIT */
/* A nut slot across the string, as the file leaves it: upright walls and a round floor. */
#ifndef SILLET_PART_SLOT_H
#define SILLET_PART_SLOT_H

#include "outline.h"

/* Its two sides are the treble one first. A slot that is shallower than half its width has no walls,
 * and its floor ends where it meets the top. */
typedef struct part_slot {
    double x, floor, radius;
    double half[2]; /* from the middle to each edge at the top */
    bool wall[2];
} part_slot;

part_slot part_slot_at(const part_curve *top, double x, double floor, double mouth);

/* How far the round floor turns from its deepest place to one side, rad. */
double part_slot_turn(const part_slot *slot, int side);

#endif
