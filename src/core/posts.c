/* SPDX-License-Identifier: MIT */
/* A bridge on two posts, screws or thumbwheels. See docs/arithmetic.md, "The saddle". */
#include "posts.h"

#include "room.h"

/* A post that would move by less than this stays where it is, mm: nobody can turn a screw so
 * little. */
static const double least_turned = 0.01;

/* Keeps both posts within their travel. A string that comes into its range along the line to the
 * target, and not along this one, is stopped. */
static sil_line within_travel(const sil_bench *bench, const sil_saddle_given *make,
                              const sil_stages *stages, sil_line line, sil_saddle_work *work)
{
    const double *z = bench->board.saddle_z;
    double half = make->post_spread / 2.0;
    double treble = fmin(sil_line_at(line, half), make->travel);
    double bass = fmin(sil_line_at(line, -half), make->travel);
    sil_line kept = {(treble + bass) / 2.0, (treble - bass) / make->post_spread};
    for (int i = 0; i < bench->board.strings; i++) {
        double whole = sil_line_at(line, z[i]), part = sil_line_at(kept, z[i]);
        double to_high = core_to_high(bench, stages, i);
        bool taken = work->verdict[i] == SIL_TAKE;
        work->aim_short[i] = taken && sil_below(part, whole);
        bool stopped = taken && sil_above(to_high, part) && !sil_above(to_high, whole);
        work->missing[i] = stopped ? to_high - part : 0.0;
        work->stops = work->stops || stopped;
    }
    for (int i = 0; i < bench->board.strings && work->stops; i++) {
        work->aim_short[i] = false;
    }
    return work->stops ? line : kept;
}

/* How far a bridge on two posts goes up further, where its curve leaves two strings or more under their
 * ranges: until the lowest of them is at its target. Notches are deepened, and nothing is put on; a lone
 * one is filled. Common practice, no source. */
static double lift_for_notches(const sil_bench *bench, const sil_stages *stages, sil_line line)
{
    double lift = 0.0;
    int low = 0;
    for (int i = 0; i < bench->board.strings; i++) {
        sil_band range = bench->targets.action[i];
        double over = stages->lower[i] - sil_line_at(line, bench->board.saddle_z[i]);
        if (sil_below(range.aim + over * sil_leverage(&bench->board, i), range.low)) {
            lift = fmax(lift, -over);
            low++;
        }
    }
    return low > 1 ? lift : 0.0;
}

void core_turn_posts(const sil_bench *bench, const sil_saddle_given *make, sil_stages *stages,
                     sil_saddle_work *work)
{
    const double *z = bench->board.saddle_z;
    double half = make->post_spread / 2.0;
    sil_line line = sil_level_line(bench->board.strings, z, stages->lower);
    if (sil_above(fmax(sil_line_at(line, half), sil_line_at(line, -half)), make->travel)) {
        line = within_travel(bench, make, stages, line, work);
    }
    line.b0 -= lift_for_notches(bench, stages, line);
    double treble = sil_line_at(line, half), bass = sil_line_at(line, -half);
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
        work->goal[i] = off;
    }
}
