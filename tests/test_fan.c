/* SPDX-License-Identifier: MIT */
/* Fanned frets drawn as a maker draws them: the two outer strings with their own frets, a straight
 * line through the pairs of these, and every string from its place at the nut to its place at the
 * saddle. Where lines cross is found by Cramer's rule, and where a string's scale ends by halving. */
#include <sillet/sillet.h>

#include "near.h"

static const double exact = 1e-9;

typedef struct point {
    double x, z; /* along the centre line, and across it */
} point;

typedef struct line {
    point from, to;
} line;

/* Where two endless lines cross: a x + b z = c for each. */
static point meet(line one, line other)
{
    double a1 = one.to.z - one.from.z, b1 = one.from.x - one.to.x;
    double a2 = other.to.z - other.from.z, b2 = other.from.x - other.to.x;
    double c1 = a1 * one.from.x + b1 * one.from.z, c2 = a2 * other.from.x + b2 * other.from.z;
    double both = a1 * b2 - a2 * b1;
    return (point){(c1 * b2 - c2 * b1) / both, (a1 * c2 - a2 * c1) / both};
}

/* A fan to draw: measured from the square fret, which crosses every string at x = 0. */
typedef struct plan {
    const sil_board *board; /* its places across are used, nothing else */
    double scale[2], setback[SIL_STRINGS_MAX];
    int square;
    int last; /* the bass string */
} plan;

/* The point of an outer string behind which a share of its scale lies. */
static point outer_at(const plan *p, int end, double share)
{
    int i = end == 0 ? 0 : p->last;
    const double *nut = p->board->nut_z, *saddle = p->board->saddle_z;
    double along = p->scale[end] * share, all = p->scale[end] + p->setback[i];
    double nut_x = -p->scale[end] * (1.0 - pow(2.0, -p->square / 12.0));
    return (point){nut_x + along, nut[i] + (saddle[i] - nut[i]) * along / all};
}

static line across(const plan *p, double share)
{
    return (line){outer_at(p, 0, share), outer_at(p, 1, share)};
}

static line fret(const plan *p, int n)
{
    return across(p, 1.0 - pow(2.0, -n / 12.0));
}

/* An inner string, from the nut line to as far past the line where the scales end as its setback
 * says. Draws the string a little too short and a little too long until that is so. */
static line inner_string(const plan *p, int i)
{
    point across_nut[2] = {{-1000.0, p->board->nut_z[i]}, {1000.0, p->board->nut_z[i]}};
    line drawn = {meet(fret(p, 0), (line){across_nut[0], across_nut[1]}), {0, 0}};
    double short_of = 100.0, past = 1000.0;
    for (int k = 0; k < 100; k++) {
        double length = (short_of + past) / 2.0;
        drawn.to = (point){drawn.from.x + length, p->board->saddle_z[i]};
        double scale = meet(drawn, across(p, 1.0)).x - drawn.from.x;
        *(length - scale < p->setback[i] ? &short_of : &past) = length;
    }
    return drawn;
}

static void same_as_drawn(const plan *p)
{
    const sil_board *board = p->board;
    const line centre = {{-1000.0, 0.0}, {1000.0, 0.0}};
    double nut = meet(fret(p, 0), centre).x;
    for (int n = 0; n <= board->frets; n++) {
        near(board->spine_x[n], meet(fret(p, n), centre).x - nut, exact);
    }
    for (int i = 0; i <= p->last; i++) {
        line string = {outer_at(p, i > 0, 0.0), outer_at(p, i > 0, 1.0)};
        if (i > 0 && i < p->last) {
            string = inner_string(p, i);
        }
        double from = string.from.x;
        near(board->nut_x[i], from - nut, exact);
        near(board->scale[i], meet(string, across(p, 1.0)).x - from, exact);
        near(board->saddle_x[i], board->scale[i] + p->setback[i], exact);
        for (int n = 0; n <= board->frets; n++) {
            near(board->fret_x[i][n], meet(string, fret(p, n)).x - from, exact);
        }
    }
}

typedef struct neck {
    int strings, paired; /* paired: two strings a course */
    double treble, bass;
    int square;
    sil_spacing spacing;
} neck;

/* Lays the board out and draws the same. Edges and gauges differ from treble to bass, so that no
 * inner string lies at the same share of the width at both ends. */
