/* SPDX-License-Identifier: MIT */
/* Figures of what the strings end on: nut seat, crown, saddle and bridge. */
#include "measure.h"

#include <stddef.h>

void sil_figure_crown(const sil_draft *draft, sil_shapes *list)
{
    const double board = 9, r = 4.6;
    (void)draft;
    sil_figure_board(list, 2, 48, board);
    sil_figure_bar(list, SIL_LAYER_HIDDEN, (sil_box){28.4, board - 3.6, 29.6, board}, false);
    sil_draw_arc(list, SIL_LAYER_OUTLINE, (sil_point){29, board}, r, 0, 180);
    sil_draw_line(list, SIL_LAYER_DIMENSION, (sil_point){17, board + r},
                  (sil_point){28.5, board + r});
    sil_figure_span(list, (sil_point){19, board}, (sil_point){19, board + r});
    sil_figure_word(list, 17, board + 1.4, SIL_RIGHT, "crown");
    sil_figure_word(list, 25, 0.8, SIL_MIDDLE, "by a caliper's depth rod");
}

void sil_figure_seat(const sil_draft *draft, sil_shapes *list)
{
    const double seat = 7, board = 13.5;
    (void)draft;
    const sil_point wood[] = {{50, 4},    {18, 4},    {8, 3.5},        {1, 1.8},       {0, 4.4},
                              {10, seat}, {24, seat}, {24, board - 4}, {50, board - 4}};
    const sil_point nut[] = {
        {17, seat}, {24, seat}, {24, board + 3}, {22.5, board + 3.8}, {17, board + 2}};
    sil_draw_path(list, SIL_LAYER_SLOT, wood, 9, true);
    sil_figure_board(list, 24, 50, board);
    sil_draw_path(list, SIL_LAYER_HIDDEN, nut, 5, true);
    sil_figure_fret(list, 40, board, 1.3);
    sil_draw_line(list, SIL_LAYER_DIMENSION, (sil_point){10, board}, (sil_point){24, board});
    sil_figure_span(list, (sil_point){13, seat}, (sil_point){13, board});
    sil_figure_word(list, 27, board + 2.6, SIL_LEFT, "nut out");
    sil_figure_word(list, 11.2, board - 4.6, SIL_RIGHT, "height");
}

/* A saddle with a screw: nothing is read of it but the travel of a turn. */
static void screw_saddle(sil_shapes *list)
{
    const sil_point body[] = {{18, 9}, {32, 9}, {32, 14}, {25, 16.5}, {18, 14}};
    sil_draw_hatch(list, body, 5, 1.4);
    sil_draw_path(list, SIL_LAYER_SLOT, body, 5, true);
    sil_figure_bar(list, SIL_LAYER_OUTLINE, (sil_box){23.8, 5, 26.2, 9}, false);
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){4, 5}, (sil_point){46, 5});
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){0, 18}, (sil_point){25, 16.8});
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){25, 16.8}, (sil_point){46, 7});
    sil_figure_word(list, 25, 0.6, SIL_MIDDLE, "travel of one turn");
    sil_figure_span(list, (sil_point){14, 5}, (sil_point){14, 9});
    sil_draw_line(list, SIL_LAYER_DIMENSION, (sil_point){12, 9}, (sil_point){18, 9});
}

void sil_figure_slot(const sil_draft *draft, sil_shapes *list)
{
    const double bridge = 12.5, floor = 7.5;
    const sil_point body[] = {{4, 4.5},    {46, 4.5},   {46, 8},      {40, bridge}, {22, bridge},
                              {22, floor}, {18, floor}, {18, bridge}, {9, bridge},  {4, 9}};
    const sil_point saddle[] = {{18.2, floor}, {21.8, floor}, {21.8, 17}, {20, 18}, {18.2, 17}};
    if (!sil_stands_loose(draft->plan->job)) {
        screw_saddle(list);
        return;
    }
    sil_draw_path(list, SIL_LAYER_SLOT, body, 10, true);
    sil_draw_hatch(list, saddle, 5, 1.2);
    sil_draw_path(list, SIL_LAYER_SLOT, saddle, 5, true);
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){0, 18.6}, (sil_point){20, 18.2});
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){20, 18.2}, (sil_point){34, bridge});
    sil_draw_line(list, SIL_LAYER_HIDDEN, (sil_point){34, bridge}, (sil_point){34, 4.5});
    sil_draw_line(list, SIL_LAYER_DIMENSION, (sil_point){12, floor}, (sil_point){18, floor});
    sil_figure_span(list, (sil_point){14, floor}, (sil_point){14, bridge});
    sil_figure_word(list, 16.6, 13.8, SIL_RIGHT, "depth");
    sil_draw_line(list, SIL_LAYER_DIMENSION, (sil_point){20, 4}, (sil_point){20, 1});
    sil_draw_line(list, SIL_LAYER_DIMENSION, (sil_point){34, 4}, (sil_point){34, 1});
    sil_figure_span(list, (sil_point){20, 2}, (sil_point){34, 2});
    sil_figure_word(list, 36, 0.8, SIL_LEFT, "to pin");
}

