/* SPDX-License-Identifier: MIT */
/* What a browser may ask of `sillet serve`: the rules that every request must pass first, the folder,
 * the page's own files; all else is computed. */
#include <stdio.h>
#include <string.h>

#include "reply.h"

const web_header web_headers[] = {
    /* the policy is the first: web_header_value */
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

/* Of a page whose own policy allows the one script within it and nothing from elsewhere. */
static const char policy_beside[] = "base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

const char *web_header_value(const web_header *header, const web_reply *reply)
{
    return reply->own_policy && header == web_headers ? policy_beside : header->value;
}

/* A browser leaves the port out where it is the one of its scheme (RFC 9110, 4.2.1). */
enum { PORT_OF_HTTP = 80 };

/* The names this machine has for itself. A name that somebody else's name server could point here
 * is not among them. */
static const char *const own_names[] = {"127.0.0.1", "localhost"};

void web_address(const web_site *site, char *out, size_t size)
{
    const char *name = site->lan ? site->lan : own_names[0];
    if (site->port == PORT_OF_HTTP) {
        snprintf(out, size, "http://%s/", name);
    } else {
        snprintf(out, size, "http://%s:%d/", name, site->port);
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

static const web_route folder_routes[] = {
    {"GET", "/sheets", false, web_list},
    {"GET", "/sheets/", true, web_get_sheet},
    {"PUT", "/sheets/", true, web_put_sheet},
};

/* HEAD is answered like GET; the server leaves out the bytes. */
static bool is_get(const web_request *request)
{
    return strcmp(request->method, "GET") == 0 || strcmp(request->method, "HEAD") == 0;
}

static void find_route(const web_site *site, const web_target *target, const web_request *request,
                       web_reply *reply)
{
    if (web_follow(folder_routes, sizeof folder_routes / sizeof *folder_routes, site, target,
                   request, reply) ||
        web_follow_computed(site, target, request, reply)) {
        return;
    }
    bool file = strcmp(target->path, "/sillet.html") == 0 && web_file(site, reply);
    if (!file && !web_asset(target->path, reply)) {
        web_say(reply, 404, "nothing is there");
    } else if (!is_get(request)) {
        web_refuse_method(reply, "GET, HEAD");
    }
}

void web_answer(const web_site *site, const web_request *request, web_reply *reply)
{
    web_target target;
    memset(reply, 0, sizeof *reply);
    if (site->lan) {
        web_hand_out(site, request, reply);
    } else if (!request->host || !is_own(site, request->host)) {
        web_say(reply, 403, "This page answers only at the address it was opened at.");
    } else if (!is_same_origin(request)) {
        web_say(reply, 403, "This request came from another page.");
    } else if (web_admit(request, &target, reply)) {
        find_route(site, &target, request, reply);
    }
    if (reply->tag[0] && reply->status == 200 && request->if_none_match && is_get(request) &&
        strcmp(request->if_none_match, reply->tag) == 0) {
        reply->status = 304;
        reply->size = 0;
    }
}
