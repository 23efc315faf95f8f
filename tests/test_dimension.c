/* SPDX-License-Identifier: MIT */
/* Dimension lines do not overlap, and the curve of a part's top is smooth. */
#include "dimensions.h"

/* However short, whichever end comes first and on whichever side it stands, see read_dimension. */
static void dimensions_go_from_end_to_end(void **state)
{
    (void)state;
    uint64_t seed = 12;
    for (int k = 0; k < 400; k++) {
        draw_shapes *list = empty_list(&drawn);
        double size = uniform(&seed, 0.5, k % 2 == 0 ? 9 : 60), side = k % 3 == 0 ? -9 : 9;
        draw_point a = {uniform(&seed, -9, 9), uniform(&seed, -9, 9)}, b = a;
        dimension d;
        bool up = k % 4 < 2;
        *(up ? &b.y : &b.x) += k % 5 == 0 ? -size : size;
        if (up) {
            draw_dim_up(drawn.draft, list, a, b, a.x + side, figure_of(size));
        } else {
            draw_dim_across(drawn.draft, list, a, b, a.y + side, figure_of(size));
        }
        assert_int_equal(list->count, DIMENSION_SHAPES);
        assert_true(read_dimension(list, 0, &d));
        near(d.tip[0], up ? fmin(a.y, b.y) : fmin(a.x, b.x), 1e-9);
        near(d.tip[1] - d.tip[0], size, 1e-9);
        near(d.value, size, 0.005 + 1e-9);
        const draw_point *out = points_of(list, 0), *line = points_of(list, 2);
        draw_point from = {a.x, a.y};
        double off = off_of(up, out[0]) - off_of(up, from);
        assert_int_equal(d.up, up);
        near(off_of(up, line[0]), off_of(up, from) + (up ? -side : side), 1e-9);
        assert_true(off * (up ? -side : side) > 0 && fabs(off) < 1);
        draw_shapes_free(list);
    }
}

/* The row of a line that leads out of a feature, so far apart from it: where it begins and where its
 * figure stands. */
static int row_of(const draw_shapes *list, draw_point from, double apart)
{
    for (int i = 0; i < list->count; i++) {
        const draw_point *p = points_of(list, i);
        if (is_path(list, i, DRAW_DIMENSION, 4) && fabs(p[0].x - from.x) < 1e-9 &&
            fabs(fabs(p[0].y - from.y) - apart) < 1e-9) {
            assert_false(list->shapes[i].closed);
            return i;
        }
    }
    return -1;
}

/* In either order, over and under the part, crowded and not: each line leads to its own figure, and
 * to its ring where it has one. */
static void each_line_leads_to_its_figure(void **state)
{
    (void)state;
    uint64_t seed = 13;
    for (int k = 0; k < 300; k++) {
        draw_shapes *list = empty_list(&drawn);
        bool crowded = k % 2 == 0, mirrored = k % 3 == 0;
        draw_ordinates o = {.count = whole(&seed, 1, SIL_STRINGS_MAX),
                            .origin = k % 4 == 0,
                            .numbered = k % 4 == 1,
                            .touches = k % 7 == 3,
                            .reach = k % 5 < 2 ? -12 : 12};
        double x = 0, s = o.reach < 0 ? -1 : 1;
        for (int i = 0; i < o.count; i++) {
            x += crowded ? uniform(&seed, 1, 3) : uniform(&seed, 14, 20);
            o.from[i] = (draw_point){mirrored ? -x : x, 0};
            o.figure[i] = figure_of(i + 1 + i * 0.01);
            o.number[i] = i + 1;
        }
        double far = draw_dim_ordinates(drawn.draft, list, &o);
        assert_true(s * (far - o.reach) > 0);
        for (int i = 0; i < o.count; i++) {
            int at = row_of(list, o.from[i], o.touches ? 0 : 0.8);
            assert_true(at >= 0 && at + 1 < list->count);
            const draw_shape *line = &list->shapes[at], *told = line + 1;
            draw_point end = points_of(list, at)[3];
            assert_string_equal(words_of(list, at + 1),
                                o.origin && i == 0 ? "0" : o.figure[i].shown);
            assert_true(o.touches || s * (points_of(list, at)[0].y) > 0);
            near(end.y, o.reach, 1e-9);
            assert_true(fabs((told->box.left + told->box.right) / 2 - end.x) < 0.8);
            assert_true(s > 0 ? told->box.bottom > o.reach : told->box.top < o.reach);
            assert_true(s > 0 ? told->box.top < far + 0.3 : told->box.bottom > far - 0.3);
            assert_int_equal(line->string, o.numbered ? i + 1 : 0);
            assert_true(told->from > 45 ? crowded : true);
            assert_true(crowded || o.count == 1 || told->from == 0);
            if (o.numbered) {
                assert_int_equal(line[2].kind, DRAW_SHAPE_ARC);
                assert_true(alike(line[2].at, (draw_point){end.x, line[2].at.y}));
                assert_int_equal(atoi(words_of(list, at + 3)), i + 1);
                assert_true(s * (line[2].at.y - o.reach) > 0);
                assert_int_equal(line[2].string, i + 1);
            }
        }
        assert_int_equal(list->count, o.count * (o.numbered ? 4 : 2));
        draw_shapes_free(list);
    }
}

