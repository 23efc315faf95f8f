/* SPDX-License-Identifier: MIT */
/* Texts that grow: nothing is lost, and no letter is cut in two. */
#include "near.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../src/text/text.h"

static void a_text_grows(void **state)
{
    (void)state;
    text t = {0};
    assert_string_equal(text_read(&t), "");
    for (int i = 0; i < 1000; i++) {
        text_add(&t, "%d,", i);
    }
    assert_int_equal(t.length, 10 * 2 + 90 * 3 + 900 * 4);
    assert_int_equal(strlen(t.bytes), t.length);
    assert_string_equal(t.bytes + t.length - 8, "998,999,");
    size_t size = 0;
    char *taken = text_take(&t, &size);
    assert_int_equal(size, 3890);
    assert_int_equal(t.length, 0);
    free(taken);
    text_put(&t, "a");
    text_space(&t, 3);
    text_put_bytes(&t, "bcd", 1);
    assert_string_equal(text_read(&t), "a   b");
    text_free(&t);
    taken = text_take(&t, NULL);
    assert_string_equal(taken, "");
    free(taken);
}

/* Columns are counted in letters, not in bytes. */
static void columns_hold_letters(void **state)
{
    (void)state;
    text t = {0};
    text_left(&t, 6, "août 2026"); /* cut behind a whole letter */
    text_put(&t, "|");
    text_left(&t, 4, "三月五日と"); /* three bytes each */
    text_put(&t, "|");
    text_right(&t, 6, "±0.24");
    text_put(&t, "|");
    text_left(&t, 5, "ab");
    text_put(&t, "|");
    text_right(&t, 2, "longer");
    assert_string_equal(text_read(&t), "août 2|三月五日| ±0.24|ab   |longer");
    text_free(&t);
    for (size_t limit = 0; limit < 16; limit++) {
        size_t size = text_prefix("三月é5", limit);
        const size_t whole[] = {0, 3, 6, 8, 9};
        bool found = false;
        for (size_t k = 0; k < sizeof whole / sizeof *whole; k++) {
            found = found || (size == whole[k] && size <= limit);
        }
        assert_true(found);
        assert_true(limit < 9 || size == 9);
    }
    assert_int_equal(text_letters("三月é5", 9), 4);
}

static void lines_are_wrapped(void **state)
{
    (void)state;
    text t = {0};
    text_put(&t, "> ");
    text_wrap(&t, "one two  three é四 five", 2, 11);
    assert_string_equal(text_read(&t), "> one two\n  three é四\n  five\n");
    text_free(&t);
}

/* A string's number stays with its figure, and that with its unit. */
static void figures_stay_together(void **state)
{
    (void)state;
    text t = {0};
    text_wrap(&t, "of 1: 0.12, 12: 0.15 mm. At 9 a: 5", 0, 11);
    assert_string_equal(text_read(&t), "of 1: 0.12,\n12: 0.15 mm.\nAt 9 a: 5\n");
    text_free(&t);
    const char *end = "6: ";
    assert_false(text_may_break(end, end + 2));
    text_wrap(&t, end, 0, 9);
    assert_string_equal(text_read(&t), "6:\n");
    text_free(&t);
}

static void letters_come_and_go(void **state)
{
    (void)state;
    const char *from = "a\u00b5\u20ac\U0001F3B8\xff";
    const uint32_t wanted[] = {'a', 0xB5, 0x20AC, 0x1F3B8, 0xFFFD, 0, 0};
    char out[5] = "";
    for (int k = 0; k < 7; k++) {
        const char *at = from;
        uint32_t code = text_next(&from);
        assert_int_equal(code, wanted[k]);
        if (code != 0 && code != 0xFFFD) {
            int size = text_letter(code, out);
            assert_int_equal(size, from - at);
            assert_memory_equal(out, at, (size_t)size);
        }
    }
}

static void a_store_keeps_all(void **state)
{
    (void)state;
    text_store store = {0};
    const char *kept[3000];
    for (int i = 0; i < 3000; i++) {
        kept[i] = text_keep(&store, "text %d of many, long enough to fill a block or two", i);
    }
    char *large = text_store_room(&store, 100000);
    assert_non_null(large);
    memset(large, 'x', 100000);
    assert_string_equal(text_keep_bytes(&store, "abcdef", 3), "abc");
    for (int i = 0; i < 3000; i++) {
        int number = -1;
        assert_int_equal(sscanf(kept[i], "text %d of many", &number), 1);
        assert_int_equal(number, i);
        assert_int_equal((uintptr_t)kept[i] % sizeof(double), 0);
    }
    assert_false(store.failed);
    text_store_free(&store);
    text_store_free(&store);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_text_grows),        cmocka_unit_test(columns_hold_letters),
        cmocka_unit_test(lines_are_wrapped),   cmocka_unit_test(figures_stay_together),
        cmocka_unit_test(letters_come_and_go), cmocka_unit_test(a_store_keeps_all)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
