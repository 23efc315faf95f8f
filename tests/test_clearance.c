/* SPDX-License-Identifier: MIT */
/* Checks the hardest clean pluck against waves: d'Alembert's travelling waves, their Fourier sum, a
 * simulated string over rigid frets, and a measured board. */
#include <sillet/sillet.h>
#include <string.h>

#include "instrument.h"
#include "published/bass_board.h"

static const double pi = 3.14159265358979323846;

/* A string pulled aside by 1 at `peak` from its stop, run on to both sides as an odd wave. */
static double wave(double length, double peak, double u)
{
    double turn = u - 2.0 * length * round(u / (2.0 * length));
    double far = fabs(turn);
    double height = far <= peak ? far / peak : (length - far) / (length - peak);
    return turn < 0.0 ? -height : height;
}

/* Where the string stands at u once the two halves have run by `way` (d'Alembert). */
static double stands(double length, double peak, double u, double way)
{
    return (wave(length, peak, u + way) + wave(length, peak, u - way)) / 2.0;
}

/* How far it ever goes to the other side of where it was pulled to: pulled away from the board,
 * into the board. Stepped so finely that no turn is missed by more than the step. */
static double goes_across(double length, double peak, double u)
{
    double most = 0.0;
    for (int step = 0; step <= 8000; step++) {
        most = fmax(most, -stands(length, peak, u, 2.0 * length * step / 8000.0));
    }
    return most;
}

static double goes_along(double length, double peak, double u)
{
    double most = 0.0;
    for (int step = 0; step <= 8000; step++) {
        most = fmax(most, stands(length, peak, u, 2.0 * length * step / 8000.0));
    }
    return most;
}

static void the_pluck_is_as_deep_as_the_pull_of_both_halves(void **state)
{
    (void)state;
    uint64_t seed = 3;
    for (int k = 0; k < 100; k++) {
        double length = uniform(&seed, 100.0, 900.0), tension = uniform(&seed, 30.0, 250.0);
        double at = uniform(&seed, 5.0, length);
        double p = fmin(at, 0.75 * length);
        double depth = sil_pluck_depth(tension, length, at);
        near(tension * (depth / p + depth / (length - p)), 1.0, 1e-12);
    }
}

static void the_envelope_is_the_farther_of_both_sides(void **state)
{
    (void)state;
    uint64_t seed = 4;
    for (int k = 0; k < 60; k++) {
        double length = uniform(&seed, 150.0, 900.0), at = uniform(&seed, 0.02, 1.0) * length;
        double peak = length - fmin(at, 0.75 * length), u = uniform(&seed, 0.0, length);
        double most = fmax(goes_across(length, peak, u), goes_along(length, peak, u));
        double steepest = 1.0 / fmin(peak, length - peak); /* slope of the wave */
        double missed = steepest * length / 8000.0 + 1e-12;
        double told = sil_envelope(length, at, u);
        assert_true(told <= 1.0 && told >= most - 1e-12);
        near(told, most, missed);
    }
}

/* Terms past the last fall off as 1/m^2: what they can still add up to. */
static double fourier_rest(double length, double peak, int terms)
{
    return 2.0 * length * length / (pi * pi * peak * (length - peak)) / terms;
}

static double fourier_sum(double length, double peak, double u, double way, int terms)
{
    double sum = 0.0;
    for (int m = 1; m <= terms; m++) {
        double k = m * pi / length;
        sum += sin(k * peak) * sin(k * u) * cos(k * way) / ((double)m * m);
    }
    return sum * 2.0 * length * length / (pi * pi * peak * (length - peak));
}

static void the_envelope_holds_the_fourier_sum(void **state)
{
    (void)state;
    enum { TERMS = 2000, PLACES = 30, TIMES = 24 };
    uint64_t seed = 5;
    for (int k = 0; k < PLACES; k++) {
        double length = uniform(&seed, 200.0, 900.0), at = uniform(&seed, 0.1, 0.9) * length;
        double peak = length - fmin(at, 0.75 * length), u = uniform(&seed, 0.0, length);
        double rest = fourier_rest(length, peak, TERMS);
        double told = sil_envelope(length, at, u), most = 0.0;
        for (int t = 0; t < TIMES + 2; t++) {
            double way = uniform(&seed, 0.0, 2.0 * length);
            if (t >= TIMES) { /* a peak passes */
                way = t == TIMES ? peak - u : peak + u;
            }
            double stood = fabs(fourier_sum(length, peak, u, way, TERMS));
            assert_true(stood <= told + rest);
            most = fmax(most, stood);
        }
        near(most, told, rest);
    }
}

