/* SPDX-License-Identifier: MIT */
/* Lengths and other quantities as a workshop writes them. */
#include "unit_names.h"

#include <stdint.h>
#include <string.h>

/* The text that is still to be read. */
typedef struct reader {
    const char *at, *end;
    char mark; /* the decimal mark of this text: a point, or a comma where there is no point */
} reader;

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool take_text(reader *in, const char *text)
{
    const char *at = in->at;
    while (*text && at < in->end && *at == *text) {
        at++;
        text++;
    }
    if (*text) {
        return false;
    }
    in->at = at;
    return true;
}

static bool take_any(reader *in, const char *const texts[])
{
    for (; *texts; texts++) {
        if (take_text(in, *texts)) {
            return true;
        }
    }
    return false;
}

/* The last two are spaces that a word processor puts between a figure and its unit to keep them
 * together. */
static const char *const spaces[] = {" ", "\t", "\xC2\xA0", "\xE2\x80\xAF", NULL};

/* Whether a byte may be of a space: most are not, and are told at once. */
static bool may_be_space(char c)
{
    return c == ' ' || c == '\t' || (unsigned char)c >= 0x80;
}

static void skip_spaces(reader *in)
{
    while (in->at < in->end && may_be_space(*in->at) && take_any(in, spaces)) {
    }
}

static bool drop_any_behind(reader *in, const char *const texts[])
{
    for (; *texts; texts++) {
        size_t length = strlen(*texts);
        if ((size_t)(in->end - in->at) >= length && memcmp(in->end - length, *texts, length) == 0) {
            in->end -= length;
            return true;
        }
    }
    return false;
}

static void drop_spaces_behind(reader *in)
{
    while (in->at < in->end && may_be_space(in->end[-1]) && drop_any_behind(in, spaces)) {
    }
}

static bool take(reader *in, char c)
{
    if (in->at < in->end && *in->at == c) {
        in->at++;
        return true;
    }
    return false;
}

/* mantissa * 10^exponent. Both are exact doubles up to 2^53 and 10^22, so a single operation rounds
 * correctly. Beyond that two or more roundings in long double stay within one unit of the last
 * place. */
static double scale_by_ten(uint64_t mantissa, int exponent)
{
    static const double tens[] = {1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                  1e8,  1e9,  1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
                                  1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};
    enum { EXACT = 22 };
    if (mantissa <= (UINT64_C(1) << 53) && exponent >= -EXACT && exponent <= EXACT) {
        double value = (double)mantissa;
        return exponent < 0 ? value / tens[-exponent] : value * tens[exponent];
    }
    if (mantissa == 0) {
        return 0.0;
    }
    long double value = (long double)mantissa;
    int left = exponent < 0 ? -exponent : exponent;
    for (; left > 0 && value > 0.0L && !isinf(value); left -= EXACT) {
        long double step = (long double)tens[left > EXACT ? EXACT : left];
        value = exponent < 0 ? value / step : value * step;
    }
    return (double)value;
}

/* An exponent after a number: e or E, a sign, digits. Anything else is left to be read as the
 * unit. */
static int take_exponent(reader *in)
{
    reader ahead = *in;
    if (!take(&ahead, 'e') && !take(&ahead, 'E')) {
        return 0;
    }
    bool negative = take(&ahead, '-');
    if (!negative) {
        take(&ahead, '+');
    }
    if (ahead.at == ahead.end || !is_digit(*ahead.at)) {
        return 0;
    }
    int exponent = 0;
    for (; ahead.at < ahead.end && is_digit(*ahead.at); ahead.at++) {
        exponent = exponent < 100000 ? exponent * 10 + (*ahead.at - '0') : exponent;
    }
    *in = ahead;
    return negative ? -exponent : exponent;
}

/* One unsigned decimal number. Digits after the nineteenth cannot change a double. */
static bool take_number(reader *in, double *value)
{
    uint64_t mantissa = 0;
    int kept = 0, exponent = 0;
    bool after_mark = false, any = false;
    for (; in->at < in->end; in->at++) {
        if (*in->at == in->mark && !after_mark) {
            after_mark = true;
            continue;
        }
        if (!is_digit(*in->at)) {
            break;
        }
        any = true;
        if (kept < 19) {
            mantissa = mantissa * 10 + (uint64_t)(*in->at - '0');
            kept += mantissa > 0;
            exponent -= after_mark;
        } else {
            exponent += !after_mark;
        }
    }
    if (!any) {
        return false;
    }
    *value = scale_by_ten(mantissa, exponent + take_exponent(in));
    return isfinite(*value);
}

static bool take_whole(reader *in, double *value)
{
    double number = 0.0;
    const char *start = in->at;
    for (; in->at < in->end && is_digit(*in->at); in->at++) {
        number = number * 10.0 + (*in->at - '0');
    }
    *value = number;
    return in->at > start && in->at - start < 10;
}

