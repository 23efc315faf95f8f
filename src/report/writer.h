/* SPDX-License-Identifier: MIT */
/* Within the report: a JSON text written as it comes, key by key. Whoever puts something into an
 * object or array has finished with all that was opened inside it. Once memory runs out every
 * further call does nothing, and `failed` says so at the end. */
#ifndef SILLET_REPORT_WRITER_H
#define SILLET_REPORT_WRITER_H

#include <sillet/report.h>

/* An object or array being written. */
typedef struct json {
    char closing;
    bool filled;
} json;

enum { WRITER_DEPTH = 16 };

typedef struct writer {
    const sil_plan *plan;
    sil_unit unit;
    bool failed;
    char *text;
    size_t length, room;
    json open[WRITER_DEPTH]; /* from the outermost in */
    int depth;
} writer;

json *put_root(writer *w); /* the object that is the whole */
char *put_end(writer *w);  /* the text, to be freed by whoever takes it; NULL: failed */

void put_number(writer *w, json *object, const char *key, double value); /* null if unknown */
void put_int(writer *w, json *object, const char *key, int value);
void put_word(writer *w, json *object, const char *key, const char *word); /* null if NULL */
void put_bool(writer *w, json *object, const char *key, bool value);
void put_null(writer *w, json *object, const char *key);
void put_numbers(writer *w, json *object, const char *key, const double *values,
                 int count); /* null where unknown */
json *put_object(writer *w, json *object, const char *key);
json *put_array(writer *w, json *object, const char *key);

/* Behind the last of an array. */
void add_word(writer *w, json *array, const char *word);
json *add_row(writer *w, json *array);
json *add_string_row(writer *w, json *array, int string); /* its number first */

/* The rooms of the result that speak of sound: compensation, clearance, causes, lowest. */
void put_sound(writer *w, json *root);

void put_visits(writer *w, json *root);

#endif
