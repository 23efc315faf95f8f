/* SPDX-License-Identifier: MIT */
/* Kinds of instrument: fans, courses, bridges on posts, the neck's angle. */
#include <cjson/cJSON.h>
#include <sillet/report.h>
#include <stdlib.h>

#include "instrument.h"
#include "planned.h"
#include "random_job.h"

enum { JOBS = 200 };

/* Two results alike, every figure to 1e-9 of itself (of 1 where it is smaller). */
static void same_result(const cJSON *a, const cJSON *b)
{
    assert_int_equal(a->type, b->type);
    if (cJSON_IsNumber(a)) {
        near(a->valuedouble, b->valuedouble, 1e-9 * fmax(1.0, fabs(b->valuedouble)));
    } else if (cJSON_IsString(a)) {
        assert_string_equal(a->valuestring, b->valuestring);
    }
    const cJSON *x = a->child, *y = b->child;
    for (; x && y; x = x->next, y = y->next) {
        same_result(x, y);
    }
    assert_true(!x && !y);
}

static cJSON *result_of(const sil_job *job, sil_plan *plan)
{
    plan_into(job, plan);
    char *text = sil_report_json(plan, SIL_MM);
    cJSON *result = cJSON_Parse(text);
    free(text);
    assert_non_null(result);
    return result;
}

static void same_plans(const sil_job *one, const sil_job *other)
{
    sil_plan *plan = malloc(sizeof *plan);
    cJSON *a = result_of(one, plan);
    cJSON *b = result_of(other, plan);
    same_result(a, b);
    cJSON_Delete(a);
    cJSON_Delete(b);
    free(plan);
}

static void a_fan_of_two_equal_scales_is_none(void **state)
{
    (void)state;
    uint64_t seed = 61;
    random_job made;
    for (int k = 0; k < JOBS; k++) {
        make_random_job(&made, &seed, 1 + k % SIL_STRINGS_MAX);
        sil_job plain = made.job;
        plain.instrument.scale_bass = SIL_UNKNOWN;
        made.job.instrument.scale_bass = made.job.instrument.scale;
        made.job.instrument.square = k % 13;
        same_plans(&plain, &made.job);
    }
}

static void a_course_of_one_is_a_string(void **state)
{
    (void)state;
    uint64_t seed = 62;
    random_job made;
    for (int k = 0; k < JOBS; k++) {
        make_random_job(&made, &seed, 1 + k % SIL_STRINGS_MAX);
        sil_job strings = made.job;
        for (int i = 0; i < strings.string_count; i++) {
            strings.strings[i].course = 0;
            made.job.strings[i].course = i + 1;
        }
        same_plans(&strings, &made.job);
    }
}

/* A fan as a plan of straight strings: the frets laid out by the old rule, a part in 17.8171537 of
 * what is left (the divisor: 1/(1 - 2^(-1/12)), printed as 17.817). */
static void a_fan_is_laid_out_by_the_rule_of_eighteen(void **state)
{
    (void)state;
    sil_board board = {.strings = 7, .frets = 24, .join = 16, .relief_at = 8};
    board.radius_nut = board.radius_end = (double)INFINITY;
    double setback[7]; /* a share of each scale, so that strings stay evenly apart all the way */
    for (int i = 0; i < 7; i++) {
        board.course[i] = i;
        setback[i] = 0.003 * (648.0 + 38.0 * i / 6.0);
        board.nut_z[i] = 21.0 - 7.0 * i;
        board.saddle_z[i] = 31.5 - 10.5 * i;
    }
    sil_board_fan(&board, &(sil_fan){648.0, 686.0, 7}, setback);
    double square = sil_axis_x(&board, -1, 7);
    for (int i = 0; i < 7; i++) {
        double scale = 648.0 + 38.0 * i / 6.0, left = scale;
        near(board.scale[i], scale, 1e-9);
        near(board.saddle_x[i], scale + setback[i], 1e-9);
        for (int n = 1; n <= 24; n++) {
            left -= left / 17.8171537;
            near(board.fret_x[i][n], scale - left, 1e-5);
        }
        near(sil_axis_x(&board, i, 7), square, 1e-9);
    }
    /* The outer strings' ends stand apart by what their scales differ by on each side of fret 7:
     * 38 (1 - 2^(-7/12)) at the nut, the rest at the saddle. */
    double nut = 38.0 * (1.0 - pow(2.0, -7.0 / 12.0));
    near(board.nut_x[0] - board.nut_x[6], nut, 1e-9);
    near(tan(board.nut_slant), -nut / 42.0, 1e-12);
    near(tan(board.saddle_slant), (38.0 - nut) / 63.0, 1e-12);
}

