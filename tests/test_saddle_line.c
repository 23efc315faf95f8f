/* SPDX-License-Identifier: MIT */
/* The straight line to sand off a saddle's bottom. */
#include "instrument.h"

/* Two caps and the line through them, by hand; and a third that forces the line down. */
static void the_line_lies_under_every_cap(void **state)
{
    (void)state;
    double z[] = {20.0, 0.0, -20.0};
    bool all[] = {true, true, true};
    double straight[] = {0.6, 0.5, 0.4};
    sil_line line = sil_saddle_line(3, z, straight, all, 30.0, NULL);
    near(line.b0, 0.5, 1e-12);
    near(line.b1, 0.005, 1e-12);
    double sunk[] = {0.6, 0.3, 0.4};
    /* Under 0.3 in the middle the sum of three is at most 0.9 whatever the slope: the least slope
     * that also keeps under 0.4 and 0.6 is none. */
    line = sil_saddle_line(3, z, sunk, all, 30.0, NULL);
    near(line.b0, 0.3, 1e-12);
    near(line.b1, 0.0, 1e-12);
}

static void a_line_takes_nothing_less_than_nothing(void **state)
{
    (void)state;
    double z[] = {20.0, -20.0};
    double caps[] = {1.0, 0.0};
    bool wanted[] = {true, false};
    sil_line line = sil_saddle_line(2, z, caps, wanted, 30.0, NULL);
    /* It turns about the string that may lose nothing only as far as its end allows: not at all. */
    near(sil_line_at(line, -30.0), 0.0, 1e-12);
    near(sil_line_at(line, -20.0), 0.0, 1e-12);
    caps[1] = 0.2;
    line = sil_saddle_line(2, z, caps, wanted, 30.0, NULL);
    near(sil_line_at(line, -30.0), 0.0, 1e-12);
    near(sil_line_at(line, 20.0), 1.0, 1e-12);
    sil_line parallel = sil_saddle_line(1, z, caps, wanted, 30.0, NULL);
    near(parallel.b0, 1.0, 0.0);
    near(parallel.b1, 0.0, 0.0);
    caps[0] = 0.4;
    near(sil_saddle_line(1, z, caps, wanted, 30.0, NULL).b0, 0.4, 0.0);
    caps[0] = -0.1;
    near(sil_saddle_line(1, z, caps, wanted, 30.0, NULL).b0, 0.0, 0.0);
}

/* Random caps, and every other time a line not to go past, against a search over lines through a
 * fine mesh of both ends. */
static void no_line_of_a_mesh_beats_the_corner(void **state)
{
    (void)state;
    uint64_t seed = 7;
    for (int trial = 0; trial < 60; trial++) {
        double z[SIL_STRINGS_MAX], cap[SIL_STRINGS_MAX];
        bool wanted[SIL_STRINGS_MAX];
        int count = trial % 3 == 0 ? SIL_STRINGS_MAX : 6;
        sil_saddle_centres(&(sil_courses){count, each_a_course, 0.0}, 54.0, z);
        for (int i = 0; i < count; i++) {
            wanted[i] = i == 0 || uniform(&seed, 0.0, 1.0) < 0.7;
            cap[i] = uniform(&seed, 0.0, 1.0);
        }
        double treble = uniform(&seed, 0.0, 1.0), bass = uniform(&seed, 0.0, 1.0);
        sil_line most = {(treble + bass) / 2.0, (treble - bass) / 72.0};
        bool bound = trial % 2 == 1;
        sil_line line = sil_saddle_line(count, z, cap, wanted, 36.0, bound ? &most : NULL);
        assert_true(!bound || (sil_line_at(line, 36.0) <= treble + 1e-9 &&
                               sil_line_at(line, -36.0) <= bass + 1e-9));
        double sum = 0.0;
        for (int i = 0; i < count; i++) {
            assert_true(sil_line_at(line, z[i]) <= cap[i] + 1e-9);
            sum += wanted[i] ? sil_line_at(line, z[i]) : 0.0;
        }
        for (int a = 0; a <= (bound ? treble * 100.0 : 120.0); a++) {
            for (int b = 0; b <= (bound ? bass * 100.0 : 120.0); b++) {
                sil_line other = {(a + b) / 200.0, (a - b) / 100.0 / 72.0};
                double gain = 0.0;
                bool fits = true;
                for (int i = 0; i < count; i++) {
                    fits = fits && sil_line_at(other, z[i]) <= cap[i];
                    gain += wanted[i] ? sil_line_at(other, z[i]) : 0.0;
                }
                assert_false(fits && gain > sum + 1e-9);
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_line_lies_under_every_cap),
        cmocka_unit_test(a_line_takes_nothing_less_than_nothing),
        cmocka_unit_test(no_line_of_a_mesh_beats_the_corner),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
