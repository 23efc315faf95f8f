/* SPDX-License-Identifier: MIT */
/* Laws of the model that must be true of any instrument, each with its reason. They are tried on
 * random jobs, and the seed of a job that breaks one is printed. */
#include <sillet/sheet.h>
#include <string.h>

#include "planned.h"
#include "random_job.h"

enum { JOBS = 400 };

typedef struct pair {
    random_job made, other;
    sil_plan plan, changed;
} pair;

static pair both;

/* A random job all of whose readings are there, and its plan. */
static void next_job(uint64_t *seed)
{
    sil_job *job = &both.made.job;
    sil_reading *reading = &both.made.reading;
    do {
        make_random_job(&both.made, seed, whole(seed, 1, 12));
    } while (job->reading_count == 0 || !(reading->relief.gap > 0.0));
    for (int i = 0; i < job->string_count; i++) {
        double *gaps[] = {&reading->gaps.action[i], &reading->gaps.first[i]};
        *gaps[0] = *gaps[0] > 0.0 ? *gaps[0] : 2.0;
        *gaps[1] = *gaps[1] > 0.0 ? *gaps[1] : 0.1;
    }
    plan_into(job, &both.plan);
}

/* A copy of the job to change, its lists its own. */
static sil_job *copy_job(void)
{
    both.other = both.made;
    both.other.job.readings = &both.other.reading;
    both.other.reading.crowns = both.other.crowns;
    return &both.other.job;
}

static void law(bool holds, const char *what, uint64_t seed)
{
    if (!holds) {
        fail_msg("%s (seed %llu)", what, (unsigned long long)seed);
    }
}

static bool alike(double a, double b, double tolerance)
{
    return (!sil_known(a) && !sil_known(b)) || fabs(a - b) <= tolerance;
}

/* What a cut is for: taken from the heights, it leaves the aim. */
static void cuts_applied_give_the_aims(void **state)
{
    (void)state;
    uint64_t seed = 51;
    for (int k = 0; k < JOBS; k++) {
        uint64_t from = seed;
        next_job(&seed);
        const sil_stages *stages = &both.plan.stages;
        const sil_bench *bench = &both.plan.bench;
        sil_fit fit = stages->fit[SIL_FRETS];
        for (int i = 0; i < bench->board.strings; i++) {
            fit.nut_height[i] -= stages->deepen[i];
            double first = sil_first_gap(&bench->board, &fit, i, bench->targets.first_held);
            law(alike(first, bench->targets.first[i].aim, 1e-9), "deepen misses its aim", from);
            fit.nut_height[i] = stages->fit[SIL_NUT].nut_height[i];
            fit.saddle_height[i] -= stages->lower[i];
            double action = sil_action(&bench->board, &fit, i, 12);
            law(alike(action, bench->targets.action[i].aim, 1e-9), "lower misses its aim", from);
        }
    }
}

static void scale_band(sil_band *band, double k)
{
    *band = (sil_band){band->low * k, band->aim * k, band->high * k};
}

/* Every length of a job times k. */
static void scale_job(sil_job *job, sil_reading *reading, sil_crown_off *crowns, double k)
{
    double *lengths[] = {&job->instrument.scale,
                         &job->instrument.scale_bass,
                         &job->nut.pair,
                         &job->saddle.pair,
                         &job->saddle.post_spread,
                         &job->saddle.travel,
                         &job->saddle.travel_up,
                         &job->instrument.radius_nut,
                         &job->instrument.radius_end,
                         &job->instrument.crown,
                         &job->instrument.fallaway,
                         &job->nut.width,
                         &job->nut.thickness,
                         &job->nut.edge_treble,
                         &job->nut.edge_bass,
                         &job->nut.seat_to_board,
                         &job->nut.advance,
                         &job->saddle.length,
                         &job->saddle.thickness,
                         &job->saddle.spread,
                         &job->saddle.slot_depth,
                         &job->saddle.pickup,
                         &job->saddle.pitch,
                         &job->tools.action,
                         &job->tools.first,
                         &job->tools.relief,
                         &job->tools.caliper,
                         &job->tools.ruler,
                         &job->limits.wear,
                         &job->limits.least_crown,
                         &job->limits.least_protrusion,
                         &job->limits.most_protrusion,
                         &job->limits.good_protrusion,
                         &job->limits.most_shim,
                         &job->limits.most_relief,
                         &job->allowances.shim_step,
                         &job->allowances.leave_slot,
                         &job->allowances.leave_base,
                         &job->allowances.leave_top,
                         &reading->relief.gap,
                         &reading->saddle_height_treble,
                         &reading->saddle_height_bass};
    for (size_t i = 0; i < sizeof lengths / sizeof lengths[0]; i++) {
        *lengths[i] *= k;
    }
    scale_band(&job->targets.relief, k);
    for (int i = 0; i < job->string_count; i++) {
        job->strings[i].gauge *= k;
        job->strings[i].core *= k;
        job->saddle.setback[i] *= k;
        job->saddle.pin_distance[i] *= k;
        reading->gaps.action[i] *= k;
        reading->gaps.first[i] *= k;
        reading->stands_out[i] *= k;
        scale_band(&job->targets.action[i], k);
        scale_band(&job->targets.first[i], k);
    }
    for (int i = 0; i < reading->crown_count; i++) {
        crowns[i].off *= k;
    }
}

