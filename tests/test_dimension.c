/* SPDX-License-Identifier: MIT */
/* Dimension lines do not overlap, and the curve of a part's top is smooth. */
#include <string.h>

#include "../src/drawing/views/views.h"
#include "random_job.h"

/* Spread places keep order and pitch, and no shift of one pool would bring them nearer. */
static void crowded_figures_are_spread(void **state)
{
    (void)state;
    uint64_t seed = 9;
    for (int k = 0; k < 500; k++) {
        int count = whole(&seed, 1, SIL_STRINGS_MAX);
        double wished[SIL_STRINGS_MAX], place[SIL_STRINGS_MAX], moved = 0.0;
        wished[0] = uniform(&seed, -5, 5);
        for (int i = 1; i < count; i++) {
            wished[i] = wished[i - 1] + uniform(&seed, 0, 8);
        }
        memcpy(place, wished, sizeof place);
        draw_spread(count, place, 4.0);
        for (int i = 0; i < count; i++) {
            moved += place[i] - wished[i];
            assert_true(i == 0 || place[i] - place[i - 1] >= 4.0 - 1e-9);
        }
        near(moved, 0.0, 1e-9);
    }
    double apart[] = {0, 10, 20};
    draw_spread(3, apart, 4.0);
    near(apart[1], 10, 0);
}

static void curves_go_through_their_points(void **state)
{
    (void)state;
    part_curve curve = {.count = 4, .x = {1, 5, 11, 14}, .y = {2, 3.5, 3, 1}};
    for (int i = 0; i < curve.count; i++) {
        near(part_curve_at(&curve, curve.x[i]), curve.y[i], 1e-12);
        double before = part_curve_at(&curve, curve.x[i] - 1e-6);
        double after = part_curve_at(&curve, curve.x[i] + 1e-6);
        near(after - before, 0.0, 1e-5);
    }
    part_curve one = {.count = 1, .x = {3}, .y = {7}};
    near(part_curve_at(&one, -100), 7, 0);
    near(part_curve_at(&one, 100), 7, 0);
    draw_point points[PART_CURVE_POINTS];
    int count = part_curve_points(&curve, 20, 0, points);
    near(points[0].x, 20, 0);
    near(points[count - 1].x, 0, 0);
    assert_true(part_curve_points(&curve, 0, 1e4, points) <= PART_CURVE_POINTS);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(crowded_figures_are_spread),
        cmocka_unit_test(curves_go_through_their_points),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
