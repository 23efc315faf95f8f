/* SPDX-License-Identifier: MIT */
/* Dimensions after ISO 129-1: figures above their line, read from below or from the right. */
#include "draft.h"

static const double arrow_length = 2.5, arrow_half = 0.42;
static const double overshoot = 1.5; /* how far a lead-out line goes past the dimension line */
static const double clear = 1.1;     /* from the line up to the figure: room for a comma's tail */

void draw_arrow(draw_shapes *list, draw_layer layer, draw_point tip, double direction)
{
    double c = cos(direction * 0.017453292519943295), s = sin(direction * 0.017453292519943295);
    double l = arrow_length, h = arrow_half;
    const draw_point head[] = {tip,
                               {tip.x - l * c + h * s, tip.y - l * s - h * c},
                               {tip.x - l * c - h * s, tip.y - l * s + h * c}};
    draw_fill(list, layer, head, 3);
}

/* Dimensions are laid out level, in (u, v). An upright one is the same, turned by 90 degrees. */
static draw_point turned(bool up, double u, double v)
{
    return up ? (draw_point){-v, u} : (draw_point){u, v};
}

static void lead_out(draw_shapes *list, bool up, double u, double v, double line)
{
    double s = line >= v ? 1 : -1;
    draw_line(list, DRAW_DIMENSION, turned(up, u, v + s * 0.8),
              turned(up, u, line + s * overshoot));
}

static void dim(const draw_draft *draft, draw_shapes *list, bool up, double u1, double v1,
                double u2, double v2, double line, brief_figure figure)
{
    const char *words = draw_dimension(draft, figure);
    double low = fmin(u1, u2), high = fmax(u1, u2), turn = up ? 90 : 0;
    double width = draw_text_width(list, words, DRAW_NOTE);
    bool arrows_in = high - low >= 3 * arrow_length, text_in = high - low >= width + 1;
    double tail = arrows_in ? 0 : 2 * arrow_length;
    double end = high + tail + (text_in ? 0 : width + 2);
    lead_out(list, up, u1, v1, line);
    lead_out(list, up, u2, v2, line);
    draw_line(list, DRAW_DIMENSION, turned(up, low - tail, line), turned(up, end, line));
    draw_arrow(list, DRAW_DIMENSION, turned(up, low, line), arrows_in ? turn + 180 : turn);
    draw_arrow(list, DRAW_DIMENSION, turned(up, high, line), arrows_in ? turn : turn + 180);
    double middle = text_in ? (low + high) / 2 : end - width / 2 - 0.5;
    draw_text(list, DRAW_TEXT, turned(up, middle, line + clear), DRAW_NOTE, DRAW_MIDDLE, turn,
              words);
}

void draw_dim_across(const draw_draft *draft, draw_shapes *list, draw_point a, draw_point b,
                     double y, brief_figure figure)
{
    dim(draft, list, false, a.x, a.y, b.x, b.y, y, figure);
}

void draw_dim_up(const draw_draft *draft, draw_shapes *list, draw_point a, draw_point b, double x,
                 brief_figure figure)
{
    dim(draft, list, true, a.y, -a.x, b.y, -b.x, -x, figure);
}

/* Neighbours that are too close are pooled, and the pool is spaced a pitch apart around its
 * mean. This moves all of them the least (isotonic least squares). */
void draw_spread(int count, double *place, double pitch)
{
    double mean[DRAW_ORDINATES_MAX];
    int size[DRAW_ORDINATES_MAX], pools = 0;
    for (int i = 0; i < count; i++) {
        mean[pools] = place[i] - i * pitch;
        size[pools++] = 1;
        while (pools > 1 && mean[pools - 2] > mean[pools - 1]) {
            int a = size[pools - 2], b = size[pools - 1];
            mean[pools - 2] = (a * mean[pools - 2] + b * mean[pools - 1]) / (a + b);
            size[pools-- - 2] = a + b;
        }
    }
    for (int pool = 0, i = 0; pool < pools; pool++) {
        for (int k = 0; k < size[pool]; k++, i++) {
            place[i] = mean[pool] + i * pitch;
        }
    }
}

/* Sorts the row by rising x, because a mirrored row is given in the opposite order. */
static void sort_by_x(const draw_ordinates *o, int *order)
{
    for (int i = 0; i < o->count; i++) {
        int at = i;
        for (; at > 0 && o->from[order[at - 1]].x > o->from[i].x; at--) {
            order[at] = order[at - 1];
        }
        order[at] = i;
    }
}

/* The ordinates by rising x. Each has its text and the place where its line ends. */
typedef struct row {
    int order[DRAW_ORDINATES_MAX];
    const char *words[DRAW_ORDINATES_MAX];
    double place[DRAW_ORDINATES_MAX];
    bool level, figures; /* the figures are level; there is a figure at all */
    double longest;      /* the longest upright figure */
} row;

/* Whether there is enough room between neighbours for level figures; otherwise they are upright. */
static bool lie_level(const draw_shapes *list, const draw_ordinates *o, const row *r)
{
    for (int i = 1; i < o->count; i++) {
        double apart = o->from[r->order[i]].x - o->from[r->order[i - 1]].x;
        double widths = draw_text_width(list, r->words[i], DRAW_NOTE) +
                        draw_text_width(list, r->words[i - 1], DRAW_NOTE);
        if (apart < widths / 2 + 1.5) {
            return false;
        }
    }
    return true;
}

