/* SPDX-License-Identifier: MIT */
/* Feeds random bytes to the page (clang -fsanitize=fuzzer). The first lines are the method, the
 * target, Host, Origin, If-Match and If-None-Match ("-": not sent), and the rest is the body. Next
 * to the folder there is a file that no answer may show and no request may change. A link in the
 * folder points to it. */
#define _GNU_SOURCE /* NOLINT: memmem */
#include <cjson/cJSON.h>
#include <dirent.h>
#include <fcntl.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "../../src/page/web.h"

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size);

static const char secret[] = "sillet: 1\n# kept-from-everyone\nunits: kept-from-everyone\n";
static char outside[96];
static web_site site;

static void put_file(const char *path, const char *text)
{
    FILE *file = fopen(path, "w");
    if (!file || fputs(text, file) < 0 || fclose(file) != 0) {
        abort();
    }
}

static void fill_folder(int folder)
{
    char path[64];
    snprintf(path, sizeof path, "/proc/self/fd/%d/sheet.yaml", folder);
    put_file(path, "sillet: 1\nprofile: steel-string-acoustic\n");
    snprintf(path, sizeof path, "/proc/self/fd/%d/mine.yaml", folder);
    put_file(path, "sillet: 1\ninstrument: {crown: 1.0}\n");
    symlinkat(outside, folder, "link.yaml");
}

static void empty_folder(int folder)
{
    char path[32];
    snprintf(path, sizeof path, "/proc/self/fd/%d", folder);
    DIR *entries = opendir(path);
    for (struct dirent *entry; entries && (entry = readdir(entries));) {
        unlinkat(folder, entry->d_name, 0);
    }
    closedir(entries);
}

static void begin(void)
{
    static char around[64];
    char folder[96];
    const char *shared = access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp";
    snprintf(around, sizeof around, "%s/sillet-fuzz-XXXXXX", shared);
    if (!mkdtemp(around)) {
        abort();
    }
    snprintf(outside, sizeof outside, "%s/out.yaml", around);
    put_file(outside, secret);
    snprintf(folder, sizeof folder, "%s/in", around);
    mkdir(folder, 0700);
    site = (web_site){.port = 7340, .folder_name = "in"};
    site.folder = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    setenv("SILLET_PROFILES", "profiles", 0);
    fill_folder(site.folder);
}

/* The next line of what came, NUL-terminated; NULL for "-". */
static char *take_line(char **at, char *end)
{
    char *start = *at;
    char *stop = memchr(start, '\n', (size_t)(end - start));
    if (!stop) {
        *at = end;
        return end; /* "" */
    }
    *stop = '\0';
    *at = stop + 1;
    return strcmp(start, "-") == 0 ? NULL : start;
}

static bool outside_is_whole(void)
{
    char text[sizeof secret + 8] = "";
    FILE *file = fopen(outside, "r");
    size_t size = file ? fread(text, 1, sizeof text - 1, file) : 0;
    if (file) {
        fclose(file);
    }
    return size == sizeof secret - 1 && memcmp(text, secret, size) == 0;
}

static void judge(const web_reply *reply)
{
    static const int known[] = {200, 201, 304, 400, 403, 404, 405, 409, 412, 413, 422, 428};
    bool is_known = false;
    for (size_t i = 0; i < sizeof known / sizeof *known; i++) {
        is_known = is_known || reply->status == known[i];
    }
    if (!is_known || !reply->type) {
        abort();
    }
    if (strcmp(reply->type, "application/json") == 0 && reply->size > 0) {
        cJSON *json = cJSON_ParseWithLength(reply->bytes, reply->size);
        if (!json) {
            abort();
        }
        cJSON_Delete(json);
    }
    if (reply->size > 0 &&
        memmem(reply->bytes, reply->size, "kept-from-everyone", strlen("kept-from-everyone"))) {
        abort();
    }
}

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    static bool begun;
    if (!begun) {
        begin();
        begun = true;
    }
    char *copy = malloc(size + 1);
    char *at = copy, *end = copy + size;
    memcpy(copy, bytes, size);
    *end = '\0';
    web_request request = {0};
    request.method = take_line(&at, end);
    request.target = take_line(&at, end);
    request.host = take_line(&at, end);
    request.origin = take_line(&at, end);
    request.if_match = take_line(&at, end);
    request.if_none_match = take_line(&at, end);
    request.body = at;
    request.size = (size_t)(end - at);
    request.method = request.method ? request.method : "";
    request.target = request.target ? request.target : "";
    /* The word stands in the nonsense too, if the fuzzer learns it: then there is nothing to see.
     */
    if (!memmem(bytes, size, "kept", 4)) {
        web_reply reply;
        web_answer(&site, &request, &reply);
        judge(&reply);
        web_reply_free(&reply);
        if (request.method[0] == 'P' && request.method[1] == 'U') {
            if (!outside_is_whole()) {
                abort();
            }
            empty_folder(site.folder);
            fill_folder(site.folder);
        }
    }
    free(copy);
    return 0;
}
