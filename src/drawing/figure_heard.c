/* SPDX-License-Identifier: MIT */
/* Figures of dials and of what is heard. */
#include "measure.h"

#include <stddef.h>

static const double degree = 0.017453292519943295;

static sil_point on_dial(sil_point centre, double radius, double turn)
{
    return (sil_point){centre.x + radius * cos(turn * degree),
                       centre.y + radius * sin(turn * degree)};
}

static void dial_tick(sil_shapes *list, sil_point centre, double radius, double turn, double length)
{
    sil_draw_line(list, SIL_LAYER_SLOT, on_dial(centre, radius - length, turn),
                  on_dial(centre, radius, turn));
}

static void needle(sil_shapes *list, sil_point centre, double length, double turn)
{
    sil_draw_line(list, SIL_LAYER_OUTLINE, centre, on_dial(centre, length, turn));
    sil_draw_circle(list, SIL_LAYER_OUTLINE, centre, 0.5);
}

/* 0 to 100 % from the left over the top to the right, the range wanted filled. */
void sil_figure_humidity(const sil_draft *draft, sil_shapes *list)
{
    enum { ARC = 16 };
    const sil_limits *limits = &draft->plan->job->limits;
    const sil_point centre = {27, 5};
    const double radius = 11;
    double low = 180 - 1.8 * limits->humidity_low_pct, high = 180 - 1.8 * limits->humidity_high_pct;
    sil_point band[2 * ARC + 2];
    for (int i = 0; i <= ARC; i++) {
        double turn = low + (high - low) * i / ARC;
        band[i] = on_dial(centre, radius - 0.2, turn);
        band[2 * ARC + 1 - i] = on_dial(centre, radius - 2.2, turn);
    }
    sil_draw_arc(list, SIL_LAYER_OUTLINE, centre, radius, 0, 180);
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){16, 5}, (sil_point){38, 5});
    if (sil_known(low + high)) {
        sil_draw_fill(list, SIL_LAYER_OUTLINE, band, 2 * ARC + 2);
        needle(list, centre, radius - 3.2, (low + high) / 2);
    }
    for (int tenth = 0; tenth <= 10; tenth++) {
        dial_tick(list, centre, radius, 18 * tenth, 1.4);
    }
    sil_figure_word(list, 27, 0.6, SIL_MIDDLE, "room, % humidity");
}

void sil_figure_cents(const sil_draft *draft, sil_shapes *list)
{
    const sil_point centre = {27, 5};
    const double radius = 9.4;
    (void)draft;
    sil_draw_arc(list, SIL_LAYER_OUTLINE, centre, radius, 20, 160);
    for (int k = -5; k <= 5; k++) {
        dial_tick(list, centre, radius, 90 - 14 * k, k == 0 ? 2.6 : 1.4);
    }
    needle(list, centre, radius - 2.2, 83);
    sil_figure_word(list, 14, 10, SIL_RIGHT, "flat -");
    sil_figure_word(list, 40, 10, SIL_LEFT, "+ sharp");
    sil_figure_word(list, 27, 15.6, SIL_MIDDLE, "0");
}

/* A string swinging past the crowns: touches one of them. */
void sil_figure_buzz(const sil_draft *draft, sil_shapes *list)
{
    enum { ARC = 24 };
    const double board = 8, dome = 1.2, from = 18, to = 76, rest = 10.2;
    sil_point swing[ARC + 1];
    (void)draft;
    sil_figure_board(list, 0, 70, board);
    for (int k = 0; k < 6; k++) {
        sil_figure_fret(list, 4 + 14 * k - k * k * 0.5, board, dome);
    }
    for (int way = -1; way <= 1; way += 2) {
        for (int i = 0; i <= ARC; i++) {
            double t = (double)i / ARC, line = board + dome + (rest + 3 - board - dome) * t;
            swing[i] = (sil_point){from + (to - from) * t, line + way * 1.35 * 4 * t * (1 - t)};
        }
        sil_draw_path(list, SIL_LAYER_HIDDEN, swing, ARC + 1, false);
    }
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){from, board + dome},
                  (sil_point){to, rest + 3});
    sil_figure_press(list, (sil_point){14, board + 0.8}, 16, "");
    sil_figure_word(list, 16, 15.2, SIL_LEFT, "write where it is stopped");
}
