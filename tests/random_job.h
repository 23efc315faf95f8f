/* SPDX-License-Identifier: MIT */
/* Random jobs as plain data, for tests of what is made of them. Figures are invented; every form of
 * a job comes up: strings 1 to 12, fans, courses, zero frets, bridges of all kinds, figures not
 * given, readings in range and out, worn crowns. */
#ifndef SILLET_TESTS_RANDOM_JOB_H
#define SILLET_TESTS_RANDOM_JOB_H

#include <sillet/plan.h>
#include <stdio.h>

#include "near.h"

typedef struct random_job {
    sil_job job;
    sil_reading reading;
    sil_crown_off crowns[6];
    char notes[SIL_STRINGS_MAX][16];
} random_job;

static inline int whole(uint64_t *seed, int low, int high)
{
    int value = (int)uniform(seed, low, high + 1.0);
    return value > high ? high : value;
}

static inline bool one_in(uint64_t *seed, int count)
{
    return whole(seed, 1, count) == 1;
}

static inline void make_strings(random_job *made, uint64_t *seed, int strings)
{
    static const char *const names[] = {"C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A"};
    made->job.string_count = strings;
    for (int i = 0; i < strings; i++) {
        sil_string *string = &made->job.strings[i];
        bool wound = i >= strings / 2;
        string->gauge = uniform(seed, 0.22, 0.6) + (wound ? 0.08 * (i - strings / 2) : 0.0);
        string->material = wound ? SIL_WOUND_BRONZE : SIL_PLAIN_STEEL;
        string->core = wound ? string->gauge * 0.45 : SIL_UNKNOWN;
        snprintf(made->notes[i], sizeof made->notes[i], "%s%d", names[whole(seed, 0, 9)],
                 whole(seed, 1, 5));
        string->note = made->notes[i];
        sil_note_hz(string->note, &string->hz);
    }
}

/* Pairs, or neighbours joined as it comes; returns how many strings join the one before. */
static inline int make_courses(sil_job *job, uint64_t *seed, int strings)
{
    bool pairs = strings % 2 == 0 && one_in(seed, 3);
    bool mixed = !pairs && one_in(seed, 6);
    int joined = 0;
    for (int i = 0; i < strings && (pairs || mixed); i++) {
        bool joins = i > 0 && (pairs ? i % 2 == 1 : one_in(seed, 3));
        joined += joins;
        job->strings[i].course = i + 1 - joined;
    }
    return joined;
}

static inline sil_saddle_kind any_kind(uint64_t *seed)
{
    return one_in(seed, 4)   ? SIL_SADDLE_INDIVIDUAL
           : one_in(seed, 6) ? SIL_SADDLE_GLUED
           : one_in(seed, 5) ? SIL_SADDLE_TWO_POST
           : one_in(seed, 5) ? SIL_SADDLE_FLOATING
                             : SIL_SADDLE_SLOTTED;
}

static inline void make_parts(sil_job *job, uint64_t *seed, int strings)
{
    int joined = make_courses(job, seed, strings), courses = strings - joined;
    sil_job_nut *nut = &job->nut;
    sil_job_saddle *saddle = &job->saddle;
    nut->pair = uniform(seed, 1.7, 2.4);
    nut->kind = one_in(seed, 8) ? SIL_NUT_ZERO_FRET : SIL_NUT_SLOTTED;
    nut->width = 12.0 + 5.5 * (courses - 1) + nut->pair * joined + uniform(seed, 0.0, 5.0);
    nut->edge_treble = uniform(seed, 2.0, 4.0);
    nut->edge_bass = uniform(seed, 2.0, 4.0);
    nut->thickness = one_in(seed, 6) ? SIL_UNKNOWN : uniform(seed, 3.0, 7.0);
    nut->seat_to_board = one_in(seed, 6) ? SIL_UNKNOWN : uniform(seed, 3.0, 9.0);
    nut->spacing = one_in(seed, 3) ? SIL_EQUAL_CENTRE : SIL_EQUAL_GAP;
    nut->material = one_in(seed, 2) ? "bone" : NULL;
    saddle->kind = any_kind(seed);
    saddle->pair = uniform(seed, 1.8, 3.0);
    saddle->spread = 8.0 * (courses - 1) + saddle->pair * joined + uniform(seed, 0.0, 10.0) +
                     (strings > 1 ? 0.0 : 10.0);
    saddle->post_spread = uniform(seed, 50.0, 90.0);
    saddle->travel = one_in(seed, 3) ? uniform(seed, 0.0, 2.0) : SIL_UNKNOWN;
    saddle->length = saddle->spread + uniform(seed, 8.0, 18.0);
    saddle->thickness = uniform(seed, 2.3, 4.0);
    saddle->slot_depth = one_in(seed, 5) ? SIL_UNKNOWN : uniform(seed, 3.0, 6.0);
    saddle->pickup = one_in(seed, 4) ? 0.6 : 0.0;
    bool feet = saddle->kind == SIL_SADDLE_FLOATING && one_in(seed, 2);
    saddle->pitch = feet ? SIL_UNKNOWN : 0.5;
    saddle->material = one_in(seed, 2) ? "bone, unbleached" : NULL;
    double treble = uniform(seed, 0.5, 3.0), bass = uniform(seed, 1.0, 5.0);
    for (int i = 0; i < strings; i++) {
        double share = strings > 1 ? (double)i / (strings - 1) : 0.0;
        saddle->setback[i] = treble + (bass - treble) * share + uniform(seed, -0.5, 0.5);
        saddle->pin_distance[i] = one_in(seed, 4) ? SIL_UNKNOWN : uniform(seed, 6.0, 20.0);
    }
}

