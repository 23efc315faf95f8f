/* SPDX-License-Identifier: MIT */
/* What the papers' tables and texts are made with: every cell in its column and row, tolerances,
 * lines broken where they fit, words put together. */
#include "viewed.h"

/* The first text of a list that is just these words. */
static const draw_shape *text_at(const draw_shapes *list, const char *words)
{
    for (int i = 0; i < list->count; i++) {
        if (strcmp(words_of(list, i), words) == 0) {
            return &list->shapes[i];
        }
    }
    return NULL;
}

/* Every head, tolerance and cell under each other, rows apart, figures level at their right end,
 * words at their left; a span over its own columns only; a rule between rows. */
static void a_table_shows_every_cell(void **state)
{
    (void)state;
    enum { COLUMNS = 4, ROWS = 3 };
    static const char *const cell[ROWS][COLUMNS] = {
        {"a1", "b1", "1.11", "d1"}, {"a22", "b2", "22.22", NULL}, {"a3", "b3", "3.3", "d3"}};
    draw_table t = {.columns = COLUMNS,
                    .rows = ROWS,
                    .row_height = 5,
                    .large = 3,
                    .span = {{1, 2, "span"}},
                    .head = {{"up0", "low0"}, {NULL, "low1"}, {"up2", NULL}, {NULL, "low3"}},
                    .anchor = {DRAW_LEFT, DRAW_MIDDLE, DRAW_RIGHT, DRAW_LEFT},
                    .within = {NULL, NULL, "within", NULL}};
    for (int r = 0; r < ROWS; r++) {
        for (int c = 0; c < COLUMNS; c++) {
            t.cell[r][c] = cell[r][c];
        }
    }
    draw_shapes *list = empty_list(&drawn);
    double bottom = draw_add_table(list, 10, -3, 120, &t), middle[COLUMNS];
    near(bottom, -3 - 11.5 - 4.2 - ROWS * 5, 1e-9);
    const draw_shape *heads[] = {text_at(list, "low0"), text_at(list, "low1"), text_at(list, "up2"),
                                 text_at(list, "low3")};
    for (int c = 0; c < COLUMNS; c++) {
        middle[c] = heads[c]->at.x;
        assert_true(c == 0 || middle[c] > middle[c - 1] + 5);
        for (int r = 0; r < ROWS; r++) {
            const draw_shape *told = cell[r][c] ? text_at(list, cell[r][c]) : NULL;
            double top = bottom + (ROWS - r) * 5.0;
            assert_true(cell[r][c] == NULL || told != NULL);
            if (told != NULL) {
                assert_true(told->box.top < top && told->box.bottom > top - 5);
                assert_int_equal(told->anchor, t.anchor[c]);
                assert_true(told->box.left < middle[c] + 0.5 && told->box.right > middle[c] - 0.5);
                assert_true(fabs(told->at.x - text_at(list, cell[0][c])->at.x) < 1e-9);
                near(told->size, c == 3 ? DRAW_HEAD : DRAW_NOTE, 1e-9);
            }
        }
    }
    double widest = text_at(list, "22.22")->box.right - text_at(list, "22.22")->box.left;
    near(text_at(list, "1.11")->at.x, middle[2] + widest / 2, 0.5);
    near(text_at(list, "up0")->at.x, middle[0], 1e-9);
    near(text_at(list, "within")->at.x, middle[2], 1e-9);
    near(text_at(list, "up0")->at.y - text_at(list, "low0")->at.y, 5, 1e-9);
    assert_true(text_at(list, "within")->box.bottom > bottom + ROWS * 5.0);
    assert_true(text_at(list, "within")->box.top < text_at(list, "low0")->box.bottom);
    near(text_at(list, "span")->at.x, (middle[1] + middle[2]) / 2, 10);
    assert_true(text_at(list, "span")->at.x > middle[1] && text_at(list, "span")->at.x < middle[2]);
    int rules = 0;
    for (int r = 1; r < ROWS; r++) {
        rules += take_line(list, DRAW_RULE, 0, (draw_point){10, bottom + r * 5.0},
                           (draw_point){130, bottom + r * 5.0});
    }
    assert_int_equal(rules, ROWS - 1);
    assert_int_equal(left_over(list, DRAW_RULE), 1); /* the span's */
    draw_box spanned = {0};
    for (int i = 0; i < list->count; i++) {
        if (list->shapes[i].layer == DRAW_RULE && list->shapes[i].string != -1) {
            spanned = list->shapes[i].box;
        }
    }
    assert_true(spanned.left > middle[0] && spanned.left < middle[1]);
    assert_true(spanned.right > middle[2] && spanned.right < middle[3]);
    const double levels[] = {-3, bottom};
    for (int k = 0; k < 2; k++) {
        assert_true(take_line(list, DRAW_OUTLINE, 0, (draw_point){10, levels[k]},
                              (draw_point){130, levels[k]}));
    }
    assert_true(take_line(list, DRAW_DIMENSION, 0, (draw_point){10, bottom + ROWS * 5.0},
                          (draw_point){130, bottom + ROWS * 5.0}));
    draw_shapes_free(list);
}

