/* SPDX-License-Identifier: MIT */
/* What is shown without a plan: answers to quick questions about one string, and what a tool proves to
 * read to. */
#ifndef SILLET_BRIEF_QUICK_H
#define SILLET_BRIEF_QUICK_H

#include <sillet/plan.h>

#include "../text/text.h"
#include "shown.h"

/* The answer to a quick question about one string, asked without a sheet. */
typedef struct brief_quick {
    double change, u;   /* exact, mm, + to take off; and its standard uncertainty */
    double first_pass;  /* exact, mm; 0 where nothing comes off; unknown where nothing is cut */
    const char *words;  /* the answer, two sentences */
    brief_said said[4]; /* its figures */
    int said_count;
    text_store store;
} brief_quick;

/* brief_quick_saddle, brief_quick_nut: how far to lower the saddle, or to deepen a nut slot.
 * Given:    scale, setback  of the string, mm
 *           now, want       the reading and its target, mm
 *           fraction        denominator, where the reading is in fractions of an inch; otherwise 0
 *           held            how the gap at fret 1 was read
 *           unit            of the answer
 * Returned: answer          to be freed with brief_quick_free; its words are NULL if there is no
 *                           memory
 */
void brief_quick_saddle(double scale, double setback, double now, double want, int fraction,
                        sil_unit unit, brief_quick *answer);
void brief_quick_nut(double scale, double now, double want, int fraction, sil_hold held,
                     sil_unit unit, brief_quick *answer);
void brief_quick_free(brief_quick *answer);

/* brief_quick_tune: how far to move the saddle of a string along.
 * Given:    scale, setback  of the string, mm
 *           cents           at fret 12 against the octave of the open string, + sharp, under 100
 *           pitch           travel of one turn of its screw, mm, or unknown
 *           unit            of the answer
 * Returned: answer          as of the others; its change is + longer
 */
void brief_quick_tune(double scale, double setback, double cents, double pitch, sil_unit unit,
                      brief_quick *answer);

/* Readings of the same thing with one tool, two by two. */
typedef struct brief_pairs {
    double *difference;             /* of each pair, mm */
    double *readings;               /* both of each pair, mm */
    int count;                      /* pairs */
    double stated_low, stated_high; /* the least and most the sheets give the tool, plus or minus,
                                       mm */
    double stated_squares;          /* the sum of its squares over all pairs */
} brief_pairs;

/* What one tool proves to read to. */
typedef struct brief_tool {
    int pairs, dropped, more; /* pairs that count, those left out, those that are still missing */
    double graduation;        /* mm; 0: not known */
    double u, half_width;     /* of one reading, mm: standard uncertainty; plus or minus. Unknown
                                 with too few pairs */
    brief_figure found;       /* half_width */
} brief_tool;

typedef struct brief_proof {
    brief_tool tool[SIL_TOOLS];
    const char *words; /* a sentence or two for each tool, and the line for a shop file */
    text_store store;
} brief_proof;

/* brief_prove: what tools prove to read to.
 * Given:    pairs           of each tool; their differences are sorted
 *           sheets, visits  they are from
 *           unit            of the words
 * Returned: proof           to be freed with brief_proof_free; its words are NULL if there is no
 *                           memory
 */
void brief_prove(const brief_pairs *pairs, int sheets, int visits, sil_unit unit,
                 brief_proof *proof);
void brief_proof_free(brief_proof *proof);

#endif
