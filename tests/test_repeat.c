/* SPDX-License-Identifier: MIT */
/* What a tool proves to read to, from pairs of readings. */
#include <sillet/core/repeat.h>
#include <sillet/core/units.h>
#include <stdlib.h>
#include <string.h>

#include "../src/brief/quick.h"
#include "near.h"

enum { MOST = 4000 };

/* Differences of two readings, each off by up to half. */
static void make(double *difference, int count, double half, uint64_t *seed)
{
    for (int i = 0; i < count; i++) {
        difference[i] = uniform(seed, -half, half) - uniform(seed, -half, half);
    }
}

/* A rectangle of half width a has the standard deviation a/sqrt 3 (GUM, 4.3.7). */
static void a_known_error_is_found(void **state)
{
    (void)state;
    static double difference[MOST];
    uint64_t seed = 3;
    for (double half = 0.01; half < 0.3; half *= 2.0) {
        sil_repeat repeat;
        make(difference, MOST, half, &seed);
        sil_repeat_find(difference, MOST, 0.0, 0.0, &repeat);
        near(repeat.u * sqrt(3.0) / half, 1.0, 0.05);
        assert_int_equal(repeat.dropped, 0);
    }
}

static void strays_are_dropped(void **state)
{
    (void)state;
    double difference[40];
    uint64_t seed = 4;
    sil_repeat with, without;
    make(difference, 38, 0.05, &seed);
    sil_repeat_find(difference, 38, 0.0, 0.0, &without);
    difference[38] = 0.9;
    difference[39] = -1.1;
    sil_repeat_find(difference, 40, 0.0, 0.0, &with);
    assert_int_equal(without.dropped, 0);
    assert_int_equal(with.dropped, 2);
    near(with.u, without.u, 1e-12);
}

/* By hand: 12 and 13 values, the last of them just within or past the limit. */
static void the_median_deviation_is_that_of_the_middle(void **state)
{
    (void)state;
    /* median 0, deviations 1 1 2 2 3 3 4 4 5 5 6 and the last: 4 x 1.4826 x 3.5 = 20.76 */
    double even[12] = {1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -20.7};
    /* median 0, deviations 0 1 1 2 2 3 3 4 4 5 5 6 and the last: 4 x 1.4826 x 3 = 17.79 */
    double odd[13] = {0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -17.7};
    sil_repeat repeat;
    sil_repeat_find(even, 12, 0.0, 0.0, &repeat);
    assert_int_equal(repeat.dropped, 0);
    even[0] = -20.8; /* they are sorted now */
    sil_repeat_find(even, 12, 0.0, 0.0, &repeat);
    assert_int_equal(repeat.dropped, 1);
    near(repeat.u, sqrt((110.0 + 36.0 - 36.0 / 11.0) / 10.0 / 2.0), 1e-12); /* of the other 11 */
    sil_repeat_find(odd, 13, 0.0, 0.0, &repeat);
    assert_int_equal(repeat.dropped, 0);
    odd[0] = -17.9;
    sil_repeat_find(odd, 13, 0.0, 0.0, &repeat);
    assert_int_equal(repeat.dropped, 1);
}

static void no_tool_is_finer_than_its_graduation_or_half_of_what_is_stated(void **state)
{
    (void)state;
    double difference[20] = {0.0};
    sil_repeat repeat;
    sil_repeat_find(difference, 20, 0.05, 0.0, &repeat);
    near(repeat.u, 0.05 / sqrt(12.0), 1e-15);
    sil_repeat_find(difference, 20, 0.05, 0.1, &repeat);
    near(repeat.u, 0.05, 1e-15);
    difference[0] = 0.05; /* one step off among zeros is no stray */
    sil_repeat_find(difference, 20, 0.05, 0.0, &repeat);
    assert_int_equal(repeat.dropped, 0);
    difference[19] = 0.1; /* two steps are one: 4 x 0.05/sqrt 6 = 0.082 */
    sil_repeat_find(difference, 20, 0.05, 0.0, &repeat);
    assert_int_equal(repeat.dropped, 1);
}

static void it_takes_twelve(void **state)
{
    (void)state;
    double difference[12] = {0.1, -0.1, 0.2};
    sil_repeat repeat;
    for (int count = 0; count < SIL_PAIRS_LEAST; count++) {
        sil_repeat_find(difference, count, 0.0, 0.1, &repeat);
        assert_false(sil_known(repeat.u));
    }
    sil_repeat_find(difference, SIL_PAIRS_LEAST, 0.0, 0.1, &repeat);
    assert_true(sil_known(repeat.u));
}

