/* SPDX-License-Identifier: MIT */
/* Strings as a maker lists them: material, mass, pitch and tension. */
#ifndef SILLET_STRING_H
#define SILLET_STRING_H

#include "units.h"

#ifdef __cplusplus
extern "C" {
#endif

/* A string's material; `make` in a sheet. */
typedef enum sil_material {
    SIL_MATERIAL_NOT_GIVEN,
    SIL_PLAIN_STEEL,
    SIL_PLAIN_NYLON,
    SIL_PLAIN_FLUOROCARBON,
    SIL_PLAIN_GUT,
    SIL_WOUND_BRONZE,
    SIL_WOUND_NICKEL,        /* pure nickel */
    SIL_WOUND_NICKEL_PLATED, /* steel wire thinly plated: what is usually sold as nickel wound */
    SIL_WOUND_STEEL,
    SIL_WOUND_NYLON,
    SIL_MATERIALS
} sil_material;

/* sil_material_wound: whether a string of this material is wound.
 * Given:    material  one of sil_material
 * Returned: false for a plain string, and where the material is not given
 */
bool sil_material_wound(sil_material material);

/* The density and stiffness of a string material. */
typedef struct sil_material_constants {
    double modulus_gpa;  /* over sil_stiff_diameter: of the core, and of a wound nylon string of all
                            of it */
    double density;      /* of the core, kg/m^3 */
    double wrap_density; /* of the wrap, kg/m^3; unknown for a plain string */
} sil_material_constants;

/* sil_note_hz: frequency of a note from its name.
 * Given:    name  letter A..G in either case, then # or b (or the Unicode signs) if any, then the
 *                 octave -1..9; C4 is middle C
 * Returned: hz    untouched on error
 * Status:   SIL_DONE, or SIL_NO_NOTE where it is not the name of a note
 * Notes:    equal temperament, A4 = 440 Hz
 * Reference: ISO 16
 */
sil_status sil_note_hz(const char *name, double *hz);

/* sil_unit_mass: mass of a string per metre.
 * Given:    material   plain or wound
 *           gauge      outer diameter, mm, > 0
 *           core       diameter of the core, mm, 0 < core < gauge; not used for a plain string
 *           constants  its densities are used
 * Returned: kg/m; SIL_UNKNOWN where the core of a wound string or a density is unknown
 * Notes:    plain: rho pi D^2/4. Wound, with one close layer of round wire of w = (D - c)/2:
 *           rho_c pi c^2/4 + rho_w pi^2 w (c + w)/4. A sheet and SIL_UNIT_MASS use g/m.
 */
double sil_unit_mass(sil_material material, double gauge, double core,
                     const sil_material_constants *constants);

/* sil_typical_core: the core that a wound string of this material and gauge usually has.
 * Given:    material  one of sil_material
 *           gauge     outer diameter, mm
 * Returned: mm, less than the gauge; SIL_UNKNOWN for a plain string, and for a gauge outside the
 *           table
 * Notes:    linear between the gauges of the table. For a string whose core nobody knows: good
 *           enough to tell a tension (its mass hardly depends on the core), never to cut by.
 * Reference: steel cores: common practice, from memory. Nylon: what the masses of a published set
 *           imply (Anderson and Beausoleil, JASA 156, 683 (2024), manuscript)
 */
double sil_typical_core(sil_material material, double gauge);

/* sil_stiff_diameter: the diameter of what resists stretching and bending, over which the modulus
 * of a string is told.
 * Given:    material     one of sil_material
 *           gauge, core  mm
 * Returned: the gauge of a plain string and of a wound nylon one, whose core is floss without a
 *           diameter of its own; the core of any other wound string
 */
double sil_stiff_diameter(sil_material material, double gauge, double core);

/* sil_tension: tension of a string at pitch.
 * Given:    unit_mass  kg/m
 *           length     mm, sounding length of the open string
 *           hz         pitch of the open string
 * Returned: mu (2 l f)^2, N; SIL_UNKNOWN where one of the figures given is unknown
 */
double sil_tension(double unit_mass, double length, double hz);

#ifdef __cplusplus
}
#endif
#endif
