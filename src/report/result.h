/* SPDX-License-Identifier: MIT */
/* Within the report: the parts of the result. */
#ifndef SILLET_REPORT_RESULT_H
#define SILLET_REPORT_RESULT_H

#include "../brief/brief.h"
#include "../json/json.h"

/* result_string: a row of a string, its number first. */
json_at result_string(json_at array, int string);

/* result_sound: compensation, clearance, causes, lowest. */
void result_sound(const sil_plan *plan, json_at root);
void result_visits(const sil_plan *plan, json_at root);

/* What was found and what is to be done, with the figures of each sentence. */
void result_findings(const brief *b, json_at root);
void result_steps(const brief *b, json_at root);

#endif
