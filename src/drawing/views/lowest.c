/* SPDX-License-Identifier: MIT */
/* The lowest setup that would just ring clean, compared with the setup after the work. */
#include <stddef.h>

#include "tone.h"

void view_lowest(const draw_draft *draft, draw_shapes *list, double width)
{
    const brief *b = draft->brief;
    draw_grid grid = {.rows = 3,
                      .as_seen = true,
                      .low = draft->dense,
                      .row = {{.label = {"action, after", NULL}, .height = DRAW_NOTE},
                              {.label = {"action, lowest", NULL}, .height = DRAW_NOTE},
                              {.label = {"gap at the 1st", NULL}, .height = DRAW_NOTE}}};
    for (int i = 0; i < b->strings; i++) {
        grid.row[0].cell[i] = draw_figure(draft, b->action[i].after);
        grid.row[1].cell[i] = draw_figure(draft, b->lowest.action[i]);
        grid.row[2].cell[i] = draw_figure(draft, b->lowest.first[i]);
    }
    draw_add_grid(draft, list, 0, 0, width, &grid);
}
