/* SPDX-License-Identifier: MIT */
#include "views.h"

enum { NUMBER, NOTE, GAUGE, ACTION, FIRST = ACTION + 4, COLUMNS = FIRST + 4 };

static draw_words range(const draw_draft *draft, const sil_band *band)
{
    return draw_say("%s\u2013%s", draw_say_length(draft, band->low).text,
                    draw_say_length(draft, band->high).text);
}

static void fill_row(const draw_draft *draft, int i, draw_words *cell)
{
    const sil_plan *plan = draft->plan;
    const sil_bench *bench = &plan->bench;
    const sil_fit *after = &plan->stages.fit[SIL_SADDLE];
    const sil_board *board = &bench->board;
    sil_hold hold = bench->targets.first_held;
    const sil_string *string = &plan->job->strings[i];
    cell[NUMBER] = draw_say("%d", i + 1);
    cell[NOTE] = draw_say_note(draft, i);
    cell[GAUGE] = draw_say_length(draft, string->gauge);
    cell[ACTION] = draw_say_length(draft, sil_action_now(plan, i));
    cell[ACTION + 1] = draw_say_length(draft, bench->targets.action[i].aim);
    cell[ACTION + 2] = range(draft, &bench->targets.action[i]);
    cell[ACTION + 3] = draw_say_length(draft, sil_action_after(plan, i));
    cell[FIRST] = draw_say_length(draft, sil_first_now(plan, i));
    cell[FIRST + 1] = draw_say_length(draft, bench->targets.first[i].aim);
    cell[FIRST + 2] = range(draft, &bench->targets.first[i]);
    cell[FIRST + 3] = draw_say_length(draft, sil_first_gap(board, after, i, hold));
}

static void relief_line(const draw_draft *draft, draw_shapes *list, double y)
{
    const sil_plan *plan = draft->plan;
    const sil_board *board = &plan->bench.board;
    const sil_band *band = &plan->bench.targets.relief;
    double now = sil_relief_now(plan);
    double after = sil_relief(board, plan->stages.fit[SIL_SADDLE].bend);
    draw_words words =
        draw_say("Relief at fret %d:  now %s,  aim %s,  range %s,  after %s", board->relief_at,
                 draw_say_length(draft, now).text, draw_say_length(draft, band->aim).text,
                 range(draft, band).text, draw_say_length(draft, after).text);
    draw_note(list, 0, y, words.text);
}

void view_readings(const draw_draft *draft, draw_shapes *list, double width)
{
    const sil_plan *plan = draft->plan;
    sil_hold hold = plan->bench.targets.first_held;
    const char *after = plan->stages.forecast[SIL_SADDLE] ? "about" : "after";
    draw_table table = {
        .columns = COLUMNS,
        .rows = plan->job->string_count,
        .row_height = 5,
        .head = {[NUMBER] = {NULL, "string"}, [NOTE] = {NULL, "note"}, [GAUGE] = {NULL, "gauge"}},
        .span = {{ACTION, ACTION + 3, "Action at the 12th fret, open"},
                 {FIRST, FIRST + 3,
                  hold == SIL_HOLD_OPEN ? "Gap at the 1st fret, open"
                  : hold == SIL_HOLD_2  ? "Gap at the 1st, lying on the 2nd"
                                        : "Gap at the 1st, held at the 3rd"}}};
    for (int group = ACTION; group <= FIRST; group += FIRST - ACTION) {
        const char *const heads[] = {"now", "aim", "range", after};
        for (int k = 0; k < 4; k++) {
            table.head[group + k][1] = heads[k];
        }
    }
    for (int c = GAUGE; c < COLUMNS; c++) {
        table.anchor[c] = DRAW_RIGHT;
    }
    table.anchor[NUMBER] = DRAW_RIGHT;
    for (int i = 0; i < table.rows; i++) {
        fill_row(draft, i, table.cell[i]);
    }
    double bottom = draw_add_table(list, 0, 0, width, &table);
    relief_line(draft, list, bottom - 6);
}
