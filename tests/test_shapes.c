/* SPDX-License-Identifier: MIT */
/* Letters and shapes, and how they are measured before they are drawn. */
#include <string.h>

#include "../src/drawing/board/shapes.h"
#include "../src/text/text.h"
#include "near.h"

static const double degree = 0.017453292519943295;

static draw_letters *letters;

static int open_letters(void **state)
{
    (void)state;
    letters = draw_letters_open();
    return letters ? 0 : -1;
}

static int close_letters(void **state)
{
    (void)state;
    draw_letters_close(letters);
    return 0;
}

static void utf8_is_read_and_written(void **state)
{
    (void)state;
    static const uint32_t codes[] = {'a', 0x7F, 0x80, 0x7FF, 0x800, 0xFFFD, 0x10000, 0x10FFFF};
    for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
        char letter[8] = {0};
        int length = text_letter(codes[i], letter);
        const char *at = letter;
        assert_int_equal(text_next(&at), codes[i]);
        assert_int_equal(at - letter, length);
        assert_int_equal(text_next(&at), 0);
    }
    /* Cut short, too long a form, a surrogate, past the last plane: each byte is one U+FFFD. */
    static const char *const broken[] = {"\xC3", "\xC0\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80",
                                         "\xFF", "\x80"};
    for (size_t i = 0; i < sizeof broken / sizeof *broken; i++) {
        const char *at = broken[i];
        size_t count = 0;
        for (uint32_t code; (code = text_next(&at)) != 0; count++) {
            assert_int_equal(code, 0xFFFD);
        }
        assert_int_equal(count, strlen(broken[i]));
    }
    const char *at = "\xC3(";
    assert_int_equal(text_next(&at), 0xFFFD);
    assert_int_equal(text_next(&at), '(');
}

static void missing_letters_are_spelled(void **state)
{
    (void)state;
    char out[64];
    draw_letters *own = draw_letters_open();
    assert_int_equal(draw_letters_warnings(own), 0);
    draw_letters_spell(own, "a\tb \xF0\x9F\x8E\xB8", out, sizeof out);
    assert_string_equal(out, "a b U+1F3B8");
    assert_int_equal(draw_letters_spell(own, "abc", out, 3), 3);
    assert_string_equal(out, "ab");
    assert_int_equal(draw_letters_warnings(own), 1);
    draw_letters_warning(own, 0, out, sizeof out);
    assert_non_null(strstr(out, "U+1F3B8"));
    draw_letters_close(own);
}

/* Capitals stand on the base line and are as high as asked; a text is as wide as its letters. */
static void text_is_measured(void **state)
{
    (void)state;
    draw_ink ink = draw_letters_ink(letters, "H", 3.5);
    near(ink.top, 3.5, 1e-9);
    near(ink.bottom, 0.0, 1e-9);
    double sum = draw_letters_advance(letters, 'H', 3.5) + draw_letters_advance(letters, 'g', 3.5);
    near(draw_letters_ink(letters, "Hg", 3.5).advance, sum, 1e-9);
    assert_true(draw_letters_ink(letters, "g", 3.5).bottom < -0.5);
    assert_true(ink.left > 0.0 && ink.right < ink.advance);
}

static void text_boxes_follow_anchor_and_direction(void **state)
{
    (void)state;
    draw_shapes *list = draw_shapes_new(letters);
    for (int anchor = DRAW_LEFT; anchor <= DRAW_RIGHT; anchor++) {
        for (int turn = 0; turn <= 90; turn += 90) {
            draw_text(list, DRAW_TEXT, (draw_point){10, 20}, 2.5, (draw_anchor)anchor, turn, "HAH");
        }
    }
    draw_ink ink = draw_letters_ink(letters, "HAH", 2.5);
    for (int i = 0; i < list->count; i++) {
        const draw_shape *words = &list->shapes[i];
        double start = -ink.advance * words->anchor / 2.0;
        double low = words->from == 0.0 ? words->box.left - 10 : words->box.bottom - 20;
        near(low, start + ink.left, 1e-9);
        double tall = words->from == 0.0 ? draw_box_height(words->box) : draw_box_width(words->box);
        near(tall, ink.top - ink.bottom, 1e-9);
        near(words->from == 0.0 ? words->box.bottom - 20 : 10 - words->box.right, ink.bottom, 1e-9);
    }
    draw_shapes_free(list);
}

