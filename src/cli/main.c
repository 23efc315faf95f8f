/* SPDX-License-Identifier: MIT */
/* sillet: the program. One row per command; commands.c says what each takes. */
#include <stdio.h>
#include <string.h>

#include "cli.h"

static const struct {
    const char *name;
    cli_run *run;
} runs[] = {
    {"start", cli_start}, {"plan", cli_plan},     {"draw", cli_draw}, {"sheet", cli_draw},
    {"serve", cli_serve}, {"saddle", cli_saddle}, {"nut", cli_nut},   {"profiles", cli_profiles},
};

/* "start, plan, draw, saddle, nut and profiles" */
static const char *names(char out[256])
{
    size_t used = 0;
    out[0] = '\0';
    for (const cli_command *command = cli_commands; command->name; command++) {
        const char *joint = command == cli_commands ? "" : command[1].name ? ", " : " and ";
        used += (size_t)snprintf(out + used, 256 - used, "%s%s", joint, command->name);
    }
    return out;
}

static int run_command(int argc, char **argv)
{
    char all[256];
    const char *word = argc < 2 ? NULL : argv[1];
    if (!word) {
        return cli_misused("a command is wanted; there are %s", names(all));
    }
    if (strcmp(word, "--help") == 0) {
        cli_help();
        return CLI_DONE;
    }
    if (strcmp(word, "--version") == 0) {
        cli_print("sillet " SILLET_VERSION "\n");
        return CLI_DONE;
    }
    for (size_t k = 0; k < sizeof runs / sizeof *runs; k++) {
        if (strcmp(word, runs[k].name) == 0) {
            return runs[k].run(argc - 1, argv + 1);
        }
    }
    return cli_misused("there is no command '%s'; there are %s", word, names(all));
}

int main(int argc, char **argv)
{
    return cli_close_output(run_command(argc, argv));
}
