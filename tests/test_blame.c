/* SPDX-License-Identifier: MIT */
/* What a buzz is put down to that should ring clean by the readings, and that nothing is said of a
 * saddle line which nobody measured. The rules are common practice, no source: a repairer blames the
 * player last. Every job is our own. */
#include <sillet/sillet.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "planned.h"

static sil_plan plan;

static sil_sheet *read_sheet(const char *saddle, const char *readings)
{
    static char bytes[2048];
    int size = snprintf(bytes, sizeof bytes,
                        "sillet: 1\nprofile: steel-string-acoustic\n"
                        "instrument: {crown: 1.1, rod: two-way}\n%s"
                        "readings:\n  - {%s}\n",
                        saddle, readings);
    sil_sheet *sheet = NULL;
    sil_sheet_read_bytes(bytes, (size_t)size, "blame", "profiles", &sheet);
    for (int k = 0; !sil_sheet_job(sheet) && k < sil_sheet_complaint_count(sheet); k++) {
        print_error("%s\n", sil_sheet_complaint(sheet, k).text);
    }
    assert_non_null(sil_sheet_job(sheet));
    return sheet;
}

#define SOUND_GAPS "relief: 0.2, first: [0.06, 0.06, 0.06, 0.07, 0.07, 0.08]"
#define SOUND_ACTION "action: {treble: 1.75, bass: 2.25}"

typedef struct told {
    const char *what;
    const char *readings; /* string 6 is heard at fret 3, or open */
    sil_cause_name cause;
    bool likely;
} told;

static const told jobs[] = {
    {"a sound instrument: technique",
     SOUND_GAPS ", " SOUND_ACTION ", frets: sound, buzz: [{string: 6, fret: 3}]",
     SIL_CAUSE_TECHNIQUE, false},
    {"worn past the stop: look at that fret, not at the player",
     SOUND_GAPS ", " SOUND_ACTION
                ", frets: [{string: 6, fret: 5, off: -0.15}], buzz: [{string: 6, fret: 3}]",
     SIL_CAUSE_CROWN, true},
    {"worn under the stop itself, where the finger presses",
     SOUND_GAPS ", " SOUND_ACTION
                ", frets: [{string: 6, fret: 3, off: -0.15}], buzz: [{string: 6, fret: 3}]",
     SIL_CAUSE_CROWN, true},
    {"worn before the stop, where the string is not: technique",
     SOUND_GAPS ", " SOUND_ACTION
                ", frets: [{string: 6, fret: 2, off: -0.15}], buzz: [{string: 6, fret: 3}]",
     SIL_CAUSE_TECHNIQUE, false},
    {"action too low: it is the reading farthest out",
     SOUND_GAPS ", action: [1.75, 1.85, 1.95, 2.05, 2.15, 1.95], frets: sound, "
                "buzz: [{string: 6, fret: 3}]",
     SIL_CAUSE_SADDLE, true},
    {"action too high: no string buzzes for that, and nobody is blamed",
     SOUND_GAPS ", action: [1.75, 1.85, 1.95, 2.05, 2.15, 3.20], frets: sound, "
                "buzz: [{string: 6, fret: 3}]",
     SIL_CAUSE_UNEXPLAINED, false},
    {"the slot of a fretted string has no part in it",
     "relief: 0.2, first: [0.06, 0.06, 0.06, 0.07, 0.07, 0.40], " SOUND_ACTION
     ", frets: sound, buzz: [{string: 6, fret: 3}]",
     SIL_CAUSE_TECHNIQUE, false},
    {"the slot of an open string has",
     "relief: 0.2, first: [0.06, 0.06, 0.06, 0.07, 0.07, 0.02], " SOUND_ACTION
     ", frets: sound, buzz: [{string: 6, fret: 0}]",
     SIL_CAUSE_SLOT, true},
    {"but not where it is too high",
     "relief: 0.2, first: [0.06, 0.06, 0.06, 0.07, 0.07, 0.40], " SOUND_ACTION
     ", frets: sound, buzz: [{string: 6, fret: 0}]",
     SIL_CAUSE_UNEXPLAINED, false},
    {"an open string that is sound may sing in its slot: not the player",
     SOUND_GAPS ", " SOUND_ACTION ", frets: sound, buzz: [{string: 6, fret: 0}]",
     SIL_CAUSE_UNEXPLAINED, false},
    {"nobody looked at the crowns: nobody is blamed",
     SOUND_GAPS ", " SOUND_ACTION ", buzz: [{string: 6, fret: 3}]", SIL_CAUSE_UNEXPLAINED, false},
};

/* Plans a sheet whose pick is this share of what string 6 rings clean at, at that fret. */
static const sil_cause *heard_under(const sil_sheet *sheet, double share)
{
    static sil_job job;
    job = *sil_sheet_job(sheet);
    int fret = job.readings[0].buzz[0].fret;
    plan_into(&job, &plan);
    for (int i = 0; i < job.string_count; i++) {
        job.attack.force[i] = share * plan.clean_now.force[5][fret];
    }
    plan_into(&job, &plan);
    for (int k = 0; k < plan.cause_count; k++) {
        if (plan.causes[k].heard) {
            return &plan.causes[k];
        }
    }
    fail();
    return NULL;
}

