/* SPDX-License-Identifier: MIT */
/* The shop file: what belongs to the shop and not to one visit. It is sought beside the sheet and
 * in the folders above, as far up as they are owned by who owns the sheet, and never past home. */
#include "profile.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static const char file_name[] = SIL_SHOP_FILE;

enum { PATH_SIZE = 4096 };

/* A folder on the way up. */
typedef struct place {
    char name[PATH_SIZE]; /* without a slash at the end, "/" alone excepted */
    int folder;           /* open, or -1 */
    int status;           /* 0, or the errno of opening it */
    bool met;             /* a shop file stands here or below, be it the sheet itself */
    struct stat about;
} place;

static bool open_place(place *at)
{
    do {
        at->folder = open(at->name, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    } while (at->folder < 0 && errno == EINTR);
    at->status = at->folder < 0 || fstat(at->folder, &at->about) != 0 ? errno : 0;
    if (at->status != 0 && at->folder >= 0) {
        close(at->folder);
        at->folder = -1;
    }
    return at->status == 0;
}

static bool is_same(const struct stat *one, const struct stat *other)
{
    return one->st_dev == other->st_dev && one->st_ino == other->st_ino;
}

/* What stands at a path; false if nothing can be seen there. *status: the errno, if that is the
 * system's failure and not the path's. */
static bool look(const char *path, struct stat *about, int *status)
{
    if (stat(path, about) == 0) {
        return true;
    }
    bool absent = errno == ENOENT || errno == ENOTDIR || errno == EACCES;
    *status = absent ? *status : errno;
    return false;
}

/* The folder of a file, as a name. */
static bool folder_of(const char *file, char *out)
{
    const char *slash = strrchr(file, '/');
    size_t length = slash ? (size_t)(slash - file) : 0;
    int needed = !slash        ? snprintf(out, PATH_SIZE, ".")
                 : length == 0 ? snprintf(out, PATH_SIZE, "/")
                               : snprintf(out, PATH_SIZE, "%.*s", (int)length, file);
    return needed > 0 && needed < PATH_SIZE;
}

/* Goes to the folder above. Its name is the shorter one, "jobs" for "jobs/smith/..", where no link
 * makes these two differ. False at the top. */
static bool go_up(place *at)
{
    struct stat below = at->about, shorter;
    char cut[PATH_SIZE];
    const char *last = strrchr(at->name, '/');
    bool dots = strcmp(last ? last + 1 : at->name, "..") == 0 || strcmp(at->name, ".") == 0;
    size_t used = strcmp(at->name, ".") == 0 ? 0 : strlen(at->name);
    bool whole = !dots && folder_of(at->name, cut);
    if (used + sizeof "/.." > sizeof at->name) {
        return false;
    }
    memcpy(at->name + used, used > 0 ? "/.." : "..", used > 0 ? 4 : 3);
    close(at->folder);
    if (!open_place(at)) {
        return false;
    }
    bool there = whole && look(cut, &shorter, &at->status);
    if (there && is_same(&shorter, &at->about)) {
        memcpy(at->name, cut, sizeof cut);
    }
    return at->status == 0 && !is_same(&below, &at->about);
}

/* The next of the sheet's files, by the name that complaints show. */
static sheet_source *add_source(sil_sheet *sheet, const char *folder)
{
    sheet_source *source = &sheet->under[sheet->under_count];
    text name = {0};
    const char *joint = strcmp(folder, "/") == 0 ? "" : "/";
    text_add(&name, "%s%s%s", strcmp(folder, ".") == 0 ? "" : folder,
             strcmp(folder, ".") == 0 ? "" : joint, file_name);
    const char *words = text_read(&name);
    *source = (sheet_source){.name = sheet_text(sheet, words, strlen(words)),
                             .rank = ++sheet->under_count};
    sheet->store.failed = sheet->store.failed || name.failed;
    text_free(&name);
    return source->name ? source : NULL;
}

static void pass_over(sil_sheet *sheet, sheet_source *source, const char *why)
{
    const sheet_mark start = {1, 1};
    sheet_tell_at(sheet, SIL_WARNING, source, start, "this shop file is not used: %s", why);
}

/* The file's bytes, from an open folder; false if they cannot be had, and that is reported. */
static bool take_bytes(sil_sheet *sheet, int folder, sheet_source *source)
{
    const sheet_mark start = {1, 1};
    sheet_bytes file = {NULL, 0};
    int status = sheet_file_read_within(folder, file_name, &file);
    if (status != 0) {
        sheet->store.failed = sheet->store.failed || status == ENOMEM;
        sheet->unreadable = true;
        sheet_tell_at(sheet, SIL_ERROR, source, start, "cannot be read: %s", strerror(status));
    }
    source->held = file.bytes;
    source->bytes = file.bytes;
    source->size = file.size;
    return status == 0;
}

/* Turns the file into nodes; NULL if it is not to be used. What is in a file that is none of ours
 * stays in it. */
static sheet_node *read_nodes(sil_sheet *sheet, int folder, sheet_source *source)
{
    sheet_told_mark before = sheet_told_so_far(sheet);
    sheet_node *root = sheet_reader_profile(sheet->reader, sheet, source, source->name);
    if (!root && !take_bytes(sheet, folder, source)) {
        return NULL;
    }
    root = root ? root : sheet_source_read(sheet, source);
    if (!sheet_is_ours(root)) {
        sheet_told_take_back(sheet, before, source);
        source->bytes = NULL; /* so that no line of it is shown */
        pass_over(sheet, source, "it is not YAML that begins with sillet: 1");
        return NULL;
    }
    source->units = sheet_root_units(root);
    return root;
}

/* A folder that may not be looked into ends the search; one that the system failed to open might
 * have had the shop's tools. */
static void tell_unsearched(sil_sheet *sheet, int status)
{
    const sheet_mark start = {1, 1};
    if (status != 0 && status != EACCES && status != ENOENT && status != ENOTDIR) {
        sheet->store.failed = sheet->store.failed || status == ENOMEM;
        sheet->unreadable = true;
        sheet_tell_at(sheet, SIL_ERROR, &sheet->sheet, start, "%s cannot be looked for: %s",
                      file_name, strerror(status));
    }
}

/* Whether there is a shop file in an open folder. */
static bool is_in(sil_sheet *sheet, int folder, struct stat *about)
{
    bool there = fstatat(folder, file_name, about, AT_SYMLINK_NOFOLLOW) == 0;
    if (!there && errno != ENOENT) {
        tell_unsearched(sheet, errno);
    }
    return there;
}

/* Reads the file in an open folder, whose name is shown. own: of the sheet; NULL: the folder is all
 * there is to know. */
static sheet_node *read_in(sil_sheet *sheet, int folder, const char *name, const struct stat *own,
                           const struct stat *about)
{
    sheet_source *source = add_source(sheet, name);
    if (!source) {
        return NULL;
    }
    if (!S_ISREG(about->st_mode)) {
        pass_over(sheet, source, "it is a link, or no plain file");
        return NULL;
    }
    if (own && about->st_uid != own->st_uid) {
        pass_over(sheet, source, "it belongs to somebody else than the sheet does");
        return NULL;
    }
    return read_nodes(sheet, folder, source);
}

/* Goes up from the sheet's folder to the first shop file other than the sheet itself. */
static sheet_node *climb(sil_sheet *sheet, const struct stat *own, const struct stat *home,
                         place *at)
{
    while (at->folder >= 0 && at->about.st_uid == own->st_uid) {
        struct stat about;
        bool there = is_in(sheet, at->folder, &about);
        at->met = at->met || there;
        if (there && !is_same(own, &about)) {
            return read_in(sheet, at->folder, at->name, own, &about);
        }
        if ((home && is_same(home, &at->about)) || !go_up(at)) {
            break;
        }
    }
    return NULL;
}

/* Searches from the sheet's folder, whose name is in place. */
static sheet_node *seek_from(sil_sheet *sheet, const struct stat *own, place *at)
{
    struct stat home;
    const char *said = getenv("HOME");
    sheet_node *root = NULL;
    bool has_home = said && *said && look(said, &home, &at->status);
    if (at->status == 0 && open_place(at)) {
        root = climb(sheet, own, has_home ? &home : NULL, at);
    }
    tell_unsearched(sheet, at->status);
    if (at->folder >= 0) {
        close(at->folder);
    }
    return root;
}

/* Not put into its caller, whose stack would then hold these names while the sheet is read. */
__attribute__((noinline)) static sheet_node *seek(sil_sheet *sheet)
{
    struct stat own;
    place at = {.folder = -1};
    const char *file = sheet->sheet.name;
    bool there = look(file, &own, &at.status);
    if (!there || !folder_of(file, at.name)) {
        tell_unsearched(sheet, at.status);
        return NULL;
    }
    if (sheet_reader_knows_none(sheet->reader, at.name, own.st_uid)) {
        return NULL;
    }
    sheet_node *root = seek_from(sheet, &own, &at);
    /* The way up is over, so its name can be that of the first folder again: stack is scarce. */
    if (!at.met && at.status == 0 && !sheet->unreadable && folder_of(file, at.name)) {
        sheet_reader_keep_none(sheet->reader, at.name, own.st_uid);
    }
    return root;
}

static void refuse_rest(sil_sheet *sheet, const sheet_node *root)
{
    for (const sheet_node *node = root->first; node; node = node->next) {
        sheet_tell_at(sheet, SIL_ERROR, node->source, node->key_at,
                      "a shop file has no %s: wanted name, contact, units, files, tools or "
                      "allowances",
                      sheet_quote_of(node->key, node->key_length).text);
    }
}

/* The file as a part of a sheet: its name and contact are under shop there. */
static sheet_node *as_sheet(sil_sheet *sheet, sheet_node *root)
{
    static const char *const kept[] = {"files", "tools", "allowances"};
    sheet_node *made = sheet_take(sheet, sizeof *made), *shop = sheet_take(sheet, sizeof *shop);
    sheet_node *format = sheet_take(sheet, sizeof *format);
    if (!made || !shop || !format) {
        return NULL;
    }
    *made = *shop = *format =
        (sheet_node){.shape = SHEET_MAPPING, .given = true, .at = root->at, .source = root->source};
    shop->key = "shop";
    shop->key_length = strlen(shop->key);
    shop->key_at = root->at;
    sheet_node_move(root, "sillet", format);
    sheet_node_move(root, "units", format);
    sheet_node_move(root, "name", shop);
    sheet_node_move(root, "contact", shop);
    for (size_t i = 0; i < sizeof kept / sizeof *kept; i++) {
        sheet_node_move(root, kept[i], made);
    }
    sheet_node_add(made, shop);
    refuse_rest(sheet, root);
    return made;
}

sheet_node *sheet_shop_read(sil_sheet *sheet)
{
    static const char *const own[] = {NULL};
    struct stat about;
    sheet_node *root = NULL;
    if (!sheet->confined && sheet->on_disk) {
        root = seek(sheet);
    } else if (sheet->confined && sheet->folder >= 0 && is_in(sheet, sheet->folder, &about)) {
        root = read_in(sheet, sheet->folder, ".", NULL, &about);
    }
    if (!root) {
        return NULL;
    }
    sheet_under_check(sheet, root, "a shop file", own);
    sheet->job.shop.file = root->source->name;
    return as_sheet(sheet, root);
}
