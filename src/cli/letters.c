/* SPDX-License-Identifier: MIT */
/* Texts of any language in columns of a terminal. The widths are the C library's (an
 * East Asian letter takes two columns, a mark over a letter none). */
#include <stdio.h>
#include <string.h>
#include <wchar.h>

#include "many.h"

/* A letter of a text: its bytes and its columns. 0 bytes at the end of the text, -1 columns if it
 * cannot be shown. */
typedef struct letter {
    int bytes, columns;
} letter;

static letter letter_at(const char *text)
{
    mbstate_t state = {0};
    wchar_t wide;
    size_t bytes = mbrtowc(&wide, text, strlen(text), &state);
    if (*text == '\0') {
        return (letter){0, 0};
    }
    if (bytes == (size_t)-1 || bytes == (size_t)-2) {
        return (letter){1, -1};
    }
    return (letter){(int)bytes, wcwidth(wide)};
}

int plan_columns(const char *text)
{
    int columns = 0;
    for (letter l; (l = letter_at(text)).bytes > 0; text += l.bytes) {
        columns += l.columns < 0 ? 1 : l.columns;
    }
    return columns;
}

void plan_cell(const char *text, int columns)
{
    bool cut = columns > 0 && plan_columns(text) > columns;
    int used = 0;
    for (letter l; (l = letter_at(text)).bytes > 0; text += l.bytes) {
        int wide = l.columns < 0 ? 1 : l.columns;
        if (cut && used + wide > columns - 1) {
            break;
        }
        used += wide;
        printf("%.*s", l.columns < 0 ? 1 : l.bytes, l.columns < 0 ? " " : text);
    }
    if (cut) {
        printf("\xE2\x80\xA6");
        used++;
    }
    printf("%*s", columns > used ? columns - used : 0, "");
}