/* What is likely, and what stands out, is so many mm, and does not scale: every reading is made
 * likely and confirmed. */
static void believe_all(void)
{
    static const sil_plausible any[] = {{"readings.relief", -1e3, 1e3},
                                        {"readings.frets.off", -1e3, 1e3},
                                        {"readings.saddle_height", 0.0, 1e3},
                                        {"readings.bridge_top", -1e3, 1e3}};
    both.made.job.plausible = any;
    both.made.job.plausible_count = sizeof any / sizeof *any;
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        both.made.reading.confirmed[i] = true;
    }
    plan_into(&both.made.job, &both.plan);
}

/* The model has no length of its own: an instrument twice the size is cut twice as much. */
static void every_length_times_k_gives_every_cut_times_k(void **state)
{
    (void)state;
    uint64_t seed = 52;
    for (int n = 0; n < JOBS; n++) {
        uint64_t from = seed;
        double k = uniform(&seed, 0.5, 2.0);
        next_job(&seed);
        believe_all();
        sil_job *job = copy_job();
        scale_job(job, &both.other.reading, both.other.crowns, k);
        plan_into(job, &both.changed);
        const sil_plan *a = &both.plan, *b = &both.changed;
        for (int i = 0; i < job->string_count; i++) {
            law(alike(a->stages.deepen[i] * k, b->stages.deepen[i], 1e-8) &&
                    alike(a->stages.lower[i] * k, b->stages.lower[i], 1e-8) &&
                    alike(a->stages.lower_u[i] * k, b->stages.lower_u[i], 1e-8),
                "a cut does not scale", from);
            law(alike(a->nut.stack[i] * k, b->nut.stack[i], 1e-8), "a stack does not scale", from);
            /* The most that is dressed off one string's top, and the least by which readings
             * disagree, are lengths of the model's own. */
            bool sanded = a->saddle.cut.b0 != 0.0, other = b->saddle.cut.b0 != 0.0;
            bool own = sanded != other || a->saddle.bottom != b->saddle.bottom ||
                       a->saddle.present_disagree != b->saddle.present_disagree;
            law(own || alike(a->saddle.height[i] * k, b->saddle.height[i], 1e-8),
                "a height does not scale", from);
        }
    }
}

static void swap(void *a, void *b, size_t size)
{
    char kept[sizeof(sil_string)];
    memcpy(kept, a, size);
    memcpy(a, b, size);
    memcpy(b, kept, size);
}

