/* SPDX-License-Identifier: MIT */
/* Reading sheets: the forms of their values, and their profiles. */
#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>

#include "told.h"

static const sil_job *job_of(const char *text, sil_sheet **sheet)
{
    static char all[TEXT];
    sil_sheet_read_bytes(text, strlen(text), "s.yaml", "profiles", sheet);
    told(*sheet, all);
    if (!sil_sheet_job(*sheet)) {
        fail_msg("%s", all);
    }
    return sil_sheet_job(*sheet);
}

static void every_form_of_a_value_is_read(void **state)
{
    (void)state;
    sil_sheet *sheet;
    assert_int_equal(sil_sheet_read("tests/sheets/good-forms.yaml", "profiles", &sheet), 0);
    const sil_job *job = sil_sheet_job(sheet);
    const sil_reading *read = &job->readings[1];
    assert_int_equal(job->units, SIL_INCH);
    assert_string_equal(job->about.title, "\xC3\x87"
                                          "a va \xE2\x99\xAF");
    assert_string_equal(job->about.ref, "7");
    assert_string_equal(job->about.notes, "two\nlines\n");
    near(job->instrument.scale, 647.7, 1e-12);
    near(job->instrument.radius_nut, 254.0, 1e-12);
    near(job->instrument.radius_end, 400.0, 0.0);
    near(job->instrument.fallaway, 0.254, 1e-15);
    near(job->instrument.head_angle_deg, 14.0, 0.0);
    assert_int_equal(job->instrument.handed, SIL_LEFT_HANDED);
    assert_int_equal(job->instrument.frets, 22); /* from the profile */
    assert_int_equal(job->string_count, 6);
    near(job->strings[0].hz, 440.0 * exp2(-5.0 / 12.0), 1e-10); /* ISO 16: E4 from A4 */
    near(job->strings[1].hz, 440.0 * exp2(-10.0 / 12.0), 1e-10);
    near(job->strings[1].modulus_gpa, 206.0, 0.0);
    near(job->strings[2].hz, 196.0, 0.0);
    near(job->strings[2].gauge, 0.4318, 1e-15);
    near(job->strings[2].unit_mass_kg_m, 0.00115, 1e-18);
    near(job->strings[3].core, 0.3556, 1e-15);
    assert_false(sil_known(job->strings[4].core) || sil_known(job->strings[5].core));
    near(job->strings[4].gauge, 0.9144, 1e-15);
    near(job->strings[5].hz, 82.4, 0.0); /* over the note's own */
    near(job->nut.edge_treble, 3.048, 1e-12);
    near(job->nut.edge_bass, 3.048, 1e-12);
    near(job->nut.width, 42.0, 0.0); /* a profile's figures are in the profile's unit */
    assert_int_equal(job->nut.spacing, SIL_EQUAL_CENTRE);
    near(job->saddle.setback[5], 0.16 * 25.4, 1e-12);
    assert_false(sil_known(job->saddle.pin_distance[0]));
    assert_int_equal(job->file_count, 3);
    near(job->files[2], 0.017 * 25.4, 1e-15);
    assert_int_equal(job->reading_count, 2);
    near(job->readings[0].gaps.action[3], 5.0 / 64.0 * 25.4, 1e-15);
    assert_int_equal(job->readings[0].relief.over, 8);
    assert_int_equal(job->readings[0].relief.high, 22);
    near(read->humidity_pct, 47.0, 0.0);
    near(read->temperature_c, 20.0, 1e-12);
    assert_int_equal(read->condition.bridge, SIL_SOUND);
    assert_int_equal(read->condition.braces, SIL_UNSOUND);
    assert_int_equal(read->condition.strings, SIL_UNSOUND);
    assert_int_equal(read->condition.tuned, SIL_UNSOUND);
    near(read->relief.gap, -0.1, 0.0);
    assert_true(read->relief.straightedge);
    assert_int_equal(read->relief.string, -1);
    near(read->gaps.action[0], 2.0, 0.0);
    near(read->gaps.action[1], 2.0 + 0.54 / 5.0, 1e-12);
    near(read->gaps.action[5], 2.54, 1e-12);
    assert_int_equal(read->gaps.action_at, 14);
    assert_true(read->gaps.capo);
    assert_false(sil_known(read->gaps.first[1]) || sil_known(read->gaps.first[3]));
    near(read->gaps.first[4], 0.1016, 1e-15);
    assert_int_equal(read->gaps.first_held, SIL_HOLD_OPEN);
    near(read->gaps.first_open[5], 0.254, 1e-15);
    assert_int_equal(read->crowns_read, SIL_CROWNS_LISTED);
    near(read->crowns[0].off, -0.0762, 1e-15);
    near(read->saddle_height_treble, 7.62, 1e-12);
    near(read->bridge_top_bass, 1.3, 0.0);
    assert_int_equal(read->buzz_count, 1);
    near(read->cents[2], -3.0, 0.0);
    near(job->targets.relief.aim, 0.1778, 1e-15);
    near(job->targets.relief.low, 0.1778 - 0.05, 1e-15); /* the profile's band */
    near(job->targets.action[1].high, 0.08 * 25.4, 1e-12);
    near(job->targets.action[4].low, 0.07 * 25.4 - 0.15, 1e-12);
    near(job->targets.first[5].aim, 0.0508, 1e-15);
    assert_int_equal(job->targets.first_held, SIL_HOLD_2);
    assert_int_equal(job->model.ends, SIL_PINNED);
    near(job->attack.force[3], 0.7, 1e-15);
    near(job->attack.force[4], 0.2 * 0.45359237 * 9.80665, 1e-12);
    near(job->attack.at, 101.6, 1e-12);
    assert_null(job->attack.name);
    near(job->tools.action, 25.4 / 64.0, 1e-15);
    sil_sheet_free(sheet);
}

