/* SPDX-License-Identifier: MIT */
/* The top of a nut or a saddle as a curve: straight from point to point, or one arc. */
#include "../src/part/within.h"
#include "near.h"

static const double exact = 1e-9;

static part_curve curve_of(int count, const double *x, double (*height)(double))
{
    part_curve curve = {.count = count};
    for (int i = 0; i < count; i++) {
        curve.x[i] = x[i];
        curve.y[i] = height(x[i]);
    }
    return curve;
}

static double leaning(double x)
{
    return 3.0 + 0.25 * x;
}

static double square(double x)
{
    return x * x;
}

static const double uneven[] = {3.0, 10.0, 12.5, 21.0, 30.0}, even[] = {0, 1, 2, 3, 4, 5};

static void a_straight_top_is_straight_everywhere(void **state)
{
    (void)state;
    for (int count = 2; count <= 5; count++) {
        part_curve curve = curve_of(count, uneven, leaning);
        for (double x = -4.0; x < 40.0; x += 0.37) {
            near(part_curve_at(&curve, x), leaning(x), exact);
        }
    }
    part_curve one = curve_of(1, uneven, leaning);
    for (double x = 0.0; x < 8.0; x += 0.5) {
        near(part_curve_at(&one, x), leaning(3.0), exact);
    }
}

/* Without an arc, a top is straight from point to point, and straight on at its ends. */
static void a_top_is_straight_between_its_points(void **state)
{
    (void)state;
    part_curve curve = curve_of(6, even, square);
    for (int i = 0; i < 5; i++) {
        near(part_curve_at(&curve, i + 0.25), square(i) + 0.25 * (square(i + 1) - square(i)),
             exact);
    }
    static const double wide[] = {0, 5, 10, 15, 20, 25}, courses[] = {0, 2, 10, 12, 20, 22};
    curve = curve_of(6, wide, square);
    near(part_curve_at(&curve, -2.0), -2.0 * 5.0, exact);
    near(part_curve_at(&curve, 27.0), 625.0 + 2.0 * 45.0, exact);
    /* Of a course it is the string of the next one that it comes from. */
    curve = curve_of(6, courses, square);
    near(part_curve_at(&curve, -2.0), -2.0 * 10.0, exact);
    near(part_curve_at(&curve, 23.0), 484.0 + 34.0, exact);
    near(part_curve_at(&curve, 21.0), 400.0 + 42.0, exact);
}

static double round_400(double x)
{
    return 8.25 - (400.0 - sqrt(400.0 * 400.0 - (x - 20.5) * (x - 20.5)));
}

/* Points on a circle of whole radius give it back. Off it, an arc is never below a point where it may
 * not be, nor farther above than it may; where none is, the top stays as it was. */
static void a_round_top_is_one_arc(void **state)
{
    (void)state;
    static const double x[] = {3, 10, 17, 24, 31, 39};
    part_curve curve = curve_of(6, x, round_400);
    part_curve_round(&curve, 43, 0, 0.05);
    near(curve.radius, 400, 0);
    near(curve.centre, 20.5, 0.011);
    near(curve.crest, 8.25, 0.011);
    near(part_curve_at(&curve, 3),
         curve.crest - (400 - sqrt(400.0 * 400.0 - pow(3 - curve.centre, 2))), 1e-9);
    part_curve rough = curve_of(6, x, round_400), jagged = rough;
    for (int i = 0; i < 6; i++) {
        rough.y[i] += i % 2 ? 0.03 : 0;
        jagged.y[i] += i % 2 ? 0.08 : 0;
    }
    part_curve_round(&rough, 43, 0, 0.05);
    assert_true(rough.radius > 0);
    for (int i = 0; i < 6; i++) {
        double over = part_curve_at(&rough, x[i]) - rough.y[i];
        assert_true(over >= -exact && over <= 0.05 + exact);
    }
    part_curve_round(&jagged, 43, 0, 0.05);
    near(jagged.radius, 0, 0);
    part_curve flat = curve_of(5, uneven, leaning);
    part_curve_round(&flat, 40, 0, 0.05);
    near(flat.radius, 0, 0);
}

static void expect_way(const part_curve *curve, double from, double to)
{
    part_point points[PART_CURVE_POINTS];
    int count = part_curve_points(curve, from, to, points);
    double step = fmax(1.0, fabs(to - from) / (PART_CURVE_POINTS - 2 - SIL_STRINGS_MAX));
    assert_in_range(count, 1, PART_CURVE_POINTS);
    assert_true(points[0].x == from && points[count - 1].x == to);
    for (int i = 0; i < count; i++) {
        near(points[i].y, part_curve_at(curve, points[i].x), exact);
        if (i > 0) {
            double run = (points[i].x - points[i - 1].x) * (to > from ? 1 : -1);
            assert_true(run > 0 && (curve->radius <= 0 || run <= step + exact));
        }
    }
    for (int k = 0; k < curve->count; k++) {
        bool met = !(curve->x[k] > fmin(from, to) && curve->x[k] < fmax(from, to));
        for (int i = 0; i < count; i++) {
            met = met || points[i].x == curve->x[k];
        }
        assert_true(met || curve->count < 2);
    }
}

static void a_line_runs_through_every_point_of_its_curve(void **state)
{
    (void)state;
    part_curve curve = {.count = 5, .x = {3, 10, 12.5, 21, 30}, .y = {2, 4, 1, 7, 3}};
    part_curve one = {.count = 1, .x = {5}, .y = {4}}, arc = curve;
    arc.radius = 900;
    arc.centre = 15;
    arc.crest = 9;
    const double ends[] = {0, 3, 7.25, 10, 15.5, 30, 36, 400};
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        for (size_t k = 0; k < sizeof ends / sizeof *ends; k++) {
            expect_way(&curve, ends[i], ends[k]);
            expect_way(&one, ends[i], ends[k]);
            expect_way(&arc, ends[i], ends[k]);
        }
    }
    part_point points[PART_CURVE_POINTS];
    assert_int_equal(part_curve_points(&one, 0, 40, points), 2);
    assert_int_equal(part_curve_points(&arc, 13, 20, points), 8); /* a point each millimetre */
    assert_int_equal(part_curve_points(&curve, 13, 20, points), 2);
}

static void strings_without_a_height_are_left_out(void **state)
{
    (void)state;
    const double along[] = {40, 30, 20, 10}, height[] = {5, SIL_UNKNOWN, 7, 8};
    part_curve curve = part_curve_through(4, along, height);
    assert_int_equal(curve.count, 3);
    const double x[] = {10, 20, 40}, y[] = {8, 7, 5};
    for (int i = 0; i < 3; i++) {
        assert_true(curve.x[i] == x[i] && curve.y[i] == y[i]);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_straight_top_is_straight_everywhere),
        cmocka_unit_test(a_top_is_straight_between_its_points),
        cmocka_unit_test(a_round_top_is_one_arc),
        cmocka_unit_test(a_line_runs_through_every_point_of_its_curve),
        cmocka_unit_test(strings_without_a_height_are_left_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
