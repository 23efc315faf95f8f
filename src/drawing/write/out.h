/* SPDX-License-Identifier: MIT */
/* A text file in the making: it grows, and keeps its first fault until it is taken. */
#ifndef SILLET_DRAWING_OUT_H
#define SILLET_DRAWING_OUT_H

#include <stdbool.h>
#include <stddef.h>

typedef struct sil_out {
    char *bytes;
    size_t count, room;
    bool no_memory;
} sil_out;

/* A number as files for machines have it: a point in any locale, at most `decimals` places, no
 * zeros behind the last figure. */
typedef struct sil_plain_figure {
    char text[32];
} sil_plain_figure;

sil_plain_figure sil_plain(double value, int decimals);

/* sil_out_put: as printf; numbers that are not whole go through sil_plain. */
__attribute__((format(printf, 2, 3))) void sil_out_put(sil_out *out, const char *format, ...);

/* sil_out_add: all of another, which is left empty. */
void sil_out_add(sil_out *out, sil_out *other);

/* sil_out_take: hands the bytes over, or frees them where memory ran out.
 * Returned: 0, else a sil_drawing_status
 */
int sil_out_take(sil_out *out, char **bytes, size_t *size);

#endif
