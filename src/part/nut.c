/* SPDX-License-Identifier: MIT */
#include "within.h"

/* By how much a slot may be deeper than it has to be, so that the top is a plain arc, mm. Common
 * practice, no source. */
static const double most_over = 0.05;

/* Less than this is too little to be left for another pass, mm. */
static const double least_left = 0.005;

/* How much is left to file at a slot after its first pass. */
static double left_after_first(const sil_plan *plan, int i)
{
    double left = plan_slot_left(plan, i);
    return left >= least_left ? left : 0;
}

/* The nut after the first pass. Its top stays as far above the floors as they need; where nothing is
 * left to file it is the finished one. */
static void solve_first(const sil_plan *plan, part_nut *nut)
{
    double top[SIL_STRINGS_MAX];
    for (int i = 0; i < nut->strings; i++) {
        double left = left_after_first(plan, i);
        nut->first[i] = nut->floor[i] + left;
        nut->more = nut->more || left > 0;
        top[i] = nut->first[i] + plan->nut.depth[i];
    }
    if (!nut->more) {
        nut->first_top = nut->top;
        return;
    }
    nut->first_top = part_curve_through(nut->strings, nut->along, top);
    if (sil_known(nut->height)) {
        part_curve_round(&nut->first_top, nut->length, 0, most_over);
    }
}

void part_nut_solve(const sil_plan *plan, part_nut *nut)
{
    const sil_job *job = plan->job;
    const sil_board *board = &plan->bench.board;
    double longer = 1 / cos(board->nut_slant), z[SIL_STRINGS_MAX], top[SIL_STRINGS_MAX];
    *nut = (part_nut){.strings = board->strings,
                      .length = job->nut.width * longer,
                      .thickness = job->nut.thickness,
                      .slant = board->nut_slant,
                      .fall_deg = plan->nut.fall_angle_deg,
                      .gap = plan->nut_gap * longer,
                      .shim = plan->nut.remedy == SIL_NUT_SHIM ? plan->nut.shim : 0};
    nut->height = plan->nut.top - nut->shim;
    for (int i = 0; i < nut->strings; i++) {
        z[i] = board->nut_z[i] * longer;
        nut->across[i] = job->nut.width / 2 + board->nut_z[i];
        nut->along[i] = nut->length / 2 + z[i];
        nut->width[i] = plan->slot_width[i];
        nut->mouth[i] = plan->slot_width[i] * longer;
        nut->gauge[i] = job->strings[i].gauge;
        nut->floor[i] = plan->nut.floor[i] - nut->shim;
        nut->depth[i] = plan->nut.depth[i];
        nut->stack[i] = plan->nut.stack[i];
        top[i] = nut->floor[i] + nut->depth[i];
    }
    nut->top = part_curve_through(nut->strings, nut->along, top);
    if (sil_known(nut->height)) { /* the tops of all strings are */
        part_curve_round(&nut->top, nut->length, 0, most_over);
    }
    if (nut->top.radius > 0) {
        nut->height = nut->top.crest;
        for (int i = 0; i < nut->strings; i++) {
            nut->depth[i] = part_curve_at(&nut->top, nut->along[i]) - nut->floor[i];
        }
    } else if (nut->top.count > 1 && sil_known(nut->height)) {
        nut->height = fmax(
            nut->height, fmax(part_curve_at(&nut->top, 0), part_curve_at(&nut->top, nut->length)));
    }
    solve_first(plan, nut);
    nut->top_radius = nut->top.radius > 0 ? nut->top.radius : SIL_UNKNOWN;
    nut->floor_radius = sil_top_radius(nut->strings, z, nut->floor);
}

/* The outline of a slot as the file leaves it, with upright walls and a round floor, from its
 * treble edge to its bass edge. */
static int add_slot(part_point *out, double x, double floor, double width, const part_curve *top)
{
    double r = width / 2;
    double treble = part_curve_at(top, x + r), bass = part_curve_at(top, x - r);
    double depth = fmax(fmin(treble, bass) - floor, 0);
    double widest = depth < r ? acos(1 - depth / r) : acos(0.0);
    int count = 0;
    out[count++] = (part_point){x + r, treble};
    for (int i = 0; i <= PART_SLOT_POINTS; i++) {
        double turn = widest * (1 - 2.0 * i / PART_SLOT_POINTS);
        out[count++] = (part_point){x + r * sin(turn), floor + r - r * cos(turn)};
    }
    out[count++] = (part_point){x - r, bass};
    return count;
}

int part_nut_outline(const part_nut *nut, bool slots, part_point *out)
{
    double x = nut->length;
    int count = 0;
    if (nut->top.count == 0) {
        return 0;
    }
    out[count++] = (part_point){0, 0};
    out[count++] = (part_point){nut->length, 0};
    for (int i = 0; slots && i < nut->strings; i++) {
        double half = nut->width[i] / 2;
        if (sil_known(nut->floor[i])) {
            count += part_curve_points(&nut->top, x, nut->along[i] + half, out + count);
            count += add_slot(out + count, nut->along[i], nut->floor[i], nut->width[i], &nut->top);
            x = nut->along[i] - half;
        }
    }
    return count + part_curve_points(&nut->top, x, 0, out + count);
}
