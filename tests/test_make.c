/* SPDX-License-Identifier: MIT */
/* A nut or a saddle made from a blank, from the first visit to the last. */
#include <stdio.h>
#include <string.h>

#include "planned.h"

#include <sillet/sillet.h>

static sil_plan plan;

/* The plan of a sheet on the steel-string profile with these lines behind it. The job lives on in
 * the plan, so the sheet stays open until the next. */
static void make_plan_of(const char *parts, const char *saddle, const char *readings)
{
    static sil_sheet *sheet;
    static char text[4096];
    sil_sheet_free(sheet);
    snprintf(text, sizeof text,
             "sillet: 1\nprofile: steel-string-acoustic\nmake: %s\n"
             "instrument: {rod: two-way, crown: 1.1}\nnut: {seat_to_board: 6}\n"
             "saddle: {slot_depth: 5%s}\nreadings:\n%s",
             parts, saddle, readings);
    sil_sheet_read_bytes(text, strlen(text), "make", "profiles", &sheet);
    assert_non_null(sil_sheet_job(sheet));
    plan_into(sil_sheet_job(sheet), &plan);
}

static void make_plan(const char *parts, const char *readings)
{
    make_plan_of(parts, "", readings);
}

static bool found(sil_code code)
{
    for (int k = 0; k < plan.finding_count; k++) {
        if (plan.findings[k].code == code) {
            return true;
        }
    }
    return false;
}

static bool asks(sil_act act)
{
    for (int k = 0; k < plan.step_count; k++) {
        if (plan.steps[k].act == act) {
            return true;
        }
    }
    return false;
}

#define SOUND "frets: sound, humidity: 48 %"
#define OLD_NUT "action: {treble: 1.8, bass: 2.3}, relief: 0.2, frets: sound, humidity: 48 %"

/* A nut that was read and is worn out is made in the same steps as one from the sheet's `make`, and its
 * slots have a stroke left on: its feelers alone are not good enough. What is left is filed by the gap. */
