/* SPDX-License-Identifier: MIT */
/* A sheet sent by the page: its entries, its plan, its drawings. */
#include <stdlib.h>
#include <string.h>

#include "reply.h"

static bool put_text(cJSON *object, const char *key, const char *text)
{
    return cJSON_AddStringToObject(object, key, text) != NULL;
}

static bool put_place(cJSON *object, const sil_complaint *complaint)
{
    return cJSON_AddNumberToObject(object, "line", complaint->line) &&
           cJSON_AddNumberToObject(object, "column", complaint->column);
}

static bool add_complaint(cJSON *array, const sil_sheet *sheet, int index)
{
    char path[SIL_PATH_MAX];
    char shown[2048];
    cJSON *row = cJSON_CreateObject();
    if (!cJSON_AddItemToArray(array, row)) {
        cJSON_Delete(row);
        return false;
    }
    sil_complaint complaint = sil_sheet_complaint(sheet, index);
    sil_sheet_complaint_path(sheet, index, path);
    sil_complaint_write(&complaint, shown, sizeof shown);
    return put_text(row, "severity", complaint.severity == SIL_ERROR ? "error" : "warning") &&
           put_text(row, "path", path) && put_place(row, &complaint) &&
           put_text(row, "text", complaint.text) && put_text(row, "shown", shown);
}

static cJSON *complaints_of(const sil_sheet *sheet)
{
    cJSON *array = cJSON_CreateArray();
    bool whole = array != NULL;
    for (int k = 0; whole && k < sil_sheet_complaint_count(sheet); k++) {
        whole = add_complaint(array, sheet, k);
    }
    if (!whole) {
        cJSON_Delete(array);
        return NULL;
    }
    return array;
}

/* Puts an item under a key; one that is NULL, or cannot be put, is false. */
static bool put_item(cJSON *object, const char *key, cJSON *item)
{
    if (object && item && cJSON_AddItemToObject(object, key, item)) {
        return true;
    }
    cJSON_Delete(item);
    return false;
}

static void give_whole(web_reply *reply, int status, cJSON *root, bool whole)
{
    if (!whole) {
        cJSON_Delete(root);
        root = NULL;
    }
    web_give_json(reply, status, root);
}

/* Reads the sheet of a request; NULL without memory, and then the request has been answered. A
 * profile given by path is read from the folder only. */
static sil_sheet *read_sheet(const web_site *site, const web_request *request, web_reply *reply,
                             sil_status *status)
{
    sil_sheet *sheet;
    *status = sil_sheet_read_within(request->body ? request->body : "", request->size, "sheet",
                                    site->folder, &sheet);
    if (*status == SIL_NO_MEMORY) {
        sil_sheet_free(sheet);
        web_say(reply, 500, "out of memory");
        return NULL;
    }
    return sheet;
}

sil_sheet *web_take_sheet(const web_site *site, const web_request *request, web_reply *reply)
{
    sil_status status;
    sil_sheet *sheet = read_sheet(site, request, reply, &status);
    if (sheet && !sil_sheet_job(sheet)) {
        if (status == SIL_UNREADABLE) {
            web_say(reply, 500, "the sheet's profile is there, but could not be read");
        } else {
            cJSON *root = cJSON_CreateObject();
            bool whole = put_item(root, "complaints", complaints_of(sheet));
            give_whole(reply, 422, root, whole);
        }
        sil_sheet_free(sheet);
        sheet = NULL;
    }
    return sheet;
}

typedef struct entries {
    cJSON *array;
    bool failed;
} entries;

/* [path, text], and for a value of the profile also the unit of its bare lengths. Lists and
 * mappings are listed by what is in them, so empty ones do not appear. */
static void add_entry(void *with, const sil_entry *entry)
{
    entries *all = with;
    if (!entry->text || all->failed) {
        return;
    }
    cJSON *row = cJSON_CreateArray();
    cJSON *items[] = {cJSON_CreateString(entry->path), cJSON_CreateString(entry->text),
                      entry->own ? NULL : cJSON_CreateString(entry->units == SIL_MM ? "mm" : "in")};
    for (int i = 0; i < (entry->own ? 2 : 3); i++) {
        if (!row || !items[i] || all->failed || !cJSON_AddItemToArray(row, items[i])) {
            cJSON_Delete(items[i]);
            all->failed = true;
        }
    }
    if (all->failed || !cJSON_AddItemToArray(all->array, row)) {
        cJSON_Delete(row);
        all->failed = true;
    }
}

void web_read(const web_site *site, const web_target *target, const web_request *request,
              web_reply *reply)
{
    (void)target;
    sil_status status; /* an unreadable profile is among the complaints */
    sil_sheet *sheet = read_sheet(site, request, reply, &status);
    if (!sheet) {
        return;
    }
    entries all = {.array = cJSON_CreateArray()};
    all.failed = !all.array;
    sil_sheet_see(sheet, add_entry, &all);
    if (all.failed) {
        cJSON_Delete(all.array);
        all.array = NULL;
    }
    cJSON *root = cJSON_CreateObject();
    bool whole = put_item(root, "complaints", complaints_of(sheet));
    whole = put_item(root, "entries", all.array) && whole;
    whole = put_item(root, "applies", web_applies(sil_sheet_job(sheet))) && whole;
    give_whole(reply, 200, root, whole);
    sil_sheet_free(sheet);
}

int web_choose(const web_target *target, const char *name, const char *const *words)
{
    char value[32];
    bool readable = web_option(target, name, value, sizeof value);
    if (readable && value[0] == '\0') {
        return 0;
    }
    for (int i = 0; readable && words[i]; i++) {
        if (strcmp(words[i], value) == 0) {
            return i;
        }
    }
    return -1;
}

bool web_choose_unit(const web_target *target, const sil_job *job, sil_unit *unit)
{
    static const char *const units[] = {"sheet", "mm", "in", NULL};
    int chosen = web_choose(target, "units", units);
    *unit = chosen == 0 ? job->units : chosen == 1 ? SIL_MM : SIL_INCH;
    return chosen >= 0;
}

static void give_plan(const web_target *target, const sil_job *job, web_reply *reply)
{
    sil_unit unit;
    sil_plan *plan;
    char *json = NULL;
    if (!web_choose_unit(target, job, &unit)) {
        web_say(reply, 400, "units takes mm or in");
        return;
    }
    if (sil_plan_make(job, &plan) == SIL_DONE) {
        json = sil_report_json(plan, unit);
    }
    sil_plan_free(plan);
    if (json) {
        web_give(reply, "application/json", json, strlen(json));
    } else {
        web_say(reply, 500, "out of memory");
    }
}

void web_plan(const web_site *site, const web_target *target, const web_request *request,
              web_reply *reply)
{
    sil_sheet *sheet = web_take_sheet(site, request, reply);
    if (sheet) {
        give_plan(target, sil_sheet_job(sheet), reply);
        sil_sheet_free(sheet);
    }
}
