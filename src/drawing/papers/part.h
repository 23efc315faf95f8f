/* SPDX-License-Identifier: MIT */
/* What the papers of nut and saddle share. */
#ifndef SILLET_DRAWING_PART_H
#define SILLET_DRAWING_PART_H

#include "../views/views.h"
#include "papers.h"

/* The words bass and treble at the ends of a part: inside its outline between two levels where
 * there is room, else outside. */
void paper_ends(const draw_draft *draft, draw_shapes *list, draw_place place, double length,
                double from, double to);

/* The part's whole length, its dimension line at y. */
void paper_length(const draw_draft *draft, draw_shapes *list, draw_place place, brief_figure length,
                  double y);

/* A line of words over all that is drawn so far, from its left edge or about its middle. */
void paper_caption(draw_shapes *list, draw_anchor anchor, const char *words);

/* paper_headline: what to do with the part, to be read at arm's length. */
void paper_headline(draw_flow *flow, const char *words);

/* "14.2 deg, bass end toward the headstock", or nothing of a part that stands square. */
const char *paper_say_lean(const draw_draft *draft, brief_figure lean, bool bass_to_head);

/* paper_magnify: a view at the largest scale of ISO 5455 (10:1, 5:1, 2:1, 1:1) that goes across the
 *              paper and leaves room for what is under it.
 * paper_beside:  a view at the largest of 10:1, 5:1 and 2:1 that goes beside another; 2:1 where
 * none does. */
typedef draw_shapes *paper_view_at(const draw_flow *flow, double scale);
draw_shapes *paper_magnify(const draw_flow *flow, paper_view_at *view);
draw_shapes *paper_beside(const draw_flow *flow, const draw_shapes *left, paper_view_at *view);

/* paper_pair_and_large: a part's views: two small ones side by side where they fit, and a large
 * one under them; over them across the paper where it has more than one column. */
void paper_pair_and_large(draw_flow *flow, draw_shapes *left, draw_shapes *right,
                          draw_shapes *large, double gap);

/* Names and values, one pair a line, those with an empty value left out. */
void paper_pairs(draw_shapes *list, double tab, int count, const char *const *names,
                 const char *const *values);

/* The paper of saddles that stand on screws. */
void paper_screws(draw_flow *flow);

#endif
