/* SPDX-License-Identifier: MIT */
/* The page's answers as a program. */
#include "../../src/page/web.h"

#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "../../src/page/reply.h"
#include "programs.h"

enum { PORT = 7340, SHEET_SIZE = 1 << 16 };

typedef struct sheet {
    const char *from, *as; /* as: its name in the folder that is listed */
    size_t size;
    char bytes[SHEET_SIZE];
} sheet;

static sheet sheets[] = {
    {"examples/low-saddle.yaml", "right.yaml", 0, ""},
    {"tests/sheets/bad-word.yaml", "wrong.yaml", 0, ""},
    {"tests/sheets/bad-everything.yaml", NULL, 0, ""},
    {"tests/sheets/good-by-ear.yaml", NULL, 0, ""},
    {"tests/sheets/good-least.yaml", NULL, 0, ""},
    {"examples/bass-nut.yaml", NULL, 0, ""},
};
enum { SHEETS = sizeof sheets / sizeof *sheets };

/* The folder written to, and a hidden one in it whose sheets stay as they are. */
static int written = -1, kept = -1;
static char old_tag[WEB_TAG_MAX];

static int copy(const sheet *s)
{
    int file = openat(kept, s->as, O_WRONLY | O_CREAT | O_CLOEXEC, 0600);
    ssize_t size = file < 0 ? -1 : write(file, s->bytes, s->size);
    return file < 0 || close(file) != 0 || size != (ssize_t)s->size ? -1 : 0;
}

int web_begin(const char *folder)
{
    written = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (written < 0 || mkdirat(written, ".kept", 0700)) {
        return -1;
    }
    kept = openat(written, ".kept", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    for (sheet *s = sheets; s < sheets + SHEETS; s++) {
        FILE *file = fopen(s->from, "rb");
        s->size = file ? fread(s->bytes, 1, SHEET_SIZE, file) : 0;
        if (!file || fclose(file) != 0 || s->size == 0 || (s->as && copy(s))) {
            return -1;
        }
    }
    return 0;
}

void web_end(void)
{
    for (const sheet *s = sheets; s < sheets + SHEETS; s++) {
        if (s->as) {
            unlinkat(kept, s->as, 0);
        }
    }
    unlinkat(written, ".kept", AT_REMOVEDIR);
    close(kept);
    close(written);
}

static void give_body(web_request *request, const char *from)
{
    for (const sheet *s = sheets; s < sheets + SHEETS; s++) {
        if (strcmp(s->from, from) == 0) {
            request->body = s->bytes;
            request->size = s->size;
        }
    }
}

/* The version that is there is the one to be replaced. */
static void give_version(web_request *request)
{
    char old[64];
    int file = openat(written, OUT_NAME, O_RDONLY | O_CLOEXEC);
    ssize_t size = file < 0 ? -1 : pread(file, old, sizeof old, 0);
    if (size >= 0) {
        web_tag(old, (size_t)size, old_tag);
        request->if_match = old_tag;
    } else {
        request->if_none_match = "*";
    }
}

int web_main(int argc, char **argv)
{
    static char room[1 << 20]; /* so that printing asks for no memory */
    setvbuf(stdout, room, _IOFBF, sizeof room);
    bool saves = argc > 1 && strcmp(argv[1], "PUT") == 0;
    web_site site = {.port = PORT, .folder = saves ? written : kept, .folder_name = "kept"};
    web_request request = {.method = argv[1], .target = argv[2], .host = "localhost:7340"};
    web_reply reply;
    give_body(&request, argv[3]);
    if (saves) {
        give_version(&request);
    }
    web_answer(&site, &request, &reply);
    bool failed = reply.status >= 500, done = reply.status < 300;
    if (failed) {
        fprintf(stderr, "sillet: %.*s\n", (int)reply.size, reply.bytes);
    } else {
        fwrite(reply.bytes, 1, reply.size, stdout);
    }
    web_reply_free(&reply);
    return failed ? 3 : !done;
}