/* Words over narrow columns stay over these: those beside them make room. And a dash is not large. */
static void words_over_columns_have_room(void **state)
{
    (void)state;
    enum { COLUMNS = 7 };
    draw_table t = {.columns = COLUMNS,
                    .rows = 2,
                    .row_height = 5,
                    .large = 5,
                    .span = {{5, 6, "words wider than both"}}};
    for (int c = 0; c < COLUMNS; c++) {
        t.head[c][0] = c < 5 ? "first pass" : NULL;
        t.head[c][1] = "now";
        t.cell[0][c] = "-";
        t.cell[1][c] = "7";
        t.anchor[c] = DRAW_RIGHT;
    }
    draw_shapes *list = empty_list(&drawn);
    draw_add_table(list, 0, 0, 170, &t);
    double right = 0;
    for (int i = 0; i < list->count; i++) {
        const char *words = words_of(list, i);
        right = strcmp(words, "first pass") == 0 ? fmax(right, list->shapes[i].box.right) : right;
        assert_true(strcmp(words, "-") != 0 || list->shapes[i].size == DRAW_NOTE);
    }
    const draw_shape *over = text_at(list, "words wider than both");
    assert_true(right > 50 && over->box.left > right + 1);
    assert_true(over->box.right < 170 + 1e-9);
    draw_shapes_free(list);
}

/* A column of dashes, or of dashes and nothing, is left out with its head and tolerance: the others are
 * as they are in a table that never had it. */
static void a_column_of_dashes_is_left_out(void **state)
{
    (void)state;
    enum { COLUMNS = 7, ROWS = 3, LEFT = 4 };
    static const char *const cell[ROWS][COLUMNS] = {{"-", "a", "-", "1", "-", "-", "4"},
                                                    {"-", "-", NULL, "2", "-", "3", "-"},
                                                    {"-", "c", "-", "-", "-", "-", "5"}};
    static const int kept[LEFT] = {1, 3, 5, 6};
    draw_table all = {.columns = COLUMNS,
                      .rows = ROWS,
                      .row_height = 5,
                      .large = 5,
                      .span = {{1, 2, "over one"}, {3, 5, "over two"}, {4, 4, "over none"}}};
    draw_table few = {.columns = LEFT,
                      .rows = ROWS,
                      .row_height = 5,
                      .large = 2,
                      .span = {{0, 0, "over one"}, {1, 2, "over two"}}};
    static const char *const heads[] = {"h0", "h1", "h2", "h3", "h4", "h5", "h6"};
    for (int c = 0, k = 0; c < COLUMNS; c++) {
        draw_table *in[] = {&all, &few};
        bool stays = k < LEFT && kept[k] == c;
        for (int n = 0; n < (stays ? 2 : 1); n++) {
            int at = n == 0 ? c : k;
            in[n]->head[at][1] = heads[c];
            in[n]->within[at] = heads[c];
            in[n]->anchor[at] = c == 1 ? DRAW_LEFT : DRAW_RIGHT;
            for (int r = 0; r < ROWS; r++) {
                in[n]->cell[r][at] = cell[r][c];
            }
        }
        k += stays;
    }
    draw_shapes *got = empty_list(&drawn), *wanted = empty_list(&drawn);
    near(draw_add_table(got, 2, 1, 90, &all), draw_add_table(wanted, 2, 1, 90, &few), 1e-9);
    assert_int_equal(got->count, wanted->count);
    for (int i = 0; i < got->count; i++) {
        const draw_shape *one = &got->shapes[i], *other = &wanted->shapes[i];
        assert_string_equal(words_of(got, i), words_of(wanted, i));
        assert_true(alike(one->at, other->at) && fabs(one->size - other->size) < 1e-9);
        assert_true(fabs(one->box.left - other->box.left) < 1e-7 &&
                    fabs(one->box.right - other->box.right) < 1e-7);
    }
    draw_shapes_free(got);
    draw_shapes_free(wanted);
}

