/* SPDX-License-Identifier: MIT */
/* The strings of the profiles against published masses, tensions and compensation; cores that nobody
 * gave. Sources are in tests/published/strings.h. */
#include <stdio.h>
#include <string.h>

#include <sillet/sillet.h>

#include "near.h"
#include "published/strings.h"

#define COUNT(rows) ((int)(sizeof(rows) / sizeof *(rows)))

static const char *const profiles[] = {
    "archtop",          "baritone",        "eight-string",
    "electric-bass",    "electric-guitar", "fanned-acoustic",
    "five-string-bass", "mandolin",        "nylon-string-classical",
    "resonator",        "seven-string",    "steel-string-acoustic",
    "tenor-guitar",     "twelve-string",   "ukulele",
    "ukulele-reentrant"};

/* Reads a sheet of a profile and, after it, what else is given. */
static const sil_job *read_job(const char *profile, const char *more, sil_sheet **sheet)
{
    char text[4096];
    int size =
        snprintf(text, sizeof text, "sillet: 1\nprofile: %s\nreadings: []\n%s", profile, more);
    sil_status status = sil_sheet_read_bytes(text, (size_t)size, "strings.yaml", "profiles", sheet);
    assert_true(status >= SIL_DONE);
    return sil_sheet_job(*sheet);
}

static double find_weight(const weight_row *rows, int count, double gauge)
{
    for (int k = 0; k < count; k++) {
        if (fabs(gauge - rows[k].gauge * 0.0254) < 1e-6) {
            return rows[k].mass / 1000.0;
        }
    }
    return SIL_UNKNOWN;
}

/* kg/m of a string of a profile, as published; unknown where the gauge or make is not. */
static double published_weight(const char *profile, const sil_string *string)
{
    bool bass = strstr(profile, "bass") != NULL;
    switch (string->material) {
    case SIL_PLAIN_STEEL:
        return find_weight(plain_steel_weights, COUNT(plain_steel_weights), string->gauge);
    case SIL_WOUND_BRONZE:
        return find_weight(bronze_weights, COUNT(bronze_weights), string->gauge);
    case SIL_WOUND_NICKEL_PLATED:
        return bass ? find_weight(bass_weights, COUNT(bass_weights), string->gauge)
                    : find_weight(plated_weights, COUNT(plated_weights), string->gauge);
    default:
        return SIL_UNKNOWN;
    }
}

static double weigh(const sil_job *job, const sil_string *string, double core)
{
    return sil_unit_mass(string->material, string->gauge, core, &job->materials[string->material]);
}

/* What a profile says of a string is the published figure. Without it the material comes near: a
 * plain string within 1 %, a wound one within 3 %, by the profile's core and by a typical one. */
static void strings_weigh_what_was_published(void **state)
{
    (void)state;
    int plain = 0, wound = 0;
    for (int p = 0; p < COUNT(profiles); p++) {
        sil_sheet *sheet = NULL;
        const sil_job *job = read_job(profiles[p], "", &sheet);
        for (int i = 0; i < job->string_count; i++) {
            const sil_string *string = &job->strings[i];
            double published = published_weight(profiles[p], string);
            double typical = sil_typical_core(string->material, string->gauge);
            if (!sil_known(published)) {
                continue;
            }
            if (!sil_material_wound(string->material)) {
                near(weigh(job, string, SIL_UNKNOWN) / published, 1.0, 0.01);
                plain++;
                continue;
            }
            near(string->unit_mass_kg_m, published, 1e-12);
            near(weigh(job, string, string->core) / published, 1.0, 0.03);
            near(weigh(job, string, typical) / published, 1.0, 0.03);
            wound++;
        }
        sil_sheet_free(sheet);
    }
    assert_int_equal(plain, 32);
    assert_int_equal(wound, 49);
}

