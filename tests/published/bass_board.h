/* SPDX-License-Identifier: MIT */
/* A measured board: C. Issanchou, J.-L. Le Carrou, C. Touze, B. Fabre, O. Doare, "String/frets
 * contacts in the electric bass sound", Applied Acoustics 129, 217 (2018), the authors' input data.
 * Lengths in mm, tension in N; frets count from 1. */
enum { BASS_FRETS = 20 };
static const double bass_length = 863.0;
static const double bass_tension = 191.6;
static const double bass_plucked_at = 223.0; /* from the bridge */

/* Place of each fret, and the gap from the string at rest down to its top. */
static const double bass_fret_x[BASS_FRETS + 1] = {0,   48,  94,  137, 178, 216, 253,
                                                   287, 319, 350, 379, 406, 432, 456,
                                                   479, 501, 521, 540, 558, 576, 591};
static const double bass_gap[BASS_FRETS + 1] = {0,    0.63, 0.88, 1.13, 1.33,  1.58,  1.73,
                                                1.88, 1.98, 2.13, 2.18, 2.23,  2.33,  2.33,
                                                2.33, 2.33, 2.33, 2.33, 2.335, 2.335, 2.335};

/* Recomputed from those data outside the project (regressions). Pulled away from the board and let
 * go: how deep it goes at three frets, and the last fret it touches. */
static const double bass_pulled_away = 3.6;
static const int bass_last_touched = 12;

typedef struct excursion_row {
    int fret;
    double excursion;
} excursion_row;

static const excursion_row bass_excursions[] = {{5, 3.487}, {12, 2.424}, {13, 2.289}};

/* The largest pull that stays clean, away from the board and toward it, and the fret that sets it.
 */
static const double bass_clean_away = 1.631;
static const int bass_sets_away = 5;
static const double bass_clean_toward = 2.529;
static const int bass_sets_toward = 20;
