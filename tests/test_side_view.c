/* SPDX-License-Identifier: MIT */
/* The view of a string from the side, read back at the scales that it states: the crowns, the nut,
 * the saddle and the string now and after the work. */
#include "viewed.h"

enum { JOBS = 60, WIDTH = 166 };

/* What the view shows of one string, at the scales that its caption states. */
typedef struct from_the_side {
    const scene *s;
    int string;
    double up, along, depth, low;
} from_the_side;

static const sil_fit *fit_of(const from_the_side *v, sil_stage_name stage)
{
    return &v->s->plan.stages.fit[stage];
}

/* Heights are over the board under the string. */
static double drop_at(const from_the_side *v, double x)
{
    const sil_board *board = &v->s->plan.bench.board;
    return sil_radius_drop(sil_board_radius(board, x), sil_string_z(board, v->string, x));
}

static double crown_of(const from_the_side *v, sil_stage_name stage, int fret)
{
    const sil_board *board = &v->s->plan.bench.board;
    return sil_crown_height(board, fit_of(v, stage), v->string, fret) +
           drop_at(v, board->fret_x[v->string][fret]);
}

static double nut_of(const from_the_side *v, sil_stage_name stage)
{
    return fit_of(v, stage)->nut_height[v->string] + drop_at(v, 0);
}

static double saddle_of(const from_the_side *v, sil_stage_name stage)
{
    const sil_board *board = &v->s->plan.bench.board;
    return fit_of(v, stage)->saddle_height[v->string] +
           sil_radius_drop(board->radius_end, board->saddle_z[v->string]);
}

static draw_point seen_at(const from_the_side *v, double x, double height)
{
    return (draw_point){x / v->along, (height - v->low) * v->up};
}

static void measure_side(from_the_side *v, double *highest)
{
    double crown = v->s->plan.bench.crown;
    v->depth = sil_known(crown) ? crown : 1;
    v->low = 0;
    *highest = -INFINITY;
    for (int k = 0; k < 2; k++) {
        sil_stage_name stage = k == 0 ? SIL_NOW : SIL_SADDLE;
        *highest = fmax(*highest, fmax(nut_of(v, stage), saddle_of(v, stage)));
        for (int fret = 1; fret <= v->s->plan.bench.board.frets; fret++) {
            v->low = fmin(v->low, crown_of(v, stage, fret) - v->depth);
        }
    }
    if (!sil_known(fit_of(v, SIL_NOW)->bend)) {
        *highest = -INFINITY;
    }
}

/* A crown stands on its foot and ends at its top, is full, alike on both sides, and round: half way
 * out from its middle it still has the height of an ellipse. It does not reach the next fret. */
static bool is_crown(const draw_shapes *list, int i, draw_point foot, draw_point top)
{
    const draw_shape *shape = &list->shapes[i];
    const draw_point *p = points_of(list, i);
    if (shape->kind != DRAW_SHAPE_PATH || shape->layer != DRAW_OUTLINE || !shape->filled) {
        return false;
    }
    double wide = fabs(p[0].x - foot.x), tall = top.y - foot.y, highest = foot.y;
    for (int k = 0; k < shape->count; k++) {
        draw_point other = p[shape->count - 1 - k];
        double out = (p[k].x - foot.x) / wide, up = (p[k].y - foot.y) / tall;
        if (fabs(p[k].x + other.x - 2 * foot.x) > 1e-6 || fabs(p[k].y - other.y) > 1e-6 ||
            fabs(out * out + up * up - 1) > 1e-6) {
            return false;
        }
        highest = fmax(highest, p[k].y);
    }
    return fabs(highest - top.y) < 1e-6 && shape->count > 8;
}

static bool take_crown(draw_shapes *list, const from_the_side *v, draw_point foot, draw_point top,
                       double space)
{
    for (int i = 0; i < list->count; i++) {
        if (list->shapes[i].string == v->string + 1 && is_crown(list, i, foot, top)) {
            double wide = draw_box_width(list->shapes[i].box);
            assert_true(wide > 0.1 && wide < 0.7 * space);
            list->shapes[i].string = -1;
            return true;
        }
    }
    return false;
}

