/* SPDX-License-Identifier: MIT */
/* The profiles against themselves and against print. Every one at its own targets rings clean under
 * its own medium pick: a target that fails it would send a sound instrument back to the bench. */
#include <dirent.h>
#include <sillet/sillet.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "near.h"

enum { PROFILES = 16 }; /* at least so many are in profiles/ */

/* What one reads of the profile's typical instrument, its crowns sound, exactly at its targets. */
static void read_at_targets(const sil_job *job, sil_reading *reading)
{
    sil_reading_clear(reading);
    reading->relief = (sil_relief_reading){.gap = job->targets.relief.aim, .string = -1};
    reading->gaps.first_held = job->targets.first_held;
    for (int i = 0; i < job->string_count; i++) {
        reading->gaps.action[i] = job->targets.action[i].aim;
        reading->gaps.first[i] = job->targets.first[i].aim;
    }
    reading->crowns_read = SIL_CROWNS_SOUND;
}

/* A job of the profile's instrument; the sheet that holds it is to be freed. */
static sil_job job_of(const char *profile, sil_sheet **sheet)
{
    char words[160];
    snprintf(words, sizeof words, "sillet: 1\nprofile: %s\nattack: medium\nreadings: [{}]\n",
             profile);
    assert_int_equal(sil_sheet_read_bytes(words, strlen(words), profile, "profiles", sheet), 0);
    return *sil_sheet_job(*sheet);
}

/* Returned: how many notes of a profile buzz under its medium pick, each of them printed. */
static int count_buzzing(const char *profile)
{
    sil_sheet *sheet = NULL;
    sil_plan *plan = NULL;
    sil_job job = job_of(profile, &sheet);
    sil_reading reading;
    read_at_targets(&job, &reading);
    job.readings = &reading;
    job.reading_count = 1;
    assert_int_equal(sil_plan_make(&job, &plan), 0);
    const sil_clearance *clean = sil_plan_clean_now(plan);
    int buzzing = 0;
    for (int i = 0; i < job.string_count; i++) {
        for (int stop = 0; stop < job.instrument.frets; stop++) {
            double force = clean->force[i][stop], pick = job.attack.force[i];
            if (!(force >= pick)) { /* one that is not known fails, too */
                print_error("%s: string %d at fret %d: clean to %.3f N, picked with %.3f\n",
                            profile, i + 1, stop, force, pick);
                buzzing++;
            }
        }
    }
    sil_plan_free(plan);
    sil_sheet_free(sheet);
    return buzzing;
}

static void targets_carry_their_own_pick(void **state)
{
    (void)state;
    int profiles = 0, buzzing = 0;
    DIR *folder = opendir("profiles");
    assert_non_null(folder);
    for (struct dirent *entry = readdir(folder); entry; entry = readdir(folder)) {
        char *end = strstr(entry->d_name, ".yaml");
        if (end) {
            *end = '\0';
            buzzing += count_buzzing(entry->d_name);
            profiles++;
        }
    }
    closedir(folder);
    assert_true(profiles >= PROFILES);
    assert_int_equal(buzzing, 0);
}

/* Print, open gap at fret 1: a guitar-kit manual has 0.012 in under plain strings and 0.020 under
 * wound ones, a set-up manual 0.020 to 0.022 for guitar and bass. A nut set by either is left alone,
 * and no plain string's range goes past the larger. */
static void first_gaps_of_print_are_in_range(void **state)
{
    (void)state;
    static const char *const electrics[] = {"electric-guitar", "seven-string",  "eight-string",
                                            "baritone",        "electric-bass", "five-string-bass"};
    for (size_t k = 0; k < sizeof electrics / sizeof *electrics; k++) {
        sil_sheet *sheet;
        sil_job job = job_of(electrics[k], &sheet);
        sil_reading reading;
        sil_bench bench;
        sil_fit fit = {0};
        read_at_targets(&job, &reading);
        for (int i = 0; i < job.string_count; i++) {
            reading.gaps.first[i] = job.targets.first[i].high;
        }
        job.readings = &reading;
        job.reading_count = 1;
        sil_job_bench(&job, 0, &bench);
        fit.bend = sil_bend(&bench.board, job.targets.relief.aim);
        sil_fit_read(&bench.board, &bench.gaps, &fit);
        for (int i = 0; i < job.string_count; i++) {
            double gap = sil_first_gap(&bench.board, &fit, i, SIL_HOLD_OPEN) / 25.4;
            bool wound = sil_material_wound(job.strings[i].material);
            if (!(wound ? gap >= 0.020 : gap >= 0.012 && gap <= 0.022)) {
                fail_msg("%s, string %d: open gap to %.4f in", electrics[k], i + 1, gap);
            }
        }
        sil_sheet_free(sheet);
    }
}

/* Print has the relief of an acoustic from nothing to 0.012 in. */
static void an_acoustic_may_be_nearly_straight(void **state)
{
    (void)state;
    static const char *const acoustics[] = {"steel-string-acoustic", "fanned-acoustic",
                                            "twelve-string"};
    for (size_t k = 0; k < sizeof acoustics / sizeof *acoustics; k++) {
        sil_sheet *sheet;
        sil_job job = job_of(acoustics[k], &sheet);
        near(job.targets.relief.low, 0.05, 1e-12);
        assert_true(job.targets.relief.high <= 0.012 * 25.4);
        sil_sheet_free(sheet);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(targets_carry_their_own_pick),
        cmocka_unit_test(first_gaps_of_print_are_in_range),
        cmocka_unit_test(an_acoustic_may_be_nearly_straight),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
