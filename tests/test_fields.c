/* SPDX-License-Identifier: MIT */
/* Every field has words, and the fields that apply to an instrument are those listed here by hand.
 */
#include <stdio.h>
#include <string.h>

#include <sillet/fields.h>
#include <sillet/sheet.h>

#include "../src/job/fields.h"
#include "near.h"

static bool find(const char *path)
{
    sil_field field;
    return sil_field_find(path, &field);
}

/* --- every field has words, and all words a field -------------------------------------------- */

/* The words of a field's choices, both ways. */
static void same_choices(const char *path, const job_word *words, const sil_field *field)
{
    int count = 0;
    for (; words && words[count].text; count++) {
        bool found = false;
        for (int i = 0; i < field->choice_count; i++) {
            found = found || strcmp(field->choices[i].word, words[count].text) == 0;
        }
        if (!found) {
            fail_msg("%s: no words for %s", path, words[count].text);
        }
    }
    for (int i = 0; i < field->choice_count; i++) {
        assert_true(strlen(field->choices[i].shown) > 0);
    }
    assert_int_equal(field->choice_count, count);
}

static int look_at(const job_table *table, const char *up)
{
    int count = 0;
    for (int i = 0; i < table->count; i++) {
        const job_field *row = &table->fields[i];
        char path[128];
        sil_field field;
        snprintf(path, sizeof path, "%s%s%s", up, *up ? "." : "", row->key);
        if (!sil_field_find(path, &field)) {
            fail_msg("%s has no words: a row in src/job/words.c is missing", path);
        }
        same_choices(path, row->words, &field);
        count += 1 + (row->of ? look_at(row->of, path) : 0);
    }
    return count;
}

static void every_field_has_words(void **state)
{
    (void)state;
    assert_int_equal(look_at(&job_table_all, ""), sil_field_count()); /* so none is left over */
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k), again;
        assert_true(sil_field_find(field.path, &again));
        assert_int_equal(again.order, k); /* and none is there twice */
        size_t label = strlen(field.label), hint = strlen(field.hint);
        if (label == 0 || label > 28 || hint == 0 || hint > 80 || strchr(field.hint, '\n')) {
            fail_msg("%s: label of %zu letters, hint of %zu", field.path, label, hint);
        }
        assert_true(field.kind != SIL_FIELD_CHOICE || field.choice_count > 1);
        assert_true((field.kind == SIL_FIELD_ENDS) == (field.ends[0] && field.ends[1]));
    }
    assert_false(find("readings.") || find("nut.colour") || find(""));
}

static void units_are_of_the_measure(void **state)
{
    static const struct {
        const char *path, *unit;
        sil_field_kind kind;
    } rows[] = {
        {"instrument.crown", "length", SIL_FIELD_FIGURE},
        {"instrument.head_angle", "deg", SIL_FIELD_FIGURE},
        {"instrument.join", "", SIL_FIELD_COUNT},
        {"instrument.radius", "length", SIL_FIELD_ENDS},
        {"instrument.rod", "", SIL_FIELD_CHOICE},
        {"nut.material", "", SIL_FIELD_TEXT},
        {"strings.unit_mass", "g/m", SIL_FIELD_FIGURE},
        {"readings.humidity", "%", SIL_FIELD_FIGURE},
        {"readings.condition", "", SIL_FIELD_PART},
        {"readings.first", "length", SIL_FIELD_EACH},
        {"readings.cents", "", SIL_FIELD_EACH},
        {"readings.buzz", "", SIL_FIELD_LIST},
        {"targets.relief", "length", SIL_FIELD_TARGET},
        {"targets.action", "length", SIL_FIELD_TARGETS},
        {"files", "length", SIL_FIELD_LIST},
    };
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        sil_field field;
        assert_true(sil_field_find(rows[i].path, &field));
        assert_string_equal(field.unit, rows[i].unit);
        assert_int_equal(field.kind, rows[i].kind);
    }
    assert_true(sil_field_within("nut.width", "nut"));
    assert_false(sil_field_within("nut.width", "nu"));
    assert_false(sil_field_within("readings.condition.bridge", "readings"));
}

/* --- which fields an instrument has ------------------------------------------------------------
 */

#define NO_FAN "instrument.scale.treble instrument.scale.bass instrument.scale.square "
#define NO_PAIRS "nut.pair saddle.pair "
#define NO_SCREWS "saddle.pitch saddle.intonation_pitch saddle.travel saddle.post_spread "
#define NO_SLOT                                                                                    \
    "readings.condition.saddle saddle.slot_depth saddle.pin_distance saddle.exit_height "          \
    "saddle.pickup saddle.old "                                                                    \
    "readings.saddle_height readings.bridge_top readings.stands_out limits.least_protrusion "      \
    "limits.most_protrusion limits.good_protrusion limits.least_in_slot limits.least_break "       \
    "tools.ruler "
#define NO_PIECE                                                                                   \
    "saddle.length saddle.thickness saddle.peak allowances.leave.base allowances.leave.top "

