/* SPDX-License-Identifier: MIT */
/* Nodes into a job: each key of a mapping to the row of its field, each row to what reads it. */
#include "fill.h"

#include <string.h>

/* 0 is kept for "not given", so a count that starts at 1 is refused here. */
static void fill_count(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    int count = 0, *kept = sil_field_place(field, base);
    if (!sil_fill_count(filler, node, &count)) {
        return;
    }
    if (count == 0 && field->low > 0.0) {
        sil_tell_value(filler->sheet, SIL_ERROR, node, "wanted a whole number from %d to %d",
                       (int)field->low, (int)field->high);
        return;
    }
    *kept = count;
}

static void fill_index(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    int *index = sil_field_place(field, base), number = 0;
    if (!sil_fill_count(filler, node, &number)) {
        return;
    }
    if (number < 1 || number > SIL_STRINGS_MAX) {
        sil_tell_value(filler->sheet, SIL_ERROR, node, "wanted a string from 1 to %d",
                       SIL_STRINGS_MAX);
        return;
    }
    *index = number - 1;
}

static void fill_span(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    int *span = sil_field_place(field, base), ends[2];
    if (!sil_expect(filler, node, SIL_SEQUENCE)) {
        return;
    }
    if (node->count != 2) {
        sil_tell_value(filler->sheet, SIL_ERROR, node, "wanted two frets, such as [1, 14]");
        return;
    }
    if (sil_fill_count(filler, node->first, &ends[0]) &&
        sil_fill_count(filler, node->last, &ends[1])) {
        memcpy(span, ends, sizeof ends);
    }
}

static void fill_word(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    int value;
    if (sil_fill_word(filler, node, field->words, &value) && field->at != SIL_NOT_KEPT) {
        memcpy(sil_field_place(field, base), &value, sizeof value);
    }
}

static void fill_flag(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    int value;
    bool *flag = sil_field_place(field, base);
    if (sil_fill_word(filler, node, field->words, &value)) {
        *flag = value;
    }
}

static void fill_text(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    const char **text = sil_field_place(field, base);
    if (sil_expect(filler, node, SIL_SCALAR)) {
        *text = node->text;
    }
}

/* A note gives the frequency, unless that was told as well. */
static void fill_note(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    sil_string *string = base;
    double hz;
    if (!sil_expect(filler, node, SIL_SCALAR)) {
        return;
    }
    fill_text(filler, node, field, base);
    if (sil_note_hz(node->text, &hz) != 0) {
        sil_tell_value(filler->sheet, SIL_ERROR, node,
                       "no note; wanted a letter, # or b, and the octave, such as E4 or Bb2");
    } else if (!sil_known(string->hz)) {
        string->hz = hz;
    }
}

static void fill_part(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    sil_fill_table(filler, node, field->of, sil_field_place(field, base));
}

static void fill_relief(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    if (node->shape == SIL_MAPPING) {
        fill_part(filler, node, field, base);
    } else {
        sil_fill_relief_gap(filler, node, &field->of->fields[0], sil_field_place(field, base));
    }
}

static void fill_format(sil_filler *filler, sil_node *node, const sil_field *field, void *base)
{
    (void)field;
    (void)base;
    if (sil_expect(filler, node, SIL_SCALAR) && strcmp(node->text, "1") != 0) {
        sil_tell_value(filler->sheet, SIL_ERROR, node, "this version reads sheets of format 1");
    }
}

static sil_fill *const fills[SIL_KINDS] = {
    [SIL_AS_FIGURE] = sil_fill_figure,
    [SIL_AS_SCALE] = sil_fill_scale,
    [SIL_AS_PER_STRING] = sil_fill_per_string,
    [SIL_AS_FIRST] = sil_fill_first,
    [SIL_AS_RELIEF_GAP] = sil_fill_relief_gap,
    [SIL_AS_PAIR] = sil_fill_pair,
    [SIL_AS_RADIUS] = sil_fill_radius,
    [SIL_AS_BAND] = sil_fill_band,
    [SIL_AS_BANDS] = sil_fill_bands,
    [SIL_AS_FILES] = sil_fill_files,
    [SIL_AS_COUNT] = fill_count,
    [SIL_AS_INDEX] = fill_index,
    [SIL_AS_SPAN] = fill_span,
    [SIL_AS_WORD] = fill_word,
    [SIL_AS_FLAG] = fill_flag,
    [SIL_AS_TEXT] = fill_text,
    [SIL_AS_NOTE] = fill_note,
    [SIL_AS_PART] = fill_part,
    [SIL_AS_RELIEF] = fill_relief,
    [SIL_AS_STRINGS] = sil_fill_strings,
    [SIL_AS_READINGS] = sil_fill_readings,
    [SIL_AS_CROWNS] = sil_fill_crowns,
    [SIL_AS_BUZZ] = sil_fill_buzz,
    [SIL_AS_ATTACK] = sil_fill_attack,
    [SIL_AS_ATTACKS] = sil_fill_attacks,
    [SIL_AS_MATERIALS] = sil_fill_materials,
    [SIL_AS_PLAUSIBLE] = sil_fill_plausible,
    [SIL_AS_FORMAT] = fill_format,
};

