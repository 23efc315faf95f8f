/* SPDX-License-Identifier: MIT */
/* Writes a complaint as a person reads it, with its line and a caret. */
#include "tree.h"

#include <stdio.h>
#include <string.h>

/* Writes one character in one column: a tab as a space, a control character as its picture (from
 * U+2400), a byte that is not a character as U+FFFD. Returns how many bytes were read. */
static size_t put_shown(text *t, const char *at, size_t size)
{
    unsigned long code = 0;
    size_t length = sil_character(at, size, &code);
    if (length == 0 || (code >= 0x80 && code < 0xA0)) {
        text_put(t, "\xEF\xBF\xBD");
        return length > 0 ? length : 1;
    }
    if (code == '\t') {
        text_put(t, " ");
    } else if (code < 0x20 || code == 0x7F) {
        const char picture[4] = {'\xE2', '\x90', (char)(code == 0x7F ? 0xA1 : 0x80 + code), '\0'};
        text_put(t, picture);
    } else {
        text_put_bytes(t, at, length);
    }
    return length;
}

static void put_all_shown(text *t, const char *words)
{
    for (size_t size = strlen(words); size > 0;) {
        size_t step = put_shown(t, words, size);
        words += step;
        size -= step;
    }
}

/* The part of a line around the place, and how many of its columns are before the place. */
static int put_line(text *t, const char *line, int column)
{
    enum { BEFORE = 60, SHOWN = 96 };
    text nowhere = {.failed = true}; /* passes over what is before the part shown */
    int from = column > BEFORE ? column - BEFORE : 1, shown = 0, at = 1;
    if (from > 1) {
        text_put(t, "...");
    }
    for (size_t size = strlen(line); size > 0 && shown < SHOWN; at++) {
        size_t step = put_shown(at < from ? &nowhere : t, line, size);
        shown += at >= from;
        line += step;
        size -= step;
    }
    if (*line) {
        text_put(t, "...");
    }
    text_put(t, "\n");
    return column - from + (from > 1 ? 3 : 0);
}

static void put_complaint(text *t, const sil_complaint *complaint)
{
    put_all_shown(t, complaint->file);
    text_add(t, ":%d:%d: %s: %s", complaint->line, complaint->column,
             complaint->severity == SIL_ERROR ? "error" : "warning", complaint->text);
    if (complaint->source) {
        text_put(t, "\n");
        text_space(t, put_line(t, complaint->source, complaint->column));
        text_put(t, "^");
    }
}

size_t sil_complaint_write(const sil_complaint *complaint, char *out, size_t size)
{
    text t = {0};
    put_complaint(&t, complaint);
    const char *words = text_read(&t);
    size_t needed = strlen(words);
    if (size > 0) {
        size_t fits = text_prefix(words, size - 1);
        memcpy(out, words, fits);
        out[fits] = '\0';
    }
    text_free(&t);
    return needed;
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
        snprintf(out, size, "%d mistake%s, line %d", errors, errors == 1 ? "" : "s", first);
    }
}
