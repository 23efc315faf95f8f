/* SPDX-License-Identifier: MIT */
/* Within the brief: the one place where a figure becomes what a person is shown. */
#ifndef SILLET_BRIEF_FIGURE_H
#define SILLET_BRIEF_FIGURE_H

#include "brief.h"

/* figure_length: a length as a bench reads it: hundredths of a millimetre, thousandths of an inch.
 * figure_size:   one for which a tenth of a millimetre says enough.
 * figure_radius: whole millimetres or tenths of an inch.
 * figure_plain:  a length of the job as it was given, without noughts behind it: a scale.
 * figure_number: anything else, with so many decimals; nearest.
 * figure_none:   nothing to show: "-".
 */
brief_figure figure_length(sil_unit unit, double mm, sil_rounding way);
brief_figure figure_size(sil_unit unit, double mm);
brief_figure figure_radius(sil_unit unit, double mm);
brief_figure figure_plain(sil_unit unit, double mm);
brief_figure figure_number(double value, int decimals);
brief_figure figure_none(void);

#endif
