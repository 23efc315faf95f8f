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

/* Gauges and the cores they usually have, in thousandths of an inch. */
typedef struct usual_core {
    double gauge, core;
} usual_core;

typedef struct usual_cores {
    const usual_core *rows;
    int count;
} usual_cores;

/* Steel cores by gauge: common practice, from memory. Under bronze, as on acoustic guitars. */
static const usual_core under_bronze[] = {{20, 10}, {24, 11}, {30, 13.5}, {36, 15},
                                          {42, 16}, {47, 17}, {53, 18},   {59, 19}};
/* Under nickel or steel, as on electric guitars and basses. */
static const usual_core under_nickel[] = {{17, 10}, {24, 12.5}, {30, 14}, {36, 15},  {46, 16},
                                          {56, 18}, {64, 19},   {80, 20}, {100, 22}, {130, 24}};
/* Under the wrap of a nylon string: 0.48 mm of floss, which with the densities in the profiles the
 * masses of all three wound strings of the published set imply (0.479, 0.480, 0.484). */
static const usual_core under_nylon[] = {{28, 0.48 / 0.0254}, {44, 0.48 / 0.0254}};

static usual_cores usual_cores_of(sil_material material)
{
    switch (material) {
    case SIL_WOUND_BRONZE:
        return (usual_cores){under_bronze, sizeof under_bronze / sizeof *under_bronze};
    case SIL_WOUND_NICKEL:
    case SIL_WOUND_NICKEL_PLATED:
    case SIL_WOUND_STEEL:
        return (usual_cores){under_nickel, sizeof under_nickel / sizeof *under_nickel};
    case SIL_WOUND_NYLON:
        return (usual_cores){under_nylon, sizeof under_nylon / sizeof *under_nylon};
    case SIL_MATERIAL_NOT_GIVEN:
    case SIL_PLAIN_STEEL:
    case SIL_PLAIN_NYLON:
    case SIL_PLAIN_FLUOROCARBON:
    case SIL_PLAIN_GUT:
    case SIL_MATERIALS:
        break;
    }
    return (usual_cores){0};
}

double sil_typical_core(sil_material material, double gauge)
{
    /* At both ends a gauge may be rounded to hundredths of a mm, as sheets in mm have it. */
    const double thousandth = 0.0254, rounded = 0.005 / thousandth;
    double thick = gauge / thousandth;
    usual_cores table = usual_cores_of(material);
    int last = table.count - 1, k = 0;
    bool within = table.count > 0 && thick >= table.rows[0].gauge - rounded &&
                  thick <= table.rows[last].gauge + rounded;
    if (!within) {
        return SIL_UNKNOWN;
    }
    while (k + 1 < last && thick > table.rows[k + 1].gauge) {
        k++;
    }
    const usual_core *from = &table.rows[k], *to = from + 1;
    double share = (thick - from->gauge) / (to->gauge - from->gauge);
    return (from->core + (to->core - from->core) * share) * thousandth;
}

double sil_stiff_diameter(sil_material material, double gauge, double core)
{
    bool whole = !sil_material_wound(material) || material == SIL_WOUND_NYLON;
    return whole ? gauge : core;
}

double sil_tension(double unit_mass, double length, double hz)
{
    double speed = 2.0 * length / 1000.0 * hz;
    return unit_mass * speed * speed;
}