/* The centre line bent to a true arc: a crown under a string lies as deep as its place along that
 * line tells, and no other. */
static void crowns_of_a_fan_lie_on_the_bent_neck(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    make_instrument(&bench, &truth);
    sil_board *board = &bench.board;
    double setback[6] = {0};
    board->radius_nut = board->radius_end = (double)INFINITY;
    sil_board_fan(board, &(sil_fan){635.0, 673.0, 8}, setback);
    truth.bend = sil_bend(board, 0.25);
    double x1 = board->spine_x[1], half = (board->spine_x[14] - x1) / 2.0;
    double middle = truth.bend * half * half;
    double radius = (half * half + middle * middle) / (2.0 * middle);
    for (int i = 0; i < 6; i++) {
        double scale = 635.0 + 38.0 * i / 5.0;
        for (int n = 1; n <= 13; n++) {
            /* Hung from the square fret, by what is left of each scale there. */
            double x = board->spine_x[8] + scale * (exp2(-8 / 12.0) - exp2(-n / 12.0));
            double from = x - x1 - half;
            double deep = sqrt(radius * radius - from * from) - (radius - middle);
            near(sil_crown_height(board, &truth, i, n), -deep, 1e-6);
        }
    }
}

static void courses_stand_evenly_and_pairs_as_told(void **state)
{
    (void)state;
    static const int course[12] = {0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5};
    double gauge[12] = {0.25, 0.25, 0.36, 0.36, 0.58, 0.23, 0.76, 0.3, 1.07, 0.46, 1.32, 0.69};
    double z[12], gap;
    sil_courses courses = {12, course, 2.1};
    sil_nut_centres(&courses, gauge, 48.0, 3.0, 3.2, SIL_EQUAL_GAP, z, &gap);
    near(24.0 - z[0] - gauge[0] / 2.0, 3.0, 1e-12);
    near(z[11] - gauge[11] / 2.0 + 24.0, 3.2, 1e-12);
    for (int i = 1; i < 12; i++) {
        double edges = z[i - 1] - gauge[i - 1] / 2.0 - (z[i] + gauge[i] / 2.0);
        near(i % 2 ? z[i - 1] - z[i] : edges, i % 2 ? 2.1 : gap, 1e-12);
    }
    courses.pair = 2.4;
    sil_saddle_centres(&courses, 60.0, z);
    near(z[0], 30.0, 1e-12);
    near(z[11], -30.0, 1e-12);
    for (int i = 1; i < 12; i++) {
        near(z[i - 1] - z[i], i % 2 ? 2.4 : (60.0 - 6 * 2.4) / 5.0, 1e-12);
    }
}

static void a_course_alone_needs_no_gap(void **state)
{
    (void)state;
    static const int one[2] = {0, 0};
    double gauge[2] = {0.3, 0.3}, z[2], gap;
    sil_courses courses = {2, one, 2.0};
    sil_nut_centres(&courses, gauge, 20.0, 8.85, 8.85, SIL_EQUAL_GAP, z, &gap);
    near(z[0] - z[1], 2.0, 1e-12);
    assert_false(sil_known(gap));
    sil_saddle_centres(&courses, 40.0, z);
    near(z[0], 1.0, 1e-12);
    near(z[1], -1.0, 1e-12);
}

/* Makes every string of an instrument read this much too high at the saddle. */
static void raise_saddle(sil_bench *bench, sil_fit *truth, const double *over)
{
    for (int i = 0; i < 6; i++) {
        truth->saddle_height[i] += over[i];
    }
    read_instrument(bench, truth);
}

static const sil_saddle_given posts = {.working = SIL_WORKING_POSTS,
                                       .pitch = 0.8,
                                       .post_spread = 74.0,
                                       .present_treble = SIL_UNKNOWN,
                                       .present_bass = SIL_UNKNOWN,
                                       .bridge_top_treble = SIL_UNKNOWN,
                                       .bridge_top_bass = SIL_UNKNOWN,
                                       .travel = SIL_UNKNOWN};

