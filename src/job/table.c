/* SPDX-License-Identifier: MIT */
/* Finding and clearing fields by their rows. */
#include "fields.h"

#include <string.h>

const sil_field *sil_table_find(const sil_table *table, const char *key, size_t length)
{
    for (int i = 0; i < table->count; i++) {
        const char *name = table->fields[i].key;
        if (name[0] == key[0] && strncmp(name, key, length) == 0 && name[length] == '\0') {
            return &table->fields[i];
        }
    }
    return NULL;
}

const sil_field *sil_field_find(const char *path)
{
    const sil_field *field = NULL;
    for (const sil_table *table = &sil_job_table; table; table = field ? field->of : NULL) {
        size_t length = strcspn(path, ".");
        field = sil_table_find(table, path, length);
        path += length;
        if (*path == '\0') {
            break;
        }
        path++;
    }
    if (field && field->kind == SIL_AS_RELIEF && field->of && *path == '\0') {
        field = &field->of->fields[0];
    }
    return field && *path == '\0' && field->high > 0.0 && field->kind <= SIL_AS_FILES ? field
                                                                                      : NULL;
}

double sil_field_factor(const sil_field *field)
{
    return field->measure == SIL_UNIT_MASS ? 0.001 : 1.0;
}

void *sil_field_place(const sil_field *field, void *base)
{
    return (char *)base + field->at;
}

const void *sil_field_seen(const sil_field *field, const void *base)
{
    return (const char *)base + field->at;
}

static int figures_in(sil_kind kind)
{
    switch (kind) {
    case SIL_AS_FIGURE:
    case SIL_AS_RELIEF_GAP:
        return 1;
    case SIL_AS_SCALE:
    case SIL_AS_PAIR:
    case SIL_AS_RADIUS:
        return 2;
    case SIL_AS_PER_STRING:
    case SIL_AS_FIRST:
        return SIL_STRINGS_MAX;
    case SIL_AS_BAND:
        return 3;
    case SIL_AS_BANDS:
        return 3 * SIL_STRINGS_MAX;
    default:
        return 0;
    }
}

void sil_table_clear(const sil_table *table, void *base)
{
    for (int i = 0; i < table->count; i++) {
        const sil_field *field = &table->fields[i];
        void *place = sil_field_place(field, base);
        bool within = field->kind == SIL_AS_PART || field->kind == SIL_AS_RELIEF ||
                      field->kind == SIL_AS_ATTACK;
        if (within) {
            sil_table_clear(field->of, place);
        }
        double *figure = place;
        for (int k = figures_in(field->kind); k > 0; k--) {
            *figure++ = SIL_UNKNOWN;
        }
    }
}
