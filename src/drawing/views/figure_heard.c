/* SPDX-License-Identifier: MIT */
/* Figures of dials and of what is heard. */
#include "measure.h"

#include <stddef.h>

static const double degree = 0.017453292519943295;

static draw_point on_dial(draw_point centre, double radius, double turn)
{
    return (draw_point){centre.x + radius * cos(turn * degree),
                        centre.y + radius * sin(turn * degree)};
}

static void dial_tick(draw_shapes *list, draw_point centre, double radius, double turn,
                      double length)
{
    draw_line(list, DRAW_SLOT, on_dial(centre, radius - length, turn),
              on_dial(centre, radius, turn));
}

static void needle(draw_shapes *list, draw_point centre, double length, double turn)
{
    draw_line(list, DRAW_OUTLINE, centre, on_dial(centre, length, turn));
    draw_circle(list, DRAW_OUTLINE, centre, 0.5);
}

/* A dial from 0 % at the left over the top to 100 % at the right, with the target range filled. */
void view_figure_humidity(const draw_draft *draft, draw_shapes *list)
{
    enum { ARC = 16 };
    const sil_limits *limits = &draft->plan->job->limits;
    const draw_point centre = {27, 5};
    const double radius = 11;
    double low = 180 - 1.8 * limits->humidity_low_pct, high = 180 - 1.8 * limits->humidity_high_pct;
    draw_point band[2 * ARC + 2];
    for (int i = 0; i <= ARC; i++) {
        double turn = low + (high - low) * i / ARC;
        band[i] = on_dial(centre, radius - 0.2, turn);
        band[2 * ARC + 1 - i] = on_dial(centre, radius - 2.2, turn);
    }
    draw_arc(list, DRAW_OUTLINE, centre, radius, 0, 180);
    draw_line(list, DRAW_OUTLINE, (draw_point){16, 5}, (draw_point){38, 5});
    if (sil_known(low + high)) {
        draw_fill(list, DRAW_OUTLINE, band, 2 * ARC + 2);
        needle(list, centre, radius - 3.2, (low + high) / 2);
    }
    for (int tenth = 0; tenth <= 10; tenth++) {
        dial_tick(list, centre, radius, 18 * tenth, 1.4);
    }
    view_figure_word(list, 27, 0.6, DRAW_MIDDLE, "room, % humidity");
}

void view_figure_cents(const draw_draft *draft, draw_shapes *list)
{
    const draw_point centre = {27, 5};
    const double radius = 9.4;
    (void)draft;
    draw_arc(list, DRAW_OUTLINE, centre, radius, 20, 160);
    for (int k = -5; k <= 5; k++) {
        dial_tick(list, centre, radius, 90 - 14 * k, k == 0 ? 2.6 : 1.4);
    }
    needle(list, centre, radius - 2.2, 83);
    view_figure_word(list, 14, 10, DRAW_RIGHT, "flat -");
    view_figure_word(list, 40, 10, DRAW_LEFT, "+ sharp");
    view_figure_word(list, 27, 15.6, DRAW_MIDDLE, "0");
}

/* A string that swings over the crowns and touches one of them. */
void view_figure_buzz(const draw_draft *draft, draw_shapes *list)
{
    enum { ARC = 24 };
    const double board = 8, dome = 1.2, from = 18, to = 76, rest = 10.2;
    draw_point swing[ARC + 1];
    (void)draft;
    view_figure_board(list, 0, 70, board);
    for (int k = 0; k < 6; k++) {
        view_figure_fret(list, 4 + 14 * k - k * k * 0.5, board, dome);
    }
    for (int way = -1; way <= 1; way += 2) {
        for (int i = 0; i <= ARC; i++) {
            double t = (double)i / ARC, line = board + dome + (rest + 3 - board - dome) * t;
            swing[i] = (draw_point){from + (to - from) * t, line + way * 1.35 * 4 * t * (1 - t)};
        }
        draw_path(list, DRAW_HIDDEN, swing, ARC + 1, false);
    }
    draw_line(list, DRAW_OUTLINE, (draw_point){from, board + dome}, (draw_point){to, rest + 3});
    view_figure_press(list, (draw_point){14, board + 0.8}, 16, "");
    view_figure_word(list, 16, 15.2, DRAW_LEFT, "write where it is fretted");
}
