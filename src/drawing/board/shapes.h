/* SPDX-License-Identifier: MIT */
/* Shapes in millimetres, y up, on named layers: all a view makes and all a writer is given.
 *
 * A list keeps its first fault (no memory, a place that is no number) and takes no more after it;
 * the fault is asked for once, when the drawing is done.
 */
#ifndef SILLET_DRAWING_SHAPES_H
#define SILLET_DRAWING_SHAPES_H

#include <stdbool.h>

#include "../../part/point.h"
#include "letters.h"

typedef part_point draw_point;

typedef struct draw_box {
    double left, bottom, right, top; /* empty where left > right */
} draw_box;

/* What a shape stands for; how it looks follows from that. */
typedef enum draw_layer {
    DRAW_OUTLINE,
    DRAW_SLOT,
    DRAW_CONTACT,
    DRAW_CUT,
    DRAW_CUT_FIRST,
    DRAW_PRESENT,
    DRAW_HIDDEN,
    DRAW_CENTRE,
    DRAW_DIMENSION,
    DRAW_STRING,
    DRAW_HATCH,
    DRAW_RULE,
    DRAW_TEXT,
    DRAW_WARNING,
    DRAW_FRAME,
    DRAW_LAYERS
} draw_layer;

/* How a layer is drawn. Black on white must carry all: colour only helps. */
typedef struct draw_look {
    const char *word; /* the layer's name in a file */
    double width;     /* of the line, mm; ISO 128-2 */
    double dash[4];   /* mm of line and gap in turn, up to the first 0 */
    double red, green, blue;
} draw_look;

const draw_look *draw_layer_look(draw_layer layer);

typedef enum draw_anchor { DRAW_LEFT, DRAW_MIDDLE, DRAW_RIGHT } draw_anchor;

typedef enum draw_shape_kind { DRAW_SHAPE_PATH, DRAW_SHAPE_ARC, DRAW_SHAPE_TEXT } draw_shape_kind;

typedef struct draw_shape {
    draw_shape_kind kind;
    draw_layer layer;
    int first, count;    /* path: its points in the list; text: its bytes, NUL apart */
    bool closed, filled; /* path and arc */
    draw_point at;       /* arc: centre; text: anchor, on the base line */
    double size;         /* arc: radius; text: capital height */
    double from, to;     /* arc: degrees counter-clockwise; text: from is its direction, degrees */
    draw_anchor anchor;
    double advance; /* text: its width as set */
    int string;     /* the string it is of, from 1; 0 for none */
    draw_box box;   /* of the ink of a text; of the centre line of a path or arc */
} draw_shape;

typedef struct draw_shapes {
    draw_letters *letters;
    draw_shape *shapes;
    int count, room;
    draw_point *points;
    int point_count, point_room;
    char *bytes;
    int byte_count, byte_room;
    draw_box box; /* of all shapes and struts */
    int string;   /* what is drawn now is of this string, from 1; 0 for none */
    bool no_memory, no_number;
} draw_shapes;

/* draw_shapes_new: an empty list whose texts are set in letters; NULL out of memory.
 * Every function below passes over a NULL list. */
draw_shapes *draw_shapes_new(draw_letters *letters);
void draw_shapes_free(draw_shapes *list);

/* draw_of: whose what follows is, until the next call: a string's number from 1, 0 for none. */
void draw_of(draw_shapes *list, int string);

void draw_line(draw_shapes *list, draw_layer layer, draw_point a, draw_point b);
void draw_path(draw_shapes *list, draw_layer layer, const draw_point *points, int count,
               bool closed);
void draw_fill(draw_shapes *list, draw_layer layer, const draw_point *points, int count);
void draw_rectangle(draw_shapes *list, draw_layer layer, draw_box box);
/* An arc from one direction to another, counter-clockwise, degrees; a full turn is a circle. */
void draw_arc(draw_shapes *list, draw_layer layer, draw_point centre, double radius, double from,
              double to);
void draw_circle(draw_shapes *list, draw_layer layer, draw_point centre, double radius);
/* Section lining: parallel lines inside a closed polygon, 45 degrees up to the right for a
 * positive spacing, to the left for a negative one; mm apart. */
void draw_hatch(draw_shapes *list, const draw_point *points, int count, double spacing);
/* Text by its anchor on the base line, capital height in mm, direction 0 or 90 degrees. */
void draw_text(draw_shapes *list, draw_layer layer, draw_point at, double height,
               draw_anchor anchor, double direction, const char *words);

/* draw_shapes_box: what a list takes up; nothing at 0, 0 where there was no memory for the list. */
draw_box draw_shapes_box(const draw_shapes *list);

/* draw_shapes_strut: room the list takes up though nothing is drawn there. */
void draw_shapes_strut(draw_shapes *list, draw_box box);

/* draw_shapes_add: a copy of all of other's shapes, moved, and its faults; NULL is a list for which
 * there was no memory. */
void draw_shapes_add(draw_shapes *list, const draw_shapes *other, double dx, double dy);

/* Width of a text in this list's letters, mm. */
double draw_text_width(const draw_shapes *list, const char *words, double height);

draw_box draw_box_around(draw_box a, draw_box b);
static inline double draw_box_width(draw_box box)
{
    return box.right - box.left;
}
static inline double draw_box_height(draw_box box)
{
    return box.top - box.bottom;
}

#endif
