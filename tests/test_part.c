/* SPDX-License-Identifier: MIT */
/* The finished nut and saddle as geometry: the curve of a top, the outlines, where strings cross. */
#include "../src/part/within.h"
#include "planned.h"
#include "random_job.h"

static const double exact = 1e-9;

/* --- the curve --------------------------------------------------------------------------------- */

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

/* --- random parts ------------------------------------------------------------------------------ */

static void same_or_unknown(double got, double wanted)
{
    if (sil_known(wanted)) {
        near(got, wanted, exact);
    } else {
        assert_false(sil_known(got));
    }
}

/* The top through its heights, or of an arc as far off them as that may be. */
static void expect_top(const part_curve *top, int strings, const double *along,
                       const double *height, double under, double over)
{
    int known = 0;
    for (int i = 0; i < strings; i++) {
        if (sil_known(height[i])) {
            double off = part_curve_at(top, along[i]) - height[i];
            bool arc = top->radius > 0;
            assert_true(off >= -(arc ? under : 0) - exact && off <= (arc ? over : 0) + exact);
            known++;
        }
    }
    assert_int_equal(top->count, known);
}

static int arcs;

/* Square across the board a place is nearer to the bass end than along a part that leans. */
static void expect_nut(const sil_plan *plan)
{
    part_nut nut;
    part_nut_solve(plan, &nut);
    double lean = cos(plan->bench.board.nut_slant), top[SIL_STRINGS_MAX], z[SIL_STRINGS_MAX];
    near(nut.length * lean, plan->job->nut.width, exact);
    same_or_unknown(nut.gap * lean, plan->nut_gap);
    same_or_unknown(nut.thickness, plan->job->nut.thickness);
    assert_int_equal(sil_known(nut.height), sil_known(plan->nut.top));
    assert_true(!sil_known(nut.height) || nut.height >= plan->nut.top - nut.shim - exact);
    same_or_unknown(nut.fall_deg, plan->nut.fall_angle_deg);
    near(nut.shim, plan->nut.remedy == SIL_NUT_SHIM ? plan->nut.shim : 0.0, exact);
    for (int i = 0; i < nut.strings; i++) {
        near(nut.across[i] - plan->job->nut.width / 2, plan->bench.board.nut_z[i], exact);
        near(nut.along[i] * lean, nut.across[i], exact);
        same_or_unknown(nut.floor[i], plan->nut.floor[i] - nut.shim);
        if (nut.top.radius <= 0) {
            same_or_unknown(nut.depth[i], plan->nut.depth[i]);
        } else {
            near(nut.depth[i], part_curve_at(&nut.top, nut.along[i]) - nut.floor[i], exact);
        }
        same_or_unknown(nut.stack[i], plan->nut.stack[i]);
        same_or_unknown(nut.width[i], plan->slot_width[i]);
        near(nut.gauge[i], plan->job->strings[i].gauge, exact);
        top[i] = plan->nut.floor[i] - nut.shim + plan->nut.depth[i];
        z[i] = nut.along[i] - nut.along[nut.strings - 1];
    }
    expect_top(&nut.top, nut.strings, nut.along, top, 0, 0.05);
    arcs += nut.top.radius > 0;
    same_or_unknown(nut.top_radius, nut.top.radius > 0 ? nut.top.radius : SIL_UNKNOWN);
    double radius = sil_top_radius(nut.strings, z, plan->nut.floor);
    same_or_unknown(nut.floor_radius / radius, sil_known(radius) ? 1.0 : SIL_UNKNOWN);
}

