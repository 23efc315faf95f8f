/* SPDX-License-Identifier: MIT */
/* Figures of the neck from the side, with the nut at the left: relief, crowns, and the string
 * above them. */
#include "measure.h"

#include <stddef.h>

/* --- relief ----------------------------------------------------------------------------------- */

enum { CURVE = 48 };
static const double width = 54, line = 11.6, radius = 0.7, bow = 3.4;

/* The x of fret n of a neck whose fret `end` is at x 47. */
static double fret_at(int n, int end)
{
    return 2 + 45 * (1 - pow(2, -n / 12.0)) / (1 - pow(2, -end / 12.0));
}

static double board_top(double x, double first, double join)
{
    double t = fmin((x - first) / (join - first), 1);
    double sag = t < 0 ? t / (1 - 6 * t) : t * (1 - t); /* it levels out toward the nut */
    return line - radius - bow * 4 * sag;
}

static void bowed_neck(draw_shapes *list, int join, int end)
{
    draw_point points[CURVE + 3];
    double first = fret_at(1, end), at = fret_at(join, end);
    for (int i = 0; i <= CURVE; i++) {
        double x = width * i / CURVE;
        points[i] = (draw_point){x, board_top(x, first, at)};
    }
    points[CURVE + 1] = (draw_point){width, 2.2};
    points[CURVE + 2] = (draw_point){0, 4.2};
    draw_hatch(list, points, CURVE + 3, 1.4);
    draw_path(list, DRAW_SLOT, points, CURVE + 3, true);
    for (int n = 1; n <= end; n++) {
        double x = fret_at(n, end);
        view_figure_fret(list, x, board_top(x, first, at), radius);
    }
}

void view_figure_relief(const draw_draft *draft, draw_shapes *list)
{
    const sil_bench *bench = &draft->plan->bench;
    const sil_relief_reading *laid = &bench->relief;
    int join = bench->board.join, end = join > laid->high ? join : laid->high;
    double low = fret_at(laid->low, end), high = fret_at(laid->high, end);
    double over = fret_at(laid->over, end);
    double crown = board_top(over, fret_at(1, end), fret_at(join, end)) + radius;
    const char *verb = laid->straightedge ? "on" : "hold";
    bowed_neck(list, join, end);
    if (laid->straightedge) {
        view_figure_bar(list, DRAW_OUTLINE, (draw_box){low - 1.5, line, high + 1.5, line + 2.4},
                        false);
    } else {
        draw_line(list, DRAW_OUTLINE, (draw_point){0, line}, (draw_point){width, line});
    }
    double touch = laid->straightedge ? line + 2.7 : line + 0.4;
    view_figure_press(list, (draw_point){low, touch}, 21, "");
    view_figure_press(list, (draw_point){high, touch}, 21, "");
    view_figure_word(list, fmin(low - 2, 20), 22.2, DRAW_LEFT,
                     draw_say(draft, "%s %d", verb, laid->low));
    view_figure_word(list, fmin(high + 4, width), 22.2, DRAW_RIGHT,
                     draw_say(draft, "%s %d", verb, laid->high));
    view_figure_bar(list, DRAW_OUTLINE, (draw_box){over - 0.7, crown, over + 0.7, line}, true);
    double word = fmax(low + 12, fmin(over, high - 12));
    draw_line(list, DRAW_DIMENSION, (draw_point){over, laid->straightedge ? line + 2.4 : line},
              (draw_point){over, 16});
    view_figure_word(list, word, 17, DRAW_MIDDLE, draw_say(draft, "feeler at %d", laid->over));
}

/* --- the string over the crowns --------------------------------------------------------------- */

static const double top = 8, dome = 1.3; /* the heights of the board and of a crown on it */

static void numbered(draw_shapes *list, double x, int fret)
{
    view_figure_fret(list, x, top, dome);
    draw_number(list, (draw_point){x, 0.4}, DRAW_NOTE, DRAW_MIDDLE, fret);
}

static void feeler(draw_shapes *list, double x, double under)
{
    view_figure_bar(list, DRAW_OUTLINE, (draw_box){x - 1, top + dome, x + 1, under}, true);
    draw_line(list, DRAW_DIMENSION, (draw_point){x, under}, (draw_point){x, 18});
    view_figure_word(list, x, 19, DRAW_MIDDLE, "feeler");
}

