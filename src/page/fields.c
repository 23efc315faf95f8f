/* SPDX-License-Identifier: MIT */
/* The fields of a sheet in words: what a form is made of. */
#include "reply.h"

/* As a form needs it: which control takes the value. */
static const char *kind_word(sil_field_kind kind)
{
    switch (kind) {
    case SIL_FIELD_PART:
        return "part";
    case SIL_FIELD_FIGURE:
        return "figure";
    case SIL_FIELD_ENDS:
        return "ends";
    case SIL_FIELD_EACH:
        return "each";
    case SIL_FIELD_COUNT:
        return "count";
    case SIL_FIELD_CHOICE:
        return "choice";
    case SIL_FIELD_TEXT:
        return "text";
    case SIL_FIELD_TARGET:
        return "target";
    case SIL_FIELD_TARGETS:
        return "targets";
    case SIL_FIELD_LIST:
        break;
    }
    return "list";
}

/* Puts an item into a list; one that is NULL, or cannot be put, is false. */
static bool add_item(cJSON *list, cJSON *item)
{
    if (item && cJSON_AddItemToArray(list, item)) {
        return true;
    }
    cJSON_Delete(item);
    return false;
}

static cJSON *choices_of(const sil_field *field)
{
    cJSON *list = cJSON_CreateArray();
    for (int i = 0; list && i < field->choice_count; i++) {
        const char *pair[] = {field->choices[i].word, field->choices[i].shown};
        if (!add_item(list, cJSON_CreateStringArray(pair, 2))) {
            cJSON_Delete(list);
            list = NULL;
        }
    }
    return list;
}

static cJSON *row_of(const sil_field *field)
{
    cJSON *row = cJSON_CreateObject();
    cJSON *choices = choices_of(field);
    bool whole = row && choices && cJSON_AddStringToObject(row, "path", field->path) &&
                 cJSON_AddStringToObject(row, "label", field->label) &&
                 cJSON_AddStringToObject(row, "hint", field->hint) &&
                 cJSON_AddStringToObject(row, "kind", kind_word(field->kind)) &&
                 cJSON_AddStringToObject(row, "unit", field->unit);
    if (!whole || !cJSON_AddItemToObject(row, "choices", choices)) {
        cJSON_Delete(choices);
        whole = false;
    }
    whole = whole && cJSON_AddBoolToObject(row, "asked", field->asked) &&
            cJSON_AddNumberToObject(row, "order", field->order);
    if (!whole) {
        cJSON_Delete(row);
        row = NULL;
    }
    return row;
}

void web_fields(const web_site *site, const web_target *target, const web_request *request,
                web_reply *reply)
{
    cJSON *list = cJSON_CreateArray();
    (void)site;
    (void)target;
    (void)request;
    for (int k = 0; list && k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        if (!add_item(list, row_of(&field))) {
            cJSON_Delete(list);
            list = NULL;
        }
    }
    web_give_json(reply, 200, list);
}

cJSON *web_applies(const sil_job *job)
{
    if (!job) {
        return cJSON_CreateNull();
    }
    cJSON *list = cJSON_CreateArray();
    for (int k = 0; list && k < sil_field_count(); k++) {
        const char *path = sil_field_at(k).path;
        if (sil_field_applies(path, job) && !add_item(list, cJSON_CreateString(path))) {
            cJSON_Delete(list);
            list = NULL;
        }
    }
    return list;
}
