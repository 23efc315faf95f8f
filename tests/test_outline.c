/* SPDX-License-Identifier: MIT */
/* The outlines a machine follows: their arcs, their states, and which of them a drawing has. What is in
 * the files is measured by tests/drawing/. */
#include <sillet/drawing.h>
#include <string.h>

#include "viewed.h"

enum { JOBS = 400 };

static const double exact = 1e-9;

/* Half a circle and a quarter, whose centres are plain. The bulge as in the DXF reference, LWPOLYLINE,
 * group 42: the tangent of a quarter of the included angle, negative where the arc goes clockwise. */
static void an_arc_is_found_from_its_bulge(void **state)
{
    (void)state;
    part_arc half = part_arc_to((part_corner){0, 0, 1}, (part_corner){2, 0, 0});
    near(half.x, 1, exact);
    near(half.y, 0, exact);
    near(half.radius, 1, exact);
    near(half.turn, acos(-1.0), exact);
    double eighth = tan(acos(-1.0) / 8);
    part_arc left = part_arc_to((part_corner){5, 0, eighth}, (part_corner){0, 5, 0});
    near(left.x, 0, exact);
    near(left.y, 0, exact);
    near(left.radius, 5, exact);
    near(left.from, 0, exact);
    part_arc right = part_arc_to((part_corner){0, 5, -eighth}, (part_corner){5, 0, 0});
    near(right.x, 0, exact);
    near(right.y, 0, exact);
    near(right.turn, -acos(0.0), exact);
}

static void the_box_goes_round_an_arc(void **state)
{
    (void)state;
    draw_letters *letters = draw_letters_open();
    draw_shapes *list = draw_shapes_new(letters), *both = draw_shapes_new(letters);
    const draw_corner lens[] = {{0, 0, 0}, {4, 0, 0.5}, {0, 0.001, 0}};
    draw_outline(list, DRAW_FINISHED, lens, 3);
    assert_int_equal(list->count, 1);
    near(list->box.left, 0, 1e-6);
    near(list->box.right, 4, 1e-6);
    near(list->box.bottom, 0, 1e-6);
    near(list->box.top, 0.5 * 4 / 2, 1e-3); /* the sagitta is the bulge times half the chord */
    draw_shapes_add(both, list, 10, 20);
    draw_shapes_add(both, list, -10, 0);
    near(both->corners[0].x, 10, exact);
    near(both->corners[4].x, -6, exact);
    near(both->corners[4].bulge, 0.5, exact);
    assert_int_equal(both->shapes[1].first, 3);
    const draw_corner wrong[] = {{0, 0, 0}, {SIL_UNKNOWN, 0, 0}, {1, 1, 0}};
    draw_outline(list, DRAW_FINISHED, wrong, 3);
    assert_true(list->no_number);
    draw_shapes_free(list);
    draw_shapes_free(both);
    draw_letters_close(letters);
}

static int nuts, saddles, first_saddles, new_first, solids;

/* Takes the outline of a layer that has these corners, mirrored for the left hand. */
static bool take_outline(const scene *s, draw_shapes *list, draw_layer layer, double length,
                         const part_corner *corners, int count)
{
    for (int i = 0; i < list->count; i++) {
        const draw_shape *it = &list->shapes[i];
        bool same = it->kind == DRAW_SHAPE_OUTLINE && it->layer == layer && it->count == count;
        for (int k = 0; same && k < count; k++) {
            draw_corner got = list->corners[it->first + k];
            double x = s->left ? length - corners[k].x : corners[k].x;
            same = fabs(got.x - x) < exact && fabs(got.y - corners[k].y) < exact &&
                   fabs(got.bulge - (s->left ? -1 : 1) * corners[k].bulge) < exact;
        }
        if (same) {
            list->shapes[i].layer = DRAW_LAYERS; /* taken */
            return true;
        }
    }
    return false;
}

static void nothing_left(const draw_shapes *list)
{
    for (int i = 0; i < list->count; i++) {
        assert_int_equal(list->shapes[i].layer, DRAW_LAYERS);
    }
}

