/* SPDX-License-Identifier: MIT */
/* Finding and reading a profile. */
#include "profile.h"

#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <string.h>

enum { PATH_SIZE = 4096 };

bool sheet_profile_is_path(const char *name)
{
    return strchr(name, '/') || sheet_profile_name_length(name) > 0;
}

/* A path starts at the folder of the file that gives it; a name is looked for in the folder of
 * profiles. */
static bool find_path(const sheet_node *node, const char *folder, char *out)
{
    int needed = 0;
    const char *name = node->text, *above = node->source->name;
    if (sheet_profile_is_path(name)) {
        const char *slash = strrchr(above, '/');
        bool whole = name[0] == '/' || !slash;
        int length = whole ? 0 : (int)(slash - above) + 1;
        needed = snprintf(out, PATH_SIZE, "%.*s%s", length, above, name);
    } else {
        needed = snprintf(out, PATH_SIZE, "%s/%s.yaml", folder, name);
    }
    return needed > 0 && needed < PATH_SIZE;
}

/* Reports that there is no such profile, and which one may have been meant. */
static void tell_no_profile(sil_sheet *sheet, sheet_node *node, const char *folder)
{
    char nearest[64] = "";
    int nearness = 99;
    DIR *profiles = sheet_profile_is_path(node->text) ? NULL : opendir(folder);
    for (struct dirent *entry; profiles && (entry = readdir(profiles));) {
        char name[64];
        size_t length = sheet_profile_name_length(entry->d_name);
        if (length == 0 || length >= sizeof name) {
            continue;
        }
        memcpy(name, entry->d_name, length);
        name[length] = '\0';
        int apart = sheet_nearness(node->text, node->length, name);
        if (apart < nearness && sheet_near(apart, node->length)) {
            nearness = apart;
            memcpy(nearest, name, sizeof nearest);
        }
    }
    if (profiles) {
        closedir(profiles);
    }
    if (nearest[0]) {
        sheet_tell_value(sheet, SIL_ERROR, node, "no such profile; did you mean %s?", nearest);
    } else {
        sheet_tell_value(sheet, SIL_ERROR, node,
                         sheet_profile_is_path(node->text)
                             ? "no such profile there"
                             : "no such profile; 'sillet profiles' lists them");
    }
}

/* Reports why a file is not read from a folder that a sheet may not reach out of. */
static void tell_out_of_bounds(sil_sheet *sheet, sheet_node *node)
{
    const char *slash = strrchr(node->text, '/');
    if (sheet->folder < 0) {
        sheet_tell_value(sheet, SIL_ERROR, node,
                         "there is no folder of sheets to read a file from; give a profile's name, "
                         "as 'sillet profiles' lists them");
    } else if (!slash) {
        sheet_tell_value(sheet, SIL_ERROR, node,
                         "only a plain file is read from the folder of sheets, no link, which may "
                         "lead out of it; put the file itself there");
    } else if (sheet_profile_is_path(slash + 1)) {
        sheet_tell_value(sheet, SIL_ERROR, node,
                         "a file is read only from the folder of sheets itself; put it there and "
                         "write profile: %s",
                         slash + 1);
    } else {
        sheet_tell_value(sheet, SIL_ERROR, node,
                         "a file is read only from the folder of sheets itself, and its name ends "
                         "in .yaml");
    }
}

/* If a path names nothing that can be read, the sheet has a mistake; any other failure is the
 * system's. */
static void tell_unread(sil_sheet *sheet, sheet_node *node, const char *folder, int status)
{
    static const int of_path[] = {ENOENT, ENAMETOOLONG, ENOTDIR, EISDIR, ELOOP};
    bool file = sheet->confined && sheet_profile_is_path(node->text);
    bool outside = file && (status == ELOOP || sheet->folder < 0 || strchr(node->text, '/'));
    bool misnamed = outside;
    for (size_t i = 0; i < sizeof of_path / sizeof of_path[0]; i++) {
        misnamed = misnamed || status == of_path[i];
    }
    sheet->store.failed = sheet->store.failed || status == ENOMEM;
    sheet->unreadable = sheet->unreadable || !misnamed;
    if (outside) {
        tell_out_of_bounds(sheet, node);
    } else if (status == ENOENT) {
        tell_no_profile(sheet, node, folder);
    } else {
        sheet_tell_value(sheet, SIL_ERROR, node, "the profile cannot be read: %s",
                         strerror(status));
    }
}

bool sheet_is_ours(const sheet_node *root)
{
    return root && root->shape == SHEET_MAPPING &&
           sheet_node_find(root, "sillet", strlen("sillet"));
}

static void check_value(sil_sheet *sheet, const sheet_node *root, const char *key,
                        const char *const *right, const char *wanted)
{
    sheet_node *node = sheet_node_find(root, key, strlen(key));
    bool known = !node || !node->given;
    for (; !known && node->shape == SHEET_SCALAR && *right; right++) {
        known = strcmp(node->text, *right) == 0;
    }
    if (!known) {
        sheet_tell_value(sheet, SIL_ERROR, node, "%s", wanted);
    }
}

void sheet_under_check(sil_sheet *sheet, const sheet_node *root, const char *kind,
                       const char *const *own)
{
    static const char *const units[] = {"mm", "in", NULL}, *const formats[] = {"1", NULL};
    for (; *own; own++) {
        sheet_node *node = sheet_node_find(root, *own, strlen(*own));
        if (node) {
            sheet_tell_at(sheet, SIL_ERROR, node->source, node->key_at, "%s has no %s", kind, *own);
        }
    }
    check_value(sheet, root, "sillet", formats, "this version reads sheets of format 1");
    check_value(sheet, root, "units", units, "wanted mm | in");
}

/* path: NULL if it would be too long. */
static bool take_bytes(sil_sheet *sheet, sheet_node *node, sheet_source *source, const char *path,
                       const char *folder)
{
    sheet_bytes file = {NULL, 0};
    int status = ENAMETOOLONG;
    if (path) {
        status = sheet->confined && sheet_profile_is_path(node->text)
                     ? sheet_file_read_within(sheet->folder, node->text, &file)
                     : sheet_file_read(path, &file);
    }
    if (status != 0) {
        tell_unread(sheet, node, folder, status);
        return false;
    }
    source->name = sheet_text(sheet, path, strlen(path));
    source->held = file.bytes;
    source->bytes = file.bytes;
    source->size = file.size;
    return source->name;
}

sheet_node *sheet_profile_read(sil_sheet *sheet, sheet_node *node, const char *folder)
{
    char path[PATH_SIZE];
    sheet_source *source = &sheet->under[sheet->under_count];
    bool fits = find_path(node, folder, path);
    *source = (sheet_source){.rank = ++sheet->under_count, .named = node};
    sheet_told_mark before = sheet_told_so_far(sheet);
    sheet_node *root = fits ? sheet_reader_profile(sheet->reader, sheet, source, path) : NULL;
    if (!root && !take_bytes(sheet, node, source, fits ? path : NULL, folder)) {
        return NULL;
    }
    root = root ? root : sheet_source_read(sheet, source);
    if (!sheet_is_ours(root)) {
        /* What is in a file that is none of ours stays in it: any path may be given. */
        sheet_told_take_back(sheet, before, source);
        sheet_tell_value(sheet, SIL_ERROR, node,
                         "that file is no profile: one is YAML and begins with sillet: 1");
        return NULL;
    }
    source->units = sheet_root_units(root);
    return root;
}
