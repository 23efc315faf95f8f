/* SPDX-License-Identifier: MIT */
/* A file is written completely or not at all.
 *
 * The bytes go into a file without a name in the same folder, so that nothing is left over however
 * the program ends. Once they are on the disk, the file gets a name and then replaces the old one.
 */
#define _GNU_SOURCE /* NOLINT: O_TMPFILE */
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <signal.h>
#include <sillet/drawing.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { LINKS_MAX = 40 };

static int write_all(int file, const char *bytes, size_t size)
{
    while (size > 0) {
        ssize_t written = write(file, bytes, size);
        if (written < 0 && errno == EINTR) {
            continue;
        }
        if (written <= 0) {
            return written < 0 ? errno : EIO;
        }
        bytes += written;
        size -= (size_t)written;
    }
    return 0;
}

/* Closes a file. Returned: the given error, or the error of closing if there was none before. */
static int close_with(int file, int error)
{
    return close(file) != 0 && error == 0 && errno != EINTR ? errno : error;
}

/* The number of a descriptor that this program already has open, if the path names one;
 * otherwise -1. */
static int open_already(const char *path)
{
    static const char *const folders[] = {"/dev/fd/", "/proc/self/fd/"};
    if (strcmp(path, "-") == 0 || strcmp(path, "/dev/stdout") == 0) {
        return STDOUT_FILENO;
    }
    if (strcmp(path, "/dev/stderr") == 0) {
        return STDERR_FILENO;
    }
    for (size_t i = 0; i < sizeof folders / sizeof *folders; i++) {
        const char *digits = path + strlen(folders[i]);
        if (strncmp(path, folders[i], strlen(folders[i])) != 0 || *digits == '\0') {
            continue;
        }
        if (digits[strspn(digits, "0123456789")] == '\0') {
            return (int)strtol(digits, NULL, 10);
        }
    }
    return -1;
}

/* Follows links to the file they point to, which need not exist yet. */
static int follow(char *path)
{
    char target[PATH_MAX];
    for (int links = 0;; links++) {
        ssize_t length = readlink(path, target, sizeof target - 1);
        if (length < 0) {
            return errno == EINVAL || errno == ENOENT ? 0 : errno;
        }
        if (links == LINKS_MAX) {
            return ELOOP;
        }
        target[length] = '\0';
        char *slash = strrchr(path, '/');
        size_t folder = target[0] == '/' || slash == NULL ? 0 : (size_t)(slash + 1 - path);
        if (folder + (size_t)length >= PATH_MAX) {
            return ENAMETOOLONG;
        }
        memcpy(path + folder, target, (size_t)length + 1);
    }
}

static int write_straight(const char *path, const void *bytes, size_t size)
{
    int file = open(path, O_WRONLY | O_NOCTTY | O_CLOEXEC);
    return file < 0 ? errno : close_with(file, write_all(file, bytes, size));
}

/* Gives the new file the old one's permissions. If there was no old file, the umask has already
 * set them. */
static int set_rights(int file, const struct stat *old)
{
    if (old == NULL) {
        return 0;
    }
    /* A file of another owner keeps its owner if the system allows it. Only the owner may set
     * the set-id bits. */
    bool ours = fchown(file, old->st_uid, old->st_gid) == 0;
    return fchmod(file, old->st_mode & (ours ? 07777 : 0777)) != 0 ? errno : 0;
}

/* The path of an open file without a name, used to give it one. In a minimal root, this path
 * does not exist. */
static const char open_files[] = "/proc/self/fd";

/* Gives a file without a name its name. */
static int link_file(int file, const char *name)
{
    char open_file[32];
    snprintf(open_file, sizeof open_file, "%s/%d", open_files, file);
    return linkat(AT_FDCWD, open_file, AT_FDCWD, name, AT_SYMLINK_FOLLOW);
}

/* Tries names until one is free. A file without a name gets that name; if there is no such file
 * (-1), a new file is made with it.
 * Returned: at least 0, which is the descriptor of a new file; otherwise -1 with errno
 */
