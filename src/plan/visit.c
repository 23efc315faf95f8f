/* SPDX-License-Identifier: MIT */
/* Visits: compares each reading with the plan before it, and learns from it how the neck moves. */
#include "plan.h"

#include <string.h>

/* Relief must have changed by at least this much before the rod ratio is computed from it, mm. The
 * error of the tools is then at most a fifth of the change. */
static const double least_move = 0.1;

/* How closely a first pass can be made without a caliper, mm: common practice, no source. */
static const double pass_kept = 0.05;

/* Two figures that differ by more than this many standard uncertainties do not agree. */
static const double coverage = 3.0;

static double over_twelve(const sil_plan *plan, const sil_fit *fit, int i)
{
    return sil_action(&plan->bench.board, fit, i, 12);
}

/* How much came off the saddle under a string, by the caliper. Known where it was read at both
 * visits and neither a shim nor a new saddle was put in between, nor a peak filed under one string
 * alone. */
static double by_caliper(const sil_plan *before, const sil_plan *now, int i)
{
    const sil_reading *was = sil_plan_reading(before), *is = sil_plan_reading(now);
    const double *z = now->bench.board.saddle_z;
    int last = now->job->string_count - 1;
    sil_saddle_remedy remedy = before->saddle.remedy;
    if (remedy == SIL_SADDLE_SHIM || remedy == SIL_SADDLE_REPLACE || plan_asked_peaks(before)) {
        return SIL_UNKNOWN;
    }
    double treble = was->saddle_height_treble - is->saddle_height_treble;
    double bass = was->saddle_height_bass - is->saddle_height_bass;
    double share = last > 0 ? (z[0] - z[i]) / (z[0] - z[last]) : 0.0;
    return treble + (bass - treble) * share;
}

/* How much the plan before said to take off under a string before measuring again. */
static double as_told(const sil_plan *before, int i)
{
    const sil_saddle_work *work = &before->saddle;
    switch (work->remedy) {
    case SIL_SADDLE_SAND:
        return plan_saddle_pass(before, i);
    case SIL_SADDLE_SHIM:
        return work->dress_first[i] - work->shim;
    case SIL_SADDLE_SCREW:
    case SIL_SADDLE_REPLACE: /* a new one is left a little high at first */
        return before->stages.fit[SIL_NUT].saddle_height[i] -
               before->stages.fit[SIL_SADDLE].saddle_height[i] - work->leave[i];
    default:
        return before->tuning.drop[i];
    }
}

/* Whether the saddle was worked. The caliper decides; without it, work that was in the plan is
 * taken as done. */
static bool saddle_worked(const sil_plan *before, const sil_plan *now)
{
    sil_saddle_remedy remedy = before->saddle.remedy;
    double treble = by_caliper(before, now, 0);
    double bass = by_caliper(before, now, now->job->string_count - 1);
    return sil_known(treble) && sil_known(bass)
               ? sil_above(fmax(fabs(treble), fabs(bass)),
                           before->bench.tools.caliper + now->bench.tools.caliper)
               : (remedy != SIL_SADDLE_NONE && remedy != SIL_SADDLE_WAIT) ||
                     plan_asked_peaks(before);
}

static void lower_saddle(const sil_plan *before, const sil_plan *now, sil_fit *fit)
{
    for (int i = 0; i < now->job->string_count; i++) {
        if (plan_makes_saddle(before)) {
            fit->saddle_height[i] =
                before->stages.fit[SIL_SADDLE].saddle_height[i] + before->saddle.leave[i];
            continue;
        }
        double measured = by_caliper(before, now, i);
        fit->saddle_height[i] -= sil_known(measured) ? measured : as_told(before, i);
    }
}

/* What the slots are expected to be: filed by a pass; or where the plan has them, and what is left on. */
static void work_slots(const sil_plan *before, sil_fit *fit)
{
    sil_fit planned = before->stages.fit[SIL_NUT];
    if (sil_known(fit->bend) && !plan_makes_nut(before)) {
        sil_neck_moves(&before->bench.board, fit->bend, before->bench.rod_ratio, &planned);
    }
    for (int i = 0; i < before->job->string_count; i++) {
        if (plan_cuts_anew(before, i) || before->nut.verdict[i] == SIL_RAISE ||
            (before->nut.verdict[i] == SIL_LEAVE && before->nut.remedy == SIL_NUT_SHIM)) {
            fit->nut_height[i] = planned.nut_height[i] + before->nut.leave[i];
        } else if (before->nut.verdict[i] == SIL_TAKE) {
            fit->nut_height[i] -= before->nut.first_pass[i];
        }
    }
}

