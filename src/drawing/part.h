/* SPDX-License-Identifier: MIT */
/* What the sheets of nut and saddle share. */
#ifndef SILLET_DRAWING_PART_H
#define SILLET_DRAWING_PART_H

#include "sheet.h"
#include "views.h"

/* The words bass and treble at the ends of a part: inside its outline between two levels where
 * there is room, else outside. */
void sil_draw_ends(const sil_draft *draft, sil_shapes *list, sil_place place, double length,
                   double from, double to);

/* The part's whole length, its dimension line at y. */
void sil_draw_length(const sil_draft *draft, sil_shapes *list, sil_place place, double length,
                     double y);

/* A line of words over all that is drawn so far, from its left edge or about its middle. */
void sil_caption(sil_shapes *list, sil_anchor anchor, const char *text);

/* sil_flow_headline: what to do with the part, to be read at arm's length. */
void sil_flow_headline(sil_flow *flow, const char *text);

/* ", blank 44.0 x 6.2 x 9.6 mm", or nothing where a size is not known. */
sil_words sil_say_blank(const sil_draft *draft, sil_blank blank);

/* "leans 14.2 deg, bass end toward the head", or nothing of a part that stands square. slant: of
 * the board. */
sil_words sil_say_lean(const sil_draft *draft, double slant);

/* sil_magnify: a view at the largest scale of ISO 5455 (10:1, 5:1, 2:1, 1:1) that goes across the
 *              sheet and leaves room for what is under it.
 * sil_beside:  a view at the largest of 10:1, 5:1 and 2:1 that goes beside another; 2:1 where none
 *              does. */
typedef sil_shapes *sil_view_at(const sil_flow *flow, double scale);
sil_shapes *sil_magnify(const sil_flow *flow, sil_view_at *view);
sil_shapes *sil_beside(const sil_flow *flow, const sil_shapes *left, sil_view_at *view);

/* sil_flow_pair_and_large: a part's views: two small ones side by side where they fit, and a large
 * one under them; over them across the sheet where it has more than one column. */
void sil_flow_pair_and_large(sil_flow *flow, sil_shapes *left, sil_shapes *right, sil_shapes *large,
                             double gap);

/* Names and values, one pair a line, those with an empty value left out. */
void sil_draw_pairs(sil_shapes *list, double tab, int count, const char *const *names,
                    const sil_words *values);

/* The sheet of saddles that stand on screws. */
void sil_screws_sheet(sil_flow *flow);

#endif
