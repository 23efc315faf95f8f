/* SPDX-License-Identifier: MIT */
/* Figures of the parts under the ends of the strings: the floor of the nut's slot in the neck, a
 * crown, the saddle and the bridge. */
#include "measure.h"

#include <stddef.h>

void view_figure_crown(const draw_draft *draft, draw_shapes *list)
{
    const double board = 9, r = 4.6;
    (void)draft;
    view_figure_board(list, 2, 48, board);
    view_figure_bar(list, DRAW_HIDDEN, (draw_box){28.4, board - 3.6, 29.6, board}, false);
    draw_arc(list, DRAW_OUTLINE, (draw_point){29, board}, r, 0, 180);
    draw_line(list, DRAW_DIMENSION, (draw_point){17, board + r}, (draw_point){28.5, board + r});
    view_figure_span(list, (draw_point){19, board}, (draw_point){19, board + r});
    view_figure_word(list, 17, board + 1.4, DRAW_RIGHT, "height");
    view_figure_word(list, 25, 0.8, DRAW_MIDDLE, "by a caliper's depth rod");
}

void view_figure_seat(const draw_draft *draft, draw_shapes *list)
{
    const double seat = 7, board = 13.5;
    (void)draft;
    const draw_point wood[] = {{50, 4},    {18, 4},    {8, 3.5},        {1, 1.8},       {0, 4.4},
                               {10, seat}, {24, seat}, {24, board - 4}, {50, board - 4}};
    const draw_point nut[] = {
        {17, seat}, {24, seat}, {24, board + 3}, {22.5, board + 3.8}, {17, board + 2}};
    draw_path(list, DRAW_SLOT, wood, 9, true);
    view_figure_board(list, 24, 50, board);
    draw_path(list, DRAW_HIDDEN, nut, 5, true);
    view_figure_fret(list, 40, board, 1.3);
    draw_line(list, DRAW_DIMENSION, (draw_point){10, board}, (draw_point){24, board});
    view_figure_span(list, (draw_point){13, seat}, (draw_point){13, board});
    view_figure_word(list, 27, board + 2.6, DRAW_LEFT, "nut out");
    view_figure_word(list, 11.2, board - 4.6, DRAW_RIGHT, "height");
}

/* A saddle with a height screw: its only reading is the travel per turn. */
static void screw_saddle(draw_shapes *list)
{
    const draw_point body[] = {{18, 9}, {32, 9}, {32, 14}, {25, 16.5}, {18, 14}};
    draw_hatch(list, body, 5, 1.4);
    draw_path(list, DRAW_SLOT, body, 5, true);
    view_figure_bar(list, DRAW_OUTLINE, (draw_box){23.8, 5, 26.2, 9}, false);
    draw_line(list, DRAW_OUTLINE, (draw_point){4, 5}, (draw_point){46, 5});
    draw_line(list, DRAW_OUTLINE, (draw_point){0, 18}, (draw_point){25, 16.8});
    draw_line(list, DRAW_OUTLINE, (draw_point){25, 16.8}, (draw_point){46, 7});
    view_figure_word(list, 25, 0.6, DRAW_MIDDLE, view_field("saddle.pitch").label);
    view_figure_span(list, (draw_point){14, 5}, (draw_point){14, 9});
    draw_line(list, DRAW_DIMENSION, (draw_point){12, 9}, (draw_point){18, 9});
}

void view_figure_slot(const draw_draft *draft, draw_shapes *list)
{
    const double bridge = 12.5, floor = 7.5;
    const draw_point body[] = {{4, 4.5},    {46, 4.5},   {46, 8},      {40, bridge}, {22, bridge},
                               {22, floor}, {18, floor}, {18, bridge}, {9, bridge},  {4, 9}};
    const draw_point saddle[] = {{18.2, floor}, {21.8, floor}, {21.8, 17}, {20, 18}, {18.2, 17}};
    if (!view_stands_loose(draft->plan->job)) {
        screw_saddle(list);
        return;
    }
    draw_path(list, DRAW_SLOT, body, 10, true);
    draw_hatch(list, saddle, 5, 1.2);
    draw_path(list, DRAW_SLOT, saddle, 5, true);
    draw_line(list, DRAW_OUTLINE, (draw_point){0, 18.6}, (draw_point){20, 18.2});
    draw_line(list, DRAW_OUTLINE, (draw_point){20, 18.2}, (draw_point){34, bridge});
    draw_line(list, DRAW_HIDDEN, (draw_point){34, bridge}, (draw_point){34, 4.5});
    draw_line(list, DRAW_DIMENSION, (draw_point){12, floor}, (draw_point){18, floor});
    view_figure_span(list, (draw_point){14, floor}, (draw_point){14, bridge});
    view_figure_word(list, 16.6, 13.8, DRAW_RIGHT, "depth");
    draw_line(list, DRAW_DIMENSION, (draw_point){20, 4}, (draw_point){20, 1});
    draw_line(list, DRAW_DIMENSION, (draw_point){34, 4}, (draw_point){34, 1});
    view_figure_span(list, (draw_point){20, 2}, (draw_point){34, 2});
    view_figure_word(list, 36, 0.8, DRAW_LEFT, "to pin");
}

