/* SPDX-License-Identifier: MIT */
/* Clearance: how hard each note may be plucked before it buzzes, on which fret it then does, and
 * the lowest setup that still rings clean. */
#ifndef SILLET_CLEARANCE_H
#define SILLET_CLEARANCE_H

#include "fit.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How a string is plucked: the part of the force that is square to the board. */
typedef struct sil_pluck {
    double at;                       /* from the saddle, mm, > 0 */
    double tension[SIL_STRINGS_MAX]; /* N; unknown: nothing is told of that string */
} sil_pluck;

/* Of every string and stop: the hardest clean pluck and the fret that sets it. Stop 0 is the open
 * string; the last fret has nothing to touch. */
typedef struct sil_clearance {
    double force[SIL_STRINGS_MAX][SIL_FRETS_MAX]; /* N; negative: stopped dead on that fret */
    int at_fret[SIL_STRINGS_MAX][SIL_FRETS_MAX];  /* 0 where the force is unknown */
} sil_clearance;

/* sil_pluck_depth: how far a pluck of 1 N pulls a string aside where it is plucked.
 * Given:    tension  N
 *           length   from the stop to the saddle, mm
 *           at       from the saddle, mm; taken as 3/4 of the length where it is more
 * Returned: mm by N
 */
double sil_pluck_depth(double tension, double length, double at);

/* sil_envelope: how deep a string pulled aside by 1 at a place goes elsewhere once let go.
 * Given:    length  mm
 *           at      where it is pulled, from the saddle, mm; as above
 *           u       from the stop, 0..length, mm
 * Returned: 0..1
 * Notes:    exact for an ideal string: it stays inside a parallelogram, and goes deepest at the
 *           place pulled and at its mirror image from the stop
 * Reference: the plucked string after d'Alembert; checked against its Fourier sum in the tests
 */
double sil_envelope(double length, double at, double u);

/* sil_clearance_find: the clean force of every string and stop.
 * Given:    board      laid
 *           fit        bend, crowns and heights; unknown ones give unknown forces
 *           pluck      where, and the tensions
 * Returned: clearance  of the board's strings and frets; the rest is untouched
 * Notes:    an ideal string touches nothing if and only if it is plucked under the clean force, and
 *           just over it touches the fret told, first and alone
 * Accuracy: for stiffness and loss, to about a tenth; optimistic on thick plain strings at the
 *           first frets
 */
void sil_clearance_find(const sil_board *board, const sil_fit *fit, const sil_pluck *pluck,
                        sil_clearance *clearance);

/* What the lowest clean setup is to keep. */
typedef struct sil_lowest_wish {
    double force[SIL_STRINGS_MAX]; /* every note clean under this pluck, N */
    double most_relief;            /* mm, over board->relief_at */
    double least_first;            /* gap at fret 1, borne on 3, mm */
} sil_lowest_wish;

typedef struct sil_lowest {
    double relief; /* mm, over board->relief_at */
    sil_fit fit;   /* its bend and heights; crowns as given */
} sil_lowest;

/* sil_lowest_room: the room sil_lowest_find works in.
 * Given:    strings  1..SIL_STRINGS_MAX
 *           frets    1..SIL_FRETS_MAX
 * Returned: bytes
 */
size_t sil_lowest_room(int strings, int frets);

/* sil_lowest_find: relief and heights with the lowest mean action at fret 12 that ring clean.
 * Given:    board   laid
 *           crowns  as they are, or will be; NULL: all sound
 *           pluck   where, and the tensions
 *           wish    what it is to keep
 *           room    sil_lowest_room bytes, aligned as malloc does; nothing in it is needed after
 * Returned: lowest  of equal means the least relief, then the lowest nut
 * Status:   SIL_DONE; SIL_NOT_KNOWN where a tension or force is, or the board has no third fret:
 *           lowest is then unknown
 * Accuracy: exact to rounding: the programme is solved at its corners
 * Notes:    for a bend, each string is a linear programme in two heights; their sum is convex and
 *           made of straight pieces in the bend, and its lowest point is found by its tangents.
 */
sil_status sil_lowest_find(const sil_board *board, const sil_crowns *crowns, const sil_pluck *pluck,
                           const sil_lowest_wish *wish, void *room, sil_lowest *lowest);

#ifdef __cplusplus
}
#endif
#endif
