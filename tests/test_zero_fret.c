/* SPDX-License-Identifier: MIT */
/* Zero frets: no slot is filed under one, and one too low or too high is work to do. */
#include <stdlib.h>

#include <sillet/sillet.h>

#include "planned.h"
#include "random_job.h"

enum { JOBS = 200 };

static void a_zero_fret_is_no_slot_to_file(void **state)
{
    (void)state;
    uint64_t seed = 63;
    random_job made;
    sil_plan *plan = malloc(sizeof *plan);
    int high = 0;
    for (int k = 0; k < JOBS; k++) {
        make_random_job(&made, &seed, 6);
        made.job.nut.kind = SIL_NUT_ZERO_FRET;
        plan_into(&made.job, plan);
        assert_true(plan->nut.remedy == SIL_NUT_NONE || plan->nut.remedy == SIL_NUT_WAIT);
        bool off = false;
        for (int i = 0; i < 6; i++) {
            assert_true(plan->nut.verdict[i] == SIL_LEAVE || plan->nut.verdict[i] == SIL_WAIT);
            assert_false(sil_known(plan->nut.floor[i]) || sil_known(plan->nut.stack[i]));
            double gap = sil_first_gap(&plan->bench.board, &plan->stages.fit[SIL_FRETS], i,
                                       plan->bench.targets.first_held);
            sil_band range = made.job.targets.first[i];
            double width = plan->stages.first_u[i];
            off = off || gap > range.high + width + 1e-6; /* level with its neighbours: sound */
        }
        high += off;
        assert_true(!off || plan->saddle.remedy == SIL_SADDLE_WAIT);
    }
    assert_in_range(high, 20, JOBS);
    free(plan);
}

/* Zero frets of one kind: gaps as read, and what else was. */
typedef struct zero_fret_case {
    const char *first, *more;
    bool low; /* under strings 5 and 6 */
} zero_fret_case;

static void plan_zero_fret_case(const zero_fret_case *is, sil_plan *plan)
{
    char readings[400];
    snprintf(readings, sizeof readings,
             "  - relief: {gap: 0.15, by: straightedge}\n    first: %s\n"
             "    action: [1.75, 1.85, 1.95, 2.05, 2.15, 2.25]\n%s",
             is->first, is->more);
    plan_readings("nut: {kind: zero-fret}\ninstrument: {crown: 1.1, rod: none}\n", readings, plan);
}

/* A zero fret level with the others leaves next to no gap and is sound, until it is heard. One that the
 * string lies on, or whose crown is under the others', is to be raised. */
static void a_zero_fret_too_low_is_work_to_do(void **state)
{
    (void)state;
    static const char
        sound[] = "    frets: sound\n",
        heard[] = "    frets: sound\n    buzz: [{string: 5, fret: 0}, {string: 6, fret: 0}]\n",
        worn[] = "    frets: [{string: 5, fret: 0, off: -0.1}, {string: 6, fret: 0, off: -0.1}]\n";
    static const zero_fret_case cases[] = {
        {"[0.06, 0.06, 0.06, 0.07, 0.08, 0.08]", sound, false},
        {"[0.06, 0.06, 0.06, 0.07, 0.01, 0.01]", sound, false},
        {"[0.06, 0.06, 0.06, 0.07, 0.01, 0.01]", heard, true},
        {"[0.06, 0.06, 0.06, 0.07, 0.01, 0.01]", worn, true},
        {"[0.06, 0.06, 0.06, 0.07, 0, 0]", sound, true},
        {"[0.06, 0.06, 0.06, 0.07, 0, 0]", "", false}, /* fret 1 may stand proud */
    };
    sil_plan *plan = malloc(sizeof *plan);
    for (size_t k = 0; k < sizeof cases / sizeof *cases; k++) {
        plan_zero_fret_case(&cases[k], plan);
        assert_int_equal(plan->bench.zero_fret, true);
        assert_false(plan_zero_fret_low(plan, 0));
        assert_int_equal(plan_zero_fret_low(plan, 5), cases[k].low);
        assert_int_equal(sil_known(plan->zero_fret.over), cases[k].low);
        assert_int_equal(sil_withheld_by(&plan->saddle_withheld, SIL_ZERO_FRET_LOW), cases[k].low);
        bool raised = false;
        for (int s = 0; s < plan->step_count; s++) {
            raised = raised || plan->steps[s].act == SIL_ACT_RAISE_ZERO_FRET;
        }
        assert_int_equal(raised, cases[k].low);
        assert_true(plan->done == (!cases[k].low && k < 2));
    }
    free(plan);
}

/* The new crown, put there, leaves the target gap under the string that asks for most and no less under
 * any other. */
static void a_new_zero_fret_leaves_the_gap(void **state)
{
    (void)state;
    static const zero_fret_case low = {"[0.06, 0.06, 0.06, 0.07, 0, 0]", "    frets: sound\n",
                                       true};
    sil_plan *plan = malloc(sizeof *plan);
    plan_zero_fret_case(&low, plan);
    const sil_board *board = &plan->bench.board;
    sil_fit fit = plan->stages.fit[SIL_NOW];
    double least = 1.0;
    for (int i = 0; i < 6; i++) {
        double line = -sil_sag(board, fit.bend, board->nut_x[i]) - board->drop[i][0];
        fit.nut_height[i] = line + plan->zero_fret.over;
        double gap = sil_first_gap(board, &fit, i, SIL_HOLD_3);
        least = fmin(least, gap - plan->bench.targets.first[i].aim);
    }
    near(least, 0.0, 1e-9);
    near(plan->zero_fret.height, 1.1 + plan->zero_fret.over, 1e-12);
    /* By hand, for string 6 at 0.08 and an even bow: 0.08/(1 - s) - K x_1 x_3, as under "A new nut". */
    near(plan->zero_fret.over, 0.08 * 1.54503 - 0.0218, 0.003);
    free(plan);
}

/* A gap and a crown that tell of different heights: both are read again. */
static void a_zero_fret_and_its_gap_must_agree(void **state)
{
    (void)state;
    static const zero_fret_case apart = {
        "[0.06, 0.06, 0.06, 0.07, 0.08, 0.08]",
        "    frets: [{string: 5, fret: 0, off: 0.3}, {string: 6, fret: 0, off: 0.1}]\n", false};
    sil_plan *plan = malloc(sizeof *plan);
    plan_zero_fret_case(&apart, plan);
    assert_true(plan_gaps_apart(plan, 4));
    assert_false(plan_gaps_apart(plan, 5) || plan_gaps_apart(plan, 0));
    assert_true(sil_withheld_by(&plan->nut_withheld, SIL_READINGS_DISAGREE));
    free(plan);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_zero_fret_is_no_slot_to_file),
        cmocka_unit_test(a_zero_fret_too_low_is_work_to_do),
        cmocka_unit_test(a_new_zero_fret_leaves_the_gap),
        cmocka_unit_test(a_zero_fret_and_its_gap_must_agree),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
