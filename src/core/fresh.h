/* SPDX-License-Identifier: MIT */
/* Used inside the core: what the parts share that are cut and those that are made from a blank. */
#ifndef SILLET_CORE_FRESH_H
#define SILLET_CORE_FRESH_H

#include <sillet/core/nut.h>
#include <sillet/core/saddle.h>

/* Slope of the nut slots down toward the tuners, degrees; unknown where the headstock's angle is. */
double core_fall_angle_deg(const sil_nut_given *make);

/* core_slot_leave: how much higher than its stack a slot that is cut from above is filed at first, mm: the
 * bench's stroke, or what keeps the slot in its range. over_low: how far its stack is over the height
 * that would bring its gap to the low edge; u: standard uncertainty of the stack; both mm. */
double core_slot_leave(const sil_bench *bench, double over_low, double u);

/* core_saddle_leave: how much higher than its height the top of a new saddle is left at first under a
 * string, mm: the bench's stroke, or what keeps the string in its range. over_low: how far its action is
 * over the low edge of the range once all is done; u: standard uncertainty of its height; both mm. */
double core_saddle_leave(const sil_bench *bench, double over_low, double u, int string);

/* core_aim_over_low: how far a slot at its target is over the low edge of its range, mm at the nut. */
double core_aim_over_low(const sil_bench *bench, int string);

/* core_saddle_seat: the height of the saddle's bottom over the chord at each string, by caliper or
 * from the bridge's top; unknown where two readings of it disagree. Fills present_disagree and
 * stands of work. */
void core_saddle_seat(const sil_bench *bench, const sil_saddle_given *make,
                      const sil_stages *stages, sil_saddle_work *work, double *seat);

/* Share in the slot and break angle of one string, from its height and how far it stands out. */
void core_stand_in_slot(const sil_saddle_given *make, sil_saddle_work *work, int string);

#endif