static void take_board(draw_shapes *list, const from_the_side *v)
{
    const sil_board *board = &v->s->plan.bench.board;
    draw_point under[SIL_FRETS_MAX + 1], before[SIL_FRETS_MAX];
    for (int fret = 1; fret <= board->frets; fret++) {
        double x = board->fret_x[v->string][fret], high = crown_of(v, SIL_SADDLE, fret);
        under[fret] = seen_at(v, x, high - v->depth);
        before[fret - 1] = seen_at(v, x, crown_of(v, SIL_NOW, fret));
        double before_x = fret > 1 ? board->fret_x[v->string][fret - 1] : 0;
        assert_true(
            take_crown(list, v, under[fret], seen_at(v, x, high), (x - before_x) / v->along));
    }
    under[0] = (draw_point){0, under[1].y};
    assert_true(take_path(list, DRAW_SLOT, v->string + 1, false, board->frets + 1, under));
    const sil_stages *stages = &v->s->plan.stages;
    if (stages->changed[SIL_ROD] || stages->changed[SIL_FRETS] ||
        v->s->b->worst[v->string].fret > 0) {
        assert_true(take_path(list, DRAW_PRESENT, v->string + 1, false, board->frets, before));
    }
}

static void take_strings(draw_shapes *list, const from_the_side *v)
{
    double far = v->s->plan.bench.board.saddle_x[v->string];
    for (int k = 0; k < 2; k++) {
        sil_stage_name stage = k == 0 ? SIL_NOW : SIL_SADDLE;
        draw_point nut = seen_at(v, 0, nut_of(v, stage));
        draw_point saddle = seen_at(v, far, saddle_of(v, stage));
        bool nut_known = sil_known(nut.y), saddle_known = sil_known(saddle.y);
        assert_true(
            !(nut_known && saddle_known) ||
            take_line(list, k == 0 ? DRAW_PRESENT : DRAW_OUTLINE, v->string + 1, nut, saddle));
        if (k == 1) {
            assert_true(!nut_known ||
                        take_line(list, DRAW_OUTLINE, v->string + 1, (draw_point){0, 0}, nut));
            assert_true(!saddle_known || take_line(list, DRAW_OUTLINE, v->string + 1,
                                                   (draw_point){saddle.x, 0}, saddle));
        }
    }
}

/* Fret numbers stand under their frets, from the 1st on, and do not touch. */
static void look_at_fret_numbers(const draw_shapes *list, const from_the_side *v)
{
    const sil_board *board = &v->s->plan.bench.board;
    int last = 0;
    for (int i = 0; i < list->count; i++) {
        const draw_shape *told = &list->shapes[i];
        int fret = atoi(words_of(list, i));
        if (told->size != DRAW_NOTE || told->anchor != DRAW_MIDDLE || told->at.y > -1) {
            continue;
        }
        assert_true(fret > last && fret <= board->frets);
        assert_true(last > 0 || fret == 1);
        near(told->at.x, board->fret_x[v->string][fret] / v->along, 1e-9);
        last = fret;
    }
    assert_true(last >= 12);
}

/* The fret that is farthest off, up or down, of all there are; 0 where none is. */
static int farthest_off(const from_the_side *v)
{
    const double *off = v->s->plan.bench.crowns.off[v->string];
    int worst = 0;
    for (int fret = v->s->plan.bench.board.frets; fret > 0; fret--) {
        double most = worst > 0 ? fabs(off[worst]) : 0.005;
        worst = fabs(off[fret]) > most || (worst > 0 && fabs(off[fret]) == most) ? fret : worst;
    }
    return worst;
}

