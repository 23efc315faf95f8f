/* SPDX-License-Identifier: MIT */
/* Parts that are made from a blank: from which visit to which, and what they are made to where the
 * strings could not be on. See docs/arithmetic.md, "A new nut" and "A new saddle". */
#include "plan.h"

static bool any_known(const double *values, int count)
{
    for (int i = 0; i < count; i++) {
        if (sil_known(values[i])) {
            return true;
        }
    }
    return false;
}

/* Whether this visit itself read the part: the gaps at fret 1, or the action. */
static bool read_today(const sil_plan *now, bool nut)
{
    if (now->reading < 0) {
        return false;
    }
    const sil_job *job = now->job;
    const sil_gaps *gaps = &job->readings[now->reading].gaps;
    return nut ? any_known(gaps->first, job->string_count) ||
                     any_known(gaps->first_open, job->string_count)
               : any_known(gaps->action, job->string_count);
}

/* A part is made at one visit and read at a later one; from then on it is like any other. */
static plan_made moved_on(plan_made before, bool asked, bool read)
{
    plan_made made = before == PLAN_NOT_MADE && asked ? PLAN_MADE : before;
    return made == PLAN_MADE && read ? PLAN_READ_BACK : made;
}

static void find_made(const sil_plan *before, sil_plan *now)
{
    const sil_make *make = &now->job->make;
    now->nut_made = now->saddle_made = PLAN_NOT_MADE;
    if (before) {
        now->nut_made = moved_on(before->nut_made, plan_makes_nut(before), read_today(now, true));
        now->saddle_made =
            moved_on(before->saddle_made, plan_makes_saddle(before), read_today(now, false));
    }
    now->bench.fresh.nut = make->nut && now->nut_made != PLAN_READ_BACK;
    now->bench.fresh.nut_made = now->nut_made == PLAN_READ_BACK;
    now->bench.fresh.saddle = make->saddle && now->saddle_made != PLAN_READ_BACK;
}

/* Relief that no string at pitch showed: its target stands for it, as a straightedge would read it.
 */
static void let_relief_stand(sil_plan *now)
{
    sil_bench *bench = &now->bench;
    const sil_reading *reading = sil_plan_reading(now);
    bool slack = reading && reading->condition.tuned == SIL_UNSOUND;
    bool read = sil_known(bench->relief.gap) && !slack;
    bench->fresh.relief_stands = plan_makes(now) && !read && sil_board_bends(&bench->board);
    if (bench->fresh.relief_stands) {
        bench->relief = (sil_relief_reading){.gap = bench->targets.relief.aim,
                                             .over = bench->board.relief_at,
                                             .low = 1,
                                             .high = bench->board.join,
                                             .string = -1,
                                             .straightedge = true};
    }
}

static void copy_nut(sil_plan *now)
{
    const sil_job_nut *nut = &now->job->nut;
    sil_fresh *fresh = &now->bench.fresh;
    fresh->copied = fresh->nut && sil_known(nut->floors[0]);
    for (int i = 0; i < now->job->string_count; i++) {
        fresh->copy_over[i] = nut->floors[i] - nut->seat_to_board;
    }
}

void plan_begin_fresh(const sil_plan *before, sil_plan *now)
{
    find_made(before, now);
    let_relief_stand(now);
    copy_nut(now);
}

/* What was read of a part that is made anew is not asked to be read again. */
void plan_clear_odd(sil_plan *now)
{
    sil_standing *standing = &now->bench.standing;
    standing->relief_odd = standing->relief_odd && !now->bench.fresh.relief_stands;
    standing->first_order = standing->first_order && !now->bench.fresh.nut;
    for (int i = 0; i < now->job->string_count; i++) {
        standing->first_odd[i] = standing->first_odd[i] && !now->bench.fresh.nut;
    }
}

bool plan_makes(const sil_plan *plan)
{
    return plan->bench.fresh.nut || plan->bench.fresh.saddle;
}

