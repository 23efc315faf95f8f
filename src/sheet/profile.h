/* SPDX-License-Identifier: MIT */
/* Within the sheet reader: files, and the profile that a sheet names. */
#ifndef SILLET_SHEET_PROFILE_H
#define SILLET_SHEET_PROFILE_H

#include "tree.h"

/* A file's bytes: free with free(). One byte past what a sheet may have is enough to refuse it. */
typedef struct sheet_bytes {
    char *bytes;
    size_t size;
} sheet_bytes;

/* sheet_file_read: "-" is standard input.
 * Status: 0, or an errno
 */
int sheet_file_read(const char *path, sheet_bytes *into);

/* sheet_source_read: a source's bytes to nodes; NULL where there is no mapping to read (told). */
sheet_node *sheet_source_read(sil_sheet *sheet, sheet_source *source);

/* sheet_root_units: what bare lengths are in under this root. */
sil_unit sheet_root_units(const sheet_node *root);

/* sheet_reader_folder: where a reader looks for profiles by name; NULL for none and of no reader.
 */
const char *sheet_reader_folder(const sil_reader *reader);

/* sheet_reader_profile: the nodes of a profile that a reader has kept or now keeps, as a copy that
 * is the sheet's own, and sheet->profile set; NULL where it is to be read, and told of, for this
 * sheet alone. */
sheet_node *sheet_reader_profile(sil_reader *reader, sil_sheet *sheet, const char *path);

/* sheet_profile_name_length: of a profile's name within that of its file; 0 where it is none. */
size_t sheet_profile_name_length(const char *file);

/* sheet_profile_lay: reads the profile a sheet names and lays it under the sheet's root. Told where
 * it cannot. */
void sheet_profile_lay(sil_sheet *sheet, sheet_node *root, const char *folder);

#endif
