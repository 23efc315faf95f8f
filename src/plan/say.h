/* SPDX-License-Identifier: MIT */
/* Within the plan: what the steps at nut and saddle say, and what their checks say. */
#ifndef SILLET_PLAN_SAY_H
#define SILLET_PLAN_SAY_H

#include "plan.h"
#include "text.h"

typedef void say(const sil_plan *plan, text *t);

say say_file, say_fill, say_shim_nut, say_new_nut, check_filed, check_filled, check_first;
say say_sand, say_dress, say_shim_saddle, say_new_saddle, say_screws, check_sand, check_shimmed,
    check_action;

/* Adds " mm" or " in", for figures told one behind the other. */
void say_unit(text *t);

/* Strings with a verdict, and a figure for each. */
string_list say_strings(const sil_plan *plan, const sil_verdict *verdicts, sil_verdict wanted,
                        const double *value);

/* Strings whose figure is known. */
string_list say_known(const sil_plan *plan, const double *value);

#endif
