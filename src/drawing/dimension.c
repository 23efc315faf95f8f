/* SPDX-License-Identifier: MIT */
/* Dimensions after ISO 129-1: figures above their line, read from below or from the right. */
#include "draft.h"

static const double arrow_length = 2.5, arrow_half = 0.42;
static const double overshoot = 1.5; /* of a lead-out line past the dimension's line */
static const double clear = 1.1;     /* figure over its line: a comma hangs below it */

void sil_draw_arrow(sil_shapes *list, sil_layer layer, sil_point tip, double direction)
{
    double c = cos(direction * 0.017453292519943295), s = sin(direction * 0.017453292519943295);
    double l = arrow_length, h = arrow_half;
    const sil_point head[] = {tip,
                              {tip.x - l * c + h * s, tip.y - l * s - h * c},
                              {tip.x - l * c - h * s, tip.y - l * s + h * c}};
    sil_draw_fill(list, layer, head, 3);
}

/* Dimensions are laid out lying, (u, v); an upright one is the same turned by 90 degrees. */
static sil_point turned(bool up, double u, double v)
{
    return up ? (sil_point){-v, u} : (sil_point){u, v};
}

static void lead_out(sil_shapes *list, bool up, double u, double v, double line)
{
    double s = line >= v ? 1 : -1;
    sil_draw_line(list, SIL_LAYER_DIMENSION, turned(up, u, v + s * 0.8),
                  turned(up, u, line + s * overshoot));
}

static void dim(sil_shapes *list, bool up, double u1, double v1, double u2, double v2, double line,
                const char *text)
{
    double low = fmin(u1, u2), high = fmax(u1, u2), turn = up ? 90 : 0;
    double width = sil_text_width(list, text, SIL_NOTE);
    bool arrows_in = high - low >= 3 * arrow_length, text_in = high - low >= width + 1;
    double tail = arrows_in ? 0 : 2 * arrow_length;
    double end = high + tail + (text_in ? 0 : width + 2);
    lead_out(list, up, u1, v1, line);
    lead_out(list, up, u2, v2, line);
    sil_draw_line(list, SIL_LAYER_DIMENSION, turned(up, low - tail, line), turned(up, end, line));
    sil_draw_arrow(list, SIL_LAYER_DIMENSION, turned(up, low, line), arrows_in ? turn + 180 : turn);
    sil_draw_arrow(list, SIL_LAYER_DIMENSION, turned(up, high, line),
                   arrows_in ? turn : turn + 180);
    double middle = text_in ? (low + high) / 2 : end - width / 2 - 0.5;
    sil_draw_text(list, SIL_LAYER_TEXT, turned(up, middle, line + clear), SIL_NOTE, SIL_MIDDLE,
                  turn, text);
}

void sil_dim_across(sil_shapes *list, sil_point a, sil_point b, double y, const char *text)
{
    dim(list, false, a.x, a.y, b.x, b.y, y, text);
}

void sil_dim_up(sil_shapes *list, sil_point a, sil_point b, double x, const char *text)
{
    dim(list, true, a.y, -a.x, b.y, -b.x, -x, text);
}

/* Neighbours that would crowd each other are pooled and set a pitch apart about their mean, which
 * moves all of them the least (isotonic least squares). */
