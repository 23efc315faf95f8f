/* SPDX-License-Identifier: MIT */
/* Figures taken straight from the plan: the tables of clean force and of pitch, and what a
 * measuring sheet on paper repeats from the job. All other figures come from the brief. */
#ifndef SILLET_DRAWING_PLAIN_H
#define SILLET_DRAWING_PLAIN_H

#include "draft.h"

/* draw_plain_length: in hundredths of a millimetre or thousandths of an inch, without a unit.
 * draw_plain_size: a length that needs only tenths of a millimetre.
 * draw_plain_radius: in whole millimetres or tenths of an inch.
 * draw_plain_number: any other number.
 * Each of them gives "-" for a value that is not known.
 */
const char *draw_plain_length(const draw_draft *draft, double mm);
const char *draw_plain_size(const draw_draft *draft, double mm);
const char *draw_plain_radius(const draw_draft *draft, double mm);
const char *draw_plain_number(const draw_draft *draft, double value, int decimals);

#endif
