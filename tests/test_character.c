/* SPDX-License-Identifier: MIT */
/* Well-formed UTF-8, after table 3-7 of the Unicode Standard (from memory): the second bytes that
 * may follow each first byte. All later bytes are 80..BF. */
#include <sillet/core/units.h>
#include <string.h>

#include "near.h"

static const struct {
    int from, to, low, high;
    size_t length;
} table[] = {{0x00, 0x7F, 0, 0, 1},       {0xC2, 0xDF, 0x80, 0xBF, 2}, {0xE0, 0xE0, 0xA0, 0xBF, 3},
             {0xE1, 0xEC, 0x80, 0xBF, 3}, {0xED, 0xED, 0x80, 0x9F, 3}, {0xEE, 0xEF, 0x80, 0xBF, 3},
             {0xF0, 0xF0, 0x90, 0xBF, 4}, {0xF1, 0xF3, 0x80, 0xBF, 4}, {0xF4, 0xF4, 0x80, 0x8F, 4}};

static bool goes_on(int byte)
{
    return byte >= 0x80 && byte <= 0xBF;
}

/* How long the character at the front is, by the table; 0: none. */
static size_t by_table(const unsigned char *bytes, size_t size)
{
    for (size_t k = 0; k < sizeof table / sizeof *table; k++) {
        size_t length = table[k].length;
        if (bytes[0] < table[k].from || bytes[0] > table[k].to) {
            continue;
        }
        bool whole = length <= size &&
                     (length < 2 || (bytes[1] >= table[k].low && bytes[1] <= table[k].high)) &&
                     (length < 3 || goes_on(bytes[2])) && (length < 4 || goes_on(bytes[3]));
        return whole ? length : 0;
    }
    return 0;
}

static void characters_are_those_of_the_table(void **state)
{
    (void)state;
    static const unsigned char others[] = {0x00, 0x41, 0x7F, 0x80, 0xBF, 0xC0, 0xFF};
    enum { OTHERS = sizeof others };
    for (int first = 0; first < 256; first++) {
        for (int second = 0; second < 256; second++) {
            for (int k = 0; k < OTHERS * OTHERS; k++) {
                unsigned char bytes[] = {(unsigned char)first, (unsigned char)second,
                                         others[k / OTHERS], others[k % OTHERS]};
                for (size_t size = 1; size <= sizeof bytes; size++) {
                    unsigned long code = 0;
                    size_t length = sil_character((const char *)bytes, size, &code);
                    assert_int_equal(length, by_table(bytes, size));
                }
            }
        }
    }
}

/* The least and the last of each length. */
static void each_has_its_number(void **state)
{
    (void)state;
    static const struct {
        const char *bytes;
        unsigned long code;
    } rows[] = {{"A", 0x41},
                {"\x7F", 0x7F},
                {"\xC2\x80", 0x80},
                {"\xDF\xBF", 0x7FF},
                {"\xE0\xA0\x80", 0x800},
                {"\xEF\xBF\xBF", 0xFFFF},
                {"\xF0\x90\x80\x80", 0x10000},
                {"\xF4\x8F\xBF\xBF", 0x10FFFF}};
    for (size_t k = 0; k < sizeof rows / sizeof *rows; k++) {
        unsigned long code = 0;
        assert_int_equal(sil_character(rows[k].bytes, 4, &code), strlen(rows[k].bytes));
        assert_int_equal(code, rows[k].code);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(characters_are_those_of_the_table),
        cmocka_unit_test(each_has_its_number),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
