/* SPDX-License-Identifier: MIT */
/* Numbers written with all their digits are read back unchanged by the C library. */
#include <sillet/core/units.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "near.h"

/* From the first that is no nought on; of a figure without exponent. */
static int significant_digits(const char *figure)
{
    int count = 0;
    for (; *figure && *figure != 'e'; figure++) {
        bool digit = *figure >= '0' && *figure <= '9';
        count += digit && (count > 0 || *figure != '0');
    }
    return count;
}

static void figures_read_back_as_themselves(void **state)
{
    (void)state;
    uint64_t seed = 5;
    char figure[SIL_NUMBER_FULL_MAX];
    for (int k = 0; k < 200000; k++) {
        double size = ldexp(uniform(&seed, 1.0, 2.0), (int)uniform(&seed, -40.0, 60.0));
        double value = k % 2 ? size : -size;
        size_t length = sil_number_write_full(figure, value);
        assert_true(length < sizeof figure && figure[length] == '\0');
        assert_true(strtod(figure, NULL) == value);
        assert_true(significant_digits(figure) <= 17 || size >= 1e15);
    }
}

static void short_figures_stay_short(void **state)
{
    (void)state;
    static const struct {
        double value;
        const char *figure;
    } rows[] = {{0.05, "0.05"},
                {-0.0, "0"},
                {645.0, "645"},
                {-1.75, "-1.75"},
                {0.1, "0.1"},
                {1e14, "100000000000000"},
                {1e-6, "0.000001"},
                {1e-8, "0.00000001"},
                {1e-9, "0.0000000010000000000000001"}, /* past the powers that are exact */
                {39.85, "39.85"},
                {0.1 + 0.2, "0.30000000000000004"},
                {1.0, "1"},
                {1e300, "1.0000000000000001e+300"}};
    char figure[SIL_NUMBER_FULL_MAX];
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        sil_number_write_full(figure, rows[k].value);
        assert_string_equal(figure, rows[k].figure);
    }
}

/* Figures of up to ten decimals and fifteen digits are written with those digits and no others. */
static void ten_decimals_are_written_as_they_are(void **state)
{
    (void)state;
    uint64_t seed = 11;
    for (int k = 0; k < 200000; k++) {
        char figure[SIL_NUMBER_FULL_MAX], wanted[SIL_NUMBER_FULL_MAX];
        int decimals = (int)uniform(&seed, 1.0, 11.0);
        double size = pow(10.0, uniform(&seed, -3.0, 5.0)), scale = pow(10.0, decimals);
        int length = snprintf(wanted, sizeof wanted, "%.*f", decimals, round(size * scale) / scale);
        while (wanted[length - 1] == '0') {
            wanted[--length] = '\0';
        }
        if (wanted[length - 1] == '.') {
            wanted[--length] = '\0';
        }
        sil_number_write_full(figure, round(size * scale) / scale);
        assert_string_equal(figure, wanted);
    }
}

/* The noise of floating point is left out: what is written is what the rounded figure is in full. */
static void measured_figures_are_rounded_first(void **state)
{
    (void)state;
    uint64_t seed = 17;
    for (int k = 0; k < 200000; k++) {
        char figure[SIL_NUMBER_FULL_MAX], wanted[SIL_NUMBER_FULL_MAX];
        double size = pow(10.0, uniform(&seed, -14.0, 7.0));
        double value = k % 3 == 0 ? round(size) : k % 3 == 1 ? size : -size;
        double scale = fabs(value) < 1e-3 ? 1e12 : 1e10;
        double rounded = fabs(value) < 1e5 ? round(value * scale) / scale : value;
        size_t length = sil_number_write_measured(figure, value);
        sil_number_write_full(wanted, rounded);
        assert_string_equal(figure, wanted);
        assert_true(length == strlen(figure) && strtod(figure, NULL) == rounded);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(figures_read_back_as_themselves),
        cmocka_unit_test(short_figures_stay_short),
        cmocka_unit_test(ten_decimals_are_written_as_they_are),
        cmocka_unit_test(measured_figures_are_rounded_first),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
