/* SPDX-License-Identifier: MIT */
#include "file.h"

#include <sillet/sillet.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>

enum { PATH_SIZE = 4096, FILE_MAX = 16 * 1024 * 1024 };

/* All of an open file; NULL if it is too large, or cannot be read. */
static char *read_all(FILE *file, size_t *size)
{
    struct stat about;
    if (fstat(fileno(file), &about) != 0 || !S_ISREG(about.st_mode) || about.st_size <= 0 ||
        about.st_size > FILE_MAX) {
        return NULL;
    }
    *size = (size_t)about.st_size;
    char *bytes = malloc(*size);
    if (bytes && fread(bytes, 1, *size, file) != *size) {
        free(bytes);
        bytes = NULL;
    }
    return bytes;
}

void file_load(web_site *site)
{
    /* From the program's folder: as installed, as built, as built for the tests. */
    static const char *const places[] = {"../../share/sillet", ".", ".."};
    char folder[PATH_SIZE], path[PATH_SIZE + 64];
    if (sil_program_folder(folder, sizeof folder) == 0) {
        return;
    }
    for (size_t i = 0; !site->file && i < sizeof places / sizeof *places; i++) {
        snprintf(path, sizeof path, "%s/%s/sillet.html", folder, places[i]);
        FILE *file = fopen(path, "rbe");
        if (file) {
            site->file = read_all(file, &site->file_size);
            fclose(file);
        }
    }
}

void file_free(web_site *site)
{
    free((void *)site->file);
    site->file = NULL;
}