/* Fractions that are one letter; what a rule in inches is marked with. */
static bool take_small_fraction(reader *in, double *value)
{
    static const struct {
        const char *letter;
        double value;
    } letters[] = {
        {"\xC2\xBD", 1.0 / 2},     {"\xC2\xBC", 1.0 / 4},     {"\xC2\xBE", 3.0 / 4},
        {"\xE2\x85\x9B", 1.0 / 8}, {"\xE2\x85\x9C", 3.0 / 8}, {"\xE2\x85\x9D", 5.0 / 8},
        {"\xE2\x85\x9E", 7.0 / 8},
    };
    if (in->at == in->end || (unsigned char)*in->at < 0x80) {
        return false; /* as most figures have none */
    }
    for (size_t i = 0; i < sizeof letters / sizeof *letters; i++) {
        if (take_text(in, letters[i].letter)) {
            *value = letters[i].value;
            return true;
        }
    }
    return false;
}

static const char *const slashes[] = {"/", "\xE2\x81\x84", NULL}; /* and the fraction slash */
static const char *const ordinals[] = {"ths", "th", "nds", "nd", NULL};

/* "5/64", "5/64ths": two whole numbers, the lower one not 0. */
static bool take_ratio(reader *in, double *value)
{
    double over, under;
    if (!take_whole(in, &over) || !take_any(in, slashes) || !take_whole(in, &under) ||
        under == 0.0) {
        return false;
    }
    take_any(in, ordinals);
    *value = over / under;
    return true;
}

/* A fraction of an inch, alone, or after a whole number with a space or a dash between; after a
 * whole number it must be less than 1. The reader moves on only if it reads one. */
static bool take_fraction(reader *in, double *value)
{
    reader ahead = *in;
    double whole = 0.0, part = 0.0;
    if (take_small_fraction(&ahead, value) || take_ratio(&ahead, value)) {
        *in = ahead;
        return true;
    }
    ahead = *in;
    if (!take_whole(&ahead, &whole)) {
        return false;
    }
    if (!take(&ahead, '-')) {
        skip_spaces(&ahead);
    }
    if (!(take_small_fraction(&ahead, &part) || take_ratio(&ahead, &part)) || part >= 1.0) {
        return false;
    }
    *value = whole + part;
    *in = ahead;
    return true;
}

/* The decimal mark of a text, looked for before its unit ("in." has a point of its own). With more
 * than one comma there is no decimal mark, and the text is not a number. */
static char decimal_mark(const char *at, const char *end)
{
    int commas = 0;
    for (; at < end && !(*at >= 'a' && *at <= 'z') && !(*at >= 'A' && *at <= 'Z'); at++) {
        if (*at == '.') {
            return '.';
        }
        commas += *at == ',';
    }
    return commas == 1 ? ',' : '.';
}

/* What a figure without a unit is worth, if it may stand so. */
static sil_status read_bare(sil_measure measure, sil_unit bare, bool fraction, double number,
                            double *value)
{
    bool length = measure == SIL_LENGTH;
    if (!length && measure != SIL_RATIO && measure != SIL_FREQUENCY) {
        return SIL_NO_UNIT;
    }
    if (fraction && !(length && bare == SIL_INCH)) {
        return length ? SIL_NO_UNIT : SIL_NOT_A_NUMBER;
    }
    double result = length && bare == SIL_INCH ? number * 25.4 : number;
    if (!isfinite(result)) {
        return SIL_NOT_A_NUMBER;
    }
    *value = result;
    return SIL_DONE;
}

sil_status sil_quantity_read(const char *text, size_t size, sil_measure measure, sil_unit bare,
                             double *value)
{
    reader in = {text, text + size, decimal_mark(text, text + size)};
    drop_spaces_behind(&in);
    skip_spaces(&in);
    bool negative = take(&in, '-') || take_text(&in, "\xE2\x88\x92"); /* or a true minus */
    if (!negative) {
        take(&in, '+');
    }
    double number;
    bool fraction = take_fraction(&in, &number);
    if (!fraction && !take_number(&in, &number)) {
        return SIL_NOT_A_NUMBER;
    }
    if (negative) {
        number = -number;
    }
    skip_spaces(&in);
    if (in.at == in.end) {
        return read_bare(measure, bare, fraction, number, value);
    }
    if (is_digit(*in.at) || *in.at == '.' || *in.at == ',' || *in.at == '/') {
        return SIL_NOT_A_NUMBER;
    }
    const core_unit *found = core_unit_find(measure, in.at, (size_t)(in.end - in.at));
    if (!found || (fraction && !core_unit_is_inch(found))) {
        return SIL_OTHER_UNIT;
    }
    double result = number * found->factor + found->offset;
    if (!isfinite(result)) {
        return SIL_NOT_A_NUMBER;
    }
    *value = result;
    return SIL_DONE;
}
