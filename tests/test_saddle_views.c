/* SPDX-License-Identifier: MIT */
/* The views of the saddle show the part that was solved: every line of it and no other, at the view's
 * scale, mirrored for the left hand, and dimensioned from edge to edge. */
#include "dimensions.h"
#include "part_view.h"

/* How much over the finished top the saddle stands now at x: by its strings, straight from each to the
 * next, and level past the outer ones. */
static double stands_over(const part_saddle *part, double x)
{
    double at_last = 0, last = NAN;
    for (int i = 0; i < part->strings; i++) { /* string 1 is the farthest from the bass end */
        if (!sil_known(part->present[i])) {
            continue;
        }
        double along = part->along[i];
        double over = part->present[i] - part_curve_at(&part->finished_top, along);
        if (along <= x) {
            return isnan(last) ? over : over + (at_last - over) * (x - along) / (last - along);
        }
        last = along;
        at_last = over;
    }
    return at_last;
}

/* The top as it is now: in pieces, only where it is not the finished one. */
static bool take_present(draw_shapes *list, const part_saddle *part, seen v)
{
    draw_point points[PART_CURVE_POINTS];
    int count = part_curve_points(&part->finished_top, 0, part->length, points), begin = 0;
    bool apart = false, all = true;
    for (int i = 0; i < count; i++) {
        double over = stands_over(part, points[i].x);
        bool same = fabs(over) <= 0.011; /* mm */
        points[i] = at(v, points[i].x, points[i].y + (same ? 0 : over));
        if (apart && (same || i == count - 1)) {
            all = all && take_path(list, DRAW_PRESENT, 0, false, i - begin + 1, points + begin);
        }
        begin = same ? i : begin;
        apart = !same;
    }
    return all;
}

static void take_saddle_end(draw_shapes *list, const part_saddle *part, seen v, double x)
{
    double low = part->base ? sil_line_at(part->base_first, x - part->length / 2) : 0;
    bool whole = part->finished_top.count > 0, old = part->present_top.count > 0;
    assert_true(take_upright(list, DRAW_OUTLINE, 0, v, x, low,
                             whole ? part_curve_at(&part->finished_top, x) : 6));
    if (old || part->base) {
        double top = whole && old ? part_curve_at(&part->finished_top, x) + stands_over(part, x)
                     : old        ? part_curve_at(&part->present_top, x)
                                  : low;
        assert_true(take_upright(list, DRAW_PRESENT, 0, v, x, 0, top));
    }
}

static void take_cuts(draw_shapes *list, const part_saddle *part, seen v)
{
    const sil_line lines[] = {part->base_all, part->base_first};
    for (int k = 0; k < 2 && part->base; k++) {
        double off[2];
        for (int end = 0; end < 2; end++) {
            off[end] = sil_line_at(lines[k], (end - 0.5) * part->length);
        }
        assert_true(take_line(list, k == 0 ? DRAW_CUT : DRAW_CUT_FIRST, 0, at(v, 0, off[0]),
                              at(v, part->length, off[1])));
    }
}

/* Where no height is known, a wavy line where it is broken off. */
static bool is_broken_off(const draw_shapes *list, seen v)
{
    for (int i = 0; i < list->count; i++) {
        const draw_point *points = points_of(list, i);
        if (!is_path(list, i, DRAW_DIMENSION, 25) || list->shapes[i].closed) {
            continue;
        }
        for (int k = 0; k < 25; k++) {
            near(points[k].x, at(v, v.length * k / 24, 0).x, 1e-9);
            near(points[k].y / v.scale, 6, k % 2 == 0 ? 1e-9 : 0.3);
        }
        return true;
    }
    return false;
}

