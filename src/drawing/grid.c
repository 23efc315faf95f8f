/* SPDX-License-Identifier: MIT */
/* A column a string: figures to work to, and blanks to write in. */
#include "views.h"

static const double label_width = 34, head = 6.5, widest = 18;

double sil_draw_grid(const sil_draft *draft, sil_shapes *list, double x, double top, double width,
                     const sil_grid *grid)
{
    int strings = draft->plan->job->string_count;
    double pitch = fmin((width - label_width) / strings, widest);
    double left = x + label_width, right = left + strings * pitch, y = top - head;
    for (int i = 0; i < strings; i++) {
        sil_draw_ring(list, (sil_point){left + (i + 0.5) * pitch, top - head / 2}, i + 1);
    }
    for (int r = 0; r < grid->rows; r++) {
        const sil_grid_row *row = &grid->row[r];
        bool blank = row->height <= 0;
        double height = blank || row->label[1] != NULL ? 8 : row->height > SIL_NOTE ? 7.5 : 5.5;
        double middle = y - height / 2;
        sil_layer layer = r == 0 ? SIL_LAYER_DIMENSION : SIL_LAYER_RULE;
        sil_draw_line(list, layer, (sil_point){x, y}, (sil_point){right, y});
        bool two = row->label[1] != NULL;
        sil_draw_note(list, x, middle - SIL_NOTE / 2 + (two ? 2.1 : 0), row->label[0]);
        if (two) {
            sil_draw_note(list, x, middle - SIL_NOTE / 2 - 2.1, row->label[1]);
        }
        for (int i = 0; i < strings && !blank; i++) {
            sil_draw_text(list, SIL_LAYER_TEXT,
                          (sil_point){left + (i + 0.5) * pitch, middle - row->height / 2},
                          row->height, SIL_MIDDLE, 0, row->cell[i].text);
        }
        for (int i = 0; i <= strings && blank; i++) {
            sil_draw_line(list, SIL_LAYER_RULE, (sil_point){left + i * pitch, y},
                          (sil_point){left + i * pitch, y - height});
        }
        y -= height;
    }
    sil_draw_line(list, SIL_LAYER_DIMENSION, (sil_point){x, y}, (sil_point){right, y});
    return y;
}
