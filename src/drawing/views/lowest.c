/* SPDX-License-Identifier: MIT */
/* The lowest setup that would just ring clean, beside what the work leaves. */
#include "sound.h"

void view_lowest(const draw_draft *draft, draw_shapes *list, double width)
{
    const sil_plan *plan = draft->plan;
    const sil_board *board = &plan->bench.board;
    const sil_fit *after = &plan->stages.fit[SIL_SADDLE], *lowest = &plan->lowest.fit;
    draw_grid grid = {.rows = 3,
                      .as_seen = true,
                      .row = {{{"action, after", NULL}, DRAW_NOTE, {{""}}},
                              {{"action, lowest", NULL}, DRAW_NOTE, {{""}}},
                              {{"gap at the 1st", NULL}, DRAW_NOTE, {{""}}}}};
    for (int i = 0; i < board->strings; i++) {
        grid.row[0].cell[i] = draw_say_length(draft, sil_action(board, after, i, 12));
        grid.row[1].cell[i] = draw_say_stop(draft, sil_action(board, lowest, i, 12));
        grid.row[2].cell[i] = draw_say_stop(draft, sil_first_gap(board, lowest, i, SIL_HOLD_3));
    }
    draw_add_grid(draft, list, 0, 0, width, &grid);
}