static void look_at_saddle_face(const scene *s)
{
    const part_saddle *part = &s->b->saddle_part;
    bool whole = part->finished_top.count > 0, worked = s->b->saddle.remedy != SIL_SADDLE_NONE;
    seen v = {part->length, 2, s->left};
    draw_shapes *list = empty_list(s);
    view_saddle_face(s->draft, list, draw_place_part(s->draft, part->length, v.scale));
    take_saddle_end(list, part, v, 0);
    take_saddle_end(list, part, v, part->length);
    assert_true(whole ? take_curve(list, DRAW_OUTLINE, v, &part->finished_top)
                      : is_broken_off(list, v));
    assert_true(!(worked && part->present_top.count > 0) ||
                (whole ? take_present(list, part, v)
                       : take_curve(list, DRAW_PRESENT, v, &part->present_top)));
    assert_true(take_line(list, part->base ? DRAW_PRESENT : DRAW_OUTLINE, 0, at(v, 0, 0),
                          at(v, part->length, 0)));
    take_cuts(list, part, v);
    draw_box lined = box_of_layer(list, DRAW_HATCH);
    if (part->shim > 0) {
        assert_true(take_box(list, DRAW_OUTLINE, v, (draw_box){0, -part->shim, part->length, 0}));
        assert_true(lined.top <= 1e-9 && lined.bottom >= -part->shim * v.scale - 1e-9);
    }
    assert_true((part->shim > 0) == (lined.left < lined.right));
    nothing_left(list);
    draw_shapes_free(list);
}

static bool is_a_piece(const scene *s)
{
    return !sil_working_turns(s->b->saddle.working) && sil_known(s->b->saddle_part.thickness);
}

static void the_saddle_is_seen_from_the_tail(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 44;
    for (int job = 0; job < 2 * JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        if (!sil_working_turns(s.b->saddle.working)) {
            look_at_saddle_face(&s);
        }
        take_down(&s);
    }
}

/* A cross where each string leaves the top: off behind the middle along the string, and
 * with it aside where the saddle stands aslant; the nut is at the top. */
static void take_crosses(draw_shapes *list, const part_saddle *part, seen v, const bool *crossed,
                         const double *offs)
{
    const double arm = 1.2;
    for (int i = 0; i < part->strings; i++) {
        double off = offs[i];
        draw_point c = at(v, part->along[i] - off * sin(part->slant), -off * cos(part->slant));
        for (int k = 0; k < 2 && crossed[i]; k++) {
            double x = k == 0 ? arm : 0, y = k == 0 ? 0 : arm;
            assert_true(take_line(list, DRAW_CONTACT, i + 1, (draw_point){c.x - x, c.y - y},
                                  (draw_point){c.x + x, c.y + y}));
        }
    }
}

/* A circle where each string would play in tune: another mark than where it leaves the top. */
static void look_at_circles(const draw_shapes *list, const part_saddle *part, seen v)
{
    for (int i = 0; i < part->strings; i++) {
        double off = part->contact[i];
        draw_point c = at(v, part->along[i] - off * sin(part->slant), -off * cos(part->slant));
        int found = 0;
        for (int k = 0; k < list->count; k++) {
            const draw_shape *shape = &list->shapes[k];
            found += shape->kind == DRAW_SHAPE_ARC && shape->layer == DRAW_CONTACT &&
                     shape->string == i + 1 && alike(shape->at, c) && shape->size < 1.5;
        }
        assert_int_equal(found, part->contact_known[i]);
    }
}

/* Beyond the nut side's edge (1) or the other (-1): an arrow out of the edge at each string that is in
 * tune there, how far beyond it is, and once which way. Returned: how many strings. */
static int look_beyond(const scene *s, const draw_shapes *list, int side)
{
    const part_saddle *part = &s->b->saddle_part;
    int count = 0, said = 0;
    for (int i = 0; i < part->strings; i++) {
        bool beyond = -side * part->in_tune[i] * cos(part->slant) > part->thickness / 2;
        int arrows = 0;
        for (int k = 0; k < list->count; k++) {
            const draw_shape *shape = &list->shapes[k];
            arrows += shape->kind == DRAW_SHAPE_PATH && shape->filled && shape->string == i + 1 &&
                      side * shape->box.bottom > 0;
        }
        assert_int_equal(arrows, beyond);
        assert_true(!beyond || count_words(list, s->b->saddle.string[i].beyond.shown) > 0);
        count += beyond;
    }
    for (int k = 0; k < list->count; k++) {
        const char *words = words_of(list, k);
        bool here = strncmp(words, side > 0 ? "ahead" : "behind", side > 0 ? 5 : 6) == 0;
        said += here;
        assert_true(!here || side * list->shapes[k].at.y > 0);
    }
    assert_true(said <= (count > 0) && (count != 1 || said == 1));
    return count;
}

