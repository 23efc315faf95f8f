/* SPDX-License-Identifier: MIT */
/* M. B. Anderson, R. G. Beausoleil, "Classical guitar intonation and compensation: The well-tempered
 * guitar", JASA 156(1), 683 (2024), authors' manuscript revisions. Scale 650 mm, nut 1 mm and saddle
 * 5 mm over the crowns, which lie in a line; pressed at the fret; clamped at the fret, pinned at the
 * saddle. */

/* The prototype string: radius 0.43 mm, kappa 51. Cents at frets 1..12 with no compensation, recomputed
 * from the published formula outside the project. */
static const double prototype_radius = 0.43;
static const double prototype_kappa = 51.0;
static const double prototype_b = 0.00236;
static const double prototype_cents[] = {1.727, 1.610, 1.818, 2.125, 2.485, 2.884,
                                         3.318, 3.784, 4.282, 4.814, 5.379, 5.979};
static const double prototype_setback = 1.8051;
static const double prototype_advance = 0.3775;
static const double prototype_rms = 0.1576;

typedef struct tuned_row {
    const char *note;
    double radius, unit_mass, tension, kappa, modulus_gpa;
    double setback, advance, rms;
} tuned_row;

/* Best pairs as published. Adjacent manuscript revisions differ: setback is held to 0.035 mm, advance
 * to 0.005 mm, rms to 0.01 cent; to these the last printed digit adds half. */
static const tuned_row tuned[] = {
    {"E4", 0.3556, 3.74e-4, 68.62, 48.2, 8.33, 1.48, 0.36, 0.15},
    {"B3", 0.4089, 5.05e-4, 52.04, 48.7, 4.82, 1.69, 0.36, 0.15},
    {"D3", 0.3683, 19.21e-4, 69.99, 46.0, 7.56, 1.48, 0.34, 0.14},
};

typedef struct stiff_row {
    double b, pinned, clamped_pinned, clamped;
} stiff_row;

/* Exact first modes of a stiff string over those of a limp one, recomputed from the beam equation
 * outside the project. */
static const stiff_row stiff_rows[] = {
    {0.00236, 1.000027484, 1.002393154, 1.004770041},
    {0.01, 1.000493359, 1.010600904, 1.020914506},
};
