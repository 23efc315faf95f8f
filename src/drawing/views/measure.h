/* SPDX-License-Identifier: MIT */
/* The measuring sheet: small figures that show where to hold and where to look, and the blanks to
 * write in. */
#ifndef SILLET_DRAWING_MEASURE_H
#define SILLET_DRAWING_MEASURE_H

#include <sillet/fields.h>

#include "../board/draft.h"

/* A saddle whose height is cut; else it is turned by screws. */
bool view_stands_loose(const sil_job *job);

/* view_field: the field of a path, for its label and the words of its choices. */
sil_field view_field(const char *path);

/* view_field_label: its label, and its unit where that is not the sheet's own. */
const char *view_field_label(const draw_draft *draft, const sil_field *field);

/* view_figure_words: a figure of a field as a blank shows it; "" where it is unknown. */
const char *view_figure_words(const draw_draft *draft, const sil_field *field, double value);

/* view_field_words: what the job has for a plain field, as a blank shows it: at the last visit for
 * a reading. "" where it has nothing. */
const char *view_field_words(const draw_draft *draft, const sil_field *field);

/* A figure: schematic, not to scale, its bottom left corner at the origin. */
typedef void view_figure(const draw_draft *draft, draw_shapes *list);
view_figure view_figure_humidity, view_figure_bridge;    /* the instrument as it lies there */
view_figure view_figure_relief, view_figure_crowns;      /* the neck */
view_figure view_figure_first, view_figure_action;       /* the string over it */
view_figure view_figure_buzz, view_figure_cents;         /* what is heard */
view_figure view_figure_caliper, view_figure_bridge_top; /* the saddle's height */
view_figure view_figure_crown, view_figure_seat, view_figure_slot; /* sizes read once */

void view_figure_board(draw_shapes *list, double left, double right, double top);
void view_figure_fret(draw_shapes *list, double x, double y, double radius);
void view_figure_bar(draw_shapes *list, draw_layer layer, draw_box box, bool filled);
/* A finger or a clip: an arrow down onto a place, a word over it. */
void view_figure_press(draw_shapes *list, draw_point at, double from, const char *word);
/* A double arrow between two levels or two places. */
void view_figure_span(draw_shapes *list, draw_point a, draw_point b);
void view_figure_word(draw_shapes *list, double x, double y, draw_anchor anchor, const char *word);

/* A row of blanks: what to read, what is wanted, and a cell a visit. */
typedef enum view_cell { VIEW_CELL_FIGURE, VIEW_CELL_CHOICE, VIEW_CELL_CROWN } view_cell;

typedef struct view_entry {
    view_cell cell;
    const char *label, *range, *aim; /* NULL or "" where nothing stands */
    const char *read[3];             /* at the last visit; a crown's: string, fret, how far off */
    const char *choice[2];           /* words to tick */
    int chosen;                      /* or -1 */
} view_entry;

enum { VIEW_ENTRIES_MAX = 24 };

typedef struct view_form {
    double label, visit; /* widths; what is left of the form's is what is wanted */
    bool ranged;         /* some row has a range */
    int rows;
    view_entry row[VIEW_ENTRIES_MAX];
} view_form;

view_entry *view_form_row(view_form *form, view_cell cell, const char *label);

/* view_form_part: a row for every plain field of a part that a blank sheet asks for and that this
 * instrument has: a blank, or words to tick where there are two to choose from. */
void view_form_part(const draw_draft *draft, view_form *form, const char *part);

/* view_add_form: rows of blanks, visits side by side. Returned: the bottom, mm. */
double view_add_form(const draw_draft *draft, draw_shapes *list, double x, double top, double width,
                     const view_form *form);

/* A reading of every string. */
typedef struct view_gauging {
    const char *name;  /* over its columns */
    const char *range; /* over the range; NULL: nothing is wanted, its column is not there */
    bool words;        /* written out: wide cells */
    const char *low_high[SIL_STRINGS_MAX], *aim[SIL_STRINGS_MAX], *read[SIL_STRINGS_MAX];
} view_gauging;

/* view_add_gaugings: a row a string, over the whole width, its readings beside each other, visits
 * side by side.
 * Given:    height  of a row
 * Returned: the bottom, mm
 */
double view_add_gaugings(const draw_draft *draft, draw_shapes *list, double top, double height,
                         int count, const view_gauging *gauging);

/* A size read once, and what is known of it: "" for a blank. */
typedef struct view_size {
    const char *name, *value;
} view_size;

enum { VIEW_SIZES_MAX = 24 };

/* view_measure_sizes: the instrument's sizes in the order of the fields.
 * Given:    unread  all are left blank
 * Returned: how many
 */
int view_measure_sizes(const draw_draft *draft, bool unread, view_size size[VIEW_SIZES_MAX]);

/* view_add_sizes: name and blank, in columns. Returned: the bottom, mm. */
double view_add_sizes(const draw_draft *draft, draw_shapes *list, double top, double width,
                      int columns, int count, const view_size *size);

#endif
