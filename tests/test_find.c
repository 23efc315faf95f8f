/* SPDX-License-Identifier: MIT */
/* Findings, withheld parts and steps. Each case starts from a sound sheet and makes one thing
 * wrong. */
#include <sillet/sillet.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../src/brief/brief.h"
#include "planned.h"

/* What a case may put in place of, each NULL for what a sound instrument has. */
typedef struct find_row {
    const char *code; /* the finding wanted, or NULL: none at all */
    const char *level;
    const char *withholds; /* "nut", "saddle", "both" or "" */
    const char *parts;     /* further parts of the sheet */
    const char *relief, *first, *action, *frets, *more;
} find_row;

static const find_row rows[] = {
    {.code = NULL, .withholds = ""},
    {.code = "relief-unknown", .level = "act", .withholds = "both", .relief = "~"},
    {.code = "relief-high", .level = "act", .withholds = "both", .relief = "0.42"},
    {.code = "relief-high", .level = "act", .withholds = "both", .relief = "wide"},
    {.code = "relief-low", .level = "act", .withholds = "both", .relief = "0.03"},
    {.code = "back-bow", .level = "act", .withholds = "both", .relief = "0"},
    {.code = "back-bow",
     .level = "act",
     .withholds = "both",
     .relief = "{gap: -0.05, by: straightedge}"},
    {.code = "rod-limit",
     .level = "watch",
     .withholds = "",
     .relief = "0.36",
     .parts = "instrument: {crown: 1.1, rod: none}\n"},
    {.code = "rod-limit",
     .level = "stop",
     .withholds = "both",
     .relief = "0.55",
     .action = "{treble: 2.1, bass: 2.6}",
     .parts = "instrument: {crown: 1.1, rod: two-way, rod_state: at-end}\n"},
    {.code = "fret-worn",
     .level = "act",
     .withholds = "both",
     .frets = "[{string: 2, fret: 1, off: -0.12}]",
     .first = "[0.06, 0.17, 0.06, 0.07, 0.07, 0.08]"},
    {.code = "fret-high",
     .level = "act",
     .withholds = "",
     .frets = "[{string: 2, fret: 9, off: 0.1}]"},
    {.code = "crown-thin",
     .level = "act",
     .withholds = "both",
     .frets = "[{string: 2, fret: 2, off: -0.3}]",
     .parts = "instrument: {crown: 0.7, rod: two-way}\n"},
    {.code = "crowns-unread", .level = "watch", .withholds = "", .frets = "~"},
    {.code = "crowns-unread", .level = "act", .withholds = "nut", .frets = "~", .first = "0.2"},
    {.code = "slot-high", .level = "act", .withholds = "", .first = "0.2"},
    {.code = "slot-high", /* an open gap has nothing to disagree with */
     .level = "act",
     .withholds = "",
     .first = "0.5",
     .more = "first_held: open\n    first_open: 0.9"},
    {.code = "slot-low", .level = "act", .withholds = "", .first = "[0.01, ~, ~, ~, ~, ~]"},
    {.code = "slot-low",
     .level = "act",
     .withholds = "",
     .first = "[0, 0.06, 0.06, 0.07, 0.07, 0.08]"},
    {.code = "saddle-high",
     .level = "act",
     .withholds = "",
     .action = "{treble: 2.2, bass: 2.8}",
     .more = "saddle_height: {treble: 9, bass: 10}"},
    {.code = "saddle-high", /* a ruler alone is enough */
     .level = "act",
     .withholds = "",
     .action = "{treble: 2.2, bass: 2.8}",
     .more = "stands_out: {treble: 4, bass: 5}"},
    {.code = "saddle-unread",
     .level = "act",
     .withholds = "saddle",
     .action = "{treble: 2.2, bass: 2.8}"},
    {.code = "saddle-unread", /* the height, but not how deep its slot is */
     .level = "act",
     .withholds = "saddle",
     .action = "{treble: 2.2, bass: 2.8}",
     .parts = "saddle: {pickup: 0}\n",
     .more = "saddle_height: {treble: 9, bass: 10}"},
    {.code = "readings-disagree", /* 4 and 5 by caliper */
     .level = "act",
     .withholds = "saddle",
     .action = "{treble: 2.2, bass: 2.8}",
     .more = "saddle_height: {treble: 9, bass: 10}\n    stands_out: {treble: 4, bass: 3.5}"},
    {.code = "aim-short", /* to 1.95, in range, at string 1: the aim would leave 1.6 */
     .level = "watch",
     .withholds = "",
     .action = "{treble: 2.15, bass: 2.65}",
     .more = "saddle_height: {treble: 7.4, bass: 7.8}"},
    {.code = "break-angle-low", /* a warning, never a stop */
     .level = "watch",
     .withholds = "",
     .action = "{treble: 2.2, bass: 2.8}",
     .parts = "saddle: {slot_depth: 5, pin_distance: 40}\n",
     .more = "saddle_height: {treble: 8.5, bass: 9}"},
    {.code = "aim-raised",
     .level = "watch",
     .withholds = "",
     .action = "{treble: 2.2, bass: 2.8}",
     .parts = "attack: {force: {treble: 1.0 N, bass: 1.8 N}, at: 110}\n",
     .more = "stands_out: {treble: 4, bass: 6}"},
    {.code = "attack", /* no target in its range rings clean */
     .level = "act",
     .withholds = "",
     .action = "{treble: 2.6, bass: 3.2}",
     .parts = "attack: {force: {treble: 1.6 N, bass: 2.6 N}, at: 110}\n",
     .more = "stands_out: {treble: 4, bass: 6}"},
    {.code = "short-by-bow",
     .level = "stop",
     .withholds = "saddle",
     .relief = "0.4",
     .action = "{treble: 2.5, bass: 2.9}",
     .parts = "instrument: {crown: 1.1, rod: none}\n",
     .more = "saddle_height: {treble: 7.5, bass: 7.8}"},
    {.code = "short-by-bridge",
     .level = "stop",
     .withholds = "saddle",
     .action = "{treble: 3.5, bass: 3.9}",
     .parts = "saddle: {kind: floating, pitch: 0.7, post_spread: 70, travel: 0.5}\n"},
    {.code = "saddle-low", .level = "act", .withholds = "", .action = "{treble: 1.4, bass: 1.9}"},
    {.code = "protrusion-low",
     .level = "stop",
     .withholds = "saddle",
     .action = "{treble: 2.6, bass: 3.1}",
     .more = "saddle_height: {treble: 7.8, bass: 8.4}"},
    {.code = "neck-angle",
     .level = "stop",
     .withholds = "saddle",
     .action = "{treble: 2.6, bass: 3.1}",
     .more = "saddle_height: {treble: 7.8, bass: 8.4}"},
    {.code = "protrusion-high",
     .level = "watch",
     .withholds = "",
     .more = "saddle_height: {treble: 12, bass: 13}"},
    {.code = "seat-shallow",
     .level = "watch",
     .withholds = "",
     .more = "saddle_height: {treble: 11, bass: 11}"},
    {.code = "break-angle-low",
     .level = "watch",
     .withholds = "",
     .parts = "saddle: {slot_depth: 5, pin_distance: 30}\n",
     .more = "saddle_height: {treble: 8, bass: 8}"},
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
    {.code = "climate", .level = "stop", .withholds = "both", .more = "humidity: 20 %"},
    {.code = "bridge-lifted",
     .level = "stop",
     .withholds = "both",
     .more = "condition: {bridge: lifted}"},
    {.code = "saddle-loose",
     .level = "act",
     .withholds = "saddle",
     .more = "condition: {saddle: loose}"},
    {.code = "braces-loose",
     .level = "stop",
     .withholds = "both",
     .more = "condition: {braces: loose}"},
    {.code = "not-tuned", .level = "stop", .withholds = "both", .more = "condition: {tuned: no}"},
    {.code = "readings-disagree",
     .level = "act",
     .withholds = "both",
     .more = "first_open: [0.9, ~, ~, ~, ~, ~]"},
    {.code = "readings-disagree",
     .level = "act",
     .withholds = "",
     .more = "saddle_height: {treble: 9, bass: 9}\n    bridge_top: {treble: 3.5, bass: 3.5}"},
    {.code = "tool-coarse",
     .level = "watch",
     .withholds = "",
     .first = "[0.28, 0.06, 0.06, 0.07, 0.07, 0.08]",
     .parts = "tools: {first: 0.3}\n"},
    /* Just past an edge is in the range, unless the note is heard to buzz. */
    {.code = "at-edge", .level = "watch", .withholds = "", .relief = "0.31"},
    {.code = "at-edge",
     .level = "watch",
     .withholds = "",
     .first = "[0.11, 0.06, 0.06, 0.07, 0.07, 0.08]"},
    {.code = "at-edge", .level = "watch", .withholds = "", .action = "{treble: 2.04, bass: 2.5}"},
    {.code = "slot-low",
     .level = "act",
     .withholds = "",
     .first = "[0.025, 0.06, 0.06, 0.07, 0.07, 0.08]",
     .more = "buzz: [{string: 1, fret: 0}]"},
    {.code = "forecast", .level = "watch", .withholds = "both", .relief = "0.42"},
    {.code = "edge-narrow",
     .level = "watch",
     .withholds = "",
     .parts = "nut: {edge: {treble: 1.0, bass: 3.2}}\n"},
    {.code = "twist",
     .level = "watch",
     .withholds = "",
     .action = "{treble: 1.5, bass: 3.2}",
     .more = "stands_out: {treble: 4, bass: 6}"},
    {.code = "adjust-limit",
     .level = "watch",
     .withholds = "",
     .action = "{treble: 3.6, bass: 4.1}",
     .parts = "saddle: {kind: individual, pitch: 0.5}\n"},
    {.code = "adjust-limit",
     .level = "stop",
     .withholds = "saddle",
     .action = "{treble: 3.6, bass: 4.1}",
     .parts = "saddle: {kind: individual, pitch: 0.5, travel: {down: 1, up: 4}}\n"},
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

static const char *or_sound(const char *given, const char *sound)
{
    return given ? given : sound;
}

static sil_sheet *read_row(const find_row *row)
{
    static char bytes[4096];
    const char *parts = row->parts ? row->parts : "";
    bool own_instrument = strstr(parts, "instrument:") != NULL;
    int size = snprintf(bytes, sizeof bytes,
                        "sillet: 1\nprofile: steel-string-acoustic\n%s%s%s"
                        "readings:\n  - relief: %s\n    first: %s\n    action: %s\n    frets: %s\n"
                        "    %s\n",
                        own_instrument ? "" : "instrument: {crown: 1.1, rod: two-way}\n",
                        strstr(parts, "saddle:") ? "" : "saddle: {slot_depth: 5}\n", parts,
                        or_sound(row->relief, "0.2"),
                        or_sound(row->first, "[0.06, 0.06, 0.06, 0.07, 0.07, 0.08]"),
                        or_sound(row->action, "{treble: 1.75, bass: 2.25}"),
                        or_sound(row->frets, "sound"), or_sound(row->more, "temperature: 20 C"));
    sil_sheet *sheet = NULL;
    sil_sheet_read_bytes(bytes, (size_t)size, row->code ? row->code : "sound", "profiles", &sheet);
    for (int k = 0; !sil_sheet_job(sheet) && k < sil_sheet_complaint_count(sheet); k++) {
        print_error("%s: %s\n", row->code, sil_sheet_complaint(sheet, k).text);
    }
    return sheet;
}

static const sil_finding *find_code(const sil_plan *plan, const find_row *row)
{
    for (int k = 0; k < plan->finding_count; k++) {
        if (strcmp(sil_code_word(plan->findings[k].code), row->code) == 0 &&
            strcmp(sil_level_word(plan->findings[k].level), row->level) == 0) {
            return &plan->findings[k];
        }
    }
    return NULL;
}

/* Every text of a plan can be told, ends where it should and speaks no word of scripts. */
static void tell_everything(const sil_plan *plan)
{
    brief *b = brief_make(plan, SIL_INCH);
    int told = 0;
    assert_non_null(b);
    for (int k = 0; k < plan->finding_count; k++) {
        const char *words = b->findings[k].alone.words;
        assert_true(strlen(words) > 10 && words[strlen(words) - 1] == '.');
        assert_null(strstr(words, "held3"));
    }
    while (told < plan->finding_count) {
        assert_true(b->findings[told].alike > 0 && strlen(b->findings[told].together.words) > 10);
        told += b->findings[told].alike;
    }
    assert_int_equal(told, plan->finding_count);
    for (int k = 0; k < plan->step_count; k++) {
        assert_true(strlen(b->steps[k].what.words) > 10);
        assert_true(strlen(b->steps[k].check.words) > 10);
    }
    brief_free(b);
}

static void each_fault_raises_its_finding_and_no_more_is_withheld(void **state)
{
    (void)state;
    static sil_plan plan;
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        const find_row *row = &rows[k];
        sil_sheet *sheet = read_row(row);
        assert_non_null(sil_sheet_job(sheet));
        plan_into(sil_sheet_job(sheet), &plan);
        for (int f = 0; !row->code && f < plan.finding_count; f++) {
            assert_int_equal(plan.findings[f].level, SIL_LEVEL_FINE); /* an instrument in order */
        }
        if (row->code && !find_code(&plan, row)) {
            print_error("%s (%s) was not found\n", row->code, row->level);
            fail();
        }
        bool both = strcmp(row->withholds, "both") == 0;
        bool nut = both || strcmp(row->withholds, "nut") == 0;
        bool saddle = both || strcmp(row->withholds, "saddle") == 0;
        if ((plan.nut_withheld.count > 0) != nut || (plan.saddle_withheld.count > 0) != saddle) {
            print_error("%s: withholds otherwise than %s\n", row->code, row->withholds);
            fail();
        }
        tell_everything(&plan);
        sil_sheet_free(sheet);
    }
}

