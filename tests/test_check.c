/* SPDX-License-Identifier: MIT */
/* The check of a job that was not read from a sheet. Each row spoils one thing in a sound job, and
 * gives the path that must be reported, the severity, and a word from the message. */
#include <stdio.h>
#include <string.h>

#include "tone_job.h"

/* Everything told, one "path: what" a line, errors first marked with '!'. */
typedef struct heard {
    char text[8192];
    int errors, warnings;
} heard;

static void hear(void *with, sil_severity severity, const char *path, const char *wanted)
{
    heard *all = with;
    size_t used = strlen(all->text);
    snprintf(all->text + used, sizeof all->text - used, "%s%s: %s\n",
             severity == SIL_ERROR ? "!" : "?", path, wanted);
    all->errors += severity == SIL_ERROR;
    all->warnings += severity == SIL_WARNING;
}

static void a_sound_job_is_passed_without_a_word(void **state)
{
    (void)state;
    spoilt sound;
    heard all = {.errors = 0};
    make_tone(&sound);
    assert_int_equal(sil_job_check(&sound.job, hear, &all), 0);
    assert_string_equal(all.text, "");
}

static void no_scale(spoilt *s)
{
    s->job.instrument.scale = SIL_UNKNOWN;
}
static void endless_scale(spoilt *s)
{
    s->job.instrument.scale = (double)INFINITY;
}
static void scale_of_nothing(spoilt *s)
{
    s->job.instrument.scale = 0.0;
}
static void scale_in_inches(spoilt *s)
{
    s->job.instrument.scale = 25.4;
}
static void scale_in_micrometres(spoilt *s)
{
    s->job.instrument.scale = 645000.0;
}
static void scale_off_a_digit(spoilt *s)
{
    s->job.units = SIL_INCH;
    s->job.instrument.scale = 254.0 * 25.4;
}
static void many_frets(spoilt *s)
{
    s->job.instrument.frets = 37;
}
static void join_past_the_board(spoilt *s)
{
    s->job.instrument.join = 21;
}
static void one_make_missing(spoilt *s)
{
    s->job.strings[4].material = SIL_MATERIAL_NOT_GIVEN;
}
static void no_strings(spoilt *s)
{
    s->job.string_count = 0;
}
static void thick_core(spoilt *s)
{
    s->job.strings[3].core = s->job.strings[3].gauge;
}
static void heavy_string(spoilt *s)
{
    s->job.strings[5].unit_mass_kg_m = 6.0;
}
static void long_saddle_pitch(spoilt *s)
{
    s->job.saddle.kind = SIL_SADDLE_INDIVIDUAL;
    s->job.saddle.pitch = SIL_UNKNOWN;
}
static void no_saddle_length(spoilt *s)
{
    s->job.saddle.length = SIL_UNKNOWN;
}
static void no_saddle_kind(spoilt *s)
{
    s->job.saddle.kind = SIL_SADDLE_KIND_NOT_GIVEN;
}
static void short_saddle(spoilt *s)
{
    s->job.saddle.length = 53.0;
}
static void saddle_before_the_frets(spoilt *s)
{
    s->job.saddle.setback[2] = -300.0;
}
static void one_setback_missing(spoilt *s)
{
    s->job.saddle.setback[2] = SIL_UNKNOWN;
}
static void crowded_nut(spoilt *s)
{
    s->job.nut.edge_treble = 40.0;
}
static void board_narrower_than_round(spoilt *s)
{
    s->job.instrument.radius_nut = s->job.instrument.radius_end = 21.0;
}
static void string_outside_the_radius(spoilt *s)
{
    s->job.instrument.radius_end = 22.0;
}
static void flat_board(spoilt *s)
{
    s->job.instrument.radius_nut = s->job.instrument.radius_end = (double)INFINITY;
    s->job.instrument.crown = 2.0; /* and something to be told of */
}
static void target_upside_down(spoilt *s)
{
    s->job.targets.action[1].low = 3.0;
}
static void target_without_an_edge(spoilt *s)
{
    s->job.targets.relief.high = SIL_UNKNOWN;
}
static void gap_wanted_under_nought(spoilt *s)
{
    s->job.targets.first[0].low = -0.01;
}
static void no_tool(spoilt *s)
{
    s->job.tools.first = SIL_UNKNOWN;
}
static void limits_crossed(spoilt *s)
{
    s->job.limits.humidity_low_pct = 70.0;
}
static void wet(spoilt *s)
{
    s->reading.humidity_pct = 101.0;
}
static void date_of_no_month(spoilt *s)
{
    s->reading.date = "2026-13-01";
}
static void leap_day_too_many(spoilt *s)
{
    s->job.about.date = "2100-02-29";
}
static void pull_without_a_place(spoilt *s)
{
    s->job.attack.at = SIL_UNKNOWN;
}
static void pull_past_the_nut(spoilt *s)
{
    s->job.attack.name = NULL;
    s->job.attack.at = 650.0;
}
static void action_below_fret_five(spoilt *s)
{
    s->reading.gaps.action_at = 4;
}
static void action_past_the_board(spoilt *s)
{
    s->reading.gaps.action_at = 21;
}
static void negative_gap(spoilt *s)
{
    s->reading.gaps.first[5] = -0.1;
}
static void action_in_sixtyfourths(spoilt *s)
{
    s->reading.gaps.action[0] = 6.0;
}
static void crown_of_no_string(spoilt *s)
{
    s->crowns[0].string = 7;
    s->reading.crown_count = 1;
}
static void crown_of_no_fret(spoilt *s)
{
    s->crowns[0].fret = -2;
    s->reading.crown_count = 1;
}
static void crown_without_fret(spoilt *s)
{
    s->crowns[0].fret = -1;
    s->reading.crown_count = 1;
}
static void crown_of_a_slotted_nut(spoilt *s)
{
    s->crowns[0].fret = 0;
    s->reading.crown_count = 1;
}
static void crown_twice(spoilt *s)
{
    s->reading.crown_count = 2;
}
static void buzz_past_the_board(spoilt *s)
{
    s->buzz[0].fret = 21;
    s->reading.buzz_count = 1;
}
static void buzz_twice(spoilt *s)
{
    s->reading.buzz_count = 2;
}
static void relief_at_the_join(spoilt *s)
{
    s->reading.relief.over = 14;
}
static void relief_held_on_one_side(spoilt *s)
{
    s->reading.relief.low = 7;
}
static void relief_held_past_the_board(spoilt *s)
{
    s->reading.relief.high = 21;
}
static void relief_under_no_string(spoilt *s)
{
    s->reading.relief.string = 6;
}
static void back_bow_under_a_string(spoilt *s)
{
    s->reading.relief.gap = -0.1;
}
static void neck_of_two_frets(spoilt *s)
{
    s->job.instrument.join = 2;
}
static void string_under_a_crown(spoilt *s)
{
    s->reading.relief.gap = -0.8;
    s->reading.relief.straightedge = true;
    s->reading.gaps.action[1] = 0.9;
}
static void string_on_a_crown_held(spoilt *s)
{
    s->job.instrument.frets = 2;
    s->job.instrument.join = 2;
}

