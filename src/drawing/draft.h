/* SPDX-License-Identifier: MIT */
/* What every view is given, and the pieces views are put together from: figures as a person reads
 * them, paragraphs, tables, dimensions. */
#ifndef SILLET_DRAWING_DRAFT_H
#define SILLET_DRAWING_DRAFT_H

#include <sillet/plan.h>

#include "shapes.h"

/* A drawing in the making. A view takes it and returns a new list about an origin of its own; the
 * sheet that asked for the view finds it a place by the list's box. */
typedef struct sil_draft {
    const sil_plan *plan;   /* across the parts measured along them: see sil_plan_along */
    const sil_board *board; /* as it is, square across */
    sil_unit unit;
    bool decimal_comma;
    sil_letters *letters;
} sil_draft;

/* A short text by value. */
typedef struct sil_words {
    char text[96];
} sil_words;

__attribute__((format(printf, 1, 2))) sil_words sil_say(const char *format, ...);
sil_words sil_say_number(const sil_draft *draft, double value, int decimals);
/* The figures of a sentence the plan wrote, set as the draft sets its own. */
void sil_set_decimals(const sil_draft *draft, char *text);
/* A length in the draft's unit, none behind it: hundredths of a millimetre or thousandths of an
 * inch. Unknown is "-". */
sil_words sil_say_length(const sil_draft *draft, double mm);
/* The same rounded down, for what comes off, and up, for what is stopped at: wood does not go
 * back on. */
sil_words sil_say_cut(const sil_draft *draft, double mm);
sil_words sil_say_stop(const sil_draft *draft, double mm);
/* A size for which a tenth of a millimetre says enough. */
sil_words sil_say_size(const sil_draft *draft, double mm);
/* A radius: whole millimetres or tenths of an inch. */
sil_words sil_say_radius(const sil_draft *draft, double mm);
/* A scale as ISO 5455 writes it: "2:1", "1:5". */
sil_words sil_say_scale(double scale);
sil_words sil_say_note(const sil_draft *draft, int string); /* the note it is tuned to */
/* "slot 3", "slots 1, 3, 4": those of all strings that are meant; "" for none. */
sil_words sil_say_which(const sil_draft *draft, const char *noun, const bool *meant);
const char *sil_unit_name(const sil_draft *draft); /* "mm", "in" */

/* Where a view's own millimetres lie in its list. Negative across: mirrored, for the left hand. */
typedef struct sil_place {
    double x, y, across, up;
} sil_place;

static inline sil_point sil_at(sil_place place, double x, double y)
{
    return (sil_point){place.x + x * place.across, place.y + y * place.up};
}

/* sil_place_part: a part of a length, its bass end at the origin: to the left, or to the right on
 * a left-handed instrument. */
sil_place sil_place_part(const sil_draft *draft, double length, double scale);

/* The string at a place from the left, from 0, as the board is seen: bass first, or treble first
 * on a left-handed instrument. */
int sil_string_seen(const sil_draft *draft, int place);

/* Where a string crosses its nut or saddle, mm from the part's bass end. */
double sil_on_nut(const sil_draft *draft, int string);
double sil_on_saddle(const sil_draft *draft, int string);

/* A text that reads from the left on one line. */
void sil_draw_note(sil_shapes *list, double x, double y, const char *text);
/* A line as it is drawn and what it means. Returned: its right edge. */
double sil_draw_key(sil_shapes *list, double x, double y, sil_layer layer, const char *words);

/* sil_draw_line_of: as much of a text as goes on one line, at a base line.
 * Returned: the rest, "" at the end
 */
const char *sil_draw_line_of(sil_shapes *list, double x, double y, double width, double height,
                             const char *text);

/* sil_draw_paragraph: a text broken into lines no wider than width.
 * Given:    x, top  mm; top of the first line's capitals
 * Returned: the base line of the last line, mm
 */
double sil_draw_paragraph(sil_shapes *list, double x, double top, double width, double height,
                          const char *text);

