/* SPDX-License-Identifier: MIT */
/* Everything that the bench page shows at a keystroke, in one answer. */
#include <stdlib.h>

#include "../report/glance.h"
#include "../text/text.h"
#include "reply.h"

/* Adds a key with a document made elsewhere, and frees that. */
static void add_made(text *t, const char *key, char *made)
{
    if (!made) {
        t->failed = true;
    } else if (!t->failed) {
        text_add(t, "\"%s\":%s", key, made);
    }
    free(made);
}

/* What the sheet's reader says of it. */
static char *said_of(const sil_sheet *sheet)
{
    json j = {0};
    json_at root = json_object(&j);
    web_put_complaints(root, sheet);
    web_put_applies(root, sil_sheet_job(sheet));
    return json_end(&j);
}

/* The plan is put into words once, for both. */
static void add_plan(text *t, const sil_job *job, sil_unit unit)
{
    sil_plan *plan;
    brief *b = sil_plan_make(job, &plan) == SIL_DONE ? brief_make(plan, unit) : NULL;
    if (!b) {
        t->failed = true;
    } else {
        text_put(t, ",");
        add_made(t, "result", report_of_brief(b));
        text_put(t, ",");
        add_made(t, "glance", report_glance(b));
    }
    brief_free(b);
    sil_plan_free(plan);
}

/* A sheet with errors has no plan; both keys are then missing. */
void web_bench(const web_site *site, const web_target *target, const web_request *request,
               web_reply *reply)
{
    sil_status status;
    sil_unit unit;
    sil_sheet *sheet = web_read_sheet(site, request, reply, &status);
    if (!sheet) {
        return;
    }
    const sil_job *job = sil_sheet_job(sheet);
    if (job && !web_choose_unit(target, job, &unit)) {
        web_say(reply, 400, "units takes mm or in");
        sil_sheet_free(sheet);
        return;
    }
    text t = {0};
    text_put(&t, "{");
    add_made(&t, "read", said_of(sheet));
    if (job) {
        add_plan(&t, job, unit);
    }
    text_put(&t, "}");
    size_t size;
    char *made = text_take(&t, &size);
    if (made) {
        web_give(reply, "application/json", made, size);
    } else {
        web_say(reply, 500, "out of memory");
    }
    sil_sheet_free(sheet);
}