typedef struct row {
    void (*spoil)(spoilt *s);
    const char *told; /* a part of what is told, from the path on; '!' error, '?' warning */
} row;

static const row rows[] = {
    {no_scale, "!instrument.scale: missing"},
    {endless_scale, "!instrument.scale: not finite"},
    {scale_of_nothing, "!instrument.scale: must be over 0"},
    {scale_in_inches,
     "!instrument.scale: cannot be, 560 to 700 mm is usual; did you mean 25.4 in?"},
    {scale_in_micrometres, "!instrument.scale: cannot be, 560 to 700 mm is usual"},
    {scale_off_a_digit, "?instrument.scale: unlikely, 22.0472 to 27.5591 in is usual; did you mean "
                        "25.4 in?"},
    {many_frets, "!instrument.frets: wanted a whole number from 1 to 36"},
    {join_past_the_board, "!instrument.join: past the last fret, 20"},
    {one_make_missing, "!strings.4.make: missing"},
    {no_strings, "!strings: missing"},
    {thick_core, "!strings.3.core: wanted less than the gauge, 0.813 mm"},
    {heavy_string, "!strings.5.unit_mass: cannot be, 0.1 to 80 g/m is usual"},
    {long_saddle_pitch, "!saddle.pitch: missing"},
    {no_saddle_length, "!saddle.length: missing"},
    {no_saddle_kind, "!saddle.kind: missing"},
    {short_saddle, "!saddle.length: shorter than the string spacing, 54 mm"},
    {saddle_before_the_frets, "!saddle.setback.2: this would put the saddle before the last fret"},
    {one_setback_missing, "!saddle.setback.2: missing"},
    {crowded_nut, "!nut.edge: no room for a string on a nut 43 mm wide"},
    {board_narrower_than_round, "!instrument.radius: smaller than half the board's width, 21.5 mm"},
    {string_outside_the_radius, "!instrument.radius: string 1 runs outside it"},
    {flat_board, "?instrument.crown: unlikely"},
    {target_upside_down, "!targets.action.1.low: higher than aim"},
    {target_without_an_edge, "!targets.relief: missing"},
    {gap_wanted_under_nought, "!targets.first.0.low: cannot be negative"},
    {no_tool, "!tools.first: missing"},
    {limits_crossed, "!limits.humidity.low: over the high limit, 65 %"},
    {wet, "!readings.0.humidity: wanted 0 to 100 %"},
    {date_of_no_month, "?readings.0.date: wanted a date as 2026-03-14"},
    {leap_day_too_many, "?job.date: wanted a date as 2026-03-14"},
    {pull_without_a_place, "!attack.at: missing"},
    {pull_past_the_nut, "!attack.at: past the nut"},
    {action_below_fret_five, "!readings.0.action_at: wanted a whole number from 5 to 36"},
    {action_past_the_board, "!readings.0.action_at: past the last fret, 20"},
    {negative_gap, "!readings.0.first.5: cannot be negative"},
    {action_in_sixtyfourths, "?readings.0.action.0: unlikely, 0.8 to 4.5 mm is usual; did you mean "
                             "6/64 in?"},
    {crown_of_no_string, "!readings.0.frets.0.string: past the last string, 6"},
    {crown_of_no_fret, "!readings.0.frets.0.fret: wanted a whole number from 0 to 36"},
    {crown_without_fret, "!readings.0.frets.0.fret: missing"},
    {crown_of_a_slotted_nut, "!readings.0.frets.0.fret: this nut has no zero fret, and the first "
                             "fret is fret 1; if there is "
                             "a zero fret, write nut: {kind: zero-fret}"},
    {crown_twice, "!readings.0.frets.1: this crown is given twice"},
    {buzz_past_the_board, "!readings.0.buzz.0.fret: past the last fret, 20"},
    {buzz_twice, "!readings.0.buzz.1: this note is given twice"},
    {relief_at_the_join, "!readings.0.relief.at: wanted a fret between 1 and the body joint, 14"},
    {relief_held_on_one_side, "!readings.0.relief.held: wanted two frets with fret 7 between them"},
    {relief_held_past_the_board, "!readings.0.relief.held: wanted two frets with fret 7 between"},
    {relief_under_no_string, "!readings.0.relief.string: past the last string, 6"},
    {back_bow_under_a_string, "!readings.0.relief.gap: a string cannot show a back-bow, only a "
                              "straightedge can; did you mean {gap: -0.1, by: straightedge}?"},
    {neck_of_two_frets, "?readings.0.relief: not used"},
    {string_under_a_crown, "!readings.0.action.1: contradicts relief and the gap at fret 1: string "
                           "2 would lie"},
    {string_on_a_crown_held, "!readings.0.first_held: the string cannot lie on fret 3 of 2"},
};

