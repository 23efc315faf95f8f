/* SPDX-License-Identifier: MIT */
/* Shapes in millimetres, y up, on named layers: all a view makes and all a writer is given.
 *
 * A list keeps its first fault (no memory, a place that is no number) and takes no more after it;
 * the fault is asked for once, when the drawing is done.
 */
#ifndef SILLET_DRAWING_SHAPES_H
#define SILLET_DRAWING_SHAPES_H

#include <stdbool.h>

#include "letters.h"

typedef struct sil_point {
    double x, y;
} sil_point;

typedef struct sil_box {
    double left, bottom, right, top; /* empty where left > right */
} sil_box;

/* What a shape stands for; how it looks follows from that. */
typedef enum sil_layer {
    SIL_LAYER_OUTLINE,
    SIL_LAYER_SLOT,
    SIL_LAYER_CONTACT,
    SIL_LAYER_CUT,
    SIL_LAYER_CUT_FIRST,
    SIL_LAYER_PRESENT,
    SIL_LAYER_HIDDEN,
    SIL_LAYER_CENTRE,
    SIL_LAYER_DIMENSION,
    SIL_LAYER_STRING,
    SIL_LAYER_HATCH,
    SIL_LAYER_RULE,
    SIL_LAYER_TEXT,
    SIL_LAYER_WARNING,
    SIL_LAYER_FRAME,
    SIL_LAYERS
} sil_layer;

/* How a layer is drawn. Black on white must carry all: colour only helps. */
typedef struct sil_look {
    const char *word; /* the layer's name in a file */
    double width;     /* of the line, mm; ISO 128-2 */
    double dash[4];   /* mm of line and gap in turn, up to the first 0 */
    double red, green, blue;
} sil_look;

const sil_look *sil_layer_look(sil_layer layer);

typedef enum sil_anchor { SIL_LEFT, SIL_MIDDLE, SIL_RIGHT } sil_anchor;

typedef enum sil_shape_kind { SIL_SHAPE_PATH, SIL_SHAPE_ARC, SIL_SHAPE_TEXT } sil_shape_kind;

typedef struct sil_shape {
    sil_shape_kind kind;
    sil_layer layer;
    int first, count;    /* path: its points in the list; text: its bytes, NUL apart */
    bool closed, filled; /* path and arc */
    sil_point at;        /* arc: centre; text: anchor, on the base line */
    double size;         /* arc: radius; text: capital height */
    double from, to;     /* arc: degrees counter-clockwise; text: from is its direction, degrees */
    sil_anchor anchor;
    double advance; /* text: its width as set */
    int string;     /* the string it is of, from 1; 0 for none */
    sil_box box;    /* of the ink of a text; of the centre line of a path or arc */
} sil_shape;

typedef struct sil_shapes {
    sil_letters *letters;
    sil_shape *shapes;
    int count, room;
    sil_point *points;
    int point_count, point_room;
    char *bytes;
    int byte_count, byte_room;
    sil_box box; /* of all shapes and struts */
    int string;  /* what is drawn now is of this string, from 1; 0 for none */
    bool no_memory, no_number;
} sil_shapes;

/* sil_shapes_new: an empty list whose texts are set in letters; NULL out of memory.
 * Every function below passes over a NULL list. */
sil_shapes *sil_shapes_new(sil_letters *letters);
void sil_shapes_free(sil_shapes *list);

/* sil_draw_of: whose what follows is, until the next call: a string's number from 1, 0 for none. */
void sil_draw_of(sil_shapes *list, int string);

void sil_draw_line(sil_shapes *list, sil_layer layer, sil_point a, sil_point b);
void sil_draw_path(sil_shapes *list, sil_layer layer, const sil_point *points, int count,
                   bool closed);
void sil_draw_fill(sil_shapes *list, sil_layer layer, const sil_point *points, int count);
void sil_draw_box(sil_shapes *list, sil_layer layer, sil_box box);
/* An arc from one direction to another, counter-clockwise, degrees; a full turn is a circle. */
void sil_draw_arc(sil_shapes *list, sil_layer layer, sil_point centre, double radius, double from,
                  double to);
void sil_draw_circle(sil_shapes *list, sil_layer layer, sil_point centre, double radius);
/* Section lining: parallel lines inside a closed polygon, 45 degrees up to the right for a
 * positive spacing, to the left for a negative one; mm apart. */
void sil_draw_hatch(sil_shapes *list, const sil_point *points, int count, double spacing);
/* Text by its anchor on the base line, capital height in mm, direction 0 or 90 degrees. */
void sil_draw_text(sil_shapes *list, sil_layer layer, sil_point at, double height,
                   sil_anchor anchor, double direction, const char *text);

/* sil_shapes_box: what a list takes up; nothing at 0, 0 where there was no memory for the list. */
sil_box sil_shapes_box(const sil_shapes *list);

/* sil_shapes_strut: room the list takes up though nothing is drawn there. */
void sil_shapes_strut(sil_shapes *list, sil_box box);

/* sil_shapes_add: a copy of all of other's shapes, moved, and its faults; NULL is a list for which
 * there was no memory. */
void sil_shapes_add(sil_shapes *list, const sil_shapes *other, double dx, double dy);

/* Width of a text in this list's letters, mm. */
double sil_text_width(const sil_shapes *list, const char *text, double height);

sil_box sil_box_around(sil_box a, sil_box b);
static inline double sil_box_width(sil_box box)
{
    return box.right - box.left;
}
static inline double sil_box_height(sil_box box)
{
    return box.top - box.bottom;
}

#endif
