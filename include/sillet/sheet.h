/* SPDX-License-Identifier: MIT */
/* A measuring sheet: YAML in, a job out, every complaint with its place. */
#ifndef SILLET_SHEET_H
#define SILLET_SHEET_H

#include "job.h"

#ifdef __cplusplus
extern "C" {
#endif

#define SIL_SHEET_BYTES_MAX (256 * 1024)
#define SIL_SHEET_DEPTH_MAX 16

/* A sheet read: owns the job's texts and lists. */
typedef struct sil_sheet sil_sheet;

/* A complaint with its place. All texts live as long as the sheet. */
typedef struct sil_complaint {
    sil_severity severity;
    const char *file;   /* the sheet's or the profile's name, as given */
    int line, column;   /* from 1; columns in characters */
    const char *text;   /* one line */
    const char *source; /* the line complained of, or NULL */
} sil_complaint;

/* sil_sheet_read: reads and checks a sheet.
 * Given:    path      of the sheet; "-" for standard input
 *           profiles  folder of profiles by name; NULL: the one sil_profiles_folder gives
 * Returned: sheet     to be freed with sil_sheet_free, whatever the status; NULL only where there
 *                     is not even the memory to begin
 * Status:   SIL_DONE; SIL_DOUBTFUL: there is a job, and warnings among the complaints; SIL_WRONG:
 *           there are errors and no job; SIL_UNREADABLE: the sheet cannot be read (not there, no
 *           right to it, a folder), or its profile cannot though something of its name is there;
 *           SIL_NO_MEMORY
 */
sil_status sil_sheet_read(const char *path, const char *profiles, sil_sheet **sheet);

/* sil_sheet_read_bytes: the same from memory.
 * Given:    bytes, size  need not end in NUL; over SIL_SHEET_BYTES_MAX is an error told; not needed
 *                        once it returns
 *           name         the file's name in complaints; a profile given as a path is looked for in
 *                        its folder
 *           profiles     as sil_sheet_read
 * Returned: as sil_sheet_read
 * Status:   as sil_sheet_read
 */
sil_status sil_sheet_read_bytes(const char *bytes, size_t size, const char *name,
                                const char *profiles, sil_sheet **sheet);

/* sil_sheet_read_within: the same for a sheet that came from elsewhere and may not choose what is
 * read: a profile given as a path must be a plain file of one folder, no link.
 * Given:    bytes, size, name  as sil_sheet_read_bytes
 *           folder             its open descriptor, or -1: none is read
 * Returned: as sil_sheet_read
 * Status:   as sil_sheet_read
 */
sil_status sil_sheet_read_within(const char *bytes, size_t size, const char *name, int folder,
                                 sil_sheet **sheet);

/* A reader of many sheets: it reads a profile once and keeps it. Not for two threads at a time. */
typedef struct sil_reader sil_reader;

/* sil_reader_new: a reader that has read nothing yet.
 * Given:    profiles  as for sil_sheet_read
 * Returned: reader    to be freed with sil_reader_free; NULL on error
 * Status:   SIL_DONE or SIL_NO_MEMORY
 */
sil_status sil_reader_new(const char *profiles, sil_reader **reader);

/* sil_reader_read: as sil_sheet_read, with the profiles it has kept.
 * Given:    path  as sil_sheet_read
 * Returned: as sil_sheet_read; to be freed before its reader
 * Status:   as sil_sheet_read
 */
sil_status sil_reader_read(sil_reader *reader, const char *path, sil_sheet **sheet);

/* sil_reader_free: frees a reader and the profiles it has kept; NULL is no matter. */
void sil_reader_free(sil_reader *reader);

/* sil_sheet_job: the job of a sheet.
 * Returned: lives as long as the sheet; NULL where there were errors
 */
const sil_job *sil_sheet_job(const sil_sheet *sheet);

/* sil_sheet_complaint_count, sil_sheet_complaint: all complaints, ordered by place: the sheet's own
 * before its profile's.
 * Given:    sheet  for the count also NULL: none
 *           index  0..count - 1
 * Returned: texts that live as long as the sheet
 */
int sil_sheet_complaint_count(const sil_sheet *sheet);
sil_complaint sil_sheet_complaint(const sil_sheet *sheet, int index);

/* sil_complaint_write: a complaint as a person reads it: "FILE:LINE:COLUMN: error: ..", the line
 * itself and a caret under the place; control characters shown, long lines cut around the place.
 * Given:    size  of out; 0: nothing is written
 * Returned: out   NUL-terminated: one line or three, no end of line behind the last
 * Status:   the length written, or needed where size is too small (out then cut behind a whole
 *           letter); 0 without memory
 */
size_t sil_complaint_write(const sil_complaint *complaint, char *out, size_t size);

/* sil_sheet_mistakes: what is wrong with a sheet, in a row of a table: "the sheet: 2 mistakes, the
 * first in line 7".
 * Given:    size  of out, 1 or more
 * Returned: out   NUL-terminated, cut where it is too long; empty where there were no errors
 */
void sil_sheet_mistakes(const sil_sheet *sheet, char *out, size_t size);

/* A value as it stands in a sheet or in the profile under it. */
typedef struct sil_entry {
    const char *path; /* "readings.0.action.2" */
    const char *text; /* as written, "" where it is not given; NULL: a list or a mapping */
    bool own;         /* of the sheet itself, not of its profile */
    sil_unit units;   /* a bare length is in */
} sil_entry;

/* sil_sheet_see: every list, mapping and value of a sheet, in the order of the sheet, what its
 * profile adds behind what it says itself. Where there were errors, what could be read.
 * Given:    see   called for each
 *           with  handed on to it
 * Notes:    an entry lives only while it is shown; a path over SIL_PATH_MAX is passed over
 */
#define SIL_PATH_MAX 256
typedef void sil_see_entry(void *with, const sil_entry *entry);
void sil_sheet_see(const sil_sheet *sheet, sil_see_entry *see, void *with);

/* sil_sheet_complaint_path: the path of what a complaint is about; where something is missing, of
 * what it is missing from.
 * Given:    index  as sil_sheet_complaint
 * Returned: out   NUL-terminated; "" for the whole sheet, or where its place bears no value
 */
void sil_sheet_complaint_path(const sil_sheet *sheet, int index, char out[SIL_PATH_MAX]);

/* sil_sheet_free: frees a sheet and the job it owns; NULL is no matter. */
void sil_sheet_free(sil_sheet *sheet);

/* sil_program_folder: where the running program stands, links followed.
 * Given:    size  of out, 1 or more
 * Returned: out   NUL-terminated, no slash behind it
 * Status:   the length written; 0 where nobody can tell
 */
size_t sil_program_folder(char *out, size_t size);

/* sil_profiles_folder: where sil_sheet_read looks for profiles by name when it is given NULL. The
 * first of these: the folder $SILLET_PROFILES names; ../share/sillet/profiles or ../profiles, from
 * the folder of the running program; the folder where this library's profiles were installed.
 * Given:    size  of out, 1 or more
 * Returned: out   NUL-terminated
 * Status:   the length written; 0 where there is none
 */
size_t sil_profiles_folder(char *out, size_t size);

/* sil_profiles_list: the names of the profiles in that folder, in order.
 * Returned: names   to be freed with sil_profiles_free; NULL on error
 *           count   how many, 0 on error
 * Status:   SIL_DONE; SIL_UNREADABLE, with errno: ENOENT where there is no folder; SIL_NO_MEMORY
 */
sil_status sil_profiles_list(char ***names, int *count);
/* sil_profiles_free: frees a list of names; NULL with a count of 0 is no matter. */
void sil_profiles_free(char **names, int count);

#ifdef __cplusplus
}
#endif
#endif
