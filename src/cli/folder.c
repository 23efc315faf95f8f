/* SPDX-License-Identifier: MIT */
/* Goes through the sheets of a folder in the order of their names, in constant memory. The
 * folder is read several times, each time for the next batch of names. */
#include <dirent.h>
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "many.h"

enum { BATCH = 256 };

/* The next names after the last one that is done, in order. */
typedef struct batch {
    char names[BATCH][NAME_MAX + 1];
    int order[BATCH]; /* indexes into names */
    int count;
} batch;

bool cli_is_folder(const char *path)
{
    struct stat about;
    return stat(path, &about) == 0 && S_ISDIR(about.st_mode);
}

static bool is_sheet(const char *name)
{
    static const char *const endings[] = {".yaml", ".yml", ".json"};
    const char *dot = strrchr(name, '.');
    bool shop = strcmp(name, SIL_SHOP_FILE) == 0;
    for (size_t k = 0; dot && !shop && name[0] != '.' && k < sizeof endings / sizeof *endings;
         k++) {
        if (strcmp(dot, endings[k]) == 0) {
            return true;
        }
    }
    return false;
}

/* Puts a name where it belongs in the order. If the batch is full, its last name is dropped. */
static void insert(batch *b, const char *name)
{
    int low = 0;
    int high = b->count;
    while (low < high) {
        int middle = (low + high) / 2;
        if (strcmp(b->names[b->order[middle]], name) < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    if (low == BATCH) {
        return;
    }
    int place = b->count < BATCH ? b->count++ : b->order[BATCH - 1];
    memmove(b->order + low + 1, b->order + low, sizeof b->order[0] * (size_t)(b->count - 1 - low));
    b->order[low] = place;
    snprintf(b->names[place], sizeof b->names[place], "%s", name);
}

static int fill(const char *folder, const char *after, batch *b)
{
    DIR *entries = opendir(folder);
    b->count = 0;
    if (!entries) {
        return errno;
    }
    errno = 0;
    for (struct dirent *entry; (entry = readdir(entries)); errno = 0) {
        if (is_sheet(entry->d_name) && strcmp(entry->d_name, after) > 0) {
            insert(b, entry->d_name);
        }
    }
    int status = errno;
    closedir(entries);
    return status;
}

/* Returned: false if the loop over the folder has to end. */
static bool hand_out(const char *folder, const batch *b, cli_each *each, void *with)
{
    char path[PATH_MAX + NAME_MAX];
    size_t length = strlen(folder);
    const char *joint = length > 0 && folder[length - 1] == '/' ? "" : "/";
    for (int k = 0; k < b->count; k++) {
        snprintf(path, sizeof path, "%s%s%s", folder, joint, b->names[b->order[k]]);
        if (!each(with, path)) {
            return false;
        }
    }
    return b->count == BATCH;
}

int cli_go_through(const char *folder, cli_each *each, void *with, int *found)
{
    batch *b = malloc(sizeof *b);
    if (!b) {
        return cli_failed("out of memory");
    }
    char last[NAME_MAX + 1] = "";
    int status;
    *found = 0;
    do {
        status = fill(folder, last, b);
        *found += b->count;
        if (b->count > 0) {
            snprintf(last, sizeof last, "%s", b->names[b->order[b->count - 1]]);
        }
    } while (status == 0 && hand_out(folder, b, each, with));
    free(b);
    return status == 0 ? CLI_GO_ON : cli_failed("%s: cannot be read: %s", folder, strerror(status));
}
