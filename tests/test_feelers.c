/* SPDX-License-Identifier: MIT */
/* The feelers to file down to: their error, how far stiffness lifts a string over its slot, how
 * they follow the gap read after a pass, and that no first pass filed to them ends past its aim.
 * A beam solved by finite elements is held against the lift in tests/oracle/check_lift. */
#include <stdio.h>
#include <string.h>

#include "instrument.h"
#include "planned.h"
#include "random_job.h"

static const double degree = 3.14159265358979323846 / 180.0;

/* E I of a round wire of steel, 206 GPa. */
static double steel(double diameter)
{
    return 206e3 * 3.14159265358979323846 * pow(diameter, 4) / 64.0;
}

/* By hand: a plain .012 at 104 N has lambda = sqrt(87.3/104) = 0.916, and lies 0.916 x tan(7)/2 =
 * 0.0562 over a long floor that falls by 7 degrees; a plain .017 at 74 N 0.134. */
static void stiffness_lifts_a_string_over_its_floor(void **state)
{
    (void)state;
    sil_slot_bend thin = {steel(0.3048), 104.0, 60.0, 7.0, 14.0};
    sil_slot_bend thick = {steel(0.4318), 74.0, 60.0, 7.0, 14.0};
    near(sil_slot_lift(&thin), 0.0562, 5e-5);
    near(sil_slot_lift(&thick), 0.134, 5e-4);
    thick.length = 1e7;
    double lambda = sqrt(thick.stiffness_n_mm2 / thick.tension);
    near(sil_slot_lift(&thick), lambda * tan(7.0 * degree) / 2.0, 1e-9);
    thick.length = SIL_UNKNOWN; /* a nut of unknown thickness: as a long one */
    near(sil_slot_lift(&thick), lambda * tan(7.0 * degree) / 2.0, 1e-12);
}

/* Along its floor the string turns once, however long the slot is. A slot of no length is one edge,
 * over which it turns by all of the headstock. */
static void a_short_slot_is_one_edge(void **state)
{
    (void)state;
    sil_slot_bend bend = {steel(0.4318), 74.0, 2.0, 7.0, 7.0};
    double lambda = sqrt(bend.stiffness_n_mm2 / bend.tension);
    near(sil_slot_lift(&bend), lambda * tan(7.0 * degree) / 2.0, 1e-12);
    bend.behind_deg = 0.0; /* a headstock that is not angled: the string still goes down its slot */
    near(sil_slot_lift(&bend), lambda * tan(7.0 * degree) / 2.0, 1e-12);
    bend.behind_deg = SIL_UNKNOWN;
    near(sil_slot_lift(&bend), lambda * tan(7.0 * degree) / 2.0, 1e-12);
    bend.behind_deg = 14.0;
    bend.length = 1e-4;
    near(sil_slot_lift(&bend), lambda * tan(14.0 * degree) / 2.0, 1e-4);
    bend.length = 2.0;
    bend.fall_deg = 3.0;
    bend.behind_deg = 25.0; /* over the back edge alone */
    near(sil_slot_lift(&bend), lambda * tan(25.0 * degree) / 2.0 - 2.0 * tan(3.0 * degree), 1e-12);
}

static void a_lift_is_not_told_of_what_is_not_known(void **state)
{
    (void)state;
    sil_slot_bend sound = {80.0, 90.0, 6.0, 7.0, 14.0};
    assert_true(sil_known(sil_slot_lift(&sound)));
    sil_slot_bend bend = sound;
    bend.stiffness_n_mm2 = SIL_UNKNOWN;
    assert_false(sil_known(sil_slot_lift(&bend)));
    bend = sound;
    bend.tension = SIL_UNKNOWN;
    assert_false(sil_known(sil_slot_lift(&bend)));
    bend = sound;
    bend.fall_deg = SIL_UNKNOWN;
    assert_false(sil_known(sil_slot_lift(&bend)));
}

