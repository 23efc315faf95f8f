/* SPDX-License-Identifier: MIT */
/* How far each string can come down at the saddle, and how far it therefore does. See
 * docs/arithmetic.md, "How far a saddle can come down". */
#include "room.h"

#include "clean.h"

static const double per_degree = 3.14159265358979323846 / 180.0;

double core_to_high(const sil_bench *bench, const sil_stages *stages, int string)
{
    double action = sil_action(&bench->board, &stages->fit[SIL_NUT], string, 12);
    return (action - bench->targets.action[string].high) / sil_leverage(&bench->board, string);
}

/* How far string i can come down before the saddle stands out too little, or to the end of its
 * travel; unknown where nothing limits it. */
static double room_of(const sil_saddle_given *make, const sil_saddle_work *work, int i)
{
    if (sil_working_in_slot(make->working)) {
        return work->stands[i] - make->least_protrusion;
    }
    return make->working == SIL_WORKING_SCREWS ? make->travel : SIL_UNKNOWN;
}

/* A string that is not held in the bridge has no break angle there. */
double core_least_out(const sil_saddle_given *make, int i)
{
    double falls = make->pin_distance[i] * tan(make->least_break_deg * per_degree);
    return fmax(make->least_protrusion, make->exit_height + falls);
}

/* The same, with enough of a break angle left as well. */
static double sound_room_of(const sil_saddle_given *make, const sil_saddle_work *work, int i)
{
    bool in_slot = sil_working_in_slot(make->working);
    return in_slot ? work->stands[i] - core_least_out(make, i) : work->room[i];
}

/* The aim is given up first: a string goes as far as is sound, but at least to the high edge of its
 * range, and never past its room. */
static double goal_of(double lower, double to_high, double sound, double room)
{
    double goal = sil_above(lower, sound) ? fmin(lower, fmax(sound, to_high)) : lower;
    return fmax(0.0, sil_above(goal, room) ? room : goal);
}

static void set_goal(const sil_bench *bench, const sil_saddle_given *make, const sil_stages *stages,
                     sil_saddle_work *work, int i)
{
    double lower = stages->lower[i], to_high = core_to_high(bench, stages, i);
    work->goal[i] = work->verdict[i] == SIL_LEAVE ? 0.0 : lower;
    if (work->verdict[i] == SIL_TAKE) {
        double sound = sound_room_of(make, work, i);
        work->missing[i] = sil_above(to_high, work->room[i]) ? to_high - work->room[i] : 0.0;
        work->goal[i] = goal_of(lower, to_high, sound, work->room[i]);
        work->aim_short[i] = sil_below(work->goal[i], lower);
    }
}

/* Ends a string where it still rings clean under the pluck, if that is in its range; otherwise says
 * how far down a first pass may go. */
static void keep_clean(const sil_bench *bench, const sil_stages *stages, sil_saddle_work *work,
                       int i)
{
    const sil_fit *before = &stages->fit[SIL_NUT];
    double down = before->saddle_height[i] - core_clean_saddle(bench, before, i);
    double action = sil_action(&bench->board, before, i, 12);
    double clean = action - down * sil_leverage(&bench->board, i);
    work->to_clean[i] = down;
    if (work->verdict[i] != SIL_TAKE || !sil_above(work->goal[i], down)) {
        return;
    }
    work->clean[i] = clean;
    if (sil_above(clean, bench->targets.action[i].high)) {
        work->hold[i] = fmax(0.0, down);
    } else {
        work->goal[i] = fmax(0.0, down);
        work->aim_raised[i] = true;
        work->aim_short[i] = false;
    }
}

void core_saddle_room(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                      sil_saddle_work *work)
{
    int strings = bench->board.strings;
    work->stops = false;
    for (int i = 0; i < strings; i++) {
        work->room[i] = room_of(make, work, i);
        work->aim_short[i] = work->aim_raised[i] = false;
        work->hold[i] = work->clean[i] = work->to_clean[i] = SIL_UNKNOWN;
        work->missing[i] = 0.0;
        set_goal(bench, make, stages, work, i);
        work->stops = work->stops || work->missing[i] > 0.0;
    }
    for (int i = 0; i < strings; i++) {
        if (work->stops && work->verdict[i] == SIL_TAKE) {
            /* A forecast, which shows what is missing. No string goes under the bridge's top. */
            double lower = stages->lower[i], flush = fmax(0.0, work->stands[i]);
            work->goal[i] = sil_above(lower, work->stands[i]) ? flush : lower;
            work->aim_short[i] = false;
        }
    }
    bool on_two =
        sil_working_on_two(make->working); /* they move together, and can be turned back */
    for (int i = 0; i < strings && !work->stops && !on_two; i++) {
        keep_clean(bench, stages, work, i);
    }
}