/* Where a part waits no figure is left that one could cut to. */
static void nothing_withheld_can_be_cut_to(void **state)
{
    (void)state;
    static sil_plan plan;
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        sil_sheet *sheet = read_row(&rows[k]);
        plan_into(sil_sheet_job(sheet), &plan);
        for (int i = 0; i < 6; i++) {
            if (plan.nut_withheld.count > 0) {
                assert_int_equal(plan.nut.verdict[i], SIL_WAIT);
                assert_false(sil_known(plan.nut.first_pass[i]) || sil_known(plan.nut.stack[i]) ||
                             sil_known(plan.nut.floor[i]) || sil_known(plan.nut.shim));
            }
            if (plan.saddle_withheld.count > 0) {
                assert_int_equal(plan.saddle.verdict[i], SIL_WAIT);
                assert_false(sil_known(plan.saddle.first_pass[i]) || plan.saddle.bottom ||
                             sil_known(plan.saddle.dress[i]) || sil_known(plan.saddle.shim));
            }
        }
        for (int s = 0; s < plan.step_count; s++) {
            assert_false(plan.nut_withheld.count > 0 && plan.steps[s].stage == SIL_NUT);
            assert_false(plan.saddle_withheld.count > 0 && plan.steps[s].stage == SIL_SADDLE &&
                         plan.steps[s].act != SIL_ACT_NECK_ANGLE &&
                         plan.steps[s].act != SIL_ACT_CHECK);
        }
        sil_sheet_free(sheet);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_fault_raises_its_finding_and_no_more_is_withheld),
        cmocka_unit_test(nothing_withheld_can_be_cut_to),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