/* The same instrument seen in a mirror: the last string is the first. */
static void mirror_job(sil_job *job, sil_reading *reading, sil_crown_off *crowns)
{
    int last = job->string_count - 1;
    if (sil_known(job->instrument.scale_bass)) {
        swap(&job->instrument.scale, &job->instrument.scale_bass, sizeof(double));
    }
    swap(&job->nut.edge_treble, &job->nut.edge_bass, sizeof(double));
    swap(&reading->saddle_height_treble, &reading->saddle_height_bass, sizeof(double));
    for (int i = 0; i < last - i; i++) {
        swap(&job->strings[i], &job->strings[last - i], sizeof(sil_string));
        swap(&job->saddle.setback[i], &job->saddle.setback[last - i], sizeof(double));
        swap(&job->saddle.pin_distance[i], &job->saddle.pin_distance[last - i], sizeof(double));
        swap(&reading->gaps.action[i], &reading->gaps.action[last - i], sizeof(double));
        swap(&reading->gaps.first[i], &reading->gaps.first[last - i], sizeof(double));
        swap(&reading->stands_out[i], &reading->stands_out[last - i], sizeof(double));
        swap(&reading->confirmed[i], &reading->confirmed[last - i], sizeof(bool));
        swap(&job->targets.action[i], &job->targets.action[last - i], sizeof(sil_band));
        swap(&job->targets.first[i], &job->targets.first[last - i], sizeof(sil_band));
        swap(&job->attack.force[i], &job->attack.force[last - i], sizeof(double));
    }
    for (int i = 0; i < reading->crown_count; i++) {
        crowns[i].string = last + 2 - crowns[i].string;
    }
}

static void mirrored_in_is_mirrored_out(void **state)
{
    (void)state;
    uint64_t seed = 53;
    for (int n = 0; n < JOBS; n++) {
        uint64_t from = seed;
        next_job(&seed);
        sil_job *job = copy_job();
        mirror_job(job, &both.other.reading, both.other.crowns);
        plan_into(job, &both.changed);
        const sil_plan *a = &both.plan, *b = &both.changed;
        int last = job->string_count - 1;
        if (a->bench.board.course[last] == 0) {
            continue; /* one course has no other side */
        }
        for (int i = 0; i <= last; i++) {
            int m = last - i;
            law(alike(a->bench.board.nut_z[i], -b->bench.board.nut_z[m], 1e-9),
                "centres are not mirrored", from);
            law(alike(a->stages.lower[i], b->stages.lower[m], 1e-9), "cuts are not mirrored", from);
            law(alike(a->nut.floor[i], b->nut.floor[m], 1e-9), "floors are not mirrored", from);
            law(alike(a->saddle.dress[i], b->saddle.dress[m], 1e-7), "dressing is not mirrored",
                from);
            law(alike(a->clean_after.force[i][0], b->clean_after.force[m][0], 1e-7),
                "clean forces are not mirrored", from);
        }
    }
}

/* The string stands over each crown by a sum that grows with the saddle's height, and for the open
 * string with the nut's: a lower saddle never rings harder, a higher slot never buzzes sooner. */
static void clean_forces_go_one_way(void **state)
{
    (void)state;
    uint64_t seed = 54;
    for (int n = 0; n < JOBS; n++) {
        uint64_t from = seed;
        next_job(&seed);
        const sil_board *board = &both.plan.bench.board;
        sil_clearance was, lowered, raised;
        sil_fit fit = both.plan.stages.fit[SIL_NOW], low = fit, high = fit;
        for (int i = 0; i < board->strings; i++) {
            low.saddle_height[i] -= uniform(&seed, 0.0, 1.0);
            high.nut_height[i] += uniform(&seed, 0.0, 0.5);
        }
        sil_clearance_find(board, &fit, &both.plan.pluck, &was);
        sil_clearance_find(board, &low, &both.plan.pluck, &lowered);
        sil_clearance_find(board, &high, &both.plan.pluck, &raised);
        for (int i = 0; i < board->strings; i++) {
            for (int stop = 0; stop < board->frets; stop++) {
                law(lowered.force[i][stop] <= was.force[i][stop] + 1e-9,
                    "a lower saddle raised a clean force", from);
            }
            law(raised.force[i][0] >= was.force[i][0] - 1e-9,
                "a higher slot lowered the open string's clean force", from);
        }
    }
}

/* A reading more is a cut more, by the same everywhere: each cut is linear in its own reading, as long
 * as the rod is not turned for the one alone, to give the saddle room. */
static void a_higher_reading_is_a_deeper_cut(void **state)
{
    (void)state;
    uint64_t seed = 55;
    for (int n = 0; n < JOBS; n++) {
        uint64_t from = seed;
        next_job(&seed);
        sil_job *job = copy_job();
        double more = uniform(&seed, 0.01, 0.3);
        for (int i = 0; i < job->string_count; i++) {
            both.other.reading.gaps.action[i] += more;
        }
        plan_into(job, &both.changed);
        bool same = both.changed.bench.straighten == both.plan.bench.straighten;
        for (int i = 0; i < job->string_count && same; i++) {
            double t = sil_leverage(&both.plan.bench.board, i);
            law(alike(both.changed.stages.lower[i] - both.plan.stages.lower[i], more / t, 1e-9),
                "the cut does not follow the action by the leverage", from);
        }
    }
}

