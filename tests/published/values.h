/* SPDX-License-Identifier: MIT */
/* Values published or computed outside the project, one row each with its source. The tolerance is
 * half the last digit of the value as printed, unless the row says why not. */

/* Fret places of a 650 mm scale: 12-step equal temperament, L (1 - 2^(-n/12)), recomputed from the
 * formula outside the project: a regression, not a measurement. */
static const double fret_650[] = {36.4817,  70.9158,  103.4173, 134.0947, 163.0502, 190.3806,
                                  216.1770, 240.5257, 263.5077, 285.1998, 305.6745, 325.0000};

/* The trade's divisor: each fret stands 1/17.817 of what is left to the saddle from the one before
 * (17.817 in print; 17.8171537 computed). */
static const double fret_divisor = 17.8171537;

typedef struct drop_row {
    double radius, z, drop;
    const char *source;
} drop_row;

static const drop_row drops[] = {
    {254.0, 26.0, 1.334, "r - sqrt(r^2 - z^2), recomputed outside the project"},
    {5.0, 3.0, 1.0, "the right triangle 3 4 5"},
    {13.0, 5.0, 1.0, "the right triangle 5 12 13"},
};

typedef struct note_row {
    const char *note;
    double hz, tolerance;
    const char *source;
} note_row;

static const note_row notes[] = {
    {"A4", 440.0, 0.0, "ISO 16:1975, standard tuning frequency"},
    {"E4", 329.628, 0.0005, "ISO 16 and twelve equal steps, recomputed"},
    {"B3", 246.942, 0.0005, "the same"},
    {"C4", 261.626, 0.0005, "the same; middle C"},
    {"E2", 82.407, 0.0005, "the same"},
    {"A9", 14080.0, 0.0, "the same; five octaves over A4"},
    {"a#3", 233.082, 0.0005, "the same; letters of either case"},
    {"B\xE2\x99\xAD"
     "3",
     233.082, 0.0005, "the same; the flat sign"},
    {"Cb4", 246.942, 0.0005, "the same; C flat 4 is B 3"},
    {"B#3", 261.626, 0.0005, "the same; B sharp 3 is C 4"},
    {"f\xE2\x99\xAF"
     "3",
     184.997, 0.0005, "the same; the sharp sign"},
    {"A-1", 13.75, 0.0, "the same; five octaves under A4"},
};

typedef struct tension_row {
    double unit_mass, length, hz, tension, tolerance;
    const char *source;
} tension_row;

/* Strings of M. B. Anderson, R. G. Beausoleil, "Classical guitar intonation and compensation: The
 * well-tempered guitar", JASA 156(1), 683 (2024), authors' manuscript: mass by length and tension
 * at 650 mm. The mass is printed in three or four digits, so the tension is held to what half its
 * last digit moves it. */
static const tension_row tensions[] = {
    {3.74e-4, 650.0, 329.628, 68.62, 0.10, "Anderson and Beausoleil 2024, E4"},
    {5.05e-4, 650.0, 246.942, 52.04, 0.06, "Anderson and Beausoleil 2024, B3"},
    {19.21e-4, 650.0, 146.832, 69.99, 0.03, "Anderson and Beausoleil 2024, D3"},
    {1.17e-3, 1002.0, 195.7372, 180.5, 0.82,
     "measured: data published with Issanchou et al., J. Sound Vib. 393, 229 (2017)"},
};

typedef struct wire_row {
    double gauge, hz, tension;
    const char *source;
} wire_row;

/* Plain steel at 648 mm. Density 7850 kg/m^3: patented spring steel, EN 10270-1 (quoted). The
 * tension is recomputed from rho pi D^2/4 (2 L f)^2: a regression of the formula. */
static const wire_row wires[] = {
    {0.254, 329.627557, 72.591, "0.010 in at E4"},
    {0.330, 246.941651, 68.768, "0.013 in at B3"},
    {0.432, 195.997718, 74.240, "0.017 in at G3"},
};
