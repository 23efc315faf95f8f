/* SPDX-License-Identifier: MIT */
/* What is shown of a plan: how each figure is rounded, and that none is of nothing. */
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <sillet/sillet.h>

#include "../src/brief/quick.h"
#include "briefed.h"

/* --- figures ---------------------------------------------------------------------------------- */

/* A member that is a figure to a hundredth of a millimetre. What comes off is rounded down, where to
 * stop or what to order up, the rest to the nearest. */
typedef struct member {
    const char *name;
    size_t at;
    sil_rounding way;
} member;

#define OF(type, name, way)                                                                        \
    {                                                                                              \
#name, offsetof(type, name), way                                                           \
    }

static const member of_nut[] = {OF(brief_nut, length, SIL_NEAREST),
                                OF(brief_nut, height, SIL_NEAREST), OF(brief_nut, gap, SIL_NEAREST),
                                OF(brief_nut, shim, SIL_NEAREST)};
static const member of_slot[] = {
    OF(brief_slot, gauge, SIL_NEAREST),  OF(brief_slot, width, SIL_NEAREST),
    OF(brief_slot, along, SIL_NEAREST),  OF(brief_slot, across, SIL_NEAREST),
    OF(brief_slot, floor, SIL_UP),       OF(brief_slot, depth, SIL_NEAREST),
    OF(brief_slot, top, SIL_NEAREST),    OF(brief_slot, off, SIL_NEAREST),
    OF(brief_slot, sure, SIL_NEAREST),   OF(brief_slot, deepen, SIL_DOWN),
    OF(brief_slot, first, SIL_DOWN),     OF(brief_slot, left, SIL_NEAREST),
    OF(brief_slot, stack_first, SIL_UP), OF(brief_slot, stack, SIL_UP),
    OF(brief_slot, stack_now, SIL_UP),   OF(brief_slot, gap, SIL_NEAREST)};
static const member of_saddle[] = {OF(brief_saddle, base_first[0], SIL_DOWN),
                                   OF(brief_saddle, base_first[1], SIL_DOWN),
                                   OF(brief_saddle, base_all[0], SIL_DOWN),
                                   OF(brief_saddle, base_all[1], SIL_DOWN),
                                   OF(brief_saddle, base_left[0], SIL_NEAREST),
                                   OF(brief_saddle, base_left[1], SIL_NEAREST),
                                   OF(brief_saddle, caliper[0], SIL_UP),
                                   OF(brief_saddle, caliper[1], SIL_UP),
                                   OF(brief_saddle, left_on, SIL_NEAREST),
                                   OF(brief_saddle, length, SIL_NEAREST),
                                   OF(brief_saddle, shim, SIL_NEAREST),
                                   OF(brief_saddle, best_setback[0], SIL_NEAREST),
                                   OF(brief_saddle, best_setback[1], SIL_NEAREST),
                                   OF(brief_saddle, best_thickness, SIL_UP),
                                   OF(brief_saddle, lift, SIL_NEAREST),
                                   OF(brief_saddle, wedge, SIL_NEAREST),
                                   OF(brief_saddle, heel, SIL_NEAREST),
                                   OF(brief_saddle, post[0].moves, SIL_NEAREST),
                                   OF(brief_saddle, post[1].moves, SIL_NEAREST)};
static const member of_string[] = {
    OF(brief_bearing, along, SIL_NEAREST),        OF(brief_bearing, across, SIL_NEAREST),
    OF(brief_bearing, off, SIL_NEAREST),          OF(brief_bearing, sure, SIL_NEAREST),
    OF(brief_bearing, first, SIL_DOWN),           OF(brief_bearing, base_first, SIL_DOWN),
    OF(brief_bearing, base_all, SIL_DOWN),        OF(brief_bearing, dress, SIL_DOWN),
    OF(brief_bearing, left_on, SIL_NEAREST),      OF(brief_bearing, present, SIL_NEAREST),
    OF(brief_bearing, moves, SIL_NEAREST),        OF(brief_bearing, action_before, SIL_NEAREST),
    OF(brief_bearing, action_first, SIL_NEAREST), OF(brief_bearing, action_all, SIL_NEAREST),
    OF(brief_bearing, action_done, SIL_NEAREST),  OF(brief_bearing, action_rod, SIL_NEAREST)};
static const member of_blank[] = {OF(brief_blank, length, SIL_UP),
                                  OF(brief_blank, thickness, SIL_UP),
                                  OF(brief_blank, height, SIL_UP),
                                  OF(brief_blank, done_length, SIL_NEAREST),
                                  OF(brief_blank, done_thickness, SIL_NEAREST),
                                  OF(brief_blank, spare_length, SIL_NEAREST),
                                  OF(brief_blank, spare_thickness, SIL_NEAREST),
                                  OF(brief_blank, spare_height, SIL_NEAREST),
                                  OF(brief_blank, spacing, SIL_NEAREST)};