bool plan_makes_nut(const sil_plan *plan)
{
    return plan->bench.fresh.nut && plan->nut.remedy == SIL_NUT_REPLACE;
}

bool plan_cuts_anew(const sil_plan *plan, int string)
{
    const sil_nut_work *nut = &plan->nut;
    return nut->remedy == SIL_NUT_REPLACE ||
           (nut->remedy == SIL_NUT_FILL && nut->verdict[string] == SIL_RAISE);
}

bool plan_makes_saddle(const sil_plan *plan)
{
    return plan->bench.fresh.saddle && plan->saddle.remedy == SIL_SADDLE_REPLACE;
}

bool plan_gap_read(const sil_plan *plan, int string)
{
    return sil_first_settles(&plan->bench.gaps, string);
}

bool plan_nut_stands(const sil_plan *plan)
{
    bool stands = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        stands = stands || !plan_gap_read(plan, i);
    }
    return stands && plan->bench.fresh.saddle && !plan->bench.fresh.nut;
}

/* Worn spots in fret 1 that the slots of a new nut are not cut down to. */
static void find_dents(sil_plan *plan)
{
    const sil_fit *fit = &plan->stages.fit[SIL_FRETS];
    bool made = plan->bench.fresh.nut || plan->bench.fresh.nut_made;
    for (int i = 0; i < plan->job->string_count && made; i++) {
        if (sil_below(fit->crowns.off[i][1], 0.0)) {
            plan_found_figure(plan, SIL_NUT_OVER_DENT, SIL_LEVEL_WATCH, SIL_NUT, i,
                              -fit->crowns.off[i][1],
                              (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, SIL_UNKNOWN});
        }
    }
}

void plan_find_fresh(sil_plan *plan)
{
    const sil_fresh *fresh = &plan->bench.fresh;
    if (fresh->relief_stands) {
        sil_finding *f = plan_found(plan, SIL_RELIEF_AS_TARGET, SIL_LEVEL_WATCH);
        f->stage = SIL_ROD;
        f->read = plan->bench.targets.relief.aim;
    }
    if (fresh->nut) {
        plan_found(plan, SIL_MAKE_NUT, SIL_LEVEL_ACT)->stage = SIL_NUT;
    }
    find_dents(plan);
    if (plan_nut_stands(plan)) {
        plan_found(plan, SIL_NUT_AS_TARGET, SIL_LEVEL_WATCH)->stage = SIL_NUT;
    }
    if (fresh->saddle) {
        plan_found(plan, SIL_MAKE_SADDLE, SIL_LEVEL_ACT)->stage = SIL_SADDLE;
    }
}

static void step(sil_plan *plan, bool when, sil_stage_name stage, sil_act act)
{
    if (when && plan->step_count < SIL_STEPS_MAX) {
        plan->steps[plan->step_count++] = (sil_step){stage, act};
    }
}

void plan_order_new_nut(sil_plan *plan)
{
    static const sil_act acts[] = {SIL_ACT_FIT_NUT, SIL_ACT_MARK_NUT, SIL_ACT_CUT_NUT,
                                   SIL_ACT_SHAPE_NUT};
    for (size_t k = 0; k < sizeof acts / sizeof *acts; k++) {
        step(plan, plan->nut.remedy == SIL_NUT_REPLACE, SIL_NUT, acts[k]);
    }
}

void plan_order_new_saddle(sil_plan *plan)
{
    bool waits = plan->bench.fresh.saddle && plan->saddle.remedy == SIL_SADDLE_WAIT &&
                 plan->saddle_withheld.count == 0;
    step(plan, waits, SIL_SADDLE, SIL_ACT_MEASURE_BRIDGE);
    step(plan, plan_makes_saddle(plan), SIL_SADDLE, SIL_ACT_FIT_BLANK);
    step(plan, plan_makes_saddle(plan), SIL_SADDLE, SIL_ACT_SHAPE_SADDLE);
}
