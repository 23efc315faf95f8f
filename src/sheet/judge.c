/* SPDX-License-Identifier: MIT */
/* The check of a job knows only paths. Here each path is turned into the node it is about. */
#include "judge.h"

#include <stdlib.h>
#include <string.h>

#include "../job/check.h"

typedef struct judge {
    sil_sheet *sheet;
    sheet_node *root;
    int strings;
} judge;

/* Where a path leads in a tree: its node, or the last one on the way to it. */
typedef struct spot {
    sheet_node *node;    /* the last node that is there */
    const char *missing; /* the first part of the path that is not there, or NULL */
    bool told;           /* it has been reported as wrong already */
} spot;

/* The number at the start of a path. The check writes these paths, so it is a plain index. */
static int number_at(const char *path)
{
    return (int)strtol(path, NULL, 10);
}

static sheet_node *item(const sheet_node *list, int index)
{
    sheet_node *node = list->first;
    while (node && index-- > 0) {
        node = node->next;
    }
    return node;
}

/* The value of one string. If the sheet gives treble and bass, those are the first and the last
 * string. */
static sheet_node *string_value(const judge *at, sheet_node *node, int index)
{
    const char *end = index == 0 ? "treble" : index == at->strings - 1 ? "bass" : "";
    sheet_node *value =
        node->shape == SHEET_MAPPING ? sheet_node_find(node, end, strlen(end)) : NULL;
    return value ? value : node;
}

/* The value is given by treble and bass, and one of these has been reported as wrong already. */
static bool ends_told(const sheet_node *node)
{
    for (const sheet_node *child = node->first; child; child = child->next) {
        if (child->told || ends_told(child)) {
            return true;
        }
    }
    return false;
}

static spot find_spot(const judge *at, const char *path)
{
    spot here = {at->root, NULL, false};
    while (*path) {
        size_t length = strcspn(path, ".");
        bool number = *path >= '0' && *path <= '9';
        sheet_node *next = NULL;
        if (number && here.node->shape != SHEET_SEQUENCE) {
            next = string_value(at, here.node, number_at(path));
            here.told = here.told || (next == here.node && ends_told(next));
        } else if (number) {
            next = item(here.node, number_at(path));
        } else if (here.node->shape == SHEET_MAPPING) {
            next = sheet_node_find(here.node, path, length);
        } else if (here.node->shape == SHEET_SCALAR && here.node->given) {
            next = here.node; /* given as one value: relief for relief.gap, a target for its aim */
        }
        if (!next) {
            here.missing = path;
            break;
        }
        here.node = next;
        here.told = here.told || (next->shape == SHEET_MAPPING && next->told > SIL_ERROR);
        path += length + (path[length] == '.');
    }
    here.told = here.told || here.node->told > SIL_ERROR;
    return here;
}

/* A path as a person reads it, down to its first missing part: "strings 2, gauge". */
static text spoken_of(const char *path, const char *missing)
{
    text spoken = {0};
    size_t end = missing ? (size_t)(missing - path) + strcspn(missing, ".") : strlen(path);
    bool after_number = false;
    for (size_t from = 0; from < end;) {
        size_t length = strcspn(path + from, ".");
        bool number = path[from] >= '0' && path[from] <= '9';
        text_put(&spoken, from == 0 ? "" : number ? " " : after_number ? ", " : ".");
        if (number) {
            text_add(&spoken, "%d", number_at(path + from) + 1);
        } else {
            text_put_bytes(&spoken, path + from, length);
        }
        from += length + 1;
        after_number = number;
    }
    return spoken;
}

/* The keys that a missing part must have, as " (width, edge)"; empty for a single value. */
static text required_of(const char *path, const char *missing)
{
    text keys = {0};
    const job_field *part = NULL;
    for (const job_table *table = &job_table_all; table; path += strcspn(path, ".") + 1) {
        part = job_table_find(table, path, strcspn(path, "."));
        table = part && path != missing ? part->of : NULL;
    }
    for (int i = 0; part && part->of && i < part->of->count; i++) {
        const job_field *field = &part->of->fields[i];
        if (field->required) {
            text_add(&keys, "%s%s", keys.length > 0 ? ", " : " (", field->key);
        }
    }
    text_put(&keys, keys.length > 0 ? ")" : "");
    return keys;
}

