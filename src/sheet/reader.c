/* SPDX-License-Identifier: MIT */
/* Keeps profiles between sheets, because many sheets name the same few, and that a folder of many
 * sheets has no shop file. */
#include "profile.h"

#include <stdlib.h>
#include <string.h>

enum { KEPT_MAX = 32, FOLDER_SIZE = 4096 };

/* A profile that was read without a complaint. */
typedef struct kept {
    char *path;
    sil_sheet *sheet; /* has no job; it owns the nodes and the bytes */
    const sheet_node *root;
} kept;

struct sil_reader {
    char folder[FOLDER_SIZE];
    kept kept[KEPT_MAX];
    int count;
    /* The last folder from which no shop file was found, for sheets of this owner. */
    char bare[FOLDER_SIZE];
    uid_t owner;
};

sil_status sil_reader_new(const char *profiles, sil_reader **reader)
{
    sil_reader *made = calloc(1, sizeof *made);
    size_t length = profiles ? strlen(profiles) : 0;
    *reader = made;
    if (!made) {
        return SIL_NO_MEMORY;
    }
    if (profiles && length < sizeof made->folder) {
        memcpy(made->folder, profiles, length + 1);
    } else {
        sil_profiles_folder(made->folder, sizeof made->folder);
    }
    return SIL_DONE;
}

void sil_reader_free(sil_reader *reader)
{
    for (int k = 0; reader && k < reader->count; k++) {
        free(reader->kept[k].path);
        free(reader->kept[k].sheet->sheet.held);
        sil_sheet_free(reader->kept[k].sheet);
    }
    free(reader);
}

const char *sheet_reader_folder(const sil_reader *reader)
{
    return reader && reader->folder[0] ? reader->folder : NULL;
}

/* Reads a profile to keep. False if it cannot be read or has mistakes; then the sheet reads it
 * again for itself and reports them. */
static bool read_kept(const char *path, kept *into)
{
    sheet_bytes file;
    *into = (kept){.path = strdup(path), .sheet = calloc(1, sizeof(sil_sheet))};
    if (into->path && into->sheet && sheet_file_read(path, &file) == 0) {
        sheet_source *source = &into->sheet->sheet;
        source->name = into->path;
        source->held = file.bytes;
        source->bytes = file.bytes;
        source->size = file.size;
        into->root = sheet_source_read(into->sheet, source);
        if (into->root && into->sheet->told_count == 0 && !into->sheet->store.failed) {
            return true;
        }
    }
    if (into->sheet) {
        free(into->sheet->sheet.held);
    }
    sil_sheet_free(into->sheet);
    free(into->path);
    return false;
}

static const kept *find_kept(sil_reader *reader, const char *path)
{
    for (int k = 0; k < reader->count; k++) {
        if (strcmp(reader->kept[k].path, path) == 0) {
            return &reader->kept[k];
        }
    }
    if (reader->count == KEPT_MAX || !read_kept(path, &reader->kept[reader->count])) {
        return NULL;
    }
    return &reader->kept[reader->count++];
}

sheet_node *sheet_reader_profile(sil_reader *reader, sil_sheet *sheet, sheet_source *source,
                                 const char *path)
{
    const kept *profile = reader ? find_kept(reader, path) : NULL;
    if (!profile) {
        return NULL;
    }
    source->name = sheet_text(sheet, path, strlen(path));
    source->bytes = profile->sheet->sheet.bytes;
    source->size = profile->sheet->sheet.size;
    return sheet_tree_copy(sheet, profile->root, source);
}

bool sheet_reader_knows_none(const sil_reader *reader, const char *folder, uid_t owner)
{
    return reader && reader->owner == owner && strcmp(reader->bare, folder) == 0;
}

void sheet_reader_keep_none(sil_reader *reader, const char *folder, uid_t owner)
{
    size_t length = strlen(folder);
    if (reader && length < sizeof reader->bare) {
        memcpy(reader->bare, folder, length + 1);
        reader->owner = owner;
    }
}