/* The work at the nut of the instrument in instrument.h, slot 1 high, with these tools. */
static void work_with(sil_tools tools, sil_stages *stages, sil_nut_work *nut, sil_bench *bench)
{
    sil_fit truth;
    sil_nut_given make = {
        .seat_to_board = 6.5, .head_angle_deg = 14.0, .fall_share = 0.5, .caliper = tools.caliper};
    make_instrument(bench, &truth);
    bench->tools = tools;
    truth.nut_height[0] += 0.2;
    read_instrument(bench, &truth);
    sil_stages_run(bench, stages);
    sil_nut_cut(bench, stages, &make, nut);
    assert_int_equal(nut->verdict[0], SIL_TAKE);
    assert_int_equal(nut->verdict[1], SIL_LEAVE);
}

/* One tool at a time. The fret height enters as it is; the relief, into a slot that is filed, with
 * K x_1 x_3, since the string is held on crown 3; the gap only into a slot that stays. */
static void each_tool_enters_the_stack_once(void **state)
{
    (void)state;
    sil_stages stages;
    sil_nut_work nut;
    sil_bench bench;
    work_with((sil_tools){.caliper = 0.05}, &stages, &nut, &bench);
    near(nut.stack_u[0], 0.05 / sqrt(3.0), 1e-12);
    near(nut.stack_u[1], 0.05 / sqrt(3.0), 1e-12);
    work_with((sil_tools){.relief = 0.02}, &stages, &nut, &bench);
    const double *x = bench.board.spine_x;
    double bend = 1.0 / ((x[7] - x[1]) * (x[14] - x[7]));
    near(nut.stack_u[0], 0.02 / sqrt(3.0) * bend * x[1] * x[3], 1e-9);
    near(0.1 * bend * x[1] * x[3], 0.015, 0.002); /* some 0.015 for 0.1 of relief */
    work_with((sil_tools){.first = 0.02}, &stages, &nut, &bench);
    near(nut.stack_u[0], 0.0, 1e-12);
    near(nut.stack_u[1], 0.02 / sqrt(3.0) / (1.0 - x[1] / x[3]), 1e-9);
    work_with((sil_tools){.first = 0.02, .relief = 0.02, .caliper = 0.05}, &stages, &nut, &bench);
    near(nut.stack_u[0], hypot(0.05 / sqrt(3.0), 0.02 / sqrt(3.0) * bend * x[1] * x[3]), 1e-9);
}

static sil_plan plan;

static void make_plan(const char *readings)
{
    plan_readings("instrument: {rod: two-way, crown: 1.1, head_angle: 14 deg}\n"
                  "nut: {seat_to_board: 6.5}\n",
                  readings, &plan);
}

#define VISIT(first)                                                                               \
    "  - {relief: 0.15, action: 1.9, frets: sound, first: [" first ", 0.06, 0.06, 0.06, 0.08, "    \
    "0.08], confirmed: [1]}\n"

/* Filed to the stack of the first plan, 0.07 of gap more is there than was to be: the next stack
 * stands as much lower as the gap still asks for, whatever the fret height says. */
static void the_stack_follows_the_gap_read(void **state)
{
    (void)state;
    make_plan(VISIT("0.25"));
    double filed_to = plan.nut.stack[0] + plan.stages.deepen[0] - plan.nut.first_pass[0];
    double pass = plan.nut.first_pass[0], lever = plan.stages.deepen[0] / (0.25 - 0.05);
    double floor = plan.nut.floor[0] - plan.nut.stack[0];
    near(plan.nut.stack_bend[0], 0.056, 0.002);
    assert_false(plan.nut.stack_moved[0]);
    make_plan(VISIT("0.25") VISIT("0.12"));
    assert_true((0.25 - 0.12) * lever > pass / 2.0);
    assert_true(plan.nut.stack_moved[0]);
    near(plan.nut.stack[0], filed_to - (0.12 - 0.05) * lever, 1e-9);
    near(plan.nut.floor[0] - plan.nut.stack[0], floor, 1e-9);
    near(plan.nut.stack_u[0], plan.stages.deepen_u[0], 1e-12);
    assert_false(plan.nut.stack_moved[1]); /* it was not filed */
}

