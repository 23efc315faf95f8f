/* SPDX-License-Identifier: MIT */
/* Asking the page without a server, on a folder of its own beside which lie things to keep out. */
#ifndef SILLET_TESTS_ASKED_H
#define SILLET_TESTS_ASKED_H

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cjson/cJSON.h>
#include <sillet/sillet.h>

#include "../src/page/web.h"
#include "near.h"

#define HOST "127.0.0.1:7340"
#define LEAST "sillet: 1\nprofile: steel-string-acoustic\n"

static char around[] = "/tmp/sillet-page-XXXXXX";
static web_site site;
static web_reply reply;

static inline const web_request *request(const char *method, const char *target, const char *body)
{
    static web_request asked;
    asked = (web_request){
        .method = method, .target = target, .host = HOST, .body = body, .size = strlen(body)};
    return &asked;
}

static inline void ask_as(const web_request *asked)
{
    web_reply_free(&reply);
    web_answer(&site, asked, &reply);
}

static inline int ask(const char *method, const char *target, const char *body)
{
    ask_as(request(method, target, body));
    return reply.status;
}

static inline int put(const char *target, const char *body, const char *if_match,
                      const char *if_none)
{
    web_request asked = *request("PUT", target, body);
    asked.if_match = if_match;
    asked.if_none_match = if_none;
    ask_as(&asked);
    return reply.status;
}

static inline bool answer_holds(const char *text)
{
    return memmem(reply.bytes, reply.size, text, strlen(text)) != NULL;
}

static inline char *read_whole(const char *path)
{
    FILE *file = fopen(path, "rb");
    char *text = calloc(1, SIL_SHEET_BYTES_MAX + 1);
    assert_non_null(file);
    assert_true(fread(text, 1, SIL_SHEET_BYTES_MAX, file) > 0);
    fclose(file);
    return text;
}

static inline void write_in(const char *name, const char *text)
{
    char path[128];
    snprintf(path, sizeof path, "%s/%s", around, name);
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fputs(text, file);
    fclose(file);
}

static inline int begin(void **state)
{
    char path[128];
    (void)state;
    setenv("SILLET_PROFILES", "profiles", 1);
    if (!mkdtemp(around)) {
        return -1;
    }
    site = (web_site){.port = 7340, .folder_name = "sheets"};
    site.folder = open(around, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    snprintf(path, sizeof path, "%s/pipe.yaml", around);
    mkfifo(path, 0600);
    snprintf(path, sizeof path, "%s/room.yaml", around);
    mkdir(path, 0700);
    write_in("kept.txt", "sillet: 1\nunits: kept\n");
    return symlinkat("kept.txt", site.folder, "link.yaml") + (site.folder < 0);
}

static inline int end(void **state)
{
    char command[128];
    (void)state;
    web_reply_free(&reply);
    close(site.folder);
    snprintf(command, sizeof command, "rm -r %s", around);
    return system(command);
}

#endif
