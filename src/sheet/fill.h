/* SPDX-License-Identifier: MIT */
/* Within the sheet reader: nodes into a job, by the rows of the job's fields. */
#ifndef SILLET_SHEET_FILL_H
#define SILLET_SHEET_FILL_H

#include "../job/fields.h"
#include "tree.h"

typedef struct sil_filler {
    sil_sheet *sheet;
    sil_job *job;
    sil_node *root;
    int course[SIL_STRINGS_MAX]; /* of the strings, once they are filled */
} sil_filler;

/* Fills one field of the struct at base from a node that was given. */
typedef void sil_fill(sil_filler *filler, sil_node *node, const sil_field *field, void *base);

/* Fills a struct from a mapping, row by row; complains of keys the table does not have. */
void sil_fill_table(sil_filler *filler, sil_node *node, const sil_table *table, void *base);

/* Fills a job from the merged tree. */
void sil_fill_job(sil_filler *filler);

/* Reads single values; true where one was read. Told where not. */
bool sil_fill_quantity(sil_filler *filler, sil_node *node, const sil_field *field, double *value);
bool sil_fill_count(sil_filler *filler, sil_node *node, int *count);
bool sil_fill_word(sil_filler *filler, sil_node *node, const sil_word *words, int *value);
bool sil_expect(sil_filler *filler, sil_node *node, sil_shape shape);
bool sil_right_count(sil_filler *filler, sil_node *node);

sil_fill sil_fill_figure, sil_fill_scale, sil_fill_per_string, sil_fill_first, sil_fill_relief_gap,
    sil_fill_pair, sil_fill_radius, sil_fill_band, sil_fill_bands, sil_fill_files;
sil_fill sil_fill_strings, sil_fill_readings, sil_fill_crowns, sil_fill_buzz, sil_fill_attack,
    sil_fill_attacks, sil_fill_materials, sil_fill_plausible;

#endif
