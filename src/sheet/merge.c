/* SPDX-License-Identifier: MIT */
/* Merges a profile and a sheet, key by key where both have a mapping; otherwise the sheet's value
 * counts. */
#include "tree.h"

#include <string.h>

static bool has(const sheet_node *mapping, const char *key)
{
    return sheet_node_find(mapping, key, strlen(key));
}

static bool is_one_of(const sheet_node *node, const char *const *keys, int count)
{
    for (int i = 0; i < count; i++) {
        if (strlen(keys[i]) == node->key_length &&
            memcmp(keys[i], node->key, node->key_length) == 0) {
            return true;
        }
    }
    return false;
}

/* A target has one of two forms. Keys of the form that the sheet does not use are dropped. */
static bool is_other_form(const sheet_node *over, const sheet_node *child)
{
    static const char *const bands[] = {"low", "aim", "high"}, *const ends[] = {"treble", "bass"};
    bool band = has(over, "low") || has(over, "aim") || has(over, "high");
    bool pair = has(over, "treble") || has(over, "bass");
    return (band && is_one_of(child, ends, 2)) || (pair && is_one_of(child, bands, 3));
}

/* Keys that only a sheet has, or that the sheet and the profile each have for themselves. */
static bool is_own(const sheet_node *child)
{
    static const char *const own[] = {"sillet", "units", "job", "profile", "readings"};
    return is_one_of(child, own, 5);
}

/* depth: 0 at the root, 1 within a part such as targets, 2 within one target. */
static void lay_under(sheet_node *over, sheet_node *under, bool target, int depth)
{
    for (sheet_node *child = under->first, *next; child; child = next) {
        next = child->next;
        child->next = NULL;
        if ((depth == 0 && is_own(child)) || (target && depth == 2 && is_other_form(over, child))) {
            continue;
        }
        sheet_node *mine = sheet_node_find(over, child->key, child->key_length);
        if (!mine) {
            sheet_node_add(over, child);
        } else if (!mine->given && mine->shape == SHEET_SCALAR && !mine->told) {
            sheet_node *after = mine->next;
            *mine = *child;
            mine->next = after;
        } else if (mine->shape == SHEET_MAPPING && child->shape == SHEET_MAPPING) {
            bool targets = depth == 0 && strcmp(child->key, "targets") == 0;
            lay_under(mine, child, target || targets, depth + 1);
        }
    }
}

void sheet_node_move(sheet_node *from, const char *key, sheet_node *to)
{
    sheet_node **link = &from->first, *before = NULL;
    while (*link && ((*link)->key_length != strlen(key) ||
                     memcmp((*link)->key, key, (*link)->key_length) != 0)) {
        before = *link;
        link = &before->next;
    }
    sheet_node *node = *link;
    if (node) {
        *link = node->next;
        from->last = from->last == node ? before : from->last;
        from->count--;
        node->next = NULL;
        sheet_node_add(to, node);
    }
}

sheet_node *sheet_tree_copy(sil_sheet *sheet, const sheet_node *from, sheet_source *source)
{
    sheet_node *node = sheet_take(sheet, sizeof *node);
    if (!node) {
        return NULL;
    }
    *node = *from;
    node->source = source ? source : from->source;
    node->first = node->last = node->next = NULL;
    node->count = 0;
    for (const sheet_node *child = from->first; child; child = child->next) {
        sheet_node *copy = sheet_tree_copy(sheet, child, source);
        if (!copy) {
            return NULL;
        }
        sheet_node_add(node, copy);
    }
    return node;
}

void sheet_tree_merge(sheet_node *over, sheet_node *under)
{
    lay_under(over, under, false, 0);
}