static void each_thing_spoilt_is_told_of_by_its_path(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        spoilt s;
        heard all = {.errors = 0};
        make_tone(&s);
        rows[i].spoil(&s);
        int errors = sil_job_check(&s.job, hear, &all);
        bool graver = rows[i].told[0] == '?' ? errors == 0 && all.warnings > 0 : errors > 0;
        if (!strstr(all.text, rows[i].told) || errors != all.errors || !graver) {
            fail_msg("wanted %s\nheard %s", rows[i].told, all.text);
        }
    }
}

static void an_empty_job_is_told_of_and_nothing_else(void **state)
{
    (void)state;
    sil_job job;
    heard all = {.errors = 0};
    sil_job_clear(&job);
    assert_true(sil_job_check(&job, hear, &all) > 20);
    assert_int_equal(all.warnings, 0);
    for (char *line = strtok(all.text, "\n"); line; line = strtok(NULL, "\n")) {
        assert_non_null(strstr(line, ": missing"));
    }
}

static void the_job_s_own_ranges_stand_over_the_built_in(void **state)
{
    (void)state;
    spoilt s;
    heard all = {.errors = 0};
    const sil_plausible own[] = {{"readings.action", 2.35, 2.75}, {"readings.relief", 0.3, 0.4}};
    make_tone(&s);
    s.job.plausible = own;
    s.job.plausible_count = 2;
    assert_int_equal(sil_job_check(&s.job, hear, &all), 0);
    assert_non_null(strstr(all.text, "?readings.0.action.0: unlikely, 2.35 to 2.75 mm"));
    assert_non_null(strstr(all.text, "?readings.0.action.5: unlikely"));
    assert_non_null(strstr(all.text, "?readings.0.relief.gap: unlikely, 0.3 to 0.4 mm"));
    assert_int_equal(all.warnings, 3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_sound_job_is_passed_without_a_word),
        cmocka_unit_test(each_thing_spoilt_is_told_of_by_its_path),
        cmocka_unit_test(an_empty_job_is_told_of_and_nothing_else),
        cmocka_unit_test(the_job_s_own_ranges_stand_over_the_built_in),
    };
    return cmocka_run_group_tests(tests, open_sheet, close_sheet);
}
