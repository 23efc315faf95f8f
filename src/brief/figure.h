/* SPDX-License-Identifier: MIT */
/* Within the brief: figures as they are shown. All of them are made here. */
#ifndef SILLET_BRIEF_FIGURE_H
#define SILLET_BRIEF_FIGURE_H

#include "brief.h"

/* figure_length: a length as read at the bench: to 0.01 mm, or a thousandth of an inch.
 * figure_nearest: the same in the unit that the brief is shown in, rounded to the nearest.
 * figure_gauge:  a string's gauge: of an inch to half a thousandth, as strings are sold.
 * figure_action: an action, rounded to the nearest; in inches with what a rule in 64ths shows.
 * figure_radius: a radius in whole millimetres or tenths of an inch.
 * figure_plain:  a length as given in the job, such as the scale, without zeros at the end.
 * figure_number: any other figure, with a given count of decimals, rounded to the nearest.
 * figure_share:  a share of a whole in per cent, rounded down: what is told to be half is.
 * figure_signed: a figure with its sign and at most one decimal, as a tuner shows cents.
 * figure_turns:  turns of a screw, either way, to the nearest eighth, as a hand counts them: "1/2",
 *                "1-3/8"; "<1/8" under half of one.
 * figure_none:   "-", where there is nothing to show.
 */
brief_figure figure_length(sil_unit unit, double mm, sil_rounding way);
brief_figure figure_nearest(const brief *b, double mm);
brief_figure figure_gauge(sil_unit unit, double mm);
brief_figure figure_action(sil_unit unit, double mm);
brief_figure figure_radius(sil_unit unit, double mm);
brief_figure figure_plain(sil_unit unit, double mm);
brief_figure figure_number(double value, int decimals);
brief_figure figure_share(double share);
brief_figure figure_signed(double value);
brief_figure figure_turns(double turns);
brief_figure figure_none(void);

/* What a size is made for, which decides how far it may be off. Common practice, no source. */
typedef enum figure_use {
    FIGURE_FLOOR,      /* a slot's floor, and the feelers for it: lower, the string may buzz */
    FIGURE_WIDTH,      /* of a slot: narrower, it holds the string */
    FIGURE_FIT,        /* thickness under that of the slot that the part is pushed into */
    FIGURE_HEIGHT,     /* of a saddle: wood does not go back on */
    FIGURE_OFF_SLOT,   /* the most to take off a nut slot */
    FIGURE_OFF_SADDLE, /* the most to take off a saddle */
    FIGURE_FLAT        /* how flat a bottom is made */
} figure_use;

/* figure_limited:   a length that states how far the part may be off.
 * figure_reference: a figure for information, to which nothing is made.
 */
brief_figure figure_limited(sil_unit unit, double mm, sil_rounding way, figure_use use);
brief_figure figure_reference(brief_figure figure);

#endif
