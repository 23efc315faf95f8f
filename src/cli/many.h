/* SPDX-License-Identifier: MIT */
/* Used inside sillet plan: the options given, for one sheet or for many. */
#ifndef SILLET_CLI_MANY_H
#define SILLET_CLI_MANY_H

#include "cli.h"

typedef struct cli_options {
    bool json, full;
    bool by_waits; /* the table is sorted by what the sheets wait for */
    int unit;      /* a sil_unit, or -1: the sheet's own */
    int stage;     /* a sil_stage_name, or -1: all of them */
} cli_options;

/* Makes the plan of a job with these options. The caller frees it. */
sil_status cli_make_plan(const cli_options *order, const sil_job *job, sil_plan **plan);

/* The unit of the lengths in the plan. */
sil_unit cli_plan_unit(const cli_options *order, const sil_job *job);

/* Prints a line for each sheet, and for each sheet of the folders among the paths. Returned: the
 * worst exit code. */
int cli_plan_many(const cli_options *order, char **paths, int count);

/* Called for every sheet of a folder, in the order of their names, until it returns false. */
typedef bool cli_each(void *with, const char *path);

bool cli_is_folder(const char *path);

/* Goes through the sheets of a folder (.yaml, .yml, .json), in constant memory, and puts their
 * number into *found. Returned: CLI_GO_ON, or CLI_SYSTEM if the folder cannot be read. */
int cli_go_through(const char *folder, cli_each *each, void *with, int *found);

/* Prints a text in a number of columns of a terminal: cut with an ellipsis if it is longer,
 * padded if it is shorter. A letter that cannot be shown becomes a blank. With 0 columns, prints
 * the whole text without padding. */
void cli_cell(const char *words, int columns);

/* The columns a text takes on a terminal. */
int cli_columns(const char *words);

#endif
