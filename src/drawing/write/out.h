/* SPDX-License-Identifier: MIT */
/* A text file in the making: it grows, and keeps its first fault until it is taken. */
#ifndef SILLET_DRAWING_OUT_H
#define SILLET_DRAWING_OUT_H

#include <stdbool.h>
#include <stddef.h>

#include <sillet/status.h>

typedef struct write_out {
    char *bytes;
    size_t count, room;
    bool no_memory;
} write_out;

/* A number as files for machines have it: a point in any locale, at most `decimals` places, no
 * zeros behind the last figure. */
typedef struct write_plain_figure {
    char text[32];
} write_plain_figure;

write_plain_figure write_plain(double value, int decimals);

/* write_out_put: as printf; numbers that are not whole go through write_plain. */
__attribute__((format(printf, 2, 3))) void write_out_put(write_out *out, const char *format, ...);

/* write_out_add: all of another, which is left empty. */
void write_out_add(write_out *out, write_out *other);

/* write_out_take: hands the bytes over, or frees them where memory ran out.
 * Status:   SIL_DONE or SIL_NO_MEMORY
 */
sil_status write_out_take(write_out *out, char **bytes, size_t *size);

#endif
