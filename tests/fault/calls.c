/* SPDX-License-Identifier: MIT */
#define _GNU_SOURCE /* NOLINT: O_TMPFILE */
#include "calls.h"

#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <sys/stat.h>
#include <unistd.h>

static calls_tale *told;
static int fails_at, fails_with;

void calls_arm(calls_tale *tale, int fails, int with)
{
    tale->count = 0;
    fails_at = fails;
    fails_with = with;
    told = tale;
}

/* 0, or what this call is to fail with. */
static int fault(const char *name)
{
    if (!told || told->count + 1 == CALLS_MAX) {
        return 0;
    }
    told->name[++told->count] = name;
    return told->count == fails_at ? fails_with : 0;
}

/* Whether it is to fail; a call that cannot be short then does nothing odd. */
static bool fails(const char *name)
{
    int with = fault(name);
    if (with > 0) {
        errno = with;
    }
    return with > 0;
}

ssize_t __real_read(int file, void *into, size_t size);
ssize_t __real_write(int file, const void *bytes, size_t size);
int __real_open(const char *path, int flags, ...);
int __real_close(int file);
int __real_fsync(int file);
int __real_fchmod(int file, mode_t mode);
int __real_fchown(int file, uid_t user, gid_t group);
int __real_stat(const char *path, struct stat *about);
int __real_access(const char *path, int mode);
int __real_linkat(int from, const char *old, int to, const char *new, int flags);
int __real_rename(const char *old, const char *new);
ssize_t __real_readlink(const char *path, char *into, size_t size);

ssize_t __wrap_read(int file, void *into, size_t size);
ssize_t __wrap_write(int file, const void *bytes, size_t size);
int __wrap_open(const char *path, int flags, ...);
int __wrap_close(int file);
int __wrap_fsync(int file);
int __wrap_fchmod(int file, mode_t mode);
int __wrap_fchown(int file, uid_t user, gid_t group);
int __wrap_stat(const char *path, struct stat *about);
int __wrap_access(const char *path, int mode);
int __wrap_linkat(int from, const char *old, int to, const char *new, int flags);
int __wrap_rename(const char *old, const char *new);
ssize_t __wrap_readlink(const char *path, char *into, size_t size);

ssize_t __wrap_read(int file, void *into, size_t size)
{
    int with = fault("read");
    errno = with > 0 ? with : errno;
    return with > 0 ? -1
                    : __real_read(file, into, with == CALLS_SHORT ? (size + 999) / 1000 : size);
}

ssize_t __wrap_write(int file, const void *bytes, size_t size)
{
    int with = fault("write");
    errno = with > 0 ? with : errno;
    return with > 0 ? -1 : __real_write(file, bytes, with == CALLS_SHORT ? (size + 1) / 2 : size);
}

int __wrap_open(const char *path, int flags, ...)
{
    mode_t mode = 0;
    if (flags & (O_CREAT | O_TMPFILE)) {
        va_list more;
        va_start(more, flags);
        mode = va_arg(more, mode_t);
        va_end(more);
    }
    return fails("open") ? -1 : __real_open(path, flags, mode);
}

/* As Linux has it, a file is closed whatever close says. */
int __wrap_close(int file)
{
    bool failed = fails("close");
    int with = errno, done = __real_close(file);
    errno = failed ? with : errno;
    return failed ? -1 : done;
}

int __wrap_fsync(int file)
{
    return fails("fsync") ? -1 : __real_fsync(file);
}

int __wrap_fchmod(int file, mode_t mode)
{
    return fails("fchmod") ? -1 : __real_fchmod(file, mode);
}

int __wrap_fchown(int file, uid_t user, gid_t group)
{
    return fails("fchown") ? -1 : __real_fchown(file, user, group);
}

int __wrap_stat(const char *path, struct stat *about)
{
    return fails("stat") ? -1 : __real_stat(path, about);
}

int __wrap_access(const char *path, int mode)
{
    return fails("access") ? -1 : __real_access(path, mode);
}

int __wrap_linkat(int from, const char *old, int to, const char *new, int flags)
{
    return fails("linkat") ? -1 : __real_linkat(from, old, to, new, flags);
}

int __wrap_rename(const char *old, const char *new)
{
    return fails("rename") ? -1 : __real_rename(old, new);
}

ssize_t __wrap_readlink(const char *path, char *into, size_t size)
{
    return fails("readlink") ? -1 : __real_readlink(path, into, size);
}
