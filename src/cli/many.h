/* SPDX-License-Identifier: MIT */
/* Used inside sillet plan: the options given, for one sheet or for many. */
#ifndef SILLET_CLI_MANY_H
#define SILLET_CLI_MANY_H

#include "cli.h"

typedef struct cli_order {
    bool json;
    int unit;  /* a sil_unit, or -1: the sheet's own */
    int stage; /* a sil_stage_name, or -1: all of them */
} cli_order;

/* Makes the plan of a job with these options, to be freed. */
sil_status cli_make_plan(const cli_order *order, const sil_job *job, sil_plan **plan);

/* The unit of its lengths. */
sil_unit cli_plan_unit(const cli_order *order, const sil_job *job);

/* Prints a line for each of many sheets, and for those in folders among them; returns the worst
 * exit code. */
int cli_plan_many(const cli_order *order, char **paths, int count);

/* Called for every sheet of a folder in the order of their names, until it returns false. */
typedef bool cli_each(void *with, const char *path);

bool cli_is_folder(const char *path);

/* Goes through a folder's sheets (.yaml, .yml, .json), in constant memory, and puts how many there
 * were into *found. CLI_GO_ON, or CLI_SYSTEM if the folder cannot be read. */
int cli_go_through(const char *folder, cli_each *each, void *with, int *found);

/* Prints a text in so many columns of a terminal: cut with an ellipsis if it is longer, padded if
 * it is shorter. What cannot be shown is a blank. 0 columns: the whole text, without padding. */
void cli_cell(const char *words, int columns);

/* The columns a text takes on a terminal. */
int cli_columns(const char *words);

#endif
