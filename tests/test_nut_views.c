/* SPDX-License-Identifier: MIT */
/* The views of the nut show the part that was solved: every line of it and no other, at the view's
 * scale, mirrored for the left hand, and dimensioned from edge to edge. */
#include "dimensions.h"
#include "part_view.h"

static const double degree = 0.017453292519943295;

/* The slots as wide as they are cut, square to the string, which runs as the neck does: where the
 * bass end is nearer the headstock, a string goes back toward the bass end. */
static void the_nut_is_seen_from_above(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 41;
    for (int job = 0; job < JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        const part_nut *nut = &s.b->nut_part;
        draw_shapes *list = empty_list(&s);
        seen v = {nut->length, 5, s.left};
        if (sil_known(nut->thickness)) {
            view_nut_top(s.draft, list, draw_place_part(s.draft, nut->length, v.scale));
            assert_true(
                take_box(list, DRAW_OUTLINE, v, (draw_box){0, 0, nut->length, nut->thickness}));
            double aside = tan(nut->slant) * nut->thickness, wide = 1 / cos(nut->slant);
            for (int i = 0; i < nut->strings; i++) {
                for (int edge = -1; edge <= 1; edge += 2) {
                    double x = nut->along[i] + edge * wide * nut->width[i] / 2;
                    assert_true(take_line(list, DRAW_SLOT, i + 1, at(v, x, 0),
                                          at(v, x + aside, nut->thickness)));
                }
            }
        }
        nothing_left(list);
        draw_shapes_free(list);
        take_down(&s);
    }
}

static void look_at_nut_face(const scene *s, bool whole)
{
    const part_nut *nut = &s->b->nut_part;
    draw_shapes *list = empty_list(s);
    seen v = {nut->length, whole ? 5 : 1, s->left};
    draw_point points[PART_NUT_POINTS];
    view_nut_face(s->draft, list, draw_place_part(s->draft, nut->length, v.scale), whole);
    int count = part_nut_outline(nut, whole, points), rings = 0;
    for (int i = 0; i < count; i++) {
        points[i] = at(v, points[i].x, points[i].y);
    }
    assert_true(count > 0 ? take_path(list, DRAW_OUTLINE, 0, true, count, points)
                          : take_line(list, DRAW_OUTLINE, 0, at(v, 0, 0), at(v, nut->length, 0)));
    for (int i = 0; i < nut->strings; i++) {
        double x = nut->along[i], floor = nut->floor[i];
        if (count == 0) {
            assert_true(take_upright(list, DRAW_SLOT, i + 1, v, x, 0, 4 / v.scale));
        } else if (sil_known(floor) && !whole) {
            assert_true(
                take_upright(list, DRAW_SLOT, i + 1, v, x, floor, part_curve_at(&nut->top, x)));
        }
    }
    for (int k = 0; k < list->count; k++) {
        const draw_shape *ring = &list->shapes[k];
        if (ring->kind != DRAW_SHAPE_ARC) {
            continue;
        }
        int i = ring->string - 1;
        assert_true(alike(ring->at, at(v, nut->along[i], nut->floor[i] + nut->gauge[i] / 2)));
        near(ring->size, nut->gauge[i] / 2 * v.scale, 1e-9);
        rings++;
    }
    int known = 0;
    for (int i = 0; i < nut->strings; i++) {
        known += sil_known(nut->floor[i]);
    }
    assert_int_equal(rings, whole && count > 0 ? known : 0);
    nothing_left(list);
    draw_shapes_free(list);
}

static void the_nut_is_seen_from_the_body(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 42;
    for (int job = 0; job < JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        look_at_nut_face(&s, false);
        look_at_nut_face(&s, true);
        take_down(&s);
    }
}

static int stops; /* sections with a first floor over the finished one */
static int shims; /* sections with a shim under the nut */

/* Along one slot: the board up to where the feelers lie, on them the string, which runs level up to
 * the nut, down along the floor, and on to the tuner as the head does. */
