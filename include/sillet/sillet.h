/* SPDX-License-Identifier: MIT */
/* sillet: from a few readings at the bench to what to cut, in which order and how much.
 * This header takes in the whole library; each part can be taken alone. */
#ifndef SILLET_SILLET_H
#define SILLET_SILLET_H

#include "units.h"
#include "version.h"

#include "board.h"
#include "string.h"

#include "fit.h"

#include "nut.h"
#include "saddle.h"

#include "clearance.h"
#include "pitch.h"

#include "drawing.h"
#include "job.h"
#include "plan.h"
#include "report.h"
#include "sheet.h"

#endif
