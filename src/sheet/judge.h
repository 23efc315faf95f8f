/* SPDX-License-Identifier: MIT */
/* Used inside the sheet reader: the check of the job, with each fault reported at the place its
 * value came from. */
#ifndef SILLET_SHEET_JUDGE_H
#define SILLET_SHEET_JUDGE_H

#include "tree.h"

/* Checks the job filled from the tree under root. */
void sheet_judge_job(sil_sheet *sheet, sheet_node *root);

#endif
