/* SPDX-License-Identifier: MIT */
/* The feelers to file down to: how far stiffness may lift a string over them, and how they follow
 * the gap that was read after the last pass. See docs/arithmetic.md, "The nut". */
#include "plan.h"

/* Less than this is too little to be a pass, mm. */
static const double least_pass = 0.01;

/* How many standard uncertainties of a stack a pass may come out off it and still have been filed
 * to it. */
static const double coverage = 3.0;

/* Not told of a string whose core is assumed. So it goes by the cores of the job, in which there is
 * none: they are found only for what is shown. */
double plan_stack_bend(const sil_plan *plan, int i)
{
    const sil_job *job = plan->job;
    const sil_string *string = &job->strings[i];
    double stiff = sil_stiff_diameter(string->material, string->gauge, string->core);
    double modulus = sil_known(string->modulus_gpa) ? string->modulus_gpa
                                                    : job->materials[string->material].modulus_gpa;
    double square = stiff * stiff, mass;
    /* A round wire: I = pi d^4/64; 1 GPa is 1000 N/mm2. */
    const sil_slot_bend bend = {.stiffness_n_mm2 = modulus * 1000.0 * 3.14159265358979323846 *
                                                   square * square / 64.0,
                                .tension = plan_tension(plan, i, string->core, &mass),
                                .length = job->nut.thickness / cos(plan->bench.board.nut_slant),
                                .fall_deg = plan->nut.fall_angle_deg,
                                .behind_deg = job->instrument.head_angle_deg};
    return sil_slot_lift(&bend);
}

void plan_bend_stacks(sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        plan->nut.stack_bend[i] =
            sil_known(plan->nut.stack[i]) ? plan_stack_bend(plan, i) : SIL_UNKNOWN;
    }
}

/* How far a slot has come down since the plan before, by its gap with the string held: that does
 * not move with saddle or rod. Unknown on a board without a second fret. */
static double came_down(const sil_plan *before, const sil_plan *now, int i)
{
    const sil_board *board = &now->bench.board;
    sil_hold hold = board->frets >= 3 ? SIL_HOLD_3 : SIL_HOLD_2;
    double share = board->fret_x[i][1] / board->fret_x[i][hold];
    double was = sil_first_gap(&before->bench.board, &before->stages.fit[SIL_NOW], i, hold);
    double is = sil_first_gap(board, &now->stages.fit[SIL_NOW], i, hold);
    return (was - is) / (1.0 - share);
}

static bool is_worked(sil_verdict verdict)
{
    return verdict == SIL_TAKE || verdict == SIL_RAISE;
}

/* Whether a pass at this slot was called for, down to a stack of feelers. */
static bool was_to_file(const sil_plan *before, int i)
{
    sil_nut_remedy remedy = before->nut.remedy;
    return (remedy == SIL_NUT_FILE || remedy == SIL_NUT_FILL) &&
           before->nut.verdict[i] == SIL_TAKE && before->nut.first_pass[i] >= least_pass;
}

/* Takes the stack over from the one that a slot was filed to before, and what was left on it then, where
 * stiffness and the errors can account for what lies between; from now on its gap counts. came: the slot
 * came down as it was to. */
static void follow(const sil_plan *before, sil_plan *now, bool came, int i)
{
    sil_nut_work *nut = &now->nut;
    double filed_to = before->nut.stack[i] + plan_slot_left(before, i);
    double moved = filed_to - plan_slot_goal(now, i);
    double shift = moved - nut->stack[i], lift = plan_stack_bend(now, i);
    double reach = (sil_known(lift) ? lift : 0.0) + coverage * nut->stack_u[i];
    if (!is_worked(nut->verdict[i]) || !(fabs(shift) <= reach)) {
        return;
    }
    if (came) {
        nut->stack[i] = moved;
        nut->floor[i] += shift;
        nut->stack_u[i] = now->stages.deepen_u[i];
        nut->stack_moved[i] = true;
    } else {
        nut->stack_stays[i] = nut->verdict[i] == SIL_TAKE && lift >= least_pass;
    }
}

void plan_move_stacks(const sil_plan *before, sil_plan *now)
{
    sil_nut_work *nut = &now->nut;
    for (int i = 0; i < now->job->string_count; i++) {
        if (!plan_cuts_anew(before, i)) {
            if (was_to_file(before, i)) {
                bool came = came_down(before, now, i) > before->nut.first_pass[i] / 2.0;
                follow(before, now, came, i);
            }
        } else if (!plan_makes_nut(before) || now->nut_made == PLAN_READ_BACK) {
            follow(before, now, true, i); /* its gap shows that it was cut */
        }
    }
    double top = nut->top;
    nut->top = SIL_UNKNOWN;
    for (int i = 0; sil_known(top) && i < now->job->string_count; i++) {
        nut->top = fmax(nut->top, nut->floor[i] + nut->depth[i]);
    }
}