static void the_graduation_is_the_largest_step_of_nine_in_ten(void **state)
{
    (void)state;
    double coarse[20], inches[20], fine[20], fractions[20];
    for (int i = 0; i < 20; i++) {
        coarse[i] = 1.5 + 0.05 * i;
        inches[i] = (60 + i) * 0.001 * 25.4;
        fractions[i] = (5 + i) / 64.0 * 25.4;
        fine[i] = 0.05 + 0.01 * i;
    }
    near(sil_readings_step(coarse, 20), 0.05, 0.0);
    near(sil_readings_step(fine, 20), 0.01, 0.0);
    near(sil_readings_step(inches, 20), 0.0254, 0.0);
    near(sil_readings_step(fractions, 20), 25.4 / 64.0, 0.0);
    coarse[3] += 0.01; /* two of twenty may be between */
    coarse[5] += 0.02;
    near(sil_readings_step(coarse, 20), 0.05, 0.0);
    coarse[7] += 0.01;
    near(sil_readings_step(coarse, 20), 0.01, 0.0);
    fine[1] = 0.1234567;
    fine[2] = 0.2234567;
    fine[4] = 0.3234567;
    near(sil_readings_step(fine, 20), 0.0, 0.0);
    near(sil_readings_step(fine, 0), 0.0, 0.0);
}

/* Twelve pairs that differ by turns by 0.1 and -0.1: their standard deviation is 0.1 sqrt(12/11), so one
 * reading is good to sqrt 3 / sqrt 2 of it. */
static const char *words_for(int count, double stated, brief_proof *proof)
{
    double difference[12], readings[24];
    brief_pairs pairs[SIL_TOOLS] = {{NULL}};
    for (int i = 0; i < 12; i++) {
        difference[i] = i % 2 == 0 ? 0.1 : -0.1;
        readings[2 * i] = i < 7 ? 1.5 + 0.05 * i : 1.5 + 0.01 * i;
        readings[2 * i + 1] = readings[2 * i] + difference[i];
    }
    pairs[SIL_TOOL_ACTION] = (brief_pairs){.difference = difference,
                                           .readings = readings,
                                           .count = count,
                                           .stated_low = stated,
                                           .stated_high = stated,
                                           .stated_squares = count * stated * stated};
    brief_prove(pairs, 3, 5, SIL_MM, proof);
    assert_non_null(proof->words);
    return proof->words;
}

static bool says(const char *words, const char *what)
{
    char one_line[4000];
    size_t size = 0;
    for (const char *c = words; *c != '\0' && size + 1 < sizeof one_line; c++) {
        bool blank = *c == ' ' || *c == '\n';
        if (!blank || (size > 0 && one_line[size - 1] != ' ')) {
            one_line[size++] = blank ? ' ' : *c;
        }
    }
    one_line[size] = '\0';
    return strstr(one_line, what) != NULL;
}

/* A figure from twelve pairs is itself uncertain by 1 part in sqrt 22; less than twice that is no
 * difference. */
static void what_is_found_is_held_against_what_is_stated(void **state)
{
    (void)state;
    double half = 0.1 * sqrt(12.0 / 11.0) * sqrt(1.5), sure = 2.0 / sqrt(22.0);
    const double stated[] = {half, half / (1.0 + 0.95 * sure), half / (1.0 + 1.05 * sure),
                             half / (1.0 - 0.95 * sure), half / (1.0 - 1.05 * sure)};
    static const char *const told[] = {"which agrees", "which agrees", "which is too little",
                                       "which agrees", "which is more than need be"};
    for (int k = 0; k < 5; k++) {
        brief_proof proof;
        assert_true(says(words_for(12, stated[k], &proof), told[k]));
        near(proof.tool[SIL_TOOL_ACTION].half_width, half, 1e-9);
        near(proof.tool[SIL_TOOL_ACTION].graduation, 0.01, 0.0);
        brief_proof_free(&proof);
    }
    brief_proof proof;
    assert_true(says(words_for(1, 0.1, &proof), "has 1 pair of readings; 11 more are needed."));
    brief_proof_free(&proof);
    assert_true(says(words_for(11, 0.1, &proof), "has 11 pairs of readings; 1 more is needed."));
    brief_proof_free(&proof);
    assert_true(says(words_for(0, 0.1, &proof), "has no pair of readings yet; 12 are needed."));
    brief_proof_free(&proof);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_known_error_is_found),
        cmocka_unit_test(strays_are_dropped),
        cmocka_unit_test(the_median_deviation_is_that_of_the_middle),
        cmocka_unit_test(no_tool_is_finer_than_its_graduation_or_half_of_what_is_stated),
        cmocka_unit_test(it_takes_twelve),
        cmocka_unit_test(what_is_found_is_held_against_what_is_stated),
        cmocka_unit_test(the_graduation_is_the_largest_step_of_nine_in_ten),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
