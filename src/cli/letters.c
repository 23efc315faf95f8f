/* SPDX-License-Identifier: MIT */
/* Texts of any language in columns of a terminal. The widths come from the C library: an East
 * Asian letter takes two columns, a mark over a letter none. */
#include <stdio.h>
#include <wchar.h>

#include "../text/text.h"
#include "many.h"

/* A letter of a text: its bytes and its columns. It has 0 bytes at the end of the text, and -1
 * columns if it cannot be shown. */
typedef struct letter {
    int bytes, columns;
} letter;

static letter letter_at(const char *words)
{
    enum { BROKEN = 0xFFFD };
    const char *next = words;
    uint32_t code = text_next(&next);
    int bytes = (int)(next - words);
    return (letter){bytes, code == BROKEN && bytes == 1 ? -1 : wcwidth((wchar_t)code)};
}

int cli_columns(const char *words)
{
    int columns = 0;
    for (letter l; (l = letter_at(words)).bytes > 0; words += l.bytes) {
        columns += l.columns < 0 ? 1 : l.columns;
    }
    return columns;
}

void cli_cell(const char *words, int columns)
{
    bool cut = columns > 0 && cli_columns(words) > columns;
    int used = 0;
    for (letter l; (l = letter_at(words)).bytes > 0; words += l.bytes) {
        int wide = l.columns < 0 ? 1 : l.columns;
        if (cut && used + wide > columns - 1) {
            break;
        }
        used += wide;
        printf("%.*s", l.columns < 0 ? 1 : l.bytes, l.columns < 0 ? " " : words);
    }
    if (cut) {
        printf("\xE2\x80\xA6");
        used++;
    }
    printf("%*s", columns > used ? columns - used : 0, "");
}
