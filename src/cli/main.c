/* SPDX-License-Identifier: MIT */
/* sillet: the main program. It has one row per command; commands.c describes their options. */
#include <string.h>

#include "../text/text.h"
#include "cli.h"

static const struct {
    const char *name;
    cli_run *run;
} runs[] = {
    {"start", cli_start}, {"plan", cli_plan},         {"draw", cli_draw}, {"sheet", cli_draw},
    {"serve", cli_serve}, {"saddle", cli_saddle},     {"nut", cli_nut},   {"tune", cli_tune},
    {"tools", cli_tools}, {"profiles", cli_profiles},
};

/* Writes the names of all commands: "start, plan, draw, saddle, nut and profiles". */
static text names(void)
{
    text all = {0};
    for (const cli_command *command = cli_commands; command->name; command++) {
        const char *joint = command == cli_commands ? "" : command[1].name ? ", " : " and ";
        text_add(&all, "%s%s", joint, command->name);
    }
    return all;
}

/* word: NULL if none was given. */
static int refuse(const char *word)
{
    text all = names();
    int code = word ? cli_misused("there is no command '%s'; there are %s", word, text_read(&all))
                    : cli_misused("a command is wanted; there are %s", text_read(&all));
    text_free(&all);
    return code;
}

static int run_command(int argc, char **argv)
{
    const char *word = argc < 2 ? NULL : argv[1];
    if (!word) {
        return refuse(NULL);
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
    return refuse(word);
}

int main(int argc, char **argv)
{
    return cli_close_output(run_command(argc, argv));
}