static void work_frets(const sil_plan *before, sil_fit *fit)
{
    const sil_stages *stages = &before->stages;
    sil_fretwork work = plan_asked_frets(before);
    if (work == SIL_FRETS_LEAVE) {
        return;
    }
    double rise = work == SIL_FRETS_NEW ? SIL_UNKNOWN : stages->level_depth;
    fit->crowns = stages->fit[SIL_FRETS].crowns;
    for (int i = 0; i < before->job->string_count; i++) {
        fit->nut_height[i] += rise;
        fit->saddle_height[i] += rise;
    }
}

/* Gives the state before the bend that the neck has now; the neck's rod ratio predicts how the
 * heights change with it. A change that may be only error of the tools is ignored, unless the rod
 * was to be turned. */
static void move_neck(const sil_plan *before, const sil_plan *now, double ratio, sil_fit *fit)
{
    double bend = now->stages.fit[SIL_NOW].bend;
    double moved = fabs(sil_relief_now(now) - sil_relief_now(before));
    bool turned = plan_asked_rod(before);
    if (turned && !sil_known(bend)) {
        bend = before->stages.fit[SIL_ROD].bend;
    }
    double errors = before->bench.tools.relief + now->bench.tools.relief;
    if (sil_known(bend) && (turned || sil_above(moved, errors))) {
        sil_neck_moves(&before->bench.board, bend, ratio, fit);
    }
}

static double mean_apart(const sil_plan *plan, const double *values, const double *from)
{
    double sum = 0.0;
    int count = 0;
    for (int i = 0; i < plan->job->string_count; i++) {
        if (sil_known(values[i]) && sil_known(from[i])) {
            sum += values[i] - from[i];
            count++;
        }
    }
    return count ? sum / count : SIL_UNKNOWN;
}

static void actions(const sil_plan *plan, const sil_fit *fit, double out[SIL_STRINGS_MAX])
{
    for (int i = 0; i < plan->job->string_count; i++) {
        out[i] = over_twelve(plan, fit, i);
    }
}

/* Where a plan had work at both nut and saddle, they may have been done at different visits, and
 * the sheet does not say. Without a caliper, the saddle is taken as done if that is nearer to what
 * was read. */
static void foretell_cuts(const sil_plan *before, const sil_plan *now, sil_fit *fit, sil_visit *v)
{
    double with_nut[SIL_STRINGS_MAX] = {0.0};
    sil_nut_remedy nut = before->nut.remedy;
    v->worked[SIL_NUT] = nut != SIL_NUT_NONE && nut != SIL_NUT_WAIT;
    v->worked[SIL_SADDLE] = saddle_worked(before, now);
    if (v->worked[SIL_NUT]) {
        work_slots(before, fit);
    }
    actions(before, fit, with_nut);
    if (v->worked[SIL_SADDLE]) {
        lower_saddle(before, now, fit);
    }
    actions(before, fit, v->predicted);
    bool measured = sil_known(by_caliper(before, now, 0));
    if (v->worked[SIL_NUT] && v->worked[SIL_SADDLE] && !measured &&
        fabs(mean_apart(now, v->read, with_nut)) < fabs(mean_apart(now, v->read, v->predicted))) {
        v->worked[SIL_SADDLE] = false;
        memcpy(v->predicted, with_nut, sizeof with_nut);
    }
}

/* The mean change of action from `was` that a bend of the neck gives when the heights of nut and
 * saddle follow it by `ratio`; with a ratio of 0 only the crown at fret 12 sinks or rises. */
static double bent_by(const sil_plan *before, double bend, double ratio, const double *was)
{
    double bent[SIL_STRINGS_MAX];
    sil_fit fit = before->stages.fit[SIL_NOW];
    sil_neck_moves(&before->bench.board, bend, ratio, &fit);
    actions(before, &fit, bent);
    return mean_apart(before, bent, was);
}

/* Standard uncertainties of the reading less the prediction: the part of each string by itself, and
 * the part that all strings share. */
