/* SPDX-License-Identifier: MIT */
/* Used inside the core: the width of a range's edges. */
#ifndef SILLET_CORE_EDGE_H
#define SILLET_CORE_EDGE_H

#include <sillet/core/fit.h>

/* How far past an edge still counts as in the range, mm. u: standard uncertainty of what is judged.
 * settled: it was in range before and not worked since, so that it is not hunted after. */
double core_edge_width(double u, bool settled);

#endif