static void look_at_wedge(const draw_shapes *list, const from_the_side *v)
{
    const brief_fret_off *worst = &v->s->b->worst[v->string];
    int wedges = 0;
    for (int i = 0; i < list->count; i++) {
        const draw_point *p = points_of(list, i);
        if (list->shapes[i].filled && list->shapes[i].layer == DRAW_WARNING) {
            wedges++;
            near(p[0].x, v->s->plan.bench.board.fret_x[v->string][worst->fret] / v->along, 1e-9);
            near((p[1].x + p[2].x) / 2, p[0].x, 1e-9);
            assert_true(p[0].y < 0 && p[1].y < p[0].y && p[2].y < p[0].y);
        }
    }
    assert_int_equal(worst->fret, farthest_off(v));
    assert_int_equal(wedges, worst->fret > 0);
    const char *words = draw_say(v->s->draft, "wedge: fret %d %s by %s", worst->fret,
                                 worst->worn ? "worn" : "proud", worst->off.shown);
    assert_int_equal(count_words(list, words), worst->fret > 0);
    assert_true(worst->fret > 0 || text_with(list, "wedge") == NULL);
}

/* All strings at one scale, the tallest as high as it may be and the longest as long. */
static void look_at_scales(const from_the_side *v)
{
    double most = 1, longest = 0, highest;
    for (int i = 0; i < v->s->b->strings; i++) {
        from_the_side other = *v;
        other.string = i;
        measure_side(&other, &highest);
        most = isfinite(highest) ? fmax(most, highest - other.low) : most;
        longest = fmax(longest, v->s->plan.bench.board.saddle_x[i]);
    }
    assert_true(most * v->up <= 22 || v->up == 1);
    assert_true(v->up == 20 || most * (v->up + 1) > 22);
    assert_true(longest / v->along <= WIDTH && longest / (v->along - 1) > WIDTH);
}

static int
    unseen; /* actions that were read of a string that is not drawn, for its nut is not known */

/* The caption names a line only where there is one. */
static const char *names_line(const from_the_side *v, sil_stage_name stage, const char *word)
{
    bool is_drawn = sil_known(nut_of(v, stage) + saddle_of(v, stage));
    unseen += !is_drawn && brief_known(v->s->b->action[v->string].now);
    return is_drawn ? word : "";
}

static bool has_string(const sil_fit *fit, int string)
{
    return sil_known(fit->nut_height[string]) && sil_known(fit->saddle_height[string]);
}

static bool look_at_side(const scene *s, int string)
{
    from_the_side v = {.s = s, .string = string};
    const brief_reading *action = &s->b->action[string];
    draw_shapes *list = empty_list(s);
    double highest;
    measure_side(&v, &highest);
    view_side(s->draft, list, string, WIDTH);
    const char *told = text_with(list, "heights ");
    assert_true((told != NULL) == isfinite(highest));
    if (told != NULL) {
        assert_int_equal(sscanf(told, "heights %lf:1, lengths 1:%lf", &v.up, &v.along), 2);
        look_at_scales(&v);
        take_board(list, &v);
        take_strings(list, &v);
        look_at_fret_numbers(list, &v);
        look_at_wedge(list, &v);
        bool now = brief_known(action->now), after = brief_known(action->after);
        const char *line[2] = {names_line(&v, SIL_NOW, "dashed "),
                               names_line(&v, SIL_SADDLE, "solid ")};
        const char *dashed = now ? draw_say(s->draft, "%snow %s", line[0], action->now.shown) : "";
        const char *solid = after ? draw_say(s->draft, "%safter%s %s", line[1],
                                             s->b->forecast ? " about" : "", action->after.shown)
                                  : "";
        const char *shows = draw_say(s->draft, "action at the 12th: %s%s%s", dashed,
                                     now && after ? ", " : "", solid);
        assert_true(now || after || count_words(list, "action at the 12th: not read") == 1);
        assert_true((!now && !after) || count_words(list, shows) == 1);
    }
    assert_int_equal(left_over(list, DRAW_OUTLINE) + left_over(list, DRAW_PRESENT) +
                         left_over(list, DRAW_SLOT),
                     0);
    assert_true(told != NULL || list->count == 0);
    bool line =
        has_string(&s->plan.stages.fit[SIL_NOW], string) || has_string(&s->plan.finished, string);
    assert_int_equal(view_side_shows(s->draft, string), line || s->b->worst[string].fret > 0);
    draw_shapes_free(list);
    return told != NULL;
}

