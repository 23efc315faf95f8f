/* SPDX-License-Identifier: MIT */
/* Used inside the program: its commands and what they share. */
#ifndef SILLET_CLI_H
#define SILLET_CLI_H

#include <sillet/sillet.h>

/* One exit code for each kind of fault. */
typedef enum cli_exit {
    CLI_GO_ON = -1, /* the program goes on */
    CLI_DONE = 0,
    CLI_WRONG = 1,
    CLI_USAGE = 2,
    CLI_SYSTEM = 3
} cli_exit;

enum { CLI_OPTIONS_MAX = 12 };

/* An option. Help, the reading of arguments and the tests all use this row. */
typedef struct cli_option {
    const char *name;
    /* Its value: one of the words in "mm|in", or text such as "LENGTH" that the command reads.
     * NULL: it takes no value. */
    const char *value;
    const char *means; /* what the option means, in lines of help */
    bool wanted;       /* the command requires it */
} cli_option;

/* A command: one row of the table in commands.c. */
typedef struct cli_command {
    const char *name;
    const char *operand; /* what it works on, such as "SHEET"; NULL: nothing */
    bool many;           /* it accepts more than one */
    const char *purpose; /* one line of help */
    const char *about, *examples;
    cli_option options[CLI_OPTIONS_MAX]; /* the last without a name */
} cli_command;

extern const cli_command cli_commands[];               /* the last without a name */
const cli_command *cli_find_command(const char *name); /* NULL: there is none */

/* The arguments of a command. */
typedef struct cli_arguments {
    const cli_command *command;
    const char *values[CLI_OPTIONS_MAX]; /* values in the order of the options; NULL: not given */
    char **operands;                     /* the operands, without the options between them */
    int operand_count;
} cli_arguments;

/* Reads argv[1] and what follows, as the row of the command describes. Returned: CLI_GO_ON, and
 * the operand is then there if the row has one. Otherwise the exit code: help was printed, or
 * the command was used wrongly. */
int cli_read_arguments(const char *command, int argc, char **argv, cli_arguments *arguments);

/* The value of an option; NULL if it is not given. An option without a value has its own name as
 * its value. */
const char *cli_given(const cli_arguments *arguments, const char *option);

/* The index of the given word among the words of the option; so_far if the option is not given. */
int cli_choice(const cli_arguments *arguments, const char *option, int so_far);

/* Runs a command; argv[0] is its name. Returned: the exit code. */
typedef int cli_run(int argc, char **argv);
cli_run cli_plan, cli_draw, cli_serve, cli_start, cli_saddle, cli_nut, cli_tune, cli_tools,
    cli_profiles;

/* Print help on the program, and on one command. */
void cli_help(void);
void cli_help_command(const cli_command *command);

/* Prints a usage error on stderr, with "sillet: " before it and where to read more after it.
 * Returned: CLI_USAGE. */
__attribute__((format(printf, 1, 2))) int cli_misused(const char *format, ...);

/* Reports a failure of the system on stderr. Returned: CLI_SYSTEM. */
__attribute__((format(printf, 1, 2))) int cli_failed(const char *format, ...);

/* Reads a sheet and prints all its complaints on stderr. Returned: CLI_DONE if *sheet has a job.
 * Free *sheet in any case. */
int cli_read_sheet(const char *path, sil_sheet **sheet);

/* The same for a sheet that has been read, with the status of reading it. */
int cli_tell_sheet(const char *path, sil_status status, const sil_sheet *sheet);

/* Reads a profile on its own, by its name. Returned: CLI_DONE if *sheet has a job, which is
 * without readings. Free *sheet in any case. */
int cli_read_profile(const char *name, sil_sheet **sheet);

/* Prints a text on stdout. */
void cli_print(const char *words);

/* Closes stdout. Returned: CLI_SYSTEM if not all of the output could be written, otherwise the
 * code given. */
int cli_close_output(int code);

#endif
