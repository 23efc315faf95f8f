/* SPDX-License-Identifier: MIT */
/* Each key of a mapping to the row of its field. */
#include "fill.h"

/* The part of a sheet where a key that its root does not have belongs: "action" belongs in
 * readings. */
static const char *home_of(const char *key, size_t length)
{
    for (int i = 0; i < job_table_all.count; i++) {
        const job_field *part = &job_table_all.fields[i];
        if (part->of && job_table_find(part->of, key, length)) {
            return part->key;
        }
    }
    return NULL;
}

/* YAML reads "1,0" in braces as the value 1 and a key 0. */
static bool is_number(const sheet_node *node)
{
    for (size_t k = 0; k < node->key_length; k++) {
        if (node->key[k] < '0' || node->key[k] > '9') {
            return false;
        }
    }
    return node->key_length > 0;
}

/* Whether a key without a value follows another on its line, as the rest of a text with a comma does. */
static bool is_rest_of_text(const sheet_node *before, const sheet_node *node)
{
    return before && !node->given && before->key_at.line == node->key_at.line;
}

static void tell_unknown(sheet_filler *filler, const sheet_node *before, sheet_node *node,
                         const job_table *table)
{
    const char *slip = NULL, *asked = "; did you mean ", *home = NULL;
    int nearness = 99;
    for (int i = 0; i < table->count; i++) {
        int apart = sheet_nearness(node->key, node->key_length, table->fields[i].key);
        if (apart < nearness && sheet_near(apart, node->key_length)) {
            slip = table->fields[i].key;
            nearness = apart;
        }
    }
    if (is_number(node)) {
        slip = home = "a decimal comma? write a point, or quotes around it";
        asked = "; ";
    } else if (!slip && is_rest_of_text(before, node)) { /* "{title: Buzzes, low strings}" */
        slip = home = "a comma in a text? put the text in quotes";
        asked = "; ";
    } else if (!slip) {
        home = home_of(node->key, node->key_length);
        slip = home;
        asked = "; it belongs in ";
    }
    sheet_tell_at(filler->sheet, SIL_ERROR, node->source, node->key_at, "unknown key %s%s%s%s",
                  sheet_quote_of(node->key, node->key_length).text, slip ? asked : "",
                  slip ? slip : "", slip && !home ? "?" : "");
}

void sheet_check_keys(sheet_filler *filler, const sheet_node *node, const job_table *table)
{
    const sheet_node *before = NULL;
    for (sheet_node *child = node->first; child; before = child, child = child->next) {
        if (!job_table_find(table, child->key, child->key_length)) {
            tell_unknown(filler, before, child, table);
        }
    }
}

void sheet_fill_table(sheet_filler *filler, sheet_node *node, const job_table *table, void *base)
{
    if (!sheet_expect(filler, node, SHEET_MAPPING)) {
        return;
    }
    const sheet_node *before = NULL;
    for (sheet_node *child = node->first; child; before = child, child = child->next) {
        const job_field *field = job_table_find(table, child->key, child->key_length);
        if (!field) {
            tell_unknown(filler, before, child, table);
        } else if (child->given) {
            filler->fills[field->kind](filler, child, field, base);
            if (filler->reading && field->marked > 0) {
                filler->reading->by_ends[field->marked - 1] = child->shape == SHEET_MAPPING;
            }
        }
    }
}
