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

static void add_field(json_at list, const sil_field *field)
{
    json_at row = json_add_object(list);
    json_put_word(row, "path", field->path);
    json_put_word(row, "label", field->label);
    json_put_word(row, "hint", field->hint);
    json_put_word(row, "kind", kind_word(field->kind));
    json_put_word(row, "unit", field->unit);
    json_at choices = json_put_array(row, "choices");
    for (int i = 0; i < field->choice_count; i++) {
        json_at pair = json_add_array(choices);
        json_add_word(pair, field->choices[i].word);
        json_add_word(pair, field->choices[i].shown);
    }
    json_put_bool(row, "asked", field->asked);
    json_put_int(row, "order", field->order);
}

void web_fields(const web_site *site, const web_target *target, const web_request *request,
                web_reply *reply)
{
    (void)site;
    (void)target;
    (void)request;
    json j = {0};
    json_at list = json_array(&j);
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        add_field(list, &field);
    }
    web_give_json(reply, 200, &j);
}

void web_put_applies(json_at root, const sil_job *job)
{
    if (!job) {
        json_put_null(root, "applies");
        return;
    }
    json_at list = json_put_array(root, "applies");
    for (int k = 0; k < sil_field_count(); k++) {
        const char *path = sil_field_at(k).path;
        if (sil_field_applies(path, job)) {
            json_add_word(list, path);
        }
    }
}
