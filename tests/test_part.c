/* SPDX-License-Identifier: MIT */
/* The finished nut and saddle as geometry: their sizes, tops and outlines, where strings cross. */
#include "../src/part/within.h"
#include "planned.h"
#include "random_job.h"

static const double exact = 1e-9;

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
    for (int i = 0; i < nut.strings; i++) {
        top[i] = nut.first[i] + plan->nut.depth[i];
    }
    expect_top(&nut.first_top, nut.strings, nut.along, top, 0, 0.05);
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

/* Straight on past its strings a top may run out under the bottom, or under what is sanded off it. */
static void a_saddle_ends_where_its_top_meets_its_bottom(void **state)
{
    (void)state;
    const double along[] = {50, 10};
    const double tops[][2] = {{0.6, 0.6}, {-0.1, -0.1}, {1.0, 0.19}, {0.19, 1.0}};
    for (int k = 0; k < 4; k++) {
        part_saddle saddle = {.strings = 2, .length = 60};
        saddle.finished_top = part_curve_through(2, along, tops[k]);
        assert_int_equal(part_saddle_has_ends(&saddle), k == 0);
        saddle.base = true;
        saddle.base_all = (sil_line){0.7, 0};
        assert_false(part_saddle_has_ends(&saddle));
        saddle.base_all.b0 = 0.5;
        assert_int_equal(part_saddle_has_ends(&saddle), k == 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(parts_of_random_plans_are_what_the_plan_says),
        cmocka_unit_test(a_saddle_ends_where_its_top_meets_its_bottom),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
