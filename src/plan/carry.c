/* SPDX-License-Identifier: MIT */
/* What a visit does not tell, and the visit before did: taken over where nothing has moved it since.
 * See docs/arithmetic.md, "What a visit need not tell". */
#include <stdio.h>
#include <string.h>

#include "plan.h"

/* Common practice, no source: a neck keeps for a month what it reads, in the same air. */
static const int most_days = 30;

/* Days since a day long gone, of a date such as 2026-03-14; -1 of anything else. */
static int day_of(const char *date)
{
    int year, month, day, used = 0;
    if (!date || strlen(date) != 10 ||
        /* Four digits always fit. NOLINTNEXTLINE(cert-err34-c) */
        sscanf(date, "%4d-%2d-%2d%n", &year, &month, &day, &used) != 3 || used != 10 || month < 1 ||
        month > 12 || year < 1) {
        return -1;
    }
    /* The year begins with March, so that the odd day is its last. */
    int months = (month + 9) % 12, years = year - (month < 3);
    return 365 * years + years / 4 - years / 100 + years / 400 + (153 * months + 2) / 5 + day;
}

/* The visit at which something was read that the plan before has; -1 where that is too long ago, or
 * in other air, or where nobody wrote down the day and the humidity. */
static int from(const sil_plan *before, int carried, const sil_plan *now)
{
    int visit = carried >= 0 ? carried : before->reading;
    const sil_reading *was = &now->job->readings[visit];
    int then = day_of(was->date), today = day_of(now->read.date);
    bool near = then >= 0 && today >= then && today - then <= most_days &&
                fabs(now->read.humidity_pct - was->humidity_pct) <= PLAN_CLIMATE_SWING_PCT;
    return near ? visit : -1;
}

/* With other strings, or strings not at pitch, the neck stands otherwise. */
static bool same_strings(const sil_reading *before, const sil_reading *now)
{
    const sil_condition *was = &before->condition, *is = &now->condition;
    bool changed = is->strings != SIL_SOUNDNESS_NOT_GIVEN && is->strings != was->strings;
    return !changed && was->tuned != SIL_UNSOUND && is->tuned != SIL_UNSOUND;
}

/* What was found lifted or loose is put right before anything else, so that only soundness lasts. */
static int carry_soundness(const sil_plan *before, int carried, sil_soundness was,
                           const sil_plan *now, sil_soundness *is)
{
    int visit =
        *is == SIL_SOUNDNESS_NOT_GIVEN && was == SIL_SOUND ? from(before, carried, now) : -1;
    *is = visit >= 0 ? was : *is;
    return visit;
}

static int carry_frets(const sil_plan *before, sil_plan *now)
{
    sil_reading *is = &now->read;
    const sil_reading *was = &before->read;
    bool there = was->crowns_read != SIL_CROWNS_NOT_READ && !before->bench.standing.crowns_odd;
    if (is->crowns_read != SIL_CROWNS_NOT_READ || !there ||
        plan_asked_frets(before) != SIL_FRETS_LEAVE) {
        return -1;
    }
    int visit = from(before, before->carried.frets, now);
    if (visit >= 0) {
        is->crowns_read = was->crowns_read;
        is->crowns = was->crowns;
        is->crown_count = was->crown_count;
    }
    return visit;
}

static bool any_known(const double *values, int count)
{
    for (int i = 0; i < count; i++) {
        if (sil_known(values[i])) {
            return true;
        }
    }
    return false;
}

/* Two figures that are read together, by caliper. */
static int carry_pair(int visit, const double *was, double *is)
{
    bool none = !sil_known(is[0]) && !sil_known(is[1]);
    if (visit < 0 || !none || !sil_known(was[0]) || !sil_known(was[1])) {
        return -1;
    }
    is[0] = was[0];
    is[1] = was[1];
    return visit;
}

/* By ruler at the outer strings or at every one, which the next visit gives all of or none. */
static int carry_stands(int visit, const sil_plan *before, sil_plan *now)
{
    int count = now->job->string_count;
    const double *was = before->read.stands_out;
    if (visit < 0 || any_known(now->read.stands_out, count) || !any_known(was, count)) {
        return -1;
    }
    memcpy(now->read.stands_out, was, sizeof now->read.stands_out);
    return visit;
}

static void carry_saddle(const sil_plan *before, sil_plan *now)
{
    bool worked = before->bench.standing.saddle_odd;
    for (int i = 0; i < now->job->string_count; i++) {
        worked = worked || plan_asked_saddle(before, i);
    }
    int height = worked ? -1 : from(before, before->carried.saddle_height, now);
    bool moved = before->bench.standing.saddle_odd || plan_asked_neck(before);
    int top = moved ? -1 : from(before, before->carried.bridge_top, now);
    double was[] = {before->read.saddle_height_treble, before->read.saddle_height_bass,
                    before->read.bridge_top_treble, before->read.bridge_top_bass};
    double is[] = {now->read.saddle_height_treble, now->read.saddle_height_bass,
                   now->read.bridge_top_treble, now->read.bridge_top_bass};
    now->carried.saddle_height = carry_pair(height, was, is);
    now->carried.stands_out =
        carry_stands(worked ? -1 : from(before, before->carried.stands_out, now), before, now);
    now->carried.bridge_top = carry_pair(top, was + 2, is + 2);
    now->read.saddle_height_treble = is[0];
    now->read.saddle_height_bass = is[1];
    now->read.bridge_top_treble = is[2];
    now->read.bridge_top_bass = is[3];
}