static inline void make_wishes(sil_job *job, uint64_t *seed, int strings)
{
    double action = uniform(seed, 1.2, 2.8), first = uniform(seed, 0.04, 0.1);
    job->targets.relief = (sil_band){0.08, 0.15, 0.25};
    job->targets.first_held = one_in(seed, 6) ? SIL_HOLD_2 : SIL_HOLD_3;
    for (int i = 0; i < strings; i++) {
        job->targets.action[i] = (sil_band){action - 0.2, action, action + 0.25};
        job->targets.first[i] = (sil_band){first - 0.02, first, first + 0.04};
    }
    job->tools = (sil_tools){.action = 0.1, .first = 0.02, .relief = 0.02, .caliper = 0.05};
    job->limits = (sil_limits){.wear = 0.08,
                               .least_crown = 0.6,
                               .least_protrusion = 1.0,
                               .most_protrusion = 6.0,
                               .least_in_slot = 0.5,
                               .least_break_deg = 12,
                               .most_shim = 0.8,
                               .most_relief = 0.5,
                               .least_first = 0.04,
                               .humidity_low_pct = 35,
                               .humidity_high_pct = 65};
    job->allowances = (sil_allowances){.slot_plain = 0.04,
                                       .slot_wound = 0.08,
                                       .bury_plain = 1.0,
                                       .bury_wound = 0.5,
                                       .fall_share = 0.5,
                                       .shim_step = 0.1,
                                       .band_relief = 0.05,
                                       .band_action = 0.15,
                                       .band_first = 0.03,
                                       .blank_length = 1.0,
                                       .blank_thickness = 0.2,
                                       .blank_height = 1.5};
}

/* How far the saddle stands out, at the outer strings, near what the caliper has of it. The seed is
 * a copy, so that what is drawn afterwards does not depend on it. */
static inline void make_stands_out(random_job *made, uint64_t seed, int strings)
{
    const sil_job_saddle *saddle = &made->job.saddle;
    sil_reading *reading = &made->reading;
    double in_slot = saddle->slot_depth - saddle->pickup;
    double treble = reading->saddle_height_treble - in_slot + uniform(&seed, -0.2, 0.2);
    double bass = reading->saddle_height_bass - in_slot + uniform(&seed, -0.2, 0.2);
    double guess = uniform(&seed, 2.5, 6.0);
    bool in_bridge = saddle->kind == SIL_SADDLE_SLOTTED || saddle->kind == SIL_SADDLE_GLUED;
    if (in_bridge && !one_in(&seed, 5)) {
        reading->stands_out[0] = sil_known(treble) ? treble : guess;
        reading->stands_out[strings - 1] = sil_known(bass) ? bass : guess;
    }
}

static inline void make_reading(random_job *made, uint64_t *seed, int strings)
{
    sil_reading *reading = &made->reading;
    const sil_instrument *it = &made->job.instrument;
    sil_reading_clear(reading);
    reading->date = "2026-03-14";
    reading->humidity_pct = one_in(seed, 12) ? 25.0 : 47.0;
    reading->condition.bridge = one_in(seed, 20) ? SIL_UNSOUND : SIL_SOUND;
    reading->relief = (sil_relief_reading){.gap = one_in(seed, 5)    ? uniform(seed, 0.0, 0.5)
                                                  : one_in(seed, 12) ? SIL_UNKNOWN
                                                                     : uniform(seed, 0.09, 0.24),
                                           .over = 7,
                                           .low = 1,
                                           .high = it->join,
                                           .string = -1};
    reading->gaps.action_at = 12;
    reading->gaps.first_held = SIL_HOLD_3;
    double off_action = uniform(seed, -0.4, 0.9), off_first = uniform(seed, -0.03, 0.12);
    for (int i = 0; i < strings; i++) {
        double action = made->job.targets.action[i].aim + off_action + uniform(seed, -0.2, 0.2);
        double first = made->job.targets.first[i].aim + off_first + uniform(seed, -0.02, 0.02);
        reading->gaps.action[i] = one_in(seed, 60) ? SIL_UNKNOWN : fmax(action, 0.5);
        reading->gaps.first[i] = one_in(seed, 40) ? 0.0 : fmax(first, 0.01);
        reading->gaps.first_open[i] = SIL_UNKNOWN;
    }
    reading->crowns_read = one_in(seed, 8) ? SIL_CROWNS_NOT_READ : SIL_CROWNS_SOUND;
    if (one_in(seed, 5)) {
        reading->crowns_read = SIL_CROWNS_LISTED;
        reading->crown_count = whole(seed, 1, 6);
        reading->crowns = made->crowns;
        for (int k = 0; k < reading->crown_count; k++) {
            made->crowns[k] = (sil_crown_off){whole(seed, 1, strings), k + 1,
                                              one_in(seed, 3) ? 0.1 : uniform(seed, -0.15, 0.0)};
        }
    }
    if (!one_in(seed, 4)) {
        reading->saddle_height_treble = uniform(seed, 7.0, 10.0);
        reading->saddle_height_bass = uniform(seed, 7.0, 11.0);
    }
    make_stands_out(made, *seed, strings);
    for (int i = 0; i < strings; i++) {
        reading->confirmed[i] = !one_in(seed, 3);
    }
}

