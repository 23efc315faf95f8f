/* SPDX-License-Identifier: MIT */
/* A JSON document put together key by key. Once memory runs out the whole is given up: every
 * further call does nothing, and the end says so. */
#ifndef SILLET_JSON_H
#define SILLET_JSON_H

#include <stdbool.h>
#include <stddef.h>

struct cJSON;
typedef struct json_leaf json_leaf; /* figures of the document */

/* A document in the making; begin with {0}. */
typedef struct json {
    struct cJSON *root;
    json_leaf *leaf; /* the newest */
    bool failed;
} json;

/* An object or an array of a document. */
typedef struct json_at {
    json *in;
    struct cJSON *item;
} json_at;

/* json_object, json_array: the whole document, one of the two. */
json_at json_object(json *j);
json_at json_array(json *j);

/* json_end: the text without blanks, to be freed by whoever takes it; NULL where memory ran out.
 * json_drop: gives the document up. */
char *json_end(json *j);
void json_drop(json *j);

/* Behind the last key of an object. A number that is not known is null, and so is a word that is
 * NULL. Bytes of a word that are no UTF-8 come out as U+FFFD. Keys are fixed words. */
void json_put_number(json_at object, const char *key, double value);
void json_put_int(json_at object, const char *key, int value);
void json_put_word(json_at object, const char *key, const char *word);
void json_put_bool(json_at object, const char *key, bool value);
void json_put_null(json_at object, const char *key);
void json_put_numbers(json_at object, const char *key, const double *values, int count);
json_at json_put_object(json_at object, const char *key);
json_at json_put_array(json_at object, const char *key);

/* Behind the last item of an array. */
void json_add_int(json_at array, int value);
void json_add_word(json_at array, const char *word);
json_at json_add_object(json_at array);
json_at json_add_array(json_at array);

#endif