void view_figure_first(const draw_draft *draft, draw_shapes *list)
{
    static const double x[] = {9, 26, 42, 57, 71};
    const double nut = 12.8;
    sil_hold hold = draft->plan->bench.gaps.first_held;
    const draw_point block[] = {{3, 2.5}, {9, 2.5}, {9, nut}, {7.5, nut + 0.8}, {3, nut - 0.6}};
    draw_hatch(list, block, 5, -1.4);
    draw_path(list, DRAW_SLOT, block, 5, true);
    view_figure_board(list, 9, 78, top);
    for (int n = 1; n <= 4; n++) {
        numbered(list, x[n], n);
    }
    draw_line(list, DRAW_OUTLINE, (draw_point){9, nut}, (draw_point){0, nut - 2.4});
    if (hold == SIL_HOLD_OPEN) {
        draw_line(list, DRAW_OUTLINE, (draw_point){9, nut}, (draw_point){78, nut + 2});
        feeler(list, x[1], nut + 2 * (x[1] - x[0]) / 69);
        view_figure_word(list, 58, 19, DRAW_MIDDLE, "nothing held");
        return;
    }
    double crown = top + dome + 0.25, bears = x[hold], finger = bears + 4;
    const draw_point run[] = {{9, nut}, {bears, crown}, {finger, crown - 0.6}, {78, crown + 1.2}};
    draw_path(list, DRAW_OUTLINE, run, 4, false);
    feeler(list, x[1], nut - (nut - crown) * (x[1] - x[0]) / (bears - x[0]));
    view_figure_press(list, (draw_point){finger, crown - 0.2}, 17.8,
                      hold == SIL_HOLD_2 ? "press behind 2" : "hold behind 3");
}

/* A ruler held upright next to the string, with its end on the crown. */
static void ruler(draw_shapes *list, double x, double foot)
{
    const double tall = 12, wide = 4;
    view_figure_bar(list, DRAW_SLOT, (draw_box){x, foot, x + wide, foot + tall}, false);
    for (int mm = 1; mm < tall; mm++) {
        draw_line(list, DRAW_RULE, (draw_point){x, foot + mm},
                  (draw_point){x + (mm % 5 == 0 ? 2.4 : 1.4), foot + mm});
    }
}

void view_figure_action(const draw_draft *draft, draw_shapes *list)
{
    static const double x[] = {12, 25, 37, 48, 58};
    const double under = 14, thick = 0.9;
    const sil_gaps *gaps = &draft->plan->bench.gaps;
    const draw_point string[] = {
        {0, under - 0.6}, {78, under + 0.6}, {78, under + 0.6 + thick}, {0, under - 0.6 + thick}};
    view_figure_board(list, 0, 66, top);
    for (int k = 0; k < 5; k++) {
        int fret = gaps->action_at - 2 + k;
        if (fret <= draft->plan->bench.board.frets) {
            numbered(list, x[k], fret);
        }
    }
    ruler(list, x[2], top + dome);
    draw_fill(list, DRAW_OUTLINE, string, 4);
    view_figure_span(list, (draw_point){x[2] - 2, top + dome},
                     (draw_point){x[2] - 2, under - 0.05});
    draw_leader(list, (draw_point){x[2] - 2.4, under - 0.4}, (draw_point){25, 18.2});
    view_figure_word(list, 26.5, 18.8, DRAW_RIGHT, "to the underside");
    view_figure_word(list, 43, 19.6, DRAW_LEFT,
                     gaps->capo ? "ruler; capo at 1" : "ruler, string open");
}

void view_figure_crowns(const draw_draft *draft, draw_shapes *list)
{
    const double base = 9, apart = 8;
    (void)draft;
    for (int pair = 0; pair < 2; pair++) {
        double left = 29 * pair, middle = left + 12;
        view_figure_board(list, left, left + 24, base);
        view_figure_fret(list, middle - apart, base, 1.4);
        view_figure_fret(list, middle + apart, base, 1.4);
    }
    view_figure_fret(list, 12, base - 0.7, 1.4);
    view_figure_bar(list, DRAW_SLOT, (draw_box){1, base + 1.5, 23, base + 6}, false);
    draw_leader(list, (draw_point){12, base + 1.0}, (draw_point){12, base + 8});
    view_figure_word(list, 12, base + 9, DRAW_MIDDLE, "feeler: worn -");
    view_figure_fret(list, 41, base, 2.2);
    const draw_point edge[] = {
        {31, base + 1.6}, {51.6, base + 2.85}, {51.3, base + 7.3}, {30.7, base + 6}};
    draw_path(list, DRAW_SLOT, edge, 4, true);
    view_figure_word(list, 41, base + 9, DRAW_MIDDLE, "rocks: proud +");
}
