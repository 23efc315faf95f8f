/* SPDX-License-Identifier: MIT */
/* Within the program: its commands, and what they share. */
#ifndef SILLET_CLI_H
#define SILLET_CLI_H

#include <sillet/sillet.h>

/* One exit code a kind of fault. */
typedef enum cli_exit { CLI_DONE = 0, CLI_WRONG = 1, CLI_USAGE = 2, CLI_SYSTEM = 3 } cli_exit;

/* A command: argv[0] is its own name; the exit code comes back. */
typedef int cli_command(int argc, char **argv);
cli_command cli_plan, cli_draw, cli_start, cli_saddle, cli_nut, cli_profiles;

/* Tells a usage error on stderr, "sillet: " before it and where to read more behind; CLI_USAGE. */
__attribute__((format(printf, 1, 2))) int cli_misused(const char *format, ...);

/* Tells that the system failed us; CLI_SYSTEM. */
__attribute__((format(printf, 1, 2))) int cli_failed(const char *format, ...);

/* The value of an option that takes one: argv[*at + 1], stepped over; NULL where there is none. */
const char *cli_value(int argc, char **argv, int *at);

/* Reads "mm" or "in". */
bool cli_unit(const char *word, sil_unit *unit);

/* Reads a sheet, telling all its complaints on stderr. CLI_DONE: *sheet holds a job; else it is
 * already freed. */
int cli_read_sheet(const char *path, sil_sheet **sheet);

/* Puts a text on stdout, with an end of line if asked for. */
void cli_print(const char *text);

/* Closes stdout: CLI_SYSTEM where not all of it arrived, else the code given. */
int cli_close_output(int code);

#endif