static row lay_out(const draw_draft *draft, const draw_shapes *list, const draw_ordinates *o)
{
    row r = {.longest = DRAW_NOTE};
    sort_by_x(o, r.order);
    for (int i = 0; i < o->count; i++) {
        int k = r.order[i];
        r.place[i] = o->from[k].x;
        r.words[i] = o->origin && k == 0 ? "0" : draw_figure(draft, o->figure[k]);
        r.figures = r.figures || r.words[i][0] != '\0';
    }
    r.level = lie_level(list, o, &r);
    for (int i = 0; i < o->count && !r.level; i++) {
        r.longest = fmax(r.longest, draw_text_width(list, r.words[i], DRAW_NOTE));
    }
    draw_spread(o->count, r.place, o->numbered ? 5.2 : 1.7 * DRAW_NOTE);
    return r;
}

double draw_dim_ordinates(const draw_draft *draft, draw_shapes *list, const draw_ordinates *o)
{
    row r = lay_out(draft, list, o);
    double s = o->count > 0 && o->reach < o->from[0].y ? -1 : 1;
    double ring = r.figures ? r.longest + 5 : 2.3; /* beyond the figures, or at the line's end */
    for (int i = 0; i < o->count; i++) {
        draw_point from = o->from[r.order[i]];
        const draw_point line[] = {{from.x, from.y + s * (o->touches ? 0 : 0.8)},
                                   {from.x, o->reach - s * 4},
                                   {r.place[i], o->reach - s * 1.5},
                                   {r.place[i], o->reach}};
        double base = o->reach + s * 1.2 - (r.level && s < 0 ? DRAW_NOTE : 0);
        draw_of(list, o->numbered ? o->number[r.order[i]] : 0);
        draw_path(list, DRAW_DIMENSION, line, 4, false);
        draw_text(list, DRAW_TEXT, (draw_point){r.place[i] + (r.level ? 0 : DRAW_NOTE / 2), base},
                  DRAW_NOTE,
                  r.level ? DRAW_MIDDLE
                  : s > 0 ? DRAW_LEFT
                          : DRAW_RIGHT,
                  r.level ? 0 : 90, r.words[i]);
        if (o->numbered) {
            draw_ring(list, (draw_point){r.place[i], o->reach + s * ring}, o->number[r.order[i]]);
        }
    }
    draw_of(list, 0);
    return o->reach + s * (o->numbered ? ring + 2.5 : r.longest + 1.2);
}

double draw_dim_chain(const draw_draft *draft, draw_shapes *list, int count, const double *x,
                      const brief_figure *gap, double from, double y)
{
    const double stroke = 0.9;
    draw_ordinates figures = {.reach = y - 5};
    for (int i = 0; i < count; i++) {
        lead_out(list, false, x[i], from, y);
        draw_line(list, DRAW_SLOT, (draw_point){x[i] - stroke, y - stroke},
                  (draw_point){x[i] + stroke, y + stroke});
    }
    for (int i = 0; i + 1 < count; i++) {
        figures.from[i] = (draw_point){(x[i] + x[i + 1]) / 2, y};
        figures.figure[figures.count++] = gap[i];
    }
    draw_line(list, DRAW_DIMENSION, (draw_point){x[0], y}, (draw_point){x[count - 1], y});
    return draw_dim_ordinates(draft, list, &figures);
}

void draw_plane(draw_shapes *list, draw_point low, draw_point high, int side, bool across,
                draw_box view, const char *letter)
{
    const double clear_of = 0.8, stroke = 2.2, shaft = 4;
    double long_ = hypot(high.x - low.x, high.y - low.y);
    draw_point up = {(high.x - low.x) / long_, (high.y - low.y) / long_};
    draw_point ends[2] = {{low.x - clear_of * up.x, low.y - clear_of * up.y},
                          {high.x + clear_of * up.x, high.y + clear_of * up.y}};
    if (across) {
        draw_line(list, DRAW_CENTRE, ends[0], ends[1]);
    }
    for (int end = 0; end < 2; end++) {
        double s = end == 0 ? -1 : 1;
        draw_point at = ends[end], out = {at.x + s * stroke * up.x, at.y + s * stroke * up.y};
        draw_point tip = {(at.x + out.x) / 2 + side * shaft, (at.y + out.y) / 2};
        double back = at.x - side * shaft; /* there may be room for the letter behind the arrow */
        bool room = back >= view.left && back <= view.right;
        double behind = shaft + 1.2 + stroke / 2 * fabs(up.x); /* clear of a stroke that slants */
        double edge = end == 0 ? low.y : high.y; /* the letter keeps clear of it, too */
        draw_line(list, DRAW_OUTLINE, at, out);
        draw_line(list, DRAW_DIMENSION, (draw_point){tip.x - side * shaft, tip.y},
                  (draw_point){tip.x - side, tip.y});
        draw_arrow(list, DRAW_DIMENSION, tip, side > 0 ? 0 : 180);
        draw_text(list, DRAW_TEXT,
                  (draw_point){room ? tip.x - side * behind : tip.x + side * 0.8,
                               edge + s * (clear_of + stroke / 2) - DRAW_NOTE / 2},
                  DRAW_NOTE, room == (side < 0) ? DRAW_LEFT : DRAW_RIGHT, 0, letter);
    }
}

void draw_leader(draw_shapes *list, draw_point feature, draw_point knee)
{
    draw_line(list, DRAW_DIMENSION, feature, knee);
    double direction = atan2(feature.y - knee.y, feature.x - knee.x) / 0.017453292519943295;
    draw_arrow(list, DRAW_DIMENSION, feature, direction);
}

void draw_ring(draw_shapes *list, draw_point centre, int number)
{
    draw_circle(list, DRAW_DIMENSION, centre, 2.3);
    draw_number(list, (draw_point){centre.x, centre.y - DRAW_NOTE / 2}, DRAW_NOTE, DRAW_MIDDLE,
                number);
}
