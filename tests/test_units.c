/* SPDX-License-Identifier: MIT */
/* Lengths and figures as a workshop writes them. Units are checked by definition: the inch is
 * 25.4 mm, the pound 0.45359237 kg, standard gravity 9.80665 m/s2, all exactly. */
#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <sillet/core/units.h>

#include "near.h"

typedef struct reading_row {
    const char *text;
    sil_measure measure;
    sil_unit bare;
    int status;
    double value;
} reading_row;

static const reading_row readings[] = {
    {"2.5", SIL_LENGTH, SIL_MM, 0, 2.5},
    {"2.5", SIL_LENGTH, SIL_INCH, 0, 2.5 * 25.4},
    {"  2.5 mm\t", SIL_LENGTH, SIL_INCH, 0, 2.5},
    {"2,5 mm", SIL_LENGTH, SIL_MM, 0, 2.5},
    {"+.5mm", SIL_LENGTH, SIL_MM, 0, 0.5},
    {"5.", SIL_LENGTH, SIL_MM, 0, 5.0},
    {"-0.10", SIL_LENGTH, SIL_MM, 0, -0.1},
    {"1e-1 mm", SIL_LENGTH, SIL_MM, 0, 0.1},
    {"2E+1 mm", SIL_LENGTH, SIL_MM, 0, 20.0},
    {"2.5e1", SIL_LENGTH, SIL_MM, 0, 25.0},
    {"0e400 mm", SIL_LENGTH, SIL_MM, 0, 0.0},
    {"1e-999 mm", SIL_LENGTH, SIL_MM, 0, 0.0},
    {"2e+ mm", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"2e", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"1e9999999 mm", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"0.012 in", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {".012\"", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {".012\xE2\x80\xB3", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {"12 thou", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {"12 mil", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {"64.5 cm", SIL_LENGTH, SIL_MM, 0, 645.0},
    {"0.645 m", SIL_LENGTH, SIL_MM, 0, 645.0},
    {"1 inch", SIL_LENGTH, SIL_MM, 0, 25.4},
    {"5/64 in", SIL_LENGTH, SIL_MM, 0, 1.984375},
    {"5/64", SIL_LENGTH, SIL_INCH, 0, 1.984375},
    {"1 3/16 in", SIL_LENGTH, SIL_MM, 0, 30.1625},
    {"1-3/16\"", SIL_LENGTH, SIL_MM, 0, 30.1625},
    {"-1 1/2 in", SIL_LENGTH, SIL_MM, 0, -38.1},
    {"2.5mm", SIL_LENGTH, SIL_INCH, 0, 2.5},
    {"2,5", SIL_LENGTH, SIL_MM, 0, 2.5},
    {".012in", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {".012 in.", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {"0.012 IN", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {"0.012''", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {"0.012\xE2\x80\x9D", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {"12thou", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {"12 thousandths", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {"12 mils", SIL_LENGTH, SIL_MM, 0, 0.3048},
    {"1/2 in", SIL_LENGTH, SIL_MM, 0, 12.7},
    {"100000000/200000000 in", SIL_LENGTH, SIL_MM, 0, 12.7},
    {"1000000000/2000000000 in", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"1/2 thou", SIL_LENGTH, SIL_MM, 0, 0.0127},
    {"5/64ths in", SIL_LENGTH, SIL_MM, 0, 1.984375},
    {"3/32nds", SIL_LENGTH, SIL_INCH, 0, 2.38125},
    {"5\xE2\x81\x84"
     "64 in",
     SIL_LENGTH, SIL_MM, 0, 1.984375},                 /* fraction slash */
    {"\xE2\x85\x9B in", SIL_LENGTH, SIL_MM, 0, 3.175}, /* one-letter eighth */
    {"25\xC2\xBD\"", SIL_LENGTH, SIL_MM, 0, 647.7},    /* and half */
    {"1 \xC2\xBE", SIL_LENGTH, SIL_INCH, 0, 44.45},
    {"2,5\xC2\xA0mm\xC2\xA0", SIL_LENGTH, SIL_INCH, 0, 2.5}, /* no-break space */
    {"2,5\xE2\x80\xAFmm", SIL_LENGTH, SIL_INCH, 0, 2.5},     /* narrow one */
    {"\xE2\x88\x92"
     "0.08",
     SIL_LENGTH, SIL_MM, 0, -0.08}, /* true minus */
    {"14 deg", SIL_ANGLE, SIL_MM, 0, 14.0},
    {"14\xC2\xB0", SIL_ANGLE, SIL_MM, 0, 14.0},
    {"1 rad", SIL_ANGLE, SIL_MM, 0, 57.29577951308232},
    {"0.8 N", SIL_FORCE, SIL_MM, 0, 0.8},
    {"800 mN", SIL_FORCE, SIL_MM, 0, 0.8},
    {"1 lbf", SIL_FORCE, SIL_MM, 0, 0.45359237 * 9.80665},
    {"8.33 GPa", SIL_MODULUS, SIL_MM, 0, 8.33},
    {"8330 MPa", SIL_MODULUS, SIL_MM, 0, 8.33},
    {"1000000 psi", SIL_MODULUS, SIL_MM, 0, 0.45359237 * 9.80665 / 0.0254 / 0.0254 * 1e-3},
    {"0.374 g/m", SIL_UNIT_MASS, SIL_MM, 0, 0.374},
    {"0.000374 kg/m", SIL_UNIT_MASS, SIL_MM, 0, 0.374},
    {"0.0001 lb/in", SIL_UNIT_MASS, SIL_MM, 0, 0.0001 * 453.59237 / 0.0254},
    {"7850 kg/m3", SIL_DENSITY, SIL_MM, 0, 7850.0},
    {"7.85 g/cm3", SIL_DENSITY, SIL_MM, 0, 7850.0},
    {"7850 kg/m\xC2\xB3", SIL_DENSITY, SIL_MM, 0, 7850.0},
    {"7.85 g/cm\xC2\xB3", SIL_DENSITY, SIL_MM, 0, 7850.0},
    {"206000000000 Pa", SIL_MODULUS, SIL_MM, 0, 206.0},
    {"12 inches", SIL_LENGTH, SIL_MM, 0, 304.8},
    {"20 C", SIL_TEMPERATURE, SIL_MM, 0, 20.0},
    {"68 \xC2\xB0"
     "F",
     SIL_TEMPERATURE, SIL_MM, 0, 20.0},
    {"47 %", SIL_HUMIDITY, SIL_MM, 0, 47.0},
    {"68 F", SIL_TEMPERATURE, SIL_MM, 0, 20.0},
    {"20 \xC2\xB0"
     "C",
     SIL_TEMPERATURE, SIL_MM, 0, 20.0},
    {"329.6", SIL_FREQUENCY, SIL_MM, 0, 329.6},
    {"329.6 Hz", SIL_FREQUENCY, SIL_MM, 0, 329.6},
    {"0.5", SIL_RATIO, SIL_INCH, 0, 0.5},
    {"14", SIL_ANGLE, SIL_MM, SIL_NO_UNIT, 0},
    {"0.6", SIL_FORCE, SIL_MM, SIL_NO_UNIT, 0},
    {"47", SIL_HUMIDITY, SIL_MM, SIL_NO_UNIT, 0},
    {"206", SIL_MODULUS, SIL_MM, SIL_NO_UNIT, 0},
    {"5/64", SIL_LENGTH, SIL_MM, SIL_NO_UNIT, 0},
    {"645 kg", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"5/64 mm", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"0.5 mm", SIL_RATIO, SIL_MM, SIL_OTHER_UNIT, 0},
    {"14 DEG", SIL_ANGLE, SIL_MM, SIL_OTHER_UNIT, 0},
    {"0x10", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    /* A point behind the first letter is the unit's own, whichever letter. */
    {"1,5 a.", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"1,5 z.", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"1,5 A.", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"1,5 Z.", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"mm", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"-", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {".", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"nan", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {".inf", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"inf", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"1e999", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"1e308", SIL_LENGTH, SIL_INCH, SIL_NOT_A_NUMBER, 0},
    {"1e308 m", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"1,234,5", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"1.2.3", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"1,2.3", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"2 5", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"1/0 in", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"1 19/16 in", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"1/2/3 in", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"2.3-2.5", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"5/64 cm", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"\xC2\xBD mm", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"\xC2\xBD", SIL_LENGTH, SIL_MM, SIL_NO_UNIT, 0},
    {"~2.5 mm", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"--2 mm", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"12 thou in", SIL_LENGTH, SIL_MM, SIL_OTHER_UNIT, 0},
    {"a bit", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
    {"1.5/64 in", SIL_LENGTH, SIL_MM, SIL_NOT_A_NUMBER, 0},
};

/* From a block that ends with the text: no byte behind it is read. */
static int read_alone(const reading_row *row, double *value)
{
    size_t size = strlen(row->text);
    char *alone = malloc(size ? size : 1);
    assert_non_null(alone);
    memcpy(alone, row->text, size);
    sil_status status = sil_quantity_read(alone, size, row->measure, row->bare, value);
    free(alone);
    return status;
}

static void quantities_are_read_as_a_workshop_writes_them(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof readings / sizeof readings[0]; i++) {
        const reading_row *row = &readings[i];
        double value = -77.0;
        int status = read_alone(row, &value);
        if (status != row->status) {
            fail_msg("\"%s\": status %d, wanted %d", row->text, status, row->status);
        }
        double wanted = row->status == 0 ? row->value : -77.0; /* untouched on error */
        near_at(__FILE__, __LINE__, row->text, value, wanted, 4e-16 * fabs(wanted));
    }
}

/* Up to 15 digits every figure is the double nearest to it, which is what strtod gives. */
static void fifteen_digits_are_read_exactly(void **state)
{
    (void)state;
    uint64_t seed = 7;
    for (int i = 0; i < 100000; i++) {
        char text[64];
        int digits = 1 + (int)uniform(&seed, 0, 15);
        double whole = floor(uniform(&seed, 0, 1) * pow(10.0, digits));
        int shift = (int)uniform(&seed, -22, 8);
        snprintf(text, sizeof text, "%.0fe%d", whole, shift);
        double value = 0.0;
        assert_int_equal(sil_quantity_read(text, strlen(text), SIL_RATIO, SIL_MM, &value), 0);
        near_at(__FILE__, __LINE__, text, value, strtod(text, NULL), 0.0);
    }
}

static void long_figures_are_read_to_one_last_place(void **state)
{
    (void)state;
    uint64_t seed = 11;
    for (int i = 0; i < 20000; i++) {
        char text[96];
        const char *noughts = i % 2 ? "" : "0000000000000000000000000"; /* more than are kept */
        snprintf(text, sizeof text, "%s%.17f%08.0fe%d", noughts, uniform(&seed, 0, 1000),
                 uniform(&seed, 0, 99999999), (int)uniform(&seed, -200, 200));
        double value = 0.0, wanted = strtod(text, NULL);
        assert_int_equal(sil_quantity_read(text, strlen(text), SIL_RATIO, SIL_MM, &value), 0);
        near_at(__FILE__, __LINE__, text, value, wanted,
                fabs(nextafter(wanted, (double)INFINITY) - wanted));
    }
}

typedef struct writing_row {
    double value;
    int decimals;
    const char *text;
} writing_row;

static const writing_row writings[] = {
    {2.5, 2, "2.50"},
    {-2.5, 2, "-2.50"},
    {0.0, 0, "0"},
    {-0.0, 2, "0.00"},
    {-0.004, 2, "0.00"},
    {-0.006, 2, "-0.01"},
    {0.5, 0, "1"}, /* half away from zero, where the half is exact */
    {1.5, 0, "2"},
    {2.5, 0, "3"},
    {-2.5, 0, "-3"},
    {0.125, 2, "0.13"},
    {2.675, 2, "2.67"}, /* the double is just under the half */
    {0.9999, 3, "1.000"},
    {1e9, 9, "1000000000.000000000"},
    {123456789.123456789, 9, "123456789.123456791"},
    {2251799813685249.5, 1, "2251799813685249.5"},
    {1e22, 0, "10000000000000000000000"},
    {-1e18, 2, "-1000000000000000000.00"},
    {5e-324, 9, "0.000000000"},
};

static void figures_are_written_rounded_and_plain(void **state)
{
    (void)state;
    char text[400];
    for (size_t i = 0; i < sizeof writings / sizeof writings[0]; i++) {
        const writing_row *row = &writings[i];
        size_t length = sil_number_write(text, sizeof text, row->value, row->decimals);
        assert_string_equal(text, row->text);
        assert_int_equal(length, strlen(row->text));
    }
    double none[] = {SIL_UNKNOWN, (double)INFINITY, -(double)INFINITY};
    for (int i = 0; i < 3; i++) {
        assert_int_equal(sil_number_write(text, sizeof text, none[i], 3), 1);
        assert_string_equal(text, "-");
    }
}

/* printf rounds the exact double too: only exact halves differ, and figures of this size have next
 * to none. */
static void figures_agree_with_printf(void **state)
{
    (void)state;
    uint64_t seed = 3;
    for (int i = 0; i < 100000; i++) {
        double value = uniform(&seed, -1, 1) * pow(10.0, uniform(&seed, -12, 9));
        int decimals = (int)uniform(&seed, 0, 10);
        char wanted[64], text[64];
        snprintf(wanted, sizeof wanted, "%.*f", decimals, value);
        bool nought = strspn(wanted, "-0.") == strlen(wanted);
        sil_number_write(text, sizeof text, value, decimals);
        assert_string_equal(text, nought && wanted[0] == '-' ? wanted + 1 : wanted);
        bool small = fabs(value) * pow(10.0, decimals) < 0x1p52; /* else it is kept as it is */
        assert_true(!small || sil_number_shown(value, decimals) == strtod(wanted, NULL));
    }
}

static void a_text_too_small_is_left_empty(void **state)
{
    (void)state;
    char text[8] = "before";
    assert_int_equal(sil_number_write(text, 5, -12.34, 2), 6);
    assert_string_equal(text, "");
    assert_int_equal(sil_number_write(text, 7, -12.34, 2), 6);
    assert_string_equal(text, "-12.34");
    assert_int_equal(sil_number_write(text, 6, -12.34, 2), 6);
    assert_string_equal(text, "");
    assert_int_equal(sil_number_write(NULL, 0, -12.34, 2), 6);
    assert_int_equal(sil_number_write(text, 1, 1e20, 2), 24);
    assert_string_equal(text, "");
}

static void noughts_behind_a_mark_are_trimmed(void **state)
{
    (void)state;
    static const writing_row rows[] = {{2.5, 2, "2.5"}, {3.0, 2, "3"},       {10.0, 0, "10"},
                                       {0.0, 3, "0"},   {-0.25, 4, "-0.25"}, {100.0, 1, "100"}};
    char text[16];
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        size_t length = sil_number_trimmed(text, sizeof text, rows[i].value, rows[i].decimals);
        assert_string_equal(text, rows[i].text);
        assert_int_equal(length, strlen(rows[i].text));
    }
    assert_int_equal(sil_number_trimmed(text, 4, 2.5, 2), 4);
    assert_string_equal(text, "");
}

static void lengths_are_told_in_either_unit(void **state)
{
    (void)state;
    char text[32];
    sil_length_write(text, sizeof text, 0.3048, SIL_MM, 2);
    assert_string_equal(text, "0.30");
    sil_length_write(text, sizeof text, 0.3048, SIL_INCH, 2);
    assert_string_equal(text, "0.012");
}

/* By hand: 40 mm is 1.57480 in, 1.0 mm 0.039370 in, 1.3 mm 0.051181 in, 0.26 mm 0.010236 in, 0.25 mm
 * 0.009843 in, 0.19 mm 0.007480 in, 0.05 mm 0.001969 in, 0.01 mm 0.000394 in. */
static void a_cut_is_rounded_down_and_a_place_to_stop_up(void **state)
{
    (void)state;
    static const struct {
        double mm;
        sil_unit unit;
        const char *nearest, *down, *up;
    } rows[] = {{1.2349, SIL_MM, "1.23", "1.23", "1.24"},
                {0.29, SIL_MM, "0.29", "0.29", "0.29"},
                {0.295, SIL_MM, "0.30", "0.29", "0.30"}, /* half a step goes up, whatever is lost */
                {0.075 - 1e-16, SIL_MM, "0.08", "0.07", "0.08"},
                {-0.075, SIL_MM, "-0.08", "-0.08", "-0.07"},
                {-1.236, SIL_MM, "-1.24", "-1.24", "-1.23"},
                {40.0, SIL_INCH, "1.575", "1.574", "1.575"},
                {25.4, SIL_INCH, "1.000", "1.000", "1.000"},
                {1.3, SIL_INCH, "0.051", "0.051", "0.052"},
                {1.0, SIL_INCH, "0.039", "0.039", "0.040"},
                {-1.0, SIL_INCH, "-0.039", "-0.040", "-0.039"},
                {0.26, SIL_INCH, "0.010", "0.010", "0.011"},
                {0.25, SIL_INCH, "0.010", "0.0095", "0.010"},
                {0.19, SIL_INCH, "0.0075", "0.007", "0.0075"},
                {-0.19, SIL_INCH, "-0.0075", "-0.0075", "-0.007"},
                {0.05, SIL_INCH, "0.002", "0.0015", "0.002"},
                {0.0381, SIL_INCH, "0.0015", "0.0015", "0.0015"},
                {0.01, SIL_INCH, "0.0004", "0.0003", "0.0004"},
                {0.0, SIL_INCH, "0.000", "0.000", "0.000"},
                {(double)NAN, SIL_INCH, "-", "-", "-"}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const char *wanted[] = {rows[i].nearest, rows[i].down, rows[i].up};
        for (int way = SIL_NEAREST; way <= SIL_UP; way++) {
            char text[32];
            sil_figure_write(text, sizeof text, rows[i].mm, rows[i].unit, (sil_rounding)way);
            assert_string_equal(text, wanted[way]);
        }
    }
}

static void each_measure_names_its_unit(void **state)
{
    (void)state;
    assert_string_equal(sil_measure_unit(SIL_LENGTH), "mm");
    assert_string_equal(sil_measure_unit(SIL_RATIO), "");
    assert_string_equal(sil_measure_unit(SIL_UNIT_MASS), "g/m");
    assert_string_equal(sil_measure_unit(SIL_TEMPERATURE), "C");
}

/* A locale with a decimal comma, where the machine has one: a C library may take the name and know none. */
static void a_comma_locale_changes_nothing(void **state)
{
    static const char *const names[] = {"de_DE.UTF-8", "de_DE.utf8", "fr_FR.UTF-8", "nl_NL.UTF-8"};
    bool found = false;
    for (size_t i = 0; i < sizeof names / sizeof names[0] && !found; i++) {
        found =
            setlocale(LC_ALL, names[i]) != NULL && strcmp(localeconv()->decimal_point, ",") == 0;
    }
    if (!found) {
        setlocale(LC_ALL, "C");
        skip();
    }
    char comma[8];
    snprintf(comma, sizeof comma, "%.1f", 0.5);
    assert_string_equal(comma, "0,5");
    quantities_are_read_as_a_workshop_writes_them(state);
    figures_are_written_rounded_and_plain(state);
    setlocale(LC_ALL, "C");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(quantities_are_read_as_a_workshop_writes_them),
        cmocka_unit_test(fifteen_digits_are_read_exactly),
        cmocka_unit_test(long_figures_are_read_to_one_last_place),
        cmocka_unit_test(figures_are_written_rounded_and_plain),
        cmocka_unit_test(figures_agree_with_printf),
        cmocka_unit_test(a_text_too_small_is_left_empty),
        cmocka_unit_test(noughts_behind_a_mark_are_trimmed),
        cmocka_unit_test(lengths_are_told_in_either_unit),
        cmocka_unit_test(a_cut_is_rounded_down_and_a_place_to_stop_up),
        cmocka_unit_test(each_measure_names_its_unit),
        cmocka_unit_test(a_comma_locale_changes_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
