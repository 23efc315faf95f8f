/* SPDX-License-Identifier: MIT */
/* Strings set by screws, posts or wheels: which way, how far, how many turns. */
#include <stddef.h>

#include "part.h"

/* Arrows from where each string lies to where it is to lie, magnified. */
static sil_shapes *arrows(const sil_flow *flow)
{
    static const double scales[] = {20, 10, 5};
    const sil_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    int strings = plan->job->string_count, last = strings - 1;
    bool left = plan->job->instrument.handed == SIL_LEFT_HANDED;
    double most = 0, highest = 0, pitch = fmin((double)SIL_COLUMN / strings, 24);
    for (int i = 0; i < strings; i++) {
        double down = sil_moved_down(draft, i);
        most = sil_known(down) ? fmax(most, fabs(down)) : most;
        highest = sil_known(down) ? fmax(highest, -down) : highest;
    }
    int s = 0;
    while (s < 2 && most * scales[s] > 25) {
        s++;
    }
    sil_shapes *list = sil_flow_list(flow);
    for (int i = 0; i < strings; i++) {
        int place = left ? i : last - i; /* bass at the left, as seen from the tail */
        double x = (place + 0.5) * pitch, down = sil_moved_down(draft, i);
        double move = -down * scales[s];
        bool moves = sil_known(down) && down != 0;
        sil_draw_line(list, SIL_LAYER_PRESENT, (sil_point){x - pitch * 0.35, 0},
                      (sil_point){x + pitch * 0.35, 0});
        sil_draw_ring(list, (sil_point){x, highest * scales[s] + 8}, i + 1);
        if (!moves) {
            continue;
        }
        sil_draw_line(list, SIL_LAYER_CUT_FIRST, (sil_point){x - pitch * 0.35, move},
                      (sil_point){x + pitch * 0.35, move});
        sil_draw_line(list, SIL_LAYER_SLOT, (sil_point){x, 0}, (sil_point){x, move});
        if (fabs(move) > 2.5) {
            sil_draw_arrow(list, SIL_LAYER_SLOT, (sil_point){x, move}, move > 0 ? 90 : -90);
        }
    }
    sil_caption(
        list, SIL_LEFT,
        sil_say("Dashed: now. Solid: wanted. Heights %s", sil_say_scale(scales[s]).text).text);
    return list;
}

enum { STRING, NOTE, NOW, WAY, BY, TURNS, THEN, COLUMNS };

static sil_shapes *table(const sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    const sil_board *board = &plan->bench.board;
    sil_shapes *list = sil_flow_list(flow);
    sil_table t = {.columns = COLUMNS,
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
        sil_words *cell = t.cell[i];
        double turns = plan->saddle.turns[i], down = sil_moved_down(draft, i);
        bool moves = sil_known(down) && down != 0;
        cell[STRING] = sil_say("%d", i + 1);
        cell[NOTE] = sil_say_note(draft, i);
        cell[NOW] = sil_say_length(draft, sil_action(board, &plan->stages.fit[SIL_NUT], i, 12));
        cell[WAY] = sil_say("%s", moves             ? down > 0 ? "down" : "up"
                                  : sil_known(down) ? "stays"
                                                    : "wait");
        cell[BY] = moves ? sil_say_length(draft, fabs(down)) : sil_say("-");
        cell[TURNS] =
            moves && sil_known(turns) ? sil_say_number(draft, fabs(turns), 2) : sil_say("-");
        cell[THEN] = sil_say_length(draft, sil_action(board, &plan->stages.fit[SIL_SADDLE], i, 12));
    }
    for (int c = 0; c < COLUMNS; c++) {
        t.anchor[c] = c == NOTE || c == WAY ? SIL_LEFT : SIL_RIGHT;
    }
    sil_draw_table(list, 0, 0, SIL_COLUMN, &t);
    return list;
}

/* "Treble side down 0.49 mm (0.70 turns)". */
static sil_words say_post(const sil_draft *draft, int side)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    sil_words turns = sil_say_number(draft, fabs(work->post_turns[side]), 2);
    return sil_say("%s side %s %s %s (%s turns)", side == 0 ? "Treble" : "Bass",
                   work->post[side] < 0 ? "up" : "down",
                   sil_say_length(draft, fabs(work->post[side])).text, sil_unit_name(draft),
                   turns.text);
}

static void put_headline(sil_flow *flow, bool turned)
{
    const sil_draft *draft = &flow->drawing->draft;
    if (draft->plan->saddle.posts) {
        sil_flow_headline(flow, say_post(draft, 0).text);
        sil_flow_headline(flow, say_post(draft, 1).text);
    } else {
        sil_flow_headline(flow, turned ? "Set each saddle by its screws" : "No screw is turned");
    }
}

void sil_screws_sheet(sil_flow *flow)
{
    const sil_plan *plan = flow->drawing->draft.plan;
    bool turned = plan->saddle.remedy == SIL_SADDLE_SCREW;
    put_headline(flow, turned);
    sil_flow_put(flow, arrows(flow), SIL_MIDDLE, 12, 0);
    sil_flow_put(flow, table(flow), SIL_LEFT, 10, 0);
    if (turned) {
        sil_flow_text(flow, 0, SIL_COLUMN,
                      plan->saddle.posts
                          ? "The posts move all strings along one line. Ease the strings, never "
                            "take all of them off a bridge that stands loose. Tune, then read the "
                            "action again."
                          : "Turn both screws of a saddle alike, so that it keeps its tilt. Tune, "
                            "then read the action again.",
                      0);
    }
}
