/* SPDX-License-Identifier: MIT */
/* Within the page: what answers are made of. */
#ifndef SILLET_PAGE_REPLY_H
#define SILLET_PAGE_REPLY_H

#include <cjson/cJSON.h>
#include <sillet/sillet.h>

#include "page.h"

enum { PAGE_NAME_MAX = 256 };

/* A target taken apart: what stands before the ?, and the options behind it. */
typedef struct page_target {
    char path[PAGE_NAME_MAX]; /* unescaped */
    char query[PAGE_TARGET_MAX];
} page_target;

/* page_is_text: whether bytes are UTF-8 and no control characters. */
bool page_is_text(const char *bytes, size_t size);

/* page_target_read: false where it is none: too long, a wrong escape, not UTF-8. */
bool page_target_read(const char *sent, page_target *target);

/* page_option: an option's value, unescaped; "" where it is not given.
 * Status: false where it cannot be read or does not fit
 */
bool page_option(const page_target *target, const char *name, char *value, size_t size);

/* Fill a reply. Texts are fixed; held ones become the reply's. */
void page_say(page_reply *reply, int status, const char *words);
void page_give(page_reply *reply, const char *type, char *held, size_t size);
void page_give_json(page_reply *reply, int status, cJSON *json); /* NULL: out of memory */

/* page_tag: an ETag that changes with the bytes. */
void page_tag(const char *bytes, size_t size, char tag[PAGE_TAG_MAX]);

/* What is at a path: each answers a request that has passed the safety rules. */
typedef void page_handler(const page_site *site, const page_target *target,
                          const page_request *request, page_reply *reply);
page_handler page_profiles, page_read, page_plan, page_draw;
page_handler page_list, page_get_sheet, page_put_sheet;

/* page_asset: a file of the page itself by its path; false where there is none. */
bool page_asset(const char *path, page_reply *reply);

/* page_take_sheet: the sheet of a request, with its job; NULL, answered, where it is wrong. */
sil_sheet *page_take_sheet(const page_site *site, const page_request *request, page_reply *reply);

/* page_choose: an option that takes one of a few words (NULL behind the last). Its index; 0 where
 * it is not given; -1 for anything else. */
int page_choose(const page_target *target, const char *name, const char *const *words);

/* page_choose_unit: what lengths are told in: the option units, else as the sheet has it. */
bool page_choose_unit(const page_target *target, const sil_job *job, sil_unit *unit);

#endif
