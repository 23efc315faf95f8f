/* SPDX-License-Identifier: MIT */
/* A sheet from its bytes to a job. */
#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "fill.h"
#include "judge.h"
#include "profile.h"

/* Sorts by file, the sheet's own first, then by place, then in the order found. */
static int by_place(const void *left, const void *right)
{
    const sheet_told *a = *(const sheet_told *const *)left, *b = *(const sheet_told *const *)right;
    if (a->source->rank != b->source->rank) {
        return a->source->rank < b->source->rank ? -1 : 1;
    }
    if (a->complaint.line != b->complaint.line) {
        return a->complaint.line < b->complaint.line ? -1 : 1;
    }
    if (a->complaint.column != b->complaint.column) {
        return a->complaint.column < b->complaint.column ? -1 : 1;
    }
    return a->order < b->order ? -1 : 1;
}

static void sort_told(sil_sheet *sheet)
{
    int count = 0;
    sheet->sorted = sheet_take(sheet, sizeof(sheet_told *) * (size_t)sheet->told_count);
    for (sheet_told *told = sheet->first; sheet->sorted && told; told = told->next) {
        sheet->sorted[count++] = told;
    }
    sheet->told_count = count;
    if (count > 1) {
        qsort(sheet->sorted, (size_t)count, sizeof(sheet_told *), by_place);
    }
}

/* The sheet itself must say which format it is in; a profile cannot say it for it. */
static void check_format(sil_sheet *sheet, const sheet_node *root)
{
    const sheet_node *format = sheet_node_find(root, "sillet", strlen("sillet"));
    if ((!format || !format->given) && !sheet->sheet.cut) {
        sheet_tell_at(sheet, SIL_ERROR, &sheet->sheet, root->at,
                      "sillet is missing: a sheet begins with sillet: 1");
    }
}

static void read_job(sil_sheet *sheet, const char *profiles)
{
    sil_job_clear(&sheet->job);
    sheet_node *root = sheet_source_read(sheet, &sheet->sheet);
    if (!root) {
        return;
    }
    sheet_filler filler = {.sheet = sheet, .job = &sheet->job, .root = root};
    sheet->sheet.units = sheet_root_units(root);
    check_format(sheet, root);
    sheet_files_lay(sheet, root, profiles);
    sheet->root = root;
    sheet_fill_job(&filler);
    sheet_judge_job(sheet, root);
    sheet_files_tell(sheet, root);
}

/* The bytes of the files are no longer needed; the lines that complaints show are kept. */
static void let_go(sheet_source *source)
{
    free(source->held);
    source->held = NULL;
    source->bytes = NULL;
}

static sil_status finish(sil_sheet *sheet)
{
    let_go(&sheet->sheet);
    for (int k = 0; k < sheet->under_count; k++) {
        let_go(&sheet->under[k]);
    }
    sort_told(sheet);
    if (sheet->store.failed) {
        return SIL_NO_MEMORY;
    }
    if (sheet->unreadable) {
        return SIL_UNREADABLE;
    }
    if (sheet->errors > 0) {
        return SIL_WRONG;
    }
    return sheet->told_count > 0 ? SIL_DOUBTFUL : SIL_DONE;
}

static sil_sheet *new_sheet(const char *name)
{
    sil_sheet *sheet = calloc(1, sizeof *sheet);
    if (!sheet) {
        return NULL;
    }
    sheet->sheet.name = sheet_text(sheet, name, strlen(name));
    if (!sheet->sheet.name) {
        sil_sheet_free(sheet);
        return NULL;
    }
    return sheet;
}

static sil_status read_bytes(sil_sheet *sheet, const char *bytes, size_t size, const char *profiles)
{
    sheet->sheet.bytes = bytes;
    sheet->sheet.size = size;
    read_job(sheet, profiles);
    return finish(sheet);
}

sil_status sil_sheet_read_bytes(const char *bytes, size_t size, const char *name,
                                const char *profiles, sil_sheet **sheet)
{
    *sheet = new_sheet(name);
    return *sheet ? read_bytes(*sheet, bytes, size, profiles) : SIL_NO_MEMORY;
}

sil_status sil_sheet_read_within(const char *bytes, size_t size, const char *name, int folder,
                                 sil_sheet **sheet)
{
    *sheet = new_sheet(name);
    if (!*sheet) {
        return SIL_NO_MEMORY;
    }
    (*sheet)->confined = true;
    (*sheet)->folder = folder;
    return read_bytes(*sheet, bytes, size, NULL);
}

static sil_status read_file(sil_reader *reader, const char *path, const char *profiles,
                            sil_sheet **sheet)
{
    *sheet = new_sheet(path);
    if (!*sheet) {
        return SIL_NO_MEMORY;
    }
    (*sheet)->reader = reader;
    (*sheet)->on_disk = strcmp(path, "-") != 0;
    sheet_bytes file = {NULL, 0};
    int status = sheet_file_read(path, &file);
    if (status != 0) {
        const sheet_mark start = {1, 1};
        sheet_tell_at(*sheet, SIL_ERROR, &(*sheet)->sheet, start, "cannot be read: %s",
                      strerror(status));
        finish(*sheet);
        return status == ENOMEM ? SIL_NO_MEMORY : SIL_UNREADABLE;
    }
    (*sheet)->sheet.held = file.bytes;
    (*sheet)->sheet.bytes = file.bytes;
    (*sheet)->sheet.size = file.size;
    read_job(*sheet, profiles);
    return finish(*sheet);
}

sil_status sil_sheet_read(const char *path, const char *profiles, sil_sheet **sheet)
{
    return read_file(NULL, path, profiles, sheet);
}

sil_status sil_reader_read(sil_reader *reader, const char *path, sil_sheet **sheet)
{
    return read_file(reader, path, sheet_reader_folder(reader), sheet);
}
