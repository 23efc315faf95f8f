/* SPDX-License-Identifier: MIT */
/* sillet draw, sillet sheet, sillet serve: each runs a program of its own, which is in the same
 * folder as this one or, when installed, in ../libexec/sillet. Their libraries take longer to load
 * than a plan takes to make. */
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli.h"

/* The other program would look for profiles relative to its own folder, so it gets the folder
 * where this one finds them. */
static void hand_over_profiles(void)
{
    char folder[PATH_MAX];
    const char *given = getenv("SILLET_PROFILES");
    size_t length = sil_profiles_folder(folder, sizeof folder);
    if ((!given || *given == '\0') && length > 0 && length < sizeof folder) {
        setenv("SILLET_PROFILES", folder, 1);
    }
}

static int run_beside(const char *name, char **argv)
{
    static const char *const places[] = {"", "../libexec/sillet/"};
    char folder[PATH_MAX];
    char program[PATH_MAX + 64];
    if (sil_program_folder(folder, sizeof folder) == 0) {
        return cli_failed("%s: cannot tell where this program stands", argv[0]);
    }
    hand_over_profiles();
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
        snprintf(program, sizeof program, "%s/%s%s", folder, places[i], name);
        execv(program, argv);
        if (errno != ENOENT) {
            break;
        }
    }
    return cli_failed("%s: cannot run %s: %s", argv[0], name, strerror(errno));
}

int cli_draw(int argc, char **argv)
{
    (void)argc;
    return run_beside("sillet-draw", argv);
}

int cli_serve(int argc, char **argv)
{
    (void)argc;
    return run_beside("sillet-serve", argv);
}
