/* SPDX-License-Identifier: MIT */
#include "json.h"

#include <math.h>
#include <stdalign.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include <cjson/cJSON.h>
#include <sillet/core/units.h>

/* Everything of a document lies on its leaves: the items, of which cJSON says what they hold, the
 * figures and the words. cJSON would allocate and free a block for each of them, which costs more
 * than the rest of a plan. */
struct json_leaf {
    json_leaf *before;
    size_t used, size;
    max_align_t bytes[];
};

/* Room for so many bytes; NULL if memory ran out. */
static void *room(json *j, size_t size)
{
    enum { LEAF = 1 << 16 };
    if (!j->leaf || j->leaf->size - j->leaf->used < size) {
        size_t of = size > LEAF ? size : LEAF;
        json_leaf *next = malloc(sizeof *next + of);
        if (!next) {
            return NULL;
        }
        *next = (json_leaf){.before = j->leaf, .size = of};
        j->leaf = next;
    }
    return (char *)j->leaf->bytes + j->leaf->used;
}

/* Keeps what was written in the room; what comes next begins where any item may. */
static void keep(json *j, size_t size)
{
    const size_t step = alignof(cJSON) - 1;
    size_t used = j->leaf->used + ((size + step) & ~step);
    j->leaf->used = used < j->leaf->size ? used : j->leaf->size;
}

static cJSON *make(json *j, int type)
{
    cJSON *item = room(j, sizeof *item);
    if (item) {
        *item = (cJSON){.type = type};
        keep(j, sizeof *item);
    }
    return item;
}

/* An item whose text lies on a leaf or outlives the document. */
static cJSON *make_text(json *j, int type, const char *text)
{
    cJSON *item = make(j, type);
    if (item) {
        item->valuestring = (char *)text; /* only read */
    }
    return item;
}

static json_at put(json_at object, const char *key, cJSON *item)
{
    json *j = object.in;
    j->failed = j->failed || !item || !cJSON_AddItemToObjectCS(object.item, key, item);
    return (json_at){j, j->failed ? NULL : item};
}

static json_at add(json_at array, cJSON *item)
{
    json *j = array.in;
    j->failed = j->failed || !item || !cJSON_AddItemToArray(array.item, item);
    return (json_at){j, j->failed ? NULL : item};
}

/* Writes a figure with our own code, because cJSON prints a double, reads it back and prints it
 * again. */
static cJSON *figure(json *j, double value)
{
    char *digits = isfinite(value) ? room(j, SIL_NUMBER_FULL_MAX) : NULL;
    if (!digits) {
        return isfinite(value) ? NULL : make(j, cJSON_NULL);
    }
    keep(j, sil_number_write_measured(digits, value) + 1);
    return make_text(j, cJSON_Raw, digits);
}

/* A copy of the word; what is no character becomes U+FFFD. */
static cJSON *clean_word(json *j, const char *word)
{
    static const char unknown[] = "\xEF\xBF\xBD";
    char *clean = room(j, 3 * strlen(word) + 1), *to = clean;
    while (clean && *word) {
        unsigned long code;
        size_t length = (unsigned char)*word < 0x80 ? 1 : sil_character(word, 4, &code);
        memcpy(to, length ? word : unknown, length ? length : 3);
        to += length ? length : 3;
        word += length ? length : 1;
    }
    if (!clean) {
        return NULL;
    }
    *to = '\0';
    keep(j, (size_t)(to - clean) + 1);
    return make_text(j, cJSON_String, clean);
}

static json_at begin(json *j, cJSON *root)
{
    j->root = root;
    j->failed = !root;
    return (json_at){j, root};
}

json_at json_object(json *j)
{
    return begin(j, make(j, cJSON_Object));
}

json_at json_array(json *j)
{
    return begin(j, make(j, cJSON_Array));
}

void json_drop(json *j)
{
    while (j->leaf) {
        json_leaf *before = j->leaf->before;
        free(j->leaf);
        j->leaf = before;
    }
    *j = (json){0};
}

