/* SPDX-License-Identifier: MIT */
#include "writer.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { ROOM = 32 * 1024 };

/* Makes room for so many more bytes and returns where they go, or NULL. */
static char *reserve(writer *w, size_t size)
{
    if (w->length + size > w->room && !w->failed) {
        size_t room = 2 * w->room + ROOM + size;
        char *text = realloc(w->text, room);
        w->failed = !text;
        w->text = text ? text : w->text;
        w->room = text ? room : w->room;
    }
    return w->failed ? NULL : w->text + w->length;
}

static void write_bytes(writer *w, const char *bytes, size_t size)
{
    char *to = reserve(w, size);
    if (to) {
        memcpy(to, bytes, size);
        w->length += size;
    }
}

static void write_text(writer *w, const char *text)
{
    write_bytes(w, text, strlen(text));
}

static void write_figure(writer *w, double value)
{
    if (!isfinite(value)) {
        write_text(w, "null");
        return;
    }
    char *to = reserve(w, SIL_NUMBER_FULL_MAX);
    if (to) {
        w->length += sil_number_write_full(to, value);
    }
}

/* At most six bytes for one of the text's. What is no UTF-8, as in the name of a file, comes out as
 * U+FFFD. */
static void write_quoted(writer *w, const char *text)
{
    char *start = reserve(w, 6 * strlen(text) + 3);
    char *to = start;
    if (!start) {
        return;
    }
    *to++ = '"';
    while (*text) {
        unsigned long code;
        size_t length = sil_character(text, 4, &code);
        if (length == 0 || code < 0x20) {
            to += snprintf(to, 7, "\\u%04lx", length == 0 ? 0xFFFDUL : code);
        } else {
            if (code == '"' || code == '\\') {
                *to++ = '\\';
            }
            memcpy(to, text, length);
            to += length;
        }
        text += length > 0 ? length : 1;
    }
    *to++ = '"';
    w->length += (size_t)(to - start);
}

/* Closes what was opened inside, and goes on behind what is there already. */
static void go_on(writer *w, json *in, const char *key)
{
    while (w->depth > 0 && &w->open[w->depth - 1] != in) {
        write_bytes(w, &w->open[--w->depth].closing, 1);
    }
    if (in && in->filled) {
        write_bytes(w, ",", 1);
    }
    if (in) {
        in->filled = true;
    }
    if (key) {
        write_bytes(w, "\"", 1);
        write_text(w, key);
        write_bytes(w, "\":", 2);
    }
}

static json *begin(writer *w, char opening, char closing)
{
    assert(w->depth < WRITER_DEPTH);
    write_bytes(w, &opening, 1);
    w->open[w->depth] = (json){closing, false};
    return &w->open[w->depth++];
}

json *put_root(writer *w)
{
    return begin(w, '{', '}');
}

char *put_end(writer *w)
{
    go_on(w, NULL, NULL);
    write_bytes(w, "", 1);
    if (w->failed) {
        free(w->text);
    }
    return w->failed ? NULL : w->text;
}

void put_number(writer *w, json *object, const char *key, double value)
{
    go_on(w, object, key);
    write_figure(w, value);
}

void put_int(writer *w, json *object, const char *key, int value)
{
    put_number(w, object, key, value);
}

void put_word(writer *w, json *object, const char *key, const char *word)
{
    go_on(w, object, key);
    if (word) {
        write_quoted(w, word);
    } else {
        write_text(w, "null");
    }
}

void put_bool(writer *w, json *object, const char *key, bool value)
{
    go_on(w, object, key);
    write_text(w, value ? "true" : "false");
}

void put_null(writer *w, json *object, const char *key)
{
    put_word(w, object, key, NULL);
}

json *put_object(writer *w, json *object, const char *key)
{
    go_on(w, object, key);
    return begin(w, '{', '}');
}

json *put_array(writer *w, json *object, const char *key)
{
    go_on(w, object, key);
    return begin(w, '[', ']');
}

void put_numbers(writer *w, json *object, const char *key, const double *values, int count)
{
    json *array = put_array(w, object, key);
    for (int k = 0; k < count; k++) {
        put_number(w, array, NULL, values[k]);
    }
}

void add_word(writer *w, json *array, const char *word)
{
    put_word(w, array, NULL, word);
}

json *add_row(writer *w, json *array)
{
    return put_object(w, array, NULL);
}

json *add_string_row(writer *w, json *array, int string)
{
    json *row = add_row(w, array);
    put_int(w, row, "number", string + 1);
    return row;
}
