/* SPDX-License-Identifier: MIT */
/* Compensation against published strings, and stiffness against exact roots. */
#include <sillet/nut.h>
#include <sillet/pitch.h>
#include <sillet/string.h>

#include "near.h"
#include "published/intonation.h"

static const double pi = 3.14159265358979323846;
static double places[SIL_PITCH_FRETS + 1];

/* A string on the papers' board. */
static sil_pitch_string on_paper(double radius, double unit_mass, double hz, double modulus_gpa)
{
    for (int n = 0; n <= SIL_PITCH_FRETS; n++) {
        places[n] = sil_fret_place(650.0, n);
    }
    return (sil_pitch_string){.fret_x = places,
                              .scale = 650.0,
                              .nut_height = 1.0,
                              .saddle_height = 5.0,
                              .unit_mass_kg_m = unit_mass,
                              .hz = hz,
                              .modulus_gpa = modulus_gpa,
                              .core = 2.0 * radius,
                              .ends = SIL_CLAMPED_PINNED};
}

/* The prototype is told by its kappa; any tension with the modulus that gives it will do. */
static sil_pitch_string prototype(void)
{
    const double tension = 60.0;
    const double hz = 196.0;
    double speed = 2.0 * 0.650 * hz;
    double area = pi * prototype_radius * prototype_radius * 1e-6;
    double modulus_gpa = prototype_kappa * tension / area / 1e9;
    return on_paper(prototype_radius, tension / (speed * speed), hz, modulus_gpa);
}

static void the_prototype_is_as_sharp_as_published(void **state)
{
    (void)state;
    sil_pitch_string string = prototype();
    for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
        near(sil_cents(&string, 0.0, 0.0, n), prototype_cents[n - 1], 0.001);
    }
    /* b of the string stopped at 12 is that of the open one over half the length, but for the
     * tension gained. */
    near(sil_stiffness(&string, 0.0, 0.0), 2.0 * prototype_b, 0.00002);
}

static void the_prototype_s_best_pair_is_as_published(void **state)
{
    (void)state;
    sil_pitch_string string = prototype();
    sil_best_pair best = sil_best_pair_find(&string);
    near(best.setback, prototype_setback, 0.035);
    near(best.advance, prototype_advance, 0.005);
    near(best.rms, prototype_rms, 0.01);
}

static void measured_strings_take_the_published_pairs(void **state)
{
    (void)state;
    for (size_t k = 0; k < sizeof tuned / sizeof *tuned; k++) {
        double hz = 0.0;
        assert_int_equal(sil_note_hz(tuned[k].note, &hz), 0);
        sil_pitch_string string =
            on_paper(tuned[k].radius, tuned[k].unit_mass, hz, tuned[k].modulus_gpa);
        sil_best_pair best = sil_best_pair_find(&string);
        near(best.setback, tuned[k].setback, 0.035 + 0.005);
        near(best.advance, tuned[k].advance, 0.005 + 0.005);
        near(best.rms, tuned[k].rms, 0.01 + 0.005);
    }
}

/* No neighbouring pair is better, and the rms is what is left. */
static void the_best_pair_is_the_best(void **state)
{
    (void)state;
    sil_pitch_string string = prototype();
    sil_best_pair best = sil_best_pair_find(&string);
    for (int k = 0; k < 9; k++) {
        double setback = best.setback + 0.01 * (k % 3 - 1);
        double advance = best.advance + 0.01 * (k / 3 - 1);
        double squares = 0.0;
        for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
            squares += pow(sil_cents(&string, setback, advance, n), 2.0);
        }
        double rms = sqrt(squares / SIL_PITCH_FRETS);
        if (k == 4) {
            near(rms, best.rms, 1e-9);
        } else {
            assert_true(rms > best.rms);
        }
    }
}

