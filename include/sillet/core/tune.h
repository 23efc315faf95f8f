/* SPDX-License-Identifier: MIT */
/* In tune by the tuner: how far a string's saddle must move for the cents that were read. Only
 * lengths are needed; what strings are made of is not. */
#ifndef SILLET_TUNE_H
#define SILLET_TUNE_H

#include "saddle.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The slope at which the back of a saddle's top is filed down from where the string leaves it,
 * degrees; and how near to a face of the saddle that place may come, mm. Common practice, no source.
 */
#define SIL_BACK_SLOPE_DEG 12.0
#define SIL_PEAK_MARGIN 0.3

/* sil_tune_move: how far to move the saddle of a string so that its fretted note, read off against
 * the open string, is in tune.
 * Given:    open   sounding length of the open string, mm, over 0
 *           fret   from the nut to the fret, mm, more than 0 and less than open
 *           cents  how sharp the fretted note is, + sharp, as read
 * Returned: mm, + longer (away from the nut); SIL_UNKNOWN where the cents are unknown, or so many
 *           that no length gives them
 * Accuracy: exact but for rounding, for a string whose other errors stay as they are. They do not
 *           quite: of the cents of a stiff string that is stretched, up to a twentieth remain
 * Notes:    the string is open + move long open, and open + move - fret fretted, and the ratio of
 *           the two is to change by 2^(-cents/1200). At 650 mm and fret 12 about 0.376 mm a cent
 */
double sil_tune_move(double open, double fret, double cents);

/* sil_tune_cents: how many cents a move takes off the fretted note; the other way round of
 * sil_tune_move.
 * Given:    open, fret  as sil_tune_move
 *           move        mm, + longer, more than fret - open
 * Returned: cents, + where the note comes down
 */
double sil_tune_cents(double open, double fret, double move);

/* sil_back_drop: how much a string comes down where the place it leaves the saddle's top from is
 * moved, along a back that falls at SIL_BACK_SLOPE_DEG.
 * Given:    move  mm along the string, either way
 * Returned: mm, 0 or more
 */
double sil_back_drop(double move);

#ifdef __cplusplus
}
#endif
#endif
