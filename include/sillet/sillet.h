/* SPDX-License-Identifier: MIT */
/* sillet: from a few readings at the bench to what to cut, in which order and how much.
 * This header takes in the whole library; each part can be taken alone.
 *
 * Each function has one block, always in the same order: what it is for; given; returned; status;
 * accuracy; notes; reference. A line that would say nothing is left out. What holds for all:
 * lengths are in mm, angles in rad and forces in N unless the name has another unit; a figure that
 * nobody knows is SIL_UNKNOWN, and what follows from it is unknown too; strings count from 0,
 * frets as on the bench with 0 for the nut; a pointer given is not NULL unless its line says so;
 * what is returned as const belongs to what it was asked of. Calls on different objects may run in
 * different threads, and calls that only look (const) on the same one. */
#ifndef SILLET_SILLET_H
#define SILLET_SILLET_H

#include "core/units.h"
#include "status.h"
#include "version.h"

#include "core/board.h"
#include "core/tension.h"

#include "core/fit.h"

#include "core/nut.h"
#include "core/saddle.h"

#include "core/clearance.h"
#include "core/pitch.h"

#include "brief.h"
#include "drawing.h"
#include "fields.h"
#include "job.h"
#include "plan.h"
#include "report.h"
#include "sheet.h"

#endif
