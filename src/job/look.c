/* SPDX-License-Identifier: MIT */
/* Looks up a field: its words, its row, and its value in a job. */
#include <string.h>

#include "fields.h"
#include "words.h"

const job_words *job_words_of(const char *path)
{
    for (int i = 0; i < job_words_count; i++) {
        if (strcmp(job_words_table[i].path, path) == 0) {
            return &job_words_table[i];
        }
    }
    return NULL;
}

/* The row of the first key in a path, or NULL; the path is moved past that key. */
static const job_field *take_key(const job_table *table, const char **path)
{
    size_t length = strcspn(*path, ".");
    const job_field *row = job_table_find(table, *path, length);
    *path += length + ((*path)[length] == '.');
    return row;
}

/* The row of a path. */
static const job_field *row_of(const char *path)
{
    static const job_field none = {"", JOB_AS_PART, .at = JOB_NOT_KEPT};
    const job_field *row = &none;
    for (const job_table *table = &job_table_all; table && *path != '\0'; table = row->of) {
        row = take_key(table, &path);
        if (!row) {
            return &none;
        }
    }
    return row;
}

/* The struct that has the field of a path. NULL for a reading that does not exist, and for fields
 * inside the rows of any other list. */
static const void *holder_of(const char *path, const sil_job *job, int reading)
{
    const void *holder = job;
    const job_table *table = &job_table_all;
    while (table && holder && strchr(path, '.')) {
        const job_field *row = take_key(table, &path);
        if (!row) {
            return NULL;
        }
        bool within = row->kind == JOB_AS_PART || row->kind == JOB_AS_SCALE ||
                      row->kind == JOB_AS_RELIEF || row->kind == JOB_AS_ATTACK;
        bool read = row->kind == JOB_AS_READINGS && reading >= 0 && reading < job->reading_count;
        holder = read ? &job->readings[reading] : within ? job_field_seen(row, holder) : NULL;
        table = row->of;
    }
    return holder;
}

static sil_field_kind kind_of(job_kind kind)
{
    switch (kind) {
    case JOB_AS_FIGURE:
    case JOB_AS_SCALE:
    case JOB_AS_RELIEF_GAP:
    case JOB_AS_TRAVEL:
        return SIL_FIELD_FIGURE;
    case JOB_AS_PER_STRING:
    case JOB_AS_FIRST:
        return SIL_FIELD_EACH;
    case JOB_AS_PAIR:
    case JOB_AS_OUTER:
    case JOB_AS_RADIUS:
        return SIL_FIELD_ENDS;
    case JOB_AS_BAND:
        return SIL_FIELD_TARGET;
    case JOB_AS_BANDS:
        return SIL_FIELD_TARGETS;
    case JOB_AS_COUNT:
    case JOB_AS_INDEX:
    case JOB_AS_FORMAT:
        return SIL_FIELD_COUNT;
    case JOB_AS_WORD:
    case JOB_AS_FLAG:
        return SIL_FIELD_CHOICE;
    case JOB_AS_TEXT:
    case JOB_AS_NOTE:
    case JOB_AS_STYLE:
        return SIL_FIELD_TEXT;
    case JOB_AS_FILES:
    case JOB_AS_SPAN:
    case JOB_AS_STRINGS:
    case JOB_AS_READINGS:
    case JOB_AS_CROWNS:
    case JOB_AS_BUZZ:
    case JOB_AS_MAKE:
    case JOB_AS_MARKED:
        return SIL_FIELD_LIST;
    case JOB_AS_PART:
    case JOB_AS_RELIEF:
    case JOB_AS_ATTACK:
    case JOB_AS_ATTACKS:
    case JOB_AS_STYLES:
    case JOB_AS_MATERIALS:
    case JOB_AS_PLAUSIBLE:
    case JOB_KINDS:
        break;
    }
    return SIL_FIELD_PART;
}

static bool has_figures(sil_field_kind kind)
{
    return kind == SIL_FIELD_FIGURE || kind == SIL_FIELD_ENDS || kind == SIL_FIELD_EACH ||
           kind == SIL_FIELD_TARGET || kind == SIL_FIELD_TARGETS;
}

int sil_field_count(void)
{
    return job_words_count;
}

