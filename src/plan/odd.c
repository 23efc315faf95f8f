/* SPDX-License-Identifier: MIT */
/* Which readings must be taken again before anything is done by them, and which strings were in
 * their range before and are not hunted after. See docs/arithmetic.md, "One odd reading". */
#include "plan.h"

/* Two figures of one reading that are no further apart than this many standard uncertainties. */
static const double same_u = 2.0;

static bool same(double now, double before, double u)
{
    return fabs(now - before) <= same_u * u + 1e-9;
}

/* Whether actions, or gaps at fret 1, were read in the same way at both visits. */
static bool actions_alike(const sil_gaps *now, const sil_gaps *before)
{
    return now->action_at == before->action_at && now->capo == before->capo;
}

/* 0 is "at or under", and no figure. */
static double move_of(double now, double before)
{
    return now > 0.0 && before > 0.0 ? now - before : SIL_UNKNOWN;
}

/* How far a reading moved since the visit before, where nothing was worked that moves it. */
static void moves_of(const sil_plan *before, const sil_plan *now, double *action, double *first)
{
    const sil_gaps *is = &now->read.gaps, *was = &before->read.gaps;
    for (int i = 0; i < now->job->string_count; i++) {
        bool slot = plan_asked_slot(before, i), saddle = plan_asked_saddle(before, i);
        bool stands = actions_alike(is, was) && !slot && !saddle &&
                      before->odd.action[i].why == SIL_NOT_ODD && !before->odd.order.action;
        bool open = is->first_held == SIL_HOLD_OPEN;
        bool held = is->first_held == was->first_held && !slot && !(open && saddle) &&
                    before->odd.first[i].why == SIL_NOT_ODD && !before->odd.order.first;
        stands = stands && now->carried.action[i] < 0;
        held = held && now->carried.first[i] < 0;
        action[i] = stands ? move_of(is->action[i], was->action[i]) : SIL_UNKNOWN;
        first[i] = held ? move_of(is->first[i], was->first[i]) : SIL_UNKNOWN;
    }
}

/* A move that the others share is the season, a joint or the owner, and said elsewhere. */
static void mark_moved(const sil_plan *plan, const double *moves, const double *read, double u,
                       sil_odd_one *odd)
{
    int strings = plan->job->string_count;
    double limit = sil_moved_limit(u);
    for (int i = 0; i < strings; i++) {
        double apart = sil_off_the_others(strings, moves, i);
        bool alone = !sil_known(apart) || sil_above(fabs(apart), limit);
        if (odd[i].why == SIL_NOT_ODD && sil_above(fabs(moves[i]), limit) && alone) {
            odd[i] = (sil_odd_one){.why = SIL_ODD_MOVED, .read = read[i], .off = moves[i]};
        }
    }
}

static void find_moved(const sil_plan *before, sil_plan *now)
{
    double action[SIL_STRINGS_MAX], first[SIL_STRINGS_MAX];
    const sil_tools *tools = &now->bench.tools;
    double humidity = fabs(now->read.humidity_pct - before->read.humidity_pct);
    double relief =
        sil_relief(&now->bench.board, sil_bend_from_relief(&now->bench.board, &now->bench.crowns,
                                                           &now->bench.relief)) -
        sil_relief_now(before);
    bool bent = sil_board_bends(&now->bench.board) && !(fabs(relief) <= 2.0 * tools->relief);
    if (plan_asked_neck(before) || bent || humidity > PLAN_CLIMATE_SWING_PCT) {
        return;
    }
    moves_of(before, now, action, first);
    mark_moved(now, action, now->read.gaps.action, sil_rectangular(tools->action), now->odd.action);
    mark_moved(now, first, now->read.gaps.first, sil_rectangular(tools->first), now->odd.first);
}

/* Whether an odd reading was believed at the visit before and is no odder now, as after a cut that
 * took less than all of it. */
static bool still_believed(const sil_odd_one *now, const sil_odd_one *before, double u)
{
    return before->believed && before->why == now->why &&
           (now->why == SIL_ODD_UNLIKELY || fabs(now->off) <= fabs(before->off) + same_u * u);
}

