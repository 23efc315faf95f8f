/* SPDX-License-Identifier: MIT */
/* The figures in the result for each sentence, and the columns of the text report. */
#include "../src/brief/figure.h"
#include "planned.h"
#include "random_job.h"
#include "tone_job.h"

#include <cjson/cJSON.h>
#include <glob.h>
#include <regex.h>
#include <sillet/sillet.h>
#include <stdlib.h>
#include <string.h>

/* --- every figure of a sentence is data as well ----------------------------------------------- */

/* What can only be a figure: one with a decimal point, or with its unit behind it. Strings, frets
 * and ordinals are whole numbers without. */
static const char figures[] = "-?[0-9]+[.][0-9]+|[0-9]+(°| %)";

static int sentences, found;
static char docs[65536];

static const char *shown_of(const cJSON *said)
{
    const cJSON *shown = cJSON_GetObjectItem(said, "shown");
    assert_true(cJSON_IsString(shown));
    return shown->valuestring + (shown->valuestring[0] == '<'); /* said as "less than" */
}

/* Whether this figure of the sentence is the next of those noted; those noted in between stand
 * without point or unit. */
static const cJSON *find_noted(const cJSON *said, const char *at, size_t length)
{
    while (said) {
        const char *shown = shown_of(said);
        if (strlen(shown) == length && memcmp(shown, at, length) == 0) {
            return said;
        }
        said = said->next;
    }
    return NULL;
}

static void expect_in_docs(const char *word)
{
    char code[64];
    snprintf(code, sizeof code, "`%s`", word);
    if (!strstr(docs, code)) {
        fail_msg("docs/result.md does not tell of %s", code);
    }
}

static void hold(const char *words, const cJSON *noted)
{
    regex_t pattern;
    regmatch_t match;
    const cJSON *said = noted->child;
    assert_int_equal(regcomp(&pattern, figures, REG_EXTENDED), 0);
    sentences++;
    for (const char *at = words; regexec(&pattern, at, 1, &match, 0) == 0; at += match.rm_eo) {
        const char *from = at + match.rm_so;
        size_t length = strspn(from, "-0123456789.");
        length -= from[length - 1] == '.'; /* the end of a sentence */
        const cJSON *next = find_noted(said, from, length);
        if (!next) {
            fail_msg("%.*s is not noted in its place: %s", (int)length, from, words);
        }
        said = next->next;
        found++;
    }
    regfree(&pattern);
    const char *at = words, *both = NULL;
    for (said = noted->child; said; said = said->next) { /* and all that is noted is said */
        expect_in_docs(cJSON_GetObjectItem(said, "of")->valuestring);
        const char *after = at;
        at = strstr(at, shown_of(said));
        bool ends = strncmp(after, " mm at both ends", 16) == 0 ||
                    strncmp(after, " in at both ends", 16) == 0;
        if (ends && both && strcmp(both, shown_of(said)) == 0) {
            at = after - strlen(both); /* the other end has the same */
        }
        both = shown_of(said);
        if (!at) {
            fail_msg("%s is noted, and not said in its place: %s", shown_of(said), words);
        }
        at += strlen(shown_of(said));
    }
}

static void hold_rows(const cJSON *root, const char *list, const char *words, const char *noted)
{
    const cJSON *row;
    cJSON_ArrayForEach(row, cJSON_GetObjectItem(root, list))
    {
        const cJSON *said = cJSON_GetObjectItem(row, noted);
        assert_true(cJSON_IsArray(said));
        hold(cJSON_GetObjectItem(row, words)->valuestring, said);
    }
}

static void hold_job(const sil_job *job, sil_unit unit)
{
    static sil_plan plan;
    plan_into(job, &plan);
    char *result = sil_report_json(&plan, unit);
    assert_non_null(result);
    cJSON *root = cJSON_Parse(result);
    assert_non_null(root);
    hold_rows(root, "findings", "text", "figures");
    hold_rows(root, "steps", "do", "figures");
    hold_rows(root, "steps", "check", "check_figures");
    cJSON_Delete(root);
    free(result);
}

static int read_docs(void **state)
{
    (void)state;
    FILE *file = fopen("docs/result.md", "r");
    size_t size = file ? fread(docs, 1, sizeof docs - 1, file) : 0;
    docs[size] = '\0';
    return !file || fclose(file) != 0 || size == 0;
}

static void every_act_is_in_the_docs(void **state)
{
    (void)state;
    for (int act = 0; act < SIL_ACTS; act++) {
        expect_in_docs(sil_act_word((sil_act)act));
        for (int other = 0; other < act; other++) {
            assert_string_not_equal(sil_act_word((sil_act)act), sil_act_word((sil_act)other));
        }
    }
}

static void every_figure_of_random_plans_is_noted(void **state)
{
    (void)state;
    static random_job made;
    uint64_t seed = 14;
    for (int job = 0; job < 300; job++) {
        make_random_job(&made, &seed, 1 + job % SIL_STRINGS_MAX);
        make_from_blank(&made, seed);
        hold_job(&made.job, job % 2 ? SIL_INCH : SIL_MM);
    }
    assert_true(sentences > 3000 && found > 3000);
}

static void every_figure_of_the_examples_is_noted(void **state)
{
    (void)state;
    glob_t examples;
    assert_int_equal(glob("examples/*.yaml", 0, NULL, &examples), 0);
    assert_true(examples.gl_pathc >= 20);
    for (size_t k = 0; k < examples.gl_pathc; k++) {
        sil_sheet *example;
        sil_sheet_read(examples.gl_pathv[k], "profiles", &example);
        assert_non_null(sil_sheet_job(example));
        hold_job(sil_sheet_job(example), SIL_MM);
        hold_job(sil_sheet_job(example), SIL_INCH);
        sil_sheet_free(example);
    }
    globfree(&examples);
}