/* The part of a sheet that has a key its root does not: "action" belongs in readings. */
static const char *home_of(const char *key, size_t length)
{
    for (int i = 0; i < sil_job_table.count; i++) {
        const sil_field *part = &sil_job_table.fields[i];
        if (part->of && sil_table_find(part->of, key, length)) {
            return part->key;
        }
    }
    return NULL;
}

/* "1,0" in braces is the value 1 and a key 0. */
static bool is_number(const sil_node *node)
{
    for (size_t k = 0; k < node->key_length; k++) {
        if (node->key[k] < '0' || node->key[k] > '9') {
            return false;
        }
    }
    return node->key_length > 0;
}

static void tell_unknown(sil_filler *filler, sil_node *node, const sil_table *table)
{
    const char *slip = NULL, *asked = "; did you mean ", *home = NULL;
    int nearness = 99;
    for (int i = 0; i < table->count; i++) {
        int apart = sil_nearness(node->key, node->key_length, table->fields[i].key);
        if (apart < nearness && sil_near(apart, node->key_length)) {
            slip = table->fields[i].key;
            nearness = apart;
        }
    }
    if (is_number(node)) {
        slip = home = "a decimal comma? write a point, or quotes around it";
        asked = "; ";
    } else if (!slip) {
        home = home_of(node->key, node->key_length);
        slip = home;
        asked = "; it belongs in ";
    }
    sil_tell_at(filler->sheet, SIL_ERROR, node->source, node->key_at, "unknown key %s%s%s%s",
                sil_quote_of(node->key, node->key_length).text, slip ? asked : "", slip ? slip : "",
                slip && !home ? "?" : "");
}

void sil_fill_table(sil_filler *filler, sil_node *node, const sil_table *table, void *base)
{
    if (!sil_expect(filler, node, SIL_MAPPING)) {
        return;
    }
    for (sil_node *child = node->first; child; child = child->next) {
        const sil_field *field = sil_table_find(table, child->key, child->key_length);
        if (!field) {
            tell_unknown(filler, child, table);
        } else if (child->given) {
            fills[field->kind](filler, child, field, base);
        }
    }
}

/* Takes a key out of its place among the others and puts it last. */
static void move_last(sil_node *root, const char *key)
{
    sil_node *node = sil_node_find(root, key, strlen(key)), **link = &root->first;
    if (!node || node == root->last) {
        return;
    }
    while (*link != node) {
        link = &(*link)->next;
    }
    *link = node->next;
    node->next = NULL;
    root->last->next = node;
    root->last = node;
}

/* What is told by its ends runs by course: the strings are read before it. Targets rest on the
 * allowances as well: they are read last. */
static void put_in_order(sil_node *root)
{
    static const char *const late[] = {"saddle", "readings", "attack", "attacks", "targets"};
    for (size_t i = 0; i < sizeof late / sizeof *late; i++) {
        move_last(root, late[i]);
    }
}

void sil_fill_job(sil_filler *filler)
{
    sil_node *root = filler->root, *strings = NULL;
    if (root->shape == SIL_MAPPING) {
        strings = sil_node_find(root, "strings", strlen("strings"));
        put_in_order(root);
    }
    bool counted = strings && strings->shape == SIL_SEQUENCE && !strings->cut;
    filler->job->string_count = counted && strings->count <= SIL_STRINGS_MAX ? strings->count : 0;
    sil_fill_table(filler, root, &sil_job_table, filler->job);
}
