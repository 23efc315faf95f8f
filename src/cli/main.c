/* SPDX-License-Identifier: MIT */
/* sillet: the program. One row a command. */
#include <string.h>

#include "cli.h"

static const char help[] =
    "sillet " SIL_VERSION ": from a few readings at the bench to what to cut, in which order\n"
    "and how much.\n"
    "\n"
    "  sillet plan SHEET [--json] [--units mm|in] [--stage STAGE]\n"
    "      The ordered bench plan of a measuring sheet: what is wrong, what to do, how\n"
    "      much to take before reading again. --json: the result for programs. --stage: the\n"
    "      findings and steps of now, rod, frets, nut or saddle alone.\n"
    "  sillet draw SHEET -o OUT.pdf [--part nut|saddle|all] [--paper A4|A3|Letter] [--units "
    "mm|in]\n"
    "      The same as full-size drawings to cut by.\n"
    "  sillet start PROFILE\n"
    "      A commented measuring sheet to fill in, on standard output.\n"
    "  sillet saddle --scale 25.5in --action 2.6mm --want 2.2mm [--setback 2mm] [--json]\n"
    "  sillet nut --scale 645mm --first 0.2mm --want 0.05mm [--held 3|2|open] [--json]\n"
    "      One string, one question: how much to take off there. [--units mm|in]\n"
    "  sillet profiles\n"
    "      The kinds of instrument a sheet can name.\n"
    "  sillet --help, sillet --version\n"
    "\n"
    "SHEET is a YAML file, '-' is standard input. Results go to standard output, everything\n"
    "else to standard error. Exit: 0 done, 1 the sheet is wrong, 2 wrong use, 3 the system\n"
    "failed us.\n";

typedef struct command_row {
    const char *name;
    cli_command *run;
} command_row;

static int cli_help(int argc, char **argv)
{
    (void)argc;
    (void)argv;
    cli_print(help);
    return CLI_DONE;
}

static int cli_version(int argc, char **argv)
{
    (void)argc;
    (void)argv;
    cli_print("sillet " SIL_VERSION "\n");
    return CLI_DONE;
}

static const command_row commands[] = {
    {"plan", cli_plan},     {"draw", cli_draw},         {"start", cli_start},
    {"saddle", cli_saddle}, {"nut", cli_nut},           {"profiles", cli_profiles},
    {"--help", cli_help},   {"--version", cli_version},
};

static int run_command(int argc, char **argv)
{
    if (argc < 2) {
        return cli_misused("a command is wanted: plan, draw, start, saddle, nut or profiles");
    }
    for (size_t k = 0; k < sizeof commands / sizeof *commands; k++) {
        if (strcmp(argv[1], commands[k].name) == 0) {
            return commands[k].run(argc - 1, argv + 1);
        }
    }
    return cli_misused("there is no command '%s'; plan, draw, start, saddle, nut and profiles are",
                       argv[1]);
}

int main(int argc, char **argv)
{
    return cli_close_output(run_command(argc, argv));
}
