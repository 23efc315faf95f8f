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

/* Ten decimals, if they are enough and fifteen digits hold them, as is so for most figures. No other
 * fifteen digits read back as the same double. */
static bool has_ten(double value, decimal *ten)
{
    const double places = 1e10;
    if (value < 1e-3 || value >= 1e5) {
        return false;
    }
    *ten = (decimal){(uint64_t)(value * places + 0.5), 10};
    return (double)ten->digits / places == value;
}

/* The digits of a value from 1e-9 up to 1e15. */
static decimal digits_of(double value)
{
    decimal ten;
    return has_ten(value, &ten) ? trimmed(ten) : shorten(value, seventeen_digits(value));
}

/* Writes backward from the end of a buffer: fraction, point, whole part. */
static size_t write_decimal(char *out, bool negative, decimal number)
{
    char field[48];
    char *at = field + sizeof field;
    *--at = '\0';
    for (int place = 0; place < number.decimals; place++) {
        *--at = (char)('0' + number.digits % 10);
        number.digits /= 10;
    }
    if (number.decimals > 0) {
        *--at = '.';
    }
    do {
        *--at = (char)('0' + number.digits % 10);
        number.digits /= 10;
    } while (number.digits > 0);
    if (negative) {
        *--at = '-';
    }
    size_t length = (size_t)(field + sizeof field - 1 - at);
    memcpy(out, at, length + 1);
    return length;
}

size_t sil_number_write_full(char *out, double value)
{
    double size = fabs(value);
    if (size < 1e15 && size == floor(size)) {
        return write_decimal(out, value < 0.0, (decimal){(uint64_t)size, 0});
    }
    if (LDBL_MANT_DIG >= 64 && size >= 1e-9 && size < 1e15) {
        return write_decimal(out, value < 0.0, digits_of(size));
    }
    size_t length = (size_t)snprintf(out, SIL_NUMBER_FULL_MAX, "%.17g", value);
    char *comma = strchr(out, ','); /* the decimal mark of some locales */
    if (comma) {
        *comma = '.';
    }
    return length;
}