sil_field sil_field_at(int order)
{
    const job_words *words = &job_words_table[order];
    const job_field *row = row_of(words->path);
    sil_field field = {.path = words->path,
                       .label = words->label,
                       .hint = words->hint,
                       .kind = kind_of(row->kind),
                       .measure = row->measure,
                       .unit = "",
                       .asked = words->asked,
                       .order = order,
                       .choices = words->choices};
    if (row->kind == JOB_AS_PAIR || row->kind == JOB_AS_OUTER) {
        field.ends[0] = "treble";
        field.ends[1] = "bass";
    } else if (row->kind == JOB_AS_RADIUS) {
        field.ends[0] = "nut";
        field.ends[1] = "end";
    }
    if (has_figures(field.kind) || row->kind == JOB_AS_FILES) {
        field.unit = row->measure == SIL_LENGTH ? "length" : sil_measure_unit(row->measure);
    }
    while (words->choices && words->choices[field.choice_count].word) {
        field.choice_count++;
    }
    return field;
}

bool sil_field_find(const char *path, sil_field *field)
{
    const job_words *words = job_words_of(path);
    if (words) {
        *field = sil_field_at((int)(words - job_words_table));
    }
    return words;
}

bool sil_field_within(const char *path, const char *part)
{
    size_t length = strlen(part);
    return strncmp(path, part, length) == 0 && path[length] == '.' &&
           !strchr(path + length + 1, '.');
}

/* The index of a value among the choices that are shown. */
static int choice_of(const sil_field *field, const job_word *words, int value)
{
    while (words->text && words->value != value) {
        words++;
    }
    for (int i = 0; words->text && i < field->choice_count; i++) {
        if (strcmp(field->choices[i].word, words->text) == 0) {
            return i;
        }
    }
    return -1;
}

/* last: the index of the last string, for a field of which a sheet shows the outer strings. */
static bool read_figures(const job_field *row, const void *seen, int last, sil_field_value *value)
{
    bool any = false;
    for (int i = 0; i < value->count; i++) {
        int at = row->kind == JOB_AS_OUTER && i > 0 ? last : i;
        value->figure[i] = ((const double *)seen)[at] / job_field_factor(row);
        any = any || sil_known(value->figure[i]);
    }
    return any;
}

/* For a count whose range begins above 0, 0 means "not given". For a string, which is kept from 0,
 * -1 does. */
static bool read_count(const job_field *row, const void *seen, sil_field_value *value)
{
    int count = *(const int *)seen + (row->kind == JOB_AS_INDEX);
    bool given = count > 0 || row->low <= 0.0;
    value->figure[0] = given ? count : SIL_UNKNOWN;
    return given;
}

bool sil_field_read(const sil_field *field, const sil_job *job, int reading, sil_field_value *value)
{
    const job_field *row = row_of(field->path);
    const void *holder = holder_of(field->path, job, reading);
    *value = (sil_field_value){.choice = -1};
    bool one = field->kind == SIL_FIELD_FIGURE || field->kind == SIL_FIELD_COUNT;
    value->count = one                             ? 1
                   : field->kind == SIL_FIELD_ENDS ? 2
                   : field->kind == SIL_FIELD_EACH ? job->string_count
                                                   : 0;
    for (int i = 0; i < value->count; i++) {
        value->figure[i] = SIL_UNKNOWN;
    }
    if (!holder || row->at == JOB_NOT_KEPT) {
        return false;
    }
    const void *seen = job_field_seen(row, holder);
    switch (field->kind) {
    case SIL_FIELD_FIGURE:
    case SIL_FIELD_ENDS:
    case SIL_FIELD_EACH:
        return read_figures(row, seen, job->string_count > 0 ? job->string_count - 1 : 0, value);
    case SIL_FIELD_COUNT:
        return read_count(row, seen, value);
    case SIL_FIELD_CHOICE:
        value->choice = choice_of(
            field, row->words, row->kind == JOB_AS_FLAG ? *(const bool *)seen : *(const int *)seen);
        return value->choice >= 0;
    case SIL_FIELD_TEXT:
        value->text = *(const char *const *)seen;
        return value->text;
    default:
        return false;
    }
}
