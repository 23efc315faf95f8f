/* SPDX-License-Identifier: MIT */
/* Within the brief: the functions that fill its parts, in the order in which they run. */
#ifndef SILLET_BRIEF_WITHIN_H
#define SILLET_BRIEF_WITHIN_H

#include "figure.h"

void brief_fill_readings(brief *b);
void brief_fill_nut(brief *b);
void brief_fill_saddle(brief *b);
void brief_fill_bearing(brief *b, int string); /* by the saddle, when its ends are filled */
void brief_fill_tuning(brief *b);
void brief_fill_stages(brief *b); /* after nut, saddle and tuning */
void brief_fill_tone(brief *b);
void brief_fill_visits(brief *b);
void brief_fill_findings(brief *b);
void brief_fill_steps(brief *b);
void brief_fill_glance(brief *b); /* after the findings */
void brief_fill_next(brief *b);   /* after the steps */

/* A reading that a part waits for where no finding withholds it, as a clause and as a noun; or the
 * string on a fret that comes first. */
typedef struct brief_missing {
    const char *why, *for_what, *until; /* until: said in place of the noun; or NULL */
} brief_missing;

brief_missing brief_missing_of(const sil_plan *plan);

/* Adds every reason why a part waits, of which there is at least one. */
void brief_fill_whys(const sil_plan *plan, const sil_withheld *withheld, brief_stage *stage);

/* Whether a finding's figures are those that a stage's glance has. */
bool brief_at_a_glance(sil_code code);

/* A blank, from its own sizes and those of the finished part. */
brief_blank brief_blank_of(const brief *b, bool ordered, sil_blank order, const double done[3],
                           double spacing, double radius);

/* Names the slots that are meant: "slot 3", "slots 1, 3 and 4", "all slots"; "" for none. */
const char *brief_which(brief *b, const char *noun, const bool *meant);

/* ", blank 44.0 x 6.2 x 9.6 mm"; "" where a size is not known. */
const char *brief_blank_words(brief *b, const brief_blank *blank);

/* Whether the shop has a file of just this width. */
bool brief_has_file(const sil_job *job, double width);

/* Of a saddle and its strings.
 * brief_least_pass: less is too little to be a pass, mm.
 * brief_way_of:     which way a string goes that comes down by this.
 * brief_made_way:   the height of a new piece is where the file stops, and is rounded up; else it is
 *                   what the cuts leave. */
extern const double brief_least_pass;
brief_way brief_way_of(double down);
sil_rounding brief_made_way(const brief *b);

/* Makes up a slot's stack of usual feelers, at most three. */
void brief_fill_leaves(brief *b, brief_slot *slot);

/* The thickness of a part: of a new one with the limits of its fit, of the present one for
 * reference.
 * brief_fit_words:    names that fit; "" for a thickness without one.
 * brief_bottom_words: how flat and square a bottom is made. */
brief_figure brief_thickness(const brief *b, double thickness, bool anew);
const char *brief_fit_words(brief *b, brief_figure thickness);
const char *brief_bottom_words(brief *b);

/* The place of an arc's crest from the bass end, "-" for another top; and the height of a top that is
 * no arc at one end. */
brief_figure brief_crest_at(const brief *b, const part_curve *top);
brief_figure brief_end_height(const brief *b, const part_curve *top, double x);

/* The angle of a part to square across, degrees; "-" for a part that is square. */
brief_figure brief_lean(double slant);

#endif
