/* SPDX-License-Identifier: MIT */
/* What is found of its sound: cents that were read, what buzzes under the pick, strings, and the saddle's
 * line. */
#include "found.h"

static const find_row rows[] = {
    {.code = "attack", /* no target in its range rings clean */
     .level = "act",
     .withholds = "",
     .action = "{treble: 2.6, bass: 3.2}",
     .parts = "attack: {force: {treble: 1.6 N, bass: 2.6 N}, at: 110}\n",
     .more = "stands_out: {treble: 4, bass: 6}"},
    {.code = "tune-out", /* a fixed saddle is only spoken of */
     .level = "fine",
     .withholds = "",
     .more = "cents: [9, 0, 0, 0, 0, ~]"},
    {.code = "tune-out",
     .level = "act",
     .withholds = "",
     .parts = "targets: {cents: 6}\n",
     .more = "cents: [9, 0, 0, 0, 0, ~]"},
    {.code = "tune-out", /* nothing comes off the saddle before its peaks are filed */
     .level = "act",
     .withholds = "saddle",
     .action = "{treble: 2.2, bass: 2.8}",
     .parts = "targets: {cents: 6}\n",
     .more = "cents: [9, 0, 0, 0, 0, ~]"},
    {.code = "saddle-unread", /* in range, and yet a peak filed back takes height from it */
     .level = "act",
     .withholds = "saddle",
     .action = "{treble: 1.99, bass: 2.25}",
     .parts = "targets: {cents: 6}\n",
     .more = "cents: [9, 0, 0, 0, 0, ~]"},
    {.code = "tune-out", /* the same with a ruler */
     .level = "act",
     .withholds = "",
     .action = "{treble: 1.99, bass: 2.25}",
     .parts = "targets: {cents: 6}\n",
     .more = "stands_out: {treble: 4, bass: 6}\n    cents: [9, 0, 0, 0, 0, ~]"},
    {.code = "readings-disagree", /* 4 and 5 by caliper */
     .level = "act",
     .withholds = "saddle",
     .action = "{treble: 1.99, bass: 2.25}",
     .parts = "targets: {cents: 6}\n",
     .more = "saddle_height: {treble: 9, bass: 10}\n    stands_out: {treble: 4, bass: 3.5}\n"
             "    cents: [9, 0, 0, 0, 0, ~]"},
    {.code = "saddle-unread", /* glued in, where the peak may go into the range */
     .level = "act",
     .withholds = "saddle",
     .parts = "saddle: {kind: glued, slot_depth: 5}\ntargets: {cents: 6}\n",
     .more = "cents: [-9, 0, 0, 0, 0, ~]"},
    {.code = "tune-out", /* its peak is as far back as the piece lets it be: nothing is filed */
     .level = "fine",
     .withholds = "",
     .action = "{treble: 1.99, bass: 2.25}",
     .parts = "saddle: {slot_depth: 5, thickness: 3, peak: 2.7}\ntargets: {cents: 6}\n",
     .more = "cents: [9, 0, 0, 0, 0, ~]"},
    {.code = "tune-out", /* nor does the saddle wait for that */
     .level = "act",
     .withholds = "",
     .action = "{treble: 2.2, bass: 2.8}",
     .parts = "saddle: {slot_depth: 5, thickness: 3, peak: 2.7}\ntargets: {cents: 6}\n",
     .more = "stands_out: {treble: 4, bass: 6}\n    cents: [9, 0, 0, 0, 0, ~]"},
    {.code = "tune-out", /* made anew with the heights of this one, which loses nothing */
     .level = "act",
     .withholds = "",
     .parts = "targets: {cents: 6}\n",
     .more = "cents: [-9, 0, 0, 0, 0, ~]"},
    {.code = "tune-out",
     .level = "act",
     .withholds = "",
     .parts = "saddle: {kind: floating, pitch: 0.7, post_spread: 70}\n",
     .more = "cents: 9"},
    {.code = "tune-out", /* one end of the bridge moves, the other stays */
     .level = "act",
     .withholds = "",
     .string = 1,
     .parts = "saddle: {kind: floating, pitch: 0.7, post_spread: 70}\n",
     .more = "cents: [10, 8, 6, 4, 2, 0]"},
    {.code = "tune-out",
     .level = "act",
     .withholds = "",
     .string = 5,
     .parts = "saddle: {kind: floating, pitch: 0.7, post_spread: 70}\n",
     .more = "cents: [0, 2, 4, 6, 8, 10]"},
    {.code = "at-edge", .level = "watch", .withholds = "", .more = "cents: [6.5, 0, 0, 0, 0, ~]"},
    {.code = "tune-left",
     .level = "watch",
     .withholds = "",
     .parts = "saddle: {kind: floating, pitch: 0.7, post_spread: 70}\n",
     .more = "cents: [19, -11, 8, -14, 7, 18]"},
    {.code = "peak-short",
     .level = "watch",
     .withholds = "",
     .parts = "targets: {cents: 6}\n",
     .more = "cents: [9, 0, 0, 0, 0, ~]"},
    {.code = "cents-unused",
     .level = "fine",
     .withholds = "",
     .more = "condition: {strings: worn}\n    cents: [9, 0, 0, 0, 0, ~]"},
    {.code = "technique",
     .level = "watch",
     .withholds = "",
     .more = "buzz: [{string: 1, fret: 3}]"},
    {.code = "unexplained",
     .level = "watch",
     .withholds = "",
     .more = "buzz: [{string: 1, fret: 0}]"},
    {.code = "attack", .level = "watch", .withholds = "", .parts = "attack: firm\n"},
    {.code = "string-unknown", /* thinner than any gauge a typical core is known of */
     .level = "watch",
     .withholds = "",
     .parts = "strings:\n  - {note: E4, gauge: 0.3, make: plain-steel}\n"
              "  - {note: B3, gauge: 0.4, make: plain-steel}\n"
              "  - {note: G3, gauge: 0.48, make: wound-bronze}\n"
              "  - {note: D3, gauge: 0.8, make: wound-bronze, core: 0.35}\n"
              "  - {note: A2, gauge: 1.1, make: wound-bronze, core: 0.4}\n"
              "  - {note: E2, gauge: 1.3, make: wound-bronze, core: 0.45}\n"},
    {.code = "core-assumed",
     .level = "fine",
     .withholds = "",
     .parts = "strings:\n  - {note: E4, gauge: 0.3, make: plain-steel}\n"
              "  - {note: B3, gauge: 0.4, make: plain-steel}\n"
              "  - {note: G3, gauge: 0.6, make: wound-bronze}\n"
              "  - {note: D3, gauge: 0.8, make: wound-bronze, core: 0.35}\n"
              "  - {note: A2, gauge: 1.1, make: wound-bronze, core: 0.4}\n"
              "  - {note: E2, gauge: 1.3, make: wound-bronze, core: 0.45}\n"},
    {.code = "string-stiff",
     .level = "watch",
     .withholds = "",
     .parts = "strings:\n  - {hz: 40, gauge: 1.6, make: plain-steel}\n"
              "  - {note: B3, gauge: 0.4, make: plain-steel}\n"
              "  - {note: G3, gauge: 0.6, make: wound-bronze, core: 0.3}\n"
              "  - {note: D3, gauge: 0.8, make: wound-bronze, core: 0.35}\n"
              "  - {note: A2, gauge: 1.1, make: wound-bronze, core: 0.4}\n"
              "  - {note: E2, gauge: 1.3, make: wound-bronze, core: 0.45}\n"},
    {.code = "off-saddle",
     .level = "fine",
     .withholds = "",
     .parts = "saddle: {slot_depth: 5, thickness: 1.5, setback: {treble: 2.0, bass: 4.5}}\n"},
};