/* sil_text_fit: a text cut, with dots, to a width. */
sil_words sil_text_fit(const sil_shapes *list, const char *text, double height, double width);

enum { SIL_COLUMNS_MAX = 14, SIL_ROWS_MAX = SIL_STRINGS_MAX + 1 };

/* A word over several columns of a table. */
typedef struct sil_span {
    int from, to; /* columns, both counted in */
    const char *text;
} sil_span;

typedef struct sil_table {
    int columns, rows;
    sil_span span[3];                     /* those without a text are not there */
    const char *head[SIL_COLUMNS_MAX][2]; /* two lines over each column, either may be NULL */
    sil_anchor anchor[SIL_COLUMNS_MAX];   /* SIL_LEFT for words, SIL_RIGHT for figures */
    sil_words within[SIL_COLUMNS_MAX]; /* tolerance of a column's figures, small under its head */
    sil_words cell[SIL_ROWS_MAX][SIL_COLUMNS_MAX];
    double row_height;
    int large; /* a column set in the next larger lettering, 0 for none */
} sil_table;

/* sil_table_within: says to within how much a column's figures hold, if one of them is under 0.5
 * mm: there the general tolerance of ISO 2768 ends, and it has to stand at the figure. */
void sil_table_within(const sil_draft *draft, sil_table *table, int column, const double *values,
                      double within);

/* sil_draw_table: a table over a width, its top rule at top. Returned: its bottom rule, mm. */
double sil_draw_table(sil_shapes *list, double x, double top, double width, const sil_table *table);

/* A number in a ring, about a centre. */
void sil_draw_ring(sil_shapes *list, sil_point centre, int number);

/* sil_dim_across: a length between two upright features, its line at y, the figure above it.
 * sil_dim_up:     a height between two level features, its line at x, the figure to its left.
 */
void sil_dim_across(sil_shapes *list, sil_point a, sil_point b, double y, const char *text);
void sil_dim_up(sil_shapes *list, sil_point a, sil_point b, double x, const char *text);

/* Figures at the ends of lines led out of features in a row: the strings, and the ends of a part.
 */
enum { SIL_ORDINATES_MAX = SIL_STRINGS_MAX + 2 };
typedef struct sil_ordinates {
    int count;
    sil_point from[SIL_ORDINATES_MAX];
    sil_words text[SIL_ORDINATES_MAX];
    double reach;  /* y where the lines end: above all features, or below them */
    bool numbered; /* a ring with its number beyond each figure */
    int number[SIL_ORDINATES_MAX];
} sil_ordinates;

/* sil_dim_ordinates: draws them, figures level where there is room and else upright, never closer
 * than they can be read.
 * Returned: the y of the far end of the longest figure
 */
double sil_dim_ordinates(sil_shapes *list, const sil_ordinates *ordinates);

/* sil_dim_chain: lengths between neighbours of a row on one line, a stroke at each; the figures
 * below it, led out where they would crowd. Given:    count, x, text  places in rising order, at
 * most SIL_ORDINATES_MAX; a text a gap from, y         where the lead-out lines begin, and the
 * dimension line under it Returned: the y of the far end of the longest figure
 */
double sil_dim_chain(sil_shapes *list, int count, const double *x, const sil_words *text,
                     double from, double y);

/* A filled arrow head with its point at a place, looking along a direction in degrees. */
void sil_draw_arrow(sil_shapes *list, sil_layer layer, sil_point tip, double direction);

/* A cutting plane at x up across a view, seen from its right: strokes at both ends with a letter.
 */
void sil_draw_plane(sil_shapes *list, double x, sil_box view, const char *letter);

/* A line from a text to the feature it speaks of, an arrow at the feature. */
void sil_draw_leader(sil_shapes *list, sil_point feature, sil_point knee);

/* sil_spread: moves places in rising order as little as it takes to stand at least a pitch apart.
 */
void sil_spread(int count, double *place, double pitch);

#endif
