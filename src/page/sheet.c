/* SPDX-License-Identifier: MIT */
/* A sheet sent by the page: its entries, its plan, its drawings. */
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "reply.h"

static void add_complaint(json_at array, const sil_sheet *sheet, int index)
{
    char path[SIL_PATH_MAX];
    char shown[2048];
    json_at row = json_add_object(array);
    sil_complaint complaint = sil_sheet_complaint(sheet, index);
    sil_sheet_complaint_path(sheet, index, path);
    if (sil_complaint_write(&complaint, shown, sizeof shown) == 0) {
        array.in->failed = true;
    }
    json_put_word(row, "severity", complaint.severity == SIL_ERROR ? "error" : "warning");
    json_put_word(row, "path", path);
    json_put_int(row, "line", complaint.line);
    json_put_int(row, "column", complaint.column);
    json_put_word(row, "text", complaint.text);
    json_put_word(row, "shown", shown);
}

void web_put_complaints(json_at root, const sil_sheet *sheet)
{
    json_at array = json_put_array(root, "complaints");
    for (int k = 0; k < sil_sheet_complaint_count(sheet); k++) {
        add_complaint(array, sheet, k);
    }
}

sil_sheet *web_read_sheet(const web_site *site, const web_request *request, web_reply *reply,
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
    sil_sheet *sheet = web_read_sheet(site, request, reply, &status);
    if (sheet && !sil_sheet_job(sheet)) {
        if (status == SIL_UNREADABLE) {
            web_say(reply, 500, "the sheet's profile is there, but could not be read");
        } else {
            json j = {0};
            web_put_complaints(json_object(&j), sheet);
            web_give_json(reply, 422, &j);
        }
        sil_sheet_free(sheet);
        sheet = NULL;
    }
    return sheet;
}

/* [path, text], and for a value of the profile also the unit of its bare lengths. Lists and
 * mappings are listed by what is in them, so empty ones do not appear. */
static void add_entry(void *with, const sil_entry *entry)
{
    const json_at *array = with;
    if (!entry->text) {
        return;
    }
    json_at row = json_add_array(*array);
    json_add_word(row, entry->path);
    json_add_word(row, entry->text);
    if (!entry->own) {
        json_add_word(row, entry->units == SIL_MM ? "mm" : "in");
    }
}

void web_read(const web_site *site, const web_target *target, const web_request *request,
              web_reply *reply)
{
    (void)target;
    sil_status status; /* an unreadable profile is among the complaints */
    sil_sheet *sheet = web_read_sheet(site, request, reply, &status);
    if (!sheet) {
        return;
    }
    json j = {0};
    json_at root = json_object(&j);
    web_put_complaints(root, sheet);
    json_at entries = json_put_array(root, "entries");
    sil_sheet_see(sheet, add_entry, &entries);
    web_put_applies(root, sil_sheet_job(sheet));
    web_give_json(reply, 200, &j);
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
        if (strcasecmp(words[i], value) == 0) {
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
    char *result = NULL;
    if (!web_choose_unit(target, job, &unit)) {
        web_say(reply, 400, "units takes mm or in");
        return;
    }
    if (sil_plan_make(job, &plan) == SIL_DONE) {
        result = sil_report_json(plan, unit);
    }
    sil_plan_free(plan);
    if (result) {
        web_give(reply, "application/json", result, strlen(result));
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
