/* SPDX-License-Identifier: MIT */
/* Compensation: how sharp a string plays at each fret, and where the string must leave the nut and
 * the saddle to play in tune. */
#ifndef SILLET_PITCH_H
#define SILLET_PITCH_H

#include "board.h"
#include "saddle.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How a string is held at its two ends: first at the nut or fret, then at the saddle. Published
 * work disagrees, and this choice matters more than anything else in the model, so it is always
 * given and never assumed. */
typedef enum sil_ends { SIL_CLAMPED_PINNED, SIL_PINNED, SIL_CLAMPED } sil_ends;

#define SIL_PITCH_FRETS 12

/* What the pitch of one string is computed from. */
typedef struct sil_pitch_string {
    const double *fret_x;              /* places of frets 0..12, mm */
    double crown[SIL_PITCH_FRETS + 1]; /* crown heights above the chord, [1..12], mm */
    double scale;                      /* mm */
    double nut_height, saddle_height;  /* above the chord, mm */
    double unit_mass_kg_m, hz;         /* hz: pitch of the open string */
    double modulus_gpa;                /* over the core */
    double core;                       /* the diameter that sil_stiff_diameter gives, mm */
    double press; /* how far behind the fret the finger presses, mm; half the fret space where it
                     is more */
    sil_ends ends;
} sil_pitch_string;

/* sil_stiff_factor: how much stiffness raises the fundamental of a string.
 * Given:    ends  how the string is held
 *           b     sqrt(E I / T) / l, no unit, 0..0.03
 * Returned: its frequency divided by that of a string without stiffness
 * Accuracy: exact for pinned ends. Otherwise the term in b^3 is left out: about 8 b^3 if clamped at
 *           one end, 23 b^3 at both
 * Reference: pinned: H. Fletcher, JASA 36, 203 (1964); clamped and pinned, 1 + b + (1 + pi^2/2)
 *           b^2: Anderson and Beausoleil, JASA 156, 683 (2024)
 */
double sil_stiff_factor(sil_ends ends, double b);

/* sil_cents: how sharp a fretted note is against the open string, in equal temperament.
 * Given:    string            every field set
 *           setback, advance  how far the saddle is set back and the nut moved forward: the string
 *                             leaves them at scale + setback and at advance, mm
 *           fret              1..12
 * Returned: cents, + sharp; SIL_UNKNOWN where mass, pitch, modulus, core or a height is unknown
 * Accuracy: as sil_stiff_factor for the stiffness; exact but for rounding for the rest
 * Notes:    counts the sounding length, the tension added by pressing the string down to the fret,
 *           and the stiffness
 * Reference: Anderson and Beausoleil 2024, here with the height of each crown
 */
double sil_cents(const sil_pitch_string *string, double setback, double advance, int fret);

/* sil_cents_fill: the same at all of frets 1..12; what the open string does is worked out once.
 * Given:    string, setback, advance  as sil_cents
 *           cents                     room for SIL_PITCH_FRETS + 1
 * Sets:     cents[1..12]
 */
void sil_cents_fill(const sil_pitch_string *string, double setback, double advance, double *cents);

/* sil_stiffness: how stiff a string is when fretted at 12.
 * Given:    string, setback, advance  as sil_cents
 * Returned: b as in sil_stiff_factor, no unit; above 0.03 the cents of this string are doubtful
 */
double sil_stiffness(const sil_pitch_string *string, double setback, double advance);

/* sil_saddle_only: the setback that puts fret 12 in tune without changing the nut.
 * Given:    string   as sil_cents
 *           advance  mm
 * Returned: mm, + longer; SIL_UNKNOWN where sil_cents is
 * Notes:    there is exactly one answer, because the pitch at fret 12 falls steadily as the setback
 *           grows
 */
double sil_saddle_only(const sil_pitch_string *string, double advance);

typedef struct sil_best_pair {
    double setback, advance; /* mm */
    double rms;              /* root mean square of the cents at frets 1..12 */
} sil_best_pair;

/* sil_best_pair_find: the setback and advance that give the least sum of squared cents over frets
 * 1..12.
 * Given:    string  as sil_cents
 * Returned: the pair, and the cents that remain; all SIL_UNKNOWN where sil_cents is
 */
sil_best_pair sil_best_pair_find(const sil_pitch_string *string);

/* sil_slot_line: the straight saddle slot that comes nearest to a setback for each string.
 * Given:    count       1 or more
 *           z, setback  mm
 * Returned: the line over z whose greatest distance from any setback is the least possible;
 *           SIL_UNKNOWN where a setback is unknown
 * Accuracy: exact
 * Notes:    the line is parallel to the line through two of the points, and midway between it and
 *           the point farthest from it
 */
sil_line sil_slot_line(int count, const double *z, const double *setback);

#ifdef __cplusplus
}
#endif
#endif
