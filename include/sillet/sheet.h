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

typedef enum sil_sheet_status {
    SIL_SHEET_DONE = 0,
    SIL_SHEET_DOUBTFUL = 1,    /* read; warnings were told */
    SIL_SHEET_WRONG = -1,      /* errors were told; there is no job */
    SIL_SHEET_UNREADABLE = -2, /* the sheet cannot be read (not there, no right, a folder), or its
                                  profile cannot, though something of its name is there */
    SIL_SHEET_NO_MEMORY = -3
} sil_sheet_status;

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
 *           profiles  folder of profiles by name; NULL: $SILLET_PROFILES, else found beside the
 *                     running program
 * Returned: sheet     never NULL unless out of memory; free with sil_sheet_free
 * Status:   see sil_sheet_status
 */
int sil_sheet_read(const char *path, const char *profiles, sil_sheet **sheet);

/* sil_sheet_read_bytes: the same from memory.
 * Given:    bytes, size  need not end in NUL; over SIL_SHEET_BYTES_MAX is an error told
 *           name         the file's name in complaints; a profile given as a path is looked for in
 *                        its folder
 */
int sil_sheet_read_bytes(const char *bytes, size_t size, const char *name, const char *profiles,
                         sil_sheet **sheet);

/* A reader of many sheets: it reads a profile once and keeps it. Not for two threads at a time. */
typedef struct sil_reader sil_reader;

/* sil_reader_new: profiles as for sil_sheet_read; NULL without memory. */
sil_reader *sil_reader_new(const char *profiles);

/* sil_reader_read: as sil_sheet_read; the sheet is to be freed before its reader. */
int sil_reader_read(sil_reader *reader, const char *path, sil_sheet **sheet);

void sil_reader_free(sil_reader *reader);

/* sil_sheet_job: the job, or NULL where there were errors. Lives as long as the sheet. */
const sil_job *sil_sheet_job(const sil_sheet *sheet);

/* sil_sheet_complaints: all complaints, ordered by place. */
int sil_sheet_complaint_count(const sil_sheet *sheet);
sil_complaint sil_sheet_complaint(const sil_sheet *sheet, int index);

/* sil_complaint_write: a complaint as a person reads it: "FILE:LINE:COLUMN: error: ..", the line
 * itself and a caret under the place; control characters shown, long lines cut around the place.
 * Returned: the length written, or needed where size is too small (out then cut)
 */
size_t sil_complaint_write(const sil_complaint *complaint, char *out, size_t size);

void sil_sheet_free(sil_sheet *sheet);

/* sil_program_folder: where the running program stands, links followed.
 * Status: length written, 0 where nobody can tell
 */
size_t sil_program_folder(char *out, size_t size);

/* sil_profiles_folder: where profiles are looked for by name, as sil_sheet_read does with NULL.
 * Status: length written, 0 where none is found
 */
size_t sil_profiles_folder(char *out, size_t size);

#ifdef __cplusplus
}
#endif
#endif
