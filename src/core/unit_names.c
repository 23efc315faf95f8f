/* SPDX-License-Identifier: MIT */
/* The units that a quantity may be written in. */
#include "unit_names.h"

#include <string.h>

/* Inch: exactly 25.4 mm; pound-force: exactly 4.4482216152605 N (both by definition). The first
 * name of a measure is the unit it is kept in. */
static const core_unit units[] = {
    {SIL_LENGTH, "mm", 1.0, 0.0},
    {SIL_LENGTH, "in", 25.4, 0.0},
    {SIL_LENGTH, "\"", 25.4, 0.0},
    {SIL_LENGTH, "thou", 0.0254, 0.0},
    {SIL_LENGTH, "inch", 25.4, 0.0},
    {SIL_LENGTH, "inches", 25.4, 0.0},
    {SIL_LENGTH, "in.", 25.4, 0.0},
    {SIL_LENGTH, "\xE2\x80\xB3", 25.4, 0.0}, /* double prime */
    {SIL_LENGTH, "\xE2\x80\x9D", 25.4, 0.0}, /* closing quote, which a telephone writes for " */
    {SIL_LENGTH, "''", 25.4, 0.0},
    {SIL_LENGTH, "mil", 0.0254, 0.0},
    {SIL_LENGTH, "mils", 0.0254, 0.0},
    {SIL_LENGTH, "thousandths", 0.0254, 0.0},
    {SIL_LENGTH, "cm", 10.0, 0.0},
    {SIL_LENGTH, "m", 1000.0, 0.0},
    {SIL_ANGLE, "deg", 1.0, 0.0},
    {SIL_ANGLE, "\xC2\xB0", 1.0, 0.0}, /* degree sign */
    {SIL_ANGLE, "rad", 57.295779513082320877, 0.0},
    {SIL_FORCE, "N", 1.0, 0.0},
    {SIL_FORCE, "mN", 0.001, 0.0},
    {SIL_FORCE, "lbf", 4.4482216152605, 0.0},
    {SIL_MODULUS, "GPa", 1.0, 0.0},
    {SIL_MODULUS, "MPa", 1e-3, 0.0},
    {SIL_MODULUS, "Pa", 1e-9, 0.0},
    {SIL_MODULUS, "psi", 6.894757293168361e-6, 0.0},
    {SIL_UNIT_MASS, "g/m", 1.0, 0.0},
    {SIL_UNIT_MASS, "kg/m", 1000.0, 0.0},
    {SIL_UNIT_MASS, "lb/in", 453.59237 / 0.0254, 0.0},
    {SIL_DENSITY, "kg/m3", 1.0, 0.0},
    {SIL_DENSITY, "kg/m\xC2\xB3", 1.0, 0.0},
    {SIL_DENSITY, "g/cm3", 1000.0, 0.0},
    {SIL_DENSITY, "g/cm\xC2\xB3", 1000.0, 0.0},
    {SIL_HUMIDITY, "%", 1.0, 0.0},
    {SIL_TEMPERATURE, "C", 1.0, 0.0},
    {SIL_TEMPERATURE,
     "\xC2\xB0"
     "C",
     1.0, 0.0},
    {SIL_TEMPERATURE, "F", 5.0 / 9.0, -160.0 / 9.0},
    {SIL_TEMPERATURE,
     "\xC2\xB0"
     "F",
     5.0 / 9.0, -160.0 / 9.0},
    {SIL_FREQUENCY, "Hz", 1.0, 0.0},
};

enum { UNIT_COUNT = sizeof units / sizeof units[0] };

/* Upper and lower case tell units apart (mN, MPa), but not those of length: "MM" is mm and "In" is
 * in. */
static bool is_named(const core_unit *unit, const char *name, size_t length)
{
    if (strlen(unit->name) != length) {
        return false;
    }
    for (size_t i = 0; i < length; i++) {
        bool capital = unit->measure == SIL_LENGTH && name[i] >= 'A' && name[i] <= 'Z';
        if (unit->name[i] != (capital ? (char)(name[i] - 'A' + 'a') : name[i])) {
            return false;
        }
    }
    return true;
}

const core_unit *core_unit_find(sil_measure measure, const char *name, size_t length)
{
    for (int i = 0; i < UNIT_COUNT; i++) {
        if (units[i].measure == measure && is_named(&units[i], name, length)) {
            return &units[i];
        }
    }
    return NULL;
}

const char *sil_measure_unit(sil_measure measure)
{
    for (int i = 0; i < UNIT_COUNT; i++) {
        if (units[i].measure == measure) {
            return units[i].name;
        }
    }
    return "";
}

bool core_unit_is_inch(const core_unit *unit)
{
    return unit->measure == SIL_LENGTH && (unit->factor == 25.4 || unit->factor == 0.0254);
}