enum { PITCH = 1, FAN = 2, COURSES = 4, POCKET = 8, HEEL = 16, PLAIN = 32, ZERO = 64 };

/* Of a guitar whose strings, but for the last, are plain. */
static const struct kind_row {
    sil_saddle_kind saddle;
    int has, strings, join;
    const char *without; /* the fields it does not have */
} kind_rows[] = {
    {SIL_SADDLE_SLOTTED, 0, 6, 14, NO_FAN NO_PAIRS NO_SCREWS},
    {SIL_SADDLE_GLUED, 0, 6, 14, NO_FAN NO_PAIRS NO_SCREWS},
    {SIL_SADDLE_INDIVIDUAL, PITCH, 6, 14, NO_FAN NO_PAIRS NO_SLOT NO_PIECE "saddle.post_spread"},
    {SIL_SADDLE_INDIVIDUAL, 0, 6, 14, NO_FAN NO_PAIRS NO_SLOT NO_PIECE "saddle.post_spread"},
    {SIL_SADDLE_TWO_POST, PITCH, 6, 14, NO_FAN NO_PAIRS NO_SLOT NO_PIECE},
    {SIL_SADDLE_FLOATING, PITCH, 6, 14, NO_FAN NO_PAIRS NO_SLOT NO_PIECE},
    {SIL_SADDLE_FLOATING, 0, 6, 14, NO_FAN NO_PAIRS NO_SLOT "saddle.travel saddle.post_spread"},
    {SIL_SADDLE_KIND_NOT_GIVEN, 0, 6, 14, NO_FAN NO_PAIRS},
    {SIL_SADDLE_SLOTTED, FAN, 6, 14, NO_PAIRS NO_SCREWS},
    {SIL_SADDLE_SLOTTED, COURSES, 6, 14, NO_FAN NO_SCREWS},
    {SIL_SADDLE_SLOTTED, ZERO, 6, 14,
     NO_FAN NO_PAIRS NO_SCREWS "nut.seat_to_board nut.centres nut.floors allowances.bury_plain "
                               "allowances.bury_wound allowances.leave.slot"},
    {SIL_SADDLE_SLOTTED, 0, 1, 14, NO_FAN NO_PAIRS NO_SCREWS "nut.spacing saddle.spread"},
    {SIL_SADDLE_SLOTTED, 0, 6, 2,
     NO_FAN NO_PAIRS NO_SCREWS "readings.relief readings.relief.gap readings.relief.at "
                               "readings.relief.held readings.relief.by readings.relief.string"},
    {SIL_SADDLE_SLOTTED, 0, 6, 3, NO_FAN NO_PAIRS NO_SCREWS},
    {SIL_SADDLE_SLOTTED, POCKET, 6, 14, NO_FAN NO_PAIRS NO_SCREWS "instrument.heel"},
    {SIL_SADDLE_SLOTTED, HEEL, 6, 14,
     NO_FAN NO_PAIRS NO_SCREWS "instrument.pocket instrument.pocket_at"},
    {SIL_SADDLE_SLOTTED, POCKET | HEEL, 6, 14, NO_FAN NO_PAIRS NO_SCREWS},
    {SIL_SADDLE_SLOTTED, PLAIN, 6, 14, NO_FAN NO_PAIRS NO_SCREWS "strings.core"},
};

/* Whether a word is in a list, a space between two; counts it. */
static bool is_listed(const char *list, const char *word, int *seen)
{
    size_t length = strlen(word);
    for (const char *at = list; *at; at += strspn(at, " ")) {
        size_t whole = strcspn(at, " ");
        if (whole == length && strncmp(at, word, length) == 0) {
            *seen += 1;
            return true;
        }
        at += whole;
    }
    return false;
}

static int words_in(const char *list)
{
    int count = 0;
    for (const char *at = list; *at; at += strspn(at, " ")) {
        at += strcspn(at, " ");
        count++;
    }
    return count;
}

static void lay_kind(const struct kind_row *row, sil_job *job)
{
    sil_job_clear(job);
    job->saddle.kind = row->saddle;
    job->saddle.pitch = row->has & PITCH ? 0.5 : SIL_UNKNOWN;
    job->instrument.scale = 645;
    job->instrument.scale_bass = row->has & FAN ? 665 : SIL_UNKNOWN;
    job->instrument.join = row->join;
    job->instrument.pocket = row->has & POCKET ? 76 : SIL_UNKNOWN;
    job->instrument.heel = row->has & HEEL ? 92 : SIL_UNKNOWN;
    job->nut.kind = row->has & ZERO ? SIL_NUT_ZERO_FRET : SIL_NUT_SLOTTED;
    job->string_count = row->strings;
    for (int i = 0; i < row->strings; i++) {
        bool wound = i == row->strings - 1 && !(row->has & PLAIN);
        job->strings[i].material = wound ? SIL_WOUND_BRONZE : SIL_PLAIN_STEEL;
        job->strings[i].course = row->has & COURSES ? 1 + i / 2 : 0;
    }
}