/* Every point of an outline from `first` on whose x lies within a slot's walls. */
static void expect_slot(const part_nut *nut, int i, const part_point *points, int count)
{
    double left = nut->along[i] - nut->width[i] / 2, right = nut->along[i] + nut->width[i] / 2;
    double low = nut->height, r = nut->width[i] / 2;
    int walls = 0, first = -1, last = -1;
    for (int k = 2; k < count; k++) {
        if (points[k].x > left - exact && points[k].x < right + exact) {
            first = first < 0 ? k : first;
            last = k;
            low = fmin(low, points[k].y);
        }
    }
    assert_true(first > 0);
    near(low, nut->floor[i], exact);
    near(points[first].x, right, exact);
    near(points[last].x, left, exact);
    near(points[first].y, part_curve_at(&nut->top, right), exact);
    near(points[last].y, part_curve_at(&nut->top, left), exact);
    double rim = fmin(points[first].y, points[last].y);
    for (int k = first; k <= last; k++) {
        double x = points[k].x - nut->along[i], y = points[k].y - nut->floor[i] - r;
        bool round = fabs(hypot(x, y) - r) < exact && y <= exact && points[k].y <= rim + exact;
        bool wall = fabs(fabs(x) - r) < exact;
        walls += wall;
        assert_true(round || wall);
    }
    assert_true(walls >= 2 && last - first >= PART_SLOT_POINTS);
    /* The top ends at the wall where the slot begins: two points in one place at either rim. */
    double begins = fmin(rim, nut->floor[i] + r); /* shallower than that it is round to its rim */
    near(points[first + 2].y, begins, exact);
    near(points[last - 2].y, begins, exact);
}

/* From the bottom's bass end to its treble end, then back over the top. */
static void expect_around(double length, const part_curve *top, const part_point *points, int count)
{
    assert_true(points[0].x == 0 && points[0].y == 0);
    assert_true(points[1].x == length && points[1].y == 0);
    assert_true(points[2].x == length && points[count - 1].x == 0);
    near(points[2].y, part_curve_at(top, length), exact);
    near(points[count - 1].y, part_curve_at(top, 0), exact);
    for (int k = 3; k < count; k++) {
        assert_true(points[k].x <= points[k - 1].x + exact);
    }
}

static int outlines, slots_seen;

static void expect_nut_outline(const sil_plan *plan)
{
    static part_point points[PART_NUT_POINTS];
    part_nut nut;
    part_nut_solve(plan, &nut);
    int count = part_nut_outline(&nut, false, points);
    assert_int_equal(count > 0, nut.top.count > 0);
    if (count == 0) {
        assert_int_equal(part_nut_outline(&nut, true, points), 0);
        return;
    }
    assert_in_range(count, 4, PART_NUT_POINTS);
    expect_around(nut.length, &nut.top, points, count);
    for (int k = 2; k < count; k++) {
        near(points[k].y, part_curve_at(&nut.top, points[k].x), exact);
    }
    count = part_nut_outline(&nut, true, points);
    assert_in_range(count, 4, PART_NUT_POINTS);
    bool apart = true;
    for (int i = 1; i < nut.strings; i++) {
        apart = apart && nut.along[i - 1] - nut.along[i] > (nut.width[i - 1] + nut.width[i]) / 2;
    }
    for (int i = 0; apart && i < nut.strings; i++) {
        if (sil_known(nut.floor[i])) {
            expect_slot(&nut, i, points, count);
            slots_seen++;
        }
    }
    if (apart) {
        expect_around(nut.length, &nut.top, points, count);
    }
    outlines++;
}

static int staying, all_at_once; /* saddles whose first pass leaves something, and nothing */

/* The first pass leaves something for a later one where a string, or an end of the bottom, has half a
 * hundredth more to lose; a new saddle, where a string stands as much higher at first. */
static void expect_more(const sil_plan *plan, const part_saddle *saddle)
{
    const sil_saddle_work *work = &plan->saddle;
    double most = 0, whole = 0;
    for (int i = 0; i < saddle->strings; i++) {
        most = fmax(most, saddle->anew ? work->leave[i] : work->dress[i] - work->dress_first[i]);
        whole = fmax(whole, work->dress[i]);
    }
    for (int end = 0; end < 2 && work->bottom && !saddle->anew; end++) {
        double x = end * saddle->length;
        double all = part_base_at(saddle, saddle->base_all, x);
        most = fmax(most, all - part_base_at(saddle, saddle->base_first, x));
        whole = fmax(whole, all);
    }
    assert_int_equal(saddle->more, most >= 0.005);
    staying += most >= 0.005;
    all_at_once += most < 0.005 && whole >= 0.005;
}

