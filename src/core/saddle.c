/* SPDX-License-Identifier: MIT */
/* The saddle. See docs/arithmetic.md, "The saddle". */
#include "edge.h"
#include "fresh.h"
#include "posts.h"
#include "room.h"

static int count_verdicts(const sil_saddle_work *work, int strings, sil_verdict verdict)
{
    int count = 0;
    for (int i = 0; i < strings; i++) {
        count += work->verdict[i] == verdict;
    }
    return count;
}

/* What a string to leave can spare: what keeps it in its range, and out of the bridge by enough. A
 * saddle that is stopped shows what the range alone would spare. */
static double spare(const sil_bench *bench, const sil_stages *stages, const sil_saddle_work *work,
                    int i)
{
    double in_range = sil_saddle_to_low(bench, stages, i) - SIL_GUARD_ONE * stages->lower_u[i];
    double room = work->stops ? SIL_UNKNOWN : fmin(work->room[i], work->to_clean[i]);
    return fmax(0.0, fmin(in_range, room)); /* what is unknown does not limit it */
}

/* The bottom: each string allows what it has to come down by, or what it can spare. A first pass,
 * which stays under the line `most`, also keeps the strings over the low edges of their ranges,
 * taken together as a set. */
static sil_line cut_base(const sil_bench *bench, const sil_stages *stages,
                         const sil_saddle_work *work, double half, const sil_line *most)
{
    int strings = bench->board.strings, side = core_tilted(strings, work);
    const double *z = bench->board.saddle_z;
    double cap[SIL_STRINGS_MAX];
    bool wanted[SIL_STRINGS_MAX];
    for (int i = 0; i < strings; i++) {
        wanted[i] = work->verdict[i] == SIL_TAKE;
        double to_low = sil_saddle_to_low(bench, stages, i);
        cap[i] = wanted[i] ? work->goal[i] : spare(bench, stages, work, i);
        if (most) {
            double guarded = fmax(0.0, to_low - SIL_GUARD_SET * stages->lower_u[i]);
            cap[i] = fmin(cap[i], fmin(guarded, work->hold[i]));
        }
    }
    return side ? core_saddle_tilt(strings, z, cap, half, side, most)
                : sil_saddle_line(strings, z, cap, wanted, half, most);
}

/* The line that a first pass must not go past: at either end a stroke is left on. */
static sil_line leave_on(sil_line cut, double half, double leave)
{
    double treble = sil_stroke(sil_line_at(cut, half), leave);
    double bass = sil_stroke(sil_line_at(cut, -half), leave);
    return (sil_line){(treble + bass) / 2.0, (treble - bass) / (2.0 * half)};
}

/* Sands the bottom. Strings to lower get the rest off the top; strings to leave come down with the
 * saddle and stay in range. */
static void sand(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                 sil_saddle_work *work)
{
    double half = make->length / 2.0;
    work->remedy = SIL_SADDLE_SAND;
    work->bottom = !core_dressed_only(bench->board.strings, work);
    if (work->bottom) {
        work->cut = cut_base(bench, stages, work, half, NULL);
        double leave = core_all_finished(bench, work) ? 0.0 : make->leave_base;
        sil_line most = leave_on(work->cut, half, leave);
        work->cut_first = cut_base(bench, stages, work, half, &most);
    }
    if (work->bottom && core_held_up(bench->board.strings, half, work)) {
        work->bottom = false;
        work->cut = work->cut_first = (sil_line){0.0, 0.0};
    }
    for (int i = 0; i < bench->board.strings; i++) {
        double off = sil_line_at(work->cut, bench->board.saddle_z[i]);
        if (work->verdict[i] == SIL_TAKE) {
            bool rest = sil_above(work->goal[i], off); /* more than rounding */
            work->dress[i] = rest ? work->goal[i] - off : 0.0;
        } else if (work->bottom) {
            stages->fit[SIL_SADDLE].saddle_height[i] -= off;
            stages->changed[SIL_SADDLE] = true;
        }
    }
}

/* Whether a string that needs no work is still in its range on the shim. */
static bool may_be_lifted(const sil_bench *bench, const sil_stages *stages,
                          const sil_saddle_work *work, int i)
{
    double action = sil_action(&bench->board, &stages->fit[SIL_NUT], i, 12) +
                    work->shim * sil_leverage(&bench->board, i);
    double width = core_edge_width(stages->action_u[i], false);
    return work->verdict[i] == SIL_LEAVE &&
           sil_side_of(action, bench->targets.action[i], width, false) != SIL_OVER;
}

/* What a shim does to one string: it lifts it, and what is too much of that comes off the top. */
static void put_on_shim(const sil_bench *bench, sil_stages *stages, sil_saddle_work *work, int i)
{
    bool lifted = may_be_lifted(bench, stages, work, i);
    work->dress[i] = lifted ? 0.0 : work->shim + work->goal[i];
    if (lifted) {
        work->goal[i] = -work->shim;
        stages->fit[SIL_SADDLE].saddle_height[i] =
            stages->fit[SIL_NUT].saddle_height[i] + work->shim;
    }
}

