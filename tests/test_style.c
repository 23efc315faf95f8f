/* SPDX-License-Identifier: MIT */
/* Styles of playing: which figures count, and what a style keeps quiet about. */
#include <sillet/plan.h>
#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

#include "told.h"

static sil_sheet *read_text(const char *text)
{
    static char all[TEXT];
    sil_sheet *sheet;
    sil_sheet_read_bytes(text, strlen(text), "tests/sheets/s.yaml", "profiles", &sheet);
    if (!sil_sheet_job(sheet)) {
        told(sheet, all);
        fail_msg("%s", all);
    }
    return sheet;
}

static void a_style_stands_between_the_sheet_and_the_profile(void **state)
{
    (void)state;
    sil_sheet *plain = read_text(HEAD);
    sil_sheet *sheet = read_text(HEAD "style: fingers\ntargets: {relief: {aim: 0.11}}\n");
    const sil_job *job = sil_sheet_job(sheet), *profile = sil_sheet_job(plain);
    assert_string_equal(job->style, "fingers");
    assert_null(profile->style);
    near(job->targets.relief.aim, 0.11, 0.0);
    near(job->targets.action[0].aim, 1.55, 0.0);
    near(job->targets.action[5].high, 2.3, 0.0);
    near(job->targets.first[0].aim, profile->targets.first[0].aim, 0.0);
    assert_int_equal(job->targets.first_held, profile->targets.first_held);
    assert_string_equal(job->attack.name, "light");
    assert_string_equal(profile->attack.name, "medium");
    sil_sheet_free(sheet);
    sheet = read_text(HEAD "style: fingers\nattack: firm\ntargets: {action: 2.1}\n");
    job = sil_sheet_job(sheet);
    assert_string_equal(job->attack.name, "firm");
    near(job->targets.action[3].aim, 2.1, 0.0);
    near(job->targets.relief.aim, 0.17, 0.0);
    sil_sheet_free(sheet);
    sil_sheet_free(plain);
}

/* The file that chooses the style has the first word; files below it come after the style. */
static void a_style_stands_under_the_file_that_chooses_it(void **state)
{
    (void)state;
    char path[] = "/tmp/sillet-style-XXXXXX", text[256];
    int file = mkstemp(path);
    const char own[] = "sillet: 1\nprofile: steel-string-acoustic\nstyle: firm\n"
                       "targets: {action: 1.9}\nattack: {force: 0.7 N, at: 100}\n"
                       "styles: {slide: {targets: {relief: 0.3}}}\n";
    assert_int_equal(write(file, own, sizeof own - 1), sizeof own - 1);
    close(file);
    snprintf(text, sizeof text, "sillet: 1\nprofile: %s\n", path);
    sil_sheet *sheet = read_text(text);
    const sil_job *job = sil_sheet_job(sheet);
    assert_string_equal(job->style, "firm");
    near(job->targets.action[2].aim, 1.9, 0.0);
    near(job->targets.relief.aim, 0.25, 0.0);
    near(job->attack.force[0], 0.7, 0.0);
    sil_sheet_free(sheet);
    snprintf(text, sizeof text, "sillet: 1\nprofile: %s\nstyle: slide\n", path);
    sheet = read_text(text);
    job = sil_sheet_job(sheet);
    near(job->targets.action[0].aim, 2.8, 0.0);
    near(job->targets.relief.aim, 0.3, 0.0); /* of a style in two files, the nearer */
    assert_false(sil_known(job->attack.force[0]) || sil_known(job->attack.at));
    sil_sheet_free(sheet);
    unlink(path);
}

static bool in_profile(const char *profile, const char *style)
{
    char path[128], text[16384], key[64];
    snprintf(path, sizeof path, "profiles/%s.yaml", profile);
    FILE *file = fopen(path, "r");
    assert_non_null(file);
    text[fread(text, 1, sizeof text - 1, file)] = '\0';
    fclose(file);
    snprintf(key, sizeof key, "\n  %s:", style);
    const char *styles = strstr(text, "\nstyles:");
    assert_non_null(styles);
    return strstr(styles, key) != NULL;
}

/* The profile as it is, and every style of it, without a word of complaint. */
static void the_styles_of_every_profile_can_be_chosen(void **state)
{
    (void)state;
    static const char *const styles[] = {"fingers", "all-round", "firm", "slide"};
    char **names;
    int count, found = 0;
    setenv("SILLET_PROFILES", "profiles", 1);
    assert_int_equal(sil_profiles_list(&names, &count), SIL_DONE);
    for (int k = 0; k < count; k++) {
        double high[4] = {0.0};
        for (int s = 0; s < 4; s++) {
            char text[256];
            snprintf(text, sizeof text, "sillet: 1\nprofile: %s\nstyle: %s\n", names[k], styles[s]);
            if (!in_profile(names[k], styles[s])) {
                continue;
            }
            sil_sheet *sheet = read_text(text);
            assert_int_equal(sil_sheet_complaint_count(sheet), 0);
            high[s] = sil_sheet_job(sheet)->targets.action[0].aim;
            sil_sheet_free(sheet);
            found++;
        }
        assert_true(high[1] > 0.0 && high[2] > high[1] && high[0] < high[1]);
        assert_true(high[3] == 0.0 || high[3] > high[2]);
    }
    assert_true(count >= 16 && found >= 50);
    sil_profiles_free(names, count);
    unsetenv("SILLET_PROFILES");
}

/* How many findings and causes speak of a buzz. */
static int rattles(const char *style)
{
    char text[512];
    sil_plan *plan;
    int count, causes, rattles = 0;
    snprintf(text, sizeof text,
             HEAD "style: %s\nreadings:\n- relief: 0.10\n  action: {treble: 1.2, bass: 1.4}\n"
                  "  first: {treble: 0.04, bass: 0.06}\n  frets: sound\n",
             style);
    sil_sheet *sheet = read_text(text);
    assert_int_equal(sil_plan_make(sil_sheet_job(sheet), &plan), SIL_DONE);
    const sil_finding *findings = sil_plan_findings(plan, &count);
    for (int k = 0; k < count; k++) {
        sil_code code = findings[k].code;
        rattles += code == SIL_ATTACK || code == SIL_TECHNIQUE || code == SIL_UNEXPLAINED;
    }
    sil_plan_causes(plan, &causes);
    sil_plan_free(plan);
    sil_sheet_free(sheet);
    return rattles + causes;
}

static void a_slide_rattles_on_nothing_that_was_read(void **state)
{
    (void)state;
    assert_true(rattles("firm") > 0);
    assert_int_equal(rattles("slide"), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_style_stands_between_the_sheet_and_the_profile),
        cmocka_unit_test(a_style_stands_under_the_file_that_chooses_it),
        cmocka_unit_test(the_styles_of_every_profile_can_be_chosen),
        cmocka_unit_test(a_slide_rattles_on_nothing_that_was_read),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
