/* SPDX-License-Identifier: MIT */
/* Compensation is compared with the authors' manuscript and stiffness with exact roots. Other tests
 * check what must be true of any string. */
#include <sillet/sillet.h>

#include "instrument.h"
#include "published/intonation.h"

static const double pi = 3.14159265358979323846;

/* --- stiff strings: exact roots ------------------------------------------------------------------
 *
 * y'' '' + .. = 0 along a stiff string has waves of k2 and evanescent parts of k1, both counted in
 * its length: k1^2 - k2^2 = 1/b^2, and f = f0 (k2/pi) sqrt(1 + b^2 k2^2).
 */
typedef double mismatch(double k1, double k2);

/* Clamped at one end, pinned at the other: tan k2 = (k2/k1) tanh k1. */
static double clamped_pinned(double k1, double k2)
{
    return sin(k2) - k2 / k1 * tanh(k1) * cos(k2);
}

/* Clamped at both, a mode alike on both sides of the middle: k2 tan(k2/2) = -k1 tanh(k1/2). */
static double clamped_both(double k1, double k2)
{
    return k2 * sin(k2 / 2.0) + k1 * tanh(k1 / 2.0) * cos(k2 / 2.0);
}

static double pinned_both(double k1, double k2)
{
    (void)k1;
    return sin(k2);
}

/* The first root lies between a limp string's pi and not far over it. */
static double exact_factor(mismatch *ends, double b)
{
    double low = pi * (1.0 - 1e-9), high = 1.5 * pi;
    bool up = ends(hypot(1.0 / b, low), low) < 0.0;
    for (int k = 0; k < 200; k++) {
        double middle = (low + high) / 2.0;
        if ((ends(hypot(1.0 / b, middle), middle) < 0.0) == up) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return low / pi * sqrt(1.0 + b * b * low * low);
}

static void exact_roots_are_those_of_the_table(void **state)
{
    (void)state;
    for (size_t k = 0; k < sizeof stiff_rows / sizeof *stiff_rows; k++) {
        const stiff_row *row = &stiff_rows[k];
        near(exact_factor(pinned_both, row->b), row->pinned, 5e-10);
        near(exact_factor(clamped_pinned, row->b), row->clamped_pinned, 5e-10);
        near(exact_factor(clamped_both, row->b), row->clamped, 5e-10);
    }
}

/* Pinned ends exactly; a clamped end to what is left out, the cube of b: about 7.5 b^3 with one
 * clamped end, 22 b^3 with two. */
static void stiffness_is_right_to_the_cube_of_b(void **state)
{
    (void)state;
    for (double b = 0.00236; b <= 0.03; b += 0.00191) {
        double cube = b * b * b;
        near(sil_stiff_factor(SIL_PINNED, b), exact_factor(pinned_both, b), 1e-9);
        near(sil_stiff_factor(SIL_CLAMPED_PINNED, b), exact_factor(clamped_pinned, b), 8.0 * cube);
        near(sil_stiff_factor(SIL_CLAMPED, b), exact_factor(clamped_both, b), 23.0 * cube);
    }
    assert_true(sil_stiff_factor(SIL_CLAMPED_PINNED, 0.0) == 1.0);
}

/* --- the manuscript's strings --- */

static double places[SIL_PITCH_FRETS + 1];

static sil_pitch_string on_the_manuscript_board(double radius, double unit_mass, const char *note,
                                                double modulus_gpa)
{
    for (int n = 0; n <= SIL_PITCH_FRETS; n++) {
        places[n] = sil_fret_place(manuscript_scale, n);
    }
    sil_pitch_string string = {.fret_x = places,
                               .scale = manuscript_scale,
                               .nut_height = manuscript_nut,
                               .saddle_height = manuscript_saddle,
                               .unit_mass_kg_m = unit_mass,
                               .modulus_gpa = modulus_gpa,
                               .core = 2.0 * radius,
                               .ends = SIL_CLAMPED_PINNED};
    assert_int_equal(sil_note_hz(note, &string.hz), 0);
    return string;
}

static double tension_of(const sil_pitch_string *string)
{
    return sil_tension(string->unit_mass_kg_m, string->scale, string->hz);
}

static double area_of(const sil_pitch_string *string)
{
    return pi * string->core * string->core / 4.0;
}

/* Only kappa and b enter, so any mass and pitch will do for the prototype. */
static sil_pitch_string make_prototype(void)
{
    sil_pitch_string string = on_the_manuscript_board(prototype_radius, 5e-4, "B3", 1.0);
    string.modulus_gpa = prototype_kappa * tension_of(&string) / area_of(&string) / 1000.0;
    return string;
}

static void the_prototype_plays_as_sharp_as_computed(void **state)
{
    (void)state;
    sil_pitch_string string = make_prototype();
    double filled[SIL_PITCH_FRETS + 1];
    sil_cents_fill(&string, 0.0, 0.0, filled);
    for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
        near(sil_cents(&string, 0.0, 0.0, n), prototype_cents[n - 1], 0.001);
        near(filled[n], prototype_cents[n - 1], 0.001);
    }
}