enum { ROWS = sizeof rows / sizeof *rows };

static void each_fault_raises_its_finding_and_no_more_is_withheld(void **state)
{
    (void)state;
    expect_findings(rows, ROWS);
}

static void nothing_withheld_can_be_cut_to(void **state)
{
    (void)state;
    expect_nothing_to_cut_to(rows, ROWS);
}

/* Cents count at the height that a string will have: on screws too far from it, up or down, they wait. */
static void cents_wait_for_the_height(void **state)
{
    (void)state;
    static const struct {
        const char *action;
        bool waits;
    } heights[] = {{"{treble: 1.75, bass: 2.25}", false},
                   {"{treble: 2.6, bass: 3.1}", true},
                   {"{treble: 1.0, bass: 1.5}", true}};
    static sil_plan plan;
    for (int k = 0; k < 3; k++) {
        sil_sheet *sheet = read_row(&(find_row){
            .more = "cents: 9",
            .action = heights[k].action,
            .parts = "saddle: {kind: individual, pitch: 0.5, intonation_pitch: 0.5}\n"});
        plan_into(sil_sheet_job(sheet), &plan);
        assert_int_equal(plan.tuning.remedy, heights[k].waits ? SIL_TUNE_WAIT : SIL_TUNE_SCREWS);
        assert_int_equal(plan.tuning.waits,
                         heights[k].waits ? SIL_TUNE_AFTER_SADDLE : SIL_TUNE_READY);
        sil_sheet_free(sheet);
    }
}

/* Of a bridge that moves in one piece, read at two strings next to each other: that tells no slant, so
 * both ends move alike. Read at the outer strings it does. */
static void readings_close_together_tell_no_slant(void **state)
{
    (void)state;
    static const char *const cents[] = {"[10, 7, ~, ~, ~, ~]", "[10, ~, ~, ~, ~, 7]"};
    static sil_plan plan;
    for (int k = 0; k < 2; k++) {
        char more[64];
        snprintf(more, sizeof more, "cents: %s", cents[k]);
        sil_sheet *sheet = read_row(&(find_row){
            .more = more, .parts = "saddle: {kind: floating, pitch: 0.7, post_spread: 70}\n"});
        plan_into(sil_sheet_job(sheet), &plan);
        assert_int_equal(plan.tuning.remedy, SIL_TUNE_ENDS);
        double apart = plan.tuning.end[0] - plan.tuning.end[1];
        assert_true(k == 0 ? fabs(apart) < 1e-9 : apart > 0.5);
        assert_true(plan.tuning.end[1] > 1.0);
        sil_sheet_free(sheet);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_fault_raises_its_finding_and_no_more_is_withheld),
        cmocka_unit_test(nothing_withheld_can_be_cut_to),
        cmocka_unit_test(cents_wait_for_the_height),
        cmocka_unit_test(readings_close_together_tell_no_slant),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
