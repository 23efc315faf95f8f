/* SPDX-License-Identifier: MIT */
/* sillet start: a measuring sheet with comments for a kind of instrument, ready to fill in.
 * `plan` accepts it as it is. Its fields, their order and their remarks come from
 * sillet/fields.h. */
#include <string.h>

#include "../text/text.h"
#include "cli.h"

/* Writes "key: value" and a remark after it, in line with the remarks of other lines if there is
 * room. */
static void say(text *out, const char *key, const char *value, const char *why)
{
    enum { REMARKS = 40 };
    int letters = text_letters(key, strlen(key)) + text_letters(value, strlen(value)) + 2;
    text_add(out, "%s: %s", key, value);
    text_space(out, letters < REMARKS ? REMARKS - letters : 1);
    text_add(out, "# %s\n", why);
}

/* The key of a field within its part. */
static const char *key_of(const char *path)
{
    const char *dot = strrchr(path, '.');
    return dot ? dot + 1 : path;
}

static void put_figure(text *to, const sil_field *field, double value)
{
    char figure[SIL_NUMBER_FULL_MAX];
    if (!sil_known(value)) {
        text_put(to, "~");
        return;
    }
    if (isinf(value)) {
        text_put(to, field->choices[0].word); /* a flat board */
        return;
    }
    sil_number_write_full(figure, value);
    text_put(to, figure);
    if (field->measure != SIL_LENGTH && field->measure != SIL_RATIO) {
        text_put(to, " ");
        text_put(to, sil_measure_unit(field->measure));
    }
}

static void put_ends(text *to, const sil_field *field, const double *figure)
{
    if (figure[0] == figure[1]) {
        put_figure(to, field, figure[0]);
        return;
    }
    for (int i = 0; i < 2; i++) {
        text_put(to, i == 0 ? "{" : ", ");
        text_put(to, field->ends[i]);
        text_put(to, ": ");
        put_figure(to, field, figure[i]);
    }
    text_put(to, "}");
}

static void put_list(text *to, const sil_field *field, const sil_field_value *value)
{
    for (int i = 0; i < value->count; i++) {
        text_put(to, i == 0 ? "[" : ", ");
        put_figure(to, field, value->figure[i]);
    }
    text_put(to, "]");
}

/* Writes the value of a field as a sheet has it; ~ if it has none. A reading of every string
 * gets one place per string to fill in. */
static void put_value(text *to, const sil_field *field, const sil_job *job)
{
    sil_field_value value;
    bool given = sil_field_read(field, job, -1, &value);
    if (field->kind == SIL_FIELD_ENDS) {
        put_ends(to, field, value.figure);
    } else if (field->kind == SIL_FIELD_EACH &&
               (given || sil_field_within(field->path, "readings"))) {
        put_list(to, field, &value);
    } else if (field->kind == SIL_FIELD_CHOICE && given) {
        text_put(to, field->choices[value.choice].word);
    } else if (field->kind == SIL_FIELD_COUNT && given) {
        text_add(to, "%.0f", value.figure[0]);
    } else if (field->kind == SIL_FIELD_FIGURE && given) {
        put_figure(to, field, value.figure[0]);
    } else {
        text_put(to, "~");
    }
}

static void put_words(text *to, const sil_field *field, const char *between)
{
    for (int i = 0; i < field->choice_count; i++) {
        text_put(to, i > 0 ? between : "");
        text_put(to, field->choices[i].word);
    }
}

/* Writes the fields within a field on its line: "{bridge: ~, braces: ~}" as the value, and the
 * words that each accepts as the remark. Returned: how many there are. */
static int put_inner(const sil_field *outer, const sil_job *job, text *value, text *remark)
{
    int count = 0;
    for (int k = outer->order + 1; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        if (!field.asked || !sil_field_within(field.path, outer->path) ||
            !sil_field_applies(field.path, job)) {
            continue;
        }
        text_put(value, count == 0 ? "{" : ", ");
        text_put(value, key_of(field.path));
        text_put(value, ": ");
        put_value(value, &field, job);
        if (field.kind == SIL_FIELD_CHOICE) {
            text_put(remark, count == 0 ? ": " : ", ");
            put_words(remark, &field, "/");
        }
        count++;
    }
    text_put(value, count > 0 ? "}" : "");
    return count;
}

static void say_field(text *out, const sil_field *field, const char *indent, const sil_job *job)
{
    text key = {0}, value = {0}, remark = {0};
    text_put(&key, indent);
    text_put(&key, key_of(field->path));
    text_put(&remark, field->hint);
    if (put_inner(field, job, &value, &remark) == 0) {
        put_value(&value, field, job);
    }
    if (field->kind == SIL_FIELD_CHOICE) {
        text_put(&remark, ": ");
        put_words(&remark, field, " | ");
    }
    say(out, text_read(&key), text_read(&value), text_read(&remark));
    out->failed = out->failed || key.failed || value.failed || remark.failed;
    text_free(&key);
    text_free(&value);
    text_free(&remark);
}

