/* SPDX-License-Identifier: MIT */
/* Within sillet plan: what was asked for, of one sheet or of many. */
#ifndef SILLET_CLI_MANY_H
#define SILLET_CLI_MANY_H

#include "cli.h"

typedef struct plan_order {
    bool json;
    int unit;  /* a sil_unit, or -1: as the sheet */
    int stage; /* a sil_stage_name, or -1: all of them */
} plan_order;

/* The plan of a job as ordered, to be freed. */
sil_status plan_of(const plan_order *order, const sil_job *job, sil_plan **plan);

/* What its lengths are told in. */
sil_unit plan_unit(const plan_order *order, const sil_job *job);

/* A line each of many sheets, and of those in folders among them; the worst exit code. */
int plan_many(const plan_order *order, char **paths, int count);

/* Called for every sheet of a folder in the order of their names, until it returns false. */
typedef bool plan_each(void *with, const char *path);

bool plan_is_folder(const char *path);

/* Goes through a folder's sheets (.yaml, .yml, .json) and says in *found how many there were. In
 * constant memory, however many. CLI_GO_ON, or CLI_SYSTEM where it cannot be read. */
int plan_go_through(const char *folder, plan_each *each, void *with, int *found);

/* A text in so many columns of a terminal, cut with an ellipsis where it is longer, filled up where
 * it is shorter; what cannot be shown is a blank. 0 columns: as long as it is, nothing filled. */
void plan_cell(const char *text, int columns);

/* The columns a text takes on a terminal. */
int plan_columns(const char *text);

#endif