/* The saddle's face, with the treble end at the right, or at the left on a left-handed
 * instrument. */
void view_figure_caliper(const draw_draft *draft, draw_shapes *list)
{
    enum { ARC = 24 };
    const double base = 5, left = 6, right = 46, end = 13.2;
    draw_point face[ARC + 3] = {{left, base}, {right, base}};
    int strings = draft->plan->job->string_count, seen = strings > 1 ? 2 : 1;
    for (int i = 0; i <= ARC; i++) {
        double t = (double)i / ARC;
        face[i + 2] = (draw_point){right - (right - left) * t, end + 3 * 4 * t * (1 - t)};
    }
    draw_path(list, DRAW_SLOT, face, ARC + 3, true);
    for (int k = 0; k < seen; k++) {
        double x = seen == 1 ? 26 : k == 0 ? 12 : 40, t = (right - x) / (right - left);
        double top = end + 3 * 4 * t * (1 - t) - 0.3;
        view_figure_bar(list, DRAW_OUTLINE, (draw_box){x - 1.2, top, x + 1.2, top + 1.7}, true);
        view_figure_bar(list, DRAW_OUTLINE, (draw_box){x - 1.2, base - 1.7, x + 1.2, base}, true);
        view_figure_span(list, (draw_point){x, base}, (draw_point){x, top});
        draw_ring(list, (draw_point){x, top + 5},
                  draw_string_seen(draft, k == 0 ? 0 : strings - 1) + 1);
    }
    view_figure_word(list, 26, 0, DRAW_MIDDLE, "caliper, saddle out");
}

void view_figure_bridge_top(const draw_draft *draft, draw_shapes *list)
{
    const double edge = 11, bridge = 6.4;
    const draw_point body[] = {{36, 3},      {52, 3},      {52, bridge - 1},
                               {50, bridge}, {38, bridge}, {36, bridge - 1}};
    (void)draft;
    view_figure_board(list, 0, 30, edge - 1);
    for (int k = 0; k < 5; k++) {
        view_figure_fret(list, 3 + 6 * k, edge - 1, 1);
    }
    draw_line(list, DRAW_SLOT, (draw_point){30, 3}, (draw_point){54, 3});
    draw_path(list, DRAW_SLOT, body, 6, true);
    view_figure_bar(list, DRAW_SLOT, (draw_box){0, edge, 47, edge + 4.6}, false);
    view_figure_span(list, (draw_point){43, bridge}, (draw_point){43, edge});
    view_figure_word(list, 45, 8, DRAW_LEFT, "gap");
    view_figure_word(list, 18, edge + 1.1, DRAW_MIDDLE, "straightedge");
}

/* A slip of paper pushed under the back of the bridge, as a test. */
void view_figure_bridge(const draw_draft *draft, draw_shapes *list)
{
    const draw_point body[] = {{14, 5}, {42, 4.2}, {42, 7}, {36, 10}, {20, 10}, {14, 7}};
    (void)draft;
    draw_line(list, DRAW_OUTLINE, (draw_point){2, 4}, (draw_point){52, 4});
    draw_hatch(list, body, 6, 1.6);
    draw_path(list, DRAW_SLOT, body, 6, true);
    draw_line(list, DRAW_OUTLINE, (draw_point){2, 4.9}, (draw_point){18, 4.4});
    view_figure_word(list, 8, 6.6, DRAW_MIDDLE, "paper");
    view_figure_word(list, 27, 0, DRAW_MIDDLE, "does it go under the bridge?");
}
