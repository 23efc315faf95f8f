/* SPDX-License-Identifier: MIT */
/* A step in a few words, with the figures that it is worked to: what a bench card sets large. The
 * figures are those of the step's sentence, so that the two cannot differ. */
#ifndef SILLET_BRIEF_LARGE_H
#define SILLET_BRIEF_LARGE_H

#include "brief.h"

enum { BRIEF_LARGE_ROWS = 2, BRIEF_LARGE_FIGURES = SIL_STRINGS_MAX };

/* Figures of one kind, in the order in which the sentence gives them. */
typedef struct brief_large_row {
    const char *label; /* what they are: "caliper, bottom to top" */
    const char *until; /* where the step stops at them: "until the caliper reads"; else NULL */
    bool is_length;    /* they are in the unit of lengths */
    bool has_way;      /* each is worked in a direction of its own: up, down, back, forward */
    int count;
    const brief_said *said[BRIEF_LARGE_FIGURES];
} brief_large_row;

typedef struct brief_large {
    const char *title; /* "Sand the saddle's bottom" */
    brief_large_row row[BRIEF_LARGE_ROWS];
    int rows; /* the first is the one to work to; 0 for a step without figures */
} brief_large;

/* brief_large_of:   a step in a few words. Its texts are kept in the store; its figures belong to
 *                   the brief.
 * brief_large_line: the same on one line. A step that stops at a figure has that figure: "Sand the
 *                   saddle's bottom until the caliper reads 7.90 / 9.00 mm"; any other has its
 *                   main figure, as the steps after the next one.
 */
brief_large brief_large_of(const brief *b, int step, text_store *store);
const char *brief_large_line(const brief *b, int step, const brief_large *large, text_store *store);

#endif
