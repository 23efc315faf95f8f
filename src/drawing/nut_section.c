/* SPDX-License-Identifier: MIT */
#include <stddef.h>

#include "views.h"

static const double degree = 0.017453292519943295;

/* Of the part, mm: how much of the board is shown, and of the string behind the nut. */
static const double board_shown = 5, string_behind = 2.5, feeler_length = 4;

/* A nut that leans is crossed aslant: longer along a slot than it is thick. */
static double along_slot(const sil_draft *draft)
{
    return draft->plan->job->nut.thickness / cos(draft->board->nut_slant);
}

static void hatched(sil_shapes *list, sil_place place, sil_point *points, int count, double spacing)
{
    sil_place_points(place, points, count);
    sil_draw_path(list, SIL_LAYER_OUTLINE, points, count, true);
    sil_draw_hatch(list, points, count, spacing);
}

/* The board's end, up to the height the feelers lie on; broken off at the left. */
static void draw_board(sil_shapes *list, sil_place place, double surface)
{
    sil_point board[] = {{-board_shown, 0}, {0, 0}, {0, surface}, {-board_shown, surface}};
    sil_place_points(place, board, 4);
    sil_draw_path(list, SIL_LAYER_OUTLINE, board, 4, true);
    sil_draw_hatch(list, board, 4, -1.6);
}

/* A stack of feelers lies on the board beside the slot: a few leaves stand for it. */
static void draw_feelers(sil_shapes *list, sil_place place, double surface, double stack)
{
    enum { LEAVES = 4 };
    double left = -feeler_length, right = -0.4;
    const sil_point leaf[] = {sil_at(place, left, surface), sil_at(place, right, surface),
                              sil_at(place, right, surface + stack),
                              sil_at(place, left, surface + stack)};
    sil_draw_path(list, SIL_LAYER_SLOT, leaf, 4, true);
    for (int i = 1; i < LEAVES; i++) {
        double y = surface + stack * i / LEAVES;
        sil_draw_line(list, SIL_LAYER_SLOT, sil_at(place, left, y), sil_at(place, right, y));
    }
}

/* The string's two edges: level from the board, down along the slot's floor, then to the tuner. */
static void draw_string(const sil_draft *draft, sil_shapes *list, sil_place place, double floor,
                        double gauge)
{
    double thickness = along_slot(draft);
    double fall = tan(draft->plan->nut.fall_angle_deg * degree);
    double head = tan(draft->plan->job->instrument.head_angle_deg * degree);
    for (int edge = 0; edge < 2; edge++) {
        double y = floor + edge * gauge, back = y - thickness * fall;
        const sil_point line[] = {
            sil_at(place, -board_shown, y), sil_at(place, 0, y), sil_at(place, thickness, back),
            sil_at(place, thickness + string_behind, back - string_behind * head)};
        sil_draw_path(list, SIL_LAYER_STRING, line, 4, false);
    }
}

void sil_nut_section(const sil_draft *draft, sil_shapes *list, sil_place place, int string)
{
    const sil_plan *plan = draft->plan;
    double thickness = along_slot(draft), gauge = plan->job->strings[string].gauge;
    double floor = plan->nut.floor[string], stack = plan->nut.stack[string];
    double top = floor + plan->nut.depth[string], fall = plan->nut.fall_angle_deg;
    double back = floor - thickness * tan(fall * degree);
    sil_point nut[] = {{0, 0}, {thickness, 0}, {thickness, back}, {0, floor}};

    draw_board(list, place, floor - stack);
    draw_feelers(list, place, floor - stack, stack);
    hatched(list, place, nut, 4, 1.6);
    const sil_point wall[] = {sil_at(place, 0, floor), sil_at(place, 0, top),
                              sil_at(place, thickness, top), sil_at(place, thickness, back)};
    sil_draw_path(list, SIL_LAYER_SLOT, wall, 4, false);
    sil_draw_of(list, string + 1);
    draw_string(draft, list, place, floor, gauge);
    sil_draw_of(list, 0);

    double left = sil_at(place, -board_shown, 0).x, right = sil_at(place, thickness, 0).x;
    sil_point seat = {left, place.y}, surface = {left, sil_at(place, 0, floor - stack).y};
    sil_point under = {left, sil_at(place, 0, floor).y};
    sil_dim_up(list, surface, under, left - 5, sil_say_stop(draft, stack).text);
    sil_dim_up(list, seat, under, left - 13, sil_say_length(draft, floor).text);
    sil_dim_up(list, (sil_point){right, place.y}, sil_at(place, thickness, top),
               sil_at(place, thickness + string_behind, 0).x + 6, sil_say_length(draft, top).text);
    sil_dim_across(list, (sil_point){place.x, place.y}, (sil_point){right, place.y}, place.y - 7,
                   sil_say_size(draft, thickness).text);
}
