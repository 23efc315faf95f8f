/* SPDX-License-Identifier: MIT */
/* In tune by the tuner: what is out, what it waits for, and what is done about it. See
 * docs/arithmetic.md, "In tune by the tuner". */
#include "plan.h"

#include <string.h>

/* Intonation is set once the saddle is no farther from its height than this, mm; and a bridge is
 * not moved, nor a peak filed, by less than the second. Common practice, no source. */
static const double one_stroke = 0.15;
static const double least_move = 0.1;

/* A line across the strings is known only from readings over at least this share of them. */
static const double least_span = 0.5;

static double open_length(const sil_plan *plan, int i)
{
    return plan->bench.board.saddle_x[i] - plan->job->nut.advance;
}

static double to_fret(const sil_plan *plan, int i)
{
    return plan->bench.board.fret_x[i][12] - plan->job->nut.advance;
}

static bool cents_hold(const sil_reading *reading)
{
    return reading->condition.strings != SIL_UNSOUND && reading->condition.tuned != SIL_UNSOUND;
}

/* Cents are read at fret 12, and judged like any reading: out only past the target by more than the
 * tuner may be wrong by. */
static void read_cents(const sil_plan *plan, sil_tuning *t)
{
    const sil_reading *reading = sil_plan_reading(plan);
    double within = plan->job->targets.cents;
    double u = sil_rectangular(plan->job->tools.cents);
    for (int i = 0; i < plan->job->string_count; i++) {
        bool read = reading && sil_known(reading->cents[i]) && plan->bench.board.frets >= 12;
        t->unused = t->unused || (read && !cents_hold(reading));
        t->cents[i] = read && cents_hold(reading) ? reading->cents[i] : SIL_UNKNOWN;
        t->move[i] = sil_tune_move(open_length(plan, i), to_fret(plan, i), t->cents[i]);
        t->left[i] = t->cents[i];
        t->side[i] = sil_side_of(t->cents[i], (sil_band){-within, 0.0, within}, u, false);
        t->out[i] = t->side[i] == SIL_OVER || t->side[i] == SIL_UNDER;
    }
}

static bool any(const bool *marked, int count)
{
    for (int i = 0; i < count; i++) {
        if (marked[i]) {
            return true;
        }
    }
    return false;
}

/* Whether this saddle's top may be filed for intonation: somebody asked for it. */
static bool may_file(const sil_plan *plan)
{
    return sil_working_in_slot(plan->saddle.working) && plan->job->cents_wanted &&
           sil_job_intonation(plan->job) == SIL_INTONATION_NONE;
}

/* Whether every string that is out stands so high over its target that its peak can be filed to
 * another place on the back it has. */
static bool has_bone(const sil_plan *plan, const sil_tuning *t)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (t->out[i] && !(plan->stages.lower[i] >= sil_back_drop(t->move[i]))) {
            return false;
        }
    }
    return true;
}

static double greatest_pass(const sil_plan *plan)
{
    double most = 0.0;
    for (int i = 0; i < plan->job->string_count; i++) {
        most = fmax(most, plan->saddle.first_pass[i]);
    }
    return most;
}

/* Whether the saddle is far over its target, and today's pass off it leaves the height that the peaks
 * need: cents read so high are not yet those of the finished action. */
static bool pass_first(const sil_plan *plan, const sil_tuning *t)
{
    bool far = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        double drop = t->out[i] ? sil_back_drop(t->move[i]) : 0.0;
        far = far || plan->stages.lower[i] > drop + one_stroke;
        if (t->out[i] && !(plan->stages.lower[i] - plan->saddle.first_pass[i] >= drop)) {
            return false;
        }
    }
    return far && sil_above(greatest_pass(plan), 0.0);
}