/* With every reading there, nothing of the heights and cuts is unknown or without end. */
static void no_height_is_lost(void **state)
{
    (void)state;
    uint64_t seed = 56;
    for (int n = 0; n < JOBS; n++) {
        uint64_t from = seed;
        next_job(&seed);
        for (int i = 0; i < both.made.job.string_count; i++) {
            const sil_stages *stages = &both.plan.stages;
            double all =
                stages->deepen[i] + stages->deepen_u[i] + stages->lower[i] + stages->lower_u[i];
            for (int stage = 0; stage < SIL_STAGES; stage++) {
                all += stages->fit[stage].nut_height[i] + stages->fit[stage].saddle_height[i];
            }
            law(isfinite(all), "a height or cut is unknown", from);
        }
    }
}

/* One sheet, its bare lengths in a unit. */
static void plan_sheet(const double figures[8], sil_unit unit, sil_sheet **sheet, sil_plan *plan)
{
    char text[1024], f[8][SIL_NUMBER_FULL_MAX];
    for (int i = 0; i < 8; i++) {
        sil_number_write_full(f[i], unit == SIL_INCH ? figures[i] / 25.4 : figures[i]);
    }
    int size =
        snprintf(text, sizeof text,
                 "sillet: 1\nunits: %s\nprofile: steel-string-acoustic\n"
                 "instrument: {scale: %s, crown: %s, rod: two-way}\n"
                 "nut: {seat_to_board: %s}\nsaddle: {slot_depth: %s}\n"
                 "readings:\n  - {relief: %s, action: %s, first: %s, frets: sound, "
                 "saddle_height: %s}\n",
                 unit == SIL_INCH ? "in" : "mm", f[0], f[1], f[2], f[3], f[4], f[5], f[6], f[7]);
    assert_int_equal(sil_sheet_read_bytes(text, (size_t)size, "random", "profiles", sheet), 0);
    plan_into(sil_sheet_job(*sheet), plan);
}

/* A sheet in inches is the same sheet. */
static void inches_and_millimetres_agree(void **state)
{
    (void)state;
    uint64_t seed = 57;
    for (int n = 0; n < 100; n++) {
        uint64_t from = seed;
        const double ranges[8][2] = {{600, 690}, {0.8, 1.3}, {5, 7},       {4, 6},
                                     {0.1, 0.3}, {1.5, 3.5}, {0.05, 0.25}, {8, 11}};
        double figures[8];
        for (int i = 0; i < 8; i++) {
            figures[i] = uniform(&seed, ranges[i][0], ranges[i][1]);
        }
        sil_sheet *mm = NULL, *in = NULL;
        plan_sheet(figures, SIL_MM, &mm, &both.plan);
        plan_sheet(figures, SIL_INCH, &in, &both.changed);
        for (int i = 0; i < both.plan.job->string_count; i++) {
            law(alike(both.plan.stages.deepen[i], both.changed.stages.deepen[i], 1e-9) &&
                    alike(both.plan.stages.lower[i], both.changed.stages.lower[i], 1e-9) &&
                    alike(both.plan.saddle.height[i], both.changed.saddle.height[i], 1e-9) &&
                    alike(both.plan.nut.stack[i], both.changed.nut.stack[i], 1e-9),
                "inches and millimetres differ", from);
        }
        sil_sheet_free(mm);
        sil_sheet_free(in);
    }
}

int main(void)
{
    const struct CMUnitTest laws[] = {
        cmocka_unit_test(cuts_applied_give_the_aims),
        cmocka_unit_test(every_length_times_k_gives_every_cut_times_k),
        cmocka_unit_test(mirrored_in_is_mirrored_out),
        cmocka_unit_test(clean_forces_go_one_way),
        cmocka_unit_test(a_higher_reading_is_a_deeper_cut),
        cmocka_unit_test(no_height_is_lost),
        cmocka_unit_test(inches_and_millimetres_agree),
    };
    return cmocka_run_group_tests(laws, NULL, NULL);
}