/* Any column that states a tolerance makes room for it. */
static void one_tolerance_makes_room(void **state)
{
    (void)state;
    for (int within = -1; within < 3; within++) {
        draw_table t = {.columns = 3, .rows = 2, .row_height = 5};
        draw_shapes *list = empty_list(&drawn);
        if (within >= 0) {
            t.within[within] = "within";
        }
        near(draw_add_table(list, 0, 0, 90, &t), -11.5 - (within >= 0 ? 4.2 : 0) - 10, 1e-9);
        assert_int_equal(count_words(list, "within"), within >= 0);
        draw_shapes_free(list);
    }
}

/* Where a table would be wider than its room, each tolerance is parted at its stroke: upper over lower. */
static void a_tolerance_too_wide_takes_two_lines(void **state)
{
    (void)state;
    for (int wide = 0; wide < 2; wide++) {
        draw_table t = {.columns = 3, .rows = 1, .row_height = 5, .within = {NULL, "+0.002/0"}};
        draw_shapes *list = empty_list(&drawn);
        double least = draw_text_width(list, "+0.002/0", DRAW_NOTE) + 3 * 2.5;
        double bottom = draw_add_table(list, 0, 0, wide ? least + 0.01 : least - 0.01, &t);
        near(bottom, -11.5 - (wide ? 1 : 2) * 4.2 - 5, 1e-9);
        assert_int_equal(count_words(list, "+0.002/0"), wide);
        assert_int_equal(count_words(list, "+0.002"), !wide);
        if (!wide) {
            const draw_shape *upper = text_at(list, "+0.002"), *lower = text_at(list, "0");
            near(lower->at.x, upper->at.x, 1e-9);
            near(upper->at.y - lower->at.y, 4.2, 1e-9);
            assert_true(lower->box.bottom > bottom + 5);
        }
        draw_shapes_free(list);
    }
}

/* The limits of a figure are under its column's head; a figure for reference is in brackets. */
static void figures_state_their_limits(void **state)
{
    (void)state;
    draw_table t = {.columns = 4, .rows = 1};
    brief_figure limited = figure_of(0.2), reference = figure_of(3), unknown = figure_of(NAN);
    strcpy(limited.limits, "+0.02/0");
    reference.reference = unknown.reference = true;
    draw_table_figure(drawn.draft, &t, 0, 0, figure_of(7));
    draw_table_figure(drawn.draft, &t, 0, 1, limited);
    draw_table_figure(drawn.draft, &t, 0, 2, reference);
    draw_table_figure(drawn.draft, &t, 0, 3, unknown);
    assert_string_equal(t.cell[0][0], figure_of(7).shown);
    assert_string_equal(t.cell[0][1], figure_of(0.2).shown);
    assert_string_equal(t.within[1], "+0.02/0");
    char brackets[32];
    snprintf(brackets, sizeof brackets, "(%s)", figure_of(3).shown);
    assert_string_equal(t.cell[0][2], brackets);
    assert_string_equal(t.cell[0][3], unknown.shown);
    assert_true(t.within[0] == NULL && t.within[2] == NULL && t.within[3] == NULL);
}