/* The saddle's face, the treble end at the right, or at the left on a left-handed instrument. */
void sil_figure_caliper(const sil_draft *draft, sil_shapes *list)
{
    enum { ARC = 24 };
    const double base = 5, left = 6, right = 46, end = 13.2;
    sil_point face[ARC + 3] = {{left, base}, {right, base}};
    int strings = draft->plan->job->string_count, seen = strings > 1 ? 2 : 1;
    for (int i = 0; i <= ARC; i++) {
        double t = (double)i / ARC;
        face[i + 2] = (sil_point){right - (right - left) * t, end + 3 * 4 * t * (1 - t)};
    }
    sil_draw_path(list, SIL_LAYER_SLOT, face, ARC + 3, true);
    for (int k = 0; k < seen; k++) {
        double x = seen == 1 ? 26 : k == 0 ? 12 : 40, t = (right - x) / (right - left);
        double top = end + 3 * 4 * t * (1 - t) - 0.3;
        sil_figure_bar(list, SIL_LAYER_OUTLINE, (sil_box){x - 1.2, top, x + 1.2, top + 1.7}, true);
        sil_figure_bar(list, SIL_LAYER_OUTLINE, (sil_box){x - 1.2, base - 1.7, x + 1.2, base},
                       true);
        sil_figure_span(list, (sil_point){x, base}, (sil_point){x, top});
        sil_draw_ring(list, (sil_point){x, top + 5},
                      sil_string_seen(draft, k == 0 ? 0 : strings - 1) + 1);
    }
    sil_figure_word(list, 26, 0, SIL_MIDDLE, "caliper, saddle out");
}

void sil_figure_bridge_top(const sil_draft *draft, sil_shapes *list)
{
    const double edge = 11, bridge = 6.4;
    const sil_point body[] = {{36, 3},      {52, 3},      {52, bridge - 1},
                              {50, bridge}, {38, bridge}, {36, bridge - 1}};
    (void)draft;
    sil_figure_board(list, 0, 30, edge - 1);
    for (int k = 0; k < 5; k++) {
        sil_figure_fret(list, 3 + 6 * k, edge - 1, 1);
    }
    sil_draw_line(list, SIL_LAYER_SLOT, (sil_point){30, 3}, (sil_point){54, 3});
    sil_draw_path(list, SIL_LAYER_SLOT, body, 6, true);
    sil_figure_bar(list, SIL_LAYER_SLOT, (sil_box){0, edge, 47, edge + 4.6}, false);
    sil_figure_span(list, (sil_point){43, bridge}, (sil_point){43, edge});
    sil_figure_word(list, 45, 8, SIL_LEFT, "gap");
    sil_figure_word(list, 18, edge + 1.1, SIL_MIDDLE, "straightedge");
}

/* A slip of paper tried under the back of the bridge. */
void sil_figure_bridge(const sil_draft *draft, sil_shapes *list)
{
    const sil_point body[] = {{14, 5}, {42, 4.2}, {42, 7}, {36, 10}, {20, 10}, {14, 7}};
    (void)draft;
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){2, 4}, (sil_point){52, 4});
    sil_draw_hatch(list, body, 6, 1.6);
    sil_draw_path(list, SIL_LAYER_SLOT, body, 6, true);
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){2, 4.9}, (sil_point){18, 4.4});
    sil_figure_word(list, 8, 6.6, SIL_MIDDLE, "paper");
    sil_figure_word(list, 27, 0, SIL_MIDDLE, "does it go under the bridge?");
}
