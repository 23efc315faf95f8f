/* SPDX-License-Identifier: MIT */
/* The plan at a glance, for a screen that is filled from data: every text is ready to be shown. */
#ifndef SILLET_REPORT_GLANCE_H
#define SILLET_REPORT_GLANCE_H

#include "../brief/brief.h"

/* report_glance:   the verdict of each stage, the next step with its large figures, and each reading
 *                  with its target range, as one JSON object. docs/page.md describes it.
 * report_of_brief: the result, as sil_report_json writes it.
 * Given:    b  made, of a whole plan
 * Returned: a new NUL-terminated text to be freed with free(); NULL if there is no memory
 */
char *report_glance(const brief *b);
char *report_of_brief(const brief *b);

#endif
