/* SPDX-License-Identifier: MIT */
/* What is to be done at each string, at the nut and at the saddle. See docs/arithmetic.md, "The order
 * of work" and "How sure". */
#include "verdict.h"

#include "clean.h"
#include "edge.h"
#include "height.h"
#include "shim.h"

double core_wanted_slot(const sil_bench *bench, const sil_fit *fit, int i)
{
    const sil_targets *targets = &bench->targets;
    double gap = targets->first[i].aim + core_dent_left(bench, fit, i);
    if (targets->first_held != SIL_HOLD_OPEN) {
        return core_nut_from_held(&bench->board, fit, i, targets->first_held, gap);
    }
    return core_nut_from_open(&bench->board, fit, i, gap, 12, targets->action[i].aim);
}

double core_wanted_nut(const sil_bench *bench, const sil_stages *stages, const sil_fit *fit, int i)
{
    return bench->fresh.nut ? core_new_nut_height(bench, fit, stages->level_depth, i)
                            : core_wanted_slot(bench, fit, i);
}

double core_wanted_saddle(const sil_bench *bench, const sil_fit *fit, int i)
{
    return core_saddle_from_action(&bench->board, fit, i, 12, bench->targets.action[i].aim,
                                   fit->nut_height[i]);
}

bool core_is_worked(sil_verdict verdict)
{
    return verdict == SIL_TAKE || verdict == SIL_RAISE;
}

static sil_verdict judge(double value, sil_side side, double cut, bool odd)
{
    if (!sil_known(value) || !sil_known(cut) || odd) {
        return SIL_WAIT;
    }
    if (side == SIL_OVER && cut > 0.0) {
        return SIL_TAKE;
    }
    return side == SIL_UNDER && cut < 0.0 ? SIL_RAISE : SIL_LEAVE;
}

/* A string on its fret needs no figure to be put right, once nothing else can be why it lies there. */
static bool lies_on_fret(const sil_bench *bench, int i)
{
    return bench->looked_at && sil_first_touches(&bench->gaps, i);
}

/* The action that the string is to have once all is done: its present one, or its target where that is
 * too high, not known, or about to be made anew. */
static double action_to_be(const sil_bench *bench, const sil_fit *fit, int i)
{
    sil_band range = bench->targets.action[i];
    double action = sil_action(&bench->board, fit, i, 12);
    bool anew = bench->fresh.saddle || (bench->fresh.nut && !sil_known(action));
    return anew || sil_above(action, range.high) ? range.aim : action;
}

/* The gap at fret 1 of a slot at a height, with that action. Of a slot that is there, the string is
 * where the saddle is now. */
static double gap_of_slot(const sil_bench *bench, const sil_fit *before, double height,
                          double action, int i)
{
    sil_fit fit = *before;
    fit.nut_height[i] = height;
    if (bench->fresh.nut) {
        fit.saddle_height[i] = core_saddle_from_action(&bench->board, &fit, i, 12, action, height);
    }
    return sil_slot_gap(bench, &fit, i);
}

/* Where a slot to be filed is to end: at its target, or where its open string still rings clean, if
 * that is in range. */
static double clean_goal(const sil_bench *bench, sil_stages *stages, int i, double wanted)
{
    const sil_fit *before = &stages->fit[SIL_FRETS];
    double present = bench->fresh.nut ? SIL_UNKNOWN : before->nut_height[i];
    double action = action_to_be(bench, before, i);
    double clean = core_clean_nut(bench, before, action, i);
    if (!sil_below(wanted, clean)) {
        return wanted;
    }
    stages->slot_clean[i] = gap_of_slot(bench, before, clean, action, i);
    if (sil_above(stages->slot_clean[i], bench->targets.first[i].high)) {
        stages->slot_hold[i] =
            fmax(0.0, present - clean); /* of a new nut 0: it is to be chosen first */
        return wanted;
    }
    return fmin(present, clean);
}

