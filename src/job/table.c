/* SPDX-License-Identifier: MIT */
/* Finding and clearing fields by their rows. */
#include "fields.h"

#include <string.h>

const job_field *job_table_find(const job_table *table, const char *key, size_t length)
{
    for (int i = 0; i < table->count; i++) {
        const char *name = table->fields[i].key;
        if (name[0] == key[0] && strncmp(name, key, length) == 0 && name[length] == '\0') {
            return &table->fields[i];
        }
    }
    return NULL;
}

const job_field *job_field_find(const char *path)
{
    const job_field *field = NULL;
    for (const job_table *table = &job_table_all; table; table = field ? field->of : NULL) {
        size_t length = strcspn(path, ".");
        field = job_table_find(table, path, length);
        path += length;
        if (*path == '\0') {
            break;
        }
        path++;
    }
    if (field && field->kind == JOB_AS_RELIEF && field->of && *path == '\0') {
        field = &field->of->fields[0];
    }
    return field && *path == '\0' && field->high > 0.0 && field->kind <= JOB_AS_FILES ? field
                                                                                      : NULL;
}

double job_field_factor(const job_field *field)
{
    return field->measure == SIL_UNIT_MASS ? 0.001 : 1.0;
}

void *job_field_place(const job_field *field, void *base)
{
    return (char *)base + field->at;
}

const void *job_field_seen(const job_field *field, const void *base)
{
    return (const char *)base + field->at;
}

static int figures_in(job_kind kind)
{
    switch (kind) {
    case JOB_AS_FIGURE:
    case JOB_AS_RELIEF_GAP:
        return 1;
    case JOB_AS_SCALE:
    case JOB_AS_PAIR:
    case JOB_AS_TRAVEL:
    case JOB_AS_RADIUS:
        return 2;
    case JOB_AS_PER_STRING:
    case JOB_AS_OUTER:
    case JOB_AS_FIRST:
        return SIL_STRINGS_MAX;
    case JOB_AS_BAND:
        return 3;
    case JOB_AS_BANDS:
        return 3 * SIL_STRINGS_MAX;
    default:
        return 0;
    }
}

bool job_counts_from_nought(const job_field *field)
{
    return field->kind == JOB_AS_COUNT && field->required && field->low == 0.0;
}

void job_table_clear(const job_table *table, void *base)
{
    for (int i = 0; i < table->count; i++) {
        const job_field *field = &table->fields[i];
        void *place = job_field_place(field, base);
        bool within = field->kind == JOB_AS_PART || field->kind == JOB_AS_RELIEF ||
                      field->kind == JOB_AS_ATTACK;
        if (within) {
            job_table_clear(field->of, place);
        }
        if (job_counts_from_nought(field)) {
            *(int *)place = -1;
        }
        double *figure = place;
        for (int k = figures_in(field->kind); k > 0; k--) {
            *figure++ = SIL_UNKNOWN;
        }
    }
}