/* A job that its check finds no error in. */
static inline void make_random_job(random_job *made, uint64_t *seed, int strings)
{
    sil_job *job = &made->job;
    sil_instrument *it = &job->instrument;
    sil_job_clear(job);
    it->scale = uniform(seed, 560.0, 870.0);
    if (one_in(seed, 4)) {
        it->scale_bass = it->scale + uniform(seed, 5.0, 50.0) * fmin(1.0, strings / 6.0);
        it->square = whole(seed, 0, 12);
    }
    it->pocket = one_in(seed, 2) ? uniform(seed, 60.0, 90.0) : SIL_UNKNOWN;
    it->heel = one_in(seed, 2) ? uniform(seed, 60.0, 100.0) : SIL_UNKNOWN;
    it->frets = whole(seed, 18, 24);
    it->join = whole(seed, 12, 16);
    it->radius_nut = one_in(seed, 4) ? (double)INFINITY : uniform(seed, 240.0, 420.0);
    it->radius_end =
        isinf(it->radius_nut) ? (double)INFINITY : it->radius_nut * uniform(seed, 1.0, 1.5);
    it->crown = one_in(seed, 6) ? SIL_UNKNOWN : uniform(seed, 0.7, 1.3);
    it->head_angle_deg = one_in(seed, 6) ? SIL_UNKNOWN : uniform(seed, 0.0, 17.0);
    it->rod = one_in(seed, 4) ? SIL_ROD_NONE : SIL_ROD_TWO_WAY;
    it->rod_state = SIL_ROD_WORKS;
    it->handed = one_in(seed, 4) ? SIL_LEFT_HANDED : SIL_RIGHT_HANDED;
    make_strings(made, seed, strings);
    make_parts(job, seed, strings);
    /* No part stands at more than 45 degrees across its strings, and few strings are close together. */
    if (it->scale_bass > it->scale) {
        double across = strings < 4 ? 0.0 : fmin(job->saddle.spread, job->nut.width - 8.0);
        it->scale_bass = fmin(it->scale_bass, it->scale + 0.7 * across);
    }
    make_wishes(job, seed, strings);
    job->attack = (sil_attack){.name = "light", .at = 110.0};
    for (int i = 0; i < strings; i++) {
        job->attack.force[i] = 0.6;
    }
    job->materials[SIL_PLAIN_STEEL] = (sil_material_constants){206.0, 7850.0, SIL_UNKNOWN};
    job->materials[SIL_WOUND_BRONZE] = (sil_material_constants){206.0, 7850.0, 8800.0};
    make_reading(made, seed, strings);
    job->readings = &made->reading;
    job->reading_count = one_in(seed, 30) ? 0 : 1;
}

/* Has a random job make a nut or a saddle from a blank, one in six of them, some of these as copies;
 * what was read before may or may not be there. */
static inline void make_from_blank(random_job *made, uint64_t seed)
{
    sil_job *job = &made->job;
    int strings = job->string_count;
    sil_working working = sil_saddle_working(job->saddle.kind, job->saddle.pitch);
    if (!one_in(&seed, 6)) {
        return;
    }
    job->make.nut = job->nut.kind == SIL_NUT_SLOTTED && !one_in(&seed, 3);
    job->make.saddle = sil_working_in_slot(working) && one_in(&seed, 2);
    bool copies_nut = job->make.nut && one_in(&seed, 4);
    bool copies_saddle = job->make.saddle && one_in(&seed, 4);
    double floor = uniform(&seed, 6.0, 9.0), height = uniform(&seed, 7.0, 11.0);
    for (int i = 0; i < strings; i++) {
        job->nut.floors[i] = copies_nut ? floor + uniform(&seed, 0.0, 0.5) : SIL_UNKNOWN;
        job->saddle.old[i] = copies_saddle ? height + uniform(&seed, 0.0, 0.5) : SIL_UNKNOWN;
    }
    if (one_in(&seed, 2)) {
        made->reading.bridge_top_treble = made->reading.bridge_top_bass = uniform(&seed, 0.5, 2.0);
    }
    bool strung = one_in(&seed, 2);
    for (int i = 0; i < strings && !strung; i++) {
        made->reading.gaps.first[i] = made->reading.gaps.action[i] = SIL_UNKNOWN;
    }
}

#endif
