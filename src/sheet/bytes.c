/* SPDX-License-Identifier: MIT */
/* Checks the bytes of a sheet: it must be UTF-8 without control characters. */
#include "tree.h"

#include <string.h>

/* Why a character is not allowed in a sheet, or NULL. */
static const char *refusal(unsigned long code)
{
    if (code == 0) {
        return "a NUL byte: this is not a text file";
    }
    if (code == 0xFEFF) {
        return "a byte order mark within the text";
    }
    bool control = (code < 0x20 && code != '\t' && code != '\n' && code != '\r') ||
                   (code >= 0x7F && code < 0xA0);
    if (control || code == 0xFFFE || code == 0xFFFF) {
        return "a control character";
    }
    return NULL;
}

static void cut(sil_sheet *sheet, sheet_source *source, sheet_mark mark, size_t line_start,
                const char *why)
{
    sheet_tell_at(sheet, SIL_ERROR, source, mark, "%s", why);
    source->cut = true;
    source->size = line_start; /* the lines before it are still read */
}

void sheet_bytes_check(sil_sheet *sheet, sheet_source *source)
{
    if (source->size >= 3 && memcmp(source->bytes, "\xEF\xBB\xBF", 3) == 0) {
        source->bytes += 3;
        source->size -= 3;
    }
    const char *end = source->bytes + source->size;
    size_t line_start = 0;
    sheet_mark mark = {1, 1};
    for (const char *at = source->bytes; at < end;) {
        unsigned char byte = (unsigned char)*at;
        size_t length = 1;
        if (byte < 0x20 || byte >= 0x7F) {
            unsigned long code = 0;
            length = sil_character(at, (size_t)(end - at), &code);
            const char *why = length == 0 ? "not UTF-8" : refusal(code);
            if (why) {
                cut(sheet, source, mark, line_start, why);
                return;
            }
            bool ends = code == '\n' || code == 0x2028 || code == 0x2029 ||
                        (code == '\r' && !(at + 1 < end && at[1] == '\n'));
            if (ends) {
                line_start = (size_t)(at - source->bytes) + length;
                mark = (sheet_mark){mark.line + 1, 0};
            }
        }
        at += length;
        mark.column++;
    }
}
