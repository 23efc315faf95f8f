/* SPDX-License-Identifier: MIT */
/* What every view works with, and the pieces that views are built from: figures written for a
 * person, paragraphs, tables and dimensions. */
#ifndef SILLET_DRAWING_DRAFT_H
#define SILLET_DRAWING_DRAFT_H

#include "../../brief/brief.h"
#include "../../brief/large.h"
#include "../../brief/owner.h"
#include "../../part/outline.h"
#include "../../plan/plan.h"
#include "shapes.h"

/* A drawing that is being made. A view uses it and fills a list around an origin of its own. The
 * paper that the view is for then places that list by its box. */
typedef struct draw_draft {
    const sil_plan *plan; /* for figures taken straight from the plan: see plain.h */
    const brief *brief;
    bool decimal_comma;
    draw_letters *letters;
    text_store *store; /* holds the texts of this drawing */
    bool dense;        /* rows and views as close as they can be read, to save a paper */
} draw_draft;

/* draw_say: formats a text that lives as long as the drawing. Out of memory it gives "", and the
 * store remembers the fault. */
__attribute__((format(printf, 2, 3))) const char *draw_say(const draw_draft *draft,
                                                           const char *format, ...);
/* draw_figure: a figure of the brief, with the decimal mark of this drawing. Every figure in a
 * table or a sentence is written with it.
 * draw_set_decimals: a sentence of the brief, with its figures written the same way.
 */
const char *draw_figure(const draw_draft *draft, brief_figure figure);
/* An action; in inches with what a rule in 64ths shows: "0.083 (5/64)". */
const char *draw_action(const draw_draft *draft, brief_figure figure);
const char *draw_set_decimals(const draw_draft *draft, const char *words);

/* draw_limits:    how far the part may be off a figure: "+0.02/0"; "" for the general tolerance.
 * draw_dimension: a figure as a dimension shows it: with its limits, or in brackets. */
const char *draw_limits(const draw_draft *draft, brief_figure figure);
const char *draw_dimension(const draw_draft *draft, brief_figure figure);

/* draw_known_figure: the same, or "" if the figure is not known. */
const char *draw_known_figure(const draw_draft *draft, brief_figure figure);
/* A target range, such as "1.20-2.00" but with a longer dash. */
const char *draw_range(const draw_draft *draft, const brief_range *range);
/* A scale as ISO 5455 writes it: "2:1", "1:5". */
const char *draw_say_scale(const draw_draft *draft, double scale);
/* The note a string is tuned to. */
const char *draw_say_note(const draw_draft *draft, int string);
/* Names the strings marked in meant, such as "slot 3" or "slots 1, 3, 4"; "" if none is marked. */
const char *draw_say_which(const draw_draft *draft, const char *noun, const bool *meant);

bool draw_left_handed(const draw_draft *draft);

/* Maps a view's own millimetres to its list. A negative across mirrors the view for the left
 * hand. */
typedef struct draw_place {
    double x, y, across, up;
} draw_place;

static inline draw_point draw_at(draw_place place, double x, double y)
{
    return (draw_point){place.x + x * place.across, place.y + y * place.up};
}

/* draw_place_part: the place of a part of the given length. Its bass end is at the origin, which
 * is the left end, or the right end on a left-handed instrument. */
draw_place draw_place_part(const draw_draft *draft, double length, double scale);

void draw_place_points(draw_place place, draw_point *points, int count);
/* The same for corners: mirrored, an arc to the left becomes one to the right. */
void draw_place_corners(draw_place place, draw_corner *corners, int count);

/* The index of the string at a place counted from the left, from 0, as you look at the board:
 * bass first, or treble first on a left-handed instrument. */
int draw_string_seen(const draw_draft *draft, int place);

/* Writes a text on one line, starting at x. */
void draw_note(draw_shapes *list, double x, double y, const char *words);
/* Writes a whole number, such as that of a string or a fret. */
void draw_number(draw_shapes *list, draw_point at, double height, draw_anchor anchor, int number);
/* Draws an entry of a key: a sample of a layer's line, and what it means. Returned: the right
 * edge. */
double draw_key(draw_shapes *list, double x, double y, draw_layer layer, const char *words);

/* draw_line_of: writes as much of a text as fits on one line, with its base line at y.
 * Returned: the rest of the text, "" at the end
 */
const char *draw_line_of(draw_shapes *list, double x, double y, double width, double height,
                         const char *words);

/* draw_paragraph: writes a text, broken into lines no wider than width.
 * Given:    x, top  the left edge and the top of the first line's capitals, mm
 * Returned: the base line of the last line, mm
 */
double draw_paragraph(draw_shapes *list, double x, double top, double width, double height,
                      const char *words);

/* draw_notes: a paragraph in the usual lettering, whose lines are closer together on a dense drawing. */
double draw_notes(const draw_draft *draft, draw_shapes *list, double x, double top, double width,
                  const char *words);

/* draw_text_fit: the whole text if it fits the width. Otherwise it is cut after a letter, and
 * dots follow. */
const char *draw_text_fit(const draw_draft *draft, const draw_shapes *list, const char *words,
                          double height, double width);

enum { DRAW_COLUMNS_MAX = 14, DRAW_ROWS_MAX = SIL_STRINGS_MAX + 1 };

/* A heading that spans several columns of a table. */
typedef struct draw_span {
    int from, to; /* first and last column */
    const char *words;
} draw_span;

