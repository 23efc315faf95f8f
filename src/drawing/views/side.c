/* SPDX-License-Identifier: MIT */
#include <stddef.h>

#include "views.h"

typedef struct side {
    const draw_draft *draft;
    const sil_board *board;
    draw_shapes *list;
    int string;
    draw_place place;
} side;

/* Heights are given over the board under the string, so that a round board does not tilt the
 * view. This is how far the board has dropped there. */
static double drop(const side *v, double x)
{
    double z = sil_string_z(v->board, v->string, x);
    return sil_radius_drop(sil_board_radius(v->board, x), z);
}

static double crown(const side *v, const sil_fit *fit, int fret)
{
    double x = v->board->fret_x[v->string][fret];
    return sil_crown_height(v->board, fit, v->string, fret) + drop(v, x);
}

static double nut(const side *v, const sil_fit *fit)
{
    return fit->nut_height[v->string] + drop(v, 0);
}

/* The board ends before the saddle, so its radius at the last fret is used. */
static double saddle(const side *v, const sil_fit *fit)
{
    double z = v->board->saddle_z[v->string];
    return fit->saddle_height[v->string] + sil_radius_drop(v->board->radius_end, z);
}

static double saddle_x(const side *v)
{
    return v->board->saddle_x[v->string];
}

/* The extent of a string and its crowns, now and after the work; not finite if they are not
 * known. */
static draw_box span(const side *v, double depth)
{
    const sil_plan *plan = v->draft->plan;
    const sil_fit *shown[] = {&plan->stages.fit[SIL_NOW], &plan->finished};
    draw_box box = {0, 0, saddle_x(v), -(double)INFINITY};
    for (size_t k = 0; k < sizeof shown / sizeof *shown; k++) {
        const sil_fit *fit = shown[k];
        box.top = fmax(box.top, fmax(saddle(v, fit), nut(v, fit)));
        for (int fret = 1; fret <= v->board->frets; fret++) {
            box.bottom = fmin(box.bottom, crown(v, fit, fret) - depth);
        }
    }
    if (!sil_known(shown[0]->bend)) {
        box.top = (double)INFINITY;
    }
    return box;
}

static double crown_depth(const draw_draft *draft)
{
    double depth = draft->plan->bench.crown;
    return sil_known(depth) ? depth : 1.0;
}

/* The greatest height of a view on paper, mm. */
static double tallest(const side *v)
{
    return v->draft->dense ? 16 : 22;
}

/* All strings of the instrument have the same scale, so that they can be compared. */
static draw_place scaled(const side *v, double width, double depth)
{
    double most = 1, longest = 1, up, low = span(v, depth).bottom;
    for (int i = 0; i < v->board->strings; i++) {
        side other = *v;
        other.string = i;
        draw_box box = span(&other, depth);
        if (isfinite(box.top)) {
            most = fmax(most, draw_box_height(box));
        }
        longest = fmax(longest, saddle_x(&other));
    }
    up = fmin(fmax(floor(tallest(v) / most), 1), 20);
    return (draw_place){0, -low * up, 1 / ceil(longest / width), up};
}

static bool is_string_known(const side *v, const sil_fit *fit)
{
    return sil_known(nut(v, fit)) && sil_known(saddle(v, fit));
}

bool view_side_shows(const draw_draft *draft, int string)
{
    const sil_plan *plan = draft->plan;
    side v = {.draft = draft, .board = &plan->bench.board, .string = string};
    return is_string_known(&v, &plan->stages.fit[SIL_NOW]) ||
           is_string_known(&v, &plan->finished) || draft->brief->worst[string].fret > 0;
}

static void draw_string(const side *v, const sil_fit *fit, draw_layer layer)
{
    if (is_string_known(v, fit)) {
        draw_line(v->list, layer, draw_at(v->place, 0, nut(v, fit)),
                  draw_at(v->place, saddle_x(v), saddle(v, fit)));
    }
}

/* Draws a crown as half an ellipse, which is what its half round becomes at the two scales: from its
 * foot on the board to its top. It is at least so wide that it can be seen, and leaves the frets
 * beside it free. */
static void draw_crown(const side *v, double x, double foot, double top, double space)
{
    enum { PIECES = 12 };
    const double least_wide = 0.8, share = 0.3;
    draw_point at = draw_at(v->place, x, foot), points[PIECES + 1];
    double tall = (top - foot) * v->place.up, wide = (top - foot) * v->place.across;
    wide = fmin(fmax(wide, least_wide), share * space * v->place.across);
    for (int i = 0; i <= PIECES; i++) {
        double turn = 3.14159265358979 * i / PIECES;
        points[i] = (draw_point){at.x + wide * cos(turn), at.y + tall * sin(turn)};
    }
    draw_fill(v->list, DRAW_OUTLINE, points, PIECES + 1);
}

