/* SPDX-License-Identifier: MIT */
/* sillet: computes from a few readings at the bench what to cut, in which order and how much.
 * This header includes the whole library; each of the headers can also be included alone.
 *
 * Each function has one comment block, always in the same order: what it is for; given; returned;
 * status; accuracy; notes; reference. A line with nothing to say is left out. For all functions:
 * - Lengths are in mm, angles in rad and forces in N, unless the name has another unit.
 * - A figure that is not known is SIL_UNKNOWN, and what is computed from it is unknown too.
 * - Strings are counted from 0. Frets are counted as on the bench, and 0 is the nut.
 * - A pointer that is given must not be NULL, unless its line allows it.
 * - What is returned as const belongs to the object it comes from and is not to be freed.
 * - Calls on different objects may run in different threads. So may calls on the same object, if
 *   all of them take it as const. */
#ifndef SILLET_SILLET_H
#define SILLET_SILLET_H

#include "core/units.h"
#include "status.h"
#include "version.h"

#include "core/board.h"
#include "core/tension.h"

#include "core/bench.h"
#include "core/fit.h"

#include "core/nut.h"
#include "core/odd.h"
#include "core/saddle.h"

#include "core/clearance.h"
#include "core/pitch.h"
#include "core/repeat.h"
#include "core/tune.h"

#include "brief.h"
#include "drawing.h"
#include "fields.h"
#include "job.h"
#include "plan.h"
#include "report.h"
#include "sheet.h"

#endif
