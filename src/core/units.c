/* SPDX-License-Identifier: MIT */
/* Lengths and other quantities as a workshop writes them; figures as a program prints them. */
#include <sillet/units.h>

#include <stdint.h>
#include <stdio.h>
#include <string.h>

/* What is still to be read. */
typedef struct reader {
    const char *at, *end;
    char mark; /* the decimal mark of this text: a point, or a comma where there is no point */
} reader;

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static void skip_spaces(reader *in)
{
    while (in->at < in->end && (*in->at == ' ' || *in->at == '\t')) {
        in->at++;
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

/* mantissa * 10^exponent. Both are exact doubles up to 2^53 and 10^22, so one operation rounds
 * correctly; past that two or more roundings in long double stay within one last place. */
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

/* An exponent behind a number: e or E, a sign, digits. Anything else is left for the unit. */
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

/* One unsigned decimal number. Digits past the nineteenth cannot move a double. */
static bool take_number(reader *in, double *value)
{
    uint64_t mantissa = 0;
    int kept = 0, exponent = 0, digits = 0;
    bool after_mark = false;
    for (; in->at < in->end; in->at++) {
        if (*in->at == in->mark && !after_mark) {
            after_mark = true;
            continue;
        }
        if (!is_digit(*in->at)) {
            break;
        }
        digits++;
        if (kept < 19) {
            mantissa = mantissa * 10 + (uint64_t)(*in->at - '0');
            kept += mantissa > 0;
            exponent -= after_mark;
        } else {
            exponent += !after_mark;
        }
    }
    if (digits == 0) {
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

/* "/64" or " 3/16" or "-3/16" behind a number makes it a fraction or a mixed fraction. */
static bool take_fraction(reader *in, double *value)
{
    reader ahead = *in;
    double over = 0.0, under = 0.0, whole = 0.0;
    if (take(&ahead, '/')) {
        over = *value;
    } else {
        whole = *value;
        if (!take(&ahead, '-')) {
            skip_spaces(&ahead);
        }
        if (!take_whole(&ahead, &over) || !take(&ahead, '/')) {
            return false;
        }
    }
    if (floor(*value) != *value || !take_whole(&ahead, &under) || under == 0.0) {
        return false;
    }
    *value = whole + over / under;
    *in = ahead;
    return true;
}

typedef struct known_unit {
    sil_measure measure;
    const char *name;
    double factor; /* to the unit the measure is kept in */
    double offset;
} known_unit;

/* Inch: exactly 25.4 mm; pound-force: exactly 4.4482216152605 N (both by definition). The first
 * name of a measure is the unit it is kept in. */
static const known_unit units[] = {
    {SIL_LENGTH, "mm", 1.0, 0.0},
    {SIL_LENGTH, "in", 25.4, 0.0},
    {SIL_LENGTH, "\"", 25.4, 0.0},
    {SIL_LENGTH, "thou", 0.0254, 0.0},
    {SIL_LENGTH, "inch", 25.4, 0.0},
    {SIL_LENGTH, "inches", 25.4, 0.0},
    {SIL_LENGTH, "\xE2\x80\xB3", 25.4, 0.0}, /* double prime */
    {SIL_LENGTH, "mil", 0.0254, 0.0},
    {SIL_LENGTH, "cm", 10.0, 0.0},
    {SIL_LENGTH, "m", 1000.0, 0.0},
    {SIL_ANGLE, "deg", 1.0, 0.0},
    {SIL_ANGLE, "\xC2\xB0", 1.0, 0.0}, /* degree sign */
    {SIL_ANGLE, "rad", 57.295779513082320877, 0.0},
    {SIL_FORCE, "N", 1.0, 0.0},
    {SIL_FORCE, "mN", 0.001, 0.0},
    {SIL_FORCE, "lbf", 4.4482216152605, 0.0},
    {SIL_MODULUS, "GPa", 1.0, 0.0},
    {SIL_MODULUS, "MPa", 1e-3, 0.0},
    {SIL_MODULUS, "Pa", 1e-9, 0.0},
    {SIL_MODULUS, "psi", 6.894757293168361e-6, 0.0},
    {SIL_UNIT_MASS, "g/m", 1.0, 0.0},
    {SIL_UNIT_MASS, "kg/m", 1000.0, 0.0},
    {SIL_UNIT_MASS, "lb/in", 453.59237 / 0.0254, 0.0},
    {SIL_DENSITY, "kg/m3", 1.0, 0.0},
    {SIL_DENSITY, "kg/m\xC2\xB3", 1.0, 0.0},
    {SIL_DENSITY, "g/cm3", 1000.0, 0.0},
    {SIL_DENSITY, "g/cm\xC2\xB3", 1000.0, 0.0},
    {SIL_HUMIDITY, "%", 1.0, 0.0},
    {SIL_TEMPERATURE, "C", 1.0, 0.0},
    {SIL_TEMPERATURE,
     "\xC2\xB0"
     "C",
     1.0, 0.0},
    {SIL_TEMPERATURE, "F", 5.0 / 9.0, -160.0 / 9.0},
    {SIL_TEMPERATURE,
     "\xC2\xB0"
     "F",
     5.0 / 9.0, -160.0 / 9.0},
    {SIL_FREQUENCY, "Hz", 1.0, 0.0},
};

enum { UNIT_COUNT = sizeof units / sizeof units[0] };

static const known_unit *find_unit(sil_measure measure, const char *name, size_t length)
{
    for (int i = 0; i < UNIT_COUNT; i++) {
        if (units[i].measure == measure && strncmp(units[i].name, name, length) == 0 &&
            units[i].name[length] == '\0') {
            return &units[i];
        }
    }
    return NULL;
}

const char *sil_measure_unit(sil_measure measure)
{
    for (int i = 0; i < UNIT_COUNT; i++) {
        if (units[i].measure == measure) {
            return units[i].name;
        }
    }
    return "";
}

/* The decimal mark of a text. Zero where it has more than one comma: then it is no number. */
static char decimal_mark(const char *at, const char *end)
{
    int commas = 0;
    for (; at < end; at++) {
        if (*at == '.') {
            return '.';
        }
        commas += *at == ',';
    }
    return commas == 1 ? ',' : '.';
}

/* What a figure without a unit is worth, if it may stand so. */
static int read_bare(sil_measure measure, sil_unit bare, bool fraction, double number,
                     double *value)
{
    bool length = measure == SIL_LENGTH;
    if (!length && measure != SIL_RATIO && measure != SIL_FREQUENCY) {
        return SIL_QUANTITY_NO_UNIT;
    }
    if (fraction && !(length && bare == SIL_INCH)) {
        return length ? SIL_QUANTITY_NO_UNIT : SIL_QUANTITY_NOT_A_NUMBER;
    }
    *value = length && bare == SIL_INCH ? number * 25.4 : number;
    return SIL_QUANTITY_READ;
}

int sil_quantity_read(const char *text, size_t size, sil_measure measure, sil_unit bare,
                      double *value)
{
    reader in = {text, text + size, '.'};
    while (in.end > in.at && (in.end[-1] == ' ' || in.end[-1] == '\t')) {
        in.end--;
    }
    in.mark = decimal_mark(in.at, in.end);
    skip_spaces(&in);
    bool negative = take(&in, '-');
    if (!negative) {
        take(&in, '+');
    }
    double number = 0.0;
    if (!take_number(&in, &number)) {
        return SIL_QUANTITY_NOT_A_NUMBER;
    }
    bool fraction = take_fraction(&in, &number);
    if (negative) {
        number = -number;
    }
    skip_spaces(&in);
    if (in.at == in.end) {
        return read_bare(measure, bare, fraction, number, value);
    }
    if (is_digit(*in.at) || *in.at == '.' || *in.at == ',' || *in.at == '/') {
        return SIL_QUANTITY_NOT_A_NUMBER;
    }
    const known_unit *found = find_unit(measure, in.at, (size_t)(in.end - in.at));
    if (!found || (fraction && (measure != SIL_LENGTH || found->factor == 1.0))) {
        return SIL_QUANTITY_OTHER_UNIT;
    }
    double result = number * found->factor + found->offset;
    if (!isfinite(result)) {
        return SIL_QUANTITY_NOT_A_NUMBER;
    }
    *value = result;
    return SIL_QUANTITY_READ;
}

/* value * 10^decimals rounded half away from zero, judged on the exact product: t is the nearest
 * double to it and `rest` is what is missing, and a half is itself a double, so t can only stand
 * on the wrong side of a half by being equal to it. */
static uint64_t round_scaled(double value, double scale)
{
    double t = value * scale;
    double rest = fma(value, scale, -t);
    double whole = floor(t);
    double part = t - whole;
    return (uint64_t)whole + (part > 0.5 || (part == 0.5 && rest >= 0.0));
}

/* snprintf for figures too large for that, with whatever the locale has as a mark made a point. */
static size_t write_large(char *out, size_t size, double value, int decimals)
{
    char raw[400];
    int length = snprintf(raw, sizeof raw, "%.*f", decimals, value);
    size_t mark = (size_t)length - (size_t)decimals;
    size_t kept = decimals == 0 ? (size_t)length : 0;
    while (decimals > 0 && is_digit(raw[kept])) {
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

/* The digits of a figure, sign apart. */
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
    static const double scales[] = {1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};
    const double exact = 4503599627370496.0; /* 2^52: below it a double still has a half */
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

size_t sil_length_write(char *out, size_t size, double mm, sil_unit unit, int decimals)
{
    return unit == SIL_INCH ? sil_number_write(out, size, mm / 25.4, decimals + 1)
                            : sil_number_write(out, size, mm, decimals);
}

size_t sil_figure_write(char *out, size_t size, double mm, sil_unit unit, sil_rounding way)
{
    bool small = unit == SIL_INCH && fabs(mm) < 1.3;
    int decimals = unit == SIL_MM ? 2 : small ? 4 : 3;
    double grain = unit == SIL_MM ? 0.01 : small ? 0.00254 : 0.0254;
    double steps = mm / grain;
    if (way == SIL_DOWN) {
        mm = floor(steps + 1e-7) * grain;
    } else if (way == SIL_UP) {
        mm = ceil(steps - 1e-7) * grain;
    }
    return sil_number_write(out, size, unit == SIL_MM ? mm : mm / 25.4, decimals);
}