/* Every wound string of steel-strung profiles but two has a published gauge. */
static void few_gauges_have_no_published_mass(void **state)
{
    (void)state;
    int unpublished = 0;
    for (int p = 0; p < COUNT(profiles); p++) {
        sil_sheet *sheet = NULL;
        const sil_job *job = read_job(profiles[p], "", &sheet);
        for (int i = 0; i < job->string_count; i++) {
            const sil_string *string = &job->strings[i];
            bool steel =
                string->material >= SIL_WOUND_BRONZE && string->material != SIL_WOUND_NYLON;
            if (steel && !sil_known(published_weight(profiles[p], string))) {
                assert_false(sil_known(string->unit_mass_kg_m));
                unpublished++;
            }
        }
        sil_sheet_free(sheet);
    }
    assert_int_equal(unpublished, 3); /* both of the mandolin's last course, a bass's fifth */
}

/* Every gauge of the tables, by a typical core and the profiles' wraps. */
static void typical_cores_weigh_the_whole_table(void **state)
{
    (void)state;
    static const struct {
        const char *profile;
        sil_material make;
        const weight_row *rows;
        int count;
    } tables[] = {
        {"steel-string-acoustic", SIL_WOUND_BRONZE, bronze_weights, COUNT(bronze_weights)},
        {"electric-guitar", SIL_WOUND_NICKEL_PLATED, plated_weights, COUNT(plated_weights)},
        {"electric-bass", SIL_WOUND_NICKEL_PLATED, bass_weights, COUNT(bass_weights)}};
    for (int k = 0; k < COUNT(tables); k++) {
        sil_sheet *sheet = NULL;
        const sil_job *job = read_job(tables[k].profile, "", &sheet);
        for (int n = 0; n < tables[k].count; n++) {
            double gauge = tables[k].rows[n].gauge * 0.0254;
            sil_string string = {.material = tables[k].make, .gauge = gauge};
            double typical = sil_typical_core(string.material, gauge);
            assert_true(typical > 0.25 && typical < 0.6 * gauge);
            near(weigh(job, &string, typical) * 1000.0 / tables[k].rows[n].mass, 1.0, 0.03);
        }
        sil_sheet_free(sheet);
    }
}

/* The table is passed from row to row without a step, also just past one. */
static void typical_cores_run_straight_between_gauges(void **state)
{
    (void)state;
    static const struct {
        sil_material make;
        double gauge, core; /* thousandths of an inch */
    } places[] = {{SIL_WOUND_BRONZE, 20, 10},       {SIL_WOUND_BRONZE, 33, 14.25},
                  {SIL_WOUND_BRONZE, 59, 19},       {SIL_WOUND_NICKEL_PLATED, 56, 18},
                  {SIL_WOUND_STEEL, 56.1, 18.0125}, {SIL_WOUND_NICKEL, 55.9, 17.98},
                  {SIL_WOUND_NICKEL, 115, 23},      {SIL_WOUND_NICKEL, 130, 24}};
    for (int k = 0; k < COUNT(places); k++) {
        double core = sil_typical_core(places[k].make, places[k].gauge * 0.0254);
        near(core, places[k].core * 0.0254, 1e-12);
    }
    near(sil_typical_core(SIL_WOUND_NYLON, 0.9), 0.48, 1e-12);
    for (int make = SIL_MATERIAL_NOT_GIVEN; make < SIL_MATERIALS; make++) {
        bool wound = sil_material_wound((sil_material)make);
        assert_int_equal(sil_known(sil_typical_core((sil_material)make, 0.9)), wound);
        assert_false(sil_known(sil_typical_core((sil_material)make, 0.4)));
        assert_false(sil_known(sil_typical_core((sil_material)make, 3.4)));
        assert_false(sil_known(sil_typical_core((sil_material)make, SIL_UNKNOWN)));
    }
}

/* --- the published nylon set --- */

static double places[SIL_PITCH_FRETS + 1];

