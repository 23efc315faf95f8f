/* SPDX-License-Identifier: MIT */
/* The saddle. See docs/arithmetic.md, "The saddle". */
#include "fresh.h"

static int count_verdicts(const sil_saddle_work *work, int strings, sil_verdict verdict)
{
    int count = 0;
    for (int i = 0; i < strings; i++) {
        count += work->verdict[i] == verdict;
    }
    return count;
}

/* The bottom: each string allows what it has to come down by, or what it can spare. A first pass,
 * which stays under the whole cut `most`, also keeps the strings over the low edges of their
 * ranges, taken together as a set. */
static sil_line cut_base(const sil_bench *bench, const sil_stages *stages, double half,
                         const sil_line *most)
{
    int strings = bench->board.strings;
    double cap[SIL_STRINGS_MAX];
    bool wanted[SIL_STRINGS_MAX];
    for (int i = 0; i < strings; i++) {
        wanted[i] = stages->saddle[i] == SIL_TAKE;
        double u = stages->lower_u[i];
        double to_low = sil_saddle_to_low(bench, stages, i);
        cap[i] = wanted[i] ? stages->lower[i] : fmax(0.0, to_low - SIL_GUARD_ONE * u);
        if (most) {
            cap[i] = fmin(cap[i], fmax(0.0, to_low - SIL_GUARD_SET * u));
        }
    }
    return sil_saddle_line(strings, bench->board.saddle_z, cap, wanted, half, most);
}

/* Sands the bottom. Strings to lower get the rest off the top; strings to leave come down with the
 * saddle and stay in range. */
static void sand(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                 sil_saddle_work *work)
{
    double half = make->length / 2.0;
    work->remedy = SIL_SADDLE_SAND;
    work->bottom = true;
    work->cut = cut_base(bench, stages, half, NULL);
    work->cut_first = cut_base(bench, stages, half, &work->cut);
    for (int i = 0; i < bench->board.strings; i++) {
        double off = sil_line_at(work->cut, bench->board.saddle_z[i]);
        if (work->verdict[i] == SIL_TAKE) {
            bool rest = sil_above(stages->lower[i], off); /* more than rounding */
            work->dress[i] = rest ? stages->lower[i] - off : 0.0;
        } else {
            stages->fit[SIL_SADDLE].saddle_height[i] -= off;
            stages->changed[SIL_SADDLE] = true;
        }
    }
}

/* A shim lifts the whole saddle; where a string does not need all of it, the top is filed. */
static void shim(const sil_bench *bench, const sil_saddle_given *make, const sil_stages *stages,
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
    work->remedy =
        sil_above(work->shim, make->most_shim) || worn_notch ? SIL_SADDLE_REPLACE : SIL_SADDLE_SHIM;
    for (int i = 0; i < strings; i++) {
        double lower = work->verdict[i] == SIL_LEAVE ? 0.0 : stages->lower[i];
        work->dress[i] = work->remedy == SIL_SADDLE_SHIM ? work->shim + lower : 0.0;
    }
}

/* A glued saddle is worked on at its top only. */
static void dress_top(const sil_bench *bench, const sil_stages *stages, sil_saddle_work *work)
{
    int strings = bench->board.strings;
    bool raise = count_verdicts(work, strings, SIL_RAISE) > 0;
    work->remedy = raise ? SIL_SADDLE_REPLACE : SIL_SADDLE_SAND;
    for (int i = 0; i < strings; i++) {
        bool dressed = work->verdict[i] == SIL_TAKE && !raise;
        work->dress[i] = dressed ? stages->lower[i] : 0.0;
    }
}

static void turn_screws(const sil_bench *bench, const sil_saddle_given *make,
                        const sil_stages *stages, sil_saddle_work *work)
{
    for (int i = 0; i < bench->board.strings; i++) {
        work->dress[i] = SIL_UNKNOWN;
        if (work->verdict[i] == SIL_TAKE || work->verdict[i] == SIL_RAISE) {
            work->turns[i] = stages->lower[i] / make->pitch;
            work->remedy = SIL_SADDLE_SCREW;
        } else {
            work->turns[i] = work->verdict[i] == SIL_LEAVE ? 0.0 : SIL_UNKNOWN;
        }
    }
}