/* F. J. Anscombe, Graphs in Statistical Analysis, The American Statistician 27 (1973), first of
 * four data sets: y = 3.00 + 0.500 x (data from memory; the line is the published one). */
static void a_level_line_is_that_of_least_squares(void **state)
{
    (void)state;
    const double x[] = {10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5};
    const double y[] = {8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68};
    sil_line line = sil_level_line(11, x, y);
    near(line.b0, 3.00, 0.005);
    near(line.b1, 0.500, 0.0005);
    line = sil_level_line(2, (const double[]){0.3, -0.3}, (const double[]){2.0, 1.0});
    near(line.b1, 1.0 / 0.6, 1e-12); /* however near the two */
}

static void posts_take_off_what_lies_on_a_line(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    sil_stages stages;
    sil_saddle_work work;
    double over[6];
    make_instrument(&bench, &truth);
    for (int i = 0; i < 6; i++) {
        over[i] = 1.2 + 0.005 * bench.board.saddle_z[i];
    }
    raise_saddle(&bench, &truth, over);
    sil_stages_run(&bench, &stages);
    sil_saddle_cut(&bench, &posts, &stages, &work);
    assert_int_equal(work.remedy, SIL_SADDLE_SCREW);
    near(work.post[0], 1.2 + 0.005 * 37.0, 1e-9);
    near(work.post[1], 1.2 - 0.005 * 37.0, 1e-9);
    near(work.post_turns[1], (1.2 - 0.005 * 37.0) / 0.8, 1e-9);
    sil_saddle_work held_back = work;
    sil_saddle_await(6, &held_back);
    for (int side = 0; side < 2; side++) {
        assert_false(sil_known(held_back.post[side]) || sil_known(held_back.post_turns[side]));
    }
    for (int i = 0; i < 6; i++) {
        near(sil_action(&bench.board, &stages.fit[SIL_SADDLE], i, 12), bench.targets.action[i].aim,
             1e-9);
        assert_false(sil_known(work.turns[i]));
    }
}

/* Of least squares: what is left neither lifts nor tilts. And where that is all that is left, no
 * post is turned. */
static void what_posts_leave_lies_on_no_line(void **state)
{
    (void)state;
    static const double over[6] = {1.0, 1.3, 0.9, 1.6, 0.7, 1.1};
    sil_bench bench;
    sil_fit truth;
    sil_stages stages;
    sil_saddle_work work;
    make_instrument(&bench, &truth);
    raise_saddle(&bench, &truth, over);
    sil_stages_run(&bench, &stages);
    sil_saddle_cut(&bench, &posts, &stages, &work);
    double level = 0.0, tilt = 0.0, left[6];
    for (int i = 0; i < 6; i++) {
        left[i] = over[i] - (truth.saddle_height[i] - stages.fit[SIL_SADDLE].saddle_height[i]);
        level += left[i];
        tilt += left[i] * bench.board.saddle_z[i];
    }
    near(level, 0.0, 1e-9);
    near(tilt, 0.0, 1e-7);
    make_instrument(&bench, &truth);
    raise_saddle(&bench, &truth, left);
    bench.tools = (sil_tools){0}; /* so that what is left is out, and not at an edge */
    sil_stages_run(&bench, &stages);
    assert_true(stages.changed[SIL_SADDLE]); /* some string is out of its range */
    sil_saddle_cut(&bench, &posts, &stages, &work);
    assert_int_equal(work.remedy, SIL_SADDLE_NONE);
    assert_false(stages.changed[SIL_SADDLE]);
}

/* The neck turned as a stiff body about the pocket's front edge, by the wedge the advice asks for:
 * the line of the crowns then passes the saddle higher by what was short. */