char *json_end(json *j)
{
    /* More bytes than the result of a six-string needs, so that the buffer need not grow. */
    enum { PRINTED = 1 << 15 };
    char *text = j->failed ? NULL : cJSON_PrintBuffered(j->root, PRINTED, false);
    json_drop(j);
    return text;
}

void json_put_number(json_at object, const char *key, double value)
{
    put(object, key, figure(object.in, value));
}

void json_put_int(json_at object, const char *key, int value)
{
    put(object, key, figure(object.in, value));
}

void json_put_word(json_at object, const char *key, const char *word)
{
    put(object, key, word ? clean_word(object.in, word) : make(object.in, cJSON_NULL));
}

void json_put_lent(json_at object, const char *key, const char *word)
{
    put(object, key, word ? make_text(object.in, cJSON_String, word) : make(object.in, cJSON_NULL));
}

void json_put_bool(json_at object, const char *key, bool value)
{
    put(object, key, make(object.in, value ? cJSON_True : cJSON_False));
}

void json_put_null(json_at object, const char *key)
{
    put(object, key, make(object.in, cJSON_NULL));
}

json_at json_put_object(json_at object, const char *key)
{
    return put(object, key, make(object.in, cJSON_Object));
}

json_at json_put_array(json_at object, const char *key)
{
    return put(object, key, make(object.in, cJSON_Array));
}

/* Writes a figure, or null. Returned: where what follows it begins. */
static char *write_value(char *at, double value)
{
    if (isfinite(value)) {
        return at + sil_number_write_measured(at, value);
    }
    memcpy(at, "null", 4);
    return at + 4;
}

/* Keeps what was written from the beginning of the room up to an end. */
static cJSON *keep_raw(json *j, char *text, char *end)
{
    *end = '\0';
    keep(j, (size_t)(end - text) + 1);
    return make_text(j, cJSON_Raw, text);
}

static cJSON *numbers_of(json *j, const double *values, int count)
{
    char *text = room(j, (size_t)count * (SIL_NUMBER_FULL_MAX + 1) + 3), *at = text;
    if (!text) {
        return NULL;
    }
    *at++ = '[';
    for (int k = 0; k < count; k++) {
        at = write_value(at, values[k]);
        *at++ = ',';
    }
    at -= count > 0; /* the last comma */
    *at++ = ']';
    return keep_raw(j, text, at);
}

void json_put_numbers(json_at object, const char *key, const double *values, int count)
{
    put(object, key, numbers_of(object.in, values, count));
}

static cJSON *named_of(json *j, const json_named *members, int count)
{
    size_t most = 3;
    for (int k = 0; k < count; k++) {
        most += strlen(members[k].name) + 4 + SIL_NUMBER_FULL_MAX;
    }
    char *text = room(j, most), *at = text;
    if (!text) {
        return NULL;
    }
    for (int k = 0; k < count; k++) {
        size_t length = strlen(members[k].name);
        *at++ = k > 0 ? ',' : '{';
        *at++ = '"';
        memcpy(at, members[k].name, length);
        at += length;
        *at++ = '"';
        *at++ = ':';
        at = write_value(at, members[k].value);
    }
    *at++ = '}';
    return keep_raw(j, text, at);
}

void json_put_named(json_at object, const char *key, const json_named *members, int count)
{
    put(object, key, named_of(object.in, members, count));
}

void json_add_named(json_at array, const json_named *members, int count)
{
    add(array, named_of(array.in, members, count));
}

void json_add_int(json_at array, int value)
{
    add(array, figure(array.in, value));
}

void json_add_word(json_at array, const char *word)
{
    add(array, clean_word(array.in, word));
}

json_at json_add_object(json_at array)
{
    return add(array, make(array.in, cJSON_Object));
}

json_at json_add_array(json_at array)
{
    return add(array, make(array.in, cJSON_Array));
}
