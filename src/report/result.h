/* SPDX-License-Identifier: MIT */
/* Within the report: the parts of the result. */
#ifndef SILLET_REPORT_RESULT_H
#define SILLET_REPORT_RESULT_H

#include "../brief/brief.h"
#include "../json/json.h"

/* result_string: a row of a string, its number first. */
static inline json_at result_string(json_at array, int string)
{
    json_at row = json_add_object(array);
    json_put_int(row, "number", string + 1);
    return row;
}

/* result_tone: compensation, clearance, causes, lowest. */
void result_tone(const sil_plan *plan, json_at root);
void result_visits(const sil_plan *plan, json_at root);

/* What was found and what is to be done, with the figures of each sentence. */
void result_findings(const brief *b, json_at root);
void result_steps(const brief *b, json_at root);

#endif