static sil_pitch_string on_the_published_board(const sil_job *job, int i, double diameter)
{
    const sil_string *string = &job->strings[i];
    for (int n = 0; n <= SIL_PITCH_FRETS; n++) {
        places[n] = sil_fret_place(nylon_scale, n);
    }
    return (sil_pitch_string){.fret_x = places,
                              .scale = nylon_scale,
                              .nut_height = nylon_nut,
                              .saddle_height = nylon_saddle,
                              .unit_mass_kg_m = string->unit_mass_kg_m,
                              .hz = string->hz,
                              .modulus_gpa = string->modulus_gpa,
                              .core = diameter,
                              .ends = SIL_CLAMPED_PINNED};
}

static void the_nylon_profile_is_the_published_set(void **state)
{
    (void)state;
    sil_sheet *sheet = NULL;
    const sil_job *job = read_job("nylon-string-classical", "", &sheet);
    assert_int_equal(job->string_count, COUNT(nylon_set));
    for (int i = 0; i < COUNT(nylon_set); i++) {
        const nylon_row *row = &nylon_set[i];
        const sil_string *string = &job->strings[i];
        assert_string_equal(string->note, row->note);
        near(string->gauge, 2.0 * row->radius, 0.002);
        near(string->unit_mass_kg_m, row->mass / 1000.0, 1e-12);
        near(string->modulus_gpa, row->modulus, 1e-12);
        near(sil_tension(string->unit_mass_kg_m, nylon_scale, string->hz), row->tension, 0.2);
        double diameter = sil_stiff_diameter(string->material, string->gauge, string->core);
        sil_pitch_string pitch = on_the_published_board(job, i, diameter);
        sil_best_pair best = sil_best_pair_find(&pitch);
        near(best.setback, row->setback, 0.08);
        near(best.advance, row->advance, 0.015);
    }
    sil_sheet_free(sheet);
}

/* The masses of all three wound strings imply one core, and by it they come out again. */
static void wound_nylon_weighs_what_was_published(void **state)
{
    (void)state;
    sil_sheet *sheet = NULL;
    const sil_job *job = read_job("nylon-string-classical", "", &sheet);
    for (int i = 3; i < COUNT(nylon_set); i++) {
        const sil_string *string = &job->strings[i];
        double typical = sil_typical_core(string->material, string->gauge);
        near(weigh(job, string, typical) * 1000.0 / nylon_set[i].mass, 1.0, 0.01);
    }
    sil_sheet_free(sheet);
}

/* --- cores that nobody gave --- */

static const sil_compensation *tune(const sil_job *job, sil_plan **plan)
{
    assert_int_equal(sil_plan_make(job, plan), SIL_DONE);
    return sil_plan_compensation(*plan);
}

#define READ                                                                                       \
    "units: mm\ninstrument: {crown: 1.1, head_angle: 14 deg}\nnut: {seat_to_board: 6}\n"           \
    "saddle: {slot_depth: 5, pin_distance: 10}\nreadings:\n"                                       \
    "  - {relief: 0.2, action: {treble: 1.8, bass: 2.3}, first: 0.2, frets: sound,\n"              \
    "     saddle_height: {treble: 9, bass: 10}}\n"

/* Six strings of an acoustic, of which the fourth is the one that is asked about. */
#define STRINGS(fourth)                                                                            \
    READ "strings:\n  - {note: E4, gauge: 0.012 in, make: plain-steel}\n"                          \
         "  - {note: B3, gauge: 0.016 in, make: plain-steel}\n"                                    \
         "  - {note: G3, gauge: 0.024 in, make: wound-bronze, core: 0.011 in}\n" fourth            \
         "  - {note: A2, gauge: 0.042 in, make: wound-bronze, core: 0.016 in}\n"                   \
         "  - {note: E2, gauge: 0.053 in, make: wound-bronze, core: 0.018 in}\n"

static sil_sheet *read_text(const char *text)
{
    char all[4096];
    sil_sheet *sheet = NULL;
    int size = snprintf(all, sizeof all, "sillet: 1\nprofile: steel-string-acoustic\n%s", text);
    sil_status status = sil_sheet_read_bytes(all, (size_t)size, "core.yaml", "profiles", &sheet);
    assert_true(status >= SIL_DONE);
    return sheet;
}

