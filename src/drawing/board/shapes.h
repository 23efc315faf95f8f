/* SPDX-License-Identifier: MIT */
/* Shapes in millimetres, y up, on named layers. Views make them, and writers get nothing else.
 *
 * A list keeps its first fault (no memory, or a coordinate that is not a number) and accepts
 * nothing after it. The fault is checked once, when the drawing is finished.
 */
#ifndef SILLET_DRAWING_SHAPES_H
#define SILLET_DRAWING_SHAPES_H

#include <stdbool.h>

#include "../../part/point.h"
#include "letters.h"

typedef part_point draw_point;
typedef part_corner draw_corner;

typedef struct draw_box {
    double left, bottom, right, top; /* empty if left > right */
} draw_box;

/* What a shape represents, which also decides how it looks. */
typedef enum draw_layer {
    DRAW_FINISHED,
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

/* How a layer is drawn. A drawing must be clear in black and white; colour only helps. */
typedef struct draw_look {
    const char *word; /* the layer's name in a file */
    double width;     /* of the line, mm; ISO 128-2 */
    double hair;      /* the same on a paper of hairlines */
    double dash[4];   /* mm of line and gap in turn, ending at the first 0 */
    double red, green, blue;
} draw_look;

const draw_look *draw_layer_look(draw_layer layer);

typedef enum draw_anchor { DRAW_LEFT, DRAW_MIDDLE, DRAW_RIGHT } draw_anchor;

typedef enum draw_shape_kind {
    DRAW_SHAPE_PATH,
    DRAW_SHAPE_OUTLINE,
    DRAW_SHAPE_ARC,
    DRAW_SHAPE_TEXT
} draw_shape_kind;

typedef struct draw_shape {
    draw_shape_kind kind;
    draw_layer layer;
    int first, count; /* a path's points in the list, an outline's corners; a text's bytes without
                            the NUL */
    bool closed, filled; /* path and arc */
    draw_point at;       /* of an arc: the centre; of a text: the anchor on the base line */
    double size;         /* of an arc: the radius; of a text: the capital height */
    double from, to;     /* degrees, counter-clockwise; of a text, from is its direction */
    draw_anchor anchor;
    double advance; /* of a text: its width */
    int string;     /* the number of its string, from 1; 0 for none */
    draw_box box;   /* of a text's ink, or of the centre line of a path or arc */
} draw_shape;

typedef struct draw_shapes {
    draw_letters *letters;
    draw_shape *shapes;
    int count, room;
    draw_point *points;
    int point_count, point_room;
    draw_corner *corners;
    int corner_count, corner_room;
    char *bytes;
    int byte_count, byte_room;
    draw_box box; /* around all shapes and struts */
    int string;   /* the string of what is drawn next, from 1; 0 for none */
    bool no_memory, no_number;
} draw_shapes;

/* draw_shapes_new: an empty list whose texts use these letters; NULL if out of memory. All
 * functions below accept NULL as a list and then do nothing. */
draw_shapes *draw_shapes_new(draw_letters *letters);
void draw_shapes_free(draw_shapes *list);

/* draw_of: sets the string that the following shapes belong to, until the next call: its number
 * from 1, or 0 for none. */
void draw_of(draw_shapes *list, int string);

void draw_line(draw_shapes *list, draw_layer layer, draw_point a, draw_point b);
void draw_path(draw_shapes *list, draw_layer layer, const draw_point *points, int count,
               bool closed);
/* Draws a closed outline of straight lines and arcs. */
void draw_outline(draw_shapes *list, draw_layer layer, const draw_corner *corners, int count);
void draw_fill(draw_shapes *list, draw_layer layer, const draw_point *points, int count);
void draw_rectangle(draw_shapes *list, draw_layer layer, draw_box box);
/* Draws an arc from one direction to another, counter-clockwise, in degrees. A full turn is a
 * circle. */
void draw_arc(draw_shapes *list, draw_layer layer, draw_point centre, double radius, double from,
              double to);
void draw_circle(draw_shapes *list, draw_layer layer, draw_point centre, double radius);
/* Draws section lining inside a closed polygon: parallel lines, spaced in mm, that rise at 45
 * degrees to the right if spacing is positive, to the left if it is negative. */
void draw_hatch(draw_shapes *list, const draw_point *points, int count, double spacing);
/* Writes a text at an anchor on its base line: capital height in mm, direction 0 or 90 degrees. */
void draw_text(draw_shapes *list, draw_layer layer, draw_point at, double height,
               draw_anchor anchor, double direction, const char *words);

/* draw_shapes_box: the extent of a list; an empty box at 0, 0 for a NULL list. */
draw_box draw_shapes_box(const draw_shapes *list);

/* draw_shapes_strut: adds an area to the extent of the list without drawing anything. */
void draw_shapes_strut(draw_shapes *list, draw_box box);

/* draw_shapes_add: copies all shapes of other into the list, moved by dx and dy, and its faults.
 * If other is NULL, memory ran out when it was made. */
void draw_shapes_add(draw_shapes *list, const draw_shapes *other, double dx, double dy);

/* The width of a text in the letters of this list, mm. */
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