static void what_is_not_given_is_what_the_page_says(void **state)
{
    (void)state;
    sil_sheet *sheet;
    const sil_job *job = job_of(HEAD "readings: [{}]\njob: {title: ~, ref: null, by: }\n", &sheet);
    assert_null(job->about.title);
    assert_null(job->about.ref);
    assert_null(job->about.by);
    assert_int_equal(job->units, SIL_MM);
    near(job->instrument.fallaway, 0.0, 0.0);
    near(job->nut.advance, 0.0, 0.0);
    near(job->saddle.pickup, 0.0, 0.0);
    near(job->model.press, 0.0, 0.0);
    assert_int_equal(job->model.ends, SIL_CLAMPED_PINNED);
    assert_false(sil_known(job->nut.seat_to_board) || sil_known(job->saddle.slot_depth));
    assert_false(sil_known(job->saddle.pin_distance[0]) || sil_known(job->instrument.crown));
    assert_string_equal(job->attack.name, "medium");
    near(job->attack.force[0], 0.6, 0.0);
    const sil_reading *read = &job->readings[0];
    assert_int_equal(read->gaps.action_at, 12);
    assert_int_equal(read->gaps.first_held, SIL_HOLD_3);
    assert_int_equal(read->relief.string, -1);
    assert_false(read->gaps.capo || read->relief.straightedge);
    assert_false(sil_known(read->relief.gap) || sil_known(read->gaps.action[0]));
    assert_int_equal(read->crowns_read, SIL_CROWNS_NOT_READ);
    sil_sheet_free(sheet);
    job = job_of(HEAD "attack: firm\nreadings: [{frets: sound}, {frets: []}]\n", &sheet);
    assert_string_equal(job->attack.name, "firm");
    near(job->attack.force[5], 1.6, 1e-15);
    assert_int_equal(job->readings[0].crowns_read, SIL_CROWNS_SOUND);
    assert_int_equal(job->readings[1].crowns_read, SIL_CROWNS_LISTED);
    sil_sheet_free(sheet);
}

static void targets_lie_over_the_profile_s(void **state)
{
    (void)state;
    sil_sheet *sheet;
    /* one value: the profile's band each way, never under 0; held stays the profile's */
    const sil_job *job = job_of("sillet: 1\nprofile: tests/sheets/held-2.yaml\n"
                                "targets: {relief: 0.02, action: 1.9, first: {aim: 0.02}}\n",
                                &sheet);
    near(job->targets.relief.low, -0.03, 1e-15);
    near(job->targets.action[5].low, 1.75, 1e-12);
    near(job->targets.action[0].high, 2.05, 1e-12);
    near(job->targets.first[3].low, 0.0, 0.0);
    near(job->targets.first[3].high, 0.05, 1e-15);
    assert_int_equal(job->targets.first_held, SIL_HOLD_2);
    sil_sheet_free(sheet);
    /* one end of a pair told anew, and one edge of an end */
    job = job_of(HEAD "targets: {action: {bass: 2.6}, first: {treble: {high: 0.2}}}\n", &sheet);
    near(job->targets.action[0].low, 1.5, 1e-15);
    near(job->targets.action[5].low, 2.45, 1e-12);
    near(job->targets.action[2].aim, 1.75 + 0.85 * 2.0 / 5.0, 1e-12);
    near(job->targets.first[0].high, 0.2, 0.0);
    near(job->targets.first[0].aim, 0.05, 0.0);
    sil_sheet_free(sheet);
    /* the other form drops the profile's ends; low and high alone give the middle */
    job = job_of(HEAD "targets: {action: {low: 1.6, high: 2.0}}\n", &sheet);
    near(job->targets.action[0].aim, 1.8, 1e-15);
    near(job->targets.action[5].high, 2.0, 0.0);
    sil_sheet_free(sheet);
    /* nothing said over the profile's */
    job = job_of(HEAD "targets: {action: ~, relief: null}\n", &sheet);
    near(job->targets.action[0].low, 1.5, 0.0);
    near(job->targets.relief.high, 0.3, 0.0);
    sil_sheet_free(sheet);
}

