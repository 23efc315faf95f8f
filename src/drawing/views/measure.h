/* SPDX-License-Identifier: MIT */
/* The measuring sheet: small figures that show where to measure and what to read, and blanks to
 * write in. */
#ifndef SILLET_DRAWING_MEASURE_H
#define SILLET_DRAWING_MEASURE_H

#include <sillet/fields.h>

#include "../board/draft.h"

/* Whether the height of the saddle is cut; otherwise it is turned by screws. */
bool view_stands_loose(const sil_job *job);

/* view_field: the field with this path, for its label and the words of its choices. */
sil_field view_field(const char *path);

/* view_field_label: the label of a field, with its unit if that differs from the unit of the
 * sheet. */
const char *view_field_label(const draw_draft *draft, const sil_field *field);

/* view_figure_words: the value of a field as it is written in a blank; "" if it is unknown. */
const char *view_figure_words(const draw_draft *draft, const sil_field *field, double value);

/* view_field_words: what the job states for a plain field, as it is written in a blank; for a
 * reading, at the last visit. "" if it states nothing. */
const char *view_field_words(const draw_draft *draft, const sil_field *field);

/* A figure is a sketch, not to scale, with its bottom left corner at the origin. */
typedef void view_figure(const draw_draft *draft, draw_shapes *list);
view_figure view_figure_humidity, view_figure_bridge;              /* the instrument as it is */
view_figure view_figure_relief, view_figure_crowns;                /* the neck */
view_figure view_figure_first, view_figure_action;                 /* the string above it */
view_figure view_figure_buzz, view_figure_cents;                   /* what is heard */
view_figure view_figure_caliper, view_figure_bridge_top;           /* the height of the saddle */
view_figure view_figure_crown, view_figure_seat, view_figure_slot; /* sizes read once */

void view_figure_board(draw_shapes *list, double left, double right, double top);
void view_figure_fret(draw_shapes *list, double x, double y, double radius);
void view_figure_bar(draw_shapes *list, draw_layer layer, draw_box box, bool filled);
/* Draws a finger or a clip: an arrow down to a place, with a word above it. */
void view_figure_press(draw_shapes *list, draw_point at, double from, const char *word);
/* Draws a double arrow between two levels or two places. */
void view_figure_span(draw_shapes *list, draw_point a, draw_point b);
void view_figure_word(draw_shapes *list, double x, double y, draw_anchor anchor, const char *word);

/* A row of blanks: what to read, its target, and a cell for each visit. */
typedef enum view_cell { VIEW_CELL_FIGURE, VIEW_CELL_CHOICE, VIEW_CELL_CROWN } view_cell;

typedef struct view_entry {
    view_cell cell;
    const char *label, *range, *aim; /* NULL or "" for an empty place */
    const char *read[3];             /* at the last visit; for a crown: string, fret, how far off */
    const char *choice[2];           /* words to tick */
    int chosen;                      /* or -1 */
} view_entry;

enum { VIEW_ENTRIES_MAX = 24 };

typedef struct view_form {
    double label, visit; /* widths; the rest of the form's width is for the target */
    bool ranged;         /* some row has a range */
    int rows;
    view_entry row[VIEW_ENTRIES_MAX];
} view_form;

view_entry *view_form_row(view_form *form, view_cell cell, const char *label);

/* view_form_part: adds a row for every plain field of a part that a blank sheet asks for and
 * that this instrument has. A row has a blank, or words to tick if there are two to choose from. */
void view_form_part(const draw_draft *draft, view_form *form, const char *part);

/* view_add_form: draws the rows of blanks, with the visits side by side. Returned: the bottom,
 * mm. */
double view_add_form(const draw_draft *draft, draw_shapes *list, double x, double top, double width,
                     const view_form *form);

/* A reading that is taken at every string. */
typedef struct view_gauging {
    const char *name;  /* above its columns */
    const char *range; /* above the range; NULL: no target and no column for it */
    bool words;        /* answers in words, which need wide cells */
    const char *low_high[SIL_STRINGS_MAX], *aim[SIL_STRINGS_MAX], *read[SIL_STRINGS_MAX];
} view_gauging;

/* view_add_gaugings: draws one row per string, over the whole width. The readings are side by side,
 * and so are the visits of each.
 * Given:    height  the height of a row
 * Returned: the bottom, mm
 */
double view_add_gaugings(const draw_draft *draft, draw_shapes *list, double top, double height,
                         int count, const view_gauging *gauging);

/* A size that is read once, and its known value; "" leaves a blank. */
typedef struct view_size {
    const char *name, *value;
} view_size;

enum { VIEW_SIZES_MAX = 24 };

/* view_measure_sizes: lists the sizes of the instrument, in the order of the fields.
 * Given:    unread  leave all of them blank
 * Returned: how many there are
 */
int view_measure_sizes(const draw_draft *draft, bool unread, view_size size[VIEW_SIZES_MAX]);

/* view_add_sizes: draws the name and the blank of each size, in columns. Returned: the bottom,
 * mm. */
double view_add_sizes(const draw_draft *draft, draw_shapes *list, double top, double width,
                      int columns, int count, const view_size *size);

#endif