static sil_verdict judge_slot(const sil_bench *bench, const sil_stages *stages, double gap, int i)
{
    const sil_standing *standing = &bench->standing;
    if (bench->fresh.nut) {
        return SIL_TAKE;
    }
    if (bench->fresh.saddle && !sil_first_settles(&bench->gaps, i)) {
        return SIL_WAIT; /* its target only stands for its gap */
    }
    sil_verdict verdict =
        judge(gap, stages->first_side[i], stages->deepen[i], standing->first_odd[i]);
    verdict = stages->finish_slot[i] ? SIL_TAKE : verdict;
    /* Under a zero fret the nut slots only guide. */
    return bench->zero_fret && verdict != SIL_WAIT ? SIL_LEAVE : verdict;
}

/* Keeps a slot that is to be filed from its string's own buzz. */
static void keep_clean(const sil_bench *bench, sil_stages *stages, double wanted, int i)
{
    stages->nut_raised[i] = 0.0;
    if (stages->nut[i] == SIL_TAKE && !bench->fresh.copied) {
        stages->nut_raised[i] = clean_goal(bench, stages, i, wanted) - wanted;
        bool goes = bench->fresh.nut || sil_above(stages->deepen[i], stages->nut_raised[i]);
        stages->nut[i] = goes ? SIL_TAKE : SIL_LEAVE;
    }
}

void core_judge_nut(const sil_bench *bench, sil_stages *stages)
{
    const sil_standing *standing = &bench->standing;
    sil_fit *fit = &stages->fit[SIL_NUT];
    for (int i = 0; i < bench->board.strings; i++) {
        double gap = sil_slot_gap(bench, fit, i);
        double wanted = core_wanted_nut(bench, stages, fit, i);
        stages->deepen[i] = fit->nut_height[i] - wanted;
        double width = core_edge_width(stages->first_u[i], standing->first_settled[i]);
        stages->first_side[i] =
            sil_side_of(gap, bench->targets.first[i], width, standing->buzz_open[i]);
        stages->nut[i] = judge_slot(bench, stages, gap, i);
        stages->on_fret[i] = stages->nut[i] == SIL_WAIT && !standing->first_odd[i] &&
                             lies_on_fret(bench, i) && sil_known(wanted);
        if (stages->on_fret[i]) {
            stages->nut[i] = bench->zero_fret ? SIL_LEAVE : SIL_RAISE;
        }
        keep_clean(bench, stages, wanted, i);
        if (core_is_worked(stages->nut[i])) {
            fit->nut_height[i] = wanted + stages->nut_raised[i];
            stages->changed[SIL_NUT] = true;
        }
    }
    core_put_shim(bench, stages);
}

void core_judge_saddle(const sil_bench *bench, sil_stages *stages)
{
    const sil_standing *standing = &bench->standing;
    sil_fit *fit = &stages->fit[SIL_SADDLE];
    for (int i = 0; i < bench->board.strings; i++) {
        double action = sil_action(&bench->board, fit, i, 12);
        double wanted = core_wanted_saddle(bench, fit, i);
        stages->lower[i] = fit->saddle_height[i] - wanted;
        /* The action at its aim is what `lower` brings, so both are equally sure. */
        stages->action_u[i] = stages->lower_u[i] * sil_leverage(&bench->board, i);
        double width = core_edge_width(stages->action_u[i], standing->action_settled[i]);
        sil_side side = sil_side_of(action, bench->targets.action[i], width, standing->buzz[i]);
        stages->action_side[i] = side;
        stages->saddle[i] = judge(action, side, stages->lower[i],
                                  standing->action_odd[i] || standing->first_odd[i]);
        stages->saddle[i] = stages->finish_saddle[i] ? SIL_TAKE : stages->saddle[i];
        if (bench->fresh.saddle) {
            stages->saddle[i] = sil_known(wanted) ? SIL_TAKE : SIL_WAIT;
        }
        if (core_is_worked(stages->saddle[i])) {
            fit->saddle_height[i] = wanted;
            stages->changed[SIL_SADDLE] = true;
        }
    }
}
