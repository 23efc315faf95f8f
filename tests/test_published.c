/* SPDX-License-Identifier: MIT */
/* Compares the arithmetic with values from outside the project. Their sources are in
 * tests/published/values.h. */
#include <sillet/sillet.h>

#include "near.h"
#include "published/values.h"

static const double steel_density = 7850.0; /* EN 10270-1 (quoted) */

static void fret_places_are_those_of_the_table(void **state)
{
    (void)state;
    for (int n = 1; n <= 12; n++) {
        near(sil_fret_place(650.0, n), fret_650[n - 1], 0.00005);
    }
    assert_true(sil_fret_place(650.0, 0) == 0.0);
}

static void each_fret_takes_the_divisor_of_the_rest(void **state)
{
    (void)state;
    for (int n = 0; n < SIL_FRETS_MAX; n++) {
        double rest = 650.0 - sil_fret_place(650.0, n);
        double step = sil_fret_place(650.0, n + 1) - sil_fret_place(650.0, n);
        near(rest / step, fret_divisor, 5e-8 * 650.0 / rest);
    }
}

static void boards_drop_as_circles_do(void **state)
{
    (void)state;
    for (size_t k = 0; k < sizeof drops / sizeof *drops; k++) {
        near(sil_radius_drop(drops[k].radius, drops[k].z), drops[k].drop, 0.0005);
    }
    assert_true(sil_radius_drop(INFINITY, 26.0) == 0.0);
}

static void notes_sound_as_iso_16_has_them(void **state)
{
    (void)state;
    for (size_t k = 0; k < sizeof notes / sizeof *notes; k++) {
        double hz = 0.0;
        assert_int_equal(sil_note_hz(notes[k].note, &hz), 0);
        near(hz, notes[k].hz, notes[k].tolerance);
    }
}

static void what_is_no_note_is_refused(void **state)
{
    (void)state;
    static const char *const wrong[] = {"",
                                        "H4",
                                        "E",
                                        "E#",
                                        "E44",
                                        "4E",
                                        "E-2",
                                        "E4 ",
                                        "Ex4",
                                        "E--1",
                                        "E/",
                                        "E:",
                                        "\xE2\x99\xAD"
                                        "4",
                                        "E\xE2\x99\xAE"
                                        "4",
                                        "E\xE2\x98\xAD"
                                        "4"};
    for (size_t k = 0; k < sizeof wrong / sizeof *wrong; k++) {
        double hz = 1.0;
        assert_int_equal(sil_note_hz(wrong[k], &hz), SIL_NO_NOTE);
        assert_true(hz == 1.0);
    }
}

static void tension_follows_mass_length_and_pitch(void **state)
{
    (void)state;
    for (size_t k = 0; k < sizeof tensions / sizeof *tensions; k++) {
        const tension_row *row = &tensions[k];
        near(sil_tension(row->unit_mass, row->length, row->hz), row->tension, row->tolerance);
    }
}

static void wire_gauge_and_pitch_give_tension(void **state)
{
    (void)state;
    sil_material_constants steel = {206.0, steel_density, SIL_UNKNOWN};
    for (size_t k = 0; k < sizeof wires / sizeof *wires; k++) {
        double mass = sil_unit_mass(SIL_PLAIN_STEEL, wires[k].gauge, SIL_UNKNOWN, &steel);
        near(sil_tension(mass, 648.0, wires[k].hz), wires[k].tension, 0.0005);
    }
}

/* A wound string whose wrap were as thick as nothing is its core; one whose wrap weighs nothing
 * too. */
static void a_wrap_adds_its_own_mass(void **state)
{
    (void)state;
    sil_material_constants bare = {206.0, steel_density, 0.0};
    sil_material_constants bronze = {206.0, steel_density, 8800.0}; /* 90/10 bronze (quoted) */
    double core = sil_unit_mass(SIL_PLAIN_STEEL, 0.4, SIL_UNKNOWN, &bare);
    near(sil_unit_mass(SIL_WOUND_BRONZE, 0.8, 0.4, &bare), core, 1e-15);
    /* A wrap of wire w wound turn on turn over a core c is a helix of mean diameter c + w: per
     * length 1/w turns of pi (c + w) each, of wire pi w^2/4: pi^2 w (c + w)/4 of metal. */
    double pi = 3.14159265358979323846;
    double turns = 1.0 / 0.2e-3;
    double wire = pi * 0.2e-3 * 0.2e-3 / 4.0 * 8800.0;
    double wrap = turns * pi * 0.6e-3 * wire;
    near(sil_unit_mass(SIL_WOUND_BRONZE, 0.8, 0.4, &bronze) - core, wrap, 1e-12);
    assert_false(sil_known(sil_unit_mass(SIL_WOUND_BRONZE, 0.8, SIL_UNKNOWN, &bronze)));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(fret_places_are_those_of_the_table),
        cmocka_unit_test(each_fret_takes_the_divisor_of_the_rest),
        cmocka_unit_test(boards_drop_as_circles_do),
        cmocka_unit_test(notes_sound_as_iso_16_has_them),
        cmocka_unit_test(what_is_no_note_is_refused),
        cmocka_unit_test(tension_follows_mass_length_and_pitch),
        cmocka_unit_test(wire_gauge_and_pitch_give_tension),
        cmocka_unit_test(a_wrap_adds_its_own_mass),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