static void saddle_only_puts_fret_12_in_tune(void **state)
{
    (void)state;
    sil_pitch_string string = prototype();
    double setback = sil_saddle_only(&string, 0.0);
    near(sil_cents(&string, setback, 0.0, 12), 0.0, 1e-9);
    double before = sil_cents(&string, -5.0, 0.0, 12);
    for (int k = -4; k <= 10; k++) {
        double cents = sil_cents(&string, (double)k, 0.0, 12);
        assert_true(cents < before); /* one root: the pitch falls all the way */
        before = cents;
    }
    double move = sil_setback_move(&string, 2.0, 0.0, 5.0);
    double gone = sil_cents(&string, 2.0, 0.0, 12) - sil_cents(&string, 2.0 + move, 0.0, 12);
    near(gone, 5.0, 1e-6);
    assert_true(move > 0.0);
}

/* Clamped and pinned, exactly: tan k2 = (k2/k1) tanh k1, k1^2 - k2^2 = 1/b^2, by bisection. */
static double clamped_pinned_root(double b)
{
    double low = pi;
    double high = 1.5 * pi - 1e-9;
    for (int step = 0; step < 200; step++) {
        double k2 = (low + high) / 2.0;
        double k1 = sqrt(1.0 / (b * b) + k2 * k2);
        *(tan(k2) - k2 / k1 * tanh(k1) > 0.0 ? &high : &low) = k2;
    }
    return low / pi * sqrt(1.0 + b * b * low * low);
}

static void stiffness_agrees_with_exact_roots(void **state)
{
    (void)state;
    for (size_t k = 0; k < sizeof stiff_rows / sizeof *stiff_rows; k++) {
        const stiff_row *row = &stiff_rows[k];
        near(clamped_pinned_root(row->b), row->clamped_pinned, 5e-10);
        /* The pinned form is exact; the others leave off the cube of b. */
        double left_off = 30.0 * pow(row->b, 3.0);
        near(sil_stiff_factor(SIL_PINNED, row->b), row->pinned, 5e-10);
        near(sil_stiff_factor(SIL_CLAMPED_PINNED, row->b), row->clamped_pinned, left_off);
        near(sil_stiff_factor(SIL_CLAMPED, row->b), row->clamped, left_off);
    }
}

static void pressing_behind_the_fret_sharpens(void **state)
{
    (void)state;
    sil_pitch_string string = prototype();
    double at_fret = sil_cents(&string, 0.0, 0.0, 5);
    string.press = 1e-9;
    near(sil_cents(&string, 0.0, 0.0, 5), at_fret, 1e-6);
    string.press = 5.0;
    assert_true(sil_cents(&string, 0.0, 0.0, 5) > at_fret);
    string.press = 100.0; /* taken as half the space */
    double most = sil_cents(&string, 0.0, 0.0, 5);
    string.press = (places[5] - places[4]) / 2.0;
    near(sil_cents(&string, 0.0, 0.0, 5), most, 1e-12);
}

static void what_is_not_known_gives_no_figure(void **state)
{
    (void)state;
    sil_pitch_string string = prototype();
    string.core = SIL_UNKNOWN;
    assert_false(sil_known(sil_cents(&string, 0.0, 0.0, 12)));
    assert_false(sil_known(sil_saddle_only(&string, 0.0)));
    assert_false(sil_known(sil_best_pair_find(&string).setback));
    assert_false(sil_known(sil_setback_move(&string, 0.0, 0.0, 3.0)));
}

static void the_slot_s_line_is_nearest_to_the_farthest_point(void **state)
{
    (void)state;
    uint64_t seed = 4;
    double z[6];
    double setback[6];
    sil_saddle_centres(6, 54.0, z);
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
    setback[3] = SIL_UNKNOWN;
    assert_false(sil_known(sil_slot_line(6, z, setback).b0));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_prototype_is_as_sharp_as_published),
        cmocka_unit_test(the_prototype_s_best_pair_is_as_published),
        cmocka_unit_test(measured_strings_take_the_published_pairs),
        cmocka_unit_test(the_best_pair_is_the_best),
        cmocka_unit_test(saddle_only_puts_fret_12_in_tune),
        cmocka_unit_test(stiffness_agrees_with_exact_roots),
        cmocka_unit_test(pressing_behind_the_fret_sharpens),
        cmocka_unit_test(what_is_not_known_gives_no_figure),
        cmocka_unit_test(the_slot_s_line_is_nearest_to_the_farthest_point),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
