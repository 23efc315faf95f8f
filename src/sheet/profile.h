/* SPDX-License-Identifier: MIT */
/* Used inside the sheet reader: files, and the profile that a sheet names. */
#ifndef SILLET_SHEET_PROFILE_H
#define SILLET_SHEET_PROFILE_H

#include <sys/types.h>

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
 * Status: 0, or an errno: ELOOP for a link and for what is no plain file, EACCES for a path
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
 * sheet, with the source's name and bytes set. NULL without a reader, and if this sheet must
 * read the profile itself and report what is wrong with it. */
sheet_node *sheet_reader_profile(sil_reader *reader, sil_sheet *sheet, sheet_source *source,
                                 const char *path);

/* sheet_reader_knows_none: whether the search for a shop file from this folder came to nothing before,
 * for a sheet of this owner. False without a reader.
 * sheet_reader_keep_none: that it did. Only the last folder is kept: many sheets come folder by
 * folder. */
bool sheet_reader_knows_none(const sil_reader *reader, const char *folder, uid_t owner);
void sheet_reader_keep_none(sil_reader *reader, const char *folder, uid_t owner);

/* The folder where `make install` put the profiles; "" in a library that is not installed. */
extern const char sheet_installed_profiles[];

/* sheet_profile_name_length: the length of a profile's name within its file name; 0 if the file is
 * not a profile. */
size_t sheet_profile_name_length(const char *file);

/* sheet_profile_is_path: whether a profile is given by its path, and not by its name. */
bool sheet_profile_is_path(const char *name);

/* sheet_profile_read: the nodes of the profile that a node names, as the sheet's next file; NULL if
 * it cannot be used, and that is reported at the node. folder: of profiles given by name. */
sheet_node *sheet_profile_read(sil_sheet *sheet, sheet_node *node, const char *folder);

/* sheet_is_ours: whether the nodes of a file are of our format: it says which. */
bool sheet_is_ours(const sheet_node *root);

/* sheet_under_check: reports the keys that a file under a sheet may not have, and a format or unit
 * that is not known. own: ends with NULL. kind: "a profile". */
void sheet_under_check(sil_sheet *sheet, const sheet_node *root, const char *kind,
                       const char *const *own);

/* sheet_shop_read: the nodes of the shop file as a sheet has them, as the sheet's next file; NULL if
 * there is none, or none to be used. The name of the one used is put into the job. */
sheet_node *sheet_shop_read(sil_sheet *sheet);

/* sheet_style_gather: targets and attack of the style that a node names, from all files that have
 * it, the first one's first, as copies; NULL where none has it. */
sheet_node *sheet_style_gather(sil_sheet *sheet, const sheet_node *name, sheet_node *const *levels,
                               int count);

/* sheet_files_lay: reads every file that a sheet stands on, and merges them under its root in their
 * order: profiles given by path, the shop file, the profile given by name.
 * sheet_files_tell: reports that a file has errors also where its path was given, and of a shop file
 * at the beginning of the sheet. */
void sheet_files_lay(sil_sheet *sheet, sheet_node *root, const char *folder);
void sheet_files_tell(sil_sheet *sheet, const sheet_node *root);

#endif