typedef struct draw_table {
    int columns, rows;
    draw_span span[3];                     /* a span without words is not drawn */
    const char *head[DRAW_COLUMNS_MAX][2]; /* two lines over each column, either may be NULL */
    draw_anchor anchor[DRAW_COLUMNS_MAX];  /* DRAW_LEFT for words, DRAW_RIGHT for figures */
    /* The tolerance of a column's figures, under its head. */
    const char *within[DRAW_COLUMNS_MAX];
    const char *cell[DRAW_ROWS_MAX][DRAW_COLUMNS_MAX]; /* NULL for an empty one */
    double row_height;
    int large; /* the column in the next larger lettering; 0 for none */
} draw_table;

/* The height of a table's row with figures of the usual size. */
static inline double draw_row_height(const draw_draft *draft)
{
    return draft->dense ? 4.1 : 5;
}

/* draw_table_figure: writes a figure into a cell, in brackets if it is for reference. The limits of a
 * column's figures are written under its head. */
void draw_table_figure(const draw_draft *draft, draw_table *table, int row, int column,
                       brief_figure figure);

/* draw_table_leave_out: takes a column out, and out of the spans over it. */
void draw_table_leave_out(draw_table *table, int column);

/* draw_add_table: draws a table of the given width, with its top rule at top. A column that has
 * nothing but dashes is left out.
 * Returned: the y of its bottom rule, mm
 */
double draw_add_table(draw_shapes *list, double x, double top, double width, const draw_table *all);

/* Draws a number in a ring. */
void draw_ring(draw_shapes *list, draw_point centre, int number);

/* draw_dim_across: the dimension of a length between two upright edges, with the dimension line at
 * y and the figure above it.
 * draw_dim_up: the dimension of a height between two level edges, with the dimension line at x and
 * the figure to its left.
 * A dimension only shows a figure of the brief.
 */
void draw_dim_across(const draw_draft *draft, draw_shapes *list, draw_point a, draw_point b,
                     double y, brief_figure figure);
void draw_dim_up(const draw_draft *draft, draw_shapes *list, draw_point a, draw_point b, double x,
                 brief_figure figure);

/* A row of features, such as the strings and the ends of a part. A line leads out of each
 * feature to its figure. */
enum { DRAW_ORDINATES_MAX = SIL_STRINGS_MAX + 2 };
typedef struct draw_ordinates {
    int count;
    draw_point from[DRAW_ORDINATES_MAX];
    brief_figure figure[DRAW_ORDINATES_MAX]; /* empty if a line has no figure */
    bool origin;   /* the others are measured from the first, which shows 0 */
    bool touches;  /* the lines begin at the features, without the usual gap */
    double reach;  /* the y where the lines end, above or below all the features */
    bool numbered; /* each figure is followed by a ring with the number */
    int number[DRAW_ORDINATES_MAX];
} draw_ordinates;

/* draw_dim_ordinates: draws the row. The figures are level where there is room and upright
 * otherwise, and never too close together to read.
 * Returned: the y of the far end of the longest figure
 */
double draw_dim_ordinates(const draw_draft *draft, draw_shapes *list,
                          const draw_ordinates *ordinates);

/* draw_dim_chain: draws the distances between neighbours on one dimension line, with a stroke at
 * each place. The figures go below the line and are moved apart where they would touch.
 * Given:    count, x, gap  places in rising order, at most DRAW_ORDINATES_MAX, and the figure of
 *           each distance
 *           from, y        where the lead-out lines begin, and where the dimension line is
 * Returned: the y of the far end of the longest figure
 */
double draw_dim_chain(const draw_draft *draft, draw_shapes *list, int count, const double *x,
                      const brief_figure *gap, double from, double y);

/* Draws a filled arrow head with its tip at a point. It points in a direction in degrees. */
void draw_arrow(draw_shapes *list, draw_layer layer, draw_point tip, double direction);

/* Draws a cutting plane across a view, from a point at its bottom to one at its top, that is seen
 * toward one side: 1 for the right, -1 for the left. Both ends have a stroke, an arrow and a
 * letter; the line between them is drawn if across. */
void draw_plane(draw_shapes *list, draw_point low, draw_point high, int side, bool across,
                draw_box view, const char *letter);

/* Draws a line from a text to the feature it describes, with an arrow at the feature. */
void draw_leader(draw_shapes *list, draw_point feature, draw_point knee);

/* draw_spread: moves places, in rising order, as little as possible until neighbours are at
 * least a pitch apart. */
void draw_spread(int count, double *place, double pitch);

/* A table with one column per string, such as the depth to file each slot to, or how far to turn
 * each height screw. */
typedef struct draw_grid_row {
    const char *label[2];
    double height; /* of the letters; 0 for a blank to write in */
    const char *cell[SIL_STRINGS_MAX];
} draw_grid_row;

enum { DRAW_GRID_ROWS = 12 };
typedef struct draw_grid {
    int rows;
    bool as_seen; /* strings in the order seen on the board; otherwise string 1 first */
    bool low;     /* in one band where its figures leave room, however many strings there are */
    draw_grid_row row[DRAW_GRID_ROWS];
} draw_grid;

/* draw_add_grid: draws the grid with its top at y. The strings go across and the rows go down.
 * Returned: the y of the bottom, mm. */
double draw_add_grid(const draw_draft *draft, draw_shapes *list, double x, double top, double width,
                     const draw_grid *grid);

/* The figure that a row of a grid shows for one string. */
typedef brief_figure draw_string_figure(const brief *b, int i);

/* draw_grid_figures: adds a row of such figures.
 * draw_grid_marks:   adds a row of what a rule in 64ths of an inch shows of them.
 * Returned: whether there is anything to show; else there is no row. */
bool draw_grid_figures(const draw_draft *draft, draw_grid *grid, const char *label,
                       draw_string_figure *figure);
bool draw_grid_marks(const draw_draft *draft, draw_grid *grid, draw_string_figure *figure);

#endif