/* With no stiffness to speak of, only the lengths and the stretch that pulls mass along are left;
 * less the latter it is the part by length. */
static void the_length_alone_plays_flat(void **state)
{
    (void)state;
    sil_pitch_string string = make_prototype();
    string.modulus_gpa = 1e-12;
    double x = places[12], end = manuscript_saddle, nut = manuscript_nut;
    double open = hypot(manuscript_scale, end - nut);
    double longer = (hypot(manuscript_scale - x, end) + hypot(x, nut)) / open;
    near(sil_cents(&string, 0.0, 0.0, 12) - 600.0 * log2(longer), prototype_length_part, 0.005);
}

static void best_pairs_are_those_of_the_manuscript(void **state)
{
    (void)state;
    sil_pitch_string prototype = make_prototype();
    sil_best_pair best = sil_best_pair_find(&prototype);
    near(best.setback, prototype_setback, 0.035);
    near(best.advance, prototype_advance, 0.005);
    near(best.rms, prototype_rms, 0.01);
    for (size_t k = 0; k < sizeof pairs / sizeof *pairs; k++) {
        const pair_row *row = &pairs[k];
        sil_pitch_string string =
            on_the_manuscript_board(row->radius, row->unit_mass, row->note, row->modulus_gpa);
        double tension = tension_of(&string);
        near(tension, row->tension, 0.15); /* as the digits of the mass allow */
        near(row->modulus_gpa * 1000.0 * area_of(&string) / tension, row->kappa, 0.15);
        best = sil_best_pair_find(&string);
        near(best.setback, row->setback, 0.035);
        near(best.advance, row->advance, 0.005);
        near(best.rms, row->rms, 0.01);
    }
}

static double squares_left(const sil_pitch_string *string, double setback, double advance)
{
    double sum = 0.0;
    for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
        double cents = sil_cents(string, setback, advance, n);
        sum += cents * cents;
    }
    return sum;
}

/* How far off the place where the sum of squares is level: half its slope over its curvature, of
 * differences to both sides. */
static void near_level(const sil_pitch_string *string, sil_best_pair best)
{
    const double h = 1e-3;
    double here = squares_left(string, best.setback, best.advance);
    double longer = squares_left(string, best.setback + h, best.advance);
    double shorter = squares_left(string, best.setback - h, best.advance);
    double forth = squares_left(string, best.setback, best.advance + h);
    double back = squares_left(string, best.setback, best.advance - h);
    near(sqrt(here / SIL_PITCH_FRETS), best.rms, 1e-9);
    near((longer - shorter) / (longer - 2.0 * here + shorter) * h / 2.0, 0.0, 1e-5);
    near((forth - back) / (forth - 2.0 * here + back) * h / 2.0, 0.0, 1e-5);
}

