/* SPDX-License-Identifier: MIT */
/* The least clean heights, in closed form, against bisection over the clearance of whole boards. */
#include "instrument.h"

#include "../src/core/clean.h"
#include "../src/core/height.h"

enum { INSTRUMENTS = 400, OF_SLOT = 4 };

/* A random board with worn and proud crowns, plucked by random forces somewhere. */
static void make_random(uint64_t *seed, sil_bench *bench, sil_fit *fit)
{
    make_instrument(bench, fit);
    sil_board *board = &bench->board;
    board->frets = 1 + (int)uniform(seed, 0.0, 23.99);
    board->join = board->frets < 14 ? board->frets : 14;
    board->relief_at = board->join > 7 ? 7 : (1 + board->join) / 2;
    board->fallaway = uniform(seed, 0.0, 0.3);
    board->radius_nut = uniform(seed, 180.0, 400.0);
    board->radius_end = board->radius_nut + uniform(seed, 0.0, 150.0);
    sil_board_lay(board, uniform(seed, 500.0, 860.0), (double[SIL_STRINGS_MAX]){2.0, 2.5, 3.0});
    *fit = (sil_fit){.bend = sil_bend(board, uniform(seed, -0.1, 0.4))};
    bench->pluck_at = uniform(seed, 20.0, 300.0);
    for (int i = 0; i < board->strings; i++) {
        fit->nut_height[i] = uniform(seed, 0.1, 0.8);
        fit->saddle_height[i] = uniform(seed, 1.0, 6.0);
        bench->tension[i] = uniform(seed, 30.0, 130.0);
        bench->attack[i] = uniform(seed, 0.1, 2.0);
        for (int n = 1; n <= board->frets; n++) {
            fit->crowns.off[i][n] = uniform(seed, -0.2, 0.1);
        }
    }
}

/* The crowns of fit sound, but those from `low` to `high` so far down that nothing touches them. */
static sil_fit without(const sil_fit *fit, int low, int high)
{
    sil_fit sound = *fit;
    sound.crowns = (sil_crowns){0};
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        for (int n = low; n <= high; n++) {
            sound.crowns.off[i][n] = -1000.0;
        }
    }
    return sound;
}

static sil_pluck pluck_of(const sil_bench *bench)
{
    sil_pluck pluck = {.at = bench->pluck_at};
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        pluck.tension[i] = bench->tension[i];
    }
    return pluck;
}

/* Whether the notes that the saddle decides ring clean: those fretted over sound crowns, and the open
 * one from crown 5 up. */
static bool saddle_rings(const sil_bench *bench, const sil_fit *fit, int i)
{
    static sil_clearance fretted, open;
    sil_pluck pluck = pluck_of(bench);
    sil_fit sound = without(fit, 1, 0), past = without(fit, 1, OF_SLOT);
    sil_clearance_find(&bench->board, &sound, &pluck, &fretted);
    sil_clearance_find(&bench->board, &past, &pluck, &open);
    bool rings = bench->board.frets <= OF_SLOT || open.force[i][0] >= bench->attack[i];
    for (int n = 1; n < bench->board.frets; n++) {
        rings = rings && fretted.force[i][n] >= bench->attack[i];
    }
    return rings;
}

/* The least height for which a note rings, between two heights of which only the upper does. */
static double bisect(bool (*rings)(const sil_bench *, const sil_fit *, int), double *height,
                     const sil_bench *bench, const sil_fit *fit, int i, double action)
{
    double low = -200.0, high = 400.0;
    for (int k = 0; k < 100; k++) {
        *height = (low + high) / 2.0;
        sil_fit *set = (sil_fit *)fit;
        if (sil_known(action)) { /* at the nut the action stays */
            sil_fit sound = without(fit, 1, 0);
            set->saddle_height[i] =
                core_saddle_from_action(&bench->board, &sound, i, 12, action, *height);
        }
        *(rings(bench, fit, i) ? &high : &low) = *height;
    }
    return (low + high) / 2.0;
}

static void the_saddle_is_clean_from_where_bisection_says(void **state)
{
    (void)state;
    uint64_t seed = 71;
    int compared = 0;
    for (int k = 0; k < INSTRUMENTS; k++) {
        sil_bench bench;
        sil_fit fit;
        make_random(&seed, &bench, &fit);
        int i = k % 3;
        double told = core_clean_saddle(&bench, &fit, i);
        if (bench.board.frets == 1) {
            assert_false(sil_known(told)); /* no crown that the saddle decides over */
            continue;
        }
        double found = bisect(saddle_rings, &fit.saddle_height[i], &bench, &fit, i, SIL_UNKNOWN);
        near(told, found, 1e-9);
        compared++;
    }
    assert_true(compared > INSTRUMENTS / 2);
}

static bool slot_rings(const sil_bench *bench, const sil_fit *fit, int i)
{
    static sil_clearance open;
    sil_pluck pluck = pluck_of(bench);
    sil_fit first = without(fit, OF_SLOT + 1, SIL_FRETS_MAX);
    sil_clearance_find(&bench->board, &first, &pluck, &open);
    return open.force[i][0] >= bench->attack[i];
}

static void a_slot_is_clean_from_where_bisection_says(void **state)
{
    (void)state;
    uint64_t seed = 72;
    for (int k = 0; k < INSTRUMENTS; k++) {
        sil_bench bench;
        sil_fit fit;
        make_random(&seed, &bench, &fit);
        int i = k % 3;
        double action = uniform(&seed, 0.8, 3.0);
        fit.crowns = (sil_crowns){0}; /* the action is over the crown as it is */
        double told = core_clean_nut(&bench, &fit, action, i);
        near(told, bisect(slot_rings, &fit.nut_height[i], &bench, &fit, i, action), 1e-9);
    }
}

/* Without a pick to hold to, or a tension, there is no such height. */
static void nothing_is_held_to_what_is_not_known(void **state)
{
    (void)state;
    uint64_t seed = 73;
    sil_bench bench;
    sil_fit fit;
    make_random(&seed, &bench, &fit);
    bench.attack[0] = SIL_UNKNOWN;
    bench.attack[1] = 0.0;
    bench.tension[2] = SIL_UNKNOWN;
    for (int i = 0; i < 3; i++) {
        assert_false(sil_known(core_clean_saddle(&bench, &fit, i)));
        assert_false(sil_known(core_clean_nut(&bench, &fit, 2.0, i)));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_saddle_is_clean_from_where_bisection_says),
        cmocka_unit_test(a_slot_is_clean_from_where_bisection_says),
        cmocka_unit_test(nothing_is_held_to_what_is_not_known),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
