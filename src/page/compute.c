/* SPDX-License-Identifier: MIT */
/* Which function answers which request, and what is answered from the request alone. */
#include <string.h>

#include "reply.h"

static const web_route computed[] = {
    {"GET", "/profiles", false, web_profiles}, {"GET", "/fields", false, web_fields},
    {"POST", "/read", false, web_read},        {"POST", "/plan", false, web_plan},
    {"POST", "/bench", false, web_bench},      {"POST", "/draw", false, web_draw},
};

static bool is_at(const web_route *row, const char *path)
{
    return row->below ? strncmp(path, row->path, strlen(row->path)) == 0
                      : strcmp(path, row->path) == 0;
}

static const char *allowed(const web_route *row)
{
    return row->below                        ? "GET, HEAD, PUT"
           : strcmp(row->method, "GET") == 0 ? "GET, HEAD"
                                             : row->method;
}

void web_refuse_method(web_reply *reply, const char *allow)
{
    web_say(reply, 405, "That request isn't supported here.");
    reply->allow = allow;
}

bool web_follow(const web_route *rows, size_t count, const web_site *site, const web_target *target,
                const web_request *request, web_reply *reply)
{
    const char *method = strcmp(request->method, "HEAD") == 0 ? "GET" : request->method;
    const char *allow = NULL;
    for (size_t i = 0; i < count; i++) {
        if (!is_at(&rows[i], target->path)) {
            continue;
        }
        if (strcmp(rows[i].method, method) == 0) {
            rows[i].answer(site, target, request, reply);
            return true;
        }
        allow = allowed(&rows[i]);
    }
    if (allow) {
        web_refuse_method(reply, allow);
    }
    return allow;
}

bool web_follow_computed(const web_site *site, const web_target *target, const web_request *request,
                         web_reply *reply)
{
    return web_follow(computed, sizeof computed / sizeof *computed, site, target, request, reply);
}

bool web_admit(const web_request *request, web_target *target, web_reply *reply)
{
    if (request->size > WEB_BODY_MAX) {
        web_say(reply, 413, "over 256 KiB: this is no measuring sheet");
    } else if (!web_target_read(request->target, target)) {
        web_say(reply, 400, "no address of this page");
    } else {
        return true;
    }
    return false;
}

void web_compute(int folder, const web_request *request, web_reply *reply)
{
    const web_site alone = {.folder = folder};
    web_target target;
    memset(reply, 0, sizeof *reply);
    if (web_admit(request, &target, reply) &&
        !web_follow_computed(&alone, &target, request, reply)) {
        web_say(reply, 404, "nothing is there");
    }
}
