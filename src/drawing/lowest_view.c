/* SPDX-License-Identifier: MIT */
/* The lowest setup that would just ring clean, beside what the work leaves. */
#include "sound.h"

void sil_lowest_view(const sil_draft *draft, sil_shapes *list, double width)
{
    const sil_plan *plan = draft->plan;
    const sil_board *board = &plan->bench.board;
    const sil_fit *after = &plan->stages.fit[SIL_SADDLE], *lowest = &plan->lowest.fit;
    sil_grid grid = {.rows = 3,
                     .as_seen = true,
                     .row = {{{"action, after", NULL}, SIL_NOTE, {{""}}},
                             {{"action, lowest", NULL}, SIL_NOTE, {{""}}},
                             {{"gap at the 1st", NULL}, SIL_NOTE, {{""}}}}};
    for (int i = 0; i < board->strings; i++) {
        grid.row[0].cell[i] = sil_say_length(draft, sil_action(board, after, i, 12));
        grid.row[1].cell[i] = sil_say_stop(draft, sil_action(board, lowest, i, 12));
        grid.row[2].cell[i] = sil_say_stop(draft, sil_first_gap(board, lowest, i, SIL_HOLD_3));
    }
    sil_draw_grid(draft, list, 0, 0, width, &grid);
}