/* The measured board as a board: flat, its crowns as far under a level string as was measured. */
static void make_bass(sil_board *board, sil_crowns *crowns, sil_fit *fit)
{
    double setback[SIL_STRINGS_MAX] = {0};
    *board = (sil_board){.strings = 1, .frets = BASS_FRETS, .join = 16, .relief_at = 7};
    board->radius_nut = board->radius_end = (double)INFINITY;
    sil_board_lay(board, bass_length, setback);
    *crowns = (sil_crowns){0};
    for (int n = 1; n <= BASS_FRETS; n++) {
        board->fret_x[0][n] = board->spine_x[n] = bass_fret_x[n];
        crowns->off[0][n] = -bass_gap[n];
    }
    *fit = (sil_fit){.crowns = *crowns};
}

static void the_bass_string_goes_as_deep_as_measured(void **state)
{
    (void)state;
    double peak = bass_length - bass_plucked_at;
    for (size_t k = 0; k < sizeof bass_excursions / sizeof *bass_excursions; k++) {
        double u = bass_fret_x[bass_excursions[k].fret];
        near(bass_pulled_away * goes_across(bass_length, peak, u), bass_excursions[k].excursion,
             0.0005 + bass_pulled_away * bass_length / 8000.0 / bass_plucked_at);
        /* The mirrored triangle, exactly. */
        double exact = u <= bass_plucked_at ? u / bass_plucked_at : (bass_length - u) / peak;
        near(bass_pulled_away * exact, bass_excursions[k].excursion, 0.0005);
    }
    for (int n = 1; n <= BASS_FRETS; n++) {
        double down = bass_pulled_away * goes_across(bass_length, peak, bass_fret_x[n]);
        assert_int_equal(down > bass_gap[n], n <= bass_last_touched);
        double both = fmax(goes_across(bass_length, peak, bass_fret_x[n]),
                           goes_along(bass_length, peak, bass_fret_x[n]));
        near(sil_envelope(bass_length, bass_plucked_at, bass_fret_x[n]), both, 1e-3);
    }
}

/* The largest clean pull to one side, and the fret that sets it. */
static double clean_pull(double (*goes)(double, double, double), int *fret)
{
    double least = (double)INFINITY;
    for (int n = 1; n <= BASS_FRETS; n++) {
        double pull =
            bass_gap[n] / goes(bass_length, bass_length - bass_plucked_at, bass_fret_x[n]);
        if (pull < least) {
            least = pull;
            *fret = n;
        }
    }
    return least;
}

static void the_bass_rings_clean_up_to_what_was_measured(void **state)
{
    (void)state;
    sil_board board;
    sil_crowns crowns;
    sil_fit fit;
    make_bass(&board, &crowns, &fit);
    for (int n = 1; n <= BASS_FRETS; n++) {
        near(-sil_crown_height(&board, &fit, 0, n), bass_gap[n], 1e-12);
    }
    int away = 0, toward = 0;
    near(clean_pull(goes_across, &away), bass_clean_away, 0.0005 + 2e-3);
    near(clean_pull(goes_along, &toward), bass_clean_toward, 0.0005 + 2e-3);
    assert_int_equal(away, bass_sets_away);
    assert_int_equal(toward, bass_sets_toward);

    sil_pluck pluck = {.at = bass_plucked_at, .tension = {bass_tension}};
    sil_clearance clean;
    sil_clearance_find(&board, &fit, &pluck, &clean);
    double depth = sil_pluck_depth(bass_tension, bass_length, bass_plucked_at);
    near(clean.force[0][0] * depth, bass_clean_away, 0.0005);
    assert_int_equal(clean.at_fret[0][0], bass_sets_away);
}

/* --- a string stepped through time ---------------------------------------------------------------
 *
 * On points 1 mm apart, stepped by the time a wave takes from one to the next, the next height of a
 * point is that of both neighbours less its own before: exact for an ideal string. Everything of
 * the board stands on the points, so that nothing is missed between them.
 */
#define POINTS_MAX 800

typedef struct struck {
    int touched;  /* of the frets, the first; 0: none in a whole period */
    int together; /* how many at that moment */
} struck;

typedef struct stepped {
    double before[POINTS_MAX], now[POINTS_MAX], next[POINTS_MAX];
    double rest[POINTS_MAX]; /* height of the string at rest, from the stop on */
} stepped;