/* Writes a part of the sheet: every field of it that is asked for and that this instrument has. */
static void say_part(text *out, const char *part, const char *first, const char *indent,
                     const sil_job *job)
{
    bool begun = false;
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        if (field.asked && sil_field_within(field.path, part) &&
            sil_field_applies(field.path, job)) {
            say_field(out, &field, begun ? indent : first, job);
            begun = true;
        }
    }
}

static void say_top(text *out, const char *path, const char *value)
{
    sil_field field;
    if (sil_field_find(path, &field)) {
        say(out, path, value, field.hint);
    }
}

static void say_sheet(text *out, const char *profile, const sil_job *job)
{
    text_put(
        out,
        "# A measuring sheet. Fill in what you measured where a ~ stands. What stays ~ is not\n"
        "# given, and the plan says what to measure. Then: sillet plan THIS-FILE\nsillet: 1\n");
    say_top(out, "units", "mm");
    say_top(out, "profile", profile);
    text_put(out,
             "job: {title: ~, ref: ~, owner: ~, by: ~, date: ~}\n"
             "\n# The instrument, as the profile has it: put yours in its place.\ninstrument:\n");
    say_part(out, "instrument", "  ", "  ", job);
    text_put(out, "nut:\n");
    say_part(out, "nut", "  ", "  ", job);
    text_put(out, "saddle:\n");
    say_part(out, "saddle", "  ", "  ", job);
    text_put(out,
             "\n# What you measured, in the order you take it; string 1 is the treble side. Of "
             "several\n# readings the last one counts, and stands alone.\nreadings:\n");
    say_part(out, "readings", "  - ", "    ", job);
}

/* Writes some fields of a part of the sheet. */
static void say_some(text *out, const char *const *paths, const char *first, const char *indent,
                     const sil_job *job)
{
    for (int k = 0; paths[k]; k++) {
        sil_field field;
        if (sil_field_find(paths[k], &field) && sil_field_applies(paths[k], job)) {
            say_field(out, &field, k == 0 ? first : indent, job);
        }
    }
}

/* A part made from a blank: what must be known of it and of the instrument. */
typedef struct made_part {
    const char *word;
    const char *instrument[4], *part[6], *reading[4];
} made_part;

static const made_part made_parts[] = {{"nut",
                                        {"instrument.crown", "instrument.head_angle"},
                                        {"nut.width", "nut.thickness", "nut.seat_to_board"},
                                        {"readings.frets", "readings.relief"}},
                                       {"saddle",
                                        {NULL},
                                        {"saddle.length", "saddle.thickness", "saddle.slot_depth"},
                                        {"readings.frets", "readings.bridge_top"}}};

/* A sheet of a dozen lines. */
static void say_made(text *out, const char *profile, const made_part *made, const sil_job *job)
{
    text_add(out,
             "# A new %s from a blank: give what you measured where a ~ stands, then sillet plan "
             "THIS-FILE\nsillet: 1\n",
             made->word);
    say_top(out, "profile", profile);
    say_top(out, "make", made->word);
    text_put(out, made->instrument[0] ? "instrument:\n" : "");
    say_some(out, made->instrument, "  ", "  ", job);
    text_add(out, "%s:\n", made->word);
    say_some(out, made->part, "  ", "  ", job);
    text_put(out, "readings:\n");
    say_some(out, made->reading, "  - ", "    ", job);
}

/* Whether an instrument has the part at all. */
static bool has_part(const made_part *made, const sil_job *job)
{
    sil_working working = sil_saddle_working(job->saddle.kind, job->saddle.pitch);
    return made == &made_parts[0] ? job->nut.kind == SIL_NUT_SLOTTED : sil_working_in_slot(working);
}

/* Writes the sheet that is asked for. */
static int say_asked(text *out, const char *profile, const char *make, const sil_job *job)
{
    if (!make) {
        say_sheet(out, profile, job);
        return CLI_DONE;
    }
    const made_part *made = &made_parts[strcmp(make, made_parts[0].word) != 0];
    if (!has_part(made, job)) {
        return cli_misused("%s has no %s to make from a blank", profile, make);
    }
    say_made(out, profile, made, job);
    return CLI_DONE;
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
    text out = {0};
    code = say_asked(&out, profile, cli_given(&arguments, "--make"), sil_sheet_job(sheet));
    if (out.failed) {
        code = cli_failed("out of memory");
    } else if (code == CLI_DONE) {
        cli_print(text_read(&out));
    }
    text_free(&out);
    sil_sheet_free(sheet);
    return code;
}