static void the_saddle_is_seen_from_above(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 45;
    int alone[2] = {0};
    for (int job = 0; job < JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        const part_saddle *part = &s.b->saddle_part;
        double half = part->thickness / 2, reach = half + 0.5;
        bool crossed[SIL_STRINGS_MAX];
        seen v = {part->length, 2, s.left};
        draw_shapes *list = empty_list(&s);
        for (int i = 0; i < part->strings; i++) {
            crossed[i] = fabs(part->peak[i]) <= reach;
        }
        if (is_a_piece(&s)) {
            draw_place place = draw_place_part(s.draft, part->length, v.scale);
            view_saddle_top(s.draft, list, place, reach);
            assert_true(take_box(list, DRAW_OUTLINE, v, (draw_box){0, -half, part->length, half}));
            assert_true(take_line(list, DRAW_CENTRE, 0, (draw_point){-3, 0},
                                  (draw_point){part->length * v.scale + 3, 0}));
            take_crosses(list, part, v, crossed, part->peak);
            alone[0] += look_beyond(&s, list, 1) == 1;
            alone[1] += look_beyond(&s, list, -1) == 1;
        }
        nothing_left(list);
        draw_shapes_free(list);
        take_down(&s);
    }
    assert_true(alone[0] > 3 && alone[1] > 3);
}

/* How far a line is behind the middle of the slot as it was built, square to it. */
static double behind(const part_saddle *part, double x)
{
    double z = x - part->length / 2;
    return (sil_line_at(part->slot_best, z) - sil_line_at(part->slot_built, z));
}

static void look_at_slot(const scene *s, bool shown, bool better)
{
    const part_saddle *part = &s->b->saddle_part;
    double half = part->thickness / 2;
    seen v = {part->length, 2, s->left};
    draw_shapes *list = empty_list(s);
    view_slot(s->draft, list, v.scale);
    if (shown) {
        assert_true(take_box(list, DRAW_OUTLINE, v, (draw_box){0, -half, part->length, half}));
        look_at_circles(list, part, v);
        if (better) {
            double bass = -behind(part, 0) * cos(part->slant);
            double treble = -behind(part, part->length) * cos(part->slant);
            const draw_point corners[] = {at(v, 0, bass - half), at(v, part->length, treble - half),
                                          at(v, part->length, treble + half),
                                          at(v, 0, bass + half)};
            assert_true(take_path(list, DRAW_HIDDEN, 0, true, 4, corners));
        }
        for (int i = 0; i < part->strings; i++) {
            char number[16];
            snprintf(number, sizeof number, "%d", i + 1);
            assert_int_equal(count_words(list, number), part->contact_known[i]);
        }
    }
    assert_true(shown || list->count == 0);
    nothing_left(list);
    draw_shapes_free(list);
}

/* Some points of contact are not known, and one may be too far off to show. */
static void the_slot_is_shown_with_a_better_one(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 46;
    int slots = 0, fits = 0;
    for (int job = 0; job < 2 * JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        part_saddle *part = &s.drawing->brief->saddle_part;
        bool any = false, far = false, one = job % 4 == 1;
        for (int i = 0; i < part->strings; i++) {
            part->contact_known[i] =
                one ? i == job % part->strings : part->contact_known[i] && job % 4 != 2;
            part->contact[i] += job % 5 == 3 ? 14 : 0;
            any = any || part->contact_known[i];
            far = far || (part->contact_known[i] && fabs(part->contact[i]) > 12);
        }
        bool shown = view_saddle_in_slot(s.draft) && any && !far;
        bool better = view_saddle_any_outside(s.draft) && fabs(behind(part, 0)) <= 12 &&
                      fabs(behind(part, part->length)) <= 12;
        assert_int_equal(view_best_slot_fits(s.draft), better);
        look_at_slot(&s, shown, better);
        slots += shown;
        fits += shown && better;
        take_down(&s);
    }
    assert_true(slots > 30 && fits > 15);
}

static bool inside(draw_point p, const draw_point *polygon, int count)
{
    bool in = false;
    for (int i = 0; i < count; i++) {
        draw_point a = polygon[i], b = polygon[(i + 1) % count];
        if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) {
            in = !in;
        }
    }
    return in;
}

static int shims; /* sections with a shim under the saddle */

/* The saddle in its slot: the bridge broken off around it; in the slot a pickup, a shim, the saddle;
 * over it the string, level to its peak and straight from there to where it enters the bridge. The
 * top falls from the peak to both faces by 12 degrees, or at the back as the string does. */
