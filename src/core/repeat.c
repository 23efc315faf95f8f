/* SPDX-License-Identifier: MIT */
/* What a tool proves to read to. */
#include <sillet/core/repeat.h>

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>

#include <sillet/core/units.h>

static const double robust = 1.4826; /* median absolute deviation to standard deviation, normal */
static const double strays = 4.0;
static const double inch = 25.4;

/* A value written with three decimals of an inch is a multiple of its step only within the last
 * one. */
static const double alike = 1e-6;

static bool is_multiple(double value, double step)
{
    double times = value / step;
    return fabs(times - round(times)) * step <= alike;
}

static bool is_step(const double *values, int count, double step)
{
    int multiples = 0;
    for (int i = 0; i < count; i++) {
        multiples += is_multiple(values[i], step);
    }
    return count > 0 && 10 * multiples >= 9 * count;
}

double sil_readings_step(const double *values, int count)
{
    /* from coarse to fine; of two alike, rulers in mm first */
    static const double mm[] = {1.0, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001};
    static const double inches[] = {1.0 / 16, 1.0 / 32, 1.0 / 64, 0.01,
                                    0.005,    0.002,    0.001,    0.0005};
    double found = 0.0;
    for (size_t i = 0; i < sizeof mm / sizeof *mm; i++) {
        found = mm[i] > found && is_step(values, count, mm[i]) ? mm[i] : found;
    }
    for (size_t i = 0; i < sizeof inches / sizeof *inches; i++) {
        double step = inches[i] * inch;
        found = step > found && is_step(values, count, step) ? step : found;
    }
    return found;
}

static int by_size(const void *left, const void *right)
{
    double a = *(const double *)left, b = *(const double *)right;
    return (a > b) - (a < b);
}

static double middle(const double *sorted, int count)
{
    return (sorted[(count - 1) / 2] + sorted[count / 2]) / 2.0;
}

/* The median absolute deviation of sorted values, without room for the deviations: the smallest
 * distance that half of them lie within. */
static double median_deviation(const double *sorted, int count, double median)
{
    int low = 0, high = count - 1;
    double outer = 0.0, inner = 0.0;
    for (int taken = 0; taken <= count / 2; taken++) { /* the farther end is taken off each time */
        bool below = median - sorted[low] > sorted[high] - median;
        inner = outer;
        outer = below ? median - sorted[low++] : sorted[high--] - median;
    }
    return count % 2 == 1 ? outer : (outer + inner) / 2.0;
}

/* The standard deviation of the values within a reach of the median; *count: how many those are. */
static double deviation_within(const double *sorted, int *count, double median, double reach)
{
    double sum = 0.0, squares = 0.0;
    int within = 0;
    for (int i = 0; i < *count; i++) {
        double from = sorted[i] - median;
        if (fabs(from) <= reach) {
            sum += from;
            squares += from * from;
            within++;
        }
    }
    *count = within;
    return within > 1 ? sqrt(fmax(0.0, squares - sum * sum / within) / (within - 1)) : SIL_UNKNOWN;
}

void sil_repeat_find(double *difference, int count, double graduation, double stated,
                     sil_repeat *repeat)
{
    *repeat = (sil_repeat){0, SIL_UNKNOWN};
    if (count < SIL_PAIRS_LEAST) {
        return;
    }
    qsort(difference, (size_t)count, sizeof *difference, by_size);
    double median = middle(difference, count);
    double sigma =
        fmax(robust * median_deviation(difference, count, median), graduation / sqrt(6.0));
    int kept = count;
    double deviation = deviation_within(difference, &kept, median, strays * sigma);
    repeat->dropped = count - kept;
    repeat->u = fmax(deviation / sqrt(2.0), fmax(graduation / sqrt(12.0), stated / 2.0));
}
