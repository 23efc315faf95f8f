/* SPDX-License-Identifier: MIT */
/* The table on the paper of the saddle: a row for each string. */
#include <stddef.h>

#include "part.h"

enum { STRING, NOTE, PRESENT, LOWER, FIRST, DRESS, HEIGHT, OUT, SHARE, ANGLE, PEAK, COLUMNS };

static const draw_table empty_table = {.columns = COLUMNS,
                                       .head = {[STRING] = {NULL, "string"},
                                                [NOTE] = {NULL, "note"},
                                                [PRESENT] = {"height", "now"},
                                                [LOWER] = {"lower", "by"},
                                                [FIRST] = {"bottom, first", "pass"},
                                                [DRESS] = {"then off", "the top"},
                                                [HEIGHT] = {"height", "finished"},
                                                [OUT] = {"out of the", "bridge"},
                                                [SHARE] = {"in its", "slot %"},
                                                [ANGLE] = {"break", "angle"},
                                                [PEAK] = {"front", "to peak"}}};

static void put_by(const draw_draft *draft, const brief_bearing *string, bool up, int i,
                   draw_table *t)
{
    draw_table_figure(draft, t, i, LOWER, string->by);
    if (up) {
        t->cell[i][LOWER] = draw_say(draft, "up %s", t->cell[i][LOWER]);
    }
}

/* Writes what is done under a string, in the column of how much to lower it. */
static void put_amount(const draw_draft *draft, const brief_bearing *string, int i, draw_table *t)
{
    switch (string->does) {
    case BRIEF_LOWERS:
        put_by(draft, string, false, i, t);
        break;
    case BRIEF_RAISES:
        put_by(draft, string, true, i, t);
        break;
    case BRIEF_NEW:
        t->cell[i][LOWER] = "new";
        if (brief_known(
                string->height_first)) { /* from a blank: what to stop at before measuring */
            t->head[LOWER][0] = "height";
            t->head[LOWER][1] = "at first";
            t->cell[i][LOWER] = draw_figure(draft, string->height_first);
        }
        break;
    case BRIEF_LEAVES: /* in its range; it may come down with the bottom */
        t->cell[i][LOWER] = "leave";
        if (brief_known(string->by)) {
            put_by(draft, string, string->way == BRIEF_UP, i, t);
        }
        break;
    case BRIEF_FILES:
    case BRIEF_FILLS:
    case BRIEF_WAITS:
        t->cell[i][LOWER] = "wait";
        break;
    }
}

static void fill_row(const draw_draft *draft, int i, draw_table *t)
{
    const brief_bearing *string = &draft->brief->saddle.string[i];
    t->cell[i][STRING] = draw_say(draft, "%d", i + 1);
    t->cell[i][NOTE] = draw_say_note(draft, i);
    draw_table_figure(draft, t, i, PRESENT, string->present);
    put_amount(draft, string, i, t);
    draw_table_figure(draft, t, i, FIRST, string->base_first);
    draw_table_figure(draft, t, i, DRESS, string->dress_now);
    draw_table_figure(draft, t, i, HEIGHT, string->height);
    draw_table_figure(draft, t, i, OUT, string->out);
    draw_table_figure(draft, t, i, SHARE, string->in_slot);
    t->cell[i][ANGLE] = brief_known(string->angle)
                            ? draw_say(draft, "%s\u00b0", draw_figure(draft, string->angle))
                            : "-";
    draw_table_figure(draft, t, i, PEAK, draft->brief->tuning.string[i].peak);
}

draw_shapes *paper_saddle_table(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    draw_table t = empty_table;
    t.rows = draft->brief->strings;
    t.row_height = draw_row_height(draft);
    for (int i = 0; i < t.rows; i++) {
        fill_row(draft, i, &t);
    }
    for (int c = 0; c < COLUMNS; c++) {
        t.anchor[c] = c == NOTE ? DRAW_LEFT : DRAW_RIGHT;
    }
    if (!draft->brief->saddle.dresses_later) {
        t.head[DRESS][0] = "top, first"; /* today; how far it goes in all the heights show */
        t.head[DRESS][1] = "pass";
    }
    if (!draft->brief->saddle.in_slot) {
        draw_table_leave_out(&t, PEAK);
    }
    if (!draft->brief->saddle.base) {
        draw_table_leave_out(&t, FIRST);
    }
    draw_add_table(list, 0, 0, DRAW_COLUMN, &t);
    return list;
}