/* A chain: a stroke and a line led out at each place, a figure between each two. */
static void a_chain_tells_each_gap(void **state)
{
    (void)state;
    draw_shapes *list = empty_list(&drawn);
    double x[] = {0, 20, 45, 80};
    const brief_figure gap[] = {figure_of(20), figure_of(25), figure_of(35)};
    draw_dim_chain(drawn.draft, list, 4, x, gap, 0, -6);
    for (int i = 0; i < 4; i++) {
        assert_true(take_line(list, DRAW_SLOT, 0, (draw_point){x[i] - 0.9, -6.9},
                              (draw_point){x[i] + 0.9, -5.1}));
        assert_true(
            take_line(list, DRAW_DIMENSION, 0, (draw_point){x[i], -0.8}, (draw_point){x[i], -7.5}));
    }
    assert_true(take_line(list, DRAW_DIMENSION, 0, (draw_point){0, -6}, (draw_point){80, -6}));
    for (int i = 0; i < 3; i++) {
        int at = row_of(list, (draw_point){(x[i] + x[i + 1]) / 2, -6}, 0.8);
        assert_true(at >= 0);
        assert_string_equal(words_of(list, at + 1), gap[i].shown);
    }
    assert_int_equal(
        count_words(list, "20.00") + count_words(list, "25.00") + count_words(list, "35.00"), 3);
    draw_shapes_free(list);
}

/* A plane is seen from its right: its arrows point to the left, at both ends, with its letter. */
static void a_plane_is_seen_from_its_right(void **state)
{
    (void)state;
    const draw_box view = {0, 0, 40, 8};
    for (int k = 0; k < 2; k++) {
        double x = k == 0 ? 15 : 38;
        draw_shapes *list = empty_list(&drawn);
        draw_plane(list, (draw_point){x, 0}, (draw_point){x, 8}, -1, true, view, "B");
        assert_int_equal(count_words(list, "B"), 2);
        double low = INFINITY, high = -INFINITY;
        for (int i = 0; i < list->count; i++) {
            const draw_shape *shape = &list->shapes[i];
            const draw_point *p = points_of(list, i);
            if (shape->kind == DRAW_SHAPE_TEXT) {
                assert_true(k == 0 ? shape->box.left > x : shape->box.right < x);
                assert_true(shape->box.right > view.left && shape->box.left < view.right);
            } else if (shape->filled) {
                near((p[1].y + p[2].y) / 2, p[0].y, 1e-9);
                assert_true(p[0].x < p[1].x && p[1].x < x);
            } else if (shape->layer == DRAW_OUTLINE) {
                low = fmin(low, shape->box.bottom);
                high = fmax(high, shape->box.top);
                near(shape->box.left, x, 1e-9);
                near(shape->box.right, x, 1e-9);
            }
        }
        assert_true(take_line(list, DRAW_CENTRE, 0, (draw_point){x, -0.8}, (draw_point){x, 8.8}));
        assert_true(low < -0.8 - 1 && high > 8.8 + 1);
        draw_shapes_free(list);
    }
}

/* A leader ends at the feature, its arrow pointing from the text toward it. */
static void a_leader_points_at_its_feature(void **state)
{
    (void)state;
    uint64_t seed = 14;
    for (int k = 0; k < 50; k++) {
        draw_point feature = {uniform(&seed, -9, 9), uniform(&seed, -9, 9)};
        draw_point knee = {uniform(&seed, 12, 20), uniform(&seed, -20, 20)};
        draw_shapes *list = empty_list(&drawn);
        draw_leader(list, feature, knee);
        const draw_point *head = points_of(list, 1);
        draw_point back = {(head[1].x + head[2].x) / 2, (head[1].y + head[2].y) / 2};
        double long_ = hypot(knee.x - feature.x, knee.y - feature.y);
        assert_true(take_line(list, DRAW_DIMENSION, 0, feature, knee));
        assert_true(alike(head[0], feature));
        near((back.x - feature.x) * (knee.y - feature.y),
             (back.y - feature.y) * (knee.x - feature.x), 1e-6);
        near(((back.x - feature.x) * (knee.x - feature.x) +
              (back.y - feature.y) * (knee.y - feature.y)) /
                 long_,
             2.5, 1e-6);
        draw_shapes_free(list);
    }
}

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
        cmocka_unit_test(dimensions_go_from_end_to_end),
        cmocka_unit_test(each_line_leads_to_its_figure),
        cmocka_unit_test(a_chain_tells_each_gap),
        cmocka_unit_test(a_plane_is_seen_from_its_right),
        cmocka_unit_test(a_leader_points_at_its_feature),
        cmocka_unit_test(crowded_figures_are_spread),
        cmocka_unit_test(curves_go_through_their_points),
    };
    return cmocka_run_group_tests(tests, set_up_letters, take_down_letters);
}
