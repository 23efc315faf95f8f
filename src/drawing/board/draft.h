/* SPDX-License-Identifier: MIT */
/* What every view is given, and the pieces views are put together from: figures as a person reads
 * them, paragraphs, tables, dimensions. */
#ifndef SILLET_DRAWING_DRAFT_H
#define SILLET_DRAWING_DRAFT_H

#include "../../plan/plan.h"

#include "shapes.h"

/* A drawing in the making. A view takes it and returns a new list about an origin of its own; the
 * sheet that asked for the view finds it a place by the list's box. */
typedef struct draw_draft {
    const sil_plan *plan;   /* across the parts measured along them: see draw_plan_along */
    const sil_board *board; /* as it is, square across */
    sil_unit unit;
    bool decimal_comma;
    draw_letters *letters;
} draw_draft;

/* A short text by value. */
typedef struct draw_words {
    char text[96];
} draw_words;

__attribute__((format(printf, 1, 2))) draw_words draw_say(const char *format, ...);
draw_words draw_say_number(const draw_draft *draft, double value, int decimals);
/* The figures of a sentence the plan wrote, set as the draft sets its own. */
void draw_set_decimals(const draw_draft *draft, char *text);
/* A length in the draft's unit, none behind it: hundredths of a millimetre or thousandths of an
 * inch. Unknown is "-". */
draw_words draw_say_length(const draw_draft *draft, double mm);
/* The same rounded down, for what comes off, and up, for what is stopped at: wood does not go
 * back on. */
draw_words draw_say_cut(const draw_draft *draft, double mm);
draw_words draw_say_stop(const draw_draft *draft, double mm);
/* A size for which a tenth of a millimetre says enough. */
draw_words draw_say_size(const draw_draft *draft, double mm);
/* A radius: whole millimetres or tenths of an inch. */
draw_words draw_say_radius(const draw_draft *draft, double mm);
/* A scale as ISO 5455 writes it: "2:1", "1:5". */
draw_words draw_say_scale(double scale);
draw_words draw_say_note(const draw_draft *draft, int string); /* the note it is tuned to */
/* "slot 3", "slots 1, 3, 4": those of all strings that are meant; "" for none. */
draw_words draw_say_which(const draw_draft *draft, const char *noun, const bool *meant);
const char *draw_unit_name(const draw_draft *draft); /* "mm", "in" */

/* Where a view's own millimetres lie in its list. Negative across: mirrored, for the left hand. */
typedef struct draw_place {
    double x, y, across, up;
} draw_place;

static inline draw_point draw_at(draw_place place, double x, double y)
{
    return (draw_point){place.x + x * place.across, place.y + y * place.up};
}

/* draw_place_part: a part of a length, its bass end at the origin: to the left, or to the right on
 * a left-handed instrument. */
draw_place draw_place_part(const draw_draft *draft, double length, double scale);

/* The string at a place from the left, from 0, as the board is seen: bass first, or treble first
 * on a left-handed instrument. */
int draw_string_seen(const draw_draft *draft, int place);

/* Where a string crosses its nut or saddle, mm from the part's bass end. */
double draw_on_nut(const draw_draft *draft, int string);
double draw_on_saddle(const draw_draft *draft, int string);

/* A text that reads from the left on one line. */
void draw_note(draw_shapes *list, double x, double y, const char *text);
/* A line as it is drawn and what it means. Returned: its right edge. */
double draw_key(draw_shapes *list, double x, double y, draw_layer layer, const char *words);

/* draw_line_of: as much of a text as goes on one line, at a base line.
 * Returned: the rest, "" at the end
 */
const char *draw_line_of(draw_shapes *list, double x, double y, double width, double height,
                         const char *text);

/* draw_paragraph: a text broken into lines no wider than width.
 * Given:    x, top  mm; top of the first line's capitals
 * Returned: the base line of the last line, mm
 */
double draw_paragraph(draw_shapes *list, double x, double top, double width, double height,
                      const char *text);

/* draw_text_fit: a text cut, with dots, to a width. */
draw_words draw_text_fit(const draw_shapes *list, const char *text, double height, double width);

enum { DRAW_COLUMNS_MAX = 14, DRAW_ROWS_MAX = SIL_STRINGS_MAX + 1 };

/* A word over several columns of a table. */
typedef struct draw_span {
    int from, to; /* columns, both counted in */
    const char *text;
} draw_span;

typedef struct draw_table {
    int columns, rows;
    draw_span span[3];                     /* those without a text are not there */
    const char *head[DRAW_COLUMNS_MAX][2]; /* two lines over each column, either may be NULL */
    draw_anchor anchor[DRAW_COLUMNS_MAX];  /* DRAW_LEFT for words, DRAW_RIGHT for figures */
    draw_words within[DRAW_COLUMNS_MAX]; /* tolerance of a column's figures, small under its head */
    draw_words cell[DRAW_ROWS_MAX][DRAW_COLUMNS_MAX];
    double row_height;
    int large; /* a column set in the next larger lettering, 0 for none */
} draw_table;

