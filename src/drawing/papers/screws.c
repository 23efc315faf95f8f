/* SPDX-License-Identifier: MIT */
/* Strings that are set by screws, posts or thumbwheels: which way to turn them, how far, and how
 * many turns. */
#include <stddef.h>

#include "part.h"

/* How far a string moves, + for up; 0 if it stays or waits. */
static double rise(const brief_bearing *string)
{
    double by = brief_known(string->moves) ? string->moves.exact : 0;
    return string->way == BRIEF_DOWN ? -by : by;
}

static void draw_move(draw_shapes *list, double x, double half, double move)
{
    draw_line(list, DRAW_PRESENT, (draw_point){x - half, 0}, (draw_point){x + half, 0});
    if (move == 0) {
        return;
    }
    draw_line(list, DRAW_CUT_FIRST, (draw_point){x - half, move}, (draw_point){x + half, move});
    draw_line(list, DRAW_SLOT, (draw_point){x, 0}, (draw_point){x, move});
    if (fabs(move) > 2.5) {
        draw_arrow(list, DRAW_SLOT, (draw_point){x, move}, move > 0 ? 90 : -90);
    }
}

/* Draws arrows from the present height of each string to its target, magnified. */
static draw_shapes *arrows(const draw_flow *flow)
{
    static const double scales[] = {20, 10, 5};
    const draw_draft *draft = &flow->drawing->draft;
    const brief_bearing *string = draft->brief->saddle.string;
    int strings = draft->brief->strings, s = 0;
    double most = 0, highest = 0, pitch = fmin((double)DRAW_COLUMN / strings, 24);
    for (int i = 0; i < strings; i++) {
        most = fmax(most, fabs(rise(&string[i])));
        highest = fmax(highest, rise(&string[i]));
    }
    while (s < 2 && most * scales[s] > 25) {
        s++;
    }
    draw_shapes *list = draw_flow_list(flow);
    for (int place = 0; place < strings; place++) {
        int i = draw_string_seen(draft, place);
        double x = (place + 0.5) * pitch;
        draw_move(list, x, pitch * 0.35, rise(&string[i]) * scales[s]);
        draw_ring(list, (draw_point){x, highest * scales[s] + 8}, i + 1);
    }
    paper_caption(list, DRAW_LEFT,
                  draw_say(draft, "Dashed: now. Solid: when turned. Heights %s",
                           draw_say_scale(draft, scales[s])));
    return list;
}

enum { STRING, NOTE, NOW, WAY, BY, TURNS, THEN, NOTCH, LAST, COLUMNS };

static const char *way_word(const brief_bearing *string)
{
    switch (string->way) {
    case BRIEF_DOWN:
        return "down";
    case BRIEF_UP:
        return "up";
    case BRIEF_NO_WAY:
    case BRIEF_TIGHTEN:
    case BRIEF_EASE:
    case BRIEF_BACK:
    case BRIEF_FORWARD:
        break;
    }
    return string->verdict == SIL_WAIT ? "wait" : "stays";
}

static void fill_row(const draw_draft *draft, int i, draw_table *t)
{
    const brief_bearing *string = &draft->brief->saddle.string[i];
    t->cell[i][STRING] = draw_say(draft, "%d", i + 1);
    t->cell[i][NOTE] = draw_say_note(draft, i);
    t->cell[i][NOW] = draw_action(draft, string->action_before);
    t->cell[i][WAY] = way_word(string);
    draw_table_figure(draft, t, i, BY, string->moves);
    draw_table_figure(draft, t, i, TURNS, string->turns);
    t->cell[i][THEN] = draw_action(draft, string->action_done);
    draw_table_figure(draft, t, i, NOTCH, string->curve_off);
    t->cell[i][LAST] = draw_action(draft, string->action_curved);
}

/* The bridge's curve is a step of its own, and most bridges need none. */
static void put_curve(const draw_draft *draft, draw_table *t)
{
    const brief_saddle *saddle = &draft->brief->saddle;
    for (int i = 0; i < t->rows; i++) {
        if (saddle->string[i].curve == SIL_RAISE) {
            t->cell[i][NOTCH] = draw_say(draft, "fill %s", t->cell[i][NOTCH]);
        }
    }
    if (!saddle->curve_off) {
        draw_table_leave_out(t, LAST);
    }
}

static draw_shapes *table(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    draw_table t = {.columns = COLUMNS,
                    .rows = draft->brief->strings,
                    .row_height = 6,
                    .head = {[STRING] = {NULL, "string"},
                             [NOTE] = {NULL, "note"},
                             [NOW] = {"action at the", "12th now"},
                             [WAY] = {"the", "string goes"},
                             [BY] = {NULL, "by"},
                             [TURNS] = {"turns of", "the screws"},
                             [THEN] = {"action at the", "12th then"},
                             [NOTCH] = {"then notch", "deeper by"},
                             [LAST] = {"action, curve", "fitted"}}};
    if (draft->plan->stages.changed[SIL_NUT]) { /* the nut work changes it */
        t.head[NOW][1] = "12th, nut done";
    }
    for (int i = 0; i < t.rows; i++) {
        fill_row(draft, i, &t);
    }
    for (int c = 0; c < COLUMNS; c++) {
        t.anchor[c] = c == NOTE || c == WAY ? DRAW_LEFT : DRAW_RIGHT;
    }
    put_curve(draft, &t);
    draw_add_table(list, 0, 0, DRAW_COLUMN, &t);
    return list;
}

/* Words such as "Treble side down 0.49 mm (about 3/4 turn)". */
static const char *say_post(const draw_draft *draft, brief_end end)
{
    const brief_post *post = &draft->brief->saddle.post[end];
    return draw_say(draft, "%s side %s %s %s (%s)", end == BRIEF_TREBLE ? "Treble" : "Bass",
                    post->way == BRIEF_UP ? "up" : "down", draw_figure(draft, post->moves),
                    draft->brief->unit_name, brief_turns(draft->store, post->turns));
}

static void put_headline(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    if (draft->brief->saddle.posts) {
        paper_headline(flow, say_post(draft, BRIEF_TREBLE));
        paper_headline(flow, say_post(draft, BRIEF_BASS));
    } else {
        paper_headline(flow, draw_set_decimals(draft, draft->brief->saddle.headline));
    }
}

void paper_screws(draw_flow *flow)
{
    const brief_saddle *saddle = &flow->drawing->draft.brief->saddle;
    put_headline(flow);
    draw_flow_put(flow, arrows(flow), DRAW_MIDDLE, 12, 0);
    draw_flow_put(flow, table(flow), DRAW_LEFT, 10, 0);
    if (saddle->remedy == SIL_SADDLE_SCREW) {
        draw_flow_text(
            flow, 0, DRAW_COLUMN,
            saddle->floats
                ? "The thumbwheels move all strings along one line. Slacken the strings, "
                  "but never take all of them off. Tune, then measure the action again."
            : saddle->posts
                ? "The posts move all strings along one line. Slacken the strings a "
                  "little. Tune, then measure the action again."
                : "Turn both screws of a saddle alike, so that it keeps its tilt. Tune, "
                  "then measure the action again.",
            0);
    }
}
