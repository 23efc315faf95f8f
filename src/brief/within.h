/* SPDX-License-Identifier: MIT */
/* Within the brief: its parts in the order they are filled. */
#ifndef SILLET_BRIEF_WITHIN_H
#define SILLET_BRIEF_WITHIN_H

#include "figure.h"

void brief_fill_readings(brief *b);
void brief_fill_nut(brief *b);
void brief_fill_saddle(brief *b);
void brief_fill_stages(brief *b); /* once nut and saddle are filled */
void brief_fill_tone(brief *b);
void brief_fill_visits(brief *b);
void brief_fill_findings(brief *b);
void brief_fill_steps(brief *b);

/* A blank from its sizes and the finished part's. */
brief_blank brief_blank_of(const brief *b, bool ordered, sil_blank order, const double done[3],
                           double spacing, double radius);

/* "slot 3", "slots 1, 3 and 4", "all slots": those that are meant; "" for none. */
const char *brief_which(brief *b, const char *noun, const bool *meant);

/* ", blank 44.0 x 6.2 x 9.6 mm", or nothing where a size is not known. */
const char *brief_blank_words(brief *b, const brief_blank *blank);

/* Degrees a part leans by, "-" for one that stands square. */
brief_figure brief_lean(double slant);

#endif
