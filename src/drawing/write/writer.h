/* SPDX-License-Identifier: MIT */
/* A writer turns the shapes of a drawing into the bytes of a file: one table of functions.
 *
 * All but open and close return nothing: a writer keeps its first error and gives it at close.
 */
#ifndef SILLET_DRAWING_WRITER_H
#define SILLET_DRAWING_WRITER_H

#include "../shapes.h"

/* What a file says of itself; texts may be NULL. */
typedef struct sil_file_about {
    const char *title, *author, *subject;
    int year, month, day; /* 0 where there is no date */
} sil_file_about;

typedef struct sil_writer {
    /* NULL out of memory. */
    void *(*open)(sil_letters *letters, const sil_file_about *about);
    void (*page)(void *self, double width, double height); /* mm */
    /* Shapes come with their layer; points in mm, y up. */
    void (*path)(void *self, sil_layer layer, const sil_point *points, int count, bool closed,
                 bool filled);
    void (*arc)(void *self, sil_layer layer, sil_point centre, double radius, double from,
                double to);
    /* A text whose start, at its left on the base line, has been worked out. */
    void (*text)(void *self, sil_layer layer, sil_point start, double height, double direction,
                 const char *text);
    /* Frees the writer. Returned: 0 and a new block, else a sil_drawing_status. */
    int (*close)(void *self, char **bytes, size_t *size);
} sil_writer;

extern const sil_writer sil_writer_pdf;

#endif
