/* SPDX-License-Identifier: MIT */
/* The list of the folder's sheets, a part at a time: planning ten thousand takes seconds. */
#define _DEFAULT_SOURCE /* NOLINT: the kind of a folder's entry */
#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../brief/brief.h"
#include "reply.h"

/* Sheets in one answer, planned in a fifth of a second or so. */
enum { AT_ONCE = 200 };

/* A row of the folder, in the same words as `sillet plan` uses for a folder. */
static void put_row(json_at row, const char *state, const char *next, const char *waits)
{
    json_put_word(row, "state", state);
    json_put_word(row, "next", next[0] ? next : "nothing");
    json_put_word(row, "waits", waits[0] ? waits : "nothing");
}

static void put_wrong(json_at row, const sil_sheet *sheet)
{
    char words[128];
    sil_sheet_mistakes(sheet, words, sizeof words);
    put_row(row, "wrong", "put the sheet right", words);
}

static void put_named(json_at row, const char *key, const char *words)
{
    if (words) {
        json_put_word(row, key, words);
    }
}

/* The day of the last visit that has one, else the job's; NULL for none. */
static const char *date_of(const sil_job *job)
{
    for (int k = job->reading_count - 1; k >= 0; k--) {
        if (job->readings[k].date) {
            return job->readings[k].date;
        }
    }
    return job->about.date;
}

/* False without memory. */
static bool put_planned(json_at row, const sil_job *job)
{
    sil_plan *plan;
    text_store store = {0};
    bool whole = sil_plan_make(job, &plan) == SIL_DONE;
    if (whole) {
        brief_row words = brief_row_of(plan, &store);
        const char *state = words.waits[0] ? "waits" : words.next[0] ? "work" : "done";
        put_named(row, "ref", job->about.ref);
        put_named(row, "title", job->about.title);
        put_named(row, "owner", job->about.owner);
        put_named(row, "kind", job->profile);
        put_named(row, "date", date_of(job));
        put_row(row, state, words.next, words.waits);
        whole = !store.failed;
    }
    text_store_free(&store);
    sil_plan_free(plan);
    return whole;
}

static bool put_read(json_at row, const sil_sheet *sheet, sil_status status)
{
    const sil_job *job = sil_sheet_job(sheet);
    if (job) {
        return put_planned(row, job);
    }
    if (status == SIL_UNREADABLE) {
        put_row(row, "wrong", "look at the disk", "the profile cannot be read");
    } else {
        put_wrong(row, sheet);
    }
    return true;
}

/* A file that is there but cannot be read as a sheet has its row too, so that none is missed. */
static bool put_file(json_at row, const web_site *site, const char *name, const char *bytes,
                     size_t size, int error)
{
    sil_sheet *sheet = NULL;
    if (error != 0) {
        put_row(row, "wrong", "look at the file",
                error == EFBIG ? "over 256 KiB: this is no measuring sheet"
                               : "the folder does not allow it to be read");
        return true;
    }
    sil_status status = sil_sheet_read_within(bytes, size, name, site->folder, &sheet);
    bool whole = status != SIL_NO_MEMORY && put_read(row, sheet, status);
    sil_sheet_free(sheet);
    return whole;
}

static bool add_sheet(const web_site *site, const char *name, json_at array)
{
    char *bytes = NULL;
    size_t size = 0;
    int error = web_read_file(site->folder, name, &bytes, &size);
    if (error == ENOENT) { /* gone meanwhile, or no plain file */
        return true;
    }
    if (error != 0 && error != EACCES && error != EFBIG) {
        return false; /* the system failed */
    }
    json_at row = json_add_object(array);
    json_put_word(row, "name", name);
    bool whole = put_file(row, site, name, bytes, size, error);
    free(bytes);
    return whole;
}

static int is_listed(const struct dirent *entry)
{
    bool plain = entry->d_type == DT_REG || entry->d_type == DT_UNKNOWN;
    return plain && web_is_sheet_name(entry->d_name);
}

static int by_bytes(const struct dirent **a, const struct dirent **b)
{
    return strcmp((*a)->d_name, (*b)->d_name);
}

/* The place of the first name that comes after a given one. */
static int first_after(struct dirent *const *found, int count, const char *after)
{
    int first = 0;
    while (first < count && strcmp(found[first]->d_name, after) <= 0) {
        first++;
    }
    return first;
}

/* The sheets whose names come after a given one, and whether there are more. */
static bool add_found(const web_site *site, const char *after, json_at root,
                      struct dirent *const *found, int count)
{
    int first = first_after(found, count, after);
    int end = count - first > AT_ONCE ? first + AT_ONCE : count;
    json_at array = json_put_array(root, "sheets");
    bool whole = true;
    for (int k = first; whole && k < end; k++) {
        whole = add_sheet(site, found[k]->d_name, array);
    }
    json_put_int(root, "count", count);
    json_put_word(root, "more_after", end < count ? found[end - 1]->d_name : NULL);
    return whole;
}

static bool add_sheets(const web_site *site, const char *after, json_at root)
{
    char path[32];
    struct dirent **found = NULL;
    snprintf(path, sizeof path, "/proc/self/fd/%d", site->folder);
    int count = site->folder < 0 ? 0 : scandir(path, &found, is_listed, by_bytes);
    bool whole = count >= 0 && add_found(site, after, root, found, count);
    for (int k = 0; k < count; k++) {
        free(found[k]);
    }
    free(found);
    return whole;
}

void web_list(const web_site *site, const web_target *target, const web_request *request,
              web_reply *reply)
{
    char after[WEB_NAME_MAX];
    (void)request;
    if (!web_option(target, "after", after, sizeof after)) {
        web_say(reply, 400, "after takes the name of a sheet");
        return;
    }
    json j = {0};
    json_at root = json_object(&j);
    json_put_word(root, "folder", site->folder < 0 ? NULL : site->folder_name);
    json_put_word(root, "file", site->file ? "/sillet.html" : NULL);
    if (!add_sheets(site, after, root)) {
        j.failed = true;
    }
    web_give_json(reply, 200, &j);
}
