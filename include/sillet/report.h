/* SPDX-License-Identifier: MIT */
/* The bench plan as text to read, and as a JSON result for programs. */
#ifndef SILLET_REPORT_H
#define SILLET_REPORT_H

#include "plan.h"

#ifdef __cplusplus
extern "C" {
#endif

/* sil_report_screen: writes the bench plan on one screen: each stage's verdict, what to do next, and
 * the rest in a line each; at most 45 lines of 80 columns for an ordinary six-string.
 * sil_report_text: writes the whole bench plan as text, in lines of at most 100 columns.
 * sil_report_json: writes the result as one JSON document, in mm, N, deg, Hz, cents and kg/m.
 * Given:    plan  made
 *           unit  of the lengths in sentences; the other figures in JSON are always in mm
 *           name  the sheet's name, for the heading
 *           coloured  with colours of a terminal, which say nothing that the words do not
 * Returned: a new NUL-terminated UTF-8 text to be freed with free(); NULL if there is no memory
 */
char *sil_report_screen(const sil_plan *plan, sil_unit unit, const char *name, bool coloured);
char *sil_report_text(const sil_plan *plan, sil_unit unit, const char *name);
char *sil_report_json(const sil_plan *plan, sil_unit unit);

/* sil_report_line: writes one of several sheets as a line of JSON,
 * {"sheet": .., "exit": .., "result": ..}.
 * Given:    sheet  its name; bytes that are not UTF-8 are written as U+FFFD
 *           code   the exit code for this sheet
 *           plan   made; NULL where there is none, and the result is then null
 *           unit   as sil_report_json
 * Returned: as sil_report_json
 */
char *sil_report_line(const char *sheet, int code, const sil_plan *plan, sil_unit unit);

#ifdef __cplusplus
}
#endif
#endif
