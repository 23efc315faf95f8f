/* SPDX-License-Identifier: MIT */
/* Finding and reading a profile. */
#include "profile.h"

#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <string.h>

enum { PATH_SIZE = 4096 };

static bool is_path(const char *name)
{
    return strchr(name, '/') || sheet_profile_name_length(name) > 0;
}

/* A path starts at the sheet's folder; a name is looked for in the folder of profiles. */
static bool find_path(const sil_sheet *sheet, const char *name, const char *folder, char *out)
{
    int needed = 0;
    if (is_path(name)) {
        const char *slash = strrchr(sheet->sheet.name, '/');
        bool whole = name[0] == '/' || !slash;
        int length = whole ? 0 : (int)(slash - sheet->sheet.name) + 1;
        needed = snprintf(out, PATH_SIZE, "%.*s%s", length, sheet->sheet.name, name);
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
    DIR *profiles = is_path(node->text) ? NULL : opendir(folder);
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
                         is_path(node->text) ? "no such profile there"
                                             : "no such profile; 'sillet profiles' lists them");
    }
}

/* If a path names nothing that can be read, the sheet has a mistake; any other failure is the
 * system's. */
static void tell_unread(sil_sheet *sheet, sheet_node *node, const char *folder, int status)
{
    static const int of_path[] = {ENOENT, ENAMETOOLONG, ENOTDIR, EISDIR, ELOOP};
    bool misnamed = sheet->confined && is_path(node->text) && status == EACCES; /* out of bounds */
    for (size_t i = 0; i < sizeof of_path / sizeof of_path[0]; i++) {
        misnamed = misnamed || status == of_path[i];
    }
    sheet->store.failed = sheet->store.failed || status == ENOMEM;
    sheet->unreadable = !misnamed;
    if (status == ENOENT) {
        tell_no_profile(sheet, node, folder);
    } else {
        sheet_tell_value(sheet, SIL_ERROR, node, "the profile cannot be read: %s",
                         strerror(status));
    }
}

/* Reports keys in a profile that only a sheet may have, and reads the profile's own. */
static void refuse_own(sil_sheet *sheet, const sheet_node *root)
{
    static const char *const own[] = {"job", "readings", "profile"};
    for (size_t i = 0; i < sizeof own / sizeof own[0]; i++) {
        sheet_node *node = sheet_node_find(root, own[i], strlen(own[i]));
        if (node) {
            sheet_tell_at(sheet, SIL_ERROR, node->source, node->key_at, "a profile has no %s",
                          own[i]);
        }
    }
    sheet_node *units = sheet_node_find(root, "units", strlen("units"));
    bool known = !units || !units->given || units->shape != SHEET_SCALAR ||
                 strcmp(units->text, "mm") == 0 || strcmp(units->text, "in") == 0;
    if (!known) {
        sheet_tell_value(sheet, SIL_ERROR, units, "wanted mm | in");
    }
}

/* path: NULL if it would be too long. */
static sheet_node *read_profile(sil_sheet *sheet, sheet_node *node, const char *path,
                                const char *folder)
{
    sheet_bytes file = {NULL, 0};
    int status = ENAMETOOLONG;
    if (path) {
        status = sheet->confined && is_path(node->text)
                     ? sheet_file_read_within(sheet->folder, node->text, &file)
                     : sheet_file_read(path, &file);
    }
    if (status != 0) {
        tell_unread(sheet, node, folder, status);
        return NULL;
    }
    sheet_source *source = &sheet->profile;
    source->name = sheet_text(sheet, path, strlen(path));
    source->held = file.bytes;
    source->bytes = file.bytes;
    source->size = file.size;
    return source->name ? sheet_source_read(sheet, source) : NULL;
}

void sheet_profile_lay(sil_sheet *sheet, sheet_node *root, const char *folder)
{
    sheet_node *node = sheet_node_find(root, "profile", strlen("profile"));
    char path[PATH_SIZE], found[PATH_SIZE] = "profiles";
    if (!node || !node->given || sheet->sheet.cut) {
        return;
    }
    if (node->shape != SHEET_SCALAR) {
        sheet->profile_lost = true; /* reported when the job is filled */
        return;
    }
    if (!folder && !is_path(node->text)) {
        sil_profiles_folder(found, sizeof found);
    }
    folder = folder ? folder : found;
    bool fits = find_path(sheet, node->text, folder, path);
    sheet_node *profile =
        fits && sheet->reader ? sheet_reader_profile(sheet->reader, sheet, path) : NULL;
    if (!profile) {
        profile = read_profile(sheet, node, fits ? path : NULL, folder);
    }
    sheet_source *source = &sheet->profile;
    sheet->profile_lost = !profile || source->cut;
    if (profile) {
        source->units = sheet_root_units(profile);
        refuse_own(sheet, profile);
        sheet_tree_merge(root, profile);
    }
}