static void a_string_is_seen_from_the_side(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 51;
    int drawn_sides = 0, sides = 0;
    for (int job = 0; job < JOBS; job++) {
        set_up_random(&s, &seed, 1 + job % SIL_STRINGS_MAX);
        for (int i = 0; i < s.b->strings; i++, sides++) {
            drawn_sides += look_at_side(&s, i);
        }
        take_down(&s);
    }
    assert_true(drawn_sides > 200 && drawn_sides < sides);
    assert_true(unseen > 0);
}

/* Side by side: the first lines of both captions are level, every line stays in its own column, also
 * in inches with their 64ths, and the scales stand there once. */
static void look_at_both(const scene *s, int last)
{
    const double half = (WIDTH - 8) / 2.0;
    draw_shapes *list = empty_list(s);
    view_sides(s->draft, list, (const int[]){last, 0}, WIDTH);
    double level[2] = {NAN, NAN};
    int scales = 0, seen = 0;
    for (int i = 0; i < list->count; i++) {
        const char *words = words_of(list, i);
        draw_box box = list->shapes[i].box;
        bool left = box.left < half + 4;
        scales += strncmp(words, "heights ", 8) == 0;
        if (strncmp(words, "action at the 12th: ", 20) == 0) {
            level[left ? 0 : 1] = list->shapes[i].at.y;
            seen++;
        }
        if (list->shapes[i].kind == DRAW_SHAPE_TEXT && strlen(words) > 2) {
            assert_true(left ? box.right <= half + 0.01 : box.right <= WIDTH + 0.01);
            assert_true(left || box.left >= half + 8 - 0.01);
        }
    }
    assert_int_equal(scales, seen > 0);
    assert_true(seen < 2 || level[0] == level[1]);
    draw_shapes_free(list);
}

static void two_strings_stand_side_by_side(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 53;
    for (int job = 0; job < 2 * JOBS; job++) {
        set_up_random(&s, &seed, 2 + job % (SIL_STRINGS_MAX - 1));
        if (job % 2 == 1) {
            brief *inches = brief_make(&s.plan, SIL_INCH);
            assert_non_null(inches);
            draw_draft draft = *s.draft;
            draft.brief = inches;
            scene other = s;
            other.draft = &draft;
            other.b = inches;
            look_at_both(&other, s.b->strings - 1);
            brief_free(inches);
        } else {
            look_at_both(&s, s.b->strings - 1);
        }
        take_down(&s);
    }
}

/* Which fret is marked, the last one as well as the first: proud or worn, and by how much. */
static void the_fret_farthest_off_is_marked(void **state)
{
    (void)state;
    static scene s;
    uint64_t seed = 52;
    set_up_random(&s, &seed, 6);
    double *off = s.plan.bench.crowns.off[2];
    int last = s.plan.bench.board.frets;
    memset(off, 0, sizeof *off * (SIL_FRETS_MAX + 1));
    for (int k = 0; k < 2; k++) {
        int fret = k == 0 ? last : 1;
        off[fret] = k == 0 ? 0.3 : -0.4;
        brief *made = brief_make(&s.plan, SIL_MM);
        assert_non_null(made);
        assert_int_equal(made->worst[2].fret, fret);
        assert_int_equal(made->worst[2].worn, k == 1);
        assert_string_equal(made->worst[2].off.shown, k == 0 ? "0.30" : "0.40");
        brief_free(made);
    }
    take_down(&s);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_string_is_seen_from_the_side),
        cmocka_unit_test(two_strings_stand_side_by_side),
        cmocka_unit_test(the_fret_farthest_off_is_marked),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