bool plan_peaks_first(const sil_plan *plan)
{
    sil_tuning t = {0};
    read_cents(plan, &t);
    return may_file(plan) && plan->saddle.remedy == SIL_SADDLE_SAND &&
           any(t.out, plan->job->string_count) && has_bone(plan, &t) && !pass_first(plan, &t);
}

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
        if (plan->nut.verdict[i] == SIL_WAIT || plan_zero_fret_high(plan, i)) {
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
        if (verdict == SIL_WAIT || (moves && !(fabs(plan->stages.lower[i]) <= one_stroke))) {
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
    double z[SIL_STRINGS_MAX], move[SIL_STRINGS_MAX], low = INFINITY, high = -INFINITY;
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
    bool moves = fabs(treble) >= least_move || fabs(bass) >= least_move;
    t->remedy = moves ? SIL_TUNE_ENDS : SIL_TUNE_NOTE;
    if (!moves) {
        return;
    }
    t->end[0] = treble;
    t->end[1] = bass;
    for (int i = 0; i < strings; i++) {
        t->left[i] -=
            sil_tune_cents(open_length(plan, i), to_fret(plan, i), sil_line_at(line, z[i]));
    }
}

/* The peak goes where the move puts it, but no nearer to a face than the margin. */
static void file_peak(const sil_plan *plan, sil_tuning *t, int i)
{
    double lean = cos(plan->bench.board.saddle_slant), now = t->peak[i];
    double wanted = now + t->move[i] * lean;
    double least = SIL_PEAK_MARGIN, most = plan->job->saddle.thickness - SIL_PEAK_MARGIN;
    double held = fmin(fmax(wanted, least), fmax(most, least));
    t->filed[i] = true;
    t->peak[i] = held;
    t->peak_short[i] = wanted - held;
    t->left[i] -= sil_tune_cents(open_length(plan, i), to_fret(plan, i), (held - now) / lean);
}

static void file_peaks(const sil_plan *plan, bool anew, sil_tuning *t)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        bool worth = sil_known(t->move[i]) && (t->out[i] || fabs(t->move[i]) >= least_move);
        if (anew ? worth : t->out[i]) {
            double now = t->peak[i];
            file_peak(plan, t, i);
            t->drop[i] = anew ? 0.0 : sil_back_drop(t->peak[i] - now);
        }
    }
}

/* Whether every string would still be in its range with its peak filed on a saddle that has its
 * height and cannot be replaced. */
static bool can_spare(const sil_plan *plan, const sil_tuning *t)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        double down = sil_back_drop(t->move[i]) * sil_leverage(&plan->bench.board, i);
        if (t->out[i] && !(sil_action_now(plan, i) - down >= plan->bench.targets.action[i].low)) {
            return false;
        }
    }
    return true;
}

static void fixed(const sil_plan *plan, sil_tuning *t)
{
    bool anew = plan->saddle.remedy == SIL_SADDLE_REPLACE;
    bool held = sil_withheld_by(&plan->saddle_withheld, SIL_TUNE_OUT);
    if (anew || held) {
        t->remedy = SIL_TUNE_PEAKS;
    } else if (!may_file(plan)) {
        t->remedy = SIL_TUNE_NOTE;
    } else if (plan->saddle.working == SIL_WORKING_BASE) {
        t->remedy = has_bone(plan, t) ? SIL_TUNE_PEAKS : SIL_TUNE_REPLACE;
    } else {
        t->remedy = has_bone(plan, t) || can_spare(plan, t) ? SIL_TUNE_PEAKS : SIL_TUNE_NOTE;
    }
    if (t->remedy != SIL_TUNE_NOTE) {
        file_peaks(plan, anew || t->remedy == SIL_TUNE_REPLACE, t);
    }
}

static void remedy(const sil_plan *plan, sil_tuning *t)
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
    read_cents(plan, t);
    for (int i = 0; i < plan->job->string_count; i++) {
        t->turns[i] = t->proposed[i] = SIL_UNKNOWN;
        t->peak[i] =
            sil_working_in_slot(plan->saddle.working) ? sil_job_peak(plan->job, i) : SIL_UNKNOWN;
    }
    if (!any(t->out, plan->job->string_count)) {
        return;
    }
    bool asked =
        t->by != SIL_INTONATION_NONE || may_file(plan) || plan->saddle.remedy == SIL_SADDLE_REPLACE;
    t->waits = asked ? what_first(plan) : SIL_TUNE_READY;
    if (t->waits == SIL_TUNE_READY) {
        remedy(plan, t);
    } else {
        t->remedy = SIL_TUNE_WAIT;
    }
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