static void weigh(const sil_plan *before, const sil_plan *now, const sil_visit *v, double *own,
                  double *shared)
{
    const sil_tools *tools = &now->bench.tools, *then = &before->bench.tools;
    double was[SIL_STRINGS_MAX];
    double sag = 0.0, shift = 0.0, moved = fabs(sil_relief_now(now) - sil_relief_now(before));
    actions(before, &before->stages.fit[SIL_NOW], was);
    if (sil_board_bends(&before->bench.board) && sil_known(before->stages.fit[SIL_NOW].bend)) {
        double bend = before->stages.fit[SIL_NOW].bend + sil_bend(&before->bench.board, 1.0);
        sag = bent_by(before, bend, 0.0, was);
        shift = bent_by(before, bend, 1.0, was) - sag;
    }
    double neck = (sag + shift) * sil_rectangular(hypot(tools->relief, then->relief));
    double ratio = sil_known(moved) ? shift * moved * before->bench.rod_spread : 0.0;
    double caliper = fmax(tools->caliper, then->caliper);
    double cut = v->worked[SIL_SADDLE] ? sil_rectangular(fmax(pass_kept, caliper)) : 0.0;
    *own = sil_rectangular(hypot(tools->action, then->action));
    *shared = hypot(hypot(sil_known(neck) ? neck : 0.0, ratio), cut);
}

static void compare(const sil_plan *before, const sil_plan *now, sil_visit *v)
{
    double own, shared;
    int strings = now->job->string_count;
    weigh(before, now, v, &own, &shared);
    v->apart = mean_apart(now, v->read, v->predicted);
    v->unlike = fabs(v->apart) > coverage * hypot(own / sqrt(strings), shared);
    if (before->bench.standing.action_order) {
        v->unlike = false; /* what was read may belong to other strings */
        return;
    }
    for (int i = 0; i < strings; i++) {
        double apart = fabs(v->read[i] - v->predicted[i]);
        v->unlike = v->unlike || apart > coverage * hypot(own, shared);
    }
}

static bool climate_swung(const sil_plan *before, const sil_plan *now)
{
    return fabs(sil_plan_reading(now)->humidity_pct - sil_plan_reading(before)->humidity_pct) >
           PLAN_CLIMATE_SWING_PCT;
}

/* How nut and saddle followed this neck's bend, as a share of what an even bend gives: the change
 * of action read, less what the crown's own sag makes of it, over the share of the shifts. Known
 * only where nothing but the rod was turned. */
static double neck_ratio(const sil_plan *before, const sil_plan *now, const double *was,
                         const sil_visit *v)
{
    double bend = now->stages.fit[SIL_NOW].bend;
    double moved = fabs(sil_relief_now(now) - sil_relief_now(before));
    if (!plan_asked_rod(before) || plan_asked_frets(before) >= SIL_FRETS_LEVEL ||
        !(moved >= least_move - 1e-9) || climate_swung(before, now)) {
        return SIL_UNKNOWN;
    }
    double sag = bent_by(before, bend, 0.0, was);
    return (mean_apart(now, v->read, was) - sag) / (bent_by(before, bend, 1.0, was) - sag);
}

/* The standard uncertainty of that ratio. Both visits' readings have a share in it: the actions,
 * whose mean it is, and the relief, by which the sag and the shifts are reckoned. */
static double neck_spread(const sil_plan *before, const sil_plan *now, const sil_visit *v)
{
    double was[SIL_STRINGS_MAX];
    double bend = now->stages.fit[SIL_NOW].bend;
    double moved = bend - before->stages.fit[SIL_NOW].bend;
    actions(before, &before->stages.fit[SIL_NOW], was);
    double sag = bent_by(before, bend, 0.0, was);
    double shift = bent_by(before, bend, 1.0, was) - sag;
    const sil_tools *tools = &now->bench.tools, *then = &before->bench.tools;
    double action =
        sil_rectangular(hypot(tools->action, then->action)) / sqrt(now->job->string_count);
    /* Each visit may have read the relief over another fret. */
    double relief = sil_rectangular(hypot(sil_bend(&before->bench.board, then->relief),
                                          sil_bend(&now->bench.board, tools->relief))) /
                    moved;
    double u = hypot(action, (sag + v->ratio * shift) * relief) / fabs(shift);
    return fmax(u, SIL_ROD_SPREAD_LEAST);
}

static void foretell(const sil_plan *before, const sil_plan *now, sil_visit *v)
{
    double was[SIL_STRINGS_MAX];
    sil_fit fit = before->stages.fit[SIL_NOW];
    actions(before, &fit, was);
    v->worked[SIL_ROD] = plan_asked_rod(before);
    v->worked[SIL_FRETS] = plan_asked_frets(before) != SIL_FRETS_LEAVE;
    move_neck(before, now, before->bench.rod_ratio, &fit);
    work_frets(before, &fit);
    foretell_cuts(before, now, &fit, v);
    v->ratio = neck_ratio(before, now, was, v);
    double foretold = mean_apart(now, v->predicted, was);
    if (!v->worked[SIL_ROD] && plan_any_worked(v) && fabs(foretold) >= least_move) {
        v->ratio = mean_apart(now, v->read, was) / foretold;
    }
    compare(before, now, v);
}