static void each_kind_has_its_fields(void **state)
{
    (void)state;
    for (size_t r = 0; r < sizeof kind_rows / sizeof *kind_rows; r++) {
        const struct kind_row *row = &kind_rows[r];
        sil_job job;
        int seen = 0;
        lay_kind(row, &job);
        for (int k = 0; k < sil_field_count(); k++) {
            const char *path = sil_field_at(k).path;
            bool wanted = !is_listed(row->without, path, &seen);
            if (sil_field_applies(path, &job) != wanted) {
                fail_msg("row %zu: %s: wanted %s", r, path, wanted ? "there" : "not there");
            }
        }
        assert_int_equal(seen, words_in(row->without)); /* no slip in the row itself */
        assert_false(sil_field_applies("nut.colour", &job));
    }
}

/* --- what a job has for a field ----------------------------------------------------------------
 */

static sil_field_value value_of(const char *path, const sil_job *job, int reading, bool given)
{
    sil_field field;
    sil_field_value value;
    assert_true(sil_field_find(path, &field));
    if (sil_field_read(&field, job, reading, &value) != given) {
        fail_msg("%s: wanted it %s", path, given ? "given" : "not given");
    }
    return value;
}

static const char *chosen(const char *path, const sil_job *job, int reading)
{
    sil_field field;
    assert_true(sil_field_find(path, &field));
    return field.choices[value_of(path, job, reading, true).choice].word;
}

static const char sheet_text[] =
    "sillet: 1\nprofile: fanned-acoustic\n"
    "instrument: {crown: 1.1, radius: {nut: 254, end: 406}, head_angle: 14 deg, rod_state: at-end,"
    " handed: left}\n"
    "nut: {material: bone}\n"
    "readings:\n  - {humidity: 51 %}\n"
    "  - {date: 2026-03-14, humidity: 47 %, condition: {bridge: lifted},"
    " relief: {gap: 0.2, string: 3, by: straightedge},"
    " action: [1.5, 1.6, 1.7, ~, 1.9, 2.0], action_capo: 1, first_held: 2,"
    " saddle_height: {treble: 9.5, bass: 10.6}}\n";

static void values_are_read_by_path(void **state)
{
    sil_sheet *sheet;
    (void)state;
    assert_true(sil_sheet_read_bytes(sheet_text, strlen(sheet_text), "a sheet", "profiles",
                                     &sheet) >= SIL_DONE);
    const sil_job *job = sil_sheet_job(sheet);
    near(value_of("instrument.crown", job, -1, true).figure[0], 1.1, 1e-12);
    near(value_of("instrument.scale.bass", job, -1, true).figure[0], 665, 1e-9);
    near(value_of("instrument.scale.square", job, -1, true).figure[0], 8, 0);
    near(value_of("instrument.join", job, -1, true).figure[0], 14, 0);
    near(value_of("instrument.head_angle", job, -1, true).figure[0], 14, 1e-12);
    sil_field_value radius = value_of("instrument.radius", job, -1, true);
    assert_int_equal(radius.count, 2);
    near(radius.figure[0], 254, 1e-9);
    near(radius.figure[1], 406, 1e-9);
    assert_string_equal(chosen("instrument.rod_state", job, -1), "at-end");
    assert_string_equal(chosen("instrument.handed", job, -1), "left");
    assert_string_equal(chosen("saddle.kind", job, -1), "slotted");
    assert_string_equal(value_of("nut.material", job, -1, true).text, "bone");
    assert_int_equal(value_of("instrument.rod", job, -1, false).choice, -1);
    assert_null(value_of("saddle.material", job, -1, false).text);

    near(value_of("readings.humidity", job, 0, true).figure[0], 51, 1e-12);
    near(value_of("readings.humidity", job, 1, true).figure[0], 47, 1e-12);
    assert_string_equal(value_of("readings.date", job, 1, true).text, "2026-03-14");
    assert_string_equal(chosen("readings.condition.bridge", job, 1), "lifted");
    assert_string_equal(chosen("readings.relief.by", job, 1), "straightedge");
    assert_string_equal(chosen("readings.action_capo", job, 1), "1");
    assert_string_equal(chosen("readings.first_held", job, 1), "2");
    near(value_of("readings.relief.gap", job, 1, true).figure[0], 0.2, 1e-12);
    near(value_of("readings.relief.string", job, 1, true).figure[0], 3, 0);
    sil_field_value action = value_of("readings.action", job, 1, true);
    assert_int_equal(action.count, 6);
    near(action.figure[5], 2.0, 1e-12);
    assert_false(sil_known(action.figure[3]));
    near(value_of("readings.saddle_height", job, 1, true).figure[1], 10.6, 1e-12);

    value_of("readings.humidity", job, -1, false);
    value_of("readings.humidity", job, 2, false);
    value_of("readings.relief.string", job, 0, false);
    value_of("readings.condition", job, 1, false);
    value_of("strings.gauge", job, -1, false);
    value_of("sillet", job, -1, false);
    sil_sheet_free(sheet);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_field_has_words),
        cmocka_unit_test(units_are_of_the_measure),
        cmocka_unit_test(each_kind_has_its_fields),
        cmocka_unit_test(values_are_read_by_path),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