static void expect_saddle(const sil_plan *plan)
{
    const sil_saddle_work *work = &plan->saddle;
    const sil_board *board = &plan->bench.board;
    part_saddle saddle;
    part_saddle_solve(plan, &saddle);
    double lean = cos(board->saddle_slant);
    same_or_unknown(saddle.length * lean, plan->job->saddle.length);
    assert_int_equal(saddle.anew, work->remedy == SIL_SADDLE_REPLACE);
    assert_int_equal(saddle.base, work->bottom);
    near(saddle.shim, work->remedy == SIL_SADDLE_SHIM ? work->shim : 0.0, exact);
    for (int i = 0; i < saddle.strings; i++) {
        double off = plan->compensation[i].off_slot;
        double built = sil_line_at(plan->slot_as_built, board->saddle_z[i]);
        same_or_unknown(saddle.across[i], plan->job->saddle.length / 2 + board->saddle_z[i]);
        same_or_unknown(saddle.along[i] * lean, saddle.across[i]);
        same_or_unknown(saddle.present[i], work->present[i]);
        same_or_unknown(saddle.finished[i],
                        saddle.anew ? work->height[i] : work->present[i] - work->dress[i]);
        same_or_unknown(saddle.bridge[i], work->height[i] - work->protrusion[i]);
        assert_int_equal(saddle.contact_known[i], sil_known(off));
        same_or_unknown(saddle.contact[i],
                        sil_known(off) ? off : plan->job->saddle.setback[i] - built);
        double place = plan->tuning.peak[i] - plan->job->saddle.thickness / 2;
        bool slotted = sil_working_in_slot(work->working);
        same_or_unknown(saddle.peak[i], slotted ? place / lean : saddle.contact[i]);
        double now = sil_job_peak(plan->job, i) - plan->job->saddle.thickness / 2;
        double cents = plan->tuning.move[i], model = plan->tuning.proposed[i];
        double tuned = sil_known(cents)   ? now / lean + cents
                       : sil_known(model) ? now / lean + model
                                          : off;
        same_or_unknown(saddle.in_tune[i], slotted ? tuned : saddle.contact[i]);
        assert_int_equal(saddle.filed[i], plan->tuning.filed[i]);
        same_or_unknown(part_base_at(&saddle, saddle.slot_built, saddle.along[i]),
                        sil_known(saddle.length) ? built : SIL_UNKNOWN);
        if (work->bottom) {
            near(part_base_at(&saddle, saddle.base_all, saddle.along[i]),
                 sil_line_at(work->cut, board->saddle_z[i]), exact);
            near(part_base_at(&saddle, saddle.base_first, saddle.along[i]),
                 sil_line_at(work->cut_first, board->saddle_z[i]), exact);
        }
    }
    expect_top(&saddle.present_top, saddle.strings, saddle.along, saddle.present, 0, 0);
    expect_top(&saddle.finished_top, saddle.strings, saddle.along, saddle.finished, 0.01, 0.01);
    arcs += saddle.finished_top.radius > 0;
    double radius = saddle.finished_top.radius;
    same_or_unknown(saddle.top_radius, radius > 0 ? radius : SIL_UNKNOWN);
    expect_more(plan, &saddle);
}

static void parts_of_random_plans_are_what_the_plan_says(void **state)
{
    (void)state;
    static random_job made;
    static sil_plan plan;
    uint64_t seed = 20;
    for (int job = 0; job < 500; job++) {
        make_random_job(&made, &seed, 1 + job % SIL_STRINGS_MAX);
        make_from_blank(&made, seed);
        plan_into(&made.job, &plan);
        expect_nut(&plan);
        expect_nut_outline(&plan);
        expect_saddle(&plan);
    }
    assert_true(outlines > 150 && slots_seen > 500 && arcs > 10);
    assert_true(staying > 10 && all_at_once > 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_straight_top_is_straight_everywhere),
        cmocka_unit_test(a_top_is_straight_between_its_points),
        cmocka_unit_test(a_round_top_is_one_arc),
        cmocka_unit_test(a_line_runs_through_every_point_of_its_curve),
        cmocka_unit_test(strings_without_a_height_are_left_out),
        cmocka_unit_test(parts_of_random_plans_are_what_the_plan_says),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
