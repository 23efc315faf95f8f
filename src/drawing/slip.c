/* SPDX-License-Identifier: MIT */
/* A slip of paper to cut out and glue on: a full-size view with a tab at either end that says which
 * end it is and which way is up, and a band under it with its name. Turned over or end for end the
 * words stand on their heads. */
#include "slip.h"

static const double margin = 1.5, band = 5, arrow = 5.5, beside = 1.7, tab_height = 12.5;

double sil_slip_tab(void)
{
    return 15.5;
}

static void draw_tab(sil_shapes *list, double left, double bottom, const char *end, const char *up)
{
    double middle = left + sil_slip_tab() / 2, y = bottom + margin;
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){middle, y}, SIL_NOTE, SIL_MIDDLE, 0, end);
    y += SIL_NOTE + 1.2;
    double x = middle - (beside + sil_text_width(list, up, SIL_SMALL)) / 2;
    sil_point tip = {x, y + arrow};
    sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){x, y}, (sil_point){x, tip.y - 1});
    sil_draw_arrow(list, SIL_LAYER_OUTLINE, tip, 90);
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){x + beside, y + (arrow - SIL_SMALL) / 2},
                  SIL_SMALL, SIL_LEFT, 0, up);
}

sil_box sil_slip_around(const sil_draft *draft, sil_shapes *list, const char *name, const char *up,
                        bool edge)
{
    if (list == NULL || list->count == 0) {
        return (sil_box){0};
    }
    const char *ref = draft->plan->job->about.ref;
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    sil_box part = sil_shapes_box(list), slip = part;
    double spare = fmax(tab_height - sil_box_height(part) - margin, 0);
    double above = edge ? 0 : margin + spare;
    slip.left -= sil_slip_tab();
    slip.right += sil_slip_tab();
    slip.top += above;
    draw_tab(list, slip.left, part.bottom - margin, left ? "TREBLE" : "BASS", up);
    draw_tab(list, part.right, part.bottom - margin, left ? "BASS" : "TREBLE", up);
    slip.bottom = part.bottom - band;
    sil_words words = sil_say("%s%s%s%.40s", name, left ? ", left-handed" : "",
                              ref != NULL ? ", " : "", ref != NULL ? ref : "");
    words = sil_text_fit(list, words.text, SIL_SMALL, sil_box_width(slip) - 2 * margin);
    sil_draw_text(list, SIL_LAYER_TEXT,
                  (sil_point){(slip.left + slip.right) / 2, slip.bottom + 1.2}, SIL_SMALL,
                  SIL_MIDDLE, 0, words.text);
    sil_draw_box(list, SIL_LAYER_DIMENSION, slip);
    return slip;
}

void sil_slip_numbers(const sil_draft *draft, sil_shapes *list, const sil_point *under)
{
    const double apart = 0.7;
    double taken = -(double)INFINITY;
    for (int seen = 0; seen < draft->plan->job->string_count; seen++) {
        int i = sil_string_seen(draft, seen);
        sil_words number = sil_say("%d", i + 1);
        double half = sil_text_width(list, number.text, SIL_SMALL) / 2;
        if (isfinite(under[i].y) && under[i].x - half >= taken + apart) {
            sil_draw_of(list, i + 1);
            sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){under[i].x, under[i].y - SIL_SMALL},
                          SIL_SMALL, SIL_MIDDLE, 0, number.text);
            taken = under[i].x + half;
        }
    }
    sil_draw_of(list, 0);
}
