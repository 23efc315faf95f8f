/* SPDX-License-Identifier: MIT */
/* Strings: pitch, mass, tension. */
#include <sillet/core/tension.h>

static const double pi = 3.14159265358979323846;

bool sil_material_wound(sil_material material)
{
    return material >= SIL_WOUND_BRONZE;
}

/* Semitones of a letter over C, or -1. */
static int letter_step(char letter)
{
    static const int steps[] = {9, 11, 0, 2, 4, 5, 7}; /* A B C D E F G */
    if (letter >= 'a' && letter <= 'g') {
        return steps[letter - 'a'];
    }
    return letter >= 'A' && letter <= 'G' ? steps[letter - 'A'] : -1;
}

/* Reads one sharp or flat, ASCII or Unicode (U+266F, U+266D), and returns the semitones it shifts
 * by. */
static int accidental(const char **at)
{
    const unsigned char *p = (const unsigned char *)*at;
    if (p[0] == '#' || p[0] == 'b') {
        *at += 1;
        return p[0] == '#' ? 1 : -1;
    }
    if (p[0] == 0xE2 && p[1] == 0x99 && (p[2] == 0xAF || p[2] == 0xAD)) {
        *at += 3;
        return p[2] == 0xAF ? 1 : -1;
    }
    return 0;
}

sil_status sil_note_hz(const char *name, double *hz)
{
    int step = letter_step(name[0]);
    if (step < 0) {
        return SIL_NO_NOTE;
    }
    const char *at = name + 1;
    step += accidental(&at);
    int sign = 1;
    if (*at == '-') {
        sign = -1;
        at++;
    }
    if (*at < '0' || *at > '9' || at[1] != '\0' || (sign < 0 && *at != '1')) {
        return SIL_NO_NOTE;
    }
    int octave = sign * (*at - '0');
    /* ISO 16: A4 = 440 Hz; A4 is nine semitones above C4. */
    *hz = 440.0 * exp2((step - 9 + 12 * (octave - 4)) / 12.0);
    return SIL_DONE;
}

double sil_unit_mass(sil_material material, double gauge, double core,
                     const sil_material_constants *constants)
{
    double d = gauge / 1000.0;
    if (!sil_material_wound(material)) {
        return constants->density * pi * d * d / 4.0;
    }
    double c = core / 1000.0;
    double w = (d - c) / 2.0;
    return constants->density * pi * c * c / 4.0 +
           constants->wrap_density * pi * pi * w * (c + w) / 4.0;
}

double sil_tension(double unit_mass, double length, double hz)
{
    double speed = 2.0 * length / 1000.0 * hz;
    return unit_mass * speed * speed;
}
