/* SPDX-License-Identifier: MIT */
/* Used inside the sheet reader: fills a job from nodes, by the rows of the job's fields. */
#ifndef SILLET_SHEET_FILL_H
#define SILLET_SHEET_FILL_H

#include "../job/fields.h"
#include "tree.h"

typedef struct sheet_filler sheet_filler;

/* Fills one field of the struct at base from a node that has a value. */
typedef void sheet_fill(sheet_filler *filler, sheet_node *node, const job_field *field, void *base);

struct sheet_filler {
    sil_sheet *sheet;
    sil_job *job;
    sheet_node *root;
    sheet_fill *const *fills;    /* what reads each kind of field */
    int course[SIL_STRINGS_MAX]; /* of the strings, once they are filled in */
    sil_reading *reading;        /* the reading being filled; NULL outside the readings */
};

/* Fills a struct from a mapping, row by row; complains of keys the table does not have. */
void sheet_fill_table(sheet_filler *filler, sheet_node *node, const job_table *table, void *base);

/* Complains of keys of a mapping that the table does not have. */
void sheet_check_keys(sheet_filler *filler, const sheet_node *node, const job_table *table);

/* Fills a job from the merged tree. */
void sheet_fill_job(sheet_filler *filler);

/* Read single values; true if one was read. If not, it has been reported. */
bool sheet_fill_quantity(sheet_filler *filler, sheet_node *node, const job_field *field,
                         double *value);
bool sheet_fill_count(sheet_filler *filler, sheet_node *node, int *count);
bool sheet_fill_word(sheet_filler *filler, sheet_node *node, const job_word *words, int *value);
bool sheet_expect(sheet_filler *filler, sheet_node *node, sheet_shape shape);
bool sheet_right_count(sheet_filler *filler, sheet_node *node);

sheet_fill sheet_fill_figure, sheet_fill_scale, sheet_fill_per_string, sheet_fill_outer,
    sheet_fill_first, sheet_fill_relief_gap, sheet_fill_pair, sheet_fill_travel, sheet_fill_radius,
    sheet_fill_band, sheet_fill_bands, sheet_fill_files;
sheet_fill sheet_fill_strings, sheet_fill_readings, sheet_fill_crowns, sheet_fill_buzz,
    sheet_fill_marked, sheet_fill_make, sheet_fill_attack, sheet_fill_attacks, sheet_fill_style,
    sheet_fill_styles, sheet_fill_materials, sheet_fill_plausible;

#endif
