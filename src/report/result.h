/* SPDX-License-Identifier: MIT */
/* Used inside the report: the parts of the result. */
#ifndef SILLET_REPORT_RESULT_H
#define SILLET_REPORT_RESULT_H

#include "../brief/brief.h"
#include "../json/json.h"

/* How many members an array of them has. */
#define RESULT_COUNT(members) ((int)(sizeof(members) / sizeof *(members)))

/* result_string: adds a row for a string, which starts with its number. */
static inline json_at result_string(json_at array, int string)
{
    json_at row = json_add_object(array);
    json_put_int(row, "number", string + 1);
    return row;
}

/* result_from: puts the date of the visit that a reading was taken over from, or null. */
static inline void result_from(const sil_plan *plan, json_at object, const char *key, int visit)
{
    json_put_word(object, key, visit >= 0 ? plan->job->readings[visit].date : NULL);
}

/* result_nut, result_saddle: put the part. */
void result_nut(const brief *b, json_at root);
void result_saddle(const brief *b, json_at root);

/* result_tuning: puts tune. */
void result_tuning(const brief *b, json_at root);

/* result_tone: puts compensation, clearance, causes and lowest. */
void result_tone(const sil_plan *plan, json_at root);
void result_visits(const sil_plan *plan, json_at root);

/* Put the findings and the steps, with the figures of each sentence. */
void result_findings(const brief *b, json_at root);
void result_steps(const brief *b, json_at root);

#endif
