/* SPDX-License-Identifier: MIT */
/* Within the brief: the strings that are out of their range at a stage, as a stage's glance has them. */
#ifndef SILLET_BRIEF_OUT_H
#define SILLET_BRIEF_OUT_H

#include "tell.h"

/* The strings that findings call too high, or too low, at a stage. */
typedef struct out_of_range {
    tell_list read, by;     /* by: how far past the edge of its range each is */
    const sil_finding *one; /* the last of them */
    const char *once;       /* after which work their figures are forecast, as a clause; "" where
                               they are what was read */
} out_of_range;

/* How much is left out so that a stage's figures stand on one line, each with all before it. */
typedef enum brevity {
    IN_FULL,
    NO_NAMES,  /* "once the nut is done: ..", where all strings are meant */
    NO_OFFS,   /* how far past the range they are */
    NO_REASON, /* the work after which they are so, where the stage waits for it */
    NO_FIGURES /* what was read: then the strings alone */
} brevity;

/* brief_out_of_range: what the findings of a stage call too high, or too low.
 * tell_out:   writes "string 1: 0.01 (range 0.03 to 0.10)", or "strings 1 and 4: 0.12 to 0.15, over by
 *             0.02". named: with the word for the side, where the verdict does not have it.
 * tell_band:  writes " (range 0.05 to 0.30)".
 * tell_marks: writes " (5/64 to 7/64)" behind actions in inches. */
out_of_range brief_out_of_range(const brief *b, sil_stage_name stage, bool high);
void tell_out(const out_of_range *out, bool high, bool named, brevity cut, telling *t);
void tell_band(telling *t, double low, double high, int string);
void tell_marks(const tell_list *list, telling *t);

#endif
