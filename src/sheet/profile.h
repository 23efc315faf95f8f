/* SPDX-License-Identifier: MIT */
/* Used inside the sheet reader: files, and the profile that a sheet names. */
#ifndef SILLET_SHEET_PROFILE_H
#define SILLET_SHEET_PROFILE_H

#include "tree.h"

/* A file's bytes; free them with free(). Reading stops one byte past the limit of a sheet, which is
 * enough to refuse it. */
typedef struct sheet_bytes {
    char *bytes;
    size_t size;
} sheet_bytes;

/* sheet_file_read: "-" is standard input.
 * Status: 0, or an errno
 */
int sheet_file_read(const char *path, sheet_bytes *into);

/* sheet_file_read_within: a plain file of an open folder, by its name alone. A link leads elsewhere
 * and is refused.
 * Status: 0, or an errno
 */
int sheet_file_read_within(int folder, const char *name, sheet_bytes *into);

/* sheet_source_read: turns a source's bytes into nodes; NULL if there is no mapping (reported). */
sheet_node *sheet_source_read(sil_sheet *sheet, sheet_source *source);

/* sheet_root_units: the unit of bare lengths under this root. */
sil_unit sheet_root_units(const sheet_node *root);

/* sheet_reader_folder: where a reader looks for profiles by name; NULL if it has no folder, or if
 * there is no reader. */
const char *sheet_reader_folder(const sil_reader *reader);

/* sheet_reader_profile: the nodes of a profile that a reader keeps, as a copy that belongs to the
 * sheet, with sheet->profile set. NULL if this sheet must read the profile itself, and report what
 * is wrong with it. */
sheet_node *sheet_reader_profile(sil_reader *reader, sil_sheet *sheet, const char *path);

/* The folder where `make install` put the profiles; "" in a library that is not installed. */
extern const char sheet_installed_profiles[];

/* sheet_profile_name_length: the length of a profile's name within its file name; 0 if the file is
 * not a profile. */
size_t sheet_profile_name_length(const char *file);

/* sheet_profile_lay: reads the profile a sheet names and merges it under the sheet's root. If it
 * cannot, that is reported. */
void sheet_profile_lay(sil_sheet *sheet, sheet_node *root, const char *folder);

#endif
