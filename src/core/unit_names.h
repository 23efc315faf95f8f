/* SPDX-License-Identifier: MIT */
/* Used inside the core: the units that a quantity may be written in. */
#ifndef SILLET_CORE_UNIT_NAMES_H
#define SILLET_CORE_UNIT_NAMES_H

#include <sillet/core/units.h>

typedef struct core_unit {
    sil_measure measure;
    const char *name;
    double factor; /* factor to the unit the measure is kept in */
    double offset;
} core_unit;

/* core_unit_find: the unit of a measure that is written so; NULL where there is none. */
const core_unit *core_unit_find(sil_measure measure, const char *name, size_t length);

/* core_unit_is_inch: whether it may have a fraction, as only an inch or a thousandth of one may. */
bool core_unit_is_inch(const core_unit *unit);

#endif
