/* SPDX-License-Identifier: MIT */
/* One reading that does not go with the others. See docs/arithmetic.md, "One odd reading". */
#include <sillet/core/fit.h>
#include <sillet/core/odd.h>
#include <sillet/core/saddle.h>

/* Residuals of a straight line, each divided by sqrt(1 - leverage), so that one at an end, which
 * pulls the line toward itself, counts as one in the middle. Returns the largest. */
static int studentize(int count, const double *z, const double *value, double *scaled)
{
    sil_line line = sil_level_line(count, z, value);
    double mean = 0.0, squares = 0.0;
    int most = 0;
    for (int i = 0; i < count; i++) {
        mean += z[i] / count;
    }
    for (int i = 0; i < count; i++) {
        squares += (z[i] - mean) * (z[i] - mean);
    }
    for (int i = 0; i < count; i++) {
        double away = z[i] - mean;
        double leverage = 1.0 / count + (squares > 0.0 ? away * away / squares : 0.0);
        double left = value[i] - sil_line_at(line, z[i]);
        scaled[i] = left / sqrt(fmax(1.0 - leverage, 1e-9));
        most = fabs(scaled[i]) > fabs(scaled[most]) ? i : most;
    }
    return most;
}

sil_stray sil_stray_from_line(int count, const double *z, const double *value, double limit)
{
    sil_stray stray = {.which = -1, .off = SIL_UNKNOWN};
    double scaled[SIL_STRINGS_MAX], others[SIL_STRINGS_MAX], at[SIL_STRINGS_MAX];
    if (count < 4) {
        return stray;
    }
    int most = studentize(count, z, value, scaled);
    if (!sil_above(fabs(scaled[most]), limit)) {
        return stray;
    }
    int left = 0;
    for (int i = 0; i < count; i++) {
        if (i != most) {
            at[left] = z[i];
            others[left++] = value[i];
        }
    }
    stray.which = most;
    stray.off = value[most] - sil_line_at(sil_level_line(left, at, others), z[most]);
    int next = studentize(left, at, others, scaled);
    stray.curve = count >= 5 && sil_above(fabs(scaled[next]), limit / 2.0);
    return stray;
}

/* Residual standard deviation about the line of least squares. */
static double off_line(int count, const double *z, const double *value)
{
    sil_line line = sil_level_line(count, z, value);
    double squares = 0.0;
    for (int i = 0; i < count; i++) {
        double left = value[i] - sil_line_at(line, z[i]);
        squares += left * left;
    }
    return sqrt(squares / (count - 2));
}

static double off_swapped(int count, const double *z, const double *value, sil_two two)
{
    double swapped[SIL_STRINGS_MAX];
    for (int i = 0; i < count; i++) {
        swapped[i] = value[i == two.first ? two.second : i == two.second ? two.first : i];
    }
    return off_line(count, z, swapped);
}

sil_two sil_swapped(int count, const double *z, const double *value, double u)
{
    static const sil_two none = {-1, -1};
    sil_two found = none;
    double as_is = count >= 5 ? off_line(count, z, value) : SIL_UNKNOWN;
    if (!sil_above(as_is, SIL_SWAPPED_U * u)) {
        return none;
    }
    double most = fmin(SIL_PUT_BACK_U * u, SIL_PUT_BACK_SHARE * as_is);
    for (int i = 0; i < count; i++) {
        for (int k = i + 1; k < count; k++) {
            sil_two two = {i, k};
            if (!sil_below(off_swapped(count, z, value, two), most)) {
                continue;
            }
            if (found.first >= 0) {
                return none;
            }
            found = two;
        }
    }
    return found;
}

double sil_off_the_others(int count, const double *value, int which)
{
    double sorted[SIL_STRINGS_MAX];
    int others = 0;
    for (int i = 0; i < count; i++) {
        if (i == which || !sil_known(value[i])) {
            continue;
        }
        int at = others++;
        for (; at > 0 && sorted[at - 1] > value[i]; at--) {
            sorted[at] = sorted[at - 1];
        }
        sorted[at] = value[i];
    }
    int half = others / 2;
    return others < 3   ? SIL_UNKNOWN
           : others % 2 ? value[which] - sorted[half]
                        : value[which] - (sorted[half - 1] + sorted[half]) / 2.0;
}

double sil_fall_against(int count, const double *z, const double *value, const double *target,
                        double step)
{
    if (count < 4) {
        return SIL_UNKNOWN;
    }
    sil_line is = sil_level_line(count, z, value), wanted = sil_level_line(count, z, target);
    double first = z[0], last = z[count - 1];
    double fall = sil_line_at(is, first) - sil_line_at(is, last);
    double rise = sil_line_at(wanted, last) - sil_line_at(wanted, first);
    for (int i = 1; i < count; i++) {
        if (!(value[i] <= value[i - 1] + step)) {
            return SIL_UNKNOWN;
        }
    }
    return sil_above(fall, 0.0) && sil_above(rise, 0.0) ? fall : SIL_UNKNOWN;
}
