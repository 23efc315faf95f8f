/* SPDX-License-Identifier: MIT */
/* A writer turns the shapes of a drawing into the bytes of a file. It is a table of functions.
 *
 * Only open and close return something: a writer remembers its first error and returns it from
 * close.
 */
#ifndef SILLET_DRAWING_WRITER_H
#define SILLET_DRAWING_WRITER_H

#include <sillet/status.h>
#include <stdbool.h>

#include "../board/shapes.h"

/* What a file says about itself; texts may be NULL. */
typedef struct write_file_about {
    const char *title, *author, *subject;
    int year, month, day; /* 0 if there is no date */
    double widest;        /* the widest line allowed, mm; 0: each layer's own width */
    bool hairlines;       /* of the paper that is being written */
} write_file_about;

/* The width of a layer's lines in a file, mm. */
double write_pen_width(const write_file_about *about, const draw_look *look);

typedef struct write_format {
    /* Returned: NULL if out of memory. */
    void *(*open)(draw_letters *letters, const write_file_about *about);
    void (*paper)(void *self, draw_box size); /* mm */
    /* Shapes come layer by layer; points in mm, y up. */
    void (*path)(void *self, const draw_shape *shape, const draw_point *points);
    /* NULL if the format has no arcs within a path: it then gets a path of short chords. */
    void (*outline)(void *self, const draw_shape *shape, const draw_corner *corners);
    void (*arc)(void *self, const draw_shape *shape);
    void (*text)(void *self, const draw_shape *shape, const char *words);
    /* Frees the writer. Returned: SIL_DONE and a new block of bytes, or an error. */
    sil_status (*close)(void *self, char **bytes, size_t *size);
} write_format;

extern const write_format write_pdf, write_svg, write_dxf;

#endif
