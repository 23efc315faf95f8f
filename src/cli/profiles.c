/* SPDX-License-Identifier: MIT */
/* sillet profiles: the kinds of instrument that a sheet can name. */
#include <dirent.h>
#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "cli.h"

static const char ending[] = ".yaml";

static int is_profile(const struct dirent *entry)
{
    size_t length = strlen(entry->d_name);
    size_t tail = sizeof ending - 1;
    return length > tail && strcmp(entry->d_name + length - tail, ending) == 0;
}

/* By name alone: an ending would put "ukulele-reentrant" before "ukulele". */
static int by_name(const struct dirent **a, const struct dirent **b)
{
    size_t tail = sizeof ending - 1;
    size_t length = strlen((*a)->d_name) - tail, other = strlen((*b)->d_name) - tail;
    int order = strncmp((*a)->d_name, (*b)->d_name, length < other ? length : other);
    return order != 0 ? order : (length > other) - (length < other);
}

int cli_profiles(int argc, char **argv)
{
    cli_arguments arguments;
    int code = cli_read_arguments("profiles", argc, argv, &arguments);
    if (code != CLI_GO_ON) {
        return code;
    }
    char folder[4096];
    if (sil_profiles_folder(folder, sizeof folder) == 0) {
        return cli_failed("no folder of profiles found; $SILLET_PROFILES can name one");
    }
    struct dirent **entries = NULL;
    int count = scandir(folder, &entries, is_profile, by_name);
    if (count < 0) {
        return cli_failed("%s: %s", folder, strerror(errno));
    }
    for (int k = 0; k < count; k++) {
        entries[k]->d_name[strlen(entries[k]->d_name) - (sizeof ending - 1)] = '\0';
        cli_print(entries[k]->d_name);
        cli_print("\n");
        free(entries[k]);
    }
    free(entries);
    return CLI_DONE;
}
