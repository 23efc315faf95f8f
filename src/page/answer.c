/* SPDX-License-Identifier: MIT */
/* Which function answers which request, and the rules that every request must pass first. */
#include <stdio.h>
#include <string.h>

#include "reply.h"

const web_header web_headers[] = {
    {"Content-Security-Policy",
     "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; "
     "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"},
    {"X-Content-Type-Options", "nosniff"},
    {"Referrer-Policy", "no-referrer"},
    {"Cross-Origin-Opener-Policy", "same-origin"},
    {"Cross-Origin-Resource-Policy", "same-origin"},
    {"Cache-Control", "no-cache"},
};
const int web_header_count = sizeof web_headers / sizeof *web_headers;

/* A browser leaves the port out where it is the one of its scheme (RFC 9110, 4.2.1). */
enum { PORT_OF_HTTP = 80 };

/* The names this machine has for itself. A name that somebody else's name server could point here
 * is not among them. */
static const char *const own_names[] = {"127.0.0.1", "localhost"};

void web_address(const web_site *site, char *out, size_t size)
{
    if (site->port == PORT_OF_HTTP) {
        snprintf(out, size, "http://%s/", own_names[0]);
    } else {
        snprintf(out, size, "http://%s:%d/", own_names[0], site->port);
    }
}

static bool is_own(const web_site *site, const char *host)
{
    char own[64];
    for (size_t i = 0; i < sizeof own_names / sizeof *own_names; i++) {
        snprintf(own, sizeof own, "%s:%d", own_names[i], site->port);
        if (strcmp(host, own) == 0 ||
            (site->port == PORT_OF_HTTP && strcmp(host, own_names[i]) == 0)) {
            return true;
        }
    }
    return false;
}

/* The page's own scripts send the origin they were loaded from, which must be that of the Host they
 * ask. A program sends none. */
static bool is_same_origin(const web_request *request)
{
    static const char scheme[] = "http://";
    size_t length = sizeof scheme - 1;
    return !request->origin || (strncmp(request->origin, scheme, length) == 0 &&
                                strcmp(request->origin + length, request->host) == 0);
}

typedef struct route {
    const char *method, *path;
    bool below; /* what follows the path is a name */
    web_handler *answer;
} route;

static const route routes[] = {
    {"GET", "/profiles", false, web_profiles}, {"GET", "/fields", false, web_fields},
    {"POST", "/read", false, web_read},        {"POST", "/plan", false, web_plan},
    {"POST", "/draw", false, web_draw},        {"GET", "/sheets", false, web_list},
    {"GET", "/sheets/", true, web_get_sheet},  {"PUT", "/sheets/", true, web_put_sheet},
};

static bool is_at(const route *row, const char *path)
{
    return row->below ? strncmp(path, row->path, strlen(row->path)) == 0
                      : strcmp(path, row->path) == 0;
}

/* HEAD is answered like GET; the server leaves out the bytes. */
static const char *method_of(const web_request *request)
{
    return strcmp(request->method, "HEAD") == 0 ? "GET" : request->method;
}

static void find_route(const web_site *site, const web_target *target, const web_request *request,
                       web_reply *reply)
{
    const char *method = method_of(request);
    const char *allow = NULL;
    for (size_t i = 0; i < sizeof routes / sizeof *routes; i++) {
        if (!is_at(&routes[i], target->path)) {
            continue;
        }
        if (strcmp(routes[i].method, method) == 0) {
            routes[i].answer(site, target, request, reply);
            return;
        }
        allow = routes[i].below                        ? "GET, HEAD, PUT"
                : strcmp(routes[i].method, "GET") == 0 ? "GET, HEAD"
                                                       : routes[i].method;
    }
    if (!allow && web_asset(target->path, reply)) {
        if (strcmp(method, "GET") == 0) {
            return;
        }
        allow = "GET, HEAD";
    }
    web_say(reply, allow ? 405 : 404, allow ? "not to be asked in that way" : "nothing is there");
    reply->allow = allow;
}

void web_answer(const web_site *site, const web_request *request, web_reply *reply)
{
    web_target target;
    memset(reply, 0, sizeof *reply);
    if (!request->host || !is_own(site, request->host)) {
        web_say(reply, 403, "this page answers only to the address it was opened at");
    } else if (!is_same_origin(request)) {
        web_say(reply, 403, "asked from another page");
    } else if (request->size > WEB_BODY_MAX) {
        web_say(reply, 413, "over 256 KiB: this is no measuring sheet");
    } else if (!web_target_read(request->target, &target)) {
        web_say(reply, 400, "no address of this page");
    } else {
        find_route(site, &target, request, reply);
    }
    if (reply->tag[0] && reply->status == 200 && request->if_none_match &&
        strcmp(method_of(request), "GET") == 0 && strcmp(request->if_none_match, reply->tag) == 0) {
        reply->status = 304;
        reply->size = 0;
    }
}
