/* SPDX-License-Identifier: MIT */
/* Within the plan: its parts in the order they run. */
#ifndef SILLET_PLAN_PARTS_H
#define SILLET_PLAN_PARTS_H

#include <sillet/plan.h>

/* The reading that counts; an empty one where there is none. */
const sil_reading *plan_reading(const sil_plan *plan);

/* Fills nut_withheld and saddle_withheld, takes the withheld work back and marks its stages. */
void plan_withhold(sil_plan *plan);

void plan_find(sil_plan *plan);
void plan_order(sil_plan *plan);

bool plan_withheld_by(const sil_withheld *withheld, sil_code code);

/* Whether anything of the instrument's state stops all work: bridge, braces, pitch, climate. */
bool plan_stopped(const sil_plan *plan);

/* Relief read as 0 under a string: straight or back-bowed, a string cannot tell. */
bool plan_relief_at_nought(const sil_plan *plan);

#endif
