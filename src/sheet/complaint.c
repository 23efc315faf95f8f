/* SPDX-License-Identifier: MIT */
/* Writes a complaint as a person reads it, with its line and a caret. */
#include "tree.h"

#include <stdio.h>
#include <string.h>

/* The text written so far; its length goes on counting past the end of the buffer. */
typedef struct writer {
    char *out;
    size_t size, used;
} writer;

static void put(writer *to, const char *text, size_t length)
{
    if (to->used + length < to->size) {
        memcpy(to->out + to->used, text, length);
        to->out[to->used + length] = '\0';
    } else if (to->used < to->size) {
        to->size = to->used + 1; /* the text is cut before this character, and stays cut */
    }
    to->used += length;
}

static void put_text(writer *to, const char *text)
{
    put(to, text, strlen(text));
}

/* Writes one character in one column: a tab as a space, a control character as its picture (from
 * U+2400), a byte that is not a character as U+FFFD. Returns how many bytes were read. */
static size_t put_shown(writer *to, const char *at, size_t size)
{
    unsigned long code = 0;
    size_t length = sil_character(at, size, &code);
    if (length == 0 || (code >= 0x80 && code < 0xA0)) {
        put_text(to, "\xEF\xBF\xBD");
        return length > 0 ? length : 1;
    }
    if (code == '\t') {
        put_text(to, " ");
    } else if (code < 0x20 || code == 0x7F) {
        const char picture[4] = {'\xE2', '\x90', (char)(code == 0x7F ? 0xA1 : 0x80 + code), '\0'};
        put_text(to, picture);
    } else {
        put(to, at, length);
    }
    return length;
}

static void put_all_shown(writer *to, const char *text)
{
    for (size_t size = strlen(text); size > 0;) {
        size_t step = put_shown(to, text, size);
        text += step;
        size -= step;
    }
}

/* The part of a line around the place, and how many of its columns are before the place. */
static int put_line(writer *to, const char *line, int column)
{
    enum { BEFORE = 60, SHOWN = 96 };
    int from = column > BEFORE ? column - BEFORE : 1, shown = 0, at = 1;
    if (from > 1) {
        put_text(to, "...");
    }
    for (size_t size = strlen(line); size > 0 && shown < SHOWN; at++) {
        writer nowhere = {NULL, 0, 0};
        size_t step = put_shown(at < from ? &nowhere : to, line, size);
        shown += at >= from;
        line += step;
        size -= step;
    }
    if (*line) {
        put_text(to, "...");
    }
    put_text(to, "\n");
    return column - from + (from > 1 ? 3 : 0);
}

size_t sil_complaint_write(const sil_complaint *complaint, char *out, size_t size)
{
    writer to = {out, size, 0};
    char place[40];
    if (size > 0) {
        out[0] = '\0';
    }
    put_all_shown(&to, complaint->file);
    snprintf(place, sizeof place, ":%d:%d: ", complaint->line, complaint->column);
    put_text(&to, place);
    put_text(&to, complaint->severity == SIL_ERROR ? "error: " : "warning: ");
    put_text(&to, complaint->text);
    if (complaint->source) {
        put_text(&to, "\n");
        int before = put_line(&to, complaint->source, complaint->column);
        for (int i = 0; i < before; i++) {
            put_text(&to, " ");
        }
        put_text(&to, "^");
    }
    return to.used;
}

void sil_sheet_mistakes(const sil_sheet *sheet, char *out, size_t size)
{
    int errors = 0, first = 0;
    for (int k = sil_sheet_complaint_count(sheet) - 1; k >= 0; k--) {
        sil_complaint complaint = sil_sheet_complaint(sheet, k);
        if (complaint.severity == SIL_ERROR) {
            errors++;
            first = complaint.line;
        }
    }
    if (size > 0) {
        out[0] = '\0';
    }
    if (errors > 0) {
        snprintf(out, size, "the sheet: %d mistake%s, the first in line %d", errors,
                 errors == 1 ? "" : "s", first);
    }
}