static void believe(sil_odd_one *now, const sil_odd_one *before, double was, double u)
{
    now->believed = now->why != SIL_NOT_ODD && (now->believed || same(now->read, was, u) ||
                                                (before && still_believed(now, before, u)));
}

/* A reading is believed when it was read again the same at a later visit, or confirmed. */
static void believe_all(const sil_plan *before, sil_plan *now)
{
    const sil_tools *tools = &now->bench.tools;
    const sil_odd *then = before ? &before->odd : NULL;
    const sil_gaps *was = before ? &before->read.gaps : NULL, *is = &now->read.gaps;
    bool alike = was && actions_alike(is, was), held = was && is->first_held == was->first_held;
    sil_odd *odd = &now->odd;
    double sure = sil_rectangular(tools->first);
    for (int i = 0; i < now->job->string_count; i++) {
        bool open = odd->first[i].read == is->first_open[i];
        bool first_again = now->carried.first[i] < 0, action_again = now->carried.action[i] < 0;
        double gap = !was || !first_again ? SIL_UNKNOWN
                     : open               ? was->first_open[i]
                     : held               ? was->first[i]
                                          : SIL_UNKNOWN;
        odd->action[i].believed = odd->first[i].believed = now->read.confirmed[i];
        believe(&odd->action[i], then ? &then->action[i] : NULL,
                alike && action_again ? was->action[i] : SIL_UNKNOWN,
                sil_rectangular(tools->action));
        believe(&odd->first[i], then ? &then->first[i] : NULL, gap, sure);
    }
    believe(&odd->relief, then ? &then->relief : NULL,
            then && now->carried.relief < 0 ? before->read.relief.gap : SIL_UNKNOWN,
            sil_rectangular(tools->relief));
    believe(&odd->crowns, then ? &then->crowns : NULL,
            then && then->crowns.why != SIL_NOT_ODD && now->carried.frets < 0 ? then->crowns.read
                                                                              : SIL_UNKNOWN,
            sure);
    believe(&odd->saddle, then ? &then->saddle : NULL,
            then && then->saddle.why != SIL_NOT_ODD && now->carried.saddle_height < 0 &&
                    now->carried.bridge_top < 0
                ? then->saddle.read
                : SIL_UNKNOWN,
            sil_rectangular(tools->caliper));
}

/* A list is believed as it stands when every string of it was confirmed, or when it was read again
 * and is still the same way round. */
static void believe_order(const sil_plan *before, sil_plan *now)
{
    sil_odd_order *order = &now->odd.order;
    bool again = true, confirmed = true;
    for (int i = 0; i < now->job->string_count; i++) {
        confirmed = confirmed && now->read.confirmed[i];
        again = again && now->carried.action[i] < 0;
    }
    bool doubted = before && before->odd.order.action;
    order->believed =
        order->action && (confirmed || (doubted && (again || before->odd.order.believed)));
}

static bool holds(const sil_odd_one *odd)
{
    return odd->why != SIL_NOT_ODD && !odd->believed;
}

void plan_find_odd(const sil_plan *before, sil_plan *now)
{
    sil_standing *standing = &now->bench.standing;
    const sil_job_saddle *saddle = &now->job->saddle;
    sil_working working = sil_saddle_working(saddle->kind, saddle->pitch);
    sil_job_odd(now->job, &now->read, &now->bench.tools, &now->bench.board, &now->odd);
    if (before) {
        find_moved(before, now);
    }
    believe_all(before, now);
    standing->relief_odd = holds(&now->odd.relief) && sil_board_bends(&now->bench.board);
    standing->crowns_odd = holds(&now->odd.crowns);
    standing->saddle_odd = holds(&now->odd.saddle) && sil_working_in_slot(working);
    believe_order(before, now);
    standing->action_order = now->odd.order.action && !now->odd.order.believed;
    standing->first_order = standing->action_order && now->odd.order.first;
    for (int i = 0; i < now->job->string_count; i++) {
        standing->action_odd[i] = holds(&now->odd.action[i]) || standing->action_order;
        standing->first_odd[i] = holds(&now->odd.first[i]) || standing->first_order;
    }
}

