/* SPDX-License-Identifier: MIT */
/* Fills a job from nodes: each key of a mapping leads to the row of its field, and each row to the
 * function that reads it. */
#include "fill.h"
#include "profile.h"

#include <string.h>

/* 0 is kept for "not given", so a count that starts at 1 is refused here. */
static void fill_count(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    int count = 0, *kept = job_field_place(field, base);
    if (!sheet_fill_count(filler, node, &count)) {
        return;
    }
    if (count < 0 || (count == 0 && field->low > 0.0)) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted a whole number from %d to %d",
                         (int)field->low, (int)field->high);
        return;
    }
    *kept = count;
}

static void fill_index(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    int *index = job_field_place(field, base), number = 0;
    if (!sheet_fill_count(filler, node, &number)) {
        return;
    }
    if (number < 1 || number > SIL_STRINGS_MAX) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted a string from 1 to %d",
                         SIL_STRINGS_MAX);
        return;
    }
    *index = number - 1;
}

static void fill_span(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    int *span = job_field_place(field, base), ends[2];
    if (!sheet_expect(filler, node, SHEET_SEQUENCE)) {
        return;
    }
    if (node->count != 2) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "wanted two frets, such as [1, 14]");
        return;
    }
    if (sheet_fill_count(filler, node->first, &ends[0]) &&
        sheet_fill_count(filler, node->last, &ends[1])) {
        memcpy(span, ends, sizeof ends);
    }
}

static void fill_word(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    int value;
    if (sheet_fill_word(filler, node, field->words, &value) && field->at != JOB_NOT_KEPT) {
        memcpy(job_field_place(field, base), &value, sizeof value);
    }
}

static void fill_flag(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    int value;
    bool *flag = job_field_place(field, base);
    if (sheet_fill_word(filler, node, field->words, &value)) {
        *flag = value;
    }
}

static void fill_text(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    const char **kept = job_field_place(field, base);
    if (sheet_expect(filler, node, SHEET_SCALAR)) {
        *kept = node->text;
    }
}

/* A note gives the frequency, unless the frequency is given as well. */
static void fill_note(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    sil_string *string = base;
    double hz;
    if (!sheet_expect(filler, node, SHEET_SCALAR)) {
        return;
    }
    fill_text(filler, node, field, base);
    if (sil_note_hz(node->text, &hz) != SIL_DONE) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node,
                         "not a note; wanted a letter, # or b, and the octave, such as E4 or Bb2");
    } else if (!sil_known(string->hz)) {
        string->hz = hz;
    }
}

static void fill_part(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    sheet_fill_table(filler, node, field->of, job_field_place(field, base));
}

static void fill_relief(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    if (node->shape == SHEET_MAPPING) {
        fill_part(filler, node, field, base);
    } else {
        sheet_fill_relief_gap(filler, node, &field->of->fields[0], job_field_place(field, base));
    }
}

static void fill_format(sheet_filler *filler, sheet_node *node, const job_field *field, void *base)
{
    (void)field;
    (void)base;
    if (sheet_expect(filler, node, SHEET_SCALAR) && strcmp(node->text, "1") != 0) {
        sheet_tell_value(filler->sheet, SIL_ERROR, node, "this version reads sheets of format 1");
    }
}

static sheet_fill *const fills[JOB_KINDS] = {
    [JOB_AS_FIGURE] = sheet_fill_figure,
    [JOB_AS_SCALE] = sheet_fill_scale,
    [JOB_AS_PER_STRING] = sheet_fill_per_string,
    [JOB_AS_OUTER] = sheet_fill_outer,
    [JOB_AS_FIRST] = sheet_fill_first,
    [JOB_AS_RELIEF_GAP] = sheet_fill_relief_gap,
    [JOB_AS_PAIR] = sheet_fill_pair,
    [JOB_AS_TRAVEL] = sheet_fill_travel,
    [JOB_AS_RADIUS] = sheet_fill_radius,
    [JOB_AS_BAND] = sheet_fill_band,
    [JOB_AS_BANDS] = sheet_fill_bands,
    [JOB_AS_FILES] = sheet_fill_files,
    [JOB_AS_COUNT] = fill_count,
    [JOB_AS_INDEX] = fill_index,
    [JOB_AS_SPAN] = fill_span,
    [JOB_AS_WORD] = fill_word,
    [JOB_AS_FLAG] = fill_flag,
    [JOB_AS_TEXT] = fill_text,
    [JOB_AS_NOTE] = fill_note,
    [JOB_AS_PART] = fill_part,
    [JOB_AS_RELIEF] = fill_relief,
    [JOB_AS_STRINGS] = sheet_fill_strings,
    [JOB_AS_READINGS] = sheet_fill_readings,
    [JOB_AS_CROWNS] = sheet_fill_crowns,
    [JOB_AS_BUZZ] = sheet_fill_buzz,
    [JOB_AS_MAKE] = sheet_fill_make,
    [JOB_AS_MARKED] = sheet_fill_marked,
    [JOB_AS_ATTACK] = sheet_fill_attack,
    [JOB_AS_ATTACKS] = sheet_fill_attacks,
    [JOB_AS_STYLE] = sheet_fill_style,
    [JOB_AS_STYLES] = sheet_fill_styles,
    [JOB_AS_MATERIALS] = sheet_fill_materials,
    [JOB_AS_PLAUSIBLE] = sheet_fill_plausible,
    [JOB_AS_FORMAT] = fill_format,
};

/* Values given by treble and bass go by course, so the strings are read before them. Targets also
 * need the allowances, so they are read last. */
static void put_in_order(sheet_node *root)
{
    static const char *const late[] = {"nut",    "saddle",  "readings", "styles",
                                       "attack", "attacks", "targets"};
    for (size_t i = 0; i < sizeof late / sizeof *late; i++) {
        sheet_node_move(root, late[i], root);
    }
}

/* Whether a value is of this instrument: from the sheet or from the instrument's own file, and not
 * from a profile of its kind or a shop file. */
static bool is_own(const sheet_node *node)
{
    const sheet_source *source = node->source;
    return source->rank == 0 || (source->named && sheet_profile_is_path(source->named->text));
}

/* Whether a key inside a part of the sheet was given, and is of this instrument. */
static bool own_key(const sheet_node *root, const char *part, const char *key)
{
    const sheet_node *in = sheet_node_under(root, part);
    const sheet_node *node = in ? sheet_node_under(in, key) : NULL;
    return node && node->given && is_own(node);
}

static void note_what_was_read(sheet_filler *filler)
{
    filler->job->saddle.setback_read = own_key(filler->root, "saddle", "setback");
    filler->job->cents_wanted = own_key(filler->root, "targets", "cents");
}

void sheet_fill_job(sheet_filler *filler)
{
    sheet_node *root = filler->root, *strings = NULL;
    filler->fills = fills;
    if (root->shape == SHEET_MAPPING) {
        strings = sheet_node_find(root, "strings", strlen("strings"));
        put_in_order(root);
    }
    bool counted = strings && strings->shape == SHEET_SEQUENCE && !strings->cut;
    filler->job->string_count = counted && strings->count <= SIL_STRINGS_MAX ? strings->count : 0;
    sheet_fill_table(filler, root, &job_table_all, filler->job);
    note_what_was_read(filler);
}
