/* SPDX-License-Identifier: MIT */
/* In tune by the tuner: what is out, what it waits for, and what is done about it. See
 * docs/arithmetic.md, "In tune by the tuner". */
#include "plan.h"

#include <string.h>

/* A line across the strings is known only from readings over at least this share of them. */
static const double least_span = 0.5;

static bool neck_unsettled(const sil_plan *plan)
{
    const sil_stages *stages = &plan->stages;
    return !sil_known(stages->fit[SIL_NOW].bend) || stages->changed[SIL_ROD] ||
           stages->fretwork != SIL_FRETS_LEAVE || plan_relief_at_nought(plan) ||
           plan_rod_unknown(plan) || plan->bench.standing.relief_odd ||
           plan->bench.standing.crowns_odd;
}

static bool nut_unsettled(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan->nut.verdict[i] == SIL_WAIT || plan_zero_fret_high(plan, i) ||
            plan_zero_fret_low(plan, i)) {
            return true;
        }
    }
    return plan->nut.remedy != SIL_NUT_NONE || plan->nut_withheld.count > 0;
}

/* Whether some string is not within a stroke of its height. */
static bool far_off(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        sil_verdict verdict = plan->stages.saddle[i];
        bool moves = verdict == SIL_TAKE || verdict == SIL_RAISE;
        if (verdict == SIL_WAIT || (moves && !(fabs(plan->stages.lower[i]) <= plan_one_stroke))) {
            return true;
        }
    }
    return false;
}

/* Peaks are filed while there is height to spend; on a saddle that has its height, the rest is done
 * already. Between the two it first gets its height, to be copied from. */
static bool saddle_unsettled(const sil_plan *plan)
{
    sil_saddle_remedy remedy = plan->saddle.remedy;
    if (sil_withheld_by(&plan->saddle_withheld, SIL_TUNE_OUT)) {
        return plan->saddle_withheld.count > 1;
    }
    if (sil_working_in_slot(plan->saddle.working)) {
        return remedy != SIL_SADDLE_NONE && remedy != SIL_SADDLE_REPLACE;
    }
    return remedy == SIL_SADDLE_WAIT || remedy == SIL_SADDLE_REPLACE || far_off(plan);
}

static sil_tune_wait what_first(const sil_plan *plan)
{
    return plan_stopped(plan)       ? SIL_TUNE_AFTER_STOP
           : neck_unsettled(plan)   ? SIL_TUNE_AFTER_NECK
           : nut_unsettled(plan)    ? SIL_TUNE_AFTER_NUT
           : saddle_unsettled(plan) ? SIL_TUNE_AFTER_SADDLE
                                    : SIL_TUNE_READY;
}

static void turn_screws(const sil_plan *plan, sil_tuning *t)
{
    t->remedy = SIL_TUNE_SCREWS;
    for (int i = 0; i < plan->job->string_count; i++) {
        if (t->out[i]) {
            t->turns[i] = t->move[i] / plan->job->saddle.intonation_pitch;
            t->left[i] = 0.0;
        }
    }
}

/* The line of least squares through the moves of the strings that were read; level where they are
 * too near each other to show how the bridge should turn. */
static sil_line line_through(const sil_plan *plan, const sil_tuning *t)
{
    const sil_board *board = &plan->bench.board;
    double z[SIL_STRINGS_MAX], move[SIL_STRINGS_MAX], low = (double)INFINITY,
                                                      high = -(double)INFINITY;
    int count = 0;
    for (int i = 0; i < plan->job->string_count; i++) {
        if (sil_known(t->move[i])) {
            z[count] = board->saddle_z[i];
            move[count] = t->move[i];
            low = fmin(low, z[count]);
            high = fmax(high, z[count++]);
        }
    }
    double spread = board->saddle_z[0] - board->saddle_z[plan->job->string_count - 1];
    if (high - low < least_span * spread) {
        memset(z, 0, sizeof z);
    }
    return sil_level_line(count, z, move);
}

static void move_ends(const sil_plan *plan, sil_tuning *t)
{
    const double *z = plan->bench.board.saddle_z;
    int strings = plan->job->string_count;
    sil_line line = line_through(plan, t);
    double treble = sil_line_at(line, z[0]), bass = sil_line_at(line, z[strings - 1]);
    bool moves = fabs(treble) >= plan_least_move || fabs(bass) >= plan_least_move;
    t->remedy = moves ? SIL_TUNE_ENDS : SIL_TUNE_NOTE;
    if (!moves) {
        return;
    }
    t->end[0] = treble;
    t->end[1] = bass;
    for (int i = 0; i < strings; i++) {
        t->left[i] -= sil_tune_cents(plan_open_length(plan, i), plan_to_fret(plan, i),
                                     sil_line_at(line, z[i]));
    }
}

static void file_peak(const sil_plan *plan, sil_tuning *t, int i, double move)
{
    double lean = cos(plan->bench.board.saddle_slant), now = t->peak[i];
    double wanted = plan_peak_wanted(plan, i, move);
    t->filed[i] = true;
    t->peak[i] = plan_peak_held(plan, wanted);
    t->peak_short[i] = wanted - t->peak[i];
    t->left[i] -=
        sil_tune_cents(plan_open_length(plan, i), plan_to_fret(plan, i), (t->peak[i] - now) / lean);
}

