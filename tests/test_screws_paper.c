/* SPDX-License-Identifier: MIT */
/* The paper of saddles on screws, read back: how far each string is turned, at the scale that is told. */
#include "viewed.h"

enum { JOBS = 270 };

/* Where the ring of a string is. */
static draw_point ring_of(const draw_shapes *list, int number)
{
    for (int i = 1; i < list->count; i++) {
        if (list->shapes[i - 1].kind == DRAW_SHAPE_ARC && atoi(words_of(list, i)) == number) {
            return list->shapes[i - 1].at;
        }
    }
    return (draw_point){NAN, NAN};
}

static double moves_of(const scene *s, int i)
{
    const brief_bearing *string = &s->b->saddle.string[i];
    return !brief_known(string->moves) ? 0
           : string->way == BRIEF_DOWN ? -string->moves.exact
                                       : string->moves.exact;
}

/* An arrow's shaft from where a string is to where it goes, and a head where that is far enough. */
static void look_at_move(const draw_shapes *list, double x, double move, double *level)
{
    int from = 0, to = 0, shafts = 0, heads = 0;
    double now = NAN, then = NAN;
    for (int i = 0; i < list->count; i++) {
        const draw_point *p = points_of(list, i);
        bool line = list->shapes[i].kind == DRAW_SHAPE_PATH && list->shapes[i].count == 2;
        bool here = line && fabs((p[0].x + p[1].x) / 2 - x) < 1e-6;
        if (here && list->shapes[i].layer == DRAW_PRESENT) {
            from++;
            now = p[0].y;
        } else if (here && list->shapes[i].layer == DRAW_CUT_FIRST) {
            to++;
            then = p[0].y;
        } else if (here && list->shapes[i].layer == DRAW_SLOT && fabs(p[0].y - now) < 1e-6) {
            shafts++;
            near(fabs(p[1].y - p[0].y), fabs(move), 1e-6);
        } else if (list->shapes[i].filled && fabs(p[0].x - x) < 1e-6) {
            heads++;
            assert_true(((p[1].y + p[2].y) / 2 < p[0].y) == (move > 0));
        }
    }
    assert_int_equal(from, 1);
    assert_int_equal(to, move != 0);
    assert_int_equal(shafts, move != 0);
    assert_int_equal(heads, fabs(move) > 2.5);
    assert_true(move == 0 || fabs(then - now - move) < 1e-6);
    assert_true(!sil_known(*level) || fabs(now - *level) < 1e-6);
    *level = now;
}

static void fill_screws(const scene *s, int i, const char **cell)
{
    const brief_bearing *string = &s->b->saddle.string[i];
    const char *way = string->way == BRIEF_DOWN     ? "down"
                      : string->way == BRIEF_UP     ? "up"
                      : string->verdict == SIL_WAIT ? "wait"
                                                    : "stays";
    cell[0] = draw_say(s->draft, "%d", i + 1);
    cell[1] = draw_say_note(s->draft, i);
    cell[2] = string->action_before.shown;
    cell[3] = way;
    cell[4] = string->moves.shown;
    cell[5] = string->turns.shown;
    cell[6] = string->action_done.shown;
    cell[7] = string->curve == SIL_RAISE ? draw_say(s->draft, "fill %s", string->curve_off.shown)
                                         : string->curve_off.shown;
    cell[8] = string->action_curved.shown;
}

/* A floating bridge whose curve does not follow the board's: all is at its target but the strings
 * between the outer ones, which lie too low or too high. */
static void set_up_curved(scene *s, uint64_t *seed, int strings)
{
    make_random_job(&s->made, seed, strings);
    sil_reading *reading = &s->made.reading;
    double off = one_in(seed, 2) ? -0.5 : 0.5;
    s->made.job.saddle.kind = SIL_SADDLE_FLOATING;
    s->made.job.saddle.pitch = 0.7;
    reading->relief.gap = s->made.job.targets.relief.aim;
    reading->crowns_read = SIL_CROWNS_SOUND;
    for (int i = 0; i < strings; i++) {
        bool inner = i > 0 && i < strings - 1;
        reading->gaps.first[i] = s->made.job.targets.first[i].aim;
        reading->gaps.action[i] = s->made.job.targets.action[i].aim + (inner ? off : 0.0);
        reading->confirmed[i] = true;
    }
    set_up(s);
}

/* The bridge's curve has columns of its own only where it is a step. Returned: whether it has them. */
static bool leave_curve_out(const scene *s, table_cells cell)
{
    bool fitted = false;
    for (int i = 0; i < s->b->strings; i++) {
        fitted = fitted || s->b->saddle.string[i].curve != SIL_LEAVE;
    }
    for (int i = 0; i < s->b->strings && !fitted; i++) {
        cell[i][8] = "-";
    }
    return fitted;
}

static void screws_are_turned_as_far_as_drawn(void **state)
{
    (void)state;
    static scene s = {.pack = true};
    uint64_t seed = 63;
    int moved = 0, pages = 0, curves = 0;
    for (int job = 0; job < JOBS; job++) {
        (job % 5 ? set_up_random : set_up_curved)(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        int page = sil_drawing_find(s.drawing, "saddle");
        const draw_shapes *list = s.drawing->papers[page].shapes;
        const char *told = text_with(list, "Dashed: now. Solid: when turned. Heights ");
        double scale = told != NULL ? atof(strstr(told, "Heights") + 8) : 0, most = 0;
        double level = SIL_UNKNOWN, before = -INFINITY, ring = SIL_UNKNOWN;
        bool turned =
            sil_working_turns(s.b->saddle.working) && s.b->saddle.remedy != SIL_SADDLE_WAIT;
        assert_true((told != NULL) == turned);
        table_cells cell = {{NULL}};
        for (int i = 0; i < s.b->strings; i++) {
            fill_screws(&s, i, cell[i]);
        }
        bool fitted = leave_curve_out(&s, cell);
        assert_true((text_with(list, "deeper by") != NULL) == (turned && fitted));
        curves += turned && fitted;
        for (int place = 0; place < s.b->strings && turned; place++) {
            int i = s.left ? place : s.b->strings - 1 - place;
            draw_point at = ring_of(list, i + 1);
            assert_true(at.x > before);
            before = at.x;
            assert_true(place == 0 || fabs(at.y - ring) < 1e-6);
            ring = at.y;
            look_at_move(list, at.x, moves_of(&s, i) * scale, &level);
            assert_true(at.y > level + fmax(moves_of(&s, i), 0) * scale + 5);
            assert_int_equal(count_rows(list, row_told(&s, cell, s.b->strings, i)), 1);
            most = fmax(most, fabs(moves_of(&s, i)));
            moved += moves_of(&s, i) != 0;
        }
        if (turned) {
            bool fits = most * scale <= 25, larger = scale < 20 && most * scale * 2 <= 25;
            assert_true(scale == 20 || scale == 10 || scale == 5);
            assert_true((fits || scale == 5) && !larger);
            assert_true((text_with(list, "12th, nut done") != NULL) ==
                        s.plan.stages.changed[SIL_NUT]);
            assert_true((text_with(list, "12th now") != NULL) != s.plan.stages.changed[SIL_NUT]);
            pages++;
        }
        take_down(&s);
    }
    assert_true(pages > 20 && moved > 100 && curves > 3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(screws_are_turned_as_far_as_drawn),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
