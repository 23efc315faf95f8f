/* SPDX-License-Identifier: MIT */
#include <stddef.h>
#include <string.h>

#include "views.h"

static const double degree = 0.017453292519943295;

/* In mm of the part: how much is shown of the board, and of the string behind the nut. */
static const double board_shown = 4, string_behind = 2, feeler_length = 3.4;

/* Less than this over its finished floor a slot is as good as finished, mm. */
static const double least_left = 1e-6;

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
static void draw_board(draw_shapes *list, draw_place place, double low, double surface)
{
    draw_point board[] = {{-board_shown, low}, {0, low}, {0, surface}, {-board_shown, surface}};
    draw_place_points(place, board, 4);
    draw_path(list, DRAW_OUTLINE, board, 4, true);
    draw_hatch(list, board, 4, -1.6);
}

/* The stack to stop at now; of a slot without work, the one that its floor is at. */
static brief_figure stack_at(const brief_slot *slot)
{
    return brief_known(slot->stack_now) ? slot->stack_now : slot->stack;
}

/* Draws a stack of feelers on the board, right in front of the slot: its leaves, or one block where
 * the usual blades do not make it up. */
static void draw_feelers(draw_shapes *list, draw_place place, double surface,
                         const brief_slot *slot)
{
    double whole = stack_at(slot).exact;
    double low = surface, left = -feeler_length, right = -0.4;
    for (int i = 0; i < (slot->leaves > 0 ? slot->leaves : 1); i++) {
        double high = low + (slot->leaves > 0 ? slot->leaf[i].exact : whole);
        const draw_point leaf[] = {draw_at(place, left, low), draw_at(place, right, low),
                                   draw_at(place, right, high), draw_at(place, left, high)};
        draw_path(list, DRAW_SLOT, leaf, 4, true);
        low = high;
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
    brief_figure stack = stack_at(slot);
    stack.limits[0] = '\0'; /* the table states them; here there is no room */
    size_t length = strlen(stack.shown);
    if (strcmp(stack.shown, slot->stack.shown) != 0 &&
        length + sizeof " now" <= sizeof stack.shown) {
        strcpy(stack.shown + length, " now"); /* the floor beside it is the finished one */
    }
    double floor = nut->floor[string], thickness = along_slot(nut);
    double drop = thickness * tan(nut->fall_deg * degree);
    double left = draw_at(place, -board_shown, 0).x, right = draw_at(place, thickness, 0).x;
    draw_point bottom = {left, place.y}, under = {left, draw_at(place, 0, floor).y};
    double board = floor - nut->stack[string];
    draw_dim_up(draft, list, (draw_point){left, draw_at(place, 0, board).y},
                (draw_point){left, draw_at(place, 0, board + stack.exact).y}, left - 5, stack);
    draw_dim_up(draft, list, bottom, under, left - 13, view_again(slot->floor));
    draw_dim_up(draft, list, (draw_point){right, place.y},
                draw_at(place, thickness, floor + nut->depth[string]),
                draw_at(place, thickness + string_behind, 0).x + 6, slot->top);
    /* Its lines cross the dimension of the whole height beside it, whose figure is in the middle. */
    double half = draw_text_width(list, slot->top.shown, DRAW_NOTE) / 2 + 1;
    double middle = (floor + nut->depth[string]) / 2 * place.up;
    if ((floor - drop) * place.up > middle + half) {
        draw_dim_up(draft, list, draw_at(place, thickness, floor - drop),
                    draw_at(place, thickness, floor),
                    draw_at(place, thickness + string_behind, 0).x + 13, draft->brief->nut.drop);
    }
    double base = draw_at(place, 0, -nut->shim).y;
    draw_dim_across(draft, list, (draw_point){place.x, base}, (draw_point){right, base},
                    base - (nut->shim > 0 ? 11 : 7), view_again(draft->brief->nut.crossing));
}

/* Names the shim, which is no more than a line, below it at the right. */
static void name_shim(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const part_nut *nut = &draft->brief->nut_part;
    const double aside = 2.5, down = 3;
    draw_point from = draw_at(place, along_slot(nut), -nut->shim / 2);
    draw_point to = {from.x + aside, draw_at(place, 0, -nut->shim).y - down + DRAW_NOTE / 2};
    draw_line(list, DRAW_DIMENSION, from, to);
    draw_text(list, DRAW_TEXT, (draw_point){to.x + 0.8, to.y - DRAW_NOTE / 2}, DRAW_NOTE, DRAW_LEFT,
              0, draw_say(draft, "shim %s", draw_figure(draft, draft->brief->nut.shim)));
}

void view_nut_section(const draw_draft *draft, draw_shapes *list, draw_place place, int string)
{
    const part_nut *part = &draft->brief->nut_part;
    double thickness = along_slot(part), stack = part->stack[string];
    double floor = part->floor[string], top = floor + part->depth[string];
    double back = floor - thickness * tan(part->fall_deg * degree);
    draw_point nut[] = {{0, 0}, {thickness, 0}, {thickness, back}, {0, floor}};

    draw_board(list, place, -part->shim, floor - stack);
    draw_feelers(list, place, floor - stack, &draft->brief->nut.slot[string]);
    if (part->shim > 0) {
        draw_point shim[] = {{0, -part->shim}, {thickness, -part->shim}, {thickness, 0}, {0, 0}};
        hatched(list, place, shim, 4, 0.8);
        name_shim(draft, list, place);
    }
    hatched(list, place, nut, 4, 1.6);
    const draw_point wall[] = {/* the top falls with the slots */
                               draw_at(place, 0, floor), draw_at(place, 0, top),
                               draw_at(place, thickness, top - floor + back),
                               draw_at(place, thickness, back)};
    draw_path(list, DRAW_SLOT, wall, 4, false);
    double now = floor - stack + stack_at(&draft->brief->nut.slot[string]).exact;
    if (now > floor + least_left) { /* where the file stops today */
        const draw_point stop[] = {draw_at(place, 0, now),
                                   draw_at(place, thickness, now - floor + back)};
        draw_path(list, DRAW_SLOT, stop, 2, false);
    }
    draw_of(list, string + 1);
    draw_string(draft, list, place, string);
    draw_of(list, 0);
    dimension(draft, list, place, string);
}