/* A shim lifts the whole saddle. The top is filed where a string does not need all of it, and would be
 * past its range or is brought to its target. */
static void shim(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                 sil_saddle_work *work)
{
    int strings = bench->board.strings;
    int raised = count_verdicts(work, strings, SIL_RAISE);
    double rise = 0.0;
    for (int i = 0; i < strings; i++) {
        if (work->verdict[i] == SIL_RAISE) {
            rise = fmax(rise, -stages->lower[i]);
        }
    }
    work->shim = sil_shim_thickness(rise, make->shim_step);
    bool worn_notch = raised == 1 && strings > 1;
    work->thick_shim = sil_above(work->shim, make->most_shim);
    work->remedy = work->thick_shim || worn_notch ? SIL_SADDLE_REPLACE : SIL_SADDLE_SHIM;
    if (work->remedy == SIL_SADDLE_REPLACE) {
        work->shim = SIL_UNKNOWN; /* the one that is to be replaced is neither raised nor filed */
    }
    for (int i = 0; i < strings; i++) {
        work->dress[i] = 0.0;
        if (work->remedy == SIL_SADDLE_SHIM) {
            put_on_shim(bench, stages, work, i);
        }
    }
}

/* A glued saddle is worked on at its top only. */
static void dress_top(const sil_bench *bench, sil_saddle_work *work)
{
    int strings = bench->board.strings;
    bool raise = count_verdicts(work, strings, SIL_RAISE) > 0;
    work->remedy = raise ? SIL_SADDLE_REPLACE : SIL_SADDLE_SAND;
    for (int i = 0; i < strings; i++) {
        bool dressed = work->verdict[i] == SIL_TAKE && !raise;
        work->dress[i] = dressed ? work->goal[i] : 0.0;
    }
}

static void turn_screws(const sil_bench *bench, const sil_saddle_given *make, sil_saddle_work *work)
{
    for (int i = 0; i < bench->board.strings; i++) {
        work->dress[i] = SIL_UNKNOWN;
        if (work->verdict[i] == SIL_TAKE || work->verdict[i] == SIL_RAISE) {
            work->turns[i] = work->goal[i] / make->pitch;
            work->remedy = SIL_SADDLE_SCREW;
        } else {
            work->turns[i] = work->verdict[i] == SIL_LEAVE ? 0.0 : SIL_UNKNOWN;
        }
    }
}

static void choose_work(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                        sil_saddle_work *work)
{
    int strings = bench->board.strings;
    int unread = count_verdicts(work, strings, SIL_WAIT);
    bool moves = stages->changed[SIL_SADDLE];
    if (make->working == SIL_WORKING_SCREWS) {
        turn_screws(bench, make, work);
        if (!moves && unread > 0) {
            work->remedy = SIL_SADDLE_WAIT;
        }
    } else if (unread > 0) {
        sil_saddle_await(strings, work); /* one part carries all strings: all must be read */
    } else if (sil_working_on_two(make->working)) {
        for (int i = 0; i < strings; i++) {
            work->dress[i] = SIL_UNKNOWN;
        }
        if (moves) {
            core_turn_posts(bench, make, stages, work);
        }
    } else if (moves && make->working == SIL_WORKING_TOP) {
        dress_top(bench, work);
    } else if (moves && count_verdicts(work, strings, SIL_RAISE) > 0) {
        shim(bench, make, stages, work);
    } else if (moves) {
        sand(bench, make, stages, work);
    }
}

/* What comes off (or goes under) string i: its new height over the same bottom. */
static double change_at(const sil_bench *bench, const sil_saddle_given *make,
                        const sil_stages *stages, const sil_saddle_work *work, int i)
{
    if (work->posts) {
        return sil_line_at(work->cut, bench->board.saddle_z[i]);
    }
    if (sil_working_on_two(make->working) && !stages->changed[SIL_SADDLE]) {
        return sil_known(stages->lower[i]) ? 0.0 : SIL_UNKNOWN;
    }
    if (stages->saddle[i] == SIL_LEAVE) {
        return work->bottom ? sil_line_at(work->cut, bench->board.saddle_z[i]) : work->goal[i];
    }
    /* Of one to be read again, a forecast. */
    return stages->saddle[i] == SIL_WAIT ? stages->lower[i] : work->goal[i];
}

double sil_break_angle(double rise, double distance)
{
    return atan2(rise, distance) * 180.0 / 3.14159265358979323846;
}

void core_stand_in_slot(const sil_saddle_given *make, sil_saddle_work *work, int i)
{
    double slot = make->slot_depth - make->pickup;
    double under = work->remedy == SIL_SADDLE_SHIM ? work->shim : 0.0;
    work->in_slot[i] = (slot - under) / (work->height[i] - under);
    work->break_angle_deg[i] =
        sil_break_angle(work->protrusion[i] - make->exit_height, make->pin_distance[i]);
}

