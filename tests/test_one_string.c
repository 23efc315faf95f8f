/* SPDX-License-Identifier: MIT */
/* An instrument of one string: it has no neighbours, and its saddle no other end. */
#include "instrument.h"

static void make_one(sil_bench *bench, sil_fit *truth, sil_saddle_given *make)
{
    make_instrument(bench, truth);
    bench->board.strings = 1;
    *make = (sil_saddle_given){.working = SIL_WORKING_BASE,
                               .length = 12.0,
                               .slot_depth = 5.0,
                               .pickup = 0.0,
                               .most_shim = 3.0,
                               .shim_step = 0.1,
                               .present_treble = 9.0,
                               .present_bass = SIL_UNKNOWN,
                               .bridge_top_treble = SIL_UNKNOWN,
                               .bridge_top_bass = SIL_UNKNOWN,
                               .stands_out = {SIL_UNKNOWN}};
}

/* Among several, one low string is a notch worn in; alone it is the saddle that is low. */
static void a_low_string_is_shimmed(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    sil_saddle_given make;
    sil_stages stages;
    sil_saddle_work saddle;
    make_one(&bench, &truth, &make);
    truth.saddle_height[0] -= 1.2;
    read_instrument(&bench, &truth);
    sil_stages_run(&bench, &stages);
    sil_saddle_cut(&bench, &make, &stages, &saddle);
    near(saddle.present[0], 9.0, 1e-12); /* by its caliper, which has no other end to be read at */
    assert_int_equal(saddle.remedy, SIL_SADDLE_SHIM);
    assert_true(saddle.shim >= -stages.lower[0] && saddle.shim < -stages.lower[0] + 0.1);
}

/* What is read at the other end is read at no string, and decides nothing. */
static void the_saddle_has_one_end(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit truth;
    sil_saddle_given make;
    sil_stages stages;
    sil_saddle_work saddle;
    make_one(&bench, &truth, &make);
    read_instrument(&bench, &truth);
    sil_stages_run(&bench, &stages);
    make.present_bass = 4.0;
    make.bridge_top_bass = 0.0;
    sil_saddle_present(&bench, &make, &stages, &saddle);
    assert_false(saddle.present_disagree);
    near(saddle.present[0], 9.0, 1e-12);
    bench.board.strings = 2; /* and where there is another, it does */
    sil_saddle_present(&bench, &make, &stages, &saddle);
    assert_true(saddle.present_disagree);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_low_string_is_shimmed),
        cmocka_unit_test(the_saddle_has_one_end),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
