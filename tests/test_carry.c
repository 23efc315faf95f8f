/* SPDX-License-Identifier: MIT */
/* What a visit does not tell is taken over from the one before, where nothing has moved it. */
#include <stdio.h>
#include <string.h>

#include "planned.h"

#include <sillet/sillet.h>

static sil_plan plan;

static void make_plan_of(const char *saddle, const char *readings)
{
    static sil_sheet *sheet;
    static char text[4096];
    sil_sheet_free(sheet);
    snprintf(text, sizeof text,
             "sillet: 1\nprofile: steel-string-acoustic\n"
             "instrument: {rod: two-way, rod_state: works, crown: 1.1}\n"
             "saddle: {slot_depth: 5%s}\nreadings:\n%s",
             saddle, readings);
    sil_sheet_read_bytes(text, strlen(text), "carry", "profiles", &sheet);
    assert_non_null(sil_sheet_job(sheet));
    plan_into(sil_sheet_job(sheet), &plan);
}

static void make_plan(const char *readings)
{
    make_plan_of("", readings);
}

/* A whole visit on a day, with its relief, its second gap and its first action. */
#define WHOLE(day, relief, second, action)                                                         \
    "  - {date: " day ", humidity: 48 %, relief: " relief ", frets: sound, "                       \
    "condition: {bridge: sound, braces: sound, strings: new, tuned: yes}, "                        \
    "first: [0.06, " second ", 0.07, 0.08, 0.09, 0.10], "                                          \
    "action: [" action ", 1.85, 1.95, 2.05, 2.15, 2.25], "                                         \
    "saddle_height: {treble: 9.0, bass: 9.7}}\n"
#define FIRST_VISIT WHOLE("2026-03-14", "0.20", "0.14", "1.75")
#define SECOND "first: [~, 0.07, ~, ~, ~, ~], action: [~, 1.82, ~, ~, ~, ~]"

/* One slot was filed, and one string is told of: before, everything else had to be read again. */
static void one_string_told_is_enough(void **state)
{
    (void)state;
    make_plan(FIRST_VISIT);
    assert_int_equal(plan.nut.verdict[1], SIL_TAKE);
    make_plan(FIRST_VISIT "  - {date: 2026-03-20, humidity: 50 %, " SECOND "}\n");
    assert_true(plan.done);
    assert_int_equal(plan.carried.relief, 0);
    assert_int_equal(plan.carried.frets, 0);
    assert_int_equal(plan.carried.saddle_height, 0);
    assert_int_equal(plan.carried.first[0], 0);
    assert_int_equal(plan.carried.first[1], -1);
    assert_int_equal(plan.carried.action[1], -1);
    near(plan.read.gaps.first[0], 0.06, 1e-12);
    near(plan.read.saddle_height_bass, 9.7, 1e-12);
    assert_int_equal(plan.findings[0].code, SIL_CARRIED);
}

/* A ruler's, as long as the saddle was not worked. */
static void how_far_the_saddle_stands_out_is_carried(void **state)
{
    (void)state;
#define RULED "  - {date: 2026-03-14, humidity: 48 %, relief: 0.2, frets: sound, stands_out: 5, "
#define NEXT "first: 0.08}\n  - {date: 2026-03-20, humidity: 50 %, action: 1.9}\n"
    make_plan(RULED "action: [1.75, 1.85, 1.95, 2.05, 2.15, 2.25], " NEXT);
    assert_int_equal(plan.carried.stands_out, 0);
    near(plan.saddle.stands[0], 5.0, 1e-12);
    make_plan(RULED "action: 2.9, " NEXT);
    assert_int_equal(plan.carried.stands_out, -1);
    assert_false(sil_known(plan.saddle.stands[0]));
#undef RULED
#undef NEXT
}

/* Half as much again; the relief with 0.03/sqrt 3 in square besides. */
static void what_is_carried_is_less_sure(void **state)
{
    (void)state;
    make_plan(FIRST_VISIT "  - {date: 2026-03-20, humidity: 50 %, " SECOND "}\n");
    const sil_tools *tools = &plan.bench.tools;
    near(sil_first_u(&plan.bench, 0), 1.5 * tools->first / sqrt(3.0), 1e-12);
    near(sil_first_u(&plan.bench, 1), tools->first / sqrt(3.0), 1e-12);
    near(sil_action_u(&plan.bench, 5), 1.5 * tools->action / sqrt(3.0), 1e-12);
    near(sil_relief_u(&plan.bench), hypot(1.5 * tools->relief, 0.03) / sqrt(3.0), 1e-12);
}

