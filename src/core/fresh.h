/* SPDX-License-Identifier: MIT */
/* Used inside the core: what the parts share that are cut and those that are made from a blank. */
#ifndef SILLET_CORE_FRESH_H
#define SILLET_CORE_FRESH_H

#include <sillet/core/nut.h>
#include <sillet/core/saddle.h>

/* Slope of the nut slots down toward the tuners, degrees; unknown where the headstock's angle is. */
double core_fall_angle_deg(const sil_nut_given *make);

/* core_saddle_seat: the height of the saddle's bottom over the chord at each string, by caliper or
 * from the bridge's top; unknown where two readings of it disagree. Fills present_disagree and
 * stands of work. */
void core_saddle_seat(const sil_bench *bench, const sil_saddle_given *make,
                      const sil_stages *stages, sil_saddle_work *work, double *seat);

/* Share in the slot and break angle of one string, from its height and how far it stands out. */
void core_stand_in_slot(const sil_saddle_given *make, sil_saddle_work *work, int string);

#endif
