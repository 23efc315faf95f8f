/* SPDX-License-Identifier: MIT */
/* Figures as a program prints them. */
#include <sillet/core/units.h>

#include <stdint.h>
#include <stdio.h>
#include <string.h>

static const double scales[] = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};
static const double exact = 4503599627370496.0; /* 2^52: below it a double can still hold a half */

/* value * 10^decimals, rounded half away from zero by the exact product. t is the double nearest to
 * the product and `rest` is the error of t. A half is itself a double, so t can be on the wrong
 * side of a half only by being equal to it. */
static uint64_t round_scaled(double value, double scale)
{
    double t = value * scale;
    double rest = fma(value, scale, -t);
    double whole = floor(t);
    double part = t - whole;
    return (uint64_t)whole + (part > 0.5 || (part == 0.5 && rest >= 0.0));
}

/* snprintf for figures too large for that. Whatever decimal mark the locale has becomes a point. */
static size_t write_large(char *out, size_t size, double value, int decimals)
{
    char raw[400];
    int length = snprintf(raw, sizeof raw, "%.*f", decimals, value);
    size_t mark = (size_t)length - (size_t)decimals;
    size_t kept = decimals == 0 ? (size_t)length : 0;
    while (decimals > 0 && raw[kept] >= '0' && raw[kept] <= '9') {
        kept++;
    }
    if (decimals > 0) {
        raw[kept++] = '.';
        memmove(raw + kept, raw + mark, (size_t)decimals + 1);
        kept += (size_t)decimals;
    }
    if (kept < size) {
        memcpy(out, raw, kept + 1);
    }
    return kept;
}

/* The digits of a figure, without its sign. */
static size_t write_digits(char *out, size_t size, uint64_t scaled, int decimals)
{
    char back[32]; /* last digit first */
    size_t length = 0;
    for (int place = 0; scaled > 0 || place <= decimals; place++) {
        if (place == decimals && decimals > 0) {
            back[length++] = '.';
        }
        back[length++] = (char)('0' + scaled % 10);
        scaled /= 10;
    }
    if (length < size) {
        for (size_t i = 0; i < length; i++) {
            out[i] = back[length - 1 - i];
        }
        out[length] = '\0';
    }
    return length;
}

static size_t write_word(char *out, size_t size, const char *word)
{
    size_t length = strlen(word);
    if (length < size) {
        memcpy(out, word, length + 1);
    }
    return length;
}

size_t sil_number_write(char *out, size_t size, double value, int decimals)
{
    if (size > 0) {
        out[0] = '\0';
    }
    if (!isfinite(value)) {
        return write_word(out, size, "-");
    }
    double magnitude = fabs(value);
    bool large = magnitude * scales[decimals] >= exact;
    uint64_t scaled = large ? 1 : round_scaled(magnitude, scales[decimals]);
    size_t sign = value < 0.0 && scaled > 0;
    size_t room = size > sign ? size - sign : 0;
    char *digits = room > 0 ? out + sign : out;
    size_t length = large ? write_large(digits, room, magnitude, decimals)
                          : write_digits(digits, room, scaled, decimals);
    if (sign && length < room) {
        out[0] = '-';
    }
    return sign + length;
}

double sil_number_shown(double value, int decimals)
{
    if (!isfinite(value)) {
        return value;
    }
    double scale = scales[decimals];
    double magnitude = fabs(value);
    if (magnitude * scale >= exact) { /* it has no such decimals */
        return value;
    }
    return copysign((double)round_scaled(magnitude, scale) / scale, value);
}

size_t sil_number_trimmed(char *out, size_t size, double value, int decimals)
{
    size_t length = sil_number_write(out, size, value, decimals);
    if (length < size && strchr(out, '.')) {
        while (out[length - 1] == '0') {
            length--;
        }
        length -= out[length - 1] == '.';
        out[length] = '\0';
    }
    return length;
}

size_t sil_length_write(char *out, size_t size, double mm, sil_unit unit, int decimals)
{
    return unit == SIL_INCH ? sil_number_write(out, size, mm / 25.4, decimals + 1)
                            : sil_number_write(out, size, mm, decimals);
}

/* The step that a length is shown in, mm. Of an inch: thousandths; under ten of them halves, which
 * feelers come in; under half of one tenths, so that what is there is not shown as nothing. */
static double grain_of(double mm, sil_unit unit)
{
    const double thousandth = 0.0254, rounding = 1e-9;
    double size = fabs(mm) + rounding;
    if (unit == SIL_MM) {
        return 0.01;
    }
    return size >= 10.0 * thousandth  ? thousandth
           : size >= 0.5 * thousandth ? thousandth / 2.0
                                      : thousandth / 10.0;
}

size_t sil_figure_write(char *out, size_t size, double mm, sil_unit unit, sil_rounding way)
{
    double grain = grain_of(mm, unit);
    double steps = mm / grain;
    if (way == SIL_DOWN) {
        mm = floor(steps + 1e-7) * grain;
    } else if (way == SIL_UP) {
        mm = ceil(steps - 1e-7) * grain;
    } else if (isfinite(mm)) { /* half a step goes up, on every machine */
        mm = copysign(floor(fabs(steps) + 0.5 + 1e-9), mm) * grain;
    }
    if (unit == SIL_MM) {
        return sil_number_write(out, size, mm, 2);
    }
    size_t length = sil_number_write(out, size, mm / 25.4, 4);
    if (length > 1 && length < size && out[length - 1] == '0') {
        out[--length] = '\0';
    }
    return length;
}