static void look_at_nut_section(const scene *s, int i)
{
    const part_nut *nut = &s->b->nut_part;
    double long_ = nut->thickness / cos(nut->slant), floor = nut->floor[i];
    double surface = floor - nut->stack[i], back = floor - long_ * tan(nut->fall_deg * degree);
    double head = 2 * tan(s->made.job.instrument.head_angle_deg * degree);
    seen v = {0, 10, false};
    draw_shapes *list = empty_list(s);
    view_nut_section(s->draft, list, (draw_place){0, 0, 10, 10}, i);
    const draw_point body[] = {at(v, 0, 0), at(v, long_, 0), at(v, long_, back), at(v, 0, floor)};
    const brief_slot *slot = &s->b->nut.slot[i];
    const draw_point wall[] = {at(v, 0, floor), at(v, 0, floor + nut->depth[i]),
                               at(v, long_, back + nut->depth[i]), at(v, long_, back)};
    assert_true(take_box(list, DRAW_OUTLINE, v, (draw_box){-4, -nut->shim, 0, surface}));
    assert_true(take_path(list, DRAW_OUTLINE, 0, true, 4, body));
    assert_true(take_path(list, DRAW_SLOT, 0, false, 4, wall));
    double low = surface,
           now = surface + (brief_known(slot->stack_now) ? slot->stack_now.exact : nut->stack[i]);
    for (int leaf = 0; leaf < (slot->leaves > 0 ? slot->leaves : 1); leaf++) {
        double high = low + (slot->leaves > 0 ? slot->leaf[leaf].exact : now - surface);
        assert_true(take_box(list, DRAW_SLOT, v, (draw_box){-3.4, low, -0.4, high}));
        low = high;
    }
    assert_true(low >= now - 1e-9 && low <= now + 0.03);
    assert_true(now >= floor - 1e-9);
    if (now > floor + 1e-6) { /* what stays on today */
        const draw_point stop[] = {at(v, 0, now), at(v, long_, now - floor + back)};
        assert_true(take_path(list, DRAW_SLOT, 0, false, 2, stop));
        stops++;
    }
    if (nut->shim > 0) {
        assert_true(take_box(list, DRAW_OUTLINE, v, (draw_box){0, -nut->shim, long_, 0}));
        shims++;
    }
    for (int edge = 0; edge < 2; edge++) {
        double up = edge * nut->gauge[i];
        const draw_point string[] = {at(v, -4, floor + up), at(v, 0, floor + up),
                                     at(v, long_, back + up), at(v, long_ + 2, back + up - head)};
        assert_true(take_path(list, DRAW_STRING, i + 1, false, 4, string));
    }
    nothing_left(list);
    draw_box lined = box_of_layer(list, DRAW_HATCH);
    assert_true(lined.left > -40 - 1e-6 && lined.left < -30);
    assert_true(lined.bottom > -nut->shim * 10 - 1e-6 && lined.bottom < 2);
    assert_true(lined.right < long_ * 10 + 1e-6 && lined.right > (long_ - 1) * 10);
    int held = hold_dimensions(list, 10); /* the slot's drop only where its figure has room */
    assert_true(held == 4 || held == 5);
    draw_shapes_free(list);
}

static void the_nut_is_cut_along_a_slot(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 43;
    int looked = 0;
    for (int job = 0; job < JOBS; job++) {
        int strings = 1 + job % SIL_STRINGS_MAX;
        (job % 5 == 0 ? set_up_low : set_up_random)(&s, &seed, strings);
        const part_nut *nut = &s.b->nut_part;
        for (int i = 0; i < nut->strings; i++) {
            if (sil_known(nut->floor[i] + nut->stack[i] + nut->thickness + nut->fall_deg)) {
                look_at_nut_section(&s, i);
                looked++;
            }
        }
        take_down(&s);
    }
    assert_true(looked > 100);
    assert_true(stops > 0);
    assert_true(shims > 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_nut_is_seen_from_above),
        cmocka_unit_test(the_nut_is_seen_from_the_body),
        cmocka_unit_test(the_nut_is_cut_along_a_slot),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
