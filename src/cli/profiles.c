/* SPDX-License-Identifier: MIT */
/* sillet profiles: the kinds of instrument that a sheet can name. */
#include <errno.h>
#include <string.h>

#include "cli.h"

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
    char **names;
    int count;
    sil_status status = sil_profiles_list(&names, &count);
    if (status != SIL_DONE) {
        return cli_failed("%s: %s", folder, strerror(status == SIL_NO_MEMORY ? ENOMEM : errno));
    }
    for (int k = 0; k < count; k++) {
        cli_print(names[k]);
        cli_print("\n");
    }
    sil_profiles_free(names, count);
    return CLI_DONE;
}
