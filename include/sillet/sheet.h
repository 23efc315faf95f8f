/* SPDX-License-Identifier: MIT */
/* Reading a measuring sheet: a YAML file becomes a job, and complaints say where they belong. */
#ifndef SILLET_SHEET_H
#define SILLET_SHEET_H

#include "job.h"

#ifdef __cplusplus
extern "C" {
#endif

#define SIL_SHEET_BYTES_MAX (256 * 1024)
#define SIL_SHEET_DEPTH_MAX 16

/* The name of a shop file: tools, files and allowances of the shop, its name and contact. */
#define SIL_SHOP_FILE "shop.yaml"

/* A sheet that has been read. It owns the job, with its texts and lists. */
typedef struct sil_sheet sil_sheet;

/* A complaint and its place in a file. All texts live as long as the sheet. */
typedef struct sil_complaint {
    sil_severity severity;
    const char *file;   /* the name of the sheet, of a profile or of the shop file */
    int line, column;   /* from 1; columns in characters */
    const char *text;   /* one line */
    const char *source; /* the line that the complaint is about, or NULL */
} sil_complaint;

/* sil_sheet_read: reads and checks a sheet.
 * Given:    path      of the sheet; "-" for standard input
 *           profiles  the folder in which profiles are found by name; NULL: the one that
 *                     sil_profiles_folder gives
 * Returned: sheet     to be freed with sil_sheet_free, whatever the status; NULL only where there
 *                     is no memory to begin
 * Notes:    what belongs to the shop is read from shop.yaml in the sheet's folder or, failing that,
 *           in the nearest folder above that has one. It is sought through folders that the sheet's
 *           owner owns and no farther than $HOME, and not for standard input
 * Status:   SIL_DONE; SIL_DOUBTFUL: there is a job, and there are warnings among the complaints;
 *           SIL_WRONG: there are errors, and no job; SIL_UNREADABLE: the sheet cannot be read (it
 *           is missing, may not be read, or is a folder), or its profile exists and cannot be read;
 *           SIL_NO_MEMORY
 */
sil_status sil_sheet_read(const char *path, const char *profiles, sil_sheet **sheet);

/* sil_sheet_read_bytes: reads and checks a sheet from memory.
 * Given:    bytes, size  the sheet; need not end in NUL, and may be freed after the call; a size
 *                        over SIL_SHEET_BYTES_MAX is reported as an error
 *           name         the file's name in complaints; a profile given as a path is relative to
 *                        its folder
 *           profiles     as sil_sheet_read
 * Returned: as sil_sheet_read
 * Notes:    no shop file is read
 * Status:   as sil_sheet_read
 */
sil_status sil_sheet_read_bytes(const char *bytes, size_t size, const char *name,
                                const char *profiles, sil_sheet **sheet);

/* sil_sheet_read_within: reads and checks a sheet from a source that is not trusted. A profile
 * given as a path, and a shop file, are read only if they are regular files, not links, in one
 * given folder.
 * Given:    bytes, size, name  as sil_sheet_read_bytes
 *           folder             open descriptor of that folder; -1: no such file is read
 * Returned: as sil_sheet_read
 * Status:   as sil_sheet_read
 */
sil_status sil_sheet_read_within(const char *bytes, size_t size, const char *name, int folder,
                                 sil_sheet **sheet);

/* A reader for many sheets, which reads each profile once and keeps it. Only one thread may use it
 * at a time. */
typedef struct sil_reader sil_reader;

/* sil_reader_new: makes a reader.
 * Given:    profiles  as for sil_sheet_read
 * Returned: reader    to be freed with sil_reader_free; NULL on error
 * Status:   SIL_DONE or SIL_NO_MEMORY
 */
sil_status sil_reader_new(const char *profiles, sil_reader **reader);

/* sil_reader_read: as sil_sheet_read, using the profiles that the reader has kept.
 * Given:    path   as sil_sheet_read
 * Returned: sheet  as sil_sheet_read; to be freed before the reader
 * Status:   as sil_sheet_read
 */
sil_status sil_reader_read(sil_reader *reader, const char *path, sil_sheet **sheet);

/* sil_reader_free: frees a reader and the profiles it has kept; NULL is allowed. */
void sil_reader_free(sil_reader *reader);

/* sil_sheet_job: the job that a sheet describes.
 * Returned: lives as long as the sheet; NULL where there were errors
 */
const sil_job *sil_sheet_job(const sil_sheet *sheet);

/* sil_sheet_complaint_count, sil_sheet_complaint: the complaints, in the order of their places.
 * Those about the sheet come before those about its profiles, and these before the shop file's.
 * Given:    sheet  may be NULL for the count, which is then 0
 *           index  0..count - 1
 * Returned: texts that live as long as the sheet
 */
int sil_sheet_complaint_count(const sil_sheet *sheet);
sil_complaint sil_sheet_complaint(const sil_sheet *sheet, int index);

/* sil_complaint_write: writes a complaint for a person: "FILE:LINE:COLUMN: error: ..", then the
 * line of the file, then a caret under the place. Control characters are made visible, and a long
 * line is shortened to what is around the place.
 * Given:    complaint  as sil_sheet_complaint gave it
 *           size       of out; 0: nothing is written
 * Returned: out        NUL-terminated: one line or three, without a newline at the end
 * Status:   the length written; the length needed, where size is too small and out was cut after a
 *           whole character; 0 if there is no memory
 */
size_t sil_complaint_write(const sil_complaint *complaint, char *out, size_t size);

/* sil_sheet_mistakes: says in a few words what is wrong with a sheet, for a row of a table: "2 mistakes,
 * line 7", with the line of the first.
 * Given:    size  of out, 1 or more
 * Returned: out   NUL-terminated; cut short where it is too long; empty where there are no errors
 */
void sil_sheet_mistakes(const sil_sheet *sheet, char *out, size_t size);

/* A value as it is written in a sheet, in its profiles or in the shop file. */
typedef struct sil_entry {
    const char *path; /* "readings.0.action.2" */
    const char *text; /* as written; "" where no value is given; NULL for a list or a mapping */
    bool own;         /* whether the sheet itself gives it, and not a file under it */
    sil_unit units;   /* the unit of a length written without one */
} sil_entry;

/* sil_sheet_see: calls a function for every list, mapping and value of a sheet, in the order of the
 * sheet. What the profile adds comes after what the sheet itself gives. Where there are errors, it
 * shows what could be read.
 * Given:    see   called for each entry
 *           with  passed on to see
 * Notes:    an entry lives only during the call of see. An entry whose path is longer than
 *           SIL_PATH_MAX is skipped.
 */
#define SIL_PATH_MAX 256
typedef void sil_see_entry(void *with, const sil_entry *entry);
void sil_sheet_see(const sil_sheet *sheet, sil_see_entry *see, void *with);

/* sil_sheet_complaint_path: the path of the value that a complaint is about. Where something is
 * missing, it is the path of what should contain it.
 * Given:    index  as sil_sheet_complaint
 * Returned: out    NUL-terminated; "" for the whole sheet, and where there is no value at the place
 */
void sil_sheet_complaint_path(const sil_sheet *sheet, int index, char out[SIL_PATH_MAX]);

/* sil_sheet_free: frees a sheet and the job it owns; NULL is allowed. */
void sil_sheet_free(sil_sheet *sheet);

/* sil_program_folder: the folder that the running program is in, with links followed.
 * Given:    size  of out, 1 or more
 * Returned: out   NUL-terminated, without a slash at the end
 * Status:   the length written; 0 where it cannot be found
 */
size_t sil_program_folder(char *out, size_t size);

/* sil_profiles_folder: the folder where sil_sheet_read finds profiles by name when it is given
 * NULL. It is the first of these: the folder named by $SILLET_PROFILES; ../share/sillet/profiles or
 * ../profiles, starting from the folder of the running program; the folder where this library's
 * profiles were installed.
 * Given:    size  of out, 1 or more
 * Returned: out   NUL-terminated
 * Status:   the length written; 0 where there is none
 */
size_t sil_profiles_folder(char *out, size_t size);

/* sil_profiles_list: the names of the profiles in that folder, in alphabetical order.
 * Returned: names   to be freed with sil_profiles_free; NULL on error
 *           count   how many, 0 on error
 * Status:   SIL_DONE; SIL_UNREADABLE with errno, which is ENOENT where there is no such folder;
 *           SIL_NO_MEMORY
 */
sil_status sil_profiles_list(char ***names, int *count);

/* sil_profiles_free: frees a list of names; NULL with a count of 0 is allowed. */
void sil_profiles_free(char **names, int count);

#ifdef __cplusplus
}
#endif
#endif
