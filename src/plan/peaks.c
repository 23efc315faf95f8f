/* SPDX-License-Identifier: MIT */
/* Cents as they were read, and the peaks of a saddle's top: where a string should leave it, where the
 * piece lets it, and whether that comes before the saddle's last pass. See docs/arithmetic.md, "In tune
 * by the tuner". */
#include "plan.h"

/* The saddle is near its height when it is no farther off than this, mm: common practice, no source.
 */
const double plan_one_stroke = 0.15;

/* A bridge is not moved, nor a peak put elsewhere, by less than this, mm. Common practice, no source.
 */
const double plan_least_move = 0.1;

double plan_open_length(const sil_plan *plan, int i)
{
    return plan->bench.board.saddle_x[i] - plan->job->nut.advance;
}

double plan_to_fret(const sil_plan *plan, int i)
{
    return plan->bench.board.fret_x[i][12] - plan->job->nut.advance;
}

static bool cents_hold(const sil_reading *reading)
{
    return reading->condition.strings != SIL_UNSOUND && reading->condition.tuned != SIL_UNSOUND;
}

/* Cents are read at fret 12, and judged like any reading: out only past the target by more than the
 * tuner may be wrong by. */
void plan_read_cents(const sil_plan *plan, sil_tuning *t)
{
    const sil_reading *reading = sil_plan_reading(plan);
    double within = plan->job->targets.cents;
    double u = sil_rectangular(plan->job->tools.cents);
    for (int i = 0; i < plan->job->string_count; i++) {
        bool read = reading && sil_known(reading->cents[i]) && plan->bench.board.frets >= 12;
        t->unused = t->unused || (read && !cents_hold(reading));
        t->cents[i] = read && cents_hold(reading) ? reading->cents[i] : SIL_UNKNOWN;
        t->move[i] = sil_tune_move(plan_open_length(plan, i), plan_to_fret(plan, i), t->cents[i]);
        t->left[i] = t->cents[i];
        t->side[i] = sil_side_of(t->cents[i], (sil_band){-within, 0.0, within}, u, false);
        t->out[i] = sil_side_out(t->side[i]);
    }
}

bool plan_any(const bool *marked, int count)
{
    for (int i = 0; i < count; i++) {
        if (marked[i]) {
            return true;
        }
    }
    return false;
}

/* Whether this saddle's top may be filed for intonation: somebody asked for it. */
bool plan_may_file(const sil_plan *plan)
{
    return sil_working_in_slot(plan->saddle.working) && plan->job->cents_wanted &&
           sil_job_intonation(plan->job) == SIL_INTONATION_NONE;
}

/* Where a string's peak should go, from the face toward the nut, and as near to that as the piece lets
 * it come. */
double plan_peak_wanted(const sil_plan *plan, int i, double move)
{
    return sil_job_peak(plan->job, i) + move * cos(plan->bench.board.saddle_slant);
}

double plan_peak_held(const sil_plan *plan, double wanted)
{
    double thickness = plan->job->saddle.thickness;
    double least = fmin(SIL_PEAK_MARGIN, thickness / 2.0); /* within even the thinnest */
    return fmin(fmax(wanted, least), thickness - least);
}

/* The height that filing a string's peak takes: 0 where it stays. */
double plan_peak_drop(const sil_plan *plan, const sil_tuning *t, int i)
{
    double held = plan_peak_held(plan, plan_peak_wanted(plan, i, t->move[i]));
    double by = held - sil_job_peak(plan->job, i);
    return t->out[i] && fabs(by) >= plan_least_move ? sil_back_drop(by) : 0.0;
}

bool plan_any_peak_moves(const sil_plan *plan, const sil_tuning *t)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        if (plan_peak_drop(plan, t, i) > 0.0) {
            return true;
        }
    }
    return false;
}

/* The most that may come off the top under a string before it stands out too little or buzzes under the
 * pick; unknown where neither limits it. */
static double most_filed(const sil_plan *plan, int i)
{
    return fmin(plan->saddle.room[i], plan->saddle.to_clean[i]);
}

/* The height over its goal that a string has for its peak. */
static double to_spend(const sil_plan *plan, int i)
{
    bool lowered = plan->stages.saddle[i] == SIL_TAKE;
    double over = lowered ? plan->saddle.goal[i] : plan->stages.lower[i];
    return sil_known(over) ? fmin(over, most_filed(plan, i)) : SIL_UNKNOWN;
}

/* Whether every string whose peak is to be filed stands so high over its goal that this can be done on
 * the back it has. */
static bool has_bone(const sil_plan *plan, const sil_tuning *t)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        double drop = plan_peak_drop(plan, t, i);
        if (drop > 0.0 && !(to_spend(plan, i) >= drop)) {
            return false;
        }
    }
    return true;
}

/* Whether every string would still be in its range, ring clean and stand out with its peak filed on a
 * saddle that has its height and cannot be replaced. */
static bool can_spare(const sil_plan *plan, const sil_tuning *t)
{
    for (int i = 0; i < plan->job->string_count; i++) {
        double drop = plan_peak_drop(plan, t, i);
        double down = drop * sil_leverage(&plan->bench.board, i);
        bool in_range = sil_action_now(plan, i) - down >= plan->bench.targets.action[i].low;
        if (drop > 0.0 && !(in_range && !sil_above(drop, most_filed(plan, i)))) {
            return false;
        }
    }
    return true;
}

bool plan_can_file(const sil_plan *plan, const sil_tuning *t)
{
    return has_bone(plan, t) || (plan->saddle.working == SIL_WORKING_TOP && can_spare(plan, t));
}

static double greatest_pass(const sil_plan *plan)
{
    double most = 0.0;
    for (int i = 0; i < plan->job->string_count; i++) {
        most = fmax(most, plan_saddle_pass(plan, i));
    }
    return most;
}

/* Whether the saddle is far over its target, and today's pass off it leaves the height that the peaks
 * need: cents read so high are not yet those of the finished action. */
static bool pass_first(const sil_plan *plan, const sil_tuning *t)
{
    bool far = false;
    for (int i = 0; i < plan->job->string_count; i++) {
        double drop = plan_peak_drop(plan, t, i);
        far = far || to_spend(plan, i) > drop + plan_one_stroke;
        if (drop > 0.0 && !(to_spend(plan, i) - plan_saddle_pass(plan, i) >= drop)) {
            return false;
        }
    }
    return far && sil_above(greatest_pass(plan), 0.0);
}

/* Not on a saddle that cannot come down to its range: there the neck comes first. */
bool plan_peaks_first(const sil_plan *plan)
{
    sil_tuning t = {0};
    plan_read_cents(plan, &t);
    return plan_may_file(plan) && plan->saddle.remedy == SIL_SADDLE_SAND && !plan->saddle.stops &&
           plan_any_peak_moves(plan, &t) && has_bone(plan, &t) && !pass_first(plan, &t);
}

bool plan_files_at_height(const sil_plan *plan)
{
    sil_tuning t = {0};
    plan_read_cents(plan, &t);
    return plan_may_file(plan) && plan->saddle.remedy == SIL_SADDLE_NONE &&
           plan_any_peak_moves(plan, &t) && plan_can_file(plan, &t);
}
