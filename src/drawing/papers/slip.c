/* SPDX-License-Identifier: MIT */
/* A slip of paper to cut out and glue on: a full-size view with a tab at either end, which names
 * the end and shows which way is up, and a band below with the name of the view. If the slip is
 * turned end for end, its words are upside down. */
#include "slip.h"

static const double margin = 1.5, band = 5, arrow = 5.5, beside = 1.7, tab_height = 12.5;

double paper_slip_tab(void)
{
    return 15.5;
}

static void draw_tab(draw_shapes *list, double left, double bottom, const char *end, const char *up)
{
    double middle = left + paper_slip_tab() / 2, y = bottom + margin;
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
    slip.left -= paper_slip_tab();
    slip.right += paper_slip_tab();
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
