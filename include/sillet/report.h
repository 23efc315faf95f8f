/* SPDX-License-Identifier: MIT */
/* A plan to read and a result for programs. */
#ifndef SILLET_REPORT_H
#define SILLET_REPORT_H

#include "plan.h"

#ifdef __cplusplus
extern "C" {
#endif

/* sil_report_text: the bench plan as text, lines of at most 100 columns.
 * sil_report_json: the result as one JSON document in mm, N, deg, Hz, cents, kg/m.
 * Given:    plan  made
 *           unit  what a person is told lengths in; in JSON only inside the texts
 *           name  the sheet's name, for the heading
 * Returned: a new NUL-terminated UTF-8 text to be freed with free(); NULL out of memory
 */
char *sil_report_text(const sil_plan *plan, sil_unit unit, const char *name);
char *sil_report_json(const sil_plan *plan, sil_unit unit);

/* sil_report_line: one sheet of many as JSON, {"sheet": .., "exit": .., "result": ..}.
 * Given:    sheet  its name; bytes that are no UTF-8 come out as U+FFFD
 *           code   the exit code it stands for
 *           plan   NULL: there is none, the result is null
 * Returned: as sil_report_json
 */
char *sil_report_line(const char *sheet, int code, const sil_plan *plan, sil_unit unit);

#ifdef __cplusplus
}
#endif
#endif
