/* SPDX-License-Identifier: MIT */
#include "views.h"

void view_cross(draw_shapes *list, draw_point at)
{
    const double arm = 1.2;
    draw_line(list, DRAW_CONTACT, (draw_point){at.x - arm, at.y}, (draw_point){at.x + arm, at.y});
    draw_line(list, DRAW_CONTACT, (draw_point){at.x, at.y - arm}, (draw_point){at.x, at.y + arm});
}

draw_point view_behind_saddle(const draw_draft *draft, draw_place place, int string, double off)
{
    const part_saddle *part = &draft->brief->saddle_part;
    double x = part->along[string];
    return draw_at(place, x - off * sin(part->slant), -off * cos(part->slant));
}

/* Writes each figure beside the tip of its arrow, if there is room between them. */
static bool put_beside(const draw_draft *draft, draw_shapes *list, const draw_ordinates *row,
                       int side)
{
    const double gap = 1.2, clear = 2;
    for (int i = 1; i < row->count; i++) {
        double apart = fabs(row->from[i].x - row->from[i - 1].x);
        if (apart < gap + clear + draw_text_width(list, row->figure[i].shown, DRAW_NOTE)) {
            return false;
        }
    }
    for (int i = 0; i < row->count; i++) {
        draw_point tip = row->from[i];
        draw_text(list, DRAW_TEXT,
                  (draw_point){tip.x + gap, tip.y - (side > 0 ? 1 : DRAW_NOTE - 1)}, DRAW_NOTE,
                  DRAW_LEFT, 0, draw_figure(draft, row->figure[i]));
    }
    return true;
}

/* Says what the figures of a row are: to the right of them, or to the left, as fully as the saddle leaves
 * room for. "In front" after a figure would be read as inches. */
static void say_beyond(draw_shapes *list, draw_place place, double length,
                       const draw_ordinates *row, int side, bool beside)
{
    static const char *const words[2][2] = {{"behind the saddle", "behind"},
                                            {"ahead of the saddle", "ahead"}};
    const double apart = beside ? 1.2 : 6; /* upright figures may be moved aside */
    double end = draw_at(place, length, 0).x, low = fmin(place.x, end), high = fmax(place.x, end);
    double left = (double)INFINITY, right = -left;
    for (int i = 0; i < row->count; i++) {
        double figure = draw_text_width(list, row->figure[i].shown, DRAW_NOTE);
        left = fmin(left, row->from[i].x - apart);
        right = fmax(right, row->from[i].x + (beside ? apart + figure : 0) + apart);
    }
    double y = row->from[0].y - (side > 0 ? 1 : DRAW_NOTE - 1);
    for (int k = 0; k < 4; k++) {
        const char *said = words[side > 0][k % 2];
        double width = draw_text_width(list, said, DRAW_NOTE);
        if (k < 2 ? right + width <= high : left - width >= low) {
            draw_text(list, DRAW_TEXT, (draw_point){k < 2 ? right : left, y}, DRAW_NOTE,
                      k < 2 ? DRAW_LEFT : DRAW_RIGHT, 0, said);
            return;
        }
    }
}

/* Points to the places in tune beyond one edge of the saddle: 1 for the edge toward the nut, -1 for
 * the other. */
static void point_beyond(const draw_draft *draft, draw_shapes *list, draw_place place, int side)
{
    const double shaft = 3.2, head = 1, figures = 5;
    const part_saddle *part = &draft->brief->saddle_part;
    double edge = side * part->thickness / 2, across = fabs(edge) / cos(part->slant);
    draw_ordinates row = {.reach = draw_at(place, 0, edge).y + side * (shaft + figures)};
    for (int i = 0; i < part->strings; i++) {
        if (-side * part->in_tune[i] > across) {
            double x = part->along[i] + edge * tan(part->slant);
            draw_point from = draw_at(place, x, edge), tip = {from.x, from.y + side * shaft};
            draw_of(list, i + 1);
            draw_line(list, DRAW_DIMENSION, from, (draw_point){tip.x, tip.y - side * head});
            draw_arrow(list, DRAW_DIMENSION, tip, side * 90);
            row.from[row.count] = tip;
            row.figure[row.count++] = draft->brief->saddle.string[i].beyond;
        }
    }
    draw_of(list, 0);
    bool beside = put_beside(draft, list, &row, side);
    if (!beside) {
        draw_dim_ordinates(draft, list, &row);
    }
    if (row.count > 0) {
        say_beyond(list, place, part->length, &row, side, beside);
    }
}

void view_saddle_top(const draw_draft *draft, draw_shapes *list, draw_place place, double reach)
{
    const part_saddle *part = &draft->brief->saddle_part;
    double length = part->length, half = part->thickness / 2;
    const draw_point corners[] = {draw_at(place, 0, -half), draw_at(place, length, -half),
                                  draw_at(place, length, half), draw_at(place, 0, half)};
    draw_path(list, DRAW_OUTLINE, corners, 4, true);
    double over = place.across > 0 ? 3 : -3;
    draw_line(list, DRAW_CENTRE, (draw_point){draw_at(place, 0, 0).x - over, place.y},
              (draw_point){draw_at(place, length, 0).x + over, place.y});
    for (int i = 0; i < part->strings; i++) {
        draw_of(list, i + 1);
        if (fabs(part->peak[i]) <= reach) {
            view_cross(list, view_behind_saddle(draft, place, i, part->peak[i]));
        }
    }
    draw_of(list, 0);
    point_beyond(draft, list, place, 1);
    point_beyond(draft, list, place, -1);
}
