/* SPDX-License-Identifier: MIT */
#include <string.h>

#include "writer.h"

void put(writer *w, cJSON *object, const char *key, cJSON *item)
{
    if (!item || !cJSON_AddItemToObjectCS(object, key, item)) {
        w->failed = true;
        cJSON_Delete(item);
    }
}

/* Our own figures: cJSON would print a double, read it back and print it again. */
static cJSON *figure(double value)
{
    char digits[SIL_NUMBER_FULL_MAX];
    if (!isfinite(value)) {
        return cJSON_CreateNull();
    }
    sil_number_write_full(digits, value);
    return cJSON_CreateRaw(digits);
}

void put_number(writer *w, cJSON *object, const char *key, double value)
{
    put(w, object, key, figure(value));
}

void put_int(writer *w, cJSON *object, const char *key, int value)
{
    put(w, object, key, cJSON_CreateNumber(value));
}

void put_word(writer *w, cJSON *object, const char *key, const char *word)
{
    put(w, object, key, word ? cJSON_CreateString(word) : cJSON_CreateNull());
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

void add(writer *w, cJSON *array, cJSON *item)
{
    if (!item || !cJSON_AddItemToArray(array, item)) {
        w->failed = true;
        cJSON_Delete(item);
    }
}

void put_numbers(writer *w, cJSON *object, const char *key, const double *values, int count)
{
    char text[SIL_FRETS_MAX * (SIL_NUMBER_FULL_MAX + 1) + 2];
    size_t length = 0;
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
    put(w, object, key, cJSON_CreateRaw(text));
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
