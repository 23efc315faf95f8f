/* SPDX-License-Identifier: MIT */
/* Strings set by screws, posts or wheels: which way, how far, how many turns. */
#include <stddef.h>

#include "part.h"

/* Arrows from where each string lies to where it is to lie, magnified. */
static draw_shapes *arrows(const draw_flow *flow)
{
    static const double scales[] = {20, 10, 5};
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    int strings = plan->job->string_count, last = strings - 1;
    bool left = plan->job->instrument.handed == SIL_LEFT_HANDED;
    double most = 0, highest = 0, pitch = fmin((double)DRAW_COLUMN / strings, 24);
    for (int i = 0; i < strings; i++) {
        double down = draw_moved_down(draft, i);
        most = sil_known(down) ? fmax(most, fabs(down)) : most;
        highest = sil_known(down) ? fmax(highest, -down) : highest;
    }
    int s = 0;
    while (s < 2 && most * scales[s] > 25) {
        s++;
    }
    draw_shapes *list = draw_flow_list(flow);
    for (int i = 0; i < strings; i++) {
        int place = left ? i : last - i; /* bass at the left, as seen from the tail */
        double x = (place + 0.5) * pitch, down = draw_moved_down(draft, i);
        double move = -down * scales[s];
        bool moves = sil_known(down) && down != 0;
        draw_line(list, DRAW_PRESENT, (draw_point){x - pitch * 0.35, 0},
                  (draw_point){x + pitch * 0.35, 0});
        draw_ring(list, (draw_point){x, highest * scales[s] + 8}, i + 1);
        if (!moves) {
            continue;
        }
        draw_line(list, DRAW_CUT_FIRST, (draw_point){x - pitch * 0.35, move},
                  (draw_point){x + pitch * 0.35, move});
        draw_line(list, DRAW_SLOT, (draw_point){x, 0}, (draw_point){x, move});
        if (fabs(move) > 2.5) {
            draw_arrow(list, DRAW_SLOT, (draw_point){x, move}, move > 0 ? 90 : -90);
        }
    }
    draw_caption(
        list, DRAW_LEFT,
        draw_say("Dashed: now. Solid: wanted. Heights %s", draw_say_scale(scales[s]).text).text);
    return list;
}

enum { STRING, NOTE, NOW, WAY, BY, TURNS, THEN, COLUMNS };

static draw_shapes *table(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    const sil_board *board = &plan->bench.board;
    draw_shapes *list = draw_flow_list(flow);
    draw_table t = {.columns = COLUMNS,
                    .rows = plan->job->string_count,
                    .row_height = 6,
                    .head = {[STRING] = {NULL, "string"},
                             [NOTE] = {NULL, "note"},
                             [NOW] = {"action at the", "12th now"},
                             [WAY] = {"the", "string goes"},
                             [BY] = {NULL, "by"},
                             [TURNS] = {"turns of", "the screws"},
                             [THEN] = {"action at the", "12th then"}}};
    if (plan->stages.changed[SIL_NUT]) { /* read now and foretold once it is done differ */
        t.head[NOW][1] = "12th, nut done";
    }
    for (int i = 0; i < t.rows; i++) {
        draw_words *cell = t.cell[i];
        double turns = plan->saddle.turns[i], down = draw_moved_down(draft, i);
        bool moves = sil_known(down) && down != 0;
        cell[STRING] = draw_say("%d", i + 1);
        cell[NOTE] = draw_say_note(draft, i);
        cell[NOW] = draw_say_length(draft, sil_action(board, &plan->stages.fit[SIL_NUT], i, 12));
        cell[WAY] = draw_say("%s", moves             ? down > 0 ? "down" : "up"
                                   : sil_known(down) ? "stays"
                                                     : "wait");
        cell[BY] = moves ? draw_say_length(draft, fabs(down)) : draw_say("-");
        cell[TURNS] =
            moves && sil_known(turns) ? draw_say_number(draft, fabs(turns), 2) : draw_say("-");
        cell[THEN] =
            draw_say_length(draft, sil_action(board, &plan->stages.fit[SIL_SADDLE], i, 12));
    }
    for (int c = 0; c < COLUMNS; c++) {
        t.anchor[c] = c == NOTE || c == WAY ? DRAW_LEFT : DRAW_RIGHT;
    }
    draw_add_table(list, 0, 0, DRAW_COLUMN, &t);
    return list;
}

/* "Treble side down 0.49 mm (0.70 turns)". */
static draw_words say_post(const draw_draft *draft, int side)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    draw_words turns = draw_say_number(draft, fabs(work->post_turns[side]), 2);
    return draw_say("%s side %s %s %s (%s turns)", side == 0 ? "Treble" : "Bass",
                    work->post[side] < 0 ? "up" : "down",
                    draw_say_length(draft, fabs(work->post[side])).text, draw_unit_name(draft),
                    turns.text);
}

static void put_headline(draw_flow *flow, bool turned)
{
    const draw_draft *draft = &flow->drawing->draft;
    if (draft->plan->saddle.posts) {
        paper_headline(flow, say_post(draft, 0).text);
        paper_headline(flow, say_post(draft, 1).text);
    } else {
        paper_headline(flow, turned ? "Set each saddle by its screws" : "No screw is turned");
    }
}

void paper_screws(draw_flow *flow)
{
    const sil_plan *plan = flow->drawing->draft.plan;
    bool turned = plan->saddle.remedy == SIL_SADDLE_SCREW;
    put_headline(flow, turned);
    draw_flow_put(flow, arrows(flow), DRAW_MIDDLE, 12, 0);
    draw_flow_put(flow, table(flow), DRAW_LEFT, 10, 0);
    if (turned) {
        draw_flow_text(flow, 0, DRAW_COLUMN,
                       plan->saddle.posts
                           ? "The posts move all strings along one line. Ease the strings, never "
                             "take all of them off a bridge that stands loose. Tune, then read the "
                             "action again."
                           : "Turn both screws of a saddle alike, so that it keeps its tilt. Tune, "
                             "then read the action again.",
                       0);
    }
}