static void look_at_saddle_end(const scene *s, int i)
{
    const part_saddle *part = &s->b->saddle_part;
    const sil_job_saddle *job = &s->made.job.saddle;
    double half = part->thickness / 2, top = part->bridge[i], shim = part->shim, pin = 6;
    double high = s->b->saddle.string[i].height.exact, sunk = -job->pickup, exit = high;
    if (sil_known(job->pin_distance[i])) {
        pin = job->pin_distance[i];
        exit = top + job->exit_height;
    }
    double right = half + pin + (sil_known(job->pin_distance[i]) ? 2 : 0), low = sunk - 2.5;
    double peak = s->plan.tuning.peak[i] - half, falls = tan(12 * acos(-1.0) / 180);
    bool slotted = sil_working_in_slot(s->b->saddle.working);
    peak = slotted ? peak : part->contact[i] * cos(part->slant);
    double straight = high + (exit - high) * (half - peak) / (half - peak + pin);
    double back = fmax(fmin(straight, high - (half - peak) * falls), top);
    double front = fmax(high - (half + peak) * falls, top);
    seen v = {0, 5, false};
    draw_shapes *list = empty_list(s);
    view_saddle_end(s->draft, list, (draw_place){0, 0, 5, 5}, i);
    const draw_point bridge[] = {at(v, -6, low),    at(v, right, low), at(v, right, top),
                                 at(v, half, top),  at(v, half, sunk), at(v, -half, sunk),
                                 at(v, -half, top), at(v, -6, top)};
    const draw_point broken[] = {bridge[7], bridge[0], bridge[1], bridge[2]};
    const draw_point block[] = {at(v, -half, shim), at(v, half, shim), at(v, half, back),
                                at(v, peak, high), at(v, -half, front)};
    assert_true(take_path(list, DRAW_OUTLINE, 0, false, 6, bridge + 2));
    assert_true(take_path(list, DRAW_DIMENSION, 0, false, 4, broken));
    assert_true(take_path(list, DRAW_OUTLINE, 0, true, 5, block));
    if (shim > 0) {
        assert_true(take_box(list, DRAW_OUTLINE, v, (draw_box){-half, 0, half, shim}));
        shims++;
    }
    assert_true(sunk >= 0 || take_box(list, DRAW_OUTLINE, v, (draw_box){-half, sunk, half, 0}));
    for (int edge = 0; edge < 2; edge++) {
        double up = edge * s->made.job.strings[i].gauge;
        const draw_point string[] = {at(v, -10, high + up), at(v, peak, high + up),
                                     at(v, half + pin, exit + up)};
        assert_true(take_path(list, DRAW_STRING, i + 1, false, 3, string));
    }
    nothing_left(list);
    for (int k = 0; k < list->count; k++) {
        const draw_point *p = points_of(list, k);
        if (list->shapes[k].layer == DRAW_HATCH) {
            draw_point m = {(p[0].x + p[1].x) / 2, (p[0].y + p[1].y) / 2};
            bool filled = fabs(m.x) <= half * 5 && m.y >= sunk * 5 && m.y <= fmax(shim, 0) * 5;
            assert_true(inside(m, bridge, 8) || inside(m, block, 5) || filled);
        }
    }
    assert_int_equal(hold_dimensions(list, 5), 4);
    draw_shapes_free(list);
}

static void the_saddle_is_cut_at_a_string(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 47;
    int looked = 0;
    for (int job = 0; job < 2 * JOBS; job++) {
        int strings = 1 + job % SIL_STRINGS_MAX;
        (job % 5 == 0 ? set_up_low : set_up_random)(&s, &seed, strings);
        for (int i = 0; i < s.b->strings && is_a_piece(&s); i++) {
            const brief_bearing *string = &s.b->saddle.string[i];
            if (brief_known(string->out) && brief_known(string->height)) {
                look_at_saddle_end(&s, i);
                looked++;
            }
        }
        take_down(&s);
    }
    assert_true(looked > 100);
    assert_true(shims > 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_saddle_is_seen_from_the_tail),
        cmocka_unit_test(the_saddle_is_seen_from_above),
        cmocka_unit_test(the_slot_is_shown_with_a_better_one),
        cmocka_unit_test(the_saddle_is_cut_at_a_string),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
