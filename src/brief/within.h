/* SPDX-License-Identifier: MIT */
/* Within the brief: the functions that fill its parts, in the order in which they run. */
#ifndef SILLET_BRIEF_WITHIN_H
#define SILLET_BRIEF_WITHIN_H

#include "figure.h"

void brief_fill_readings(brief *b);
void brief_fill_nut(brief *b);
void brief_fill_saddle(brief *b);
void brief_fill_tuning(brief *b);
void brief_fill_stages(brief *b); /* after nut, saddle and tuning */
void brief_fill_tone(brief *b);
void brief_fill_visits(brief *b);
void brief_fill_findings(brief *b);
void brief_fill_steps(brief *b);

/* A blank, from its own sizes and those of the finished part. */
brief_blank brief_blank_of(const brief *b, bool ordered, sil_blank order, const double done[3],
                           double spacing, double radius);

/* Names the slots that are meant: "slot 3", "slots 1, 3 and 4", "all slots"; "" for none. */
const char *brief_which(brief *b, const char *noun, const bool *meant);

/* ", blank 44.0 x 6.2 x 9.6 mm"; "" where a size is not known. */
const char *brief_blank_words(brief *b, const brief_blank *blank);

/* The angle of a part to square across, degrees; "-" for a part that is square. */
brief_figure brief_lean(double slant);

#endif
