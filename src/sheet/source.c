/* SPDX-License-Identifier: MIT */
/* Files, and their bytes to nodes. */
#include "profile.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static const size_t bytes_most = (size_t)SIL_SHEET_BYTES_MAX;

static int read_all(int file, sheet_bytes *into)
{
    while (into->size <= bytes_most) {
        ssize_t more = read(file, into->bytes + into->size, bytes_most + 1 - into->size);
        if (more < 0 && errno == EINTR) {
            continue;
        }
        if (more < 0) {
            return errno;
        }
        if (more == 0) {
            return 0;
        }
        into->size += (size_t)more;
    }
    return 0;
}

static int read_open(int file, sheet_bytes *into)
{
    into->size = 0;
    into->bytes = malloc(bytes_most + 1);
    int status = into->bytes ? read_all(file, into) : ENOMEM;
    if (status != 0) {
        free(into->bytes);
        into->bytes = NULL;
    }
    return status;
}

int sheet_file_read(const char *path, sheet_bytes *into)
{
    if (strcmp(path, "-") == 0) {
        return read_open(STDIN_FILENO, into);
    }
    int file = open(path, O_RDONLY | O_CLOEXEC);
    if (file < 0) {
        return errno;
    }
    int status = read_open(file, into);
    close(file);
    return status;
}

int sheet_file_read_within(int folder, const char *name, sheet_bytes *into)
{
    struct stat about;
    if (folder < 0 || strchr(name, '/')) {
        return EACCES;
    }
    int file = openat(folder, name, O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
    if (file < 0) {
        return errno;
    }
    int status = fstat(file, &about) == 0 && S_ISREG(about.st_mode) ? read_open(file, into) : ELOOP;
    close(file);
    return status;
}

sheet_node *sheet_source_read(sil_sheet *sheet, sheet_source *source)
{
    const sheet_mark start = {1, 1};
    if (source->size > bytes_most) {
        source->size = bytes_most;
        sheet_tell_at(sheet, SIL_ERROR, source, start,
                      "over 256 KiB: this is not a measuring sheet");
        return NULL;
    }
    sheet_bytes_check(sheet, source);
    sheet_node *root = sheet_tree_read(sheet, source);
    if (!root && !source->cut) {
        sheet_tell_at(sheet, SIL_ERROR, source, start, "empty: a sheet begins with sillet: 1");
    } else if (root && root->shape != SHEET_MAPPING) {
        sheet_tell_value(sheet, SIL_ERROR, root, "wanted keys and values, from sillet: 1 on");
        return NULL;
    }
    return root;
}

sil_unit sheet_root_units(const sheet_node *root)
{
    const sheet_node *units = sheet_node_find(root, "units", strlen("units"));
    bool inches = units && units->shape == SHEET_SCALAR && strcmp(units->text, "in") == 0;
    return inches ? SIL_INCH : SIL_MM;
}
