/* SPDX-License-Identifier: MIT */
#include "out.h"

#include <sillet/core/units.h>

write_plain_figure write_plain(double value, int decimals)
{
    write_plain_figure figure;
    sil_number_trimmed(figure.text, sizeof figure.text, value, decimals);
    return figure;
}

sil_status write_take(text *file, char **bytes, size_t *size)
{
    size_t length = 0;
    char *taken = text_take(file, &length);
    if (!taken) {
        return SIL_NO_MEMORY;
    }
    *bytes = taken;
    *size = length;
    return SIL_DONE;
}
