/* SPDX-License-Identifier: MIT */
/* The visits so far: what was expected at each, and below it what was read. */
#include "views.h"

enum { DATE, WORK, HUMIDITY, RELIEF, ACTION, VISITS_SHOWN = DRAW_ROWS_MAX / 2 };

static const char *percent(const draw_draft *draft, brief_figure figure)
{
    return brief_known(figure) ? draw_say(draft, "%s %%", draw_figure(draft, figure)) : "-";
}

/* A row has room for eight strings. If there are more, every second one is shown. */
static int stride(const draw_draft *draft)
{
    return draft->brief->strings > 8 ? 2 : 1;
}

static int shown(const draw_draft *draft)
{
    return (draft->brief->strings + stride(draft) - 1) / stride(draft);
}

static void fill_figures(const draw_draft *draft, const brief_figure *figures, const char **cell)
{
    for (int i = 0; i < shown(draft); i++) {
        int string = i * stride(draft);
        cell[ACTION + i] = draw_figure(draft, figures[string]);
    }
}

static void fill_visit(const draw_draft *draft, const brief_visit *visit, const char **cell)
{
    cell[DATE] = visit->date;
    cell[WORK] = "read";
    cell[HUMIDITY] = percent(draft, visit->humidity);
    cell[RELIEF] = draw_figure(draft, visit->relief);
    fill_figures(draft, visit->read, cell);
    cell[ACTION + shown(draft)] =
        brief_known(visit->ratio) ? draw_say(draft, "%s of it", percent(draft, visit->ratio)) : "-";
}

static void fill_expected(const draw_draft *draft, const brief_visit *visit, const char **cell)
{
    cell[DATE] = "expected";
    cell[WORK] = draw_say(draft, "after %s", visit->work);
    fill_figures(draft, visit->due, cell);
}

void view_visits(const draw_draft *draft, draw_shapes *list, double width)
{
    int strings = shown(draft), count = draft->brief->visit_count;
    int first = count > VISITS_SHOWN ? count - VISITS_SHOWN : 0;
    draw_table table = {.columns = ACTION + strings + 1,
                        .row_height = draw_row_height(draft),
                        .head = {[DATE] = {NULL, "visit"},
                                 [HUMIDITY] = {NULL, "humidity"},
                                 [RELIEF] = {NULL, "relief"}},
                        .span = {{ACTION, ACTION + strings - 1, "Action at the 12th fret, open"}}};
    for (int i = 0; i < strings; i++) {
        table.head[ACTION + i][1] = draw_say(draft, "%d", i * stride(draft) + 1);
    }
    table.head[ACTION + strings][0] = "of that";
    table.head[ACTION + strings][1] = "change";
    for (int c = HUMIDITY; c < table.columns; c++) {
        table.anchor[c] = DRAW_RIGHT;
    }
    for (int k = first; k < count; k++) {
        const brief_visit *visit = &draft->brief->visits[k];
        if (visit->expected) {
            fill_expected(draft, visit, table.cell[table.rows++]);
        }
        fill_visit(draft, visit, table.cell[table.rows++]);
    }
    draw_add_table(list, 0, 0, width, &table);
}
