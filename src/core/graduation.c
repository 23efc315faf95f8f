/* SPDX-License-Identifier: MIT */
/* How closely a scale in fractions of an inch can be read. */
#include <sillet/core/units.h>

#include <string.h>

/* The coarsest graduation a bench rule has for such readings, 1/32 in: a reading of 1/8 was taken
 * on the same rule as one of 3/32. Common practice, no source. */
enum { LEAST_DENOMINATOR = 32 };

static bool starts_with(const char *at, const char *end, const char *text)
{
    size_t length = strlen(text);
    return (size_t)(end - at) >= length && memcmp(at, text, length) == 0;
}

/* The whole number at the start of a text; 0 if there is none, or one too large for a scale. */
static int whole_at(const char *at, const char *end)
{
    int number = 0;
    for (; at < end && *at >= '0' && *at <= '9'; at++) {
        if (number > 99999) {
            return 0;
        }
        number = number * 10 + (*at - '0');
    }
    return number;
}

/* A fraction of a thousandth ("2 1/2 thou") is not marked on any scale. Of the units that a
 * fraction may have, only those of a thousandth have an o or an m in their names. */
static bool of_a_thousandth(const char *at, const char *end)
{
    for (; at < end; at++) {
        if (*at == 'o' || *at == 'O' || *at == 'm' || *at == 'M') {
            return true;
        }
    }
    return false;
}

int sil_fraction_of(const char *text, size_t size)
{
    static const struct {
        const char *mark;
        int denominator; /* 0: it follows the mark */
    } marks[] = {{"/", 0},
                 {"\xE2\x81\x84", 0}, /* fraction slash */
                 {"\xC2\xBD", 2},
                 {"\xC2\xBC", 4},
                 {"\xC2\xBE", 4},
                 {"\xE2\x85\x9B", 8},
                 {"\xE2\x85\x9C", 8},
                 {"\xE2\x85\x9D", 8},
                 {"\xE2\x85\x9E", 8}};
    const char *end = text + size;
    if (of_a_thousandth(text, end)) {
        return 0;
    }
    for (const char *at = text; at < end; at++) {
        for (size_t k = 0; k < sizeof marks / sizeof *marks; k++) {
            if (starts_with(at, end, marks[k].mark)) {
                return marks[k].denominator > 0 ? marks[k].denominator
                                                : whole_at(at + strlen(marks[k].mark), end);
            }
        }
    }
    return 0;
}

double sil_graduation(int denominator)
{
    if (denominator <= 0) {
        return 0.0;
    }
    int marks = denominator > LEAST_DENOMINATOR ? denominator : LEAST_DENOMINATOR;
    return 25.4 / (2.0 * marks);
}