void sil_spread(int count, double *place, double pitch)
{
    double mean[SIL_ORDINATES_MAX];
    int size[SIL_ORDINATES_MAX], pools = 0;
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

/* Figures lie level where there is room between neighbours, else they stand. */
static bool lie_level(const sil_shapes *list, const sil_ordinates *o, const int *order)
{
    for (int i = 1; i < o->count; i++) {
        double apart = o->from[order[i]].x - o->from[order[i - 1]].x;
        double widths = sil_text_width(list, o->text[order[i]].text, SIL_NOTE) +
                        sil_text_width(list, o->text[order[i - 1]].text, SIL_NOTE);
        if (apart < widths / 2 + 1.5) {
            return false;
        }
    }
    return true;
}

/* By rising x: a mirrored row comes the other way round. */
static void sort_by_x(const sil_ordinates *o, int *order)
{
    for (int i = 0; i < o->count; i++) {
        int at = i;
        for (; at > 0 && o->from[order[at - 1]].x > o->from[i].x; at--) {
            order[at] = order[at - 1];
        }
        order[at] = i;
    }
}

double sil_dim_ordinates(sil_shapes *list, const sil_ordinates *o)
{
    double place[SIL_ORDINATES_MAX], longest = SIL_NOTE;
    int order[SIL_ORDINATES_MAX];
    sort_by_x(o, order);
    bool level = lie_level(list, o, order), figures = false;
    for (int i = 0; i < o->count; i++) {
        place[i] = o->from[order[i]].x;
        figures = figures || o->text[i].text[0] != '\0';
        if (!level) {
            longest = fmax(longest, sil_text_width(list, o->text[i].text, SIL_NOTE));
        }
    }
    sil_spread(o->count, place, o->numbered ? 5.2 : 1.7 * SIL_NOTE);
    double s = o->count > 0 && o->reach < o->from[0].y ? -1 : 1;
    double ring = figures ? longest + 5 : 2.3; /* past the lines' ends, or on them */
    for (int i = 0; i < o->count; i++) {
        sil_point from = o->from[order[i]];
        const sil_point line[] = {{from.x, from.y + s * 0.8},
                                  {from.x, o->reach - s * 4},
                                  {place[i], o->reach - s * 1.5},
                                  {place[i], o->reach}};
        double base = o->reach + s * 1.2 - (level && s < 0 ? SIL_NOTE : 0);
        sil_draw_of(list, o->numbered ? o->number[order[i]] : 0);
        sil_draw_path(list, SIL_LAYER_DIMENSION, line, 4, false);
        sil_draw_text(list, SIL_LAYER_TEXT,
                      (sil_point){place[i] + (level ? 0 : SIL_NOTE / 2), base}, SIL_NOTE,
                      level   ? SIL_MIDDLE
                      : s > 0 ? SIL_LEFT
                              : SIL_RIGHT,
                      level ? 0 : 90, o->text[order[i]].text);
        if (o->numbered) {
            sil_draw_ring(list, (sil_point){place[i], o->reach + s * ring}, o->number[order[i]]);
        }
    }
    sil_draw_of(list, 0);
    return o->reach + s * (o->numbered ? ring + 2.5 : longest + 1.2);
}

double sil_dim_chain(sil_shapes *list, int count, const double *x, const sil_words *text,
                     double from, double y)
{
    const double stroke = 0.9;
    sil_ordinates figures = {.reach = y - 5};
    for (int i = 0; i < count; i++) {
        lead_out(list, false, x[i], from, y);
        sil_draw_line(list, SIL_LAYER_SLOT, (sil_point){x[i] - stroke, y - stroke},
                      (sil_point){x[i] + stroke, y + stroke});
    }
    for (int i = 0; i + 1 < count; i++) {
        figures.from[i] = (sil_point){(x[i] + x[i + 1]) / 2, y};
        figures.text[figures.count++] = text[i];
    }
    sil_draw_line(list, SIL_LAYER_DIMENSION, (sil_point){x[0], y}, (sil_point){x[count - 1], y});
    return sil_dim_ordinates(list, &figures);
}

void sil_draw_plane(sil_shapes *list, double x, sil_box view, const char *letter)
{
    const double clear_of = 0.8, stroke = 2.2, shaft = 4;
    bool room = x + shaft <= view.right; /* within the lead-out line of the view's end */
    sil_draw_line(list, SIL_LAYER_CENTRE, (sil_point){x, view.bottom - clear_of},
                  (sil_point){x, view.top + clear_of});
    for (int end = 0; end < 2; end++) {
        double s = end == 0 ? -1 : 1, y = (end == 0 ? view.bottom : view.top) + s * clear_of;
        sil_point tip = {x - shaft, y + s * stroke / 2};
        double at = room ? x + 1.2 : tip.x - 0.8;
        sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){x, y}, (sil_point){x, y + s * stroke});
        sil_draw_line(list, SIL_LAYER_DIMENSION, (sil_point){x, tip.y},
                      (sil_point){tip.x + 1, tip.y});
        sil_draw_arrow(list, SIL_LAYER_DIMENSION, tip, 180);
        sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){at, tip.y - SIL_NOTE / 2}, SIL_NOTE,
                      room ? SIL_LEFT : SIL_RIGHT, 0, letter);
    }
}

void sil_draw_leader(sil_shapes *list, sil_point feature, sil_point knee)
{
    sil_draw_line(list, SIL_LAYER_DIMENSION, feature, knee);
    double direction = atan2(feature.y - knee.y, feature.x - knee.x) / 0.017453292519943295;
    sil_draw_arrow(list, SIL_LAYER_DIMENSION, feature, direction);
}

void sil_draw_ring(sil_shapes *list, sil_point centre, int number)
{
    double height = number < 10 ? SIL_NOTE : SIL_SMALL;
    sil_draw_circle(list, SIL_LAYER_DIMENSION, centre, 2.3);
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){centre.x, centre.y - height / 2}, height,
                  SIL_MIDDLE, 0, sil_say("%d", number).text);
}
