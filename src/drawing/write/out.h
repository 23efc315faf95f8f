/* SPDX-License-Identifier: MIT */
/* What the writers of text files share. */
#ifndef SILLET_DRAWING_OUT_H
#define SILLET_DRAWING_OUT_H

#include <sillet/status.h>

#include "../../text/text.h"

/* A number as files for machines have it: a point in any locale, at most `decimals` places, no
 * zeros behind the last figure. */
typedef struct write_plain_figure {
    char text[32];
} write_plain_figure;

write_plain_figure write_plain(double value, int decimals);

/* write_take: hands the bytes of a file over, or frees them where memory ran out.
 * Status:   SIL_DONE or SIL_NO_MEMORY
 */
sil_status write_take(text *file, char **bytes, size_t *size);

#endif