/* Thirty days and 10 %, and both written down. */
static void not_for_long_nor_in_other_air(void **state)
{
    (void)state;
    static const struct {
        const char *visit;
        bool carried;
    } rows[] = {
        {"  - {date: 2026-04-13, humidity: 58 %, " SECOND "}\n", true},
        {"  - {date: 2026-04-14, humidity: 48 %, " SECOND "}\n", false},
        {"  - {date: 2026-03-13, humidity: 48 %, " SECOND "}\n", false},
        {"  - {date: 2026-03-20, humidity: 59 %, " SECOND "}\n", false},
        {"  - {date: 2026-03-20, " SECOND "}\n", false},
        {"  - {humidity: 48 %, " SECOND "}\n", false},
        {"  - {date: 20 March 26, humidity: 48 %, " SECOND "}\n", false},
    };
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        char both[2048];
        snprintf(both, sizeof both, "%s%s", FIRST_VISIT, rows[k].visit);
        make_plan(both);
        assert_int_equal(plan.carried.relief, rows[k].carried ? 0 : -1);
        assert_int_equal(plan.carried.action[0], rows[k].carried ? 0 : -1);
        assert_int_equal(plan.carried.frets, rows[k].carried ? 0 : -1);
    }
    /* Over the turn of a year. */
    make_plan(
        WHOLE("2026-12-20", "0.20", "0.14", "1.75") "  - {date: 2027-01-19, humidity: 48 %}\n");
    assert_int_equal(plan.carried.relief, 0);
    /* Over the end of February, of a leap year and of another. */
    make_plan(
        WHOLE("2028-02-10", "0.20", "0.14", "1.75") "  - {date: 2028-03-11, humidity: 48 %}\n");
    assert_int_equal(plan.carried.relief, 0);
    make_plan(
        WHOLE("2027-02-10", "0.20", "0.14", "1.75") "  - {date: 2027-03-13, humidity: 48 %}\n");
    assert_int_equal(plan.carried.relief, -1);
}

/* The rod moves everything but the saddle's own height; a saddle its actions; other strings all but
 * crowns and caliper. */
static void what_was_worked_is_read_again(void **state)
{
    (void)state;
    make_plan(
        WHOLE("2026-03-14", "0.50", "0.07", "1.75") "  - {date: 2026-03-15, humidity: 48 %}\n");
    assert_int_equal(plan.carried.relief, -1);
    assert_int_equal(plan.carried.first[0], -1);
    assert_int_equal(plan.carried.action[0], -1);
    assert_int_equal(plan.carried.frets, 0);
    make_plan_of(", kind: glued", WHOLE("2026-03-14", "0.20", "0.07",
                                        "2.15") "  - {date: 2026-03-15, humidity: 48 %}\n");
    assert_int_equal(plan.carried.action[0], -1); /* its top was to be dressed */
    assert_int_equal(plan.carried.action[1], 0);
    assert_int_equal(plan.carried.first[0], 0); /* held, it does not see the saddle */
    assert_int_equal(plan.carried.saddle_height, -1);
    make_plan(FIRST_VISIT
              "  - {date: 2026-03-15, humidity: 48 %, condition: {strings: worn}, relief: 0.20}\n");
    assert_int_equal(plan.carried.action[0], -1);
    assert_int_equal(plan.carried.frets, 0);
    assert_int_equal(plan.carried.saddle_height, 0);
    /* A neck that moved by itself. */
    make_plan(FIRST_VISIT "  - {date: 2026-03-15, humidity: 48 %, relief: 0.27}\n");
    assert_int_equal(plan.carried.action[0], -1);
    make_plan(FIRST_VISIT "  - {date: 2026-03-15, humidity: 48 %, relief: 0.21}\n");
    assert_int_equal(plan.carried.action[0], 0);
}

/* What is odd must be read again, and is not carried into being read the same. */
static void an_odd_reading_is_not_carried(void **state)
{
    (void)state;
    make_plan(
        WHOLE("2026-03-14", "0.20", "0.60", "0.75") "  - {date: 2026-03-15, humidity: 48 %}\n");
    assert_int_equal(plan.carried.first[1], -1);
    assert_int_equal(plan.carried.action[0], -1);
    assert_int_equal(plan.carried.first[2], 0);
    assert_false(plan.done);
}

/* A month counts from the day a thing was read, not from when it was last taken over. */
static void a_month_from_the_day_it_was_read(void **state)
{
    (void)state;
    make_plan(FIRST_VISIT "  - {date: 2026-04-03, humidity: 50 %, " SECOND "}\n"
                          "  - {date: 2026-04-10, humidity: 48 %}\n");
    assert_int_equal(plan.carried.relief, 0);
    assert_int_equal(plan.carried.first[1], 1);
    make_plan(FIRST_VISIT "  - {date: 2026-04-03, humidity: 50 %, " SECOND "}\n"
                          "  - {date: 2026-04-20, humidity: 48 %}\n");
    assert_int_equal(plan.carried.relief, -1);
    assert_int_equal(plan.carried.first[0], -1);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_string_told_is_enough),
        cmocka_unit_test(how_far_the_saddle_stands_out_is_carried),
        cmocka_unit_test(what_is_carried_is_less_sure),
        cmocka_unit_test(not_for_long_nor_in_other_air),
        cmocka_unit_test(what_was_worked_is_read_again),
        cmocka_unit_test(an_odd_reading_is_not_carried),
        cmocka_unit_test(a_month_from_the_day_it_was_read),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
