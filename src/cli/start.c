/* SPDX-License-Identifier: MIT */
/* sillet start: a commented measuring sheet of a kind of instrument, ready to fill in; `plan` takes
 * it as it is. Its fields, their order and their remarks are those of sillet/fields.h. */
#include <stdio.h>
#include <string.h>

#include "cli.h"

enum { LINE = 512 };

/* A text put together on one line; what does not fit is cut off. */
typedef struct line {
    char text[LINE];
    size_t used;
} line;

static void put(line *to, const char *text)
{
    to->used += (size_t)snprintf(to->text + to->used, LINE - to->used, "%s", text);
    to->used = to->used < LINE ? to->used : LINE - 1;
}

/* "key: value", and why behind it where it does not run into the remarks of other lines. */
static void say(const char *key, const char *value, const char *why)
{
    char out[3 * LINE];
    size_t length = strlen(key) + strlen(value) + 2;
    snprintf(out, sizeof out, "%s: %s%*s# %s\n", key, value, (int)(length < 40 ? 40 - length : 1),
             "", why);
    cli_print(out);
}

/* The key a field has in the part it is in. */
static const char *key_of(const char *path)
{
    const char *dot = strrchr(path, '.');
    return dot ? dot + 1 : path;
}

static void put_figure(line *to, const sil_field *field, double value)
{
    char figure[SIL_NUMBER_FULL_MAX];
    if (!sil_known(value)) {
        put(to, "~");
        return;
    }
    if (isinf(value)) {
        put(to, field->choices[0].word); /* a flat board */
        return;
    }
    sil_number_write_full(figure, value);
    put(to, figure);
    if (field->measure != SIL_LENGTH && field->measure != SIL_RATIO) {
        put(to, " ");
        put(to, sil_measure_unit(field->measure));
    }
}

static void put_ends(line *to, const sil_field *field, const double *figure)
{
    if (figure[0] == figure[1]) {
        put_figure(to, field, figure[0]);
        return;
    }
    for (int i = 0; i < 2; i++) {
        put(to, i == 0 ? "{" : ", ");
        put(to, field->ends[i]);
        put(to, ": ");
        put_figure(to, field, figure[i]);
    }
    put(to, "}");
}

static void put_list(line *to, const sil_field *field, const sil_field_value *value)
{
    for (int i = 0; i < value->count; i++) {
        put(to, i == 0 ? "[" : ", ");
        put_figure(to, field, value->figure[i]);
    }
    put(to, "]");
}

/* The value of a field as a sheet has it; ~ where it has none. A reading of every string has a
 * place for each to fill in. */
static void put_value(line *to, const sil_field *field, const sil_job *job)
{
    sil_field_value value;
    bool given = sil_field_read(field, job, -1, &value);
    if (field->kind == SIL_FIELD_ENDS) {
        put_ends(to, field, value.figure);
    } else if (field->kind == SIL_FIELD_EACH &&
               (given || sil_field_within(field->path, "readings"))) {
        put_list(to, field, &value);
    } else if (field->kind == SIL_FIELD_CHOICE && given) {
        put(to, field->choices[value.choice].word);
    } else if (field->kind == SIL_FIELD_COUNT && given) {
        char count[16];
        snprintf(count, sizeof count, "%.0f", value.figure[0]);
        put(to, count);
    } else if (field->kind == SIL_FIELD_FIGURE && given) {
        put_figure(to, field, value.figure[0]);
    } else {
        put(to, "~");
    }
}

static void put_words(line *to, const sil_field *field, const char *between)
{
    for (int i = 0; i < field->choice_count; i++) {
        put(to, i > 0 ? between : "");
        put(to, field->choices[i].word);
    }
}

/* The fields asked for within a field, on its line: "{bridge: ~, braces: ~}" as values, the words
 * each can take as a remark. Returned: how many there are. */
static int put_inner(const sil_field *outer, const sil_job *job, line *value, line *remark)
{
    int count = 0;
    for (int k = outer->order + 1; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        if (!field.asked || !sil_field_within(field.path, outer->path) ||
            !sil_field_applies(field.path, job)) {
            continue;
        }
        put(value, count == 0 ? "{" : ", ");
        put(value, key_of(field.path));
        put(value, ": ");
        put_value(value, &field, job);
        if (field.kind == SIL_FIELD_CHOICE) {
            put(remark, count == 0 ? ": " : ", ");
            put_words(remark, &field, "/");
        }
        count++;
    }
    put(value, count > 0 ? "}" : "");
    return count;
}

static void say_field(const sil_field *field, const char *indent, const sil_job *job)
{
    line key = {.used = 0}, value = {.used = 0}, remark = {.used = 0};
    put(&key, indent);
    put(&key, key_of(field->path));
    put(&remark, field->hint);
    if (put_inner(field, job, &value, &remark) == 0) {
        put_value(&value, field, job);
    }
    if (field->kind == SIL_FIELD_CHOICE) {
        put(&remark, ": ");
        put_words(&remark, field, " | ");
    }
    say(key.text, value.text, remark.text);
}

/* A part of the sheet: every field of it that is asked for and that this instrument has. */
static void say_part(const char *part, const char *first, const char *indent, const sil_job *job)
{
    bool begun = false;
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        if (field.asked && sil_field_within(field.path, part) &&
            sil_field_applies(field.path, job)) {
            say_field(&field, begun ? indent : first, job);
            begun = true;
        }
    }
}

static void say_top(const char *path, const char *value)
{
    sil_field field;
    if (sil_field_find(path, &field)) {
        say(path, value, field.hint);
    }
}

int cli_start(int argc, char **argv)
{
    cli_arguments arguments;
    int code = cli_read_arguments("start", argc, argv, &arguments);
    if (code != CLI_GO_ON) {
        return code;
    }
    const char *profile = arguments.operands[0];
    sil_sheet *sheet = NULL;
    code = cli_read_profile(profile, &sheet);
    if (code != CLI_DONE) {
        sil_sheet_free(sheet);
        return code;
    }
    const sil_job *job = sil_sheet_job(sheet);
    cli_print(
        "# A measuring sheet. Fill in what you measured where a ~ stands. What stays ~ is not\n"
        "# given, and the plan says what to measure. Then: sillet plan THIS-FILE\nsillet: 1\n");
    say_top("units", "mm");
    say_top("profile", profile);
    cli_print("job: {title: ~, ref: ~, owner: ~, by: ~, date: ~}\n"
              "\n# The instrument, as the profile has it: put yours in its place.\ninstrument:\n");
    say_part("instrument", "  ", "  ", job);
    cli_print("nut:\n");
    say_part("nut", "  ", "  ", job);
    cli_print("saddle:\n");
    say_part("saddle", "  ", "  ", job);
    cli_print("\n# What you measured, in the order you take it; string 1 is the treble side. Of "
              "several\n# readings the last one counts, and stands alone.\nreadings:\n");
    say_part("readings", "  - ", "    ", job);
    sil_sheet_free(sheet);
    return CLI_DONE;
}
