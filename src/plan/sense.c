/* SPDX-License-Identifier: MIT */
/* What a part can be, in one table: docs/arithmetic.md, "What a part can be". A figure outside of it is
 * never shown. It is found, its part waits, and what it came from is read again. */
#include "plan.h"

/* A height under this is none, mm. */
static const double nothing = 1e-3;

/* The floor of a slot stands over the board by the fret height and the gap: more than this is neither,
 * mm. Common practice, no source. */
static const double most_over_board = 4.0;

/* Each figure with the range it can be in, mm; a share has no unit. An end that is not known limits
 * nothing. Over: 0 itself is not possible. */
static plan_range range_of(plan_figure figure)
{
    switch (figure) {
    case PLAN_FLOOR:
    case PLAN_PRESENT:
    case PLAN_HEIGHT:
        return (plan_range){nothing, SIL_UNKNOWN};
    case PLAN_STACK:
        return (plan_range){nothing, most_over_board};
    case PLAN_STANDS:
    case PLAN_OUT:
    case PLAN_ACTION:
        return (plan_range){0.0, SIL_UNKNOWN};
    case PLAN_SHARE:
        return (plan_range){0.0, 1.0};
    case PLAN_POSSIBLE:
        break;
    }
    return (plan_range){SIL_UNKNOWN, SIL_UNKNOWN};
}

/* Whether a figure is one that no part can have. Of what is not known nothing is said. */
bool plan_cannot_be(plan_figure figure, double value)
{
    plan_range range = range_of(figure);
    return sil_below(value, range.low) || sil_above(value, range.high);
}

/* Notes the first figure of a string that cannot be. */
static void look(plan_sense *sense, plan_figure figure, double value)
{
    if (sense->figure == PLAN_POSSIBLE && plan_cannot_be(figure, value)) {
        *sense = (plan_sense){figure, value, range_of(figure)};
    }
}

static void look_at_string(sil_plan *plan, int i)
{
    const sil_nut_work *nut = &plan->nut;
    const sil_saddle_work *saddle = &plan->saddle;
    plan_sense *slot = &plan->nut_sense[i], *seat = &plan->saddle_sense[i];
    *slot = *seat = (plan_sense){.figure = PLAN_POSSIBLE};
    look(slot, PLAN_STACK, nut->stack[i]);
    look(slot, PLAN_FLOOR, nut->floor[i]);
    look(seat, PLAN_PRESENT, saddle->present[i]);
    if (sil_working_in_slot(saddle->working)) {
        look(seat, PLAN_STANDS, saddle->stands[i]);
    }
    look(seat, PLAN_HEIGHT, saddle->height[i]);
    if (sil_working_in_slot(saddle->working)) {
        look(seat, PLAN_OUT, saddle->protrusion[i]);
        look(seat, PLAN_SHARE, saddle->in_slot[i]);
    }
}

static void forget_slot(sil_nut_work *nut, int i)
{
    nut->floor[i] = nut->stack[i] = nut->stack_u[i] = nut->depth[i] = SIL_UNKNOWN;
    nut->top = SIL_UNKNOWN;
}

static void forget_seat(sil_saddle_work *saddle, int i)
{
    saddle->present[i] = saddle->stands[i] = saddle->height[i] = SIL_UNKNOWN;
    saddle->protrusion[i] = saddle->in_slot[i] = saddle->break_angle_deg[i] = SIL_UNKNOWN;
    saddle->goal[i] = saddle->room[i] = SIL_UNKNOWN;
    saddle->top_radius = SIL_UNKNOWN;
}

static bool any_cannot(const sil_plan *plan, const plan_sense *sense)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (sense[i].figure != PLAN_POSSIBLE) {
            return true;
        }
    }
    return false;
}

/* The forecast of a saddle that is stopped, since it would come to stand under the bridge's top: there
 * it is level with it. */
static void stop_at_top(sil_saddle_work *saddle, int i)
{
    if (saddle->stops && plan_cannot_be(PLAN_OUT, saddle->protrusion[i])) {
        saddle->goal[i] = saddle->goal[i] > saddle->stands[i] ? saddle->stands[i] : saddle->goal[i];
        saddle->height[i] -= saddle->protrusion[i];
        saddle->protrusion[i] = 0.0;
        saddle->in_slot[i] = 1.0;
        saddle->break_angle_deg[i] = SIL_UNKNOWN;
    }
}

void plan_look_for_sense(sil_plan *plan, bool *nut, bool *saddle)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        stop_at_top(&plan->saddle, i);
        look_at_string(plan, i);
    }
    *nut = any_cannot(plan, plan->nut_sense);
    *saddle = any_cannot(plan, plan->saddle_sense);
}

void plan_forget_impossible(sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan->nut_sense[i].figure != PLAN_POSSIBLE) {
            forget_slot(&plan->nut, i);
        }
        if (plan->saddle_sense[i].figure != PLAN_POSSIBLE) {
            forget_seat(&plan->saddle, i);
        }
    }
}

double plan_action_over(const sil_plan *plan, const sil_fit *fit, int string)
{
    double action = sil_action(&plan->bench.board, fit, string, 12);
    bool under = !sil_known(action) || plan_cannot_be(PLAN_ACTION, action);
    return under ? SIL_UNKNOWN : fmax(action, 0.0);
}

double plan_first_over(const sil_plan *plan, const sil_fit *fit, int string, sil_hold hold)
{
    double gap = sil_first_gap(&plan->bench.board, fit, string, hold);
    return gap < 0.0 ? 0.0 : gap;
}
