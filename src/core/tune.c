/* SPDX-License-Identifier: MIT */
/* In tune by the tuner. See docs/arithmetic.md, "In tune by the tuner". */
#include <sillet/core/tune.h>

static const double pi = 3.14159265358979323846;

/* With k the ratio of the two lengths that is wanted, open + move = k (open + move - fret), which is
 * of the first degree in the move. */
double sil_tune_move(double open, double fret, double cents)
{
    double ratio = open / (open - fret) * exp2(-cents / 1200.0);
    return ratio > 1.0 ? ratio * fret / (ratio - 1.0) - open : SIL_UNKNOWN;
}

double sil_tune_cents(double open, double fret, double move)
{
    double was = open / (open - fret);
    double is = (open + move) / (open + move - fret);
    return 1200.0 * log2(was / is);
}

double sil_back_drop(double move)
{
    return fabs(move) * tan(SIL_BACK_SLOPE_DEG * pi / 180.0);
}
