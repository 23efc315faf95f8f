/* SPDX-License-Identifier: MIT */
/* The folder of profiles, and what is in it. */
#include "profile.h"

#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

enum { PATH_SIZE = 4096 };

static bool is_folder(const char *path)
{
    struct stat about;
    return stat(path, &about) == 0 && S_ISDIR(about.st_mode);
}

/* Places relative to the running program: first as installed, then as built. */
static bool folder_beside_program(char *out, size_t size)
{
    static const char *const places[] = {"../share/sillet/profiles", "../profiles"};
    char program[PATH_SIZE];
    size_t length = sil_program_folder(program, sizeof program);
    for (size_t i = 0; length > 0 && i < sizeof places / sizeof places[0]; i++) {
        int needed = snprintf(out, size, "%s/%s", program, places[i]);
        if (needed > 0 && (size_t)needed < size && is_folder(out)) {
            return true;
        }
    }
    return false;
}

/* A folder's path copied out: its length, or 0 where there is no room for it. */
static size_t take_folder(const char *folder, char *out, size_t size)
{
    size_t length = strlen(folder);
    snprintf(out, size, "%s", folder);
    return length < size ? length : 0;
}

size_t sil_profiles_folder(char *out, size_t size)
{
    const char *said = getenv("SILLET_PROFILES");
    if (said && *said) {
        return take_folder(said, out, size);
    }
    if (folder_beside_program(out, size)) {
        return strlen(out);
    }
    if (*sheet_installed_profiles && is_folder(sheet_installed_profiles)) {
        return take_folder(sheet_installed_profiles, out, size);
    }
    return 0;
}

size_t sheet_profile_name_length(const char *file)
{
    static const char ending[] = ".yaml";
    size_t length = strlen(file);
    size_t tail = sizeof ending - 1;
    return length > tail && strcmp(file + length - tail, ending) == 0 ? length - tail : 0;
}

static int is_profile(const struct dirent *entry)
{
    return sheet_profile_name_length(entry->d_name) > 0;
}

/* Compares names without ".yaml", which would put "ukulele-reentrant" before "ukulele". */
static int by_name(const struct dirent **a, const struct dirent **b)
{
    size_t length = sheet_profile_name_length((*a)->d_name);
    size_t other = sheet_profile_name_length((*b)->d_name);
    int order = strncmp((*a)->d_name, (*b)->d_name, length < other ? length : other);
    return order != 0 ? order : (length > other) - (length < other);
}

/* The names of profiles among a folder's entries, which are freed; NULL out of memory. */
static char **take_names(struct dirent **entries, int count)
{
    char **names = calloc((size_t)count + 1, sizeof *names);
    bool whole = names != NULL;
    for (int k = 0; k < count; k++) {
        if (whole) {
            names[k] = strndup(entries[k]->d_name, sheet_profile_name_length(entries[k]->d_name));
            whole = names[k] != NULL;
        }
        free(entries[k]);
    }
    free(entries);
    if (!whole) {
        sil_profiles_free(names, names ? count : 0);
        return NULL;
    }
    return names;
}

sil_status sil_profiles_list(char ***names, int *count)
{
    char folder[PATH_SIZE];
    struct dirent **entries = NULL;
    *names = NULL;
    *count = 0;
    if (sil_profiles_folder(folder, sizeof folder) == 0) {
        errno = ENOENT;
        return SIL_UNREADABLE;
    }
    int found = scandir(folder, &entries, is_profile, by_name);
    if (found < 0) {
        return errno == ENOMEM ? SIL_NO_MEMORY : SIL_UNREADABLE;
    }
    char **taken = take_names(entries, found);
    *count = taken ? found : 0;
    *names = taken;
    return taken ? SIL_DONE : SIL_NO_MEMORY;
}

void sil_profiles_free(char **names, int count)
{
    for (int k = 0; k < count; k++) {
        free(names[k]);
    }
    free(names);
}
