/* SPDX-License-Identifier: MIT */
/* Used inside sillet plan: the options given, for one sheet or for many. */
#ifndef SILLET_CLI_MANY_H
#define SILLET_CLI_MANY_H

#include "cli.h"

typedef struct plan_order {
    bool json;
    int unit;  /* a sil_unit, or -1: the sheet's own */
    int stage; /* a sil_stage_name, or -1: all of them */
} plan_order;

/* The plan of a job as ordered, to be freed. */
sil_status plan_of(const plan_order *order, const sil_job *job, sil_plan **plan);

/* What its lengths are told in. */
sil_unit plan_unit(const plan_order *order, const sil_job *job);

/* Prints a line for each of many sheets, and for those in folders among them; returns the worst
 * exit code. */
int plan_many(const plan_order *order, char **paths, int count);

/* Called for every sheet of a folder in the order of their names, until it returns false. */
typedef bool plan_each(void *with, const char *path);

bool plan_is_folder(const char *path);

/* Goes through a folder's sheets (.yaml, .yml, .json), in constant memory, and puts how many there
 * were into *found. CLI_GO_ON, or CLI_SYSTEM if the folder cannot be read. */
int plan_go_through(const char *folder, plan_each *each, void *with, int *found);

/* Prints a text in so many columns of a terminal: cut with an ellipsis if it is longer, padded if
 * it is shorter. What cannot be shown is a blank. 0 columns: the whole text, without padding. */
void plan_cell(const char *text, int columns);

/* The columns a text takes on a terminal. */
int plan_columns(const char *text);

#endif