/* The floor of each slot is the lowest place of an arc, its first pass above it by what is left. */
static void expect_floors(const scene *s, const part_corner *corners, int count, bool first)
{
    const sil_plan *plan = s->draft->plan;
    const part_nut *nut = &s->b->nut_part;
    int floors = 0;
    for (int i = 0; i < count; i++) {
        if (corners[i].bulge < 0) {
            part_arc arc = part_arc_to(corners[i], corners[(i + 1) % count]);
            bool back = plan->stages.filed_back[floors] > 0.0; /* with a shim under the nut */
            bool anew = plan_cuts_anew(plan, floors);
            double left = anew ? plan->nut.leave[floors]
                               : plan_slot_goal(plan, floors) +
                                     (back ? plan->stages.shim - plan->stages.filed_back[floors]
                                           : -plan->nut.first_pass[floors]);
            bool takes = anew || back || plan->nut.verdict[floors] == SIL_TAKE;
            bool more = takes && left >= 0.005 && first;
            near(arc.x, nut->along[floors], 1e-6);
            near(arc.radius, plan->slot_width[floors] / cos(nut->slant) / 2, 1e-6);
            near(arc.y - arc.radius, nut->floor[floors] + (more ? left : 0), 1e-6);
            floors++;
        }
    }
    assert_int_equal(floors, nut->strings);
}

static void look_at_nut(const scene *s)
{
    const part_nut *nut = &s->b->nut_part;
    part_corner corners[PART_CORNERS];
    draw_shapes *list = empty_list(s);
    bool there_is = view_nut_outline(s->draft, list, draw_place_part(s->draft, nut->length, 1));
    int count = part_nut_corners(nut, PART_FINISHED, corners);
    assert_int_equal(there_is, count > 0);
    assert_int_equal(part_nut_corners(nut, PART_PRESENT, corners), 0);
    if (there_is) {
        count = part_nut_corners(nut, PART_FINISHED, corners);
        expect_floors(s, corners, count, false);
        assert_true(take_outline(s, list, DRAW_FINISHED, nut->length, corners, count));
        nuts++;
    }
    count = part_nut_corners(nut, PART_FIRST, corners);
    if (there_is && nut->more && count > 0) {
        expect_floors(s, corners, count, true);
        assert_true(take_outline(s, list, DRAW_CUT_FIRST, nut->length, corners, count));
    }
    nothing_left(list);
    draw_shapes_free(list);
}

static const draw_layer layers[] = {
    [PART_PRESENT] = DRAW_PRESENT, [PART_FIRST] = DRAW_CUT_FIRST, [PART_FINISHED] = DRAW_FINISHED};

/* A new saddle is higher at first, at each string by what the plan leaves on; both tops may be arcs,
 * each within 0.01 of its heights. */
static void expect_left_on(const scene *s)
{
    const part_saddle *part = &s->b->saddle_part;
    const sil_saddle_work *work = &s->draft->plan->saddle;
    double most = 0;
    for (int i = 0; i < part->strings; i++) {
        if (sil_known(work->height[i])) {
            most = fmax(most, work->leave[i]);
            assert_true(work->leave[i] >= 0);
            near(part_curve_at(&part->first_top, part->along[i]), work->height[i] + work->leave[i],
                 0.01 + exact);
        }
    }
    assert_true(most >= 0.005);
    new_first++;
}

