/* SPDX-License-Identifier: MIT */
/* The pieces that the figures of the measuring sheet are built from. */
#include "measure.h"

void view_figure_word(draw_shapes *list, double x, double y, draw_anchor anchor, const char *word)
{
    draw_text(list, DRAW_TEXT, (draw_point){x, y}, DRAW_NOTE, anchor, 0, word);
}

void view_figure_bar(draw_shapes *list, draw_layer layer, draw_box box, bool filled)
{
    const draw_point corners[] = {
        {box.left, box.bottom}, {box.right, box.bottom}, {box.right, box.top}, {box.left, box.top}};
    if (filled) {
        draw_fill(list, layer, corners, 4);
    } else {
        draw_path(list, layer, corners, 4, true);
    }
}

void view_figure_board(draw_shapes *list, double left, double right, double top)
{
    const double thick = 4;
    const draw_point corners[] = {
        {left, top - thick}, {right, top - thick}, {right, top}, {left, top}};
    draw_hatch(list, corners, 4, 1.4);
    draw_path(list, DRAW_SLOT, corners, 4, true);
}

void view_figure_fret(draw_shapes *list, double x, double y, double radius)
{
    enum { PIECES = 12 };
    draw_point points[PIECES + 1];
    for (int i = 0; i <= PIECES; i++) {
        double turn = 3.14159265358979 * i / PIECES;
        points[i] = (draw_point){x + radius * cos(turn), y + radius * sin(turn)};
    }
    draw_fill(list, DRAW_OUTLINE, points, PIECES + 1);
}

void view_figure_press(draw_shapes *list, draw_point at, double from, const char *word)
{
    draw_line(list, DRAW_OUTLINE, (draw_point){at.x, from}, (draw_point){at.x, at.y + 2});
    draw_arrow(list, DRAW_OUTLINE, at, -90);
    view_figure_word(list, at.x, from + 1.2, DRAW_MIDDLE, word);
}

void view_figure_span(draw_shapes *list, draw_point a, draw_point b)
{
    double turn = a.x == b.x ? 90 : 0;
    draw_line(list, DRAW_DIMENSION, a, b);
    draw_arrow(list, DRAW_DIMENSION, a, turn + 180);
    draw_arrow(list, DRAW_DIMENSION, b, turn);
}