static void arcs_know_their_boxes(void **state)
{
    (void)state;
    uint64_t seed = 5;
    for (int k = 0; k < 200; k++) {
        double from = uniform(&seed, -360, 360), to = from + uniform(&seed, 0, 360);
        double radius = uniform(&seed, 0.1, 20);
        draw_shapes *list = draw_shapes_new(letters);
        draw_arc(list, DRAW_OUTLINE, (draw_point){3, 4}, radius, from, to);
        draw_box box = {INFINITY, INFINITY, -INFINITY, -INFINITY};
        for (int i = 0; i <= 20000; i++) {
            double turn = (from + (to - from) * i / 20000.0) * degree;
            double x = 3 + radius * cos(turn), y = 4 + radius * sin(turn);
            box = draw_box_around(box, (draw_box){x, y, x, y});
        }
        near(list->box.left, box.left, 1e-6 * radius);
        near(list->box.right, box.right, 1e-6 * radius);
        near(list->box.bottom, box.bottom, 1e-6 * radius);
        near(list->box.top, box.top, 1e-6 * radius);
        draw_shapes_free(list);
    }
}

/* Lining covers an L-shape evenly and stays inside: length times spacing is the area. */
static void lining_fills_its_outline(void **state)
{
    (void)state;
    static const draw_point ell[] = {{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 12}, {0, 12}};
    for (int way = -1; way <= 1; way += 2) {
        draw_shapes *list = draw_shapes_new(letters);
        draw_hatch(list, ell, 6, 0.05 * way);
        double length = 0.0;
        for (int i = 0; i < list->count; i++) {
            const draw_point *p = &list->points[list->shapes[i].first];
            length += hypot(p[1].x - p[0].x, p[1].y - p[0].y);
            near((p[1].y - p[0].y) - way * (p[1].x - p[0].x), 0.0, 1e-9);
            draw_point middle = {(p[0].x + p[1].x) / 2, (p[0].y + p[1].y) / 2};
            assert_true(middle.x >= 0 && middle.y >= 0 && middle.x <= 10 && middle.y <= 12);
            assert_true(middle.x <= 4 || middle.y <= 4);
        }
        near(length * 0.05, 72.0, 0.5);
        draw_shapes_free(list);
    }
}

static void a_fault_sticks_and_nothing_follows_it(void **state)
{
    (void)state;
    draw_shapes *list = draw_shapes_new(letters), *other = draw_shapes_new(letters);
    draw_line(list, DRAW_OUTLINE, (draw_point){0, 0}, (draw_point){NAN, 1});
    assert_true(list->no_number);
    assert_int_equal(list->count, 0);
    draw_text(list, DRAW_TEXT, (draw_point){0, 0}, 2.5, DRAW_LEFT, 0, "after");
    assert_int_equal(list->count, 0);
    draw_shapes_add(other, list, 0, 0);
    assert_true(other->no_number);
    draw_shapes_free(list);
    draw_shapes_free(other);
}

static void lists_are_copied_moved(void **state)
{
    (void)state;
    draw_shapes *list = draw_shapes_new(letters), *other = draw_shapes_new(letters);
    draw_line(other, DRAW_CUT, (draw_point){0, 0}, (draw_point){1, 2});
    draw_text(other, DRAW_TEXT, (draw_point){5, 5}, 2.5, DRAW_LEFT, 0, "one");
    draw_shapes_add(list, other, 10, 20);
    draw_shapes_add(list, other, 30, 40);
    assert_int_equal(list->count, 4);
    assert_string_equal(list->bytes + list->shapes[3].first, "one");
    near(list->points[list->shapes[2].first + 1].x, 31, 0);
    near(list->shapes[3].at.y, 45, 0);
    near(list->box.left, 10, 0);
    near(list->box.top, other->box.top + 40, 1e-12);
    draw_shapes_free(list);
    draw_shapes_free(other);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(utf8_is_read_and_written),
        cmocka_unit_test(missing_letters_are_spelled),
        cmocka_unit_test(text_is_measured),
        cmocka_unit_test(text_boxes_follow_anchor_and_direction),
        cmocka_unit_test(arcs_know_their_boxes),
        cmocka_unit_test(lining_fills_its_outline),
        cmocka_unit_test(a_fault_sticks_and_nothing_follows_it),
        cmocka_unit_test(lists_are_copied_moved),
    };
    return cmocka_run_group_tests(tests, open_letters, close_letters);
}