/* What is filed at the slot is the same whoever knows the core; only how far the string stands over
 * it is not told by one that is assumed. */
static void cut_alike(const sil_plan *given, const sil_plan *assumed, int i)
{
    const sil_nut_work *known = sil_plan_nut(given), *told = sil_plan_nut(assumed);
    assert_int_equal(known->verdict[i], SIL_TAKE);
    assert_int_equal(told->verdict[i], SIL_TAKE);
    assert_true(known->first_pass[i] > 0.03);
    near(told->first_pass[i], known->first_pass[i], 1e-12);
    near(told->stack[i], known->stack[i], 1e-12);
    near(told->stack_u[i], known->stack_u[i], 1e-12);
    near(told->floor[i], known->floor[i], 1e-12);
    near(told->depth[i], known->depth[i], 1e-12);
    assert_true(known->stack_bend[i] > 0.01);
    assert_int_equal(sil_known(told->stack_bend[i]), i != 3);
    const sil_saddle_work *was = sil_plan_saddle(given), *is = sil_plan_saddle(assumed);
    near(is->height[i], was->height[i], 1e-12);
    near(is->first_pass[i], was->first_pass[i], 1e-12);
    near(is->dress[i], was->dress[i], 1e-12);
}

/* The same figures as with that core given, and marked; but nothing that a part is cut by. */
static void an_assumed_core_tells_but_does_not_cut(void **state)
{
    (void)state;
    sil_sheet *given = read_text(
        STRINGS("  - {note: D3, gauge: 0.030 in, make: wound-bronze, core: 0.0135 in}\n"));
    sil_sheet *assumed =
        read_text(STRINGS("  - {note: D3, gauge: 0.030 in, make: wound-bronze}\n"));
    sil_plan *one = NULL, *other = NULL;
    const sil_compensation *known = tune(sil_sheet_job(given), &one);
    const sil_compensation *told = tune(sil_sheet_job(assumed), &other);
    for (int i = 0; i < 6; i++) {
        assert_false(sil_plan_core_assumed(one, i));
        assert_int_equal(sil_plan_core_assumed(other, i), i == 3);
        near(sil_plan_pluck(other)->tension[i], sil_plan_pluck(one)->tension[i], 1e-9);
        near(told[i].saddle_only, known[i].saddle_only, 1e-9);
        near(told[i].best.setback, known[i].best.setback, 1e-9);
        assert_true(sil_known(known[i].off_slot));
        assert_int_equal(sil_known(told[i].off_slot), i != 3);
        cut_alike(one, other, i);
        for (int n = 0; n < 20; n++) {
            double force = sil_plan_clean_now(one)->force[i][n];
            near(sil_plan_clean_now(other)->force[i][n], force, 1e-9);
        }
    }
    assert_true(sil_known(sil_plan_slot_best(one).b0));
    assert_false(sil_known(sil_plan_slot_best(other).b0));
    assert_true(sil_known(sil_plan_lowest(other)->relief));
    sil_plan_free(one);
    sil_plan_free(other);
    sil_sheet_free(given);
    sil_sheet_free(assumed);
}

typedef struct core_case {
    const char *fourth;
    bool assumed, tension, tune; /* whether they are told */
} core_case;

