/* SPDX-License-Identifier: MIT */
/* Within the sheet reader: files, and the profile that a sheet names. */
#ifndef SILLET_SHEET_PROFILE_H
#define SILLET_SHEET_PROFILE_H

#include "tree.h"

/* A file's bytes: free with free(). One byte past what a sheet may have is enough to refuse it. */
typedef struct sil_bytes {
    char *bytes;
    size_t size;
} sil_bytes;

/* sil_file_read: "-" is standard input.
 * Status: 0, or an errno
 */
int sil_file_read(const char *path, sil_bytes *into);

/* sil_source_read: a source's bytes to nodes; NULL where there is no mapping to read (told). */
sil_node *sil_source_read(sil_sheet *sheet, sil_source *source);

/* sil_root_units: what bare lengths are in under this root. */
sil_unit sil_root_units(const sil_node *root);

/* sil_reader_folder: where a reader looks for profiles by name; NULL for none and of no reader. */
const char *sil_reader_folder(const sil_reader *reader);

/* sil_reader_profile: the nodes of a profile that a reader has kept or now keeps, as a copy that is
 * the sheet's own, and sheet->profile set; NULL where it is to be read, and told of, for this sheet
 * alone. */
sil_node *sil_reader_profile(sil_reader *reader, sil_sheet *sheet, const char *path);

/* The folder where `make install` put the profiles; "" in a library that is not installed. */
extern const char sheet_installed_profiles[];

/* sil_profile_name_length: of a profile's name within that of its file; 0 where it is none. */
size_t sil_profile_name_length(const char *file);

/* sil_profile_lay: reads the profile a sheet names and lays it under the sheet's root. Told where
 * it cannot. */
void sil_profile_lay(sil_sheet *sheet, sil_node *root, const char *folder);

#endif