/* Whether a string in its range goes to its target where the screws of others are turned: it is
 * farther off than it may be wrong by. One that was heard to buzz is not lowered. */
static bool goes_with_others(const sil_bench *bench, const sil_stages *stages,
                             const sil_saddle_work *work, int i)
{
    bool off = sil_above(fabs(stages->lower[i]), stages->lower_u[i]);
    bool kept = work->aim_short[i] || work->aim_raised[i]; /* it is as low as it may go */
    bool buzzes = stages->lower[i] > 0.0 && bench->standing.buzz[i];
    return work->verdict[i] == SIL_LEAVE && off && !kept && !buzzes;
}

/* Back to where it is: in range, it is no reason to stop or to choose. */
static void leave_string(sil_saddle_work *work, int i)
{
    work->verdict[i] = SIL_LEAVE;
    work->goal[i] = work->missing[i] = 0.0;
    work->hold[i] = work->clean[i] = SIL_UNKNOWN;
    work->aim_short[i] = work->aim_raised[i] = false;
}

void core_set_with_others(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                          sil_saddle_work *work)
{
    if (make->working != SIL_WORKING_SCREWS || !stages->changed[SIL_SADDLE] || work->stops) {
        return;
    }
    for (int i = 0; i < bench->board.strings; i++) {
        if (!goes_with_others(bench, stages, work, i)) {
            continue;
        }
        work->verdict[i] = stages->lower[i] > 0.0 ? SIL_TAKE : SIL_RAISE;
        set_goal(bench, make, stages, work, i);
        keep_clean(bench, stages, work, i);
        bool taken = work->verdict[i] == SIL_TAKE;
        if (taken &&
            (!(work->goal[i] > 0.0) || work->missing[i] > 0.0 || sil_known(work->hold[i]))) {
            leave_string(work, i);
            continue;
        }
        stages->saddle[i] = work->verdict[i];
        stages->fit[SIL_SADDLE].saddle_height[i] =
            stages->fit[SIL_NUT].saddle_height[i] - work->goal[i];
    }
}

/* More than this is not dressed off the top of a single string, mm: common practice, no source. */
static const double most_dressed = 0.8;

static int count_taken(int strings, const sil_saddle_work *work)
{
    int count = 0;
    for (int i = 0; i < strings; i++) {
        count += work->verdict[i] == SIL_TAKE;
    }
    return count;
}

int core_tilted(int strings, const sil_saddle_work *work)
{
    int taken = count_taken(strings, work), treble = 0, bass = 0;
    if (2 * taken >= strings) {
        return 0;
    }
    while (treble < taken && work->verdict[treble] == SIL_TAKE) {
        treble++;
    }
    while (bass < taken && work->verdict[strings - 1 - bass] == SIL_TAKE) {
        bass++;
    }
    return treble == taken ? 1 : bass == taken ? -1 : 0;
}

/* Fewer than half of the strings, and none by more than is dressed. */
static bool few_and_little(int strings, const sil_saddle_work *work)
{
    for (int i = 0; i < strings; i++) {
        if (work->verdict[i] == SIL_TAKE && sil_above(work->goal[i], most_dressed)) {
            return false;
        }
    }
    return 2 * count_taken(strings, work) < strings;
}

bool core_dressed_only(int strings, const sil_saddle_work *work)
{
    bool ends = work->verdict[0] == SIL_TAKE || work->verdict[strings - 1] == SIL_TAKE;
    return !ends && few_and_little(strings, work);
}

/* For less than this nobody takes the saddle out again and again, mm: common practice, no source. */
static const double least_tilted = 0.05;

bool core_held_up(int strings, double half, const sil_saddle_work *work)
{
    double first = fmax(sil_line_at(work->cut_first, half), sil_line_at(work->cut_first, -half));
    double whole = fmax(sil_line_at(work->cut, half), sil_line_at(work->cut, -half));
    return first < least_tilted && whole - first >= least_tilted && few_and_little(strings, work);
}

sil_line core_saddle_tilt(int count, const double *z, const double *cap, double half, int side,
                          const sil_line *most)
{
    double end = side * half, depth = most ? sil_line_at(*most, end) : (double)INFINITY;
    for (int i = 0; i < count; i++) {
        double share = 0.5 + z[i] / (2.0 * end);
        depth = share > 0.0 ? fmin(depth, cap[i] / share) : depth;
    }
    depth = fmax(0.0, depth);
    return (sil_line){depth / 2.0, depth / (2.0 * end)};
}
