/* SPDX-License-Identifier: MIT */
/* Whether a value is out of its range, and how sure a reading is. See docs/arithmetic.md, "When is
 * a reading out of its range". */
#include "edge.h"

/* What two figures may differ by through rounding alone, mm. */
static const double rounding = 1e-6;

/* A string left alone at an earlier visit stays so within this many standard uncertainties. */
static const double settled_width = 2.0;

bool sil_below(double value, double low)
{
    return value < low - rounding;
}

bool sil_above(double value, double high)
{
    return value > high + rounding;
}

double core_edge_width(double u, bool settled)
{
    return settled ? settled_width * u : u;
}

sil_side sil_side_of(double value, sil_band range, double width, bool heard)
{
    if (sil_above(value, range.high)) {
        return sil_above(value, range.high + width) ? SIL_OVER : SIL_AT_HIGH;
    }
    if (sil_below(value, range.low)) {
        return heard || sil_below(value, range.low - width) ? SIL_UNDER : SIL_AT_LOW;
    }
    return SIL_WITHIN;
}

bool sil_side_out(sil_side side)
{
    return side == SIL_UNDER || side == SIL_OVER;
}

bool sil_side_edge(sil_side side)
{
    return side == SIL_AT_LOW || side == SIL_AT_HIGH;
}

double sil_rectangular(double half_width)
{
    return half_width / sqrt(3.0);
}

static double widened(double half_width, bool carried)
{
    return sil_rectangular(half_width) * (carried ? SIL_CARRIED_WIDER : 1.0);
}

double sil_relief_u(const sil_bench *bench)
{
    if (bench->fresh.relief_stands) {
        return sil_rectangular(SIL_RELIEF_STANDS);
    }
    bool carried = bench->standing.relief_carried;
    double moved = carried ? sil_rectangular(SIL_CARRIED_RELIEF) : 0.0;
    return hypot(widened(bench->tools.relief, carried), moved);
}

double sil_action_u(const sil_bench *bench, int string)
{
    return widened(bench->tools.action, bench->standing.action_carried[string]);
}

double sil_first_u(const sil_bench *bench, int string)
{
    return widened(bench->tools.first, bench->standing.first_carried[string]);
}
