/* SPDX-License-Identifier: MIT */
/* What tests share. cmocka compares doubles as floats, so near() is our own: it passes only if the
 * difference is at most the tolerance, so a NaN fails, and it says place, wanted, got, difference.
 */
#ifndef SILLET_TESTS_NEAR_H
#define SILLET_TESTS_NEAR_H

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static inline void near_at(const char *file, int line, const char *what, double got, double wanted,
                           double tolerance)
{
    if (!(fabs(got - wanted) <= tolerance)) {
        print_error("%s:%d: %s: wanted %.12g, got %.12g, difference %.3g over %.3g\n", file, line,
                    what, wanted, got, got - wanted, tolerance);
        _fail(file, line);
    }
}

#define near(got, wanted, tolerance) near_at(__FILE__, __LINE__, #got, (got), (wanted), (tolerance))

/* Uniform in low..high, the same series on every machine (a 64-bit congruential step, Knuth's
 * MMIX constants). */
static inline double uniform(uint64_t *seed, double low, double high)
{
    *seed = *seed * 6364136223846793005ULL + 1442695040888963407ULL;
    return low + (high - low) * ((double)(*seed >> 11) / 9007199254740992.0);
}

#endif