void sil_saddle_await(int strings, sil_saddle_work *work)
{
    for (int i = 0; i < strings; i++) {
        work->verdict[i] = SIL_WAIT;
        work->first_pass[i] = work->dress[i] = work->turns[i] = SIL_UNKNOWN;
        work->dress_first[i] = SIL_UNKNOWN;
    }
    work->remedy = SIL_SADDLE_WAIT;
    work->bottom = work->posts = work->thick_shim = false;
    work->post[0] = work->post[1] = SIL_UNKNOWN;
    work->post_turns[0] = work->post_turns[1] = SIL_UNKNOWN;
    work->shim = SIL_UNKNOWN;
}

/* Strings to lower go as far as they have room. One that has none left stays. */
static void go_as_far(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                      sil_saddle_work *work)
{
    core_saddle_room(bench, make, stages, work);
    stages->changed[SIL_SADDLE] = false;
    for (int i = 0; i < bench->board.strings; i++) {
        if (work->verdict[i] == SIL_TAKE) {
            double before = stages->fit[SIL_NUT].saddle_height[i];
            stages->fit[SIL_SADDLE].saddle_height[i] = before - work->goal[i];
        }
        if (work->verdict[i] == SIL_TAKE && !sil_above(work->goal[i], 0.0)) {
            work->verdict[i] = stages->saddle[i] = SIL_LEAVE;
        }
        stages->changed[SIL_SADDLE] = stages->changed[SIL_SADDLE] || work->verdict[i] == SIL_TAKE ||
                                      work->verdict[i] == SIL_RAISE;
    }
}

/* Less than this at both ends of the bottom is no pass that a person could make, mm. */
static const double least_sanded = 0.01;

/* Whether strings in range are all there is to bring down, and by too little to sand or to file. */
static bool too_little(const sil_bench *bench, const sil_saddle_given *make,
                       const sil_stages *stages, const sil_saddle_work *work)
{
    double half = make->length / 2.0;
    bool sanded = work->bottom &&
                  fmax(sil_line_at(work->cut, half), sil_line_at(work->cut, -half)) >= least_sanded;
    for (int i = 0; i < bench->board.strings; i++) {
        bool again = stages->finish_saddle[i] && work->dress[i] < SIL_LEAST_DRESSED;
        if (work->verdict[i] == SIL_TAKE && !again) {
            return false;
        }
    }
    return work->remedy == SIL_SADDLE_SAND && !sanded;
}

static void leave_all(const sil_bench *bench, sil_stages *stages, sil_saddle_work *work)
{
    for (int i = 0; i < bench->board.strings; i++) {
        stages->finish_saddle[i] = false;
        stages->fit[SIL_SADDLE].saddle_height[i] = stages->fit[SIL_NUT].saddle_height[i];
        work->verdict[i] = stages->saddle[i] = SIL_LEAVE;
        work->goal[i] = work->dress[i] = 0.0;
        work->aim_short[i] = false;
    }
    stages->changed[SIL_SADDLE] = work->bottom = false;
    work->cut = work->cut_first = (sil_line){0.0, 0.0};
    work->remedy = SIL_SADDLE_NONE;
}

void sil_saddle_cut(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                    sil_saddle_work *work)
{
    int strings = bench->board.strings;
    *work = (sil_saddle_work){.working = make->working,
                              .shim = SIL_UNKNOWN,
                              .top_radius = SIL_UNKNOWN,
                              .post = {SIL_UNKNOWN, SIL_UNKNOWN},
                              .post_turns = {SIL_UNKNOWN, SIL_UNKNOWN}};
    for (int i = 0; i < strings; i++) {
        work->verdict[i] = stages->saddle[i];
        work->turns[i] = work->stands[i] = SIL_UNKNOWN;
        work->protrusion[i] = work->in_slot[i] = work->break_angle_deg[i] = SIL_UNKNOWN;
    }
    sil_saddle_present(bench, make, stages, work);
    go_as_far(bench, make, stages, work);
    core_set_with_others(bench, make, stages, work);
    choose_work(bench, make, stages, work);
    if (too_little(bench, make, stages, work)) {
        leave_all(bench, stages, work);
    }
    core_saddle_passes(bench, make, stages, work);
    for (int i = 0; i < strings; i++) {
        double off = change_at(bench, make, stages, work, i);
        work->height[i] = work->present[i] - off;
        if (sil_working_in_slot(make->working)) {
            work->protrusion[i] = work->stands[i] - off;
            core_stand_in_slot(make, work, i);
        }
    }
    if (sil_working_in_slot(make->working)) {
        work->top_radius = sil_top_radius(strings, bench->board.saddle_z, work->height);
    }
}