/* draw_table_within: says to within how much a column's figures hold, if one of them is under 0.5
 * mm: there the general tolerance of ISO 2768 ends, and it has to stand at the figure. */
void draw_table_within(const draw_draft *draft, draw_table *table, int column, const double *values,
                       double within);

/* draw_add_table: a table over a width, its top rule at top. Returned: its bottom rule, mm. */
double draw_add_table(draw_shapes *list, double x, double top, double width,
                      const draw_table *table);

/* A number in a ring, about a centre. */
void draw_ring(draw_shapes *list, draw_point centre, int number);

/* draw_dim_across: a length between two upright features, its line at y, the figure above it.
 * draw_dim_up:     a height between two level features, its line at x, the figure to its left.
 */
void draw_dim_across(draw_shapes *list, draw_point a, draw_point b, double y, const char *text);
void draw_dim_up(draw_shapes *list, draw_point a, draw_point b, double x, const char *text);

/* Figures at the ends of lines led out of features in a row: the strings, and the ends of a part.
 */
enum { DRAW_ORDINATES_MAX = SIL_STRINGS_MAX + 2 };
typedef struct draw_ordinates {
    int count;
    draw_point from[DRAW_ORDINATES_MAX];
    draw_words text[DRAW_ORDINATES_MAX];
    double reach;  /* y where the lines end: above all features, or below them */
    bool numbered; /* a ring with its number beyond each figure */
    int number[DRAW_ORDINATES_MAX];
} draw_ordinates;

/* draw_dim_ordinates: draws them, figures level where there is room and else upright, never closer
 * than they can be read.
 * Returned: the y of the far end of the longest figure
 */
double draw_dim_ordinates(draw_shapes *list, const draw_ordinates *ordinates);

/* draw_dim_chain: lengths between neighbours of a row on one line, a stroke at each; the figures
 * below it, led out where they would crowd.
 * Given:    count, x, text  places in rising order, at most DRAW_ORDINATES_MAX; a text a gap
 *           from, y         where the lead-out lines begin, and the dimension line under it
 * Returned: the y of the far end of the longest figure
 */
double draw_dim_chain(draw_shapes *list, int count, const double *x, const draw_words *text,
                      double from, double y);

/* A filled arrow head with its point at a place, looking along a direction in degrees. */
void draw_arrow(draw_shapes *list, draw_layer layer, draw_point tip, double direction);

/* A cutting plane at x up across a view, seen from its right: strokes at both ends with a letter.
 */
void draw_plane(draw_shapes *list, double x, draw_box view, const char *letter);

/* A line from a text to the feature it speaks of, an arrow at the feature. */
void draw_leader(draw_shapes *list, draw_point feature, draw_point knee);

/* draw_spread: moves places in rising order as little as it takes to stand at least a pitch apart.
 */
void draw_spread(int count, double *place, double pitch);

/* A part's top: a smooth line through a point a string whose height is known, beyond the outer ones
 * straight on. */
typedef struct draw_curve {
    int count;
    double x[SIL_STRINGS_MAX], y[SIL_STRINGS_MAX]; /* x rising: last string first */
} draw_curve;

draw_curve draw_curve_through(const draw_draft *draft, double length, const double *z,
                              const double *height);
double draw_curve_at(const draw_curve *curve, double x);

/* draw_curve_points: the line from one x to another, either way, close enough that no facet shows
 * and through each of its own points.
 * Returned: how many points were put, at most DRAW_CURVE_POINTS
 */
enum { DRAW_CURVE_POINTS = 180 };
int draw_curve_points(const draw_curve *curve, double from, double to, draw_point *out);

void draw_place_points(draw_place place, draw_point *points, int count);

/* What to file each slot down to, or which way and how far each screw goes: a column a string. */
typedef struct draw_grid_row {
    const char *label[2];
    double height; /* of the lettering; 0: a blank to write in */
    draw_words cell[SIL_STRINGS_MAX];
} draw_grid_row;

enum { DRAW_GRID_ROWS = 4 };
typedef struct draw_grid {
    int rows;
    bool as_seen; /* strings in the order of the board, else string 1 first */
    draw_grid_row row[DRAW_GRID_ROWS];
} draw_grid;

/* draw_add_grid: strings across, rows down, its top at y. Returned: the bottom, mm. */
double draw_add_grid(const draw_draft *draft, draw_shapes *list, double x, double top, double width,
                     const draw_grid *grid);

#endif
