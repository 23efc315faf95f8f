/* SPDX-License-Identifier: MIT */
/* Used inside the page: what answers are made of. */
#ifndef SILLET_PAGE_REPLY_H
#define SILLET_PAGE_REPLY_H

#include <sillet/sillet.h>

#include "../json/json.h"
#include "web.h"

enum { WEB_NAME_MAX = 256 };

/* A request's target taken apart: the path before the ?, and the options after it. */
typedef struct web_target {
    char path[WEB_NAME_MAX]; /* unescaped */
    char query[WEB_TARGET_MAX];
} web_target;

/* web_is_text: whether bytes are UTF-8 and no control characters. */
bool web_is_text(const char *bytes, size_t size);

/* web_target_read: false if it cannot be read: too long, a wrong escape, not UTF-8. */
bool web_target_read(const char *sent, web_target *target);

/* web_option: an option's value, unescaped; "" if it is not given.
 * Status: false if it cannot be read or does not fit */
bool web_option(const web_target *target, const char *name, char *value, size_t size);

/* Fill a reply, as web_say does. A held text and a document then belong to the reply. */
void web_give(web_reply *reply, const char *type, char *held, size_t size);
void web_give_json(web_reply *reply, int status, json *j);

/* web_tag: an ETag that changes with the bytes. */
void web_tag(const char *bytes, size_t size, char tag[WEB_TAG_MAX]);

/* One function for each path: each answers a request that has passed the safety rules. */
typedef void web_handler(const web_site *site, const web_target *target, const web_request *request,
                         web_reply *reply);
web_handler web_profiles, web_fields, web_read, web_plan, web_bench, web_draw;
web_handler web_list, web_get_sheet, web_put_sheet;

/* A path, and what answers there to a method. */
typedef struct web_route {
    const char *method, *path;
    bool below; /* what follows the path is a name */
    web_handler *answer;
} web_route;

/* web_follow: has the row answer that a request asks for; where only the method is another, says so.
 * web_follow_computed: the same with the rows of what needs no folder.
 * Status: false if no row has the path; then nothing is answered */
bool web_follow(const web_route *rows, size_t count, const web_site *site, const web_target *target,
                const web_request *request, web_reply *reply);
bool web_follow_computed(const web_site *site, const web_target *target, const web_request *request,
                         web_reply *reply);

/* web_admit: takes a request's target apart; false if it cannot be read, or its body is too large,
 * and then the request has been answered. */
bool web_admit(const web_request *request, web_target *target, web_reply *reply);

/* web_refuse_method: says which methods there are. */
void web_refuse_method(web_reply *reply, const char *allow);

/* web_put_complaints: the key "complaints": what is wrong in a sheet, and where. */
void web_put_complaints(json_at root, const sil_sheet *sheet);

/* web_read_sheet: reads the sheet of a request; NULL without memory, and then the request has been
 * answered. A profile given by path is read from the folder only. */
sil_sheet *web_read_sheet(const web_site *site, const web_request *request, web_reply *reply,
                          sil_status *status);

/* web_put_applies: the key "applies": the paths of the fields a job's instrument has; null where
 * there is no job. */
void web_put_applies(json_at root, const sil_job *job);

/* web_is_sheet_name: whether a name is allowed for a sheet of the folder: it ends in .yaml, is not
 * hidden, contains no folder, and is not the shop file's, which every sheet here stands on. */
bool web_is_sheet_name(const char *name);

/* web_read_file: the bytes of a sheet of the folder, which the caller frees.
 * Status: 0, or an errno; ENOENT also for a link and for anything but a plain file, EFBIG over
 * WEB_BODY_MAX */
int web_read_file(int folder, const char *name, char **bytes, size_t *size);

/* web_asset: a file of the page itself by its path; false where there is none. */
bool web_asset(const char *path, web_reply *reply);

/* web_file: the page as one file; false where there is none.
 * web_hand_out: answers a request that came over the local network: the file at "/", and nothing
 * else. Whoever asks may have it, so nobody is asked who he is. */
bool web_file(const web_site *site, web_reply *reply);
void web_hand_out(const web_site *site, const web_request *request, web_reply *reply);

/* web_take_sheet: the sheet of a request, with its job; NULL if it has mistakes, and then the
 * request has been answered. */
sil_sheet *web_take_sheet(const web_site *site, const web_request *request, web_reply *reply);

/* web_choose: an option that takes one of a few words (NULL after the last). Returns the word's
 * index, in capitals or small letters, 0 if it is not given, -1 for anything else. */
int web_choose(const web_target *target, const char *name, const char *const *words);

/* web_choose_unit: the unit for lengths: the option units, otherwise the sheet's own. */
bool web_choose_unit(const web_target *target, const sil_job *job, sil_unit *unit);

#endif