/* Each state stands on its own bottom; the piece as it is on y 0. */
static void look_at_saddle(const scene *s)
{
    const part_saddle *part = &s->b->saddle_part;
    const bool there[] = {[PART_PRESENT] = part->cut,
                          [PART_FIRST] = part->more && part->takes,
                          [PART_FINISHED] = true};
    const sil_line off[] = {
        [PART_PRESENT] = {0, 0}, [PART_FIRST] = part->base_first, [PART_FINISHED] = part->base_all};
    part_corner corners[PART_CORNERS];
    draw_shapes *list = empty_list(s);
    bool there_is = view_saddle_outline(s->draft, list, draw_place_part(s->draft, part->length, 1));
    for (part_when when = PART_PRESENT; when <= PART_FINISHED; when++) {
        int count = part_saddle_corners(part, when, corners);
        if (!there[when] || count == 0) {
            continue;
        }
        for (int end = 0; end < 2; end++) {
            double x = end * part->length;
            near(corners[end].x, x, exact);
            near(corners[end].y, part->base ? part_base_at(part, off[when], x) : 0, exact);
        }
        assert_true(take_outline(s, list, layers[when], part->length, corners, count));
        if (when == PART_FIRST && part->anew) {
            expect_left_on(s);
        }
        first_saddles += when == PART_FIRST && !part->anew;
        saddles += when == PART_FINISHED;
    }
    assert_int_equal(there_is, part_saddle_corners(part, PART_FINISHED, corners) > 0);
    nothing_left(list);
    draw_shapes_free(list);
}

/* Both faces of a solid have as many points; its front goes through the floors and the ends of the top. */
static void look_at_solid(const part_nut *nut)
{
    static part_solid solid;
    if (!part_nut_solid(nut, &solid)) {
        return;
    }
    assert_in_range(solid.count, 4, PART_SOLID_POINTS);
    near(solid.thickness, nut->thickness, exact);
    double fall = nut->thickness / cos(nut->slant) * tan(nut->fall_deg * acos(-1.0) / 180);
    for (int i = 0; i < nut->strings; i++) {
        int deepest = -1;
        for (int k = 2; k < solid.count; k++) {
            deepest = fabs(solid.at[0][k].x - nut->along[i]) < exact &&
                              fabs(solid.at[0][k].y - nut->floor[i]) < exact
                          ? k
                          : deepest;
        }
        assert_true(deepest > 0);
        near(solid.at[PART_SECTIONS - 1][deepest].y, nut->floor[i] - fall, 1e-6);
        near(solid.at[PART_SECTIONS - 1][deepest].x,
             nut->along[i] + nut->thickness * tan(nut->slant), 1e-6);
    }
    solids++;
}

static void outlines_of_random_plans_are_the_parts(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 47;
    for (int job = 0; job < JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        look_at_nut(&s);
        look_at_solid(&s.b->nut_part);
        if (!sil_working_turns(s.b->saddle.working) && sil_known(s.b->saddle_part.length)) {
            look_at_saddle(&s);
        }
        take_down(&s);
    }
    assert_true(nuts > 100 && saddles > 50 && solids > 70 && first_saddles > 2 && new_first > 2);
}

/* A file of solids is as long as its count of triangles says (80 bytes, the count, 50 a triangle), and
 * each part is in it or named as missing. */
static void every_part_is_solid_or_missing(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 48;
    for (int job = 0; job < 60; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        const sil_draw_options order = {.part = SIL_PART_ALL, .unit = SIL_MM};
        sil_drawing *drawing = NULL;
        char *bytes = NULL, words[200];
        size_t size = 0;
        int missing = 0;
        assert_true(sil_outlines_make(s.draft->plan, &order, &drawing) >= SIL_DONE);
        while (sil_drawing_missing(drawing, missing, words, sizeof words)) {
            assert_true(strncmp(words, "Nut", 3) == 0 || strncmp(words, "Saddle", 6) == 0);
            missing++;
        }
        sil_status status = sil_drawing_write(drawing, SIL_STL, &bytes, &size);
        assert_in_range(missing, 0, 2);
        assert_int_equal(status, missing == 2 ? SIL_NO_SOLID : SIL_DONE);
        if (status == SIL_DONE) {
            const unsigned char *count = (const unsigned char *)bytes + 80;
            assert_int_equal(size, 84 + 50 * (size_t)(count[0] | count[1] << 8 | count[2] << 16));
        }
        free(bytes);
        sil_drawing_free(drawing);
        take_down(&s);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_arc_is_found_from_its_bulge),
        cmocka_unit_test(the_box_goes_round_an_arc),
        cmocka_unit_test(outlines_of_random_plans_are_the_parts),
        cmocka_unit_test(every_part_is_solid_or_missing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
