/* SPDX-License-Identifier: MIT */
/* sillet: from a few readings at the bench to what to cut, in which order and how much.
 * This header takes in the whole library; each part can be taken alone. */
#ifndef SILLET_SILLET_H
#define SILLET_SILLET_H

#include "core/units.h"
#include "version.h"

#include "core/board.h"
#include "core/tension.h"

#include "core/fit.h"

#include "core/nut.h"
#include "core/saddle.h"

#include "core/clearance.h"
#include "core/pitch.h"

#include "drawing.h"
#include "fields.h"
#include "job.h"
#include "plan.h"
#include "report.h"
#include "sheet.h"

#endif