sil_line sil_level_line(int count, const double *z, const double *value)
{
    double z_mean = 0.0, mean = 0.0, squares = 0.0, products = 0.0;
    for (int i = 0; i < count; i++) {
        z_mean += z[i] / count;
        mean += value[i] / count;
    }
    for (int i = 0; i < count; i++) {
        squares += (z[i] - z_mean) * (z[i] - z_mean);
        products += (z[i] - z_mean) * (value[i] - mean);
    }
    double slope = squares > 0.0 ? products / squares : 0.0;
    return (sil_line){mean - slope * z_mean, slope};
}

/* A post that would move by less than this stays where it is, mm: nobody can turn a screw so
 * little. */
static const double least_turned = 0.01;

/* The nearest that a bridge on two posts can get: all strings move, along one straight line. */
static void turn_posts(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                       sil_saddle_work *work)
{
    const double *z = bench->board.saddle_z;
    sil_line line = sil_level_line(bench->board.strings, z, stages->lower);
    double treble = sil_line_at(line, make->post_spread / 2.0);
    double bass = sil_line_at(line, -make->post_spread / 2.0);
    work->posts = fmax(fabs(treble), fabs(bass)) >= least_turned;
    stages->changed[SIL_SADDLE] = work->posts;
    if (work->posts) {
        work->remedy = SIL_SADDLE_SCREW;
        work->cut = line;
        work->post[0] = treble;
        work->post[1] = bass;
        work->post_turns[0] = treble / make->pitch;
        work->post_turns[1] = bass / make->pitch;
    }
    for (int i = 0; i < bench->board.strings; i++) {
        double off = work->posts ? sil_line_at(line, z[i]) : 0.0;
        stages->fit[SIL_SADDLE].saddle_height[i] = stages->fit[SIL_NUT].saddle_height[i] - off;
    }
}

static void choose_work(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                        sil_saddle_work *work)
{
    int strings = bench->board.strings;
    int unread = count_verdicts(work, strings, SIL_WAIT);
    bool moves = stages->changed[SIL_SADDLE];
    if (make->working == SIL_WORKING_SCREWS) {
        turn_screws(bench, make, stages, work);
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
            turn_posts(bench, make, stages, work);
        }
    } else if (moves && make->working == SIL_WORKING_TOP) {
        dress_top(bench, stages, work);
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
        return work->bottom ? sil_line_at(work->cut, bench->board.saddle_z[i]) : 0.0;
    }
    return stages->lower[i];
}

void core_stand_in_slot(const sil_saddle_given *make, sil_saddle_work *work, int i)
{
    double slot = make->slot_depth - make->pickup;
    double under = work->remedy == SIL_SADDLE_SHIM ? work->shim : 0.0;
    work->protrusion[i] = work->height[i] - slot;
    work->in_slot[i] = (slot - under) / (work->height[i] - under);
    double rise = work->protrusion[i] - make->exit_height;
    double degrees = 180.0 / 3.14159265358979323846;
    work->break_angle_deg[i] = atan2(rise, make->pin_distance[i]) * degrees;
}

void sil_saddle_await(int strings, sil_saddle_work *work)
{
    for (int i = 0; i < strings; i++) {
        work->verdict[i] = SIL_WAIT;
        work->first_pass[i] = work->dress[i] = work->turns[i] = SIL_UNKNOWN;
    }
    work->remedy = SIL_SADDLE_WAIT;
    work->bottom = work->posts = false;
    work->post[0] = work->post[1] = SIL_UNKNOWN;
    work->post_turns[0] = work->post_turns[1] = SIL_UNKNOWN;
    work->shim = SIL_UNKNOWN;
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
        double to_low = sil_saddle_to_low(bench, stages, i);
        double pass = sil_first_pass(stages->lower[i], to_low, stages->lower_u[i], SIL_GUARD_ONE);
        bool taken = work->verdict[i] == SIL_TAKE;
        bool waits = work->verdict[i] == SIL_WAIT; /* unread, or to be read again */
        work->first_pass[i] = waits ? SIL_UNKNOWN : taken || !sil_known(pass) ? pass : 0.0;
        work->turns[i] = SIL_UNKNOWN;
        work->protrusion[i] = work->in_slot[i] = work->break_angle_deg[i] = SIL_UNKNOWN;
    }
    choose_work(bench, make, stages, work);
    sil_saddle_present(bench, make, stages, work);
    for (int i = 0; i < strings; i++) {
        work->height[i] = work->present[i] - change_at(bench, make, stages, work, i);
        if (sil_working_in_slot(make->working)) {
            core_stand_in_slot(make, work, i);
        }
    }
    if (sil_working_in_slot(make->working)) {
        work->top_radius = sil_top_radius(strings, bench->board.saddle_z, work->height);
    }
}
