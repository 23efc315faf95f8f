/* SPDX-License-Identifier: MIT */
/* Lists what is in a sheet, path by path, and finds the path that a complaint is about. */
#include "tree.h"

#include <stdio.h>
#include <string.h>

typedef void look(void *with, const sheet_node *node, const char *path);

/* Walks a node and everything in it. path holds its path, of which `used` bytes are in use. */
static void walk(const sheet_node *node, char path[SIL_PATH_MAX], size_t used, look *seen,
                 void *with)
{
    seen(with, node, path);
    int item = 0;
    for (const sheet_node *child = node->first; child; child = child->next) {
        size_t room = SIL_PATH_MAX - used;
        const char *dot = used > 0 ? "." : "";
        int more = node->shape == SHEET_SEQUENCE
                       ? snprintf(path + used, room, "%s%d", dot, item++)
                       : snprintf(path + used, room, "%s%.*s", dot,
                                  (int)(child->key_length < SIL_PATH_MAX ? child->key_length
                                                                         : SIL_PATH_MAX),
                                  child->key);
        if (more > 0 && (size_t)more < room) {
            walk(child, path, used + (size_t)more, seen, with);
        }
        path[used] = '\0';
    }
}

static void walk_sheet(const sil_sheet *sheet, look *seen, void *with)
{
    char path[SIL_PATH_MAX] = "";
    if (sheet->root) {
        walk(sheet->root, path, 0, seen, with);
    }
}

typedef struct viewer {
    const sil_sheet *sheet;
    sil_see_entry *see;
    void *with;
} viewer;

static void show_node(void *with, const sheet_node *node, const char *path)
{
    const viewer *v = with;
    const char *words = node->shape != SHEET_SCALAR ? NULL : node->given ? node->text : "";
    const sil_entry entry = {path, words, node->source == &v->sheet->sheet, node->source->units};
    if (path[0]) {
        v->see(v->with, &entry);
    }
}

void sil_sheet_see(const sil_sheet *sheet, sil_see_entry *see, void *with)
{
    viewer v = {sheet, see, with};
    walk_sheet(sheet, show_node, &v);
}

/* The best match so far: a value is better than a collection, a collection better than a key. */
typedef struct search {
    const sheet_told *told;
    const sheet_source *source;
    int rank;
    char *path;
} search;

static bool stands_at(sheet_mark mark, const sil_complaint *complaint)
{
    return mark.line == complaint->line && mark.column == complaint->column;
}

static void match(void *with, const sheet_node *node, const char *path)
{
    search *s = with;
    bool at = stands_at(node->at, &s->told->complaint);
    int rank = at && node->shape == SHEET_SCALAR                           ? 3
               : at                                                        ? 2
               : node->key && stands_at(node->key_at, &s->told->complaint) ? 1
                                                                           : 0;
    if (node->source == s->source && rank > s->rank) {
        s->rank = rank;
        snprintf(s->path, SIL_PATH_MAX, "%s", path);
    }
}

void sil_sheet_complaint_path(const sil_sheet *sheet, int index, char out[SIL_PATH_MAX])
{
    const sheet_told *told = sheet->sorted[index];
    search s = {told, told->source, 0, out};
    out[0] = '\0';
    walk_sheet(sheet, match, &s);
}
