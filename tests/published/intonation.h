/* SPDX-License-Identifier: MIT */
/* Intonation and stiffness, published or computed outside the project, with their sources.
 *
 * M. B. Anderson, R. G. Beausoleil, "Classical guitar intonation and compensation: The
 * well-tempered guitar", J. Acoust. Soc. Am. 156(1), 683 (2024), in the authors' manuscript
 * revisions, not the typeset tables. Neighbouring revisions differ, so best pairs are held to 0.035
 * mm of setback, 0.005 mm of advance, 0.01 cent of rms. A scale of 650 mm, nut 1 mm and saddle 5 mm
 * over flat crowns, clamped at nut and fret, pinned at the saddle.
 */
static const double manuscript_scale = 650.0, manuscript_nut = 1.0, manuscript_saddle = 5.0;

/* The prototype string: radius 0.43 mm, kappa 51, which make b 0.00236. Cents without compensation,
 * frets 1..12, pressed at the fret: computed outside the project from the published formula, a
 * regression to 0.001. */
static const double prototype_radius = 0.43, prototype_kappa = 51.0;
static const double prototype_cents[] = {1.727, 1.610, 1.818, 2.125, 2.485, 2.884,
                                         3.318, 3.784, 4.282, 4.814, 5.379, 5.979};
/* Part of it by the sounding length alone, at fret 12 (published). */
static const double prototype_length_part = -0.17;

typedef struct pair_row {
    const char *string;
    double radius;    /* of the string or its core, mm */
    double unit_mass; /* kg/m */
    const char *note;
    double modulus_gpa;      /* effective */
    double tension, kappa;   /* N; as printed */
    double setback, advance; /* best pair, mm */
    double rms;              /* cents */
    const char *source;
} pair_row;

static const pair_row pairs[] = {
    {"E4", 0.3556, 3.74e-4, "E4", 8.33, 68.62, 48.2, 1.48, 0.36, 0.15, "authors' manuscript"},
    {"B3", 0.4089, 5.05e-4, "B3", 4.82, 52.04, 48.7, 1.69, 0.36, 0.15, "authors' manuscript"},
    {"D3", 0.3683, 19.21e-4, "D3", 7.56, 69.99, 46.0, 1.48, 0.34, 0.14, "authors' manuscript"},
};
static const double prototype_setback = 1.8051, prototype_advance = 0.3775, prototype_rms = 0.1576;

/* First mode of a stiff string over that of a limp one: exact roots, computed outside the project.
 * Pinned: H. Fletcher, JASA 36, 203 (1964). */
typedef struct stiff_row {
    double b, pinned, clamped_pinned, clamped;
} stiff_row;

static const stiff_row stiff_rows[] = {
    {0.00236, 1.000027484, 1.002393154, 1.004770041},
    {0.01, 1.000493359, 1.010600904, 1.020914506},
};