static const core_case core_cases[] = {
    {"  - {note: D3, gauge: 0.030 in, make: wound-bronze, core: 0.014 in}\n", false, true, true},
    {"  - {note: D3, gauge: 0.030 in, make: wound-bronze}\n", true, true, true},
    {"  - {note: D3, gauge: 0.030 in, make: wound-bronze, unit_mass: 3.3 g/m}\n", true, true, true},
    {"  - {note: D3, gauge: 0.030 in, make: wound-bronze, core: 0.014 in, unit_mass: 3.3 g/m}\n",
     false, true, true},
    /* Thinner and thicker than the table, and just at its ends, there rounded to hundredths. */
    {"  - {note: D3, gauge: 0.50 mm, make: wound-bronze}\n", false, false, false},
    {"  - {note: D3, gauge: 0.51 mm, make: wound-bronze}\n", true, true, true},
    {"  - {note: D3, gauge: 1.50 mm, make: wound-bronze}\n", true, true, true},
    {"  - {note: D3, gauge: 1.51 mm, make: wound-bronze}\n", false, false, false},
    {"  - {note: D3, gauge: 1.51 mm, make: wound-bronze, unit_mass: 12 g/m}\n", false, true, false},
    {"  - {note: D3, gauge: 0.43 mm, make: wound-nickel}\n", true, true, true},
    {"  - {note: D3, gauge: 0.42 mm, make: wound-nickel}\n", false, false, false},
    {"  - {note: D3, gauge: 0.016 in, make: plain-steel}\n", false, true, true},
    /* No material constants in this profile: the core is known, the mass is not. */
    {"  - {note: D3, gauge: 0.029 in, make: wound-nylon}\n", true, false, false},
    {"  - {note: D3, gauge: 0.029 in, make: wound-nylon, unit_mass: 1.92 g/m, modulus: 7.56 GPa}\n",
     false, true, true},
};

static void cores_are_assumed_where_they_are_needed(void **state)
{
    (void)state;
    for (int k = 0; k < COUNT(core_cases); k++) {
        char text[2048];
        const core_case *row = &core_cases[k];
        snprintf(text, sizeof text, STRINGS("%s"), row->fourth);
        sil_sheet *sheet = read_text(text);
        sil_plan *plan = NULL;
        const sil_compensation *told = tune(sil_sheet_job(sheet), &plan);
        assert_int_equal(sil_plan_core_assumed(plan, 3), row->assumed);
        assert_int_equal(sil_known(sil_plan_pluck(plan)->tension[3]), row->tension);
        assert_int_equal(sil_known(told[3].saddle_only), row->tune);
        sil_plan_free(plan);
        sil_sheet_free(sheet);
    }
}

/* A mass and a modulus belong to the string they were given for: where a sheet lists its own
 * strings, none of the profile's stays, even under the same gauge and make. */
static void a_profile_s_mass_does_not_outlive_its_string(void **state)
{
    (void)state;
    sil_sheet *sheet = NULL;
    const sil_job *job =
        read_job("nylon-string-classical",
                 "strings:\n  - {note: E4, gauge: 0.0280 in, make: plain-nylon}\n"
                 "  - {note: B3, gauge: 0.033 in, make: plain-nylon}\n"
                 "  - {note: G3, gauge: 0.041 in, make: plain-fluorocarbon}\n"
                 "  - {note: D3, gauge: 0.030 in, make: wound-nylon, unit_mass: 2 g/m}\n",
                 &sheet);
    assert_int_equal(job->string_count, 4);
    for (int i = 0; i < 4; i++) {
        assert_int_equal(sil_known(job->strings[i].unit_mass_kg_m), i == 3);
        assert_false(sil_known(job->strings[i].modulus_gpa));
    }
    assert_false(sil_known(job->strings[4].unit_mass_kg_m));
    sil_sheet_free(sheet);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(strings_weigh_what_was_published),
        cmocka_unit_test(few_gauges_have_no_published_mass),
        cmocka_unit_test(typical_cores_weigh_the_whole_table),
        cmocka_unit_test(typical_cores_run_straight_between_gauges),
        cmocka_unit_test(the_nylon_profile_is_the_published_set),
        cmocka_unit_test(wound_nylon_weighs_what_was_published),
        cmocka_unit_test(an_assumed_core_tells_but_does_not_cut),
        cmocka_unit_test(cores_are_assumed_where_they_are_needed),
        cmocka_unit_test(a_profile_s_mass_does_not_outlive_its_string),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
