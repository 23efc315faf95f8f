/* SPDX-License-Identifier: MIT */
/* The plan at a glance, for a screen that is filled from data: every text is ready to be shown. */
#ifndef SILLET_REPORT_GLANCE_H
#define SILLET_REPORT_GLANCE_H

#include <sillet/core/units.h>
#include <sillet/plan.h>

/* report_glance: the verdict of each stage, the next step with its large figures, and each reading
 * with its target range, as one JSON object. docs/page.md describes it.
 * Given:    plan  made
 *           unit  of every length shown
 * Returned: a new NUL-terminated text to be freed with free(); NULL if there is no memory
 */
char *report_glance(const sil_plan *plan, sil_unit unit);

#endif
