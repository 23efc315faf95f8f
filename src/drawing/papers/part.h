/* SPDX-License-Identifier: MIT */
/* What the papers of the nut and the saddle share. */
#ifndef SILLET_DRAWING_PART_H
#define SILLET_DRAWING_PART_H

#include "../views/views.h"
#include "papers.h"

/* Writes bass and treble at the ends of a part: inside its outline, between two levels, if there
 * is room, otherwise outside. */
void paper_ends(const draw_draft *draft, draw_shapes *list, draw_place place, double length,
                double from, double to);

/* Draws the dimension of the part's whole length, with its dimension line at y. */
void paper_length(const draw_draft *draft, draw_shapes *list, draw_place place, brief_figure length,
                  double y);

/* Writes a caption above everything drawn so far, at its left edge or in the middle. */
void paper_caption(draw_shapes *list, draw_anchor anchor, const char *words);

/* Writes a caption in the middle above everything drawn so far: which view it is and what that shows. It
 * takes two lines where one would be wider than the paper, so that the view keeps its scale. */
void paper_caption_within(const draw_flow *flow, draw_shapes *list, const char *view,
                          const char *shows);

/* paper_headline: puts what to do with the part in letters that can be read at arm's length. */
void paper_headline(draw_flow *flow, const char *words);

/* Words for where an arc's crest is, and for the heights of another top at its ends; "" for neither. */
const char *paper_say_crest(const draw_draft *draft, brief_figure crest_at);
const char *paper_say_ends(const draw_draft *draft, const brief_figure *ends);

/* Words such as "14.2 deg, bass end to the headstock"; nothing for a part that is square to
 * the centre line. */
const char *paper_say_lean(const draw_draft *draft, brief_figure lean, bool bass_to_head);

/* paper_full_size: 1 for a part that fits across a column at 1:1, otherwise the largest reduction of ISO
 * 5455 at which it does. */
double paper_full_size(double length);

/* paper_magnify: a view at the largest scale of ISO 5455 (10:1, 5:1, 2:1) that fits across the paper and
 * leaves room for what goes below it; at 2:1 where it only fits across; else at the smallest, which is
 * that of the view at full size, or NULL where the smallest is 0. Its scale is given back: a view at the
 * smallest is no magnified one, and takes the place of that at full size. */
typedef draw_shapes *paper_view_at(const draw_flow *flow, double scale);
draw_shapes *paper_magnify(const draw_flow *flow, paper_view_at *view, double smallest,
                           double *scale);

/* paper_views: puts the views of a part and its facts. The one on the left has another beside it, at
 * the largest of 10:1, 5:1 and 2:1 that fits. The large one goes under them, or above them across all
 * columns if the paper has more than one. On a dense paper the other view goes beside the large one where
 * there is room. The table comes last, and the large view stays together with it. */
typedef draw_shapes *paper_facts_in(const draw_flow *flow, int columns);
void paper_views(draw_flow *flow, draw_shapes *left, paper_view_at *beside, draw_shapes *large,
                 paper_facts_in *facts, draw_shapes *last, double gap);

/* Writes names and values in one or two columns. Pairs with an empty value are left out. */
void paper_pairs(draw_shapes *list, int columns, double tab, int count, const char *const *names,
                 const char *const *values);

/* Whether a string's place in tune is off the saddle, so that an arrow points to it. */
bool paper_any_beyond(const draw_draft *draft);

/* The table of a saddle that is cut: a row for each string. */
draw_shapes *paper_saddle_table(const draw_flow *flow);

/* The paper of saddles that are set by screws. */
void paper_screws(draw_flow *flow);

#endif
