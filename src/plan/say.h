/* SPDX-License-Identifier: MIT */
/* Within the plan: what the steps at nut and saddle say, and what their checks say. */
#ifndef SILLET_PLAN_SAY_H
#define SILLET_PLAN_SAY_H

#include "plan.h"
#include "text.h"

typedef void say(const sil_plan *plan, text *t);

say say_file, say_fill, say_shim_nut, say_new_nut, check_filed, check_filled, check_first;
say say_sand, say_dress, say_shim_saddle, say_new_saddle, say_screws, say_posts, say_curve,
    check_sand, check_shimmed, check_action;
say say_zero_fret, check_zero_fret, say_neck_angle, check_neck_angle, say_neck_shim, say_neck_reset,
    check_neck;

say say_neck_bow, say_rod, check_rod, say_find_rod, say_rod_by_ear, check_rod_by_ear;

/* What was found between visits; by: the action's mean difference, from what was to be or before.
 */
void say_off_forecast(const sil_plan *plan, double by, text *t);
void say_moved(const sil_plan *plan, double by, text *t);

/* ": read to +-0.02 mm (a dial gauge) a pass could be told" for a cut the tools are too coarse for.
 */
void say_finer(const sil_plan *plan, sil_stage_name stage, text *t);

/* Adds " mm" or " in", for figures told one behind the other. */
void say_unit(text *t);

/* Strings with a verdict, and a figure for each. */
string_list say_strings(const sil_plan *plan, const sil_verdict *verdicts, sil_verdict wanted,
                        const double *value);

/* Strings whose figure is known. */
string_list say_known(const sil_plan *plan, const double *value);

#endif
