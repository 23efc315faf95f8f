/* SPDX-License-Identifier: MIT */
#include "views.h"

enum { NUMBER, NOTE, GAUGE, ACTION, FIRST = ACTION + 4, COLUMNS = FIRST + 4 };

static void fill_reading(const draw_draft *draft, const brief_reading *reading, const char **cell)
{
    cell[0] = draw_figure(draft, reading->now);
    cell[1] = draw_figure(draft, reading->wanted.aim);
    cell[2] = draw_range(draft, &reading->wanted);
    cell[3] = draw_figure(draft, reading->after);
}

static void fill_row(const draw_draft *draft, int i, const char **cell)
{
    const brief *b = draft->brief;
    cell[NUMBER] = draw_say(draft, "%d", i + 1);
    cell[NOTE] = draw_say_note(draft, i);
    cell[GAUGE] = draw_figure(draft, b->nut.slot[i].gauge);
    fill_reading(draft, &b->action[i], cell + ACTION);
    fill_reading(draft, &b->first[i], cell + FIRST);
}

static void relief_line(const draw_draft *draft, draw_shapes *list, double y)
{
    const brief_reading *relief = &draft->brief->relief;
    draw_note(list, 0, y,
              draw_say(draft, "Relief at fret %d:  now %s,  target %s,  range %s,  after %s",
                       draft->plan->bench.board.relief_at, draw_figure(draft, relief->now),
                       draw_figure(draft, relief->wanted.aim), draw_range(draft, &relief->wanted),
                       draw_figure(draft, relief->after)));
}

void view_readings(const draw_draft *draft, draw_shapes *list, double width)
{
    const char *after = draft->brief->forecast ? "about" : "after";
    draw_table table = {
        .columns = COLUMNS,
        .rows = draft->brief->strings,
        .row_height = draw_row_height(draft),
        .head = {[NUMBER] = {NULL, "string"}, [NOTE] = {NULL, "note"}, [GAUGE] = {NULL, "gauge"}},
        .span = {{ACTION, ACTION + 3, "Action at the 12th fret, open"},
                 {FIRST, FIRST + 3,
                  draw_say(draft, "Gap at the 1st, %s",
                           brief_hold(draft->plan->bench.targets.first_held))}}};
    for (int group = ACTION; group <= FIRST; group += FIRST - ACTION) {
        const char *const heads[] = {"now", "target", "range", after};
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
    double bottom = draw_add_table(list, 0, 0, width, &table) - 6;
    relief_line(draft, list, bottom);
    if (draft->brief->on_a_rule[0] != '\0') {
        draw_notes(draft, list, 0, bottom - 2, width, draft->brief->on_a_rule);
    }
}
