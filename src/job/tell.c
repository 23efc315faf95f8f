/* SPDX-License-Identifier: MIT */
/* Complaints of the check of a job: the place, and what is expected there. */
#include "../text/text.h"
#include "check.h"

const char job_missing[] = "missing";

job_place job_key(const job_place *up, const char *key)
{
    return (job_place){up, key, 0};
}

job_place job_item(const job_place *up, int index)
{
    return (job_place){up, NULL, index};
}

/* The path of a place, from the root down. */
static void put_path(text *path, const job_place *place)
{
    if (!place) {
        return;
    }
    put_path(path, place->up);
    text_put(path, path->length > 0 ? "." : "");
    if (place->key) {
        text_put(path, place->key);
    } else {
        text_add(path, "%d", place->index);
    }
}

static void tell(job_check *check, sil_severity severity, const job_place *place,
                 const char *wanted)
{
    text path = {0};
    put_path(&path, place);
    check->errors += severity == SIL_ERROR;
    check->failed = check->failed || path.failed;
    if (!check->failed) {
        check->tell(check->with, severity, text_read(&path), wanted);
    }
    text_free(&path);
}

void job_check_missing(job_check *check, const job_place *place)
{
    tell(check, SIL_ERROR, place, job_missing);
}

void job_check_say(job_check *check, sil_severity severity, const job_place *place,
                   const char *format, ...)
{
    text wanted = {0};
    va_list arguments;
    va_start(arguments, format);
    text_add_list(&wanted, format, arguments);
    va_end(arguments);
    check->failed = check->failed || wanted.failed;
    tell(check, severity, place, text_read(&wanted));
    text_free(&wanted);
}