static void texts_are_broken_and_cut_where_they_fit(void **state)
{
    (void)state;
    draw_shapes *list = empty_list(&drawn);
    const char *words = "one two three four five";
    double wide = draw_text_width(list, "one two three", DRAW_NOTE) + 0.1;
    assert_string_equal(draw_line_of(list, 0, 0, wide, DRAW_NOTE, words), "four five");
    assert_string_equal(words_of(list, 0), "one two three");
    assert_string_equal(draw_line_of(list, 0, 0, 1e3, DRAW_NOTE, "one\n two"), "two");
    assert_string_equal(words_of(list, 1), "one");
    const char *rest =
        draw_line_of(list, 0, 0, draw_text_width(list, "mmm", DRAW_NOTE) + 0.1, DRAW_NOTE, "mmmmm");
    assert_string_equal(words_of(list, 2), "mmm");
    assert_string_equal(rest, "mm");
    assert_string_equal(draw_line_of(list, 0, 0, 0.1, DRAW_NOTE, "mm"), "m");
    double low = draw_paragraph(list, 0, 0, wide, DRAW_NOTE, words);
    near(low, -DRAW_NOTE - 1.8 * DRAW_NOTE, 1e-9);
    near(list->shapes[4].at.y, -DRAW_NOTE, 1e-9);
    near(list->shapes[5].at.y, low, 1e-9);
    assert_string_equal(words_of(list, 5), "four five");
    assert_string_equal(draw_text_fit(drawn.draft, list, words, DRAW_NOTE, 1e3), words);
    double room = draw_text_width(list, "one...", DRAW_NOTE);
    assert_string_equal(draw_text_fit(drawn.draft, list, words, DRAW_NOTE, room + 1e-6), "one...");
    assert_string_equal(
        draw_text_fit(drawn.draft, list, words, DRAW_NOTE, draw_text_width(list, words, DRAW_NOTE)),
        words);
    draw_shapes_free(list);
}

/* "slots 1, 3" and no "slots 3"; a decimal comma between digits only; scales as ISO 5455 has them. */
static void words_are_put_together(void **state)
{
    (void)state;
    bool none[SIL_STRINGS_MAX] = {false}, one[SIL_STRINGS_MAX] = {false, true};
    bool three[SIL_STRINGS_MAX] = {true, false, true, false, false, true};
    const draw_draft *draft = drawn.draft;
    assert_string_equal(draw_say_which(draft, "slot", none), "");
    assert_string_equal(draw_say_which(draft, "slot", one), "slot 2");
    assert_string_equal(draw_say_which(draft, "slot", three), "slots 1, 3, 6");
    assert_string_equal(draw_say_scale(draft, 10), "10:1");
    assert_string_equal(draw_say_scale(draft, 1), "1:1");
    assert_string_equal(draw_say_scale(draft, 0.2), "1:5");
    draw_draft comma = *draft;
    comma.decimal_comma = true;
    assert_string_equal(draw_set_decimals(&comma, "0.5 of 1.25. Or .5, 6."),
                        "0,5 of 1,25. Or .5, 6.");
    assert_string_equal(draw_set_decimals(draft, "0.5"), "0.5");
    assert_string_equal(draw_known_figure(draft, figure_of(NAN)), "");
    assert_string_equal(draw_known_figure(draft, figure_of(2)), "2.00");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_table_shows_every_cell),
        cmocka_unit_test(words_over_columns_have_room),
        cmocka_unit_test(a_column_of_dashes_is_left_out),
        cmocka_unit_test(one_tolerance_makes_room),
        cmocka_unit_test(a_tolerance_too_wide_takes_two_lines),
        cmocka_unit_test(figures_state_their_limits),
        cmocka_unit_test(texts_are_broken_and_cut_where_they_fit),
        cmocka_unit_test(words_are_put_together),
    };
    return cmocka_run_group_tests(tests, set_up_letters, take_down_letters);
}
