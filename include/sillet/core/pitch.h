/* SPDX-License-Identifier: MIT */
/* Compensation: how sharp a string plays at each fret, and where it must leave nut and saddle to
 * play in tune. */
#ifndef SILLET_PITCH_H
#define SILLET_PITCH_H

#include "board.h"
#include "saddle.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How a string is held at its two ends. Published work disagrees, and the choice outweighs all
 * else, so it is said, never assumed. The first is at the nut or fret, the second at the saddle. */
typedef enum sil_ends { SIL_CLAMPED_PINNED, SIL_PINNED, SIL_CLAMPED } sil_ends;

#define SIL_PITCH_FRETS 12

/* One string for its pitch. */
typedef struct sil_pitch_string {
    const double *fret_x;              /* places of frets 0..12, mm */
    double crown[SIL_PITCH_FRETS + 1]; /* crown heights over the chord, [1..12] */
    double scale;                      /* mm */
    double nut_height, saddle_height;  /* over the chord, mm */
    double unit_mass_kg_m, hz;         /* at pitch when open */
    double modulus_gpa;                /* of the core */
    double core;                       /* diameter of the core, or of a plain string, mm */
    double press; /* behind the fret, mm; taken as half the space there where it is more */
    sil_ends ends;
} sil_pitch_string;

/* sil_stiff_factor: by how much stiffness raises the first mode of a string.
 * Given:    ends  how the string is held
 *           b     sqrt(E I / T) / l, no unit, 0..0.03
 * Returned: f / f of a limp string
 * Accuracy: pinned exact; else the cube of b is left off, about 8 b^3 clamped at one end, 23 b^3 at
 *           both
 * Reference: pinned: H. Fletcher, JASA 36, 203 (1964); clamped and pinned, 1 + b + (1 + pi^2/2)
 *           b^2: Anderson and Beausoleil, JASA 156, 683 (2024)
 */
double sil_stiff_factor(sil_ends ends, double b);

/* sil_cents: how sharp a fret plays against the open string, equal temperament.
 * Given:    string            all of it
 *           setback, advance  where it leaves the saddle (scale + setback) and the nut, mm
 *           fret              1..12
 * Returned: cents, + sharp; SIL_UNKNOWN where mass, pitch, modulus, core or a height is
 * Accuracy: as sil_stiff_factor for stiffness; the rest to rounding
 * Notes:    resonant length, tension raised by stretching down to the fret, and stiffness.
 * Reference: Anderson and Beausoleil 2024, with the crowns' own heights.
 */
double sil_cents(const sil_pitch_string *string, double setback, double advance, int fret);

/* sil_stiffness: how stiff a string is, fretted at 12.
 * Given:    string, setback, advance  as sil_cents
 * Returned: b of sil_stiff_factor, no unit; over 0.03 its figures are to be doubted
 */
double sil_stiffness(const sil_pitch_string *string, double setback, double advance);

/* sil_saddle_only: the setback that puts fret 12 in tune with the nut where it is.
 * Given:    string   as sil_cents
 *           advance  mm
 * Returned: mm, + longer; SIL_UNKNOWN where sil_cents is
 * Notes:    there is one: the pitch there falls steadily with the setback
 */
double sil_saddle_only(const sil_pitch_string *string, double advance);

/* sil_setback_move: the change of setback that takes away an error read at fret 12.
 * Given:    string, setback, advance  as sil_cents
 *           cents                     to take away, + sharp
 * Returned: mm, + longer; SIL_UNKNOWN where sil_cents is
 */
double sil_setback_move(const sil_pitch_string *string, double setback, double advance,
                        double cents);

typedef struct sil_best_pair {
    double setback, advance; /* mm */
    double rms;              /* of the cents left at frets 1..12 */
} sil_best_pair;

/* sil_best_pair_find: setback and advance with the least sum of squared cents over frets 1..12.
 * Given:    string  as sil_cents
 * Returned: the pair, and what it leaves; all SIL_UNKNOWN where sil_cents is
 */
sil_best_pair sil_best_pair_find(const sil_pitch_string *string);

/* sil_slot_line: the straight saddle line that comes nearest to every setback wanted.
 * Given:    count       1 or more
 *           z, setback  mm
 * Returned: the line over z with the least greatest distance; SIL_UNKNOWN where a setback is
 * Notes:    exact: it lies midway between two points' line and the farthest point from it.
 */
sil_line sil_slot_line(int count, const double *z, const double *setback);

#ifdef __cplusplus
}
#endif
#endif