static int rounded[3]; /* by the way: how many were told apart from the other ways */

static void hold_figure(const char *name, const brief_figure *figure, sil_rounding way)
{
    const double last = 0.01, hair = 1e-9;
    if (!brief_known(*figure)) {
        assert_string_equal(figure->shown, "-");
        return;
    }
    double over = atof(figure->shown) - figure->exact;
    bool down = over <= hair && over > -last, up = over >= -hair && over < last;
    bool nearest = fabs(over) <= last / 2 + hair;
    bool right = way == SIL_DOWN ? down : way == SIL_UP ? up : nearest;
    if (!right) {
        fail_msg("%s: %s of %.6g", name, figure->shown, figure->exact);
    }
    rounded[way] += way == SIL_NEAREST ? !(down && up) : !nearest;
}

static void hold_members(const void *of, const member *members, size_t size)
{
    for (size_t k = 0; k < size / sizeof *members; k++) {
        hold_figure(members[k].name,
                    (const brief_figure *)(const void *)((const char *)of + members[k].at),
                    members[k].way);
    }
}

static void every_figure_is_rounded_its_way(void **state)
{
    (void)state;
    uint64_t seed = 81;
    for (int job = 0; job < JOBS; job++) {
        brief *b = next_brief(&seed, job);
        hold_members(&b->nut, of_nut, sizeof of_nut);
        hold_members(&b->saddle, of_saddle, sizeof of_saddle);
        hold_members(&b->nut.blank, of_blank, sizeof of_blank);
        hold_members(&b->saddle.blank, of_blank, sizeof of_blank);
        /* A new saddle is filed down to its height, and no farther. */
        sil_rounding to_file = b->saddle.replaced ? SIL_UP : SIL_NEAREST;
        hold_figure("nut's height", &b->nut.blank.done_height, SIL_NEAREST);
        hold_figure("saddle's height", &b->saddle.blank.done_height, to_file);
        for (int i = 0; i < b->strings; i++) {
            hold_members(&b->nut.slot[i], of_slot, sizeof of_slot);
            hold_members(&b->saddle.string[i], of_string, sizeof of_string);
            hold_figure("height", &b->saddle.string[i].height, to_file);
            hold_figure("out", &b->saddle.string[i].out, to_file);
            sil_verdict verdict = b->saddle.string[i].verdict; /* one in its range may come along */
            bool cut = verdict == SIL_TAKE || verdict == SIL_LEAVE;
            hold_figure("by", &b->saddle.string[i].by,
                        cut && b->saddle.string[i].by.rounding == SIL_DOWN ? SIL_DOWN
                                                                           : SIL_NEAREST);
            hold_figure("lowest action", &b->lowest.action[i], SIL_UP);
            hold_figure("lowest gap", &b->lowest.first[i], SIL_UP);
        }
        brief_free(b);
    }
    assert_true(rounded[SIL_DOWN] > 100 && rounded[SIL_UP] > 100 && rounded[SIL_NEAREST] > 100);
}

static void a_quick_answer_has_its_figures(void **state)
{
    (void)state;
    for (int k = 0; k < 4; k++) {
        brief_quick answer;
        if (k < 2) {
            brief_quick_saddle(645, 2, k == 0 ? 2.4 : 1.2, 1.8, 0, SIL_MM, &answer);
        } else {
            brief_quick_nut(645, k == 2 ? 0.3 : 0.02, 0.07, 0, SIL_HOLD_3, SIL_MM, &answer);
        }
        const brief_way way = k % 2 == 0 ? BRIEF_DOWN : BRIEF_UP;
        assert_non_null(answer.words);
        assert_true(answer.said_count >= 3);
        assert_int_equal(answer.said[0].way, way);
        assert_string_equal(answer.said[0].of, k < 2 ? "saddle" : "slot");
        const char *at = answer.words;
        for (int f = 0; f < answer.said_count; f++) {
            assert_int_equal(answer.said[f].string, -1);
            assert_int_equal(answer.said[f].fret, -1);
            assert_int_equal(answer.said[f].end, BRIEF_NO_END);
            at = strstr(answer.words, answer.said[f].figure.shown);
            assert_non_null(at);
        }
        assert_true((strstr(answer.words, way == BRIEF_DOWN ? k < 2 ? "Lower" : "File down"
                                                            : "Raise") == answer.words));
        brief_quick_free(&answer);
    }
}

/* The crest of a new saddle's top is rounded up as its strings' heights are, so that none of them is told
 * to be over it. */
