/* SPDX-License-Identifier: MIT */
/* Within the program: its commands, and what they share. */
#ifndef SILLET_CLI_H
#define SILLET_CLI_H

#include <sillet/sillet.h>

/* One exit code a kind of fault. */
typedef enum cli_exit {
    CLI_GO_ON = -1, /* nothing to end for yet */
    CLI_DONE = 0,
    CLI_WRONG = 1,
    CLI_USAGE = 2,
    CLI_SYSTEM = 3
} cli_exit;

enum { CLI_OPTIONS_MAX = 12 };

/* An option, as help, the reader of arguments and the tests have it. */
typedef struct cli_option {
    const char *name;
    const char *value; /* what stands behind it: "mm|in" one of these, "LENGTH" what the command
                        * reads; NULL: nothing does */
    const char *means; /* lines */
    bool wanted;       /* no work without it */
} cli_option;

/* A command: one row of the table in commands.c. */
typedef struct cli_command {
    const char *name;
    const char *operand; /* what it works on, "SHEET"; NULL: nothing */
    bool many;           /* takes more than one of them */
    const char *purpose; /* a line */
    const char *about, *examples;
    cli_option options[CLI_OPTIONS_MAX]; /* the last without a name */
} cli_command;

extern const cli_command cli_commands[];               /* the last without a name */
const cli_command *cli_find_command(const char *name); /* NULL: there is none */

/* What stood behind a command. */
typedef struct cli_arguments {
    const cli_command *command;
    const char *values[CLI_OPTIONS_MAX]; /* in the order of its options; NULL: not given */
    char **operands;                     /* the arguments themselves, put together */
    int operand_count;
} cli_arguments;

/* Reads argv[1] .. by the row of the command. CLI_GO_ON; or the exit code where all has been said:
 * help was asked for, or it is called wrong. An operand, where the row has one, is then there. */
int cli_read_arguments(const char *command, int argc, char **argv, cli_arguments *arguments);

/* The value of an option, NULL where it is not given; an option without value is its own. */
const char *cli_given(const cli_arguments *arguments, const char *option);

/* The place, from 0, of the word given among those the option can take; else what is so far. */
int cli_choice(const cli_arguments *arguments, const char *option, int so_far);

/* A command run: argv[0] is its own name; the exit code comes back. */
typedef int cli_run(int argc, char **argv);
cli_run cli_plan, cli_draw, cli_serve, cli_start, cli_saddle, cli_nut, cli_profiles;

/* Help on the program, and on one command. */
void cli_help(void);
void cli_help_command(const cli_command *command);

/* Tells a usage error on stderr, "sillet: " before it and where to read more behind; CLI_USAGE. */
__attribute__((format(printf, 1, 2))) int cli_misused(const char *format, ...);

/* Tells that the system failed us; CLI_SYSTEM. */
__attribute__((format(printf, 1, 2))) int cli_failed(const char *format, ...);

/* Reads a sheet, telling all its complaints on stderr. CLI_DONE: *sheet holds a job; else there is
 * none. To be freed either way. */
int cli_read_sheet(const char *path, sil_sheet **sheet);

/* The same for a sheet already read, and the status it was read with. */
int cli_tell_sheet(const char *path, sil_status status, const sil_sheet *sheet);

/* Reads a profile alone, by its name. CLI_DONE: *sheet holds a job without readings; else there is
 * none. To be freed either way. */
int cli_read_profile(const char *name, sil_sheet **sheet);

/* Puts a text on stdout. */
void cli_print(const char *text);

/* Closes stdout: CLI_SYSTEM where not all of it arrived, else the code given. */
int cli_close_output(int code);

#endif
