/* SPDX-License-Identifier: MIT */
/* What the measuring sheet's figures are put together from. */
#include "measure.h"

void sil_figure_word(sil_shapes *list, double x, double y, sil_anchor anchor, const char *word)
{
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){x, y}, SIL_NOTE, anchor, 0, word);
}

void sil_figure_bar(sil_shapes *list, sil_layer layer, sil_box box, bool filled)
{
    const sil_point corners[] = {
        {box.left, box.bottom}, {box.right, box.bottom}, {box.right, box.top}, {box.left, box.top}};
    if (filled) {
        sil_draw_fill(list, layer, corners, 4);
    } else {
        sil_draw_path(list, layer, corners, 4, true);
    }
}

void sil_figure_board(sil_shapes *list, double left, double right, double top)
{
    const double thick = 4;
    const sil_point corners[] = {
        {left, top - thick}, {right, top - thick}, {right, top}, {left, top}};
    sil_draw_hatch(list, corners, 4, 1.4);
    sil_draw_path(list, SIL_LAYER_SLOT, corners, 4, true);
}

void sil_figure_fret(sil_shapes *list, double x, double y, double radius)
{
    enum { PIECES = 12 };
    sil_point points[PIECES + 1];
    for (int i = 0; i <= PIECES; i++) {
        double turn = 3.14159265358979 * i / PIECES;
        points[i] = (sil_point){x + radius * cos(turn), y + radius * sin(turn)};
    }
    sil_draw_fill(list, SIL_LAYER_OUTLINE, points, PIECES + 1);
}

void sil_figure_press(sil_shapes *list, sil_point at, double from, const char *word)
{
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){at.x, from}, (sil_point){at.x, at.y + 2});
    sil_draw_arrow(list, SIL_LAYER_OUTLINE, at, -90);
    sil_figure_word(list, at.x, from + 1.2, SIL_MIDDLE, word);
}

void sil_figure_span(sil_shapes *list, sil_point a, sil_point b)
{
    double turn = a.x == b.x ? 90 : 0;
    sil_draw_line(list, SIL_LAYER_DIMENSION, a, b);
    sil_draw_arrow(list, SIL_LAYER_DIMENSION, a, turn + 180);
    sil_draw_arrow(list, SIL_LAYER_DIMENSION, b, turn);
}
