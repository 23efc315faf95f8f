/* SPDX-License-Identifier: MIT */
/* Compensation. See docs/arithmetic.md, "Compensation". Symbols as there. */
#include <sillet/core/pitch.h>

static const double pi = 3.14159265358979323846;

double sil_stiff_factor(sil_ends ends, double b)
{
    switch (ends) {
    case SIL_PINNED:
        return sqrt(1.0 + pi * pi * b * b);
    case SIL_CLAMPED:
        return 1.0 + 2.0 * b + 4.0 * (1.0 + pi * pi / 8.0) * b * b;
    case SIL_CLAMPED_PINNED:
        break;
    }
    return 1.0 + b + (1.0 + pi * pi / 2.0) * b * b;
}

/* The length of a slanted piece. (hypot() also handles lengths that no instrument has, and takes
 * ten times as long.) */
static double slant(double along, double up)
{
    return sqrt(along * along + up * up);
}

/* The open string. */
typedef struct open_string {
    double length;  /* L0, mm */
    double stiff;   /* b */
    double stretch; /* kappa: relative gain of tension for a relative stretch of 1 */
    double sharp;   /* s(b) */
} open_string;

static open_string find_open(const sil_pitch_string *s, double setback, double advance)
{
    double span = s->scale + setback - advance;
    double speed = 2.0 * span / 1000.0 * s->hz;
    double tension = s->unit_mass_kg_m * speed * speed;
    double radius = s->core / 2000.0;
    double area = pi * radius * radius;
    double modulus = s->modulus_gpa * 1e9;
    double inertia = area * radius * radius / 4.0;
    double length = slant(span, s->saddle_height - s->nut_height);
    double stiff = sqrt(modulus * inertia / tension) / (length / 1000.0);
    return (open_string){length, stiff, modulus * area / tension, sil_stiff_factor(s->ends, stiff)};
}

/* The string fretted at a fret: the sounding part, and the part behind the fret. */
typedef struct stopped_string {
    double sounding, behind; /* Ln, L'n, mm */
} stopped_string;

static stopped_string stop_at(const sil_pitch_string *s, double setback, double advance, int fret)
{
    double x = s->fret_x[fret];
    double end = s->scale + setback;
    double crown = s->crown[fret];
    double run = end - x;
    double rise = s->saddle_height - crown;
    double sounding = slant(run, rise);
    /* Pressed behind the fret, the string goes on past the crown in line with the sounding part. */
    double press = fmin(s->press, (x - s->fret_x[fret - 1]) / 2.0);
    double share = press / run;
    double pressed = crown - rise * share;
    double behind = sounding * share + slant(x - press - advance, s->nut_height - pressed);
    return (stopped_string){sounding, behind};
}

/* The pitch at the fret over that of the open string. */
static double ratio_at(const sil_pitch_string *s, const open_string *open, double setback,
                       double advance, int fret)
{
    stopped_string stop = stop_at(s, setback, advance, fret);
    double q = (stop.sounding + stop.behind - open->length) / open->length;
    double tension = 1.0 + open->stretch * q;
    double stiff = open->stiff * (open->length / stop.sounding) / sqrt(tension);
    return open->length / stop.sounding * sqrt((1.0 + q) * tension) *
           (sil_stiff_factor(s->ends, stiff) / open->sharp);
}

static double cents_of(double ratio, int fret)
{
    return 1200.0 * log2(ratio) - 100.0 * fret;
}

double sil_cents(const sil_pitch_string *string, double setback, double advance, int fret)
{
    open_string open = find_open(string, setback, advance);
    return cents_of(ratio_at(string, &open, setback, advance, fret), fret);
}

double sil_stiffness(const sil_pitch_string *string, double setback, double advance)
{
    open_string open = find_open(string, setback, advance);
    stopped_string stop = stop_at(string, setback, advance, SIL_PITCH_FRETS);
    double q = (stop.sounding + stop.behind - open.length) / open.length;
    return open.stiff * (open.length / stop.sounding) / sqrt(1.0 + open.stretch * q);
}

/* By the secant method. Pitch is almost a straight line in the setback, about 2.7 cents per
 * millimetre. */
double sil_saddle_only(const sil_pitch_string *string, double advance)
{
    double a = 0.0;
    double b = 0.5;
    double f_a = sil_cents(string, a, advance, SIL_PITCH_FRETS);
    double f_b = sil_cents(string, b, advance, SIL_PITCH_FRETS);
    for (int step = 0; step < 30 && fabs(f_b) > 1e-11 && f_a != f_b; step++) {
        double next = b - f_b * (b - a) / (f_b - f_a);
        a = b;
        f_a = f_b;
        b = next;
        f_b = sil_cents(string, b, advance, SIL_PITCH_FRETS);
    }
    return fabs(f_b) < 1e-6 ? b : SIL_UNKNOWN;
}