static void at_the_best_pair_the_squares_are_level(void **state)
{
    (void)state;
    for (int ends = SIL_CLAMPED_PINNED; ends <= SIL_CLAMPED; ends++) {
        for (size_t k = 0; k < sizeof pairs / sizeof *pairs; k++) {
            const pair_row *row = &pairs[k];
            sil_pitch_string string =
                on_the_manuscript_board(row->radius, row->unit_mass, row->note, row->modulus_gpa);
            string.ends = (sil_ends)ends;
            near_level(&string, sil_best_pair_find(&string));
        }
    }
}

/* A thick core at a low pull on a bowed neck; figures invented. */
static sil_pitch_string hard_string(double scale, double unit_mass, double hz, double core)
{
    static const double crown[] = {0.0,  -0.27, -0.65, -0.80, -0.77, -0.58, -0.26,
                                   0.10, 0.45,  0.78,  1.09,  1.38,  1.66};
    sil_pitch_string string = on_the_manuscript_board(core / 2.0, unit_mass, "B2", 206.0);
    for (int n = 0; n <= SIL_PITCH_FRETS; n++) {
        places[n] = sil_fret_place(scale, n);
        string.crown[n] = crown[n];
    }
    string.scale = scale;
    string.hz = hz;
    string.nut_height = 0.27;
    string.saddle_height = 7.3;
    return string;
}

/* Where cents are left, slopes taken to one side only would miss the place. */
static void the_best_pair_of_a_hard_string_is_as_exact(void **state)
{
    (void)state;
    sil_pitch_string string = hard_string(602.2, 0.0107, 69.3, 0.808);
    string.ends = SIL_PINNED;
    sil_best_pair best = sil_best_pair_find(&string);
    assert_true(best.rms > 1.0);
    near_level(&string, best);
}

/* A slack string that a stretch sharpens by octaves: the way down bends, and whole steps overshoot.
 */
static void the_best_pair_of_a_slack_string_is_as_exact(void **state)
{
    (void)state;
    sil_pitch_string string = hard_string(430.4, 0.002455, 74.0, 0.481);
    string.modulus_gpa = 64.8;
    string.ends = SIL_CLAMPED_PINNED;
    sil_best_pair best = sil_best_pair_find(&string);
    assert_true(best.rms > 10.0);
    near_level(&string, best);
}

/* Out of reach of any pair: none is told, or one that is better than nothing done. */
static void a_string_never_in_tune_is_not_told_a_worse_pair(void **state)
{
    (void)state;
    for (double hz = 45.0; hz < 90.0; hz += 1.5) {
        sil_pitch_string string = hard_string(500.4, 0.01264, hz, 0.849);
        string.ends = SIL_CLAMPED;
        sil_best_pair best = sil_best_pair_find(&string);
        if (sil_known(best.rms)) {
            double left = squares_left(&string, best.setback, best.advance);
            near(sqrt(left / SIL_PITCH_FRETS), best.rms, 1e-6);
            assert_true(left <= squares_left(&string, 0.0, 0.0));
        } else {
            assert_false(sil_known(best.setback) || sil_known(best.advance));
        }
    }
}

/* --- what holds of every string --- */

static sil_pitch_string steel(void)
{
    sil_pitch_string string = on_the_manuscript_board(0.1524, 5.73e-4, "E4", 206.0);
    for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
        string.crown[n] = -0.02 * n + 0.0012 * n * n; /* a bent neck */
    }
    string.nut_height = 0.3;
    string.saddle_height = 3.2;
    return string;
}

static void the_saddle_alone_puts_fret_12_in_tune(void **state)
{
    (void)state;
    for (int ends = SIL_CLAMPED_PINNED; ends <= SIL_CLAMPED; ends++) {
        sil_pitch_string string = steel();
        string.ends = (sil_ends)ends;
        for (double advance = 0.0; advance <= 1.0; advance += 0.25) {
            double setback = sil_saddle_only(&string, advance);
            near(sil_cents(&string, setback, advance, 12), 0.0, 1e-9);
        }
    }
}

