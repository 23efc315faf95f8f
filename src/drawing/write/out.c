/* SPDX-License-Identifier: MIT */
#include "out.h"

#include <sillet/core/units.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

write_plain_figure write_plain(double value, int decimals)
{
    write_plain_figure figure;
    sil_number_trimmed(figure.text, sizeof figure.text, value, decimals);
    return figure;
}

static bool room_for(write_out *out, size_t more)
{
    if (out->no_memory) {
        return false;
    }
    if (out->count + more < out->room) {
        return true;
    }
    size_t wanted = 2 * out->room + more + 1024;
    char *larger = realloc(out->bytes, wanted);
    out->no_memory = larger == NULL;
    if (larger != NULL) {
        out->bytes = larger;
        out->room = wanted;
    }
    return larger != NULL;
}

void write_out_put(write_out *out, const char *format, ...)
{
    for (size_t wanted = 128; room_for(out, wanted);) {
        va_list list;
        va_start(list, format);
        size_t room = out->room - out->count;
        int length = vsnprintf(out->bytes + out->count, room, format, list);
        va_end(list);
        if (length >= 0 && (size_t)length < room) {
            out->count += (size_t)length;
            return;
        }
        wanted = length < 0 ? 0 : (size_t)length + 1;
        out->no_memory = length < 0;
    }
}

void write_out_add(write_out *out, write_out *other)
{
    out->no_memory = out->no_memory || other->no_memory;
    if (other->count > 0 && room_for(out, other->count)) {
        memcpy(out->bytes + out->count, other->bytes, other->count);
        out->count += other->count;
    }
    free(other->bytes);
    *other = (write_out){0};
}

sil_status write_out_take(write_out *out, char **bytes, size_t *size)
{
    if (out->no_memory) {
        free(out->bytes);
        return SIL_NO_MEMORY;
    }
    *bytes = out->bytes;
    *size = out->count;
    return SIL_DONE;
}