/* A wound string's stiffness is its core's; of a wound nylon string it is that of all of it. */
static const struct {
    const char *string;
    double stiff, modulus; /* mm, GPa; unknown where nothing is told */
} lifted[] = {
    {"gauge: 0.76 mm, make: wound-bronze, core: 0.35 mm", 0.35, 206.0},
    {"gauge: 0.76 mm, make: wound-bronze, core: 0.35 mm, unit_mass: 3.3 g/m", 0.35, 206.0},
    {"gauge: 0.30 mm, make: plain-steel", 0.30, 206.0},
    {"gauge: 0.74 mm, make: wound-nylon, unit_mass: 1.92 g/m, modulus: 7.56 GPa", 0.74, 7.56},
    /* Cores that are assumed, with a mass and without, and one that is not known at all. */
    {"gauge: 0.76 mm, make: wound-bronze", SIL_UNKNOWN, 206.0},
    {"gauge: 0.76 mm, make: wound-bronze, unit_mass: 3.3 g/m", SIL_UNKNOWN, 206.0},
    {"gauge: 0.40 mm, make: wound-bronze, unit_mass: 1.2 g/m", SIL_UNKNOWN, 206.0}};

static void a_lift_stands_on_what_is_stiff_and_given(void **state)
{
    (void)state;
    for (size_t k = 0; k < sizeof lifted / sizeof *lifted; k++) {
        char more[512];
        snprintf(more, sizeof more,
                 "  - {relief: 0.15, action: 1.9, frets: sound, first: [0.25, 0.06]}\n"
                 "strings:\n"
                 "  - {note: D3, %s}\n"
                 "  - {note: A2, gauge: 1.07 mm, make: wound-bronze, core: 0.41 mm}\n",
                 lifted[k].string);
        make_plan(more);
        sil_slot_bend bend = {.stiffness_n_mm2 = lifted[k].modulus / 206.0 * steel(lifted[k].stiff),
                              .tension = plan.pluck.tension[0],
                              .length = plan.job->nut.thickness,
                              .fall_deg = plan.nut.fall_angle_deg,
                              .behind_deg = 14.0};
        assert_true(sil_known(plan.nut.stack[0]));
        assert_int_equal(sil_known(plan.nut.stack_bend[0]), sil_known(lifted[k].stiff));
        if (sil_known(lifted[k].stiff)) {
            near(plan.nut.stack_bend[0], sil_slot_lift(&bend), 1e-9);
            assert_true(plan.nut.stack_bend[0] > 0.02);
        }
        assert_true(sil_known(plan.nut.stack_bend[1]));
    }
}

/* A gap that did not come down may be a slot that nobody filed: nothing is taken off twice. */
static void a_gap_that_stays_moves_no_stack(void **state)
{
    (void)state;
    make_plan(VISIT("0.12"));
    double stack = plan.nut.stack[0];
    make_plan(VISIT("0.12") VISIT("0.115"));
    assert_false(plan.nut.stack_moved[0]);
    assert_true(plan.nut.stack_stays[0]);
    near(plan.nut.stack[0], stack, 1e-9);
}

/* Half of a deep pass is missing: more than stiffness and the fret height's error explain, so it was
 * not filed to that stack. */
static void a_pass_broken_off_moves_no_stack(void **state)
{
    (void)state;
    make_plan(VISIT("0.70"));
    double stack = plan.nut.stack[0];
    make_plan(VISIT("0.70") VISIT("0.35"));
    assert_false(plan.nut.stack_moved[0] || plan.nut.stack_stays[0]);
    near(plan.nut.stack[0], stack, 1e-9);
}

/* --- no first pass ends past its aim --------------------------------------------------------- */

typedef struct bench_slot {
    double floor[SIL_STRINGS_MAX]; /* over the board's end, as it truly is */
    double lift[SIL_STRINGS_MAX];  /* how far the string stands over it */
} bench_slot;

/* How far a height over the board's end is above one over the chord. */
static double over_chord(const sil_plan *p, int i, double misread)
{
    const sil_board *board = &p->bench.board;
    return p->job->instrument.crown + misread + board->drop[i][0] +
           sil_sag(board, p->stages.fit[SIL_NOW].bend, board->nut_x[i]);
}

static double gap_now(const sil_plan *p, const bench_slot *b, int i, sil_hold hold, double misread)
{
    sil_fit fit = p->stages.fit[SIL_NOW];
    fit.nut_height[i] = b->floor[i] + b->lift[i] - over_chord(p, i, misread);
    return sil_first_gap(&p->bench.board, &fit, i, hold);
}