static int carry_relief(const sil_plan *before, sil_plan *now)
{
    const sil_relief_reading *is = &now->read.relief;
    bool given = sil_known(is->gap) || is->tap != SIL_NOT_TAPPED;
    bool stands = same_strings(&before->read, &now->read) && !plan_asked_neck(before) &&
                  !before->bench.standing.relief_odd && sil_known(before->read.relief.gap);
    int visit = given || !stands ? -1 : from(before, before->carried.relief, now);
    if (visit >= 0) {
        now->read.relief = before->read.relief;
    }
    return visit;
}

void plan_carry(const sil_plan *before, sil_plan *now)
{
    plan_carried *carried = &now->carried;
    if (!before || before->reading < 0) {
        return;
    }
    const sil_condition *was = &before->read.condition;
    sil_condition *is = &now->read.condition;
    carried->bridge =
        carry_soundness(before, before->carried.bridge, was->bridge, now, &is->bridge);
    carried->braces =
        carry_soundness(before, before->carried.braces, was->braces, now, &is->braces);
    carried->frets = carry_frets(before, now);
    carried->relief = carry_relief(before, now);
    carry_saddle(before, now);
}

static bool gap_given(const sil_gaps *gaps, int i)
{
    return sil_known(gaps->first[i]) || sil_known(gaps->first_open[i]) ||
           gaps->first_tap[i] != SIL_NOT_TAPPED;
}

static bool any_gap_given(const sil_gaps *gaps, int count)
{
    for (int i = 0; i < count; i++) {
        if (gap_given(gaps, i)) {
            return true;
        }
    }
    return false;
}

/* Rod, frets and other strings move every gap; so does a neck that moved by itself. */
static bool gaps_stand(const sil_plan *before, const sil_plan *now)
{
    const sil_board *board = &now->bench.board;
    double bend = sil_bend_from_relief(board, &now->bench.crowns, &now->bench.relief);
    double moved = fabs(sil_relief(board, bend) - sil_relief_now(before));
    bool still = !sil_board_bends(board) ||
                 moved <= before->bench.tools.relief + now->bench.tools.relief + 1e-9;
    return still && !plan_asked_neck(before) && same_strings(&before->read, &now->read);
}

static void carry_action(const sil_plan *before, sil_plan *now, int i)
{
    const sil_gaps *was = &before->read.gaps;
    sil_gaps *is = &now->read.gaps;
    bool worked = plan_asked_slot(before, i) || plan_asked_saddle(before, i) ||
                  before->bench.standing.action_odd[i];
    bool alike = is->action_at == was->action_at && is->capo == was->capo;
    if (!worked && alike && !sil_known(is->action[i]) && sil_known(was->action[i])) {
        now->carried.action[i] = from(before, before->carried.action[i], now);
    }
    if (now->carried.action[i] >= 0) {
        is->action[i] = was->action[i];
    }
}

static void carry_gap(const sil_plan *before, sil_plan *now, int i)
{
    const sil_gaps *was = &before->read.gaps;
    sil_gaps *is = &now->read.gaps;
    bool saddle = plan_asked_saddle(before, i);
    bool worked = plan_asked_slot(before, i) || before->bench.standing.first_odd[i];
    bool held = is->first_held == was->first_held && !(is->first_held == SIL_HOLD_OPEN && saddle);
    double first = held ? was->first[i] : SIL_UNKNOWN;
    double open = saddle ? SIL_UNKNOWN : was->first_open[i];
    if (!worked && !gap_given(is, i) && (sil_known(first) || sil_known(open))) {
        now->carried.first[i] = from(before, before->carried.first[i], now);
    }
    if (now->carried.first[i] >= 0) {
        is->first[i] = first;
        is->first_open[i] = open;
    }
}

/* What is carried was read with the tools of that day. */
static void coarsen(double *tool, double then)
{
    *tool = then > *tool ? then : *tool;
}

static void keep_standing(sil_plan *now)
{
    const plan_carried *carried = &now->carried;
    const sil_job *job = now->job;
    sil_bench *bench = &now->bench;
    bench->standing.relief_carried = carried->relief >= 0;
    coarsen(&bench->tools.relief, sil_job_tools(job, carried->relief).relief);
    for (int i = 0; i < job->string_count; i++) {
        bench->standing.action_carried[i] = carried->action[i] >= 0;
        bench->standing.first_carried[i] = carried->first[i] >= 0;
        coarsen(&bench->tools.action, sil_job_tools(job, carried->action[i]).action);
        coarsen(&bench->tools.first, sil_job_tools(job, carried->first[i]).first);
    }
}

void plan_carry_gaps(const sil_plan *before, sil_plan *now)
{
    sil_gaps *is = &now->read.gaps;
    int strings = now->job->string_count;
    if (before->reading >= 0 && gaps_stand(before, now)) {
        const sil_gaps *was = &before->read.gaps;
        if (!any_known(is->action, strings)) {
            is->action_at = was->action_at;
            is->capo = was->capo;
            now->read.by_ends[SIL_MARKED_ACTION] = before->read.by_ends[SIL_MARKED_ACTION];
        }
        if (!any_gap_given(is, strings)) {
            is->first_held = was->first_held;
            now->read.by_ends[SIL_MARKED_FIRST] = before->read.by_ends[SIL_MARKED_FIRST];
        }
        for (int i = 0; i < strings; i++) {
            carry_action(before, now, i);
            carry_gap(before, now, i);
        }
        now->bench.gaps = *is;
    }
    keep_standing(now);
}

bool plan_carries(const plan_carried *carried, int visit)
{
    bool any = carried->relief == visit || carried->frets == visit || carried->bridge == visit ||
               carried->braces == visit || carried->saddle_height == visit ||
               carried->bridge_top == visit || carried->stands_out == visit;
    for (int i = 0; i < SIL_STRINGS_MAX; i++) {
        any = any || carried->action[i] == visit || carried->first[i] == visit;
    }
    return any;
}
