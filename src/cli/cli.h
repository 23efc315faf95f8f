/* SPDX-License-Identifier: MIT */
/* Used inside the program: its commands, and what they share. */
#ifndef SILLET_CLI_H
#define SILLET_CLI_H

#include <sillet/sillet.h>

/* One exit code for each kind of fault. */
typedef enum cli_exit {
    CLI_GO_ON = -1, /* no reason to end yet */
    CLI_DONE = 0,
    CLI_WRONG = 1,
    CLI_USAGE = 2,
    CLI_SYSTEM = 3
} cli_exit;

enum { CLI_OPTIONS_MAX = 12 };

/* An option. Help, the reader of arguments and the tests all use this row. */
typedef struct cli_option {
    const char *name;
    const char *value; /* its value: "mm|in" one of these words, "LENGTH" something the command
                          reads; NULL: no value */
    const char *means; /* lines */
    bool wanted;       /* the command needs it */
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

/* The arguments given after a command. */
typedef struct cli_arguments {
    const cli_command *command;
    const char *values[CLI_OPTIONS_MAX]; /* values in the order of the options; NULL: not given */
    char **operands;                     /* the operands, moved together */
    int operand_count;
} cli_arguments;

/* Reads argv[1] .. by the row of the command. CLI_GO_ON, and then the operand is there if the row
 * has one; or the exit code if nothing is left to do, because help was printed or the command was
 * called wrongly. */
int cli_read_arguments(const char *command, int argc, char **argv, cli_arguments *arguments);

/* The value of an option, NULL if it is not given; an option without a value has its own name as
 * value. */
const char *cli_given(const cli_arguments *arguments, const char *option);

/* The index of the given word among those the option takes; if it is not given, the value passed
 * in. */
int cli_choice(const cli_arguments *arguments, const char *option, int so_far);

/* A command run: argv[0] is its own name; the exit code comes back. */
typedef int cli_run(int argc, char **argv);
cli_run cli_plan, cli_draw, cli_serve, cli_start, cli_saddle, cli_nut, cli_profiles;

/* Help on the program, and on one command. */
void cli_help(void);
void cli_help_command(const cli_command *command);

/* Prints a usage error on stderr, with "sillet: " before it and where to read more after it;
 * CLI_USAGE. */
__attribute__((format(printf, 1, 2))) int cli_misused(const char *format, ...);

/* Reports a failure of the system; CLI_SYSTEM. */
__attribute__((format(printf, 1, 2))) int cli_failed(const char *format, ...);

/* Reads a sheet and prints all its complaints on stderr. CLI_DONE: *sheet has a job; otherwise it
 * has none. Free it either way. */
int cli_read_sheet(const char *path, sil_sheet **sheet);

/* The same for a sheet already read, and the status it was read with. */
int cli_tell_sheet(const char *path, sil_status status, const sil_sheet *sheet);

/* Reads a profile alone, by its name. CLI_DONE: *sheet has a job without readings; otherwise it has
 * none. Free it either way. */
int cli_read_profile(const char *name, sil_sheet **sheet);

/* Puts a text on stdout. */
void cli_print(const char *words);

/* Closes stdout: CLI_SYSTEM if not all of the output could be written, otherwise the code given. */
int cli_close_output(int code);

#endif
