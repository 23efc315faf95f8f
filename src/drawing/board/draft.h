/* SPDX-License-Identifier: MIT */
/* What every view is given, and the pieces views are put together from: figures as a person reads
 * them, paragraphs, tables, dimensions. */
#ifndef SILLET_DRAWING_DRAFT_H
#define SILLET_DRAWING_DRAFT_H

#include "../../brief/brief.h"
#include "../../plan/plan.h"
#include "shapes.h"

/* A drawing in the making. A view takes it and returns a new list about an origin of its own; the
 * paper that asked for the view finds it a place by the list's box. */
typedef struct draw_draft {
    const sil_plan *plan; /* for what stays a view of the plan: see plain.h */
    const brief *brief;
    bool decimal_comma;
    draw_letters *letters;
    text_store *store; /* of the texts set for this drawing */
} draw_draft;

/* draw_say: a text that lives as long as the drawing; "" without memory, which the store keeps. */
__attribute__((format(printf, 2, 3))) const char *draw_say(const draw_draft *draft,
                                                           const char *format, ...);
/* draw_figure: a figure of the brief with the draft's decimal mark. Every figure of a table or a
 * sentence goes through it.
 * draw_set_decimals: a sentence of the brief, its figures set as the draft sets its own. */
const char *draw_figure(const draw_draft *draft, brief_figure figure);
const char *draw_set_decimals(const draw_draft *draft, const char *words);

/* draw_known_figure: the same; "" where there is nothing to show. */
const char *draw_known_figure(const draw_draft *draft, brief_figure figure);
/* "1.20-2.00", with a longer dash: a range as it is wanted. */
const char *draw_range(const draw_draft *draft, const brief_range *range);
/* A scale as ISO 5455 writes it: "2:1", "1:5". */
const char *draw_say_scale(const draw_draft *draft, double scale);
const char *draw_say_note(const draw_draft *draft, int string); /* the note it is tuned to */
/* "slot 3", "slots 1, 3, 4": those of all strings that are meant; "" for none. */
const char *draw_say_which(const draw_draft *draft, const char *noun, const bool *meant);

bool draw_left_handed(const draw_draft *draft);

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

void draw_place_points(draw_place place, draw_point *points, int count);

/* The string at a place from the left, from 0, as the board is seen: bass first, or treble first
 * on a left-handed instrument. */
int draw_string_seen(const draw_draft *draft, int place);

/* A text that reads from the left on one line. */
void draw_note(draw_shapes *list, double x, double y, const char *words);
/* A whole number: of a string, of a fret. */
void draw_number(draw_shapes *list, draw_point at, double height, draw_anchor anchor, int number);
/* A line as it is drawn and what it means. Returned: its right edge. */
double draw_key(draw_shapes *list, double x, double y, draw_layer layer, const char *words);

/* draw_line_of: as much of a text as goes on one line, at a base line.
 * Returned: the rest, "" at the end
 */
const char *draw_line_of(draw_shapes *list, double x, double y, double width, double height,
                         const char *words);

/* draw_paragraph: a text broken into lines no wider than width.
 * Given:    x, top  mm; top of the first line's capitals
 * Returned: the base line of the last line, mm
 */
double draw_paragraph(draw_shapes *list, double x, double top, double width, double height,
                      const char *words);

/* draw_text_fit: a text as it is where it fits a width, else cut behind a letter, with dots. */
const char *draw_text_fit(const draw_draft *draft, const draw_shapes *list, const char *words,
                          double height, double width);

enum { DRAW_COLUMNS_MAX = 14, DRAW_ROWS_MAX = SIL_STRINGS_MAX + 1 };

/* A word over several columns of a table. */
typedef struct draw_span {
    int from, to; /* columns, both counted in */
    const char *words;
} draw_span;

typedef struct draw_table {
    int columns, rows;
    draw_span span[3];                     /* those without a text are not there */
    const char *head[DRAW_COLUMNS_MAX][2]; /* two lines over each column, either may be NULL */
    draw_anchor anchor[DRAW_COLUMNS_MAX];  /* DRAW_LEFT for words, DRAW_RIGHT for figures */
    const char
        *within[DRAW_COLUMNS_MAX]; /* tolerance of a column's figures, small under its head */
    const char *cell[DRAW_ROWS_MAX][DRAW_COLUMNS_MAX]; /* NULL for an empty one */
    double row_height;
    int large; /* a column set in the next larger lettering, 0 for none */
} draw_table;

/* draw_table_figure: sets a cell. Where the figure is under 0.5 mm the general tolerance of ISO
 * 2768 does not reach it, and its column says to within how much it holds. Given:    within  what
 * the figure holds to; NULL: it needs no tolerance
 */
void draw_table_figure(const draw_draft *draft, draw_table *table, int row, int column,
                       brief_figure figure, const brief_figure *within);

/* draw_add_table: a table over a width, its top rule at top. Returned: its bottom rule, mm. */
double draw_add_table(draw_shapes *list, double x, double top, double width,
                      const draw_table *table);

/* A number in a ring, about a centre. */
void draw_ring(draw_shapes *list, draw_point centre, int number);

/* draw_dim_across: a length between two upright features, its line at y, the figure above it.
 * draw_dim_up:     a height between two level features, its line at x, the figure to its left.
 * A dimension takes a figure of the brief and nothing else. */
void draw_dim_across(const draw_draft *draft, draw_shapes *list, draw_point a, draw_point b,
                     double y, brief_figure figure);
void draw_dim_up(const draw_draft *draft, draw_shapes *list, draw_point a, draw_point b, double x,
                 brief_figure figure);

/* Figures at the ends of lines led out of features in a row: the strings, and the ends of a part.
 */
enum { DRAW_ORDINATES_MAX = SIL_STRINGS_MAX + 2 };
typedef struct draw_ordinates {
    int count;
    draw_point from[DRAW_ORDINATES_MAX];
    brief_figure figure[DRAW_ORDINATES_MAX]; /* left empty where a line has none */
    bool origin;   /* the first is where the others are measured from: a 0 */
    double reach;  /* y where the lines end: above all features, or below them */
    bool numbered; /* a ring with its number beyond each figure */
    int number[DRAW_ORDINATES_MAX];
} draw_ordinates;

/* draw_dim_ordinates: draws them, figures level where there is room and else upright, never closer
 * than they can be read.
 * Returned: the y of the far end of the longest figure
 */
double draw_dim_ordinates(const draw_draft *draft, draw_shapes *list,
                          const draw_ordinates *ordinates);

/* draw_dim_chain: lengths between neighbours of a row on one line, a stroke at each; the figures
 * below it, led out where they would crowd.
 * Given:    count, x, gap  places in rising order, at most DRAW_ORDINATES_MAX; a figure a gap
 *           from, y        where the lead-out lines begin, and the dimension line under it
 * Returned: the y of the far end of the longest figure
 */
double draw_dim_chain(const draw_draft *draft, draw_shapes *list, int count, const double *x,
                      const brief_figure *gap, double from, double y);

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

/* What to file each slot down to, or which way and how far each screw goes: a column a string. */
typedef struct draw_grid_row {
    const char *label[2];
    double height; /* of the lettering; 0: a blank to write in */
    const char *cell[SIL_STRINGS_MAX];
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