/* A profile that has what is missing in a sheet like this one. */
static const char *likely_profile(const sil_job *job)
{
    static const char *const by_count[SIL_STRINGS_MAX + 1] = {[4] = "electric-bass",
                                                              [5] = "five-string-bass",
                                                              [7] = "seven-string",
                                                              [8] = "eight-string",
                                                              [12] = "twelve-string"};
    bool paired = job->string_count > 1 && job->strings[1].course > 0 &&
                  job->strings[1].course == job->strings[0].course;
    if (job->string_count > 0 && job->strings[0].material == SIL_PLAIN_NYLON) {
        return job->string_count == 4 ? "ukulele" : "nylon-string-classical";
    }
    if (job->string_count == 8 && paired) {
        return "mandolin";
    }
    if (by_count[job->string_count]) {
        return by_count[job->string_count];
    }
    return job->saddle.kind == SIL_SADDLE_INDIVIDUAL ? "electric-guitar" : "steel-string-acoustic";
}

/* Marks a missing part as reported, so that the values inside it are not reported as well. */
static void mark_missing(judge *at, sheet_node *up, const char *missing)
{
    sheet_node *gap = sheet_take(at->sheet, sizeof *gap);
    if (gap && up->shape == SHEET_MAPPING) {
        gap->source = up->source;
        gap->text = "";
        gap->key_length = strcspn(missing, ".");
        gap->key = sheet_text(at->sheet, missing, gap->key_length);
        gap->told = 1 + SIL_ERROR;
        if (gap->key) {
            sheet_node_add(up, gap);
        }
    }
}

static void tell_missing(judge *at, const char *path, const spot *here)
{
    const sil_job *job = &at->sheet->job;
    text what = spoken_of(path, here->missing), parts = {0};
    if (here->missing) {
        parts = required_of(path, here->missing);
    }
    const char *spoken = text_read(&what), *keys = text_read(&parts);
    sheet_mark mark = here->node->shape == SHEET_SCALAR ? here->node->key_at : here->node->at;
    bool listed = strpbrk(spoken, "0123456789") != NULL;
    if (listed) {
        sheet_tell_at(at->sheet, SIL_ERROR, here->node->source, mark, "%s is missing%s", spoken,
                      keys);
    } else if (job->profile) {
        sheet_tell_at(at->sheet, SIL_ERROR, here->node->source, mark,
                      "%s is missing%s: give it here; the profile has none", spoken, keys);
    } else {
        sheet_tell_at(at->sheet, SIL_ERROR, here->node->source, mark,
                      "%s is missing%s: give it here, or name a profile that has it (profile: %s)",
                      spoken, keys, likely_profile(job));
    }
    at->sheet->store.failed = at->sheet->store.failed || what.failed || parts.failed;
    text_free(&what);
    text_free(&parts);
    if (here->missing) {
        mark_missing(at, here->node, here->missing);
    } else {
        here->node->told = 1 + SIL_ERROR;
    }
}

static void hear(void *with, sil_severity severity, const char *path, const char *wanted)
{
    judge *at = with;
    const sil_sheet *sheet = at->sheet;
    if (sheet->told_count == SHEET_TOLD_MAX ||
        (wanted == job_missing && (sheet->sheet.cut || sheet->profile_lost))) {
        return; /* there are enough complaints, or it may be in the part that could not be read */
    }
    spot here = find_spot(at, path);
    if (here.told) {
        return;
    }
    if (wanted == job_missing) {
        tell_missing(at, path, &here);
    } else if (here.missing) {
        text spoken = spoken_of(path, NULL);
        at->sheet->store.failed = at->sheet->store.failed || spoken.failed;
        sheet_tell_at(at->sheet, severity, here.node->source, here.node->at, "%s: %s",
                      text_read(&spoken), wanted);
        text_free(&spoken);
    } else if (here.node->told <= (int)severity) {
        sheet_tell_value(at->sheet, severity, here.node, "%s", wanted);
        if (here.node->shape != SHEET_SCALAR) {
            here.node->told = 0; /* more may be wrong within it */
        }
    }
}

void sheet_judge_job(sil_sheet *sheet, sheet_node *root)
{
    judge at = {sheet, root, sheet->job.string_count};
    int errors = sil_job_check(&sheet->job, hear, &at);
    sheet->store.failed = sheet->store.failed || errors < 0;
    sheet->errors += errors; /* also those beyond the complaints kept */
}
