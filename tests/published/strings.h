/* SPDX-License-Identifier: MIT */
/* What strings weigh, published, with sources.
 *
 * A published table of unit weights, converted from lb/in. Two copies of it agree for plain and
 * nickel-plated strings; bronze and bass strings stand in one of them, and another has 6.604 and
 * 19.78 for the bass's 45 and 80.
 */
typedef struct weight_row {
    int gauge;   /* thousandths of an inch */
    double mass; /* g/m */
} weight_row;

static const weight_row plain_steel_weights[] = {
    {7, 0.1938},  {8, 0.2532},  {9, 0.3204}, {10, 0.3956}, {11, 0.4786}, {12, 0.5697},
    {13, 0.6686}, {14, 0.7754}, {15, 0.89},  {16, 1.013},  {17, 1.143},  {18, 1.282},
    {19, 1.428},  {20, 1.582},  {22, 1.915}, {24, 2.279}};

static const weight_row bronze_weights[] = {
    {20, 1.448}, {21, 1.597}, {22, 1.764}, {23, 1.929}, {24, 2.086}, {25, 2.265},
    {26, 2.436}, {27, 2.649}, {29, 3.104}, {30, 3.332}, {32, 3.753}, {34, 4.266},
    {35, 4.53},  {36, 4.79},  {39, 5.558}, {42, 6.558}, {45, 7.456}, {47, 8.088},
    {49, 8.777}, {52, 9.862}, {53, 10.17}, {56, 11.34}, {59, 12.6}};

static const weight_row plated_weights[] = {
    {17, 0.9865}, {20, 1.338}, {21, 1.481}, {22, 1.64},  {24, 1.939}, {26, 2.263}, {28, 2.619},
    {30, 3.078},  {32, 3.455}, {34, 3.856}, {36, 4.279}, {38, 4.727}, {39, 4.988}, {42, 5.764},
    {44, 6.283},  {46, 6.825}, {48, 7.39},  {49, 7.681}, {52, 8.591}, {54, 9.614}, {56, 10.29},
    {59, 11.46},  {60, 11.88}, {62, 12.63}, {64, 13.39}, {66, 14.27}, {68, 15.11}, {70, 15.95},
    {72, 16.81},  {74, 17.66}, {80, 20.54}};

/* Nickel-plated, long scale. */
static const weight_row bass_weights[] = {{45, 6.65},  {50, 8.297}, {55, 9.789}, {60, 11.88},
                                          {65, 14.21}, {70, 16.65}, {75, 18.75}, {80, 20.72},
                                          {85, 23.88}, {90, 26.84}, {95, 30.24}, {100, 32.09}};

/* One whole set of nylon strings of normal tension. M. B. Anderson, R. G. Beausoleil, "Classical
 * guitar intonation and compensation: The well-tempered guitar", J. Acoust. Soc. Am. 156(1), 683
 * (2024), authors' tables at proof stage. A scale of 650 mm, nut 1 mm and saddle 5 mm over flat
 * crowns, clamped at nut and fret, pinned at the saddle. The modulus is over the whole gauge.
 */
typedef struct nylon_row {
    const char *note;
    double radius, mass;     /* mm, g/m */
    double tension, modulus; /* N, GPa */
    double setback, advance; /* of the best pair, mm */
} nylon_row;

static const nylon_row nylon_set[] = {
    {"E4", 0.356, 0.374, 68.6, 8.33, 1.48, 0.36}, {"B3", 0.409, 0.505, 52.0, 4.82, 1.69, 0.36},
    {"G3", 0.512, 0.836, 54.2, 3.87, 2.33, 0.43}, {"D3", 0.368, 1.920, 70.0, 7.56, 1.49, 0.34},
    {"A2", 0.445, 3.289, 67.3, 5.28, 1.83, 0.36}, {"E2", 0.546, 5.470, 62.8, 3.90, 2.46, 0.43},
};
static const double nylon_scale = 650.0, nylon_nut = 1.0, nylon_saddle = 5.0;
