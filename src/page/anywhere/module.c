/* SPDX-License-Identifier: MIT */
#include "module.h"

#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "../web.h"

static web_reply reply;

/* Where the page lays the files that a person gave it; not there while it was given none. */
static const char given[] = "/given";

char *module_room(size_t size)
{
    return malloc(size + 1);
}

/* The byte after the next NUL; NULL if there is none before the end. */
static const char *after_text(const char *from, const char *end)
{
    const char *stop = from ? memchr(from, '\0', (size_t)(end - from)) : NULL;
    return stop ? stop + 1 : NULL;
}

int module_ask(char *room, size_t size)
{
    const char *end = room + size;
    const char *target = after_text(room, end);
    const char *body = after_text(target, end);
    web_reply_free(&reply);
    memset(&reply, 0, sizeof reply);
    if (body) {
        const web_request request = {
            .method = room, .target = target, .body = body, .size = (size_t)(end - body)};
        int folder = open(given, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
        web_compute(folder, &request, &reply);
        if (folder >= 0) {
            close(folder);
        }
    } else {
        web_say(&reply, 400, "no request");
    }
    free(room);
    return reply.status;
}

const char *module_type(void)
{
    return reply.type;
}

const char *module_bytes(void)
{
    return reply.bytes;
}

size_t module_size(void)
{
    return reply.size;
}
