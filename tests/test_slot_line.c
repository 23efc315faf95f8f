/* SPDX-License-Identifier: MIT */
/* The best straight line for a saddle slot. */
#include <sillet/sillet.h>

#include "instrument.h"

static void the_slot_s_line_is_nearest_to_the_farthest_point(void **state)
{
    (void)state;
    uint64_t seed = 4;
    double z[6];
    double setback[6];
    sil_saddle_centres(&(sil_courses){6, each_a_course, 0.0}, 54.0, z);
    for (int trial = 0; trial < 40; trial++) {
        for (int i = 0; i < 6; i++) {
            setback[i] = uniform(&seed, 1.0, 5.0);
        }
        sil_line line = sil_slot_line(6, z, setback);
        double worst = 0.0;
        for (int i = 0; i < 6; i++) {
            worst = fmax(worst, fabs(setback[i] - sil_line_at(line, z[i])));
        }
        for (int a = 0; a <= 100; a++) {
            for (int b = 0; b <= 100; b++) {
                double treble = a * 0.06;
                double bass = b * 0.06;
                sil_line other = {(treble + bass) / 2.0, (treble - bass) / 54.0};
                double off = 0.0;
                for (int i = 0; i < 6; i++) {
                    off = fmax(off, fabs(setback[i] - sil_line_at(other, z[i])));
                }
                assert_true(off >= worst - 1e-12);
            }
        }
    }
    assert_true(sil_slot_line(1, z, setback).b0 == setback[0]); /* one string: square across */
    assert_true(sil_slot_line(1, z, setback).b1 == 0.0);
    for (int i = 0; i < 6; i++) {
        double kept = setback[i];
        setback[i] = SIL_UNKNOWN;
        assert_false(sil_known(sil_slot_line(6, z, setback).b0));
        setback[i] = kept;
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_slot_s_line_is_nearest_to_the_farthest_point),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