static void draw_crowns(const side *v, const sil_fit *fit, double depth)
{
    const sil_board *b = v->board;
    draw_point board[SIL_FRETS_MAX + 2];
    int count = 0;
    for (int fret = 1; fret <= b->frets; fret++) {
        double x = b->fret_x[v->string][fret], y = crown(v, fit, fret);
        if (fret == 1) {
            board[count++] = draw_at(v->place, 0, y - depth);
        }
        board[count++] = draw_at(v->place, x, y - depth);
        draw_crown(v, x, y - depth, y, x - (fret > 1 ? b->fret_x[v->string][fret - 1] : 0));
    }
    draw_path(v->list, DRAW_SLOT, board, count, false);
}

static void draw_crown_line(const side *v, const sil_fit *fit)
{
    draw_point line[SIL_FRETS_MAX];
    for (int fret = 1; fret <= v->board->frets; fret++) {
        line[fret - 1] = draw_at(v->place, v->board->fret_x[v->string][fret], crown(v, fit, fret));
    }
    draw_path(v->list, DRAW_PRESENT, line, v->board->frets, false);
}

/* Draws the nut and the saddle as upright lines from the board to the string. */
static void draw_ends(const side *v, const sil_fit *fit)
{
    draw_point foot = draw_at(v->place, 0, 0), far = draw_at(v->place, saddle_x(v), 0);
    foot.y = far.y = 0;
    if (sil_known(nut(v, fit))) {
        draw_line(v->list, DRAW_OUTLINE, foot, draw_at(v->place, 0, nut(v, fit)));
    }
    if (sil_known(saddle(v, fit))) {
        draw_line(v->list, DRAW_OUTLINE, far, draw_at(v->place, saddle_x(v), saddle(v, fit)));
    }
}

static void number_frets(const side *v, double y)
{
    static const int numbers[] = {1, 3, 5, 7, 9, 12, 15, 17, 19, 21, 24, 27, 30, 33, 36};
    double free_from = -10;
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        if (numbers[i] > v->board->frets) {
            break;
        }
        double x = draw_at(v->place, v->board->fret_x[v->string][numbers[i]], 0).x;
        if (x < free_from) {
            continue;
        }
        draw_number(v->list, (draw_point){x, y}, DRAW_NOTE, DRAW_MIDDLE, numbers[i]);
        free_from = x + 6;
    }
}

/* Draws a wedge under the fret that is most out of line, and writes what it means under the
 * right end of the view. */
static void mark_worst(const side *v, const brief_fret_off *worst, double y, double width)
{
    double x = draw_at(v->place, v->board->fret_x[v->string][worst->fret], 0).x;
    const draw_point wedge[] = {{x, y}, {x - 1.1, y - 2.2}, {x + 1.1, y - 2.2}};
    draw_fill(v->list, DRAW_WARNING, wedge, 3);
    draw_text(v->list, DRAW_TEXT, (draw_point){width, y - 2.6}, DRAW_NOTE, DRAW_RIGHT, 0,
              draw_say(v->draft, "wedge: fret %d %s by %s", worst->fret,
                       worst->worn ? "worn" : "proud", draw_figure(v->draft, worst->off)));
}

/* An action beside the picture. Where room is short, what a rule shows of it is left to the words
 * under the readings. */
static const char *say_action(const draw_draft *draft, brief_figure action)
{
    return draft->dense ? draw_figure(draft, action) : draw_action(draft, action);
}

/* What a view shows: nothing of an action that was not read, and no line that is not drawn. */
static const char *say_shows(const side *v)
{
    const draw_draft *draft = v->draft;
    const sil_plan *plan = draft->plan;
    const char *dashed = is_string_known(v, &plan->stages.fit[SIL_NOW]) ? "dashed " : "";
    const char *solid = is_string_known(v, &plan->finished) ? "solid " : "";
    const brief_reading *action = &draft->brief->action[v->string];
    bool read = brief_known(action->now), told = brief_known(action->after);
    const char *now =
        read ? draw_say(draft, "%snow %s", dashed, say_action(draft, action->now)) : "";
    const char *after =
        told ? draw_say(draft, "%safter%s %s", solid, draft->brief->forecast ? " about" : "",
                        say_action(draft, action->after))
             : "";
    return draw_say(draft, "action at the 12th: %s%s%s", now, read && told ? ", " : "",
                    read || told ? after : "not read");
}

