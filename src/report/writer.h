/* SPDX-License-Identifier: MIT */
/* Within the report: a JSON object put together key by key, by cJSON. Once memory runs out the
 * whole is given up: every further call does nothing, and `failed` says so at the end. */
#ifndef SILLET_REPORT_WRITER_H
#define SILLET_REPORT_WRITER_H

#include <cjson/cJSON.h>

#include <sillet/report.h>

#include "../plan/plan.h"

typedef struct leaf leaf; /* figures of the result */

typedef struct writer {
    const sil_plan *plan;
    sil_unit unit;
    bool failed;
    cJSON *root;
    leaf *leaf; /* the newest */
} writer;

cJSON *put_root(writer *w); /* the object that is the whole */
char *put_end(writer *w);   /* the text, to be freed by whoever takes it; NULL: failed */

void put_number(writer *w, cJSON *object, const char *key, double value); /* null if unknown */
void put_int(writer *w, cJSON *object, const char *key, int value);
void put_word(writer *w, cJSON *object, const char *key, const char *word); /* null if NULL */
void put_bool(writer *w, cJSON *object, const char *key, bool value);
void put_null(writer *w, cJSON *object, const char *key);
void put_numbers(writer *w, cJSON *object, const char *key, const double *values,
                 int count); /* null where unknown */
cJSON *put_object(writer *w, cJSON *object, const char *key);
cJSON *put_array(writer *w, cJSON *object, const char *key);

/* Behind the last of an array. */
void add_word(writer *w, cJSON *array, const char *word);
cJSON *add_row(writer *w, cJSON *array);
cJSON *add_string_row(writer *w, cJSON *array, int string); /* its number first */

/* The rooms of the result that speak of sound: compensation, clearance, causes, lowest. */
void put_sound(writer *w, cJSON *root);

void put_visits(writer *w, cJSON *root);

#endif