/* On this saddle a peak that is as near to its place as the piece lets it come stays where it is. */
static void file_peaks(const sil_plan *plan, bool anew, sil_tuning *t)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        bool worth = sil_known(t->move[i]) && (t->out[i] || fabs(t->move[i]) >= plan_least_move);
        double wanted = plan_peak_wanted(plan, i, t->move[i]);
        double drop = plan_peak_drop(plan, t, i);
        if (anew ? worth : drop > 0.0) {
            file_peak(plan, t, i, t->move[i]);
            t->drop[i] = anew ? 0.0 : drop;
        } else if (t->out[i]) {
            t->peak_short[i] = wanted - plan_peak_held(plan, wanted);
        }
    }
}

static sil_tune_remedy how_filed(const sil_plan *plan, const sil_tuning *t)
{
    if (plan->saddle.remedy == SIL_SADDLE_REPLACE ||
        sil_withheld_by(&plan->saddle_withheld, SIL_TUNE_OUT)) {
        return SIL_TUNE_PEAKS;
    }
    if (!plan_may_file(plan) || !plan_any_peak_moves(plan, t)) {
        return SIL_TUNE_NOTE;
    }
    if (plan_can_file(plan, t)) {
        return SIL_TUNE_PEAKS;
    }
    return plan->saddle.working == SIL_WORKING_BASE ? SIL_TUNE_REPLACE : SIL_TUNE_NOTE;
}

static void fixed(const sil_plan *plan, sil_tuning *t)
{
    t->remedy = how_filed(plan, t);
    bool at_the_face = plan_may_file(plan) && !plan_any_peak_moves(plan, t);
    if (t->remedy != SIL_TUNE_NOTE || at_the_face) {
        file_peaks(plan, plan->saddle.remedy == SIL_SADDLE_REPLACE || t->remedy == SIL_TUNE_REPLACE,
                   t);
    }
}

static void put_right(const sil_plan *plan, sil_tuning *t)
{
    switch (t->by) {
    case SIL_INTONATION_SCREWS:
        turn_screws(plan, t);
        return;
    case SIL_INTONATION_ENDS:
        move_ends(plan, t);
        return;
    case SIL_INTONATION_NOT_GIVEN:
    case SIL_INTONATION_NONE:
        break;
    }
    if (sil_working_in_slot(plan->saddle.working)) {
        fixed(plan, t);
    } else {
        t->remedy = SIL_TUNE_NOTE;
    }
}

void plan_tuning(sil_plan *plan)
{
    sil_tuning *t = &plan->tuning;
    *t = (sil_tuning){.by = sil_job_intonation(plan->job), .end = {SIL_UNKNOWN, SIL_UNKNOWN}};
    plan_read_cents(plan, t);
    for (int i = 0; i < plan->job->string_count; i++) {
        t->turns[i] = t->proposed[i] = SIL_UNKNOWN;
        t->peak[i] =
            sil_working_in_slot(plan->saddle.working) ? sil_job_peak(plan->job, i) : SIL_UNKNOWN;
    }
    if (!plan_any(t->out, plan->job->string_count)) {
        return;
    }
    bool asked = t->by != SIL_INTONATION_NONE || plan_may_file(plan) ||
                 plan->saddle.remedy == SIL_SADDLE_REPLACE;
    t->waits = asked ? what_first(plan) : SIL_TUNE_READY;
    if (t->waits == SIL_TUNE_READY) {
        put_right(plan, t);
    } else {
        t->remedy = SIL_TUNE_WAIT;
    }
}

bool plan_stays_out(const sil_tuning *t, int i)
{
    return t->out[i] &&
           (t->remedy == SIL_TUNE_NOTE || (t->remedy == SIL_TUNE_PEAKS && !t->filed[i]));
}

double plan_tune_move(const sil_tuning *t, int i)
{
    bool moves = t->out[i] && t->remedy != SIL_TUNE_WAIT && !plan_stays_out(t, i);
    double move = t->modelled[i] ? t->proposed[i] : t->move[i];
    return moves || t->filed[i] ? move : SIL_UNKNOWN;
}

bool plan_asked_peak(const sil_plan *plan, int string)
{
    const sil_tuning *t = &plan->tuning;
    return t->remedy == SIL_TUNE_REPLACE ||
           (t->remedy == SIL_TUNE_PEAKS && plan->saddle.remedy != SIL_SADDLE_REPLACE &&
            t->filed[string]);
}

bool plan_asked_peaks(const sil_plan *plan)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan_asked_peak(plan, i)) {
            return true;
        }
    }
    return false;
}

/* Whether the saddle is made to the heights of an old one: then it is the old one's top, too. */
static bool is_copy(const sil_plan *plan)
{
    return plan->bench.fresh.saddle && sil_known(plan->job->saddle.old[0]);
}

void plan_propose_peaks(sil_plan *plan)
{
    sil_tuning *t = &plan->tuning;
    bool new_saddle = plan->saddle.remedy == SIL_SADDLE_REPLACE && t->remedy != SIL_TUNE_WAIT;
    bool slotted = sil_working_in_slot(plan->saddle.working);
    for (int i = 0; i < plan->job->string_count; i++) {
        bool worth = fabs(t->proposed[i]) >= plan_least_move;
        if (worth && slotted && !is_copy(plan) && (new_saddle || t->remedy == SIL_TUNE_REPLACE)) {
            t->modelled[i] = true;
            file_peak(plan, t, i, t->proposed[i]);
            t->remedy = new_saddle ? SIL_TUNE_PEAKS : t->remedy;
        }
    }
}
