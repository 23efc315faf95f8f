/* SPDX-License-Identifier: MIT */
#include <stdlib.h>
#include <string.h>

#include "writer.h"

/* Figures are written here and lent to cJSON, which else would hold a block for each. */
struct leaf {
    leaf *before;
    size_t used;
    char text[1 << 14];
};

/* Room on a leaf, or NULL without memory. Who has written there turns on by what was used. */
static char *room(writer *w, size_t size)
{
    if (!w->leaf || w->leaf->used + size > sizeof w->leaf->text) {
        leaf *next = malloc(sizeof *next);
        if (!next) {
            return NULL;
        }
        next->before = w->leaf;
        next->used = 0;
        w->leaf = next;
    }
    return w->leaf->text + w->leaf->used;
}

/* What was written in the room, printed as it stands. */
static cJSON *lend(writer *w, char *text, size_t length)
{
    cJSON *item = cJSON_CreateStringReference(text);
    if (item) {
        item->type = cJSON_Raw | cJSON_IsReference;
        w->leaf->used += length + 1;
    }
    return item;
}

/* Bytes a result of six strings takes and some more: room from the start, instead of growing. */
enum { PRINTED = 1 << 15 };

static void put(writer *w, cJSON *object, const char *key, cJSON *item)
{
    if (!item || !cJSON_AddItemToObjectCS(object, key, item)) {
        w->failed = true;
        cJSON_Delete(item);
    }
}

/* Our own figures: cJSON would print a double, read it back and print it again. */
static cJSON *figure(writer *w, double value)
{
    if (!isfinite(value)) {
        return cJSON_CreateNull();
    }
    char *digits = room(w, SIL_NUMBER_FULL_MAX);
    return digits ? lend(w, digits, sil_number_write_full(digits, value)) : NULL;
}

static bool well_formed(const char *text)
{
    unsigned long code;
    size_t length = 1;
    while (*text && length > 0) {
        length = (unsigned char)*text < 0x80 ? 1 : sil_character(text, 4, &code);
        text += length;
    }
    return length > 0;
}

/* A file's name may hold bytes that are no UTF-8: they come out as U+FFFD. */
static cJSON *clean_word(const char *word)
{
    static const char unknown[] = "\xEF\xBF\xBD";
    if (well_formed(word)) {
        return cJSON_CreateString(word);
    }
    char *clean = malloc(3 * strlen(word) + 1), *to = clean;
    while (clean && *word) {
        unsigned long code;
        size_t length = sil_character(word, 4, &code);
        memcpy(to, length ? word : unknown, length ? length : 3);
        to += length ? length : 3;
        word += length ? length : 1;
    }
    if (clean) {
        *to = '\0';
    }
    cJSON *item = clean ? cJSON_CreateString(clean) : NULL;
    free(clean);
    return item;
}

cJSON *put_root(writer *w)
{
    w->root = cJSON_CreateObject();
    w->failed = !w->root;
    return w->root;
}

char *put_end(writer *w)
{
    char *text = w->failed ? NULL : cJSON_PrintBuffered(w->root, PRINTED, false);
    cJSON_Delete(w->root);
    while (w->leaf) {
        leaf *before = w->leaf->before;
        free(w->leaf);
        w->leaf = before;
    }
    return text;
}

void put_number(writer *w, cJSON *object, const char *key, double value)
{
    put(w, object, key, figure(w, value));
}

void put_int(writer *w, cJSON *object, const char *key, int value)
{
    put(w, object, key, figure(w, value));
}

void put_word(writer *w, cJSON *object, const char *key, const char *word)
{
    put(w, object, key, word ? clean_word(word) : cJSON_CreateNull());
}

void put_bool(writer *w, cJSON *object, const char *key, bool value)
{
    put(w, object, key, cJSON_CreateBool(value));
}

void put_null(writer *w, cJSON *object, const char *key)
{
    put(w, object, key, cJSON_CreateNull());
}

cJSON *put_object(writer *w, cJSON *object, const char *key)
{
    cJSON *child = cJSON_CreateObject();
    put(w, object, key, child);
    return w->failed ? NULL : child;
}

cJSON *put_array(writer *w, cJSON *object, const char *key)
{
    cJSON *child = cJSON_CreateArray();
    put(w, object, key, child);
    return w->failed ? NULL : child;
}

static void add(writer *w, cJSON *array, cJSON *item)
{
    if (!item || !cJSON_AddItemToArray(array, item)) {
        w->failed = true;
        cJSON_Delete(item);
    }
}

void put_numbers(writer *w, cJSON *object, const char *key, const double *values, int count)
{
    char *text = room(w, (size_t)count * (SIL_NUMBER_FULL_MAX + 1) + 3);
    size_t length = 0;
    if (!text) {
        w->failed = true;
        return;
    }
    text[length++] = '[';
    for (int k = 0; k < count; k++) {
        if (k > 0) {
            text[length++] = ',';
        }
        if (isfinite(values[k])) {
            length += sil_number_write_full(text + length, values[k]);
        } else {
            memcpy(text + length, "null", 4);
            length += 4;
        }
    }
    text[length++] = ']';
    text[length] = '\0';
    put(w, object, key, lend(w, text, length));
}

void add_word(writer *w, cJSON *array, const char *word)
{
    add(w, array, cJSON_CreateString(word));
}

cJSON *add_row(writer *w, cJSON *array)
{
    cJSON *row = cJSON_CreateObject();
    add(w, array, row);
    return w->failed ? NULL : row;
}

cJSON *add_string_row(writer *w, cJSON *array, int string)
{
    cJSON *row = add_row(w, array);
    put_int(w, row, "number", string + 1);
    return row;
}
