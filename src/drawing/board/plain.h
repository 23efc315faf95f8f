/* SPDX-License-Identifier: MIT */
/* Figures of what stays a view of the plan: the tables of clean force and of pitch, and what a
 * measuring sheet repeats of the sheet it is typed into. All other figures are the brief's. */
#ifndef SILLET_DRAWING_PLAIN_H
#define SILLET_DRAWING_PLAIN_H

#include "draft.h"

/* draw_plain_length: hundredths of a millimetre or thousandths of an inch, no unit behind it.
 * draw_plain_size:   one for which a tenth of a millimetre says enough.
 * draw_plain_radius: whole millimetres or tenths of an inch.
 * draw_plain_number: anything else. Each is "-" for what is not known.
 */
const char *draw_plain_length(const draw_draft *draft, double mm);
const char *draw_plain_size(const draw_draft *draft, double mm);
const char *draw_plain_radius(const draw_draft *draft, double mm);
const char *draw_plain_number(const draw_draft *draft, double value, int decimals);

#endif