static void a_worn_out_nut_is_made_like_any_other(void **state)
{
    (void)state;
    make_plan("[]", "  - {first: [0, 0, 0, 0.08, 0.09, 0.10], " OLD_NUT "}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_REPLACE);
    assert_true(asks(SIL_ACT_FIT_NUT) && asks(SIL_ACT_MARK_NUT) && asks(SIL_ACT_CUT_NUT));
    assert_true(asks(SIL_ACT_SHAPE_NUT) && asks(SIL_ACT_READ_NEW));
    double stack[SIL_STRINGS_MAX];
    for (int i = 0; i < 6; i++) {
        assert_true(plan.nut.leave[i] >= 0.05);
        stack[i] = plan.nut.stack[i] + plan.nut.leave[i];
    }
    make_plan("[]",
              "  - {date: 2026-05-01, first: [0, 0, 0, 0.08, 0.09, 0.10], " OLD_NUT "}\n"
              "  - {date: 2026-05-02, first: [0.10, 0.11, 0.12, 0.13, 0.14, 0.15], " OLD_NUT "}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_FILE);
    assert_false(asks(SIL_ACT_FIT_NUT));
    assert_true(asks(SIL_ACT_FILE_SLOTS));
    for (int i = 0; i < 6; i++) {
        assert_int_equal(plan.nut.verdict[i], SIL_TAKE); /* in range or not: it is to be finished */
        assert_true(plan.nut.stack_moved[i]);
        near(plan.nut.stack[i], stack[i] - plan.stages.deepen[i], 1e-9);
    }
}

/* The same of a slot that is filled; the others are left. Once it reads in its range it is left, too;
 * past it, it is filed like any other. */
static void a_filled_slot_has_a_stroke_left_on(void **state)
{
    (void)state;
    make_plan("[]", "  - {first: [0.06, 0.06, 0.01, 0.08, 0.09, 0.10], " OLD_NUT "}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_FILL);
    assert_true(plan.nut.leave[2] >= 0.05);
    near(plan.nut.leave[1], 0.0, 0.0);
    make_plan("[]",
              "  - {date: 2026-05-01, first: [0.06, 0.06, 0.01, 0.08, 0.09, 0.10], " OLD_NUT
              "}\n  - {date: 2026-05-02, first: [0.06, 0.06, 0.10, 0.08, 0.09, 0.10], " OLD_NUT
              "}\n");
    assert_int_equal(plan.nut.verdict[2], SIL_LEAVE);
    assert_false(plan.stages.finish_slot[2]);
    make_plan("[]",
              "  - {date: 2026-05-01, first: [0.06, 0.06, 0.01, 0.08, 0.09, 0.10], " OLD_NUT
              "}\n  - {date: 2026-05-02, first: [0.06, 0.06, 0.18, 0.08, 0.09, 0.10], " OLD_NUT
              "}\n");
    assert_int_equal(plan.nut.verdict[2], SIL_TAKE);
    assert_int_equal(plan.nut.verdict[1], SIL_LEAVE);
}

/* The visit after is expected to find the slot at its target and what was left on it. */
static void the_stroke_left_on_is_expected(void **state)
{
    (void)state;
    make_plan("[]",
              "  - {date: 2026-05-01, first: [0.06, 0.06, 0.01, 0.08, 0.09, 0.10], " OLD_NUT "}\n");
    const double *x = plan.bench.board.fret_x[2];
    double up = (plan.bench.targets.first[2].aim - 0.01) / (1.0 - x[1] / x[3]) + plan.nut.leave[2];
    double share = 1.0 - x[12] / plan.bench.board.saddle_x[2], was = plan.bench.gaps.action[2];
    make_plan("[]",
              "  - {date: 2026-05-01, first: [0.06, 0.06, 0.01, 0.08, 0.09, 0.10], " OLD_NUT
              "}\n  - {date: 2026-05-02, first: [0.06, 0.06, 0.10, 0.08, 0.09, 0.10], " OLD_NUT
              "}\n");
    near(plan.visits[1].predicted[2], was + up * share, 1e-9);
    near(plan.visits[1].predicted[1], plan.visits[0].read[1], 1e-9);
}

/* Fret 1 is worn 0.04 under string 2, too little to be levelled: the slot of a new nut is cut as over
 * the sound fret, its gap reads that much more, and no later visit files it down to the spot. */
static void a_new_nut_is_not_cut_down_to_a_worn_spot(void **state)
{
    (void)state;
    make_plan("nut", "  - {relief: 0.2, frets: sound, humidity: 48 %}\n");
    double sound = plan.nut.floor[1];
    assert_false(found(SIL_NUT_OVER_DENT));
#define WORN "frets: [{string: 2, fret: 1, off: -0.04}], humidity: 48 %"
    make_plan("nut", "  - {relief: 0.2, " WORN "}\n");
    near(plan.nut.floor[1], sound, 1e-9);
    assert_true(found(SIL_NUT_OVER_DENT));
    make_plan("nut", "  - {relief: 0.2, " WORN "}\n"
                     "  - {relief: 0.2, first: [0.05, 0.10, 0.06, 0.07, 0.07, 0.08], "
                     "action: [1.8, 1.9, 2.0, 2.1, 2.2, 2.3], " WORN "}\n");
    assert_int_equal(plan.nut.verdict[1], SIL_LEAVE);
    assert_true(found(SIL_NUT_OVER_DENT) && plan.done);
    make_plan("nut", "  - {relief: 0.2, " WORN "}\n"
                     "  - {relief: 0.2, first: [0.05, 0.20, 0.06, 0.07, 0.07, 0.08], "
                     "action: [1.8, 1.9, 2.0, 2.1, 2.2, 2.3], " WORN "}\n");
    assert_int_equal(plan.nut.verdict[1], SIL_TAKE);
    double share = plan.bench.board.fret_x[1][1] / plan.bench.board.fret_x[1][3];
    near(plan.stages.deepen[1], (0.20 - 0.04 - plan.bench.targets.first[1].aim) / (1.0 - share),
         1e-9);
    /* Levelled, there is nothing left to keep from. */
    make_plan("nut", "  - {relief: 0.2, frets: [{string: 2, fret: 1, off: -0.3}]}\n");
    assert_false(found(SIL_NUT_OVER_DENT));
}

#define READ "action: [1.8, 1.9, 2.0, 2.1, 2.2, 2.3], " SOUND

static void a_nut_asks_for_no_gap(void **state)
{
    (void)state;
    make_plan("nut", "  - {relief: 0.2, " SOUND "}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_REPLACE);
    static const sil_act order[] = {SIL_ACT_PREPARE, SIL_ACT_FIT_NUT,   SIL_ACT_MARK_NUT,
                                    SIL_ACT_CUT_NUT, SIL_ACT_SHAPE_NUT, SIL_ACT_READ_NEW};
    assert_int_equal(plan.step_count, sizeof order / sizeof *order);
    for (int k = 0; k < plan.step_count; k++) {
        assert_int_equal(plan.steps[k].act, order[k]);
    }
    assert_true(sil_withheld_by(&plan.saddle_withheld, SIL_MAKE_NUT));
    assert_true(found(SIL_MAKE_NUT));
    assert_false(plan.done || found(SIL_RELIEF_AS_TARGET) || found(SIL_RELIEF_UNKNOWN));
    near(plan.nut.leave[0], 0.05, 0.0);
    near(plan.nut_blank.height, plan.nut.top + plan.job->allowances.blank_height, 1e-12);
}

static void a_target_stands_where_nothing_shows_the_relief(void **state)
{
    (void)state;
    static const char *const rows[] = {
        "  - {" SOUND "}\n",
        "  - {relief: 0.6, condition: {tuned: no}, " SOUND "}\n", /* slack strings show no relief */
    };
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        make_plan("nut", rows[k]);
        assert_true(plan.bench.fresh.relief_stands && found(SIL_RELIEF_AS_TARGET));
        assert_int_equal(plan.nut.remedy, SIL_NUT_REPLACE);
        assert_false(sil_known(sil_relief_now(&plan)) || asks(SIL_ACT_STOP) || asks(SIL_ACT_ROD));
        near(plan.stages.fit[SIL_NOW].bend, sil_bend(&plan.bench.board, 0.2), 1e-12);
    }
}

static void the_neck_and_the_frets_come_first(void **state)
{
    (void)state;
    make_plan("nut", "  - {relief: 0.6, " SOUND "}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_WAIT);
    assert_true(asks(SIL_ACT_ROD) && !asks(SIL_ACT_CUT_NUT));
    make_plan("nut", "  - {relief: 0.2}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_WAIT);
    assert_true(asks(SIL_ACT_READ_CROWNS) && !asks(SIL_ACT_CUT_NUT));
    make_plan("nut", "  - {relief: 0.2, frets: sound, humidity: 20 %}\n");
    assert_true(asks(SIL_ACT_STOP) && !asks(SIL_ACT_CUT_NUT));
}

/* What the old nut reads is no gap of the new one: not at the first visit, nor while the rod is
 * still to be turned. */
static void old_gaps_are_the_old_nuts(void **state)
{
    (void)state;
    make_plan("nut", "  - {relief: 0.2, first: 0.3, " READ "}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_REPLACE);
    make_plan("nut", "  - {relief: 0.6, first: 0.3, " READ "}\n"
                     "  - {relief: 0.2, first: 0.3, " READ "}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_REPLACE);
    assert_int_equal(plan.nut_made, PLAN_NOT_MADE);
    assert_false(found(SIL_SLOT_HIGH));
}

/* Read back, it is like any nut; what was left on is taken off though it is in range by now. */
static void the_visit_after_finishes_it(void **state)
{
    (void)state;
    make_plan("nut", "  - {relief: 0.2, " SOUND "}\n"
                     "  - {relief: 0.2, first: [0.09, 0.095, 0.1, 0.1, 0.11, 0.11], " READ "}\n");
    assert_int_equal(plan.nut_made, PLAN_READ_BACK);
    assert_int_equal(plan.nut.remedy, SIL_NUT_FILE);
    assert_true(asks(SIL_ACT_FILE_SLOTS) && !found(SIL_SLOT_HIGH) && !found(SIL_MAKE_NUT));
    for (int i = 0; i < 6; i++) {
        assert_true(plan.bench.gaps.first[i] <= plan.bench.targets.first[i].high);
        assert_int_equal(plan.nut.verdict[i], SIL_TAKE);
    }
    assert_true(plan.nut.stack_moved[0]); /* from the stack it was filed to, by its gap */
    double fret_height =
        plan.bench.crown + sil_new_slot_over(&plan.bench, &plan.stages.fit[SIL_NUT], 0);
    near(plan.nut.stack[0], fret_height + plan.nut.leave[0] + 0.05 - plan.stages.deepen[0], 1e-9);
    make_plan("nut", "  - {relief: 0.2, " SOUND "}\n"
                     "  - {relief: 0.2, first: [0.05, 0.06, 0.06, 0.07, 0.07, 0.08], " READ "}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_NONE);
    assert_true(plan.done); /* only when it was read */
    make_plan("nut", "  - {relief: 0.2, " SOUND "}\n  - {relief: 0.2, " READ "}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_REPLACE); /* it was not read yet */
    assert_false(plan.done);
}

/* What was to come is what the next visit is held against. */
static void the_next_visit_is_foretold(void **state)
{
    (void)state;
    make_plan("nut", "  - {relief: 0.2, first: 0.3, " READ "}\n"
                     "  - {relief: 0.2, first: 0.1, " READ "}\n");
    /* The slot went from 0.3 held at the 3rd to 0.05 and what 0.05 of height gives. */
    const double *x = plan.bench.board.fret_x[0];
    double down = 0.25 / (1.0 - x[1] / x[3]) - 0.05;
    double share = 1.0 - x[12] / plan.bench.board.saddle_x[0];
    near(plan.visits[1].predicted[0], 1.8 - down * share, 1e-9);
    make_plan("saddle", "  - {relief: 0.2, first: 0.06, bridge_top: 1.2, " SOUND "}\n"
                        "  - {relief: 0.2, first: 0.06, " READ "}\n");
    near(plan.visits[1].predicted[0], 1.75 + 0.15 * x[12] / plan.bench.board.saddle_x[0], 1e-9);
}

static void a_saddle_follows_from_the_bridges_top(void **state)
{
    (void)state;
    make_plan("saddle", "  - {bridge_top: {treble: 1.4, bass: 1.2}, " SOUND "}\n");
    assert_int_equal(plan.saddle.remedy, SIL_SADDLE_REPLACE);
    assert_true(asks(SIL_ACT_FIT_BLANK) && asks(SIL_ACT_SHAPE_SADDLE) && asks(SIL_ACT_READ_NEW));
    assert_true(found(SIL_NUT_AS_TARGET) && found(SIL_RELIEF_AS_TARGET) && found(SIL_MAKE_SADDLE));
    assert_false(asks(SIL_ACT_MEASURE_FIRST) || asks(SIL_ACT_MEASURE_ACTION) ||
                 asks(SIL_ACT_MEASURE_RELIEF) || sil_known(sil_first_now(&plan, 0)));
    make_plan("saddle", "  - {relief: 0.2, first: 0.06, " SOUND "}\n");
    assert_int_equal(plan.saddle.remedy, SIL_SADDLE_WAIT);
    assert_true(asks(SIL_ACT_MEASURE_BRIDGE) && !asks(SIL_ACT_SHAPE_SADDLE));
    assert_false(found(SIL_NUT_AS_TARGET));
    make_plan("[nut, saddle]", "  - {bridge_top: 1.3, " SOUND "}\n");
    assert_true(asks(SIL_ACT_CUT_NUT) && asks(SIL_ACT_SHAPE_SADDLE));
}

/* The same saddle, with its strings on and read, is finished at its bottom. */
static void a_saddle_read_back_is_finished(void **state)
{
    (void)state;
    make_plan("saddle",
              "  - {relief: 0.2, first: 0.06, bridge_top: 1.2, " SOUND "}\n"
              "  - {relief: 0.2, first: 0.06, action: [1.93, 2.03, 2.13, 2.23, 2.33, 2.43], "
              "saddle_height: {treble: 8.3, bass: 9.2}, " SOUND "}\n");
    assert_int_equal(plan.saddle_made, PLAN_READ_BACK);
    assert_int_equal(plan.saddle.remedy, SIL_SADDLE_SAND);
    assert_true(asks(SIL_ACT_SAND_SADDLE) && !found(SIL_SADDLE_HIGH));
}

/* Its peaks are filed while it has the height: where setback was read, to where the strings' physics
 * puts them. A copy has the old one's top, and only a tuner says otherwise. */
static void a_new_saddle_has_its_peaks(void **state)
{
    static const char *const bridge =
        "  - {relief: 0.2, first: 0.06, bridge_top: 1.2, " SOUND "}\n";
    static const char *const sharp = "  - {relief: 0.2, first: 0.06, bridge_top: 1.2, "
                                     "cents: [~, ~, 9, ~, ~, ~], " SOUND "}\n";
    static const char *const built = ", thickness: 3, setback: [1.0, 2.5, 2.6, 3.0, 3.4, 4.0]";
    static const char *const copied = ", thickness: 3, setback: [1.0, 2.5, 2.6, 3.0, 3.4, 4.0], "
                                      "old: [8.1, 8.4, 8.7, 8.8, 8.7, 8.6]";
    (void)state;
    make_plan("saddle", bridge);
    assert_true(asks(SIL_ACT_SHAPE_SADDLE) && !asks(SIL_ACT_FILE_PEAKS));
    make_plan_of("saddle", built, bridge);
    assert_true(asks(SIL_ACT_SHAPE_SADDLE) && asks(SIL_ACT_FILE_PEAKS));
    make_plan_of("saddle", copied, bridge);
    assert_true(asks(SIL_ACT_SHAPE_SADDLE) && !asks(SIL_ACT_FILE_PEAKS));
    make_plan_of("saddle", copied, sharp);
    assert_true(asks(SIL_ACT_FILE_PEAKS) && plan.tuning.filed[2] && !plan.tuning.filed[0]);
    near(plan.tuning.peak[2], 2.7, 1e-12); /* 9 cents are 3.4 mm: as far as the piece goes */
}

/* Under a pick that its target is too low for, a part is not made before it is chosen what gives way;
 * where its range has room, it is made higher. */
static void a_new_part_keeps_out_of_its_own_buzz(void **state)
{
    (void)state;
    make_plan("nut\nattack: {force: {treble: 2.4 N, bass: 5 N}, at: 200}",
              "  - {relief: 0.2, " SOUND "}\n");
    assert_int_equal(plan.nut.remedy, SIL_NUT_WAIT);
    assert_true(sil_withheld_by(&plan.nut_withheld, SIL_ATTACK) && found(SIL_ATTACK));
    assert_true(asks(SIL_ACT_CHOOSE) && asks(SIL_ACT_CHECK) && !asks(SIL_ACT_CUT_NUT));
    assert_false(sil_known(plan.nut.stack[0]) || asks(SIL_ACT_READ_NEW));
    make_plan("saddle", "  - {relief: 0.2, first: 0.06, bridge_top: 1.2, " SOUND "}\n");
    double height = plan.saddle.height[0], aim = plan.bench.targets.action[0].aim;
    make_plan("saddle\nattack: {force: {treble: 0.9 N, bass: 1.2 N}, at: 130}",
              "  - {relief: 0.2, first: 0.06, bridge_top: 1.2, " SOUND "}\n");
    assert_int_equal(plan.saddle.remedy, SIL_SADDLE_REPLACE);
    assert_true(found(SIL_AIM_RAISED) && plan.saddle.height[0] > height);
    double action = sil_action(&plan.bench.board, &plan.stages.fit[SIL_SADDLE], 0, 12);
    near(action, plan.saddle.clean[0], 1e-9);
    near((plan.saddle.height[0] - height) * sil_leverage(&plan.bench.board, 0), action - aim, 1e-9);
}

/* In a bridge that stands high a saddle is made as high as its range allows; past that, the neck is
 * at fault. */
static void a_new_saddle_stands_out_by_enough(void **state)
{
    (void)state;
    make_plan("saddle",
              "  - {relief: 0.2, first: 0.06, bridge_top: {treble: 0.05, bass: -0.7}, " SOUND
              "}\n");
    assert_int_equal(plan.saddle.remedy, SIL_SADDLE_REPLACE);
    assert_true(found(SIL_AIM_SHORT) && plan.saddle.aim_short[0]);
    near(plan.saddle.protrusion[0], plan.job->limits.least_protrusion, 1e-9);
    double action = sil_action(&plan.bench.board, &plan.stages.fit[SIL_SADDLE], 0, 12);
    assert_true(action > plan.bench.targets.action[0].aim &&
                action <= plan.bench.targets.action[0].high);
    make_plan("saddle", "  - {relief: 0.2, first: 0.06, bridge_top: -1.4, " SOUND "}\n");
    assert_int_equal(plan.saddle.remedy, SIL_SADDLE_WAIT);
    assert_true(found(SIL_NECK_ANGLE) && !asks(SIL_ACT_SHAPE_SADDLE));
    near(plan.neck.short_by[0], plan.job->limits.least_protrusion - plan.saddle.protrusion[0],
         1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_nut_asks_for_no_gap),
        cmocka_unit_test(a_new_nut_is_not_cut_down_to_a_worn_spot),
        cmocka_unit_test(a_target_stands_where_nothing_shows_the_relief),
        cmocka_unit_test(the_neck_and_the_frets_come_first),
        cmocka_unit_test(old_gaps_are_the_old_nuts),
        cmocka_unit_test(the_visit_after_finishes_it),
        cmocka_unit_test(the_next_visit_is_foretold),
        cmocka_unit_test(a_worn_out_nut_is_made_like_any_other),
        cmocka_unit_test(a_filled_slot_has_a_stroke_left_on),
        cmocka_unit_test(the_stroke_left_on_is_expected),
        cmocka_unit_test(a_saddle_follows_from_the_bridges_top),
        cmocka_unit_test(a_saddle_read_back_is_finished),
        cmocka_unit_test(a_new_saddle_has_its_peaks),
        cmocka_unit_test(a_new_part_keeps_out_of_its_own_buzz),
        cmocka_unit_test(a_new_saddle_stands_out_by_enough),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
