/* SPDX-License-Identifier: MIT */
/* The measuring sheet: small figures that show where to hold and where to look, and the blanks to
 * write in. */
#ifndef SILLET_DRAWING_MEASURE_H
#define SILLET_DRAWING_MEASURE_H

#include "draft.h"

/* A saddle whose height is cut; else it is turned by screws. */
bool sil_stands_loose(const sil_job *job);

/* A figure: schematic, not to scale, its bottom left corner at the origin. */
typedef void sil_figure(const sil_draft *draft, sil_shapes *list);
sil_figure sil_figure_humidity, sil_figure_bridge;             /* the instrument as it lies there */
sil_figure sil_figure_relief, sil_figure_crowns;               /* the neck */
sil_figure sil_figure_first, sil_figure_action;                /* the string over it */
sil_figure sil_figure_buzz, sil_figure_cents;                  /* what is heard */
sil_figure sil_figure_caliper, sil_figure_bridge_top;          /* the saddle's height */
sil_figure sil_figure_crown, sil_figure_seat, sil_figure_slot; /* sizes read once */

void sil_figure_board(sil_shapes *list, double left, double right, double top);
void sil_figure_fret(sil_shapes *list, double x, double y, double radius);
void sil_figure_bar(sil_shapes *list, sil_layer layer, sil_box box, bool filled);
/* A finger or a clip: an arrow down onto a place, a word over it. */
void sil_figure_press(sil_shapes *list, sil_point at, double from, const char *word);
/* A double arrow between two levels or two places. */
void sil_figure_span(sil_shapes *list, sil_point a, sil_point b);
void sil_figure_word(sil_shapes *list, double x, double y, sil_anchor anchor, const char *word);

/* A row of blanks: what to read, what is wanted, and a cell a visit. */
typedef enum sil_cell { SIL_CELL_FIGURE, SIL_CELL_CHOICE, SIL_CELL_CROWN } sil_cell;

typedef struct sil_entry {
    sil_cell cell;
    sil_words label, range, aim;
    sil_words read[3];     /* at the last visit; a crown's: string, fret, how far off */
    const char *choice[2]; /* words to tick */
    int chosen;            /* or -1 */
} sil_entry;

enum { SIL_ENTRIES_MAX = 24 };

typedef struct sil_form {
    double label, visit; /* widths; what is left of the form's is what is wanted */
    bool ranged;         /* some row has a range */
    int rows;
    sil_entry row[SIL_ENTRIES_MAX];
} sil_form;

sil_entry *sil_form_row(sil_form *form, sil_cell cell, const char *label);

/* sil_draw_form: rows of blanks, visits side by side. Returned: the bottom, mm. */
double sil_draw_form(sil_shapes *list, double x, double top, double width, const sil_form *form);

/* A reading of every string. */
typedef struct sil_gauging {
    const char *name;  /* over its columns */
    const char *range; /* over the range; NULL: nothing is wanted, its column is not there */
    bool words;        /* written out: wide cells */
    sil_words low_high[SIL_STRINGS_MAX], aim[SIL_STRINGS_MAX], read[SIL_STRINGS_MAX];
} sil_gauging;

/* sil_draw_gaugings: a row a string, over the whole width, its readings beside each other, visits
 * side by side.
 * Given:    height  of a row
 * Returned: the bottom, mm
 */
double sil_draw_gaugings(const sil_draft *draft, sil_shapes *list, double top, double height,
                         int count, const sil_gauging *gauging);

/* A size read once, and what is known of it: "" for a blank. */
typedef struct sil_size {
    sil_words name, value;
} sil_size;

enum { SIL_SIZES_MAX = 24 };

/* sil_measure_sizes: the instrument's sizes in the order of the sheet's keys.
 * Given:    unread  all are left blank
 * Returned: how many
 */
int sil_measure_sizes(const sil_draft *draft, bool unread, sil_size size[SIL_SIZES_MAX]);

/* sil_draw_sizes: name and blank, in columns. Returned: the bottom, mm. */
double sil_draw_sizes(sil_shapes *list, double top, double width, int columns, int count,
                      const sil_size *size);

#endif
