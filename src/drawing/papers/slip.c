/* SPDX-License-Identifier: MIT */
/* A slip of paper to cut out and glue on: a full-size view with a tab at either end, which names
 * the end and shows which way is up, and a band below with the name of the view. If the slip is
 * turned end for end, its words are upside down. */
#include "slip.h"

static const double margin = 1.5, band = 5, arrow = 5.5, beside = 1.7, tab_height = 12.5;
static const double tab = 15.5; /* its width at each end */

static void draw_tab(draw_shapes *list, double left, double bottom, const char *end, const char *up)
{
    double middle = left + tab / 2, y = bottom + margin;
    draw_text(list, DRAW_TEXT, (draw_point){middle, y}, DRAW_NOTE, DRAW_MIDDLE, 0, end);
    y += DRAW_NOTE + 1.2;
    double x = middle - (beside + draw_text_width(list, up, DRAW_NOTE)) / 2;
    draw_point tip = {x, y + arrow};
    draw_line(list, DRAW_OUTLINE, (draw_point){x, y}, (draw_point){x, tip.y - 1});
    draw_arrow(list, DRAW_OUTLINE, tip, 90);
    draw_text(list, DRAW_TEXT, (draw_point){x + beside, y + (arrow - DRAW_NOTE) / 2}, DRAW_NOTE,
              DRAW_LEFT, 0, up);
}

draw_box paper_slip_around(const draw_draft *draft, draw_shapes *list, const char *name,
                           const char *up, slip_use use)
{
    if (list == NULL || list->count == 0) {
        return (draw_box){0};
    }
    const char *ref = draft->plan->job->about.ref;
    bool left = draw_left_handed(draft);
    draw_box part = draw_shapes_box(list), slip = part;
    double spare = fmax(tab_height - draw_box_height(part) - margin, 0);
    double above = use == SLIP_LAID ? 0 : margin + spare;
    slip.left -= tab;
    slip.right += tab;
    slip.top += above;
    draw_tab(list, slip.left, part.bottom - margin, left ? "TREBLE" : "BASS", up);
    draw_tab(list, part.right, part.bottom - margin, left ? "BASS" : "TREBLE", up);
    slip.bottom = part.bottom - band;
    const char *words = draw_say(draft, "%s%s%s%s", name, left ? ", left-handed" : "",
                                 ref != NULL ? ", " : "", ref != NULL ? ref : "");
    double room = draw_box_width(slip) - 2 * margin;
    const char *off = draw_say(draft, "%s; take off to measure", words);
    bool says_off = use == SLIP_GLUED && draw_text_width(list, off, DRAW_NOTE) <= room;
    words = says_off ? off : draw_text_fit(draft, list, words, DRAW_NOTE, room);
    draw_text(list, DRAW_TEXT, (draw_point){(slip.left + slip.right) / 2, slip.bottom + 1.2},
              DRAW_NOTE, DRAW_MIDDLE, 0, words);
    draw_rectangle(list, DRAW_DIMENSION, slip);
    return slip;
}

/* Writes a number if it does not touch the one before it in its row. */
static bool put_number(draw_shapes *list, draw_point top, const char *number, double *taken)
{
    const double apart = 0.7;
    double half = draw_text_width(list, number, DRAW_NOTE) / 2;
    if (!isfinite(top.y) || top.x - half < *taken + apart) {
        return false;
    }
    draw_text(list, DRAW_TEXT, (draw_point){top.x, top.y - DRAW_NOTE}, DRAW_NOTE, DRAW_MIDDLE, 0,
              number);
    *taken = top.x + half;
    return true;
}

void paper_slip_numbers(const draw_draft *draft, draw_shapes *list, const draw_point *under,
                        const draw_point *other, bool *moved)
{
    double taken = -(double)INFINITY, taken_other = taken;
    for (int seen = 0; seen < draft->brief->strings; seen++) {
        int i = draw_string_seen(draft, seen);
        const char *number = draw_say(draft, "%d", i + 1);
        draw_of(list, i + 1);
        bool away = !put_number(list, under[i], number, &taken) &&
                    put_number(list, other[i], number, &taken_other);
        if (moved != NULL) {
            moved[i] = away;
        }
    }
    draw_of(list, 0);
}

bool paper_slip_fits(double length)
{
    const double line = 3; /* how far the centre line goes past the ends in the plan view */
    return length + 2 * (tab + line) <= DRAW_COLUMN;
}

draw_point paper_slip_over(draw_place place, double x, double top)
{
    const double clear = 0.9;
    return draw_at(place, x, top + clear + DRAW_NOTE);
}

void paper_slip_proof(const draw_draft *draft, draw_shapes *list, draw_place place,
                      brief_figure length, draw_box slip)
{
    draw_point a = draw_at(place, 0, 0), b = draw_at(place, length.exact, 0);
    a.y = b.y = slip.bottom;
    draw_dim_across(draft, list, a, b, slip.bottom - 6, length);
}

void paper_slip_put(draw_flow *flow, draw_shapes *list, const char *title, const char *use)
{
    const bool dense = flow->drawing->draft.dense;
    const double gap = dense ? 3.5 : 9, line = dense ? 4.5 : 5.5;
    if (list != NULL) {
        double left = draw_shapes_box(list).left, low = draw_shapes_box(list).top + (dense ? 3 : 4);
        draw_text(list, DRAW_TEXT, (draw_point){left, low + line}, DRAW_HEAD, DRAW_LEFT, 0, title);
        draw_note(list, left, low,
                  draw_text_fit(&flow->drawing->draft, list, use, DRAW_NOTE, DRAW_COLUMN));
    }
    draw_shapes *block = draw_flow_list(flow);
    draw_shapes_add(block, list, -draw_shapes_box(list).left, 0);
    draw_shapes_free(list);
    draw_flow_put(flow, block, DRAW_LEFT, gap, 0);
}

void paper_slip_none(draw_flow *flow, const char *what, const char *why)
{
    draw_flow_words(flow, draw_say(&flow->drawing->draft, "%s: no template. %s", what, why), 8);
}
