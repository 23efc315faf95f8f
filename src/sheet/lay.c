/* SPDX-License-Identifier: MIT */
/* The files a sheet stands on, in their order: profiles given by path (an instrument's own files),
 * the shop file, the profile given by name. What stands higher counts. */
#include "profile.h"

#include <string.h>
#include <sys/stat.h>

enum { PATH_SIZE = 4096 };

static bool is_same_file(const char *path, const char *other)
{
    struct stat one, two;
    return strcmp(path, other) == 0 || (stat(path, &one) == 0 && stat(other, &two) == 0 &&
                                        one.st_dev == two.st_dev && one.st_ino == two.st_ino);
}

/* Whether a file has been read on the way to it already. */
static bool is_circle(const sil_sheet *sheet, const sheet_source *source)
{
    bool circle = !sheet->confined && is_same_file(source->name, sheet->sheet.name);
    for (int k = 0; k < sheet->under_count; k++) {
        const sheet_source *other = &sheet->under[k];
        circle = circle || (other != source && is_same_file(source->name, other->name));
    }
    return circle;
}

/* The node that names the next profile, or NULL. */
static sheet_node *next_profile(sil_sheet *sheet, const sheet_node *root)
{
    sheet_node *node = sheet_node_find(root, "profile", strlen("profile"));
    if (!node || !node->given || root->source->cut) {
        return NULL;
    }
    if (node->shape != SHEET_SCALAR) {
        sheet->profile_lost = true;
        if (node->source !=
            &sheet->sheet) { /* the sheet's own is reported when the job is filled */
            sheet_tell_value(sheet, SIL_ERROR, node, "wanted a profile's name, or its path");
        }
        return NULL;
    }
    return node;
}

/* One profile, with what is wrong with it reported; NULL if it cannot be used. */
static sheet_node *read_one(sil_sheet *sheet, sheet_node *node, const char *folder)
{
    static const char *const by_name[] = {"job", "readings", "shop", "profile", NULL};
    static const char *const by_path[] = {"job", "readings", "shop", NULL};
    bool path = sheet_profile_is_path(node->text);
    if (sheet->under_count == SHEET_CHAIN_MAX) {
        sheet_tell_value(sheet, SIL_ERROR, node,
                         "one profile too many: at most %d may follow one another",
                         SHEET_CHAIN_MAX);
        return NULL;
    }
    sheet_node *root = sheet_profile_read(sheet, node, folder);
    if (root && path && is_circle(sheet, root->source)) {
        sheet_tell_value(sheet, SIL_ERROR, node,
                         "a circle: this file is read already on the way here");
        return NULL;
    }
    if (root) {
        sheet_under_check(sheet, root, "a profile", path ? by_path : by_name);
    }
    return root;
}

/* The roots of a sheet's files, the sheet itself first. */
typedef struct levels {
    sheet_node *root[SHEET_UNDER_MAX + 1];
    int count;
} levels;

static void add_level(levels *all, sheet_node *root)
{
    if (root) {
        all->root[all->count++] = root;
    }
}

static void read_levels(sil_sheet *sheet, sheet_node *root, const char *folder, levels *all)
{
    sheet_node *node = next_profile(sheet, root), *by_name = NULL;
    add_level(all, root);
    while (node) {
        bool path = sheet_profile_is_path(node->text);
        sheet_node *profile = read_one(sheet, node, folder);
        sheet->profile_lost = sheet->profile_lost || !profile || profile->source->cut;
        node = profile && path ? next_profile(sheet, profile) : NULL;
        add_level(all, path ? profile : NULL);
        by_name = path ? NULL : profile;
    }
    add_level(all, sheet_shop_read(sheet));
    add_level(all, by_name);
}

/* The first file that chooses a style; *name: which. Below the last: none does. */
static int find_chooser(const levels *all, const sheet_node **name)
{
    for (int k = 0; k < all->count; k++) {
        const sheet_node *node = sheet_node_find(all->root[k], "style", strlen("style"));
        if (node && node->given && node->shape == SHEET_SCALAR) {
            *name = node;
            return k;
        }
    }
    return all->count;
}

/* Takes the attack out of the files below one: an attack is replaced as a whole. */
static void drop_attacks(sil_sheet *sheet, levels *all, int below)
{
    sheet_node *dropped = sheet_take(sheet, sizeof *dropped);
    for (int k = below + 1; dropped && k < all->count; k++) {
        sheet_node_move(all->root[k], "attack", dropped);
    }
}

/* A style stands just below the file that chooses it: what that file says itself comes first. */
void sheet_files_lay(sil_sheet *sheet, sheet_node *root, const char *folder)
{
    char found[PATH_SIZE] = "profiles";
    levels all = {.count = 0};
    const sheet_node *name = NULL;
    if (!folder) {
        sil_profiles_folder(found, sizeof found);
    }
    read_levels(sheet, root, folder ? folder : found, &all);
    int chooser = find_chooser(&all, &name);
    sheet_node *style = name ? sheet_style_gather(sheet, name, all.root, all.count) : NULL;
    if (style && sheet_node_find(style, "attack", strlen("attack"))) {
        drop_attacks(sheet, &all, chooser);
    }
    for (int k = 0; k < all.count; k++) {
        if (k > 0) {
            sheet_tree_merge(root, all.root[k]);
        }
        if (style && k == chooser) {
            sheet_tree_merge(root, style);
        }
    }
}

void sheet_files_tell(sil_sheet *sheet, const sheet_node *root)
{
    for (int k = sheet->under_count - 1; k >= 0; k--) { /* each may be what is wrong above it */
        const sheet_source *source = &sheet->under[k];
        const char *many = source->errors == 1 ? "" : "s";
        if (source->errors > 0 && !source->named) {
            sheet_tell_at(sheet, SIL_ERROR, &sheet->sheet, root->at,
                          "the shop file %s has %d mistake%s, the first in line %d",
                          sheet_quote_of(source->name, strlen(source->name)).text, source->errors,
                          many, source->first_error);
        } else if (source->errors > 0 && sheet_profile_is_path(source->named->text)) {
            sheet_tell_value(sheet, SIL_ERROR, source->named,
                             "that file has %d mistake%s, the first in line %d", source->errors,
                             many, source->first_error);
        }
    }
}