static void a_longer_string_plays_flatter_without_a_turn(void **state)
{
    (void)state;
    sil_pitch_string string = steel();
    double before = (double)INFINITY;
    for (double setback = -10.0; setback <= 20.0; setback += 0.05) {
        double cents = sil_cents(&string, setback, 0.0, 12);
        assert_true(cents < before);
        before = cents;
    }
}

static void pressing_behind_the_fret_begins_at_the_fret(void **state)
{
    (void)state;
    sil_pitch_string string = steel();
    for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
        string.press = 0.0;
        double at_it = sil_cents(&string, 2.0, 0.3, n);
        string.press = 1e-9;
        near(sil_cents(&string, 2.0, 0.3, n), at_it, 1e-6);
        string.press = 5.0;
        double behind = sil_cents(&string, 2.0, 0.3, n);
        assert_true(behind > at_it + 1e-4); /* pulled down further */
        string.press = (places[n] - places[n - 1]) / 2.0;
        double halfway = sil_cents(&string, 2.0, 0.3, n);
        assert_true(halfway > behind);
        string.press = 100.0; /* as far back as stops the note there */
        near(sil_cents(&string, 2.0, 0.3, n), halfway, 1e-12);
    }
}

static void what_is_not_known_is_not_told(void **state)
{
    (void)state;
    sil_pitch_string known = steel();
    for (int k = 0; k < 6; k++) {
        sil_pitch_string string = known;
        double *const fields[] = {&string.unit_mass_kg_m, &string.hz,
                                  &string.modulus_gpa,    &string.core,
                                  &string.nut_height,     &string.saddle_height};
        *fields[k] = SIL_UNKNOWN;
        sil_best_pair best = sil_best_pair_find(&string);
        assert_false(sil_known(sil_cents(&string, 2.0, 0.3, 12)));
        assert_false(sil_known(sil_saddle_only(&string, 0.3)));
        assert_false(sil_known(best.setback) || sil_known(best.advance) || sil_known(best.rms));
    }
}

/* Half the string is twice as stiff for its length, but for the stretch that tightens it. */
static void a_string_stopped_halfway_is_twice_as_stiff(void **state)
{
    (void)state;
    sil_pitch_string string = steel();
    double inertia = pi * pow(string.core, 4) / 64.0;
    double open = sqrt(string.modulus_gpa * 1000.0 * inertia / tension_of(&string)) / string.scale;
    double told = sil_stiffness(&string, 0.0, 0.0);
    assert_true(told > 1.9 * open && told < 2.0 * open);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(exact_roots_are_those_of_the_table),
        cmocka_unit_test(stiffness_is_right_to_the_cube_of_b),
        cmocka_unit_test(the_prototype_plays_as_sharp_as_computed),
        cmocka_unit_test(the_length_alone_plays_flat),
        cmocka_unit_test(best_pairs_are_those_of_the_manuscript),
        cmocka_unit_test(at_the_best_pair_the_squares_are_level),
        cmocka_unit_test(the_best_pair_of_a_hard_string_is_as_exact),
        cmocka_unit_test(the_best_pair_of_a_slack_string_is_as_exact),
        cmocka_unit_test(a_string_never_in_tune_is_not_told_a_worse_pair),
        cmocka_unit_test(the_saddle_alone_puts_fret_12_in_tune),
        cmocka_unit_test(a_longer_string_plays_flatter_without_a_turn),
        cmocka_unit_test(pressing_behind_the_fret_begins_at_the_fret),
        cmocka_unit_test(what_is_not_known_is_not_told),
        cmocka_unit_test(a_string_stopped_halfway_is_twice_as_stiff),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
