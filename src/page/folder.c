/* SPDX-License-Identifier: MIT */
/* The folder of sheets: reading one, saving one. Only plain files of the folder
 * itself are used, by name; a link may lead out of it, so it is refused. */
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "reply.h"

static const char yaml[] = "application/yaml; charset=utf-8";

bool web_is_sheet_name(const char *name)
{
    static const char ending[] = ".yaml";
    size_t length = strlen(name);
    size_t tail = sizeof ending - 1;
    return length > tail && length < WEB_NAME_MAX && name[0] != '.' && !strpbrk(name, "/\\") &&
           strcmp(name, SIL_SHOP_FILE) != 0 && web_is_text(name, length) &&
           strcmp(name + length - tail, ending) == 0;
}

int web_read_file(int folder, const char *name, char **bytes, size_t *size)
{
    struct stat about;
    int file = openat(folder, name, O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    if (file < 0) {
        return errno == ELOOP ? ENOENT : errno;
    }
    int error = fstat(file, &about) != 0 || !S_ISREG(about.st_mode) ? ENOENT
                : about.st_size > WEB_BODY_MAX                      ? EFBIG
                                                                    : 0;
    *bytes = error == 0 ? malloc(WEB_BODY_MAX + 1) : NULL;
    *size = 0;
    if (error == 0 && !*bytes) {
        error = ENOMEM;
    }
    while (error == 0 && *size <= WEB_BODY_MAX) {
        ssize_t more = read(file, *bytes + *size, WEB_BODY_MAX + 1 - *size);
        if (more == 0) {
            break;
        }
        if (more > 0) {
            *size += (size_t)more;
        } else if (errno != EINTR) {
            error = errno;
        }
    }
    close(file);
    if (error == 0 && *size > WEB_BODY_MAX) {
        error = EFBIG;
    }
    if (error != 0) {
        free(*bytes);
        *bytes = NULL;
    }
    return error;
}

static void say_error(web_reply *reply, int error)
{
    if (error == ENOENT || error == ENAMETOOLONG) {
        web_say(reply, 404, "no such sheet in the folder");
    } else if (error == EFBIG) {
        web_say(reply, 413, "over 256 KiB: this is no measuring sheet");
    } else if (error == EACCES || error == EPERM || error == EROFS) {
        web_say(reply, 403, "the folder does not allow it");
    } else if (error == EWOULDBLOCK) {
        web_say(reply, 503, "another program is saving into the folder; save it again");
    } else {
        web_say(reply, 500, "the system failed us: the sheet could not be read or written");
    }
}

/* The name after /sheets/; NULL if it is not allowed, and then the request has been answered. */
static const char *name_of(const web_site *site, const web_target *target, web_reply *reply)
{
    const char *name = target->path + strlen("/sheets/");
    if (site->folder < 0) {
        web_say(reply, 409, "no folder of sheets was named");
    } else if (!web_is_sheet_name(name)) {
        web_say(reply, 400, "a sheet's name ends in .yaml, holds no folder, and is not shop.yaml");
    } else {
        return name;
    }
    return NULL;
}

void web_get_sheet(const web_site *site, const web_target *target, const web_request *request,
                   web_reply *reply)
{
    char *bytes;
    size_t size;
    (void)request;
    const char *name = name_of(site, target, reply);
    if (!name) {
        return;
    }
    int error = web_read_file(site->folder, name, &bytes, &size);
    if (error != 0) {
        say_error(reply, error);
        return;
    }
    web_give(reply, yaml, bytes, size);
    web_tag(bytes, size, reply->tag);
}

/* Whether the file is still the version the request was made for. 0: go on; otherwise the status to
 * answer with. */
static int judge_version(const web_request *request, bool there, const char *tag)
{
    if (request->if_none_match && strcmp(request->if_none_match, "*") == 0) {
        return there ? 412 : 0;
    }
    if (!request->if_match) {
        return 428;
    }
    return there && strcmp(request->if_match, tag) == 0 ? 0 : 412;
}

static void save(const web_site *site, const char *name, const web_request *request,
                 web_reply *reply)
{
    char *old = NULL;
    char path[WEB_NAME_MAX + 64];
    char tag[WEB_TAG_MAX] = "";
    size_t size = 0;
    struct stat about;
    bool there = fstatat(site->folder, name, &about, AT_SYMLINK_NOFOLLOW) == 0;
    int error = there ? web_read_file(site->folder, name, &old, &size) : 0;
    if (error != 0) {
        say_error(reply,
                  error == ENOENT ? EACCES : error); /* a link, a folder: not ours to replace */
        return;
    }
    if (there) {
        web_tag(old, size, tag);
        free(old);
    }
    int status = judge_version(request, there, tag);
    if (status != 0) {
        web_say(reply, status,
                status == 428 ? "say which version is to be replaced: If-Match, or If-None-Match: *"
                : there       ? "the file has changed since it was read"
                              : "the file is no longer there");
        memcpy(reply->tag, tag, sizeof tag);
        return;
    }
    snprintf(path, sizeof path, "/proc/self/fd/%d/%s", site->folder, name);
    if (sil_file_save(path, request->body, request->size) != SIL_DONE) {
        say_error(reply, errno);
        return;
    }
    web_say(reply, there ? 200 : 201, "saved");
    web_tag(request->body, request->size, reply->tag);
}

/* Keeps every other server on this folder out until it is unlocked: what is compared must still be
 * there when it is replaced. The lock belongs to the folder as it was opened, so it holds between
 * processes, and a mutex holds between this one's threads. Where the file system has no locks,
 * comparing is all there is.
 * Returned: 0, or EWOULDBLOCK where another holds it for so long that it must have stopped */
static int lock_folder(int folder)
{
    enum { TRIES = 2000 };
    const struct timespec a_while = {0, 1000000}; /* 1 ms: a save takes a few */
    for (int try = 0; try < TRIES; try++) {
        if (flock(folder, LOCK_EX | LOCK_NB) == 0) {
            return 0;
        }
        if (errno != EWOULDBLOCK && errno != EINTR) {
            return 0;
        }
        nanosleep(&a_while, NULL);
    }
    return EWOULDBLOCK;
}

/* Compares and writes in one step. */
static void save_locked(const web_site *site, const char *name, const web_request *request,
                        web_reply *reply)
{
    static pthread_mutex_t saving = PTHREAD_MUTEX_INITIALIZER;
    pthread_mutex_lock(&saving);
    int error = lock_folder(site->folder);
    if (error == 0) {
        save(site, name, request, reply);
        flock(site->folder, LOCK_UN);
    } else {
        say_error(reply, error);
    }
    pthread_mutex_unlock(&saving);
}

void web_put_sheet(const web_site *site, const web_target *target, const web_request *request,
                   web_reply *reply)
{
    const char *name = name_of(site, target, reply);
    if (!name) {
        return;
    }
    /* A file that is not a sheet is answered like any sheet with mistakes, and is not saved. */
    web_plan(site, target, request, reply);
    if (reply->status == 200) {
        web_reply_free(reply);
        save_locked(site, name, request, reply);
    }
}