/* Files every high slot to the feelers of its first pass, or leaves it where its floor is lower. */
static void file_to_feelers(const sil_plan *p, bench_slot *b)
{
    for (int i = 0; i < p->job->string_count; i++) {
        if (p->nut.verdict[i] == SIL_TAKE) {
            double left = p->stages.deepen[i] - p->nut.first_pass[i];
            b->floor[i] = fmin(b->floor[i], p->nut.stack[i] + left);
        }
    }
}

/* Whether a first pass at a slot is told, with feelers, on an instrument as it is now. */
static bool is_filed(const sil_plan *p, int i)
{
    return p->nut.verdict[i] == SIL_TAKE && sil_known(p->nut.stack[i]);
}

static void no_worse_than_aim(const sil_plan *p, const bench_slot *b, int i, double misread)
{
    sil_hold hold = p->bench.targets.first_held;
    double aim = p->bench.targets.first[i].aim;
    if (!(gap_now(p, b, i, hold, misread) >= aim - 1e-9)) {
        fail_msg("string %d of %d: past its aim", i + 1, p->job->string_count);
    }
}

/* One instrument: read, filed to the feelers, read again, filed again. Returns how many stacks
 * moved. `share` of the lift is there; the fret height was misread. */
static int follow(random_job *made, double share, double misread)
{
    sil_reading readings[2] = {made->reading, made->reading};
    bench_slot b;
    int moved = 0;
    made->job.readings = readings;
    made->job.reading_count = 1;
    plan_into(&made->job, &plan);
    for (int i = 0; i < made->job.string_count; i++) {
        double lift = plan.nut.stack_bend[i];
        b.lift[i] = sil_known(lift) ? share * lift : 0.0;
        b.floor[i] =
            plan.stages.fit[SIL_NOW].nut_height[i] + over_chord(&plan, i, misread) - b.lift[i];
    }
    file_to_feelers(&plan, &b);
    for (int i = 0; i < made->job.string_count; i++) {
        if (is_filed(&plan, i) && misread == 0.0) {
            no_worse_than_aim(&plan, &b, i, misread);
        }
        if (is_filed(&plan, i)) {
            readings[1].gaps.first[i] = fmax(gap_now(&plan, &b, i, SIL_HOLD_3, misread), 0.005);
        }
    }
    made->job.reading_count = 2;
    plan_into(&made->job, &plan);
    file_to_feelers(&plan, &b);
    for (int i = 0; i < made->job.string_count; i++) {
        bool follows = is_filed(&plan, i) && plan.nut.stack_moved[i];
        if (follows || (is_filed(&plan, i) && misread == 0.0)) {
            no_worse_than_aim(&plan, &b, i, misread);
        }
        moved += follows;
    }
    return moved;
}

static void no_first_pass_ends_past_its_aim(void **state)
{
    (void)state;
    static random_job made;
    uint64_t seed = 15;
    int moved = 0;
    for (int round = 0; round < 300; round++) {
        make_random_job(&made, &seed, 1 + round % SIL_STRINGS_MAX);
        made.reading.relief.gap = 0.15;
        made.reading.crowns_read = SIL_CROWNS_SOUND;
        made.reading.crown_count = 0;
        made.reading.humidity_pct = 47.0;
        made.reading.condition.bridge = SIL_SOUND;
        made.job.tools.first = 0.003; /* so that a gap stays out after a pass */
        made.job.tools.relief = 0.01;
        for (int k = 0; k < 6; k++) {
            static const double shares[] = {0.0, 1.0};
            static const double misreads[] = {0.0, 0.05, -0.05};
            moved += follow(&made, shares[k % 2], misreads[k / 2]);
        }
    }
    assert_true(moved > 50);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(stiffness_lifts_a_string_over_its_floor),
        cmocka_unit_test(a_short_slot_is_one_edge),
        cmocka_unit_test(a_lift_is_not_told_of_what_is_not_known),
        cmocka_unit_test(each_tool_enters_the_stack_once),
        cmocka_unit_test(the_stack_follows_the_gap_read),
        cmocka_unit_test(a_lift_stands_on_what_is_stiff_and_given),
        cmocka_unit_test(a_gap_that_stays_moves_no_stack),
        cmocka_unit_test(a_pass_broken_off_moves_no_stack),
        cmocka_unit_test(no_first_pass_ends_past_its_aim),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