static int take_name(int file, char *temporary, mode_t mode)
{
    char *end = temporary + strlen(temporary) - 6;
    for (unsigned try = 0; try < 1000000; try++) {
        snprintf(end, 7, "%06u", ((unsigned)getpid() + try) % 1000000);
        int taken = file >= 0 ? link_file(file, temporary)
                              : open(temporary, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
        if (taken >= 0 || errno != EEXIST) {
            return taken;
        }
    }
    return -1;
}

/* Opens a file without a name in a folder. If the file system cannot make one, or it could not
 * be named later, opens a file with a name and writes that name into temporary. */
static int open_beside(const char *folder, char *temporary, mode_t mode, bool *named)
{
    bool nameable = access(open_files, X_OK) == 0;
    int file = nameable ? open(folder, O_TMPFILE | O_WRONLY | O_CLOEXEC, mode) : -1;
    *named = file < 0 && (errno == EOPNOTSUPP || errno == EISDIR || errno == ENOENT);
    return *named ? take_name(-1, temporary, mode) : file;
}

static int sync_folder(const char *folder)
{
    int file = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (file < 0) {
        return errno == EACCES ? 0 : errno; /* such a folder may be written to but not listed */
    }
    int error = fsync(file) != 0 && errno != EINVAL ? errno : 0;
    return close_with(file, error);
}

static int replace(const char *path, const struct stat *old, const void *bytes, size_t size)
{
    char folder[PATH_MAX], temporary[PATH_MAX + 32];
    const char *slash = strrchr(path, '/');
    size_t length = slash == NULL ? 0 : (size_t)(slash + 1 - path);
    bool named;
    snprintf(folder, sizeof folder, "%.*s.", (int)length, path);
    snprintf(temporary, sizeof temporary, "%.*s.sillet-XXXXXX", (int)length, path);
    int file = open_beside(folder, temporary, old == NULL ? 0666 : 0600, &named);
    if (file < 0) {
        return errno;
    }
    int error = write_all(file, bytes, size);
    if (error == 0) {
        error = set_rights(file, old);
    }
    if (error == 0 && fsync(file) != 0) {
        error = errno;
    }
    /* A new file gets its name directly. To replace an old one, the file first gets a temporary
     * name. */
    bool placed = error == 0 && !named && old == NULL && link_file(file, path) == 0;
    if (error == 0 && !named && !placed) {
        error = take_name(file, temporary, 0) < 0 ? errno : 0;
        named = error == 0;
    }
    error = close_with(file, error);
    if (error == 0 && !placed && rename(temporary, path) != 0) {
        error = errno;
    }
    if (error != 0) {
        if (named) {
            unlink(temporary);
        }
        return error;
    }
    return sync_folder(folder);
}

/* Signals that ask the program to end wait while a file is replaced. This takes only as long as
 * the disk needs. */
static int replace_undisturbed(const char *path, const struct stat *old, const void *bytes,
                               size_t size)
{
    sigset_t ends, before;
    sigemptyset(&ends);
    sigaddset(&ends, SIGINT);
    sigaddset(&ends, SIGTERM);
    sigaddset(&ends, SIGHUP);
    sigaddset(&ends, SIGQUIT);
    pthread_sigmask(SIG_BLOCK, &ends, &before);
    int error = replace(path, old, bytes, size);
    pthread_sigmask(SIG_SETMASK, &before, NULL);
    return error;
}

/* Returned: 0, or the errno of what failed. */
static int save(const char *path, const void *bytes, size_t size)
{
    char target[PATH_MAX];
    struct stat old;
    int descriptor = open_already(path);
    if (descriptor >= 0) {
        return write_all(descriptor, bytes, size);
    }
    if (snprintf(target, sizeof target, "%s", path) >= (int)sizeof target) {
        return ENAMETOOLONG;
    }
    int error = follow(target);
    if (error != 0) {
        return error;
    }
    bool there = stat(target, &old) == 0;
    if (!there && errno != ENOENT) {
        return errno;
    }
    if (there && S_ISDIR(old.st_mode)) {
        return EISDIR;
    }
    if (there && !S_ISREG(old.st_mode)) {
        return write_straight(target, bytes, size);
    }
    if (there && access(target, W_OK) != 0) {
        return errno; /* the file is write-protected */
    }
    return replace_undisturbed(target, there ? &old : NULL, bytes, size);
}

sil_status sil_file_save(const char *path, const void *bytes, size_t size)
{
    int error = save(path, bytes, size);
    if (error != 0) {
        errno = error;
    }
    return error == 0 ? SIL_DONE : SIL_NOT_SAVED;
}