bool plan_any_odd(const sil_plan *plan)
{
    const sil_standing *standing = &plan->bench.standing;
    bool any = standing->relief_odd || standing->crowns_odd || standing->saddle_odd;
    for (int i = 0; i < plan->job->string_count; i++) {
        any = any || standing->action_odd[i] || standing->first_odd[i];
    }
    return any;
}

static void found_odd(sil_plan *plan, const sil_odd_one *odd, sil_stage_name stage, int string)
{
    if (holds(odd)) {
        plan_found_figure(plan, SIL_READING_ODD, SIL_LEVEL_ACT, stage, string, odd->read,
                          (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN});
    }
}

/* A gap under this share of the others' median may have its point in the wrong place. */
static const double least_share = 1.0 / 3.0;

/* A gap that is off the others by too little to hold its slot, but by more than reading explains, is
 * to be made sure of before the slot is worked by it. */
static void find_doubtful(sil_plan *plan, int string)
{
    const sil_gaps *gaps = &plan->bench.gaps;
    sil_verdict verdict = plan->stages.nut[string];
    double gap = gaps->first[string];
    double off = sil_off_the_others(plan->job->string_count, gaps->first, string);
    if (!(gap > 0.0)) {
        return;
    }
    bool far = sil_above(fabs(off), SIL_ODD_U * sil_rectangular(plan->bench.tools.first));
    bool small = verdict == SIL_RAISE && gap < least_share * (gap - off);
    bool rattles = verdict == SIL_RAISE && plan->bench.standing.buzz_open[string];
    bool works = (verdict == SIL_TAKE || verdict == SIL_RAISE) && !rattles;
    if (gaps->first_held != SIL_HOLD_OPEN && works && !plan->read.confirmed[string] &&
        (far || small)) {
        sil_finding *f = plan_found(plan, SIL_READING_ODD, SIL_LEVEL_WATCH);
        f->stage = SIL_NUT;
        f->string = string;
        f->read = gap;
    }
}

void plan_find_odd_ones(sil_plan *plan)
{
    const sil_odd *odd = &plan->odd;
    if (plan->bench.standing.relief_odd) {
        found_odd(plan, &odd->relief, SIL_ROD, -1);
    }
    found_odd(plan, &odd->crowns, SIL_FRETS, -1);
    for (int i = 0; i < plan->job->string_count; i++) {
        found_odd(plan, &odd->first[i], SIL_NUT, i);
        find_doubtful(plan, i);
    }
    if (plan->bench.standing.action_order) {
        plan_found_figure(plan, SIL_READING_ORDER, SIL_LEVEL_ACT, SIL_SADDLE, -1, odd->order.fall,
                          (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN});
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        found_odd(plan, &odd->action[i], SIL_SADDLE, i);
    }
    if (plan->bench.standing.saddle_odd) {
        found_odd(plan, &odd->saddle, SIL_SADDLE, -1);
    }
    if (odd->curve >= 0) {
        plan_found_figure(plan, SIL_SADDLE_CURVE, SIL_LEVEL_WATCH, SIL_SADDLE, odd->curve,
                          odd->curve_off, (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN});
    }
}

/* Whether a string was in its range by what was read at that visit; an edge counts as in. */
static bool was_in(double value, sil_band range, double u, bool heard)
{
    return sil_known(value) && !sil_side_out(sil_side_of(value, range, u, heard));
}

void plan_settle(const sil_plan *before, sil_plan *now)
{
    const sil_bench *was = &before->bench;
    sil_standing *standing = &now->bench.standing;
    if (plan_asked_neck(before)) {
        return; /* rod and frets move everything */
    }
    for (int i = 0; i < now->job->string_count; i++) {
        bool slot = plan_asked_slot(before, i), saddle = plan_asked_saddle(before, i);
        bool first = was_in(
            sil_first_gap(&was->board, &before->stages.fit[SIL_NOW], i, was->targets.first_held),
            was->targets.first[i], sil_first_u(was, i), was->standing.buzz_open[i]);
        bool action = was_in(sil_action_now(before, i), was->targets.action[i],
                             sil_action_u(was, i), was->standing.buzz[i]);
        standing->first_settled[i] = !slot && (first || was->standing.first_settled[i]);
        standing->action_settled[i] =
            !slot && !saddle && (action || was->standing.action_settled[i]);
    }
}