/* --- the text --------------------------------------------------------------------------------- */

/* The line of the history that begins with this date. */
static void expect_line(const char *date, const char *wanted)
{
    static sil_plan plan;
    static spoilt s;
    make_tone(&s);
    sil_reading readings[2] = {s.reading, s.reading};
    readings[0].date = date;
    readings[0].humidity_pct = 45.0;
    s.job.readings = readings;
    s.job.reading_count = 2;
    plan_into(&s.job, &plan);
    char *report = sil_report_text(&plan, SIL_MM, "sheet");
    assert_non_null(report);
    const char *line = strstr(report, "VISITS SO FAR");
    assert_non_null(line);
    line = strchr(line, '\n') + 1;
    if (strncmp(line, wanted, strlen(wanted)) != 0) {
        fail_msg("%.60s, wanted %s", line, wanted);
    }
    free(report);
}

/* Columns count letters; a date too long for its column is cut behind a whole one. */
static void a_date_of_any_language_keeps_its_letters(void **state)
{
    (void)state;
    expect_line("2026-03-14", "  2026-03-14             45 %");
    expect_line("二〇二六年三月十四日", "  二〇二六年三月十四日             45 %");
    expect_line("令和八年三月十四日土曜日の午後三時半ごろ店にて",
                "  令和八年三月十四日土曜日の午後三時半     45 %");
    expect_line("a very long date of 30 letters", "  a very long date o     45 %");
    expect_line(NULL, "  no date                45 %");
}

/* Under an outer string the relief reads otherwise than on the middle of the board; under which one is
 * told by its number. */
static void the_string_that_the_relief_was_read_under_is_told(void **state)
{
    (void)state;
    static sil_plan plan;
    plan_readings(
        "instrument: {crown: 1.1, rod: two-way, handed: right}\nsaddle: {slot_depth: 5}\n",
        "  - relief: {gap: 0.2, string: 6}\n    frets: sound\n    first: 0.07\n"
        "    action: {treble: 1.2, bass: 2.9}\n",
        &plan);
    char *report = sil_report_text(&plan, SIL_MM, "sheet");
    assert_non_null(strstr(report, "0.20 under string 6,"));
    free(report);
}

/* Of one stage alone, nothing to do there is not nothing to do. */
static void nothing_to_do_says_of_what(void **state)
{
    (void)state;
    static sil_plan plan;
    plan_readings("instrument: {crown: 1.1, rod: two-way}\nsaddle: {slot_depth: 5}\n",
                  "  - relief: 0.4\n    frets: sound\n    first: 0.07\n"
                  "    action: {treble: 1.75, bass: 2.25}\n",
                  &plan);
    sil_plan_keep(&plan, SIL_TUNE);
    assert_int_equal(plan.step_count, 0);
    char *screen = sil_report_screen(&plan, SIL_MM, "sheet", false);
    assert_non_null(strstr(screen, "Nothing to do at this stage.\n"));
    free(screen);
}

/* The table of one stage alone, or all of them. */
static void a_stage_has_its_own_table(void **state)
{
    (void)state;
    static const char *const heads[] = {
        "\nNUT: ", "\nSADDLE: ", "\nIN TUNE AT FRET 12: ", "\nWILL IT PLAY IN TUNE"};
    static const int stages[] = {SIL_NUT, SIL_SADDLE, SIL_TUNE, SIL_ROD, -1};
    for (int k = 0; k < 5; k++) {
        static sil_plan plan;
        plan_readings("instrument: {crown: 1.1, rod: two-way}\nsaddle: {slot_depth: 5}\n",
                      "  - relief: 0.4\n    frets: sound\n    first: 0.07\n    cents: 9\n"
                      "    action: {treble: 1.75, bass: 2.25}\n",
                      &plan);
        if (stages[k] >= 0) {
            sil_plan_keep(&plan, (sil_stage_name)stages[k]);
        }
        char *report = sil_report_text(&plan, SIL_MM, "sheet");
        for (int table = 0; table < 4; table++) {
            assert_int_equal(strstr(report, heads[table]) != NULL, k == 4 || (k < 3 && table == k));
        }
        free(report);
    }
}

/* What is not half of a whole is not told to be, and a share in even per cent is told as it is. */
static void a_share_is_rounded_down(void **state)
{
    (void)state;
    assert_string_equal(figure_share(0.4999).shown, "49");
    assert_string_equal(figure_share(0.5).shown, "50");
    for (int k = 0; k <= 100; k++) {
        assert_int_equal(atoi(figure_share(k / 100.0).shown), k);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_share_is_rounded_down),
        cmocka_unit_test(a_stage_has_its_own_table),
        cmocka_unit_test(nothing_to_do_says_of_what),
        cmocka_unit_test(the_string_that_the_relief_was_read_under_is_told),
        cmocka_unit_test(every_act_is_in_the_docs),
        cmocka_unit_test(every_figure_of_random_plans_is_noted),
        cmocka_unit_test(every_figure_of_the_examples_is_noted),
        cmocka_unit_test_setup_teardown(a_date_of_any_language_keeps_its_letters, open_sheet,
                                        close_sheet),
    };
    return cmocka_run_group_tests(tests, read_docs, NULL);
}
