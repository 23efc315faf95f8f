/* SPDX-License-Identifier: MIT */
/* Within the sheet reader: the job's check, told at the places the values came from. */
#ifndef SILLET_SHEET_JUDGE_H
#define SILLET_SHEET_JUDGE_H

#include "tree.h"

/* Checks the job filled from the tree under root. */
void sheet_judge_job(sil_sheet *sheet, sheet_node *root);

#endif
