/* SPDX-License-Identifier: MIT */
#include <stddef.h>

#include "views.h"

static const double degree = 0.017453292519943295;

/* In mm of the part: how much is shown of the board, and of the string behind the nut. */
static const double board_shown = 5, string_behind = 2.5, feeler_length = 4;

/* The length of a slot. A string crosses a slanted nut at an angle, so the slot is longer than
 * the nut is thick. */
static double along_slot(const part_nut *nut)
{
    return nut->thickness / cos(nut->slant);
}

static void hatched(draw_shapes *list, draw_place place, draw_point *points, int count,
                    double spacing)
{
    draw_place_points(place, points, count);
    draw_path(list, DRAW_OUTLINE, points, count, true);
    draw_hatch(list, points, count, spacing);
}

/* Draws the end of the board, up to the surface that the feelers are laid on, and broken off at
 * the left. */
static void draw_board(draw_shapes *list, draw_place place, double surface)
{
    draw_point board[] = {{-board_shown, 0}, {0, 0}, {0, surface}, {-board_shown, surface}};
    draw_place_points(place, board, 4);
    draw_path(list, DRAW_OUTLINE, board, 4, true);
    draw_hatch(list, board, 4, -1.6);
}

/* Draws a stack of feelers on the board, right in front of the slot. A few leaves represent the
 * stack. */
static void draw_feelers(draw_shapes *list, draw_place place, double surface, double stack)
{
    enum { LEAVES = 4 };
    double left = -feeler_length, right = -0.4;
    const draw_point leaf[] = {draw_at(place, left, surface), draw_at(place, right, surface),
                               draw_at(place, right, surface + stack),
                               draw_at(place, left, surface + stack)};
    draw_path(list, DRAW_SLOT, leaf, 4, true);
    for (int i = 1; i < LEAVES; i++) {
        double y = surface + stack * i / LEAVES;
        draw_line(list, DRAW_SLOT, draw_at(place, left, y), draw_at(place, right, y));
    }
}

/* Draws the two edges of the string: level over the board, down along the slot floor, then down
 * to the tuner. */
static void draw_string(const draw_draft *draft, draw_shapes *list, draw_place place, int string)
{
    const part_nut *nut = &draft->brief->nut_part;
    double thickness = along_slot(nut), fall = tan(nut->fall_deg * degree);
    double head = tan(draft->plan->job->instrument.head_angle_deg * degree);
    for (int edge = 0; edge < 2; edge++) {
        double y = nut->floor[string] + edge * nut->gauge[string], back = y - thickness * fall;
        const draw_point line[] = {
            draw_at(place, -board_shown, y), draw_at(place, 0, y), draw_at(place, thickness, back),
            draw_at(place, thickness + string_behind, back - string_behind * head)};
        draw_path(list, DRAW_STRING, line, 4, false);
    }
}

static void dimension(const draw_draft *draft, draw_shapes *list, draw_place place, int string)
{
    const part_nut *nut = &draft->brief->nut_part;
    const brief_slot *slot = &draft->brief->nut.slot[string];
    double floor = nut->floor[string], thickness = along_slot(nut);
    double left = draw_at(place, -board_shown, 0).x, right = draw_at(place, thickness, 0).x;
    draw_point bottom = {left, place.y}, under = {left, draw_at(place, 0, floor).y};
    draw_point surface = {left, draw_at(place, 0, floor - nut->stack[string]).y};
    draw_dim_up(draft, list, surface, under, left - 5, slot->stack);
    draw_dim_up(draft, list, bottom, under, left - 13, slot->floor);
    draw_dim_up(draft, list, (draw_point){right, place.y},
                draw_at(place, thickness, floor + nut->depth[string]),
                draw_at(place, thickness + string_behind, 0).x + 6, slot->top);
    draw_dim_across(draft, list, (draw_point){place.x, place.y}, (draw_point){right, place.y},
                    place.y - 7, draft->brief->nut.crossing);
}

void view_nut_section(const draw_draft *draft, draw_shapes *list, draw_place place, int string)
{
    const part_nut *part = &draft->brief->nut_part;
    double thickness = along_slot(part), stack = part->stack[string];
    double floor = part->floor[string], top = floor + part->depth[string];
    double back = floor - thickness * tan(part->fall_deg * degree);
    draw_point nut[] = {{0, 0}, {thickness, 0}, {thickness, back}, {0, floor}};

    draw_board(list, place, floor - stack);
    draw_feelers(list, place, floor - stack, stack);
    hatched(list, place, nut, 4, 1.6);
    const draw_point wall[] = {draw_at(place, 0, floor), draw_at(place, 0, top),
                               draw_at(place, thickness, top), draw_at(place, thickness, back)};
    draw_path(list, DRAW_SLOT, wall, 4, false);
    draw_of(list, string + 1);
    draw_string(draft, list, place, string);
    draw_of(list, 0);
    dimension(draft, list, place, string);
}