static struck look(const stepped *s, const sil_board *board, const sil_fit *fit, int stop)
{
    struck found = {0, 0};
    int from = stop ? (int)board->fret_x[0][stop] : 0;
    for (int n = stop + 1; n <= board->frets; n++) {
        int point = (int)board->fret_x[0][n] - from;
        if (s->rest[point] + s->now[point] < sil_crown_height(board, fit, 0, n)) {
            found.touched = n;
            found.together++;
        }
    }
    return found;
}

static void pull_aside(stepped *s, int length, int at, double by)
{
    int p = at < 3 * length / 4 ? at : 3 * length / 4;
    int peak = length - p;
    for (int j = 0; j <= length; j++) {
        s->now[j] = by * (j <= peak ? (double)j / peak : (double)(length - j) / p);
    }
    /* Let go from rest: one step back and one forth are alike. */
    for (int j = 1; j < length; j++) {
        s->before[j] = (s->now[j - 1] + s->now[j + 1]) / 2.0;
    }
    s->before[0] = s->before[length] = 0.0;
}

static struck ring(const sil_board *board, const sil_fit *fit, int stop, int at, double by)
{
    static stepped s;
    int from = stop ? (int)board->fret_x[0][stop] : 0;
    int length = (int)board->saddle_x[0] - from;
    double low = stop ? sil_crown_height(board, fit, 0, stop) : fit->nut_height[0];
    pull_aside(&s, length, at, by);
    for (int j = 0; j <= length; j++) {
        s.rest[j] = low + (fit->saddle_height[0] - low) * j / length;
    }
    for (int t = 0; t <= 2 * length; t++) {
        struck found = look(&s, board, fit, stop);
        if (found.touched) {
            return found;
        }
        for (int j = 1; j < length; j++) {
            s.next[j] = s.now[j - 1] + s.now[j + 1] - s.before[j];
        }
        s.next[0] = s.next[length] = 0.0;
        memcpy(s.before, s.now, sizeof s.now);
        memcpy(s.now, s.next, sizeof s.next);
    }
    return (struck){0, 0};
}

/* A board of whole millimetres, somewhat worn, its string at some height. */
static void make_whole(uint64_t *seed, sil_board *board, sil_crowns *crowns, sil_fit *fit)
{
    double scale = round(uniform(seed, 150.0, 175.0)) * 4.0;
    double setback[SIL_STRINGS_MAX] = {round(uniform(seed, 0.0, 4.0))};
    *board = (sil_board){.strings = 1, .frets = 20, .join = 14, .relief_at = 7};
    board->radius_nut = board->radius_end = (double)INFINITY;
    board->fallaway = uniform(seed, 0.0, 0.2);
    sil_board_lay(board, scale, setback);
    *crowns = (sil_crowns){0};
    for (int n = 1; n <= board->frets; n++) {
        board->fret_x[0][n] = board->spine_x[n] = round(board->fret_x[0][n]);
        crowns->off[0][n] = uniform(seed, -0.04, 0.02);
    }
    *fit = (sil_fit){.bend = sil_bend(board, uniform(seed, -0.02, 0.3)), .crowns = *crowns};
    fit->nut_height[0] = uniform(seed, 0.2, 0.5);
    fit->saddle_height[0] = uniform(seed, 2.0, 4.5);
}

static void a_stepped_string_touches_what_is_told(void **state)
{
    (void)state;
    uint64_t seed = 6;
    int tried = 0;
    for (int k = 0; k < 50; k++) {
        sil_board board;
        sil_crowns crowns;
        sil_fit fit;
        make_whole(&seed, &board, &crowns, &fit);
        int at = (int)uniform(&seed, 60.0, 180.0);
        sil_pluck pluck = {.at = at, .tension = {uniform(&seed, 40.0, 120.0)}};
        sil_clearance clean;
        sil_clearance_find(&board, &fit, &pluck, &clean);
        for (int stop = 0; stop < board.frets; stop++) { /* a note alone is as among the others */
            assert_true(sil_clearance_of(&board, &fit, &pluck, 0, stop) == clean.force[0][stop]);
        }
        assert_false(sil_known(sil_clearance_of(&board, &fit, &pluck, 0, board.frets)));
        int stops[] = {0, 1 + (int)uniform(&seed, 0.0, 18.99)};
        for (int s = 0; s < 2; s++) {
            int stop = stops[s];
            double length = board.saddle_x[0] - (stop ? board.fret_x[0][stop] : 0.0);
            if (at > 0.75 * length && fmod(length, 4.0) != 0.0) {
                continue; /* the pull would not stand on a point */
            }
            double pull = clean.force[0][stop] * sil_pluck_depth(pluck.tension[0], length, at);
            assert_true(pull > 0.0);
            double under = pull * (1.0 - 1e-7), over = pull * (1.0 + 1e-7);
            assert_int_equal(ring(&board, &fit, stop, at, under).touched, 0);
            assert_int_equal(ring(&board, &fit, stop, at, -under).touched, 0);
            struck away = ring(&board, &fit, stop, at, over);
            struck toward = ring(&board, &fit, stop, at, -over);
            struck first = away.touched ? away : toward;
            assert_int_equal(first.touched, clean.at_fret[0][stop]);
            assert_int_equal(first.together, 1);
            tried++;
        }
    }
    assert_true(tried >= 90);
}