static void no_string_is_over_the_crest(void **state)
{
    (void)state;
    uint64_t seed = 77;
    int crests = 0;
    sil_sheet *sheet;
    sil_sheet_read("examples/new-saddle.yaml", "profiles", &sheet);
    assert_non_null(sil_sheet_job(sheet));
    sil_job job = *sil_sheet_job(sheet);
    int last = job.string_count - 1;
    for (int k = 0; k < JOBS; k++) {
        double treble = uniform(&seed, 1.5, 2.2), bass = treble + uniform(&seed, 0.0, 1.0);
        for (int i = 0; i <= last; i++) {
            double aim = treble + (bass - treble) * i / last;
            job.targets.action[i] = (sil_band){aim - 0.25, aim, aim + 0.25};
        }
        plan_into(&job, &plan);
        brief *b = brief_make(&plan, k % 2 ? SIL_INCH : SIL_MM);
        assert_non_null(b);
        crests += brief_known(b->saddle.crest);
        for (int i = 0; brief_known(b->saddle.crest) && i <= last; i++) {
            assert_true(strtod(b->saddle.crest.shown, NULL) >=
                        strtod(b->saddle.string[i].height.shown, NULL) - 1e-9);
        }
        brief_free(b);
    }
    sil_sheet_free(sheet);
    assert_true(crests > 100);
}

static void not_under_nothing(brief_figure figure)
{
    assert_false(brief_known(figure) && (figure.exact < 0.0 || figure.shown[0] == '-'));
}

/* A string held down lies on fret 1, and the gap of the open one is so small that its line held down
 * would run under the crown. Under no string is there less than nothing, whatever the nut is. */
static void no_gap_is_less_than_nothing(void **state)
{
    (void)state;
    static const char parts[] = "nut: {kind: %s}\ninstrument: {crown: 1.1}\n";
    static const char readings[] = "  - relief: 0.15\n    frets: sound\n"
                                   "    first: [0.06, 0.06, 0.05, 0.05, 0, 0]\n"
                                   "    first_open: [0.30, 0.32, 0.33, 0.33, 0.08, 0.07]\n"
                                   "    action: [1.8, 1.9, 2.0, 2.0, 2.1, 2.2]\n";
    static const char *const kinds[] = {"slotted", "zero-fret"};
    for (int k = 0; k < 2; k++) {
        char bytes[80];
        snprintf(bytes, sizeof bytes, parts, kinds[k]);
        plan_readings(bytes, readings, &plan);
        assert_true(sil_first_gap(&plan.bench.board, &plan.stages.fit[SIL_NOW], 5, SIL_HOLD_3) <
                    -0.05);
        near(sil_first_now(&plan, 5), 0.0, 0.0);
        brief *b = brief_make(&plan, SIL_MM);
        for (int i = 0; i < 6; i++) {
            not_under_nothing(b->first[i].now);
            not_under_nothing(b->first[i].after);
            not_under_nothing(b->nut.slot[i].gap);
            not_under_nothing(b->nut.slot[i].gap_first);
        }
        assert_string_equal(b->first[5].now.shown, "0.00");
        brief_free(b);
    }
}

/* The peak of string 1 is at the back of the top already, and that of string 2 is filed: 1 stays as it
 * is, so that nothing is said of how far it would have to move. */
static void a_string_that_stays_has_no_move(void **state)
{
    (void)state;
    plan_readings("saddle: {slot_depth: 5, thickness: 3, peak: 2.7}\n"
                  "instrument: {crown: 1.1, rod: two-way}\ntargets: {cents: 6}\n",
                  "  - relief: 0.2\n    frets: sound\n"
                  "    first: [0.06, 0.06, 0.06, 0.07, 0.07, 0.08]\n"
                  "    action: {treble: 2.2, bass: 2.8}\n"
                  "    stands_out: {treble: 4, bass: 6}\n    cents: [9, -9, 0, 0, 0, ~]\n",
                  &plan);
    brief *b = brief_make(&plan, SIL_MM);
    const brief_tuned *string = b->tuning.string;
    assert_string_equal(string[0].verdict, "leave");
    assert_false(brief_known(string[0].move));
    assert_int_equal(string[0].way, BRIEF_NO_WAY);
    assert_string_equal(string[1].verdict, "forward");
    assert_true(brief_known(string[1].move));
    assert_int_equal(string[1].way, BRIEF_FORWARD);
    brief_free(b);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_figure_is_rounded_its_way),
        cmocka_unit_test(a_quick_answer_has_its_figures),
        cmocka_unit_test(no_string_is_over_the_crest),
        cmocka_unit_test(no_gap_is_less_than_nothing),
        cmocka_unit_test(a_string_that_stays_has_no_move),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