/* The action as shown; unknown where the string touches. */
static double read_action(const sil_plan *plan, int i)
{
    double action = sil_action_now(plan, i);
    return action > 0.0 ? action : SIL_UNKNOWN;
}

static sil_visit visit_of(const sil_plan *plan)
{
    sil_visit v = {.reading = plan->reading,
                   .relief = sil_relief_now(plan),
                   .ratio = SIL_UNKNOWN,
                   .apart = SIL_UNKNOWN};
    for (int i = 0; i < plan->job->string_count; i++) {
        v.read[i] = read_action(plan, i);
        v.predicted[i] = SIL_UNKNOWN;
    }
    return v;
}

/* Takes the neck's own ratio, but not where these readings know less of it than is known of any
 * neck. */
static void learn(const sil_plan *before, const sil_plan *now, const sil_visit *v, double *ratio,
                  double *spread)
{
    double u = neck_spread(before, now, v);
    if (u < SIL_ROD_SPREAD) {
        *ratio = fmin(fmax(v->ratio, SIL_ROD_RATIO_LEAST), SIL_ROD_RATIO_MOST);
        *spread = u;
    }
}

/* Whether the season has moved the neck or the top since the visit before: nothing was worked, the
 * air is another, and relief or action are not where they were. */
static bool moved_by_season(const sil_plan *before, const sil_plan *now, const sil_visit *v)
{
    const sil_tools *tools = &now->bench.tools;
    double relief = fabs(v[0].relief - v[-1].relief);
    double action = fabs(mean_apart(now, v[0].read, v[-1].read));
    bool moved = sil_above(relief, 2.0 * tools->relief) || sil_above(action, tools->action);
    return !plan_any_worked(v) && climate_swung(before, now) && moved;
}

void plan_visits(sil_plan *plan, sil_plan *other)
{
    const sil_job *job = plan->job;
    int last = job->reading_count - 1;
    int first = last >= SIL_VISITS_MAX ? last - SIL_VISITS_MAX + 1 : 0;
    double ratio = 1.0, spread = SIL_ROD_SPREAD;
    /* The visits are computed in `plan` and `other` in turn, so that the last one is in `plan`. */
    sil_plan *now = (last - first) % 2 == 0 ? plan : other, *before = NULL;
    if (last < 0) {
        plan_lay(job, -1, NULL, ratio, spread, plan);
        plan_work(plan);
        return;
    }
    for (int k = first; k <= last; k++) {
        plan_lay(job, k, before, ratio, spread, now);
        plan_work(now);
        sil_visit *v = &plan->visits[plan->visit_count++];
        *v = visit_of(now);
        if (before) {
            foretell(before, now, v);
        }
        if (before && v->worked[SIL_ROD] && sil_known(v->ratio)) {
            learn(before, now, v, &now->bench.rod_ratio, &now->bench.rod_spread);
            ratio = now->bench.rod_ratio;
            spread = now->bench.rod_spread;
            plan_work(now);
        }
        if (before) {
            now->saddle_jump = plan_jump(before, now);
            now->season = moved_by_season(before, now, v);
            if (plan_finish(before, now) || sil_known(now->saddle_jump) || now->season) {
                plan_work(now);
            }
            plan_move_stacks(before, now);
        }
        before = now;
        now = now == plan ? other : plan;
    }
}

void plan_find_visits(sil_plan *plan)
{
    if (plan->visit_count < 2) {
        return;
    }
    const sil_visit *v = &plan->visits[plan->visit_count - 1];
    double relief = v[0].relief - v[-1].relief;
    bool moved = sil_above(fabs(relief), 2.0 * plan->bench.tools.relief);
    double wanted = plan->bench.targets.relief.aim - v[-1].relief;
    if (v->worked[SIL_ROD] && moved && relief * wanted < 0.0) {
        sil_finding *f = plan_found(plan, SIL_WRONG_WAY, SIL_LEVEL_ACT);
        f->stage = SIL_ROD;
        f->read = relief;
    }
    if (plan_any_worked(v) && v->unlike) {
        plan_found(plan, SIL_OFF_FORECAST, SIL_LEVEL_WATCH)->read = v->apart;
    } else if (!plan_any_worked(v) && (moved || v->unlike || plan->season)) {
        bool holds = sil_withheld_by(&plan->saddle_withheld, SIL_MOVED);
        plan_found(plan, SIL_MOVED, holds ? SIL_LEVEL_ACT : SIL_LEVEL_WATCH)->read =
            mean_apart(plan, v[0].read, v[-1].read);
    }
}
