/* SPDX-License-Identifier: MIT */
/* Clearance: how hard each note can be plucked before it buzzes, which fret it buzzes on, and the
 * lowest set-up that still rings clean. */
#ifndef SILLET_CLEARANCE_H
#define SILLET_CLEARANCE_H

#include "fit.h"

#ifdef __cplusplus
extern "C" {
#endif

/* Where the strings are plucked, and how tight they are. A pluck force, wherever one is given, is
 * the part of the force that is square to the board. */
typedef struct sil_pluck {
    double at;                       /* from the saddle, mm, > 0 */
    double tension[SIL_STRINGS_MAX]; /* N; where unknown, that string's results are unknown */
} sil_pluck;

/* For every string, open (index 0) and fretted at each fret: the hardest pluck that still rings
 * clean, and the fret the string touches first when plucked harder. There is no entry for the last
 * fret, since there is no fret beyond it to touch. */
typedef struct sil_clearance {
    double force[SIL_STRINGS_MAX][SIL_FRETS_MAX]; /* N; negative: rests on that fret unplucked */
    int at_fret[SIL_STRINGS_MAX][SIL_FRETS_MAX];  /* 0 where the force is unknown */
} sil_clearance;

/* sil_pluck_depth: how far a pluck of 1 N pulls a string aside, at the place it is plucked.
 * Given:    tension  N
 *           length   sounding length, from the nut or the fret to the saddle, mm
 *           at       from the saddle, mm; taken as 3/4 of the length where it is more
 * Returned: mm per N
 */
double sil_pluck_depth(double tension, double length, double at);

/* sil_envelope: how far a plucked string swings at one place, as a share of how far it was pulled
 * aside at the place plucked.
 * Given:    length  sounding length, mm
 *           at      where it is plucked, from the saddle, mm; limited as in sil_pluck_depth
 *           u       place in question, from the nut or the fret, 0..length, mm
 * Returned: 0..1
 * Accuracy: exact for an ideal string
 * Notes:    an ideal string stays inside a parallelogram. It swings furthest at the place plucked
 *           and at the mirror image of that place about the middle of the string.
 * Reference: d'Alembert's plucked string; the tests check it against its Fourier sum
 */
double sil_envelope(double length, double at, double u);

/* sil_buzzes_under: whether a note buzzes under the pick.
 * Given:    force, attack  its hardest clean pluck and the force of the pick, N
 * Returned: false where either is unknown
 * Notes:    both are compared as they are shown, to a hundredth: the model is no finer.
 */
bool sil_buzzes_under(double force, double attack);

/* sil_clearance_find: the hardest clean pluck for every string at every fret.
 * Given:    board      laid
 *           fit        bend, crowns and heights; unknown ones give unknown forces
 *           pluck      place of the pluck, and the tensions
 * Returned: clearance  filled for the board's strings and frets; the rest is untouched
 * Accuracy: stiffness and damping are left out. Open, to 2 %. Fretted, up to a tenth too high. At the
 *           last frets a fifth too high, with a thick core up to a third. The tests hold it against
 *           a stiff string; not measured
 * Notes:    a real string touches at_fret or a fret near it, often nearer the stop
 *           an ideal string touches nothing when plucked below this force. Just above it, it
 *           touches the fret given in at_fret and no other.
 */
void sil_clearance_find(const sil_board *board, const sil_fit *fit, const sil_pluck *pluck,
                        sil_clearance *clearance);

/* sil_clearance_of: the hardest clean pluck of one note alone.
 * Given:    board, fit, pluck  as sil_clearance_find
 *           string             from 0
 *           stop               0 for the open string, or the fret it is fretted at
 * Returned: the force that sil_clearance_find gives there; unknown at the last fret
 */
double sil_clearance_of(const sil_board *board, const sil_fit *fit, const sil_pluck *pluck,
                        int string, int stop);

/* The limits that the lowest clean set-up must keep. */
typedef struct sil_lowest_wish {
    double force[SIL_STRINGS_MAX]; /* every note must ring clean at this pluck, N */
    double most_relief;            /* at fret board->relief_at, mm */
    double least_first;            /* gap at fret 1, the string held down at fret 3, mm */
} sil_lowest_wish;

typedef struct sil_lowest {
    double relief; /* at fret board->relief_at, mm */
    sil_fit fit;   /* the bend and heights of this set-up; the crowns as given */
} sil_lowest;

/* sil_lowest_room: the size of the memory that sil_lowest_find needs to work in.
 * Given:    strings  1..SIL_STRINGS_MAX
 *           frets    1..SIL_FRETS_MAX
 * Returned: bytes
 */
size_t sil_lowest_room(int strings, int frets);

/* sil_lowest_find: the relief and heights that give the lowest mean action at fret 12 and still
 * ring clean.
 * Given:    board   laid
 *           crowns  the crowns to ring clean over; NULL: all sound
 *           pluck   place of the pluck, and the tensions
 *           wish    the limits to keep
 *           room    sil_lowest_room bytes, aligned as by malloc; free to reuse after the call
 * Returned: lowest  where several give the same mean, the one with the least relief, then the
 *                   lowest nut
 * Status:   SIL_DONE; SIL_NOT_KNOWN where a tension or force is unknown, or the board has no third
 *           fret: lowest is then unknown
 * Accuracy: exact but for rounding, because the linear programme is solved at its corners
 * Notes:    for a given bend, each string is a linear programme in its two heights. The sum over
 *           the strings is a convex function of the bend made of straight pieces, and its lowest
 *           point is found from its tangents.
 */
sil_status sil_lowest_find(const sil_board *board, const sil_crowns *crowns, const sil_pluck *pluck,
                           const sil_lowest_wish *wish, void *room, sil_lowest *lowest);

#ifdef __cplusplus
}
#endif
#endif