/* What a view shows, in lines within a width from y 0 down; and, where it is to say so, its scales at
 * the right: on a line of their own where the last one has no room for both. */
static draw_shapes *caption(const side *v, double width, bool with_scales)
{
    const double words_left = 8, apart = 4, line = 1.9 * DRAW_NOTE;
    const draw_draft *draft = v->draft;
    draw_shapes *list = draw_shapes_new(draft->letters);
    const char *rest = say_shows(v), *last;
    double y = -DRAW_NOTE;
    draw_of(list, v->string + 1);
    draw_ring(list, (draw_point){2.5, y + DRAW_NOTE / 2}, v->string + 1);
    while (true) {
        last = rest;
        rest = draw_line_of(list, words_left, y, width - words_left, DRAW_NOTE, rest);
        if (rest[0] == '\0') {
            break;
        }
        y -= line;
    }
    if (with_scales) {
        const char *scales =
            draw_say(draft, "heights %s, lengths %s", draw_say_scale(draft, v->place.up),
                     draw_say_scale(draft, v->place.across));
        double wide = words_left + draw_text_width(list, last, DRAW_NOTE) + apart;
        y -= wide + draw_text_width(list, scales, DRAW_NOTE) <= width ? 0 : line;
        draw_text(list, DRAW_TEXT, (draw_point){width, y}, DRAW_NOTE, DRAW_RIGHT, 0, scales);
    }
    draw_of(list, 0);
    return list;
}

/* Draws the picture of a view. Returned: its highest y; not finite, and nothing is drawn, where the
 * heights are not known. */
static double picture(side *v, double width)
{
    const draw_draft *draft = v->draft;
    const sil_stages *stages = &draft->plan->stages;
    const sil_fit *now = &stages->fit[SIL_NOW], *after = &draft->plan->finished;
    const brief_fret_off *worst = &draft->brief->worst[v->string];
    double depth = crown_depth(draft);
    draw_box box = span(v, depth);
    if (!isfinite(box.top)) {
        return -(double)INFINITY;
    }
    v->place = scaled(v, width, depth);
    draw_of(v->list, v->string + 1);
    draw_crowns(v, after, depth);
    if (stages->changed[SIL_ROD] || stages->changed[SIL_FRETS] || worst->fret > 0) {
        draw_crown_line(v, now);
    }
    draw_ends(v, after);
    draw_string(v, now, DRAW_PRESENT);
    draw_string(v, after, DRAW_OUTLINE);
    number_frets(v, -4.5);
    if (worst->fret > 0) {
        mark_worst(v, worst, -5.5, width);
    }
    draw_of(v->list, 0);
    return draw_at(v->place, 0, box.top).y;
}

static side side_of(const draw_draft *draft, draw_shapes *list, int string)
{
    return (side){draft, &draft->plan->bench.board, list, string, {0, 0, 1, 1}};
}

static const double over_picture = 4; /* between a picture and its caption */

void view_side(const draw_draft *draft, draw_shapes *list, int string, double width)
{
    side v = side_of(draft, list, string);
    double top = picture(&v, width);
    if (isfinite(top)) {
        draw_shapes *words = caption(&v, width, true);
        draw_shapes_add(list, words, 0, top + over_picture - draw_shapes_box(words).bottom);
        draw_shapes_free(words);
    }
}

void view_sides(const draw_draft *draft, draw_shapes *list, const int strings[2], double width)
{
    const double apart = 8, half = (width - apart) / 2;
    draw_shapes *words[2] = {NULL, NULL};
    double level = -(double)INFINITY;
    for (int k = 0; k < 2; k++) {
        draw_shapes *view = draw_shapes_new(draft->letters);
        side v = side_of(draft, view, strings[k]);
        double top = picture(&v, half);
        draw_shapes_add(list, view, k * (half + apart), 0);
        draw_shapes_free(view);
        if (isfinite(top)) { /* the scales are those of both */
            words[k] = caption(&v, half, words[0] == NULL);
            level = fmax(level, top + over_picture + draw_box_height(draw_shapes_box(words[k])));
        }
    }
    for (int k = 0; k < 2; k++) {
        if (words[k] != NULL) {
            draw_shapes_add(list, words[k], k * (half + apart),
                            level - draw_shapes_box(words[k]).top);
        }
        draw_shapes_free(words[k]);
    }
}
