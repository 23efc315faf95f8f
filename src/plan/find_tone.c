/* SPDX-License-Identifier: MIT */
/* The findings about sound: buzzes, pick strength, strings whose data are missing, and
 * intonation. */
#include "plan.h"

/* With b at fret 12 above this, the formulas for a stiff string are no longer accurate. */
static const double most_stiffness = 0.03;

/* A string closer than this to the board's edge can be pulled off it, mm. A screw seldom travels
 * farther than the second figure, mm. Common practice, no source. */
static const double least_edge = 1.5;
static const double most_travel = 2.5;

/* When the treble and bass sides differ by more than this in how far they are off target, the neck
 * may be twisted, mm. Common practice, no source. */
static const double most_twist = 0.8;

static void found_note(sil_plan *plan, sil_code code, const sil_cause *note, double read,
                       double low)
{
    sil_finding *f = plan_found(plan, code, SIL_LEVEL_WATCH);
    f->string = note->string;
    f->fret = note->fret;
    f->read = read;
    f->low = low;
}

/* The finding for a note that was heard though no reading explains it; false for any other. */
static bool code_of_excuse(sil_cause_name cause, sil_code *code)
{
    switch (cause) {
    case SIL_CAUSE_TECHNIQUE:
        *code = SIL_TECHNIQUE;
        return true;
    case SIL_CAUSE_UNEXPLAINED:
        *code = SIL_UNEXPLAINED;
        return true;
    case SIL_CAUSE_TOO_CLOSE:
        *code = SIL_TOO_CLOSE;
        return true;
    case SIL_CAUSE_RELIEF:
    case SIL_CAUSE_CROWN:
    case SIL_CAUSE_SLOT:
    case SIL_CAUSE_SADDLE:
    case SIL_CAUSE_COMBINED:
    case SIL_CAUSE_ATTACK:
    case SIL_CAUSE_TARGETS:
        return false;
    }
    return false;
}

static void find_heard(sil_plan *plan)
{
    for (int k = 0; k < plan->cause_count; k++) {
        const sil_cause *note = &plan->causes[k];
        sil_code code;
        if (note->heard && code_of_excuse(note->cause, &code)) {
            found_note(plan, code, note, SIL_UNKNOWN, SIL_UNKNOWN);
        }
    }
}

/* Of the notes that no remedy would make clean, the one of this string with the lowest clean force;
 * NULL for none. */
static const sil_cause *weakest(const sil_plan *plan, int string)
{
    const sil_cause *worst = NULL;
    for (int k = 0; k < plan->cause_count; k++) {
        const sil_cause *note = &plan->causes[k];
        if (note->string == string && note->cause == SIL_CAUSE_ATTACK &&
            (!worst || note->clean_force < worst->clean_force)) {
            worst = note;
        }
    }
    return worst;
}

static void find_attack(sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        const sil_cause *note = weakest(plan, i);
        if (note) {
            found_note(plan, SIL_ATTACK, note, note->clean_force, plan->job->attack.force[i]);
        }
    }
}

static void find_strings(sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (!sil_known(plan->pluck.tension[i])) {
            plan_found(plan, SIL_STRING_UNKNOWN, SIL_LEVEL_WATCH)->string = i;
        }
        if (plan->compensation[i].stiffness > most_stiffness) {
            plan_found(plan, SIL_STRING_STIFF, SIL_LEVEL_WATCH)->string = i;
        }
    }
}

/* Strings whose figures stand on a typical core, and can be told. */
static void find_assumed(sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan->core_assumed[i] && sil_known(plan->pluck.tension[i])) {
            plan_found(plan, SIL_CORE_ASSUMED, SIL_LEVEL_FINE)->string = i;
        }
    }
}

/* Where the best contact point is outside the saddle's thickness, filing the saddle cannot reach
 * it, and only moving the slot can. Where nobody measured the present line, it is not spoken of, nor of
 * a string whose cents were read: the tuner says more of it. This is only a note, because by ear it may
 * be good enough (a blind test in the Savart Journal). */
static void find_contacts(sil_plan *plan)
{
    double half = plan->job->saddle.thickness / 2.0;
    /* A floating bridge, or a saddle with screws, is simply moved until the string is in tune. */
    bool slotted = sil_working_in_slot(plan->saddle.working);
    if (!slotted || !plan->job->saddle.setback_read) {
        return;
    }
    half /= cos(plan->bench.board
                    .saddle_slant); /* measured along the string, since the saddle is at an angle */
    for (int i = 0; i < plan->job->string_count; i++) {
        double off = plan->compensation[i].off_slot;
        if (!sil_known(plan->tuning.cents[i]) && sil_above(fabs(off), half)) {
            plan_found_figure(plan, SIL_OFF_SADDLE, SIL_LEVEL_FINE, SIL_SADDLE, i, off,
                              (sil_band){-half, 0.0, half});
        }
    }
}

static void find_edges(sil_plan *plan)
{
    const double edges[] = {plan->job->nut.edge_treble, plan->job->nut.edge_bass};
    int last = plan->job->string_count - 1;
    for (int side = 0; side < 2; side++) {
        if (sil_below(edges[side], least_edge)) {
            plan_found_figure(plan, SIL_EDGE_NARROW, SIL_LEVEL_WATCH, SIL_NUT, side == 0 ? 0 : last,
                              edges[side], (sil_band){least_edge, SIL_UNKNOWN, SIL_UNKNOWN});
        }
    }
}

static void found_far(sil_plan *plan, int string, double turned)
{
    if (sil_above(fabs(turned), most_travel)) {
        plan_found_figure(plan, SIL_ADJUST_LIMIT, SIL_LEVEL_WATCH, SIL_SADDLE, string, fabs(turned),
                          (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, most_travel});
    }
}

/* Where the travel of the screws is not given: they would have to go farther than they usually can.
 */
static void find_travel(sil_plan *plan)
{
    const sil_saddle_work *work = &plan->saddle;
    if (sil_known(plan->job->saddle.travel)) {
        return;
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        found_far(plan, i, work->turns[i] * plan->job->saddle.pitch);
    }
    found_far(plan, -1, fabs(work->post[0]) > fabs(work->post[1]) ? work->post[0] : work->post[1]);
}

static void find_twist(sil_plan *plan)
{
    const sil_bench *bench = &plan->bench;
    const sil_fit *now = &plan->stages.fit[SIL_NOW];
    int last = bench->board.strings - 1;
    double treble = sil_action(&bench->board, now, 0, 12) - bench->targets.action[0].aim;
    double bass = sil_action(&bench->board, now, last, 12) - bench->targets.action[last].aim;
    bool turned = bench->standing.action_order; /* likely the list is, and not the neck */
    if (last > 0 && !turned && sil_above(fabs(treble - bass), most_twist)) {
        plan_found_figure(plan, SIL_TWIST, SIL_LEVEL_WATCH, SIL_NOW, -1, treble - bass,
                          (sil_band){SIL_UNKNOWN, SIL_UNKNOWN, most_twist});
    }
}

void plan_find_tone(sil_plan *plan)
{
    find_twist(plan);
    find_edges(plan);
    find_travel(plan);
    find_heard(plan);
    find_attack(plan);
    find_contacts(plan);
    find_strings(plan);
    find_assumed(plan);
}