static void the_player_is_blamed_last(void **state)
{
    (void)state;
    for (size_t k = 0; k < sizeof jobs / sizeof *jobs; k++) {
        sil_sheet *sheet = read_sheet("", jobs[k].readings);
        const sil_cause *note = heard_under(sheet, 0.5);
        if (note->cause != jobs[k].cause || note->likely != jobs[k].likely) {
            print_error("%s: told %s%s\n", jobs[k].what, note->likely ? "likely " : "",
                        sil_cause_word(note->cause));
            fail();
        }
        sil_sheet_free(sheet);
    }
}

static int count_code(sil_code code)
{
    int count = 0;
    for (int k = 0; k < plan.finding_count; k++) {
        count += plan.findings[k].code == code;
    }
    return count;
}

/* Between the pick and 1.25 times the pick nobody can tell; over it, it is the hand. */
static void near_the_pick_it_is_too_close_to_call(void **state)
{
    (void)state;
    static const double near_it[] = {1.0 / 1.2499, 1.0 / 1.1, 1.0 / 1.0001};
    sil_sheet *sheet = read_sheet("", jobs[0].readings);
    for (size_t k = 0; k < sizeof near_it / sizeof *near_it; k++) {
        assert_int_equal(heard_under(sheet, near_it[k])->cause, SIL_CAUSE_TOO_CLOSE);
        assert_int_equal(count_code(SIL_TOO_CLOSE), 1);
        assert_int_equal(count_code(SIL_TECHNIQUE), 0);
    }
    assert_int_equal(heard_under(sheet, 1.0 / 1.2501)->cause, SIL_CAUSE_TECHNIQUE);
    assert_int_equal(count_code(SIL_TOO_CLOSE), 0);
    assert_int_equal(count_code(SIL_TECHNIQUE), 1);
    sil_sheet_free(sheet);
}

#define OWN_LINE "saddle: {slot_depth: 5, thickness: 1.5, setback: {treble: 2.0, bass: 4.5}}\n"

static double setback[SIL_STRINGS_MAX]; /* as the sheet last planned gives it */

static int off_saddle(const char *saddle, const char *cents)
{
    char readings[400];
    snprintf(readings, sizeof readings,
             SOUND_GAPS ", " SOUND_ACTION ", frets: sound, temperature: 20 C%s", cents);
    sil_sheet *sheet = read_sheet(saddle, readings);
    plan_into(sil_sheet_job(sheet), &plan);
    memcpy(setback, sil_sheet_job(sheet)->saddle.setback, sizeof setback);
    sil_sheet_free(sheet);
    return count_code(SIL_OFF_SADDLE);
}

static void only_a_saddle_line_that_was_read_is_spoken_of(void **state)
{
    (void)state;
    assert_int_equal(off_saddle("saddle: {slot_depth: 5, thickness: 1.5}\n", ""), 0);
    assert_true(off_saddle(OWN_LINE, "") > 0);
}

/* The tuner was there: what the strings' physics says of the same string is not said beside it. */
static void of_a_string_whose_cents_were_read_the_tuner_speaks(void **state)
{
    (void)state;
    double was[SIL_STRINGS_MAX];
    assert_true(off_saddle(OWN_LINE, "") > 0);
    for (int i = 0; i < 6; i++) {
        was[i] = plan.compensation[i].off_slot;
    }
    assert_int_equal(off_saddle(OWN_LINE, ", cents: [1, -1, 2, 0, 1, -2]"), 0);
    for (int i = 0; i < 6; i++) {
        double line = sil_line_at(plan.slot_as_built, plan.bench.board.saddle_z[i]);
        double there = setback[i] + plan.tuning.move[i];
        assert_true(fabs(plan.compensation[i].off_slot - (there - line)) <= 1e-12);
    }
    off_saddle(OWN_LINE, ", cents: [~, -1, ~, ~, ~, ~]"); /* of the others it is said as before */
    for (int i = 0; i < 6; i++) {
        assert_true((plan.compensation[i].off_slot == was[i]) == (i != 1));
    }
    assert_true(off_saddle(OWN_LINE, ", condition: {strings: worn}, cents: [1, -1, 2, 0, 1, -2]") >
                0); /* cents of worn strings tell nothing */
}

/* What an instrument's own file says of it was measured on it. */
static void an_instruments_own_file_counts_as_read(void **state)
{
    (void)state;
    char folder[] = "/tmp/sillet-blame-XXXXXX", own[64], path[64];
    assert_non_null(mkdtemp(folder));
    snprintf(own, sizeof own, "%s/own.yaml", folder);
    snprintf(path, sizeof path, "%s/sheet.yaml", folder);
    FILE *file = fopen(own, "w");
    assert_non_null(file);
    fputs("sillet: 1\nprofile: steel-string-acoustic\n"
          "saddle: {thickness: 1.5, setback: {treble: 2.0, bass: 4.5}}\n",
          file);
    fclose(file);
    file = fopen(path, "w");
    assert_non_null(file);
    fputs("sillet: 1\nprofile: own.yaml\n", file);
    fclose(file);
    sil_sheet *sheet = NULL;
    assert_int_equal(sil_sheet_read(path, "profiles", &sheet), SIL_DONE);
    assert_true(sil_sheet_job(sheet)->saddle.setback_read);
    sil_sheet_free(sheet);
    remove(own);
    remove(path);
    rmdir(folder);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_player_is_blamed_last),
        cmocka_unit_test(near_the_pick_it_is_too_close_to_call),
        cmocka_unit_test(only_a_saddle_line_that_was_read_is_spoken_of),
        cmocka_unit_test(of_a_string_whose_cents_were_read_the_tuner_speaks),
        cmocka_unit_test(an_instruments_own_file_counts_as_read),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
