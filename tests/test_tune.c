/* SPDX-License-Identifier: MIT */
/* How far a saddle must move by the tuner: against the ratio of lengths solved by halving, against
 * the figure the trade uses, and on a stiff string that is stretched, whose pitch is found another
 * way. */
#include <sillet/sillet.h>

#include "instrument.h"

static const double pi = 3.14159265358979323846;

/* How sharp fret 12 becomes against the octave of the open string when only lengths count: pitch
 * goes as one over the length. */
static double sharper(double open, double fret, double move)
{
    double interval_was = log2(open / (open - fret));
    double interval_is = log2((open + move) / (open + move - fret));
    return 1200.0 * (interval_is - interval_was);
}

static double by_halving(double open, double fret, double cents)
{
    double low = fret - open + 1e-9, high = 10.0 * open;
    for (int k = 0; k < 200; k++) {
        double middle = (low + high) / 2.0;
        if (sharper(open, fret, middle) + cents > 0.0) {
            low = middle; /* still sharp: longer */
        } else {
            high = middle;
        }
    }
    return low;
}

static void the_move_is_that_of_the_lengths(void **state)
{
    uint64_t seed = 20261129;
    (void)state;
    for (int k = 0; k < 1000; k++) {
        double scale = uniform(&seed, 330.0, 900.0);
        double fret = scale / 2.0 - uniform(&seed, -1.0, 1.0);
        double open = scale + uniform(&seed, -3.0, 8.0);
        double cents = uniform(&seed, -100.0, 100.0);
        near(sil_tune_move(open, fret, cents), by_halving(open, fret, cents), 1e-9);
        near(sil_tune_cents(open, fret, sil_tune_move(open, fret, cents)), cents, 1e-9);
    }
}

/* Common practice has it that a millimetre at a 650 mm scale is some 2.7 cents, no source; by the
 * slope of the logarithm 650 ln 2 / 1200 mm a cent. */
static void a_cent_is_about_0_376_mm_at_650(void **state)
{
    (void)state;
    near(sil_tune_move(650.0, 325.0, 1.0), 650.0 * log(2.0) / 1200.0, 5e-4);
    near(sil_tune_move(650.0, 325.0, 1.0), 0.376, 5e-4);
    assert_true(sil_tune_move(650.0, 325.0, 12.0) > 4.4);   /* sharp: longer */
    assert_true(sil_tune_move(650.0, 325.0, -12.0) < -4.4); /* flat: shorter */
    assert_true(sil_tune_move(650.0, 325.0, 0.0) == 0.0);
}

static void what_is_not_known_stays_so(void **state)
{
    (void)state;
    assert_false(sil_known(sil_tune_move(650.0, 325.0, SIL_UNKNOWN)));
    assert_false(sil_known(sil_tune_move(SIL_UNKNOWN, 325.0, 3.0)));
    assert_false(sil_known(sil_tune_move(650.0, 325.0, 1200.0))); /* as long as an endless string */
    assert_false(sil_known(sil_tune_cents(650.0, SIL_UNKNOWN, 1.0)));
}

/* A back at 12 degrees: 0.9 along it costs 0.19 of height (tan 12 degrees is 0.2126, from a table).
 */
static void a_place_further_back_is_lower(void **state)
{
    (void)state;
    near(sil_back_drop(0.9), 0.9 * 0.21256, 1e-5);
    assert_true(sil_back_drop(-0.9) == sil_back_drop(0.9));
}

/* --- a stiff string, read by a tuner --------------------------------------------------------------
 *
 * Clamped at nut or fret, pinned at the saddle: k1^2 - k2^2 = T l^2/(E I), tan k2 = (k2/k1) tanh k1,
 * f = k1 k2 sqrt(E I/mu)/(2 pi l^2). (Any book on beams under tension has it; the program's own
 * model takes a series instead, and is not called here.)
 */
typedef struct wire {
    double diameter, core, mass, hz; /* mm, mm, kg/m, Hz */
} wire;

static double pitch(const wire *it, double tension, double length)
{
    double bending = 206e9 * pi * pow(it->core / 1000.0, 4) / 64.0, l = length / 1000.0;
    double ratio = tension * l * l / bending, low = pi, high = 1.4 * pi;
    for (int k = 0; k < 100; k++) {
        double k2 = (low + high) / 2.0, k1 = sqrt(ratio + k2 * k2);
        double over = sin(k2) - k2 / k1 * tanh(k1) * cos(k2);
        if (over > 0.0) {
            low = k2;
        } else {
            high = k2;
        }
    }
    double k1 = sqrt(ratio + low * low);
    return k1 * low * sqrt(bending / it->mass) / (2.0 * pi * l * l);
}

/* The tension that tunes the open string. */
static double tuned(const wire *it, double length)
{
    double low = 1.0, high = 1000.0;
    for (int k = 0; k < 100; k++) {
        double middle = (low + high) / 2.0;
        if (pitch(it, middle, length) < it->hz) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return low;
}

/* What a tuner shows at fret 12 of a 648 string, `action` over it, with the saddle so far back. */
static double shown(const wire *it, double setback, double action)
{
    double open = 648.0 + setback, fret = 324.0, tension = tuned(it, open);
    double stretched = hypot(fret, action) + hypot(open - fret, action) - open;
    double area = pi * it->core * it->core / 4.0;
    double pressed = tension + 206e3 * area * stretched / open;
    return 1200.0 * log2(pitch(it, pressed, hypot(open - fret, action)) / it->hz / 2.0);
}

static void a_stiff_string_comes_into_tune(void **state)
{
    /* .010, .017 and .046 of an electric guitar, the last on a 16 thou core: CALC. */
    static const wire wires[] = {{0.254, 0.254, 0.000398, 329.63},
                                 {0.432, 0.432, 0.001150, 196.00},
                                 {1.168, 0.406, 0.006790, 82.41}};
    (void)state;
    for (size_t k = 0; k < sizeof wires / sizeof *wires; k++) {
        for (double action = 1.0; action < 3.0; action += 0.4) {
            double setback = 0.0, first = shown(&wires[k], setback, action), read = first;
            assert_true(read > 1.0); /* without setback every string reads sharp */
            setback += sil_tune_move(648.0 + setback, 324.0, read);
            read = shown(&wires[k], setback, action);
            assert_true(fabs(read) < 0.05 * first); /* once */
            setback += sil_tune_move(648.0 + setback, 324.0, read);
            read = shown(&wires[k], setback, action);
            assert_true(fabs(read) < 0.05); /* twice */
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_move_is_that_of_the_lengths),
        cmocka_unit_test(a_cent_is_about_0_376_mm_at_650),
        cmocka_unit_test(what_is_not_known_stays_so),
        cmocka_unit_test(a_place_further_back_is_lower),
        cmocka_unit_test(a_stiff_string_comes_into_tune),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
