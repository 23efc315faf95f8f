/* SPDX-License-Identifier: MIT */
/* A JSON document that is built key by key. If memory runs out, the whole document is given up:
 * all further calls do nothing, and json_end reports it. */
#ifndef SILLET_JSON_H
#define SILLET_JSON_H

#include <stdbool.h>
#include <stddef.h>

struct cJSON;
typedef struct json_leaf json_leaf; /* holds figures of the document */

/* A document that is being built; start with {0}. */
typedef struct json {
    struct cJSON *root;
    json_leaf *leaf; /* the newest */
    bool failed;
} json;

/* A number and its key, which is a constant of letters, digits and underscores. */
typedef struct json_named {
    const char *name;
    double value;
} json_named;

/* An object or an array of a document. */
typedef struct json_at {
    json *in;
    struct cJSON *item;
} json_at;

/* json_object, json_array: starts the document as an object or as an array. */
json_at json_object(json *j);
json_at json_array(json *j);

/* json_end: the text of the document without white space, which the caller frees; NULL if memory
 * ran out.
 * json_drop: gives the document up.
 */
char *json_end(json *j);
void json_drop(json *j);

/* These add a key at the end of an object. An unknown number becomes null, and so does a word
 * that is NULL. Bytes of a word that are not UTF-8 become U+FFFD. A key must be a constant
 * string. */
void json_put_number(json_at object, const char *key, double value);
void json_put_int(json_at object, const char *key, int value);
void json_put_word(json_at object, const char *key, const char *word);

/* json_put_lent: a word of our own that outlives the JSON, not copied; null if NULL. */
void json_put_lent(json_at object, const char *key, const char *word);
void json_put_bool(json_at object, const char *key, bool value);
void json_put_null(json_at object, const char *key);
void json_put_numbers(json_at object, const char *key, const double *values, int count);

/* json_put_named: an object of one number or more and nothing else, which costs less as a whole. */
void json_put_named(json_at object, const char *key, const json_named *members, int count);
json_at json_put_object(json_at object, const char *key);
json_at json_put_array(json_at object, const char *key);

/* These add an item at the end of an array. */
void json_add_int(json_at array, int value);
void json_add_word(json_at array, const char *word);
void json_add_named(json_at array, const json_named *members, int count);
json_at json_add_object(json_at array);
json_at json_add_array(json_at array);

#endif
