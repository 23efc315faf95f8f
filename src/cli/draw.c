/* SPDX-License-Identifier: MIT */
/* sillet draw, sillet sheet: runs the program that draws, which stands beside this one or,
 * installed, in
 * ../libexec/sillet. It is one of its own because its libraries cost more to load than a plan costs
 * to make. */
#include <errno.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli.h"

/* sillet-draw looks for profiles from where it stands; they are found from here. */
static void hand_over_profiles(void)
{
    char folder[PATH_MAX];
    const char *given = getenv("SILLET_PROFILES");
    size_t length = sil_profiles_folder(folder, sizeof folder);
    if ((!given || *given == '\0') && length > 0 && length < sizeof folder) {
        setenv("SILLET_PROFILES", folder, 1);
    }
}

int cli_draw(int argc, char **argv)
{
    static const char *const places[] = {"sillet-draw", "../libexec/sillet/sillet-draw"};
    char folder[PATH_MAX];
    char program[PATH_MAX + 64];
    (void)argc;
    if (sil_program_folder(folder, sizeof folder) == 0) {
        return cli_failed("%s: cannot tell where this program stands", argv[0]);
    }
    hand_over_profiles();
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
        snprintf(program, sizeof program, "%s/%s", folder, places[i]);
        execv(program, argv);
        if (errno != ENOENT) {
            break;
        }
    }
    return cli_failed("%s: cannot run sillet-draw: %s", argv[0], strerror(errno));
}
