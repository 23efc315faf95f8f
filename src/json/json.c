/* SPDX-License-Identifier: MIT */
#include "json.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include <cjson/cJSON.h>
#include <sillet/core/units.h>

/* Figures are written here and lent to cJSON, which would otherwise allocate a block for each. */
struct json_leaf {
    json_leaf *before;
    size_t used;
    char text[1 << 14];
};

/* Finds room on a leaf; NULL if memory ran out. lend() then keeps what was written there. */
static char *room(json *j, size_t size)
{
    if (!j->leaf || j->leaf->used + size > sizeof j->leaf->text) {
        json_leaf *next = malloc(sizeof *next);
        if (!next) {
            return NULL;
        }
        next->before = j->leaf;
        next->used = 0;
        j->leaf = next;
    }
    return j->leaf->text + j->leaf->used;
}

/* Makes an item of the text written in the room, which is printed as it is. */
static cJSON *lend(json *j, char *text, size_t length)
{
    cJSON *item = cJSON_CreateStringReference(text);
    if (item) {
        item->type = cJSON_Raw | cJSON_IsReference;
        j->leaf->used += length + 1;
    }
    return item;
}

static json_at put(json_at object, const char *key, cJSON *item)
{
    json *j = object.in;
    if (!item || !cJSON_AddItemToObjectCS(object.item, key, item)) {
        j->failed = true;
        cJSON_Delete(item);
    }
    return (json_at){j, j->failed ? NULL : item};
}

static json_at add(json_at array, cJSON *item)
{
    json *j = array.in;
    if (!item || !cJSON_AddItemToArray(array.item, item)) {
        j->failed = true;
        cJSON_Delete(item);
    }
    return (json_at){j, j->failed ? NULL : item};
}

/* Writes a figure with our own code, because cJSON prints a double, reads it back and prints it
 * again. */
static cJSON *figure(json *j, double value)
{
    if (!isfinite(value)) {
        return cJSON_CreateNull();
    }
    char *digits = room(j, SIL_NUMBER_FULL_MAX);
    return digits ? lend(j, digits, sil_number_write_full(digits, value)) : NULL;
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

static json_at begin(json *j, cJSON *root)
{
    j->root = root;
    j->failed = !root;
    return (json_at){j, root};
}

json_at json_object(json *j)
{
    return begin(j, cJSON_CreateObject());
}

json_at json_array(json *j)
{
    return begin(j, cJSON_CreateArray());
}

void json_drop(json *j)
{
    cJSON_Delete(j->root);
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
    put(object, key, word ? clean_word(word) : cJSON_CreateNull());
}

void json_put_lent(json_at object, const char *key, const char *word)
{
    put(object, key, word ? cJSON_CreateStringReference(word) : cJSON_CreateNull());
}

void json_put_bool(json_at object, const char *key, bool value)
{
    put(object, key, cJSON_CreateBool(value));
}

void json_put_null(json_at object, const char *key)
{
    put(object, key, cJSON_CreateNull());
}

json_at json_put_object(json_at object, const char *key)
{
    return put(object, key, cJSON_CreateObject());
}

json_at json_put_array(json_at object, const char *key)
{
    return put(object, key, cJSON_CreateArray());
}

void json_put_numbers(json_at object, const char *key, const double *values, int count)
{
    char *text = room(object.in, (size_t)count * (SIL_NUMBER_FULL_MAX + 1) + 3);
    size_t length = 0;
    if (!text) {
        object.in->failed = true;
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
    put(object, key, lend(object.in, text, length));
}

void json_add_int(json_at array, int value)
{
    add(array, figure(array.in, value));
}

void json_add_word(json_at array, const char *word)
{
    add(array, clean_word(word));
}

json_at json_add_object(json_at array)
{
    return add(array, cJSON_CreateObject());
}

json_at json_add_array(json_at array)
{
    return add(array, cJSON_CreateArray());
}
