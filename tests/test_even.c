/* SPDX-License-Identifier: MIT */
/* The top of a glued saddle, dressed to one line and not to the steps of a ruler. */
#include <stdio.h>
#include <string.h>

#include "planned.h"

#include <sillet/sillet.h>

static sil_plan plan;

static void make_plan(const char *kind, const char *more, const char *action)
{
    static sil_sheet *sheet;
    static char text[2048];
    sil_sheet_free(sheet);
    snprintf(text, sizeof text,
             "sillet: 1\nprofile: steel-string-acoustic\n"
             "instrument: {rod: two-way, rod_state: works, crown: 1.1}\n"
             "saddle: {kind: %s, slot_depth: 5}\n%sreadings:\n"
             "  - {action: %s, first: [0.05, 0.05, 0.06, 0.07, 0.08, 0.09], relief: 0.20, "
             "frets: sound, stands_out: {treble: 5.2, bass: 6.1}}\n",
             kind, more, action);
    sil_sheet_read_bytes(text, strlen(text), "even", "profiles", &sheet);
    assert_non_null(sil_sheet_job(sheet));
    plan_into(sil_sheet_job(sheet), &plan);
}

/* Read in 64ths, three strings at 13/128 in or so and three a step higher. */
#define STEPS "[7/64 in, 7/64 in, 7/64 in, 8/64 in, 8/64 in, 8/64 in]"

/* The largest step from one string to the next that is off the mean step of all. */
static double roughness(void)
{
    double most = 0.0, even = (plan.saddle.dress_first[5] - plan.saddle.dress_first[0]) / 5.0;
    for (int i = 1; i < 6; i++) {
        double step = plan.saddle.dress_first[i] - plan.saddle.dress_first[i - 1];
        most = fmax(most, fabs(step - even));
    }
    return most;
}

/* Before, string 3 lost 0.6 less than string 4 beside it. */
static void the_steps_of_a_rule_are_not_filed(void **state)
{
    (void)state;
    make_plan("glued", "", STEPS);
    assert_int_equal(plan.saddle.remedy, SIL_SADDLE_SAND);
    assert_true(plan.saddle.dress_first[0] > 1.0);
    assert_true(roughness() < 0.05);
    for (int i = 0; i < 6; i++) { /* shown as read: 7/64 in is 2.778, 8/64 is 3.175 */
        near(sil_action_now(&plan, i), i < 3 ? 7.0 / 64.0 * 25.4 : 25.4 / 8.0, 1e-9);
    }
}

/* By least squares over even steps: slope 9 * 0.396875/2 / 17.5 a step about the mean. */
static void they_are_cut_from_the_line(void **state)
{
    (void)state;
    make_plan("glued", "", STEPS);
    double up = 25.4 / 64.0, slope = up * 4.5 / 17.5, mean = 7.5 / 64.0 * 25.4;
    for (int i = 0; i < 6; i++) {
        double line = mean + slope * (i - 2.5);
        near(plan.off_line[i], sil_action_now(&plan, i) - line, 0.01); /* even steps, nearly */
    }
}

static void what_the_ruler_does_not_explain_is_filed(void **state)
{
    (void)state;
    make_plan("glued", "", "[2.8, 2.9, 2.65, 3.1, 3.2, 3.3]"); /* string 3 is 0.3 off, a notch */
    near(plan.off_line[2], 0.0, 0.0);
    assert_true(plan.saddle.dress[1] - plan.saddle.dress[2] > 0.5);
}

static void a_few_strings_are_dressed_by_their_own(void **state)
{
    (void)state;
    make_plan("glued", "", "[1.9, 1.9, 2.4, 2.1, 2.2, 2.3]");
    for (int i = 0; i < 6; i++) {
        near(plan.off_line[i], 0.0, 0.0);
    }
    make_plan("slotted", "", STEPS); /* its bottom is one line already */
    near(plan.off_line[0], 0.0, 0.0);
}

/* Half of the strings are enough for the top to be dressed as a whole, the 1st among them. */
static void half_of_the_strings_are_a_whole_top(void **state)
{
    (void)state;
    make_plan("glued", "", "[2.59, 2.46, 2.43, 2.32, 2.27, 2.2], confirmed: [1, 2, 3, 4, 5, 6]");
    int dressed = 0;
    for (int i = 0; i < 6; i++) {
        dressed += plan.saddle.verdict[i] == SIL_TAKE;
    }
    assert_int_equal(dressed, 3);
    assert_int_equal(plan.saddle.verdict[0], SIL_TAKE);
    assert_true(fabs(plan.off_line[0]) > 0.01);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_steps_of_a_rule_are_not_filed),
        cmocka_unit_test(they_are_cut_from_the_line),
        cmocka_unit_test(what_the_ruler_does_not_explain_is_filed),
        cmocka_unit_test(a_few_strings_are_dressed_by_their_own),
        cmocka_unit_test(half_of_the_strings_are_a_whole_top),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
