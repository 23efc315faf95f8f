/* SPDX-License-Identifier: MIT */
/* Writes a double in full, so that it reads back as the same double. Results for programs are
 * written this way. */
#include <sillet/core/units.h>

#include <float.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

/* Powers of ten that a long double of 64 bits holds exactly: all up to 1e27, since 5^27 is under
 * 2^63. */
enum { TENS = 26 };
static const long double tens[TENS] = {
    1e0L,  1e1L,  1e2L,  1e3L,  1e4L,  1e5L,  1e6L,  1e7L,  1e8L,  1e9L,  1e10L, 1e11L, 1e12L,
    1e13L, 1e14L, 1e15L, 1e16L, 1e17L, 1e18L, 1e19L, 1e20L, 1e21L, 1e22L, 1e23L, 1e24L, 1e25L};

/* A decimal number: digits / 10^decimals. */
typedef struct decimal {
    uint64_t digits;
    int decimals;
} decimal;

/* Seventeen significant digits of a value from 1e-9 up to 1e15.
 *
 * The product is wrong by at most half a unit of 2^-64 of itself, and the rounding by half a digit:
 * together less than 0.51 of the seventeenth digit. Half the gap between two doubles is at least
 * 0.55 of that digit, so the digits read back as the same double. */
static decimal seventeen_digits(double value)
{
    int decimals = 16;
    double bound = 10.0;
    while (value >= bound) {
        bound *= 10.0;
        decimals--;
    }
    long double scaled = (long double)value * tens[decimals];
    while (scaled < 1e16L) {
        scaled = (long double)value * tens[++decimals];
    }
    return (decimal){(uint64_t)(scaled + 0.5L), decimals};
}

static decimal trimmed(decimal number)
{
    while (number.decimals > 0 && number.digits % 10 == 0) {
        number.digits /= 10;
        number.decimals--;
    }
    return number;
}

/* Fifteen digits, if they are enough. Both numbers are exact doubles, so their quotient is the
 * double that the digits read back as. */
static decimal shorten(double value, decimal full)
{
    decimal shorter = {(full.digits + 50) / 100, full.decimals - 2};
    if (shorter.decimals < 0 || shorter.decimals > 22 ||
        (double)shorter.digits / (double)tens[shorter.decimals] != value) {
        return full;
    }
    return trimmed(shorter);
}

/* Writes so many of the last digits of a number before `end`, two at a time. Returns the digits that
 * are left. */
static uint64_t put_digits(char *end, uint64_t number, int count)
{
    static const char pairs[] = "00010203040506070809101112131415161718192021222324"
                                "25262728293031323334353637383940414243444546474849"
                                "50515253545556575859606162636465666768697071727374"
                                "75767778798081828384858687888990919293949596979899";
    for (; count >= 2; count -= 2) {
        memcpy(end -= 2, pairs + 2 * (number % 100), 2);
        number /= 100;
    }
    if (count > 0) {
        *--end = (char)('0' + number % 10);
        number /= 10;
    }
    return number;
}

/* Writes the digits from the last to the first, with at least one before the point. */
static size_t write_decimal(char *out, bool negative, decimal number)
{
    char text[2 * SIL_NUMBER_FULL_MAX]; /* the number in the first half */
    char *end = text + SIL_NUMBER_FULL_MAX - 1, *at = end - number.decimals;
    uint64_t whole = put_digits(end, number.digits, number.decimals);
    if (number.decimals > 0) {
        *--at = '.';
    }
    do {
        *--at = (char)('0' + whole % 10);
        whole /= 10;
    } while (whole > 0);
    if (negative) {
        *--at = '-';
    }
    *end = '\0';
    memcpy(out, at, SIL_NUMBER_FULL_MAX); /* a size that is known is copied without a loop */
    return (size_t)(end - at);
}

size_t sil_number_write_full(char *out, double value)
{
    double size = fabs(value);
    if (size < 1e15 && size == floor(size)) {
        return write_decimal(out, value < 0.0, (decimal){(uint64_t)size, 0});
    }
    if (LDBL_MANT_DIG >= 64 && size >= 1e-9 && size < 1e15) {
        return write_decimal(out, value < 0.0, shorten(size, seventeen_digits(size)));
    }
    size_t length = (size_t)snprintf(out, SIL_NUMBER_FULL_MAX, "%.17g", value);
    char *comma = strchr(out, ','); /* the decimal mark of some locales */
    if (comma) {
        *comma = '.';
    }
    return length;
}

size_t sil_number_write_measured(char *out, double value)
{
    static const double least = 1e-3, most = 1e5; /* past this ten decimals are not exact */
    double size = fabs(value);
    if (size < least) {
        return sil_number_write_full(out, round(value * 1e12) / 1e12);
    }
    if (size >= most || size == (double)(int)size) {
        return sil_number_write_full(out, value);
    }
    /* Fifteen digits at most, which read back as themselves: the rounded double need not be made. */
    return write_decimal(out, value < 0.0, trimmed((decimal){(uint64_t)(size * 1e10 + 0.5), 10}));
}
