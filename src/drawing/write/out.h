/* SPDX-License-Identifier: MIT */
/* What the writers of text files share. */
#ifndef SILLET_DRAWING_OUT_H
#define SILLET_DRAWING_OUT_H

#include <sillet/status.h>

#include "../../text/text.h"

/* A number as files for machines write it: with a point in any locale, at most `decimals`
 * places, and no zeros at the end of them. */
typedef struct write_plain_figure {
    char text[32];
} write_plain_figure;

write_plain_figure write_plain(double value, int decimals);

/* write_take: hands over the bytes of a file, or frees them if memory ran out.
 * Status:   SIL_DONE or SIL_NO_MEMORY
 */
sil_status write_take(text *file, char **bytes, size_t *size);

#endif