static void fill_ratios(const sil_pitch_string *s, double setback, double advance, double *ratios)
{
    open_string open = find_open(s, setback, advance);
    for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
        ratios[n] = ratio_at(s, &open, setback, advance, n);
    }
}

void sil_cents_fill(const sil_pitch_string *string, double setback, double advance, double *cents)
{
    fill_ratios(string, setback, advance, cents);
    for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
        cents[n] = cents_of(cents[n], n);
    }
}

/* Sums of products that a Gauss-Newton step needs. */
typedef struct normal {
    double ss, sa, aa, s, a;
} normal;

/* How far two ratios this close are from each other, cents: their difference over their sum is half
 * the logarithm of one over the other. */
static double cents_between(double ratio, double other)
{
    static const double cents_of_e = 1731.2340490667560889; /* 1200 / ln 2 */
    return 2.0 * cents_of_e * (ratio - other) / (ratio + other);
}

/* Slopes by central differences: the curvature cancels out, and the step is long enough for
 * rounding not to matter. here: the cents at this pair, which are known already. */
static normal gather(const sil_pitch_string *string, double setback, double advance,
                     const double *here)
{
    const double step = 1e-3;
    double longer[SIL_PITCH_FRETS + 1];
    double shorter[SIL_PITCH_FRETS + 1];
    double forth[SIL_PITCH_FRETS + 1];
    double back[SIL_PITCH_FRETS + 1];
    fill_ratios(string, setback + step, advance, longer);
    fill_ratios(string, setback - step, advance, shorter);
    fill_ratios(string, setback, advance + step, forth);
    fill_ratios(string, setback, advance - step, back);
    normal sum = {.ss = 0.0};
    for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
        double by_setback = cents_between(longer[n], shorter[n]) / (2.0 * step);
        double by_advance = cents_between(forth[n], back[n]) / (2.0 * step);
        sum.ss += by_setback * by_setback;
        sum.sa += by_setback * by_advance;
        sum.aa += by_advance * by_advance;
        sum.s += by_setback * here[n];
        sum.a += by_advance * here[n];
    }
    return sum;
}

/* Fills the cents there, and returns the sum of their squares. */
static double sum_of_squares(const sil_pitch_string *string, double setback, double advance,
                             double *cents)
{
    double sum = 0.0;
    sil_cents_fill(string, setback, advance, cents);
    for (int n = 1; n <= SIL_PITCH_FRETS; n++) {
        sum += cents[n] * cents[n];
    }
    return sum;
}

/* Takes the step, or as much of it as helps, since the sum is not quite a parabola where cents
 * remain. False if no part of it helps. cents, squares: those of the pair,
 * before and after; where nothing helps, the cents are lost. */
static bool take_step(const sil_pitch_string *string, double by_setback, double by_advance,
                      sil_best_pair *pair, double *cents, double *squares)
{
    for (int halved = 0; halved < 30; halved++) {
        double setback = pair->setback + by_setback;
        double advance = pair->advance + by_advance;
        double there = sum_of_squares(string, setback, advance, cents);
        if (there < *squares) {
            *squares = there;
            pair->setback = setback;
            pair->advance = advance;
            return true;
        }
        by_setback /= 2.0;
        by_advance /= 2.0;
    }
    return false;
}

/* Gauss-Newton. For a string whose cents can be brought to 0, three or four steps are enough; one
 * made of impossible materials takes more, and every step goes downhill. */
sil_best_pair sil_best_pair_find(const sil_pitch_string *string)
{
    sil_best_pair best = {0.0, 0.0, SIL_UNKNOWN};
    double before = 1.0;
    double cents[SIL_PITCH_FRETS + 1];
    double squares = sum_of_squares(string, best.setback, best.advance, cents);
    for (int step = 0; step < 200; step++) {
        normal sum = gather(string, best.setback, best.advance, cents);
        double det = sum.ss * sum.aa - sum.sa * sum.sa;
        double by_setback = (sum.a * sum.sa - sum.s * sum.aa) / det;
        double by_advance = (sum.s * sum.sa - sum.a * sum.ss) / det;
        if (!sil_known(det)) {
            return (sil_best_pair){SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN};
        }
        /* Such a small step is almost at the bottom, and soon too small for a sum of squares to
         * show, so it is taken without checking. */
        double length = slant(by_setback, by_advance);
        if (length < 1e-4) {
            best.setback += by_setback;
            best.advance += by_advance;
            squares = sum_of_squares(string, best.setback, best.advance, cents);
        } else if (!take_step(string, by_setback, by_advance, &best, cents, &squares)) {
            break;
        }
        if (length * fmin(1.0, length / before) < 1e-8) {
            break; /* judging by the last two steps, the next one would not matter */
        }
        before = length;
    }
    best.rms = sqrt(squares / SIL_PITCH_FRETS);
    return best;
}