static void what_is_not_known_is_not_told(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit fit;
    make_instrument(&bench, &fit);
    sil_pluck pluck = {.at = 110.0, .tension = {70, 70, SIL_UNKNOWN, 70, 70, 70}};
    fit.saddle_height[3] = SIL_UNKNOWN;
    fit.nut_height[4] = SIL_UNKNOWN;
    sil_clearance clean;
    sil_clearance_find(&bench.board, &fit, &pluck, &clean);
    for (int stop = 0; stop < bench.board.frets; stop++) {
        assert_true(sil_known(clean.force[0][stop]) && clean.at_fret[0][stop] > stop);
        for (int i = 2; i <= 3; i++) {
            assert_false(sil_known(clean.force[i][stop]));
            assert_int_equal(clean.at_fret[i][stop], 0);
        }
        /* A stopped note does not see the nut. */
        assert_int_equal(sil_known(clean.force[4][stop]), stop > 0);
    }
}

static void a_note_on_a_proud_crown_is_stopped_dead(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit fit;
    make_instrument(&bench, &fit);
    sil_crowns crowns = {0};
    crowns.off[1][6] = 0.6;
    fit.crowns = crowns;
    sil_pluck pluck = {.at = 110.0, .tension = {70, 70, 70, 70, 70, 70}};
    sil_clearance clean;
    sil_clearance_find(&bench.board, &fit, &pluck, &clean);
    assert_true(clean.force[1][5] < 0.0 && clean.at_fret[1][5] == 6);
    assert_true(clean.force[0][5] > 0.0 && clean.force[1][6] > 0.0);
}

static void the_last_note_has_but_one_fret_to_touch(void **state)
{
    (void)state;
    sil_bench bench;
    sil_fit fit;
    make_instrument(&bench, &fit);
    sil_pluck pluck = {.at = 110.0, .tension = {70, 70, 70, 70, 70, 70}};
    sil_clearance clean;
    sil_clearance_find(&bench.board, &fit, &pluck, &clean);
    const sil_board *board = &bench.board;
    int last = board->frets;
    for (int i = 0; i < 6; i++) {
        double from = board->fret_x[i][last - 1], length = board->saddle_x[i] - from;
        double low = sil_crown_height(board, &fit, i, last - 1);
        double u = board->fret_x[i][last] - from;
        double gap = low + (fit.saddle_height[i] - low) * u / length -
                     sil_crown_height(board, &fit, i, last);
        double depth = sil_pluck_depth(70.0, length, 110.0) * sil_envelope(length, 110.0, u);
        near(clean.force[i][last - 1], gap / depth, 1e-12 * fabs(gap / depth));
        assert_int_equal(clean.at_fret[i][last - 1], last);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_pluck_is_as_deep_as_the_pull_of_both_halves),
        cmocka_unit_test(the_envelope_is_the_farther_of_both_sides),
        cmocka_unit_test(the_envelope_holds_the_fourier_sum),
        cmocka_unit_test(the_bass_string_goes_as_deep_as_measured),
        cmocka_unit_test(the_bass_rings_clean_up_to_what_was_measured),
        cmocka_unit_test(a_stepped_string_touches_what_is_told),
        cmocka_unit_test(what_is_not_known_is_not_told),
        cmocka_unit_test(a_note_on_a_proud_crown_is_stopped_dead),
        cmocka_unit_test(the_last_note_has_but_one_fret_to_touch),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
