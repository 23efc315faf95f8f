/* SPDX-License-Identifier: MIT */
/* Within the plan: what the steps at nut and saddle say, and what their checks say. */
#ifndef SILLET_PLAN_SAY_H
#define SILLET_PLAN_SAY_H

#include "plan.h"
#include "text.h"

typedef void say(const sil_plan *plan, text *t);

say plan_say_file, plan_say_fill, plan_say_shim_nut, plan_say_new_nut, plan_check_filed,
    plan_check_filled, plan_check_first;
say plan_say_sand, plan_say_dress, plan_say_shim_saddle, plan_say_new_saddle, plan_say_screws,
    plan_say_posts, plan_say_curve, plan_check_sand, plan_check_shimmed, plan_check_action;
say plan_say_zero_fret, plan_check_zero_fret, plan_say_neck_angle, plan_check_neck_angle,
    plan_say_neck_shim, plan_say_neck_reset, plan_check_neck;

say plan_say_neck_bow, plan_say_rod, plan_check_rod, plan_say_find_rod, plan_say_rod_by_ear,
    plan_check_rod_by_ear;

/* What was found between visits; by: the action's mean difference, from what was to be or before.
 */
void plan_say_off_forecast(const sil_plan *plan, double by, text *t);
void plan_say_moved(const sil_plan *plan, double by, text *t);

/* ": read to +-0.02 mm (a dial gauge) a pass could be told" for a cut the tools are too coarse for.
 */
void plan_say_finer(const sil_plan *plan, sil_stage_name stage, text *t);

/* Adds " mm" or " in", for figures told one behind the other. */
void plan_say_unit(text *t);

/* Strings with a verdict, and a figure for each. */
string_list plan_say_strings(const sil_plan *plan, const sil_verdict *verdicts, sil_verdict wanted,
                             const double *value);

/* Strings whose figure is known. */
string_list plan_say_known(const sil_plan *plan, const double *value);

#endif