static void true_and_false_are_yes_and_no(void **state)
{
    (void)state;
    static const struct {
        const char *word;
        sil_soundness tuned;
    } rows[] = {{"true", SIL_SOUND},    {"True", SIL_SOUND},     {"TRUE", SIL_SOUND},
                {"yes", SIL_SOUND},     {"\"true\"", SIL_SOUND}, {"false", SIL_UNSOUND},
                {"False", SIL_UNSOUND}, {"FALSE", SIL_UNSOUND},  {"no", SIL_UNSOUND}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        char sheet_text[160];
        sil_sheet *sheet;
        snprintf(sheet_text, sizeof sheet_text, HEAD "readings: [{condition: {tuned: %s}}]\n",
                 rows[i].word);
        const sil_job *job = job_of(sheet_text, &sheet);
        assert_int_equal(job->readings[0].condition.tuned, rows[i].tuned);
        sil_sheet_free(sheet);
    }
}

static void json_is_yaml_too(void **state)
{
    (void)state;
    sil_sheet *json;
    const sil_job *job = job_of("{\"sillet\": 1, \"profile\": \"steel-string-acoustic\",\n"
                                " \"readings\": [{\"relief\": \"0,20 mm\",\n"
                                "   \"action\": [2.3, null, 2.5, 2.6, 2.7, 2.8]}]}\n",
                                &json);
    near(job->readings[0].relief.gap, 0.2, 0.0);
    near(job->readings[0].gaps.action[5], 2.8, 0.0);
    assert_false(sil_known(job->readings[0].gaps.action[1]));
    sil_sheet_free(json);
}

/* --- profiles -------------------------------------------------------------------------------- */

static void profiles_and_examples_are_read_without_a_word(void **state)
{
    (void)state;
    static char all[TEXT];
    const char *const folders[] = {"examples", "profiles"};
    int read = 0;
    for (int i = 0; i < 2; i++) {
        DIR *folder = opendir(folders[i]);
        assert_non_null(folder);
        for (struct dirent *entry; (entry = readdir(folder));) {
            char text[512];
            if (!strstr(entry->d_name, ".yaml")) {
                continue;
            }
            sil_sheet *sheet;
            snprintf(text, sizeof text, "%s/%s", folders[i], entry->d_name);
            sil_status status = sil_sheet_read(text, "profiles", &sheet);
            told(sheet, all);
            if (status != SIL_DONE) {
                fail_msg("%s: %s", text, all);
            }
            sil_sheet_free(sheet);
            read++;
        }
        closedir(folder);
    }
    assert_true(read >= 11);
}

static void profiles_are_found_where_they_are_said_to_be(void **state)
{
    (void)state;
    char folder[4096];
    sil_sheet *sheet;
    setenv("SILLET_PROFILES", "profiles", 1);
    assert_int_equal(sil_profiles_folder(folder, sizeof folder), 8);
    assert_string_equal(folder, "profiles");
    assert_int_equal(sil_profiles_folder(folder, 4), 0);
    assert_int_equal(sil_sheet_read_bytes(HEAD, strlen(HEAD), "s.yaml", NULL, &sheet), 0);
    sil_sheet_free(sheet);
    unsetenv("SILLET_PROFILES");
    assert_int_equal(sil_sheet_read_bytes(HEAD, strlen(HEAD), "s.yaml", "nowhere", &sheet),
                     SIL_WRONG);
    sil_sheet_free(sheet);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(profiles_and_examples_are_read_without_a_word),
        cmocka_unit_test(every_form_of_a_value_is_read),
        cmocka_unit_test(what_is_not_given_is_what_the_page_says),
        cmocka_unit_test(targets_lie_over_the_profile_s),
        cmocka_unit_test(true_and_false_are_yes_and_no),
        cmocka_unit_test(json_is_yaml_too),
        cmocka_unit_test(profiles_are_found_where_they_are_said_to_be),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