static void lay_and_draw(const neck *it)
{
    sil_board board = {.strings = it->strings, .frets = 24, .join = 16, .relief_at = 8};
    double gauge[SIL_STRINGS_MAX], gap;
    plan drawn = {.board = &board, .scale = {it->treble, it->bass}, .square = it->square};
    for (int i = 0; i < it->strings; i++) {
        board.course[i] = it->paired ? i / 2 : i;
        gauge[i] = 0.23 + 1.8 * i / it->strings;
        drawn.setback[i] = 1.0 + 4.5 * i / it->strings;
    }
    drawn.last = it->strings - 1;
    board.radius_nut = board.radius_end = 400.0;
    sil_courses courses = {it->strings, board.course, 2.1};
    sil_nut_centres(&courses, gauge, 7.0 + 6.2 * it->strings, 3.0, 3.6, it->spacing, board.nut_z,
                    &gap);
    courses.pair = 2.6;
    sil_saddle_centres(&courses, 10.0 * it->strings, board.saddle_z);
    sil_board_fan(&board, &(sil_fan){it->treble, it->bass, it->square}, drawn.setback);
    same_as_drawn(&drawn);
}

static void frets_are_straight_and_every_string_crosses_them(void **state)
{
    (void)state;
    static const struct {
        int strings, paired;
    } sets[] = {{6, 0}, {8, 0}, {12, 0}, {12, 1}, {8, 1}, {2, 0}, {2, 1}, {3, 0}};
    static const int squares[] = {0, 7, 12, 24};
    for (size_t k = 0; k < sizeof sets / sizeof *sets; k++) {
        for (size_t j = 0; j < sizeof squares / sizeof *squares; j++) {
            neck it = {sets[k].strings, sets[k].paired, 660.0, 712.0, squares[j], SIL_EQUAL_GAP};
            lay_and_draw(&it);
            it.spacing = SIL_EQUAL_CENTRE;
            lay_and_draw(&it);
            it.treble = 665.0; /* the bass side may be the shorter */
            it.bass = 640.0;
            lay_and_draw(&it);
        }
    }
}

/* Each string's own rule of frets is exact where it lies at one share of the width: the points of
 * the two outer strings at the same share of their scales move in proportion, and so does the point
 * a fixed share between them. */
static void lay_even(sil_board *board, double wider_at_saddle)
{
    double setback[8] = {0};
    *board = (sil_board){.strings = 8, .frets = 24, .join = 16, .relief_at = 8};
    board->radius_nut = board->radius_end = (double)INFINITY;
    for (int i = 0; i < 8; i++) {
        board->course[i] = i;
        board->nut_z[i] = 24.5 - 7.0 * i;
        board->saddle_z[i] = 36.75 - 10.5 * i;
    }
    board->saddle_z[4] -= wider_at_saddle;
    sil_board_fan(board, &(sil_fan){660.0, 712.0, 8}, setback);
}

static void a_scale_for_each_string_is_exact_at_one_share_of_the_width(void **state)
{
    (void)state;
    sil_board board;
    lay_even(&board, 0.0);
    for (int i = 0; i < 8; i++) {
        near(board.scale[i], 660.0 + 52.0 * i / 7.0, exact);
        for (int n = 1; n <= 24; n++) {
            near(board.fret_x[i][n], sil_fret_place(board.scale[i], n), exact);
        }
    }
}

/* And nowhere else: a string that moves a fiftieth of the width toward the bass on its way has its
 * frets off its own rule. The saddle's width is 1.5 of the nut's, so halfway along it has made
 * 0.5 * 1.5/1.25 = 0.6 of that move, and a scale of its own would say 0.5; each counts by how far it
 * is from the square fret, at v = 1 - 2^(-8/12) of the scale. The scales differ by 52. */
static void a_string_that_gains_on_the_others_has_no_scale_of_its_own(void **state)
{
    (void)state;
    sil_board board;
    lay_even(&board, 73.5 / 50.0);
    double off = board.fret_x[4][12] - sil_fret_place(board.scale[4], 12);
    double v = 1.0 - pow(2.0, -8 / 12.0);
    near(off, 52.0 / 50.0 * ((0.5 - v) * 0.6 - 0.5 * (1.0 - v)), 0.001); /* -0.246 */
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(frets_are_straight_and_every_string_crosses_them),
        cmocka_unit_test(a_scale_for_each_string_is_exact_at_one_share_of_the_width),
        cmocka_unit_test(a_string_that_gains_on_the_others_has_no_scale_of_its_own),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