static void a_neck_turned_as_advised_gives_what_was_short(void **state)
{
    (void)state;
    uint64_t seed = 64;
    random_job made;
    sil_plan *plan = malloc(sizeof *plan);
    int advised = 0;
    for (int k = 0; k < 40 * JOBS; k++) {
        make_random_job(&made, &seed, 6);
        made.job.instrument.pocket = 76.0;
        made.job.instrument.heel = 90.0;
        plan_into(&made.job, plan);
        const sil_neck *neck = &plan->neck;
        if (!(neck->lift > 0.0)) {
            assert_false(sil_known(neck->shim));
            continue;
        }
        const sil_board *board = &plan->bench.board;
        double join = board->spine_x[board->join];
        double saddle = board->nut_x[neck->string] + board->saddle_x[neck->string];
        double by_shim = atan(neck->shim / 76.0), by_heel = atan(neck->heel / 90.0);
        near(sin(by_shim) * (saddle - join) / neck->lift, 1.0, 1e-3);
        near(sin(by_heel) * (saddle - join) / neck->lift, 1.0, 1e-3);
        advised++;
    }
    assert_true(advised > 20);
    free(plan);
}

/* A bridge on posts, in one piece, with strings as read; how far it sags under each. */
static void plan_bridge(const char *saddle, const char *action, sil_plan *plan)
{
    char parts[160], readings[240];
    snprintf(parts, sizeof parts, "instrument: {crown: 1.1, rod: none}\nsaddle: {%s}\n", saddle);
    snprintf(readings, sizeof readings,
             "  - relief: 0.15\n    frets: sound\n    first: 0.07\n    action: %s\n", action);
    plan_readings(parts, readings, plan);
}

static const sil_finding *sag_of(const sil_plan *plan, int string)
{
    for (int k = 0; k < plan->finding_count; k++) {
        if (plan->findings[k].code == SIL_BRIDGE_SAG && plan->findings[k].string == string) {
            return &plan->findings[k];
        }
    }
    return NULL;
}

/* Strings 3 and 4 are 0.6 mm lower than their targets ask for beside the outer ones: at the saddle that
 * is 0.6 over the leverage, and no setting of two posts takes it out. */
static void a_sagged_bridge_is_told(void **state)
{
    (void)state;
    static const char two_posts[] = "kind: two-post, pitch: 0.7, post_spread: 74",
                      sunk[] = "[1.75, 1.60, 1.35, 1.45, 1.90, 2.25]";
    sil_plan *plan = malloc(sizeof *plan);
    plan_bridge(two_posts, sunk, plan);
    const sil_finding *third = sag_of(plan, 2), *fourth = sag_of(plan, 3);
    assert_non_null(third);
    assert_non_null(fourth);
    assert_null(sag_of(plan, 0));
    assert_null(sag_of(plan, 5));
    near(third->read, 0.6 / sil_leverage(&plan->bench.board, 2), 0.02);
    near(fourth->read, 0.6 / sil_leverage(&plan->bench.board, 3), 0.02);
    assert_int_equal(third->level, SIL_LEVEL_ACT);
    assert_int_equal(plan->saddle.remedy, SIL_SADDLE_SCREW); /* the posts may turn all the same */
    plan_bridge(two_posts, "[1.95, 1.9, 1.75, 1.85, 2.2, 2.45]", plan); /* and all in their range */
    assert_non_null(sag_of(plan, 2));
    assert_int_equal(sag_of(plan, 2)->level, SIL_LEVEL_WATCH);
    plan_bridge(two_posts, "[1.75, 1.85, 1.90, 2.0, 2.15, 2.25]", plan);
    assert_null(sag_of(plan, 2));
    plan_bridge("kind: individual, pitch: 0.7", sunk, plan);
    assert_null(sag_of(plan, 2)); /* each has a screw of its own */
    plan_bridge(two_posts, "[1.2, 1.7, 1.95, 2.05, 2.0, 1.7]", plan);
    assert_null(sag_of(plan, 2)); /* too much of a curve is no sag */
    free(plan);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_sagged_bridge_is_told),
        cmocka_unit_test(a_fan_of_two_equal_scales_is_none),
        cmocka_unit_test(a_course_of_one_is_a_string),
        cmocka_unit_test(a_fan_is_laid_out_by_the_rule_of_eighteen),
        cmocka_unit_test(crowns_of_a_fan_lie_on_the_bent_neck),
        cmocka_unit_test(courses_stand_evenly_and_pairs_as_told),
        cmocka_unit_test(a_course_alone_needs_no_gap),
        cmocka_unit_test(a_level_line_is_that_of_least_squares),
        cmocka_unit_test(posts_take_off_what_lies_on_a_line),
        cmocka_unit_test(what_posts_leave_lies_on_no_line),
        cmocka_unit_test(a_neck_turned_as_advised_gives_what_was_short),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
