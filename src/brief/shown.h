/* SPDX-License-Identifier: MIT */
/* What is shown to a person is made of: figures, readings, ends and ways, and sentences with their
 * figures as data. */
#ifndef SILLET_BRIEF_SHOWN_H
#define SILLET_BRIEF_SHOWN_H

#include <sillet/core/units.h>

#include <stdbool.h>

/* A figure as it is shown. It is made only here (figure.h), and everything else uses it as it is,
 * so that a figure shown in two places is the same in both. */
typedef struct brief_figure {
    double exact;    /* in mm, or in the unit of what it measures; may be unknown */
    char shown[16];  /* with a decimal point and without its unit; "-" where unknown */
    char limits[16]; /* how far the part may be off: "+0.02/0"; "": the general tolerance */
    char marks[6];   /* of an action in inches: on a rule in 64ths, "5/64"; else "" */
    bool reference;  /* for information only: nothing is made to it */
    sil_rounding
        rounding : 8; /* how `shown` was rounded; a plan has hundreds of figures, so small */
} brief_figure;

/* Whether the figure is known. */
static inline bool brief_known(brief_figure figure)
{
    return sil_known(figure.exact);
}

typedef struct brief_range {
    brief_figure low, aim, high;
} brief_range;

/* A reading, its target, and what it will be when all steps are done. */
typedef struct brief_reading {
    brief_figure now, after;
    brief_range wanted;
} brief_reading;

/* The two ends of a part. */
typedef enum brief_end {
    BRIEF_TREBLE,
    BRIEF_BASS,
    BRIEF_ENDS,
    BRIEF_NO_END = BRIEF_ENDS
} brief_end;

/* Which way something goes. */
typedef enum brief_way {
    BRIEF_NO_WAY,
    BRIEF_DOWN,
    BRIEF_UP,
    BRIEF_TIGHTEN, /* the truss rod: less relief */
    BRIEF_EASE,    /* more relief */
    BRIEF_BACK,    /* away from the nut: the string gets longer */
    BRIEF_FORWARD
} brief_way;

/* A figure in a sentence. */
typedef struct brief_said {
    const char *of; /* what the figure is: a fixed word, see docs/result.md */
    int string;     /* from 0, or -1 */
    int fret;       /* or -1 */
    brief_end end;
    brief_way way;
    brief_figure figure;
} brief_said;

/* A sentence, and the figures, strings and direction in it as data. */
typedef struct brief_sentence {
    const char *words;
    int first, count; /* its figures: brief->said[first .. first + count - 1] */
    unsigned strings; /* the strings it names, one bit for each; string 1 is the lowest */
    brief_way way;    /* which way something moves; if strings differ, each figure has its own */
} brief_sentence;

#endif
