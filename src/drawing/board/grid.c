/* SPDX-License-Identifier: MIT */
/* The grid of the strings: one column per string, with figures to work to and blanks to write
 * in. */
#include "draft.h"

static const double widest = 18;

/* A grid with more columns than this is drawn in two bands, one below the other, because its
 * figures would touch. */
enum { BAND = 8 };

/* One band of the grid: the places from first up to end, and the string at each place. */
typedef struct band {
    int first, end;
    const int *string;
    double x, left, pitch;
    bool dense;
} band;

/* The width of the labels at the left. */
static double label_width(const draw_draft *draft)
{
    return draft->dense ? 32 : 34;
}

/* The height of the rings over the columns. */
static double head_height(const band *b)
{
    return b->dense ? 6 : 6.5;
}

static double column(const band *b, int place)
{
    return b->left + (place - b->first) * b->pitch;
}

static double row_height(const draw_grid_row *row, bool dense)
{
    bool blank = row->height <= 0, two = row->label[1] != NULL;
    double height = blank || two ? 8 : row->height > DRAW_NOTE ? 7.5 : 5.5;
    return dense ? height - 1 : height;
}

static double draw_row(draw_shapes *list, const draw_grid_row *row, const band *b, draw_layer layer,
                       double y)
{
    bool blank = row->height <= 0, two = row->label[1] != NULL;
    double height = row_height(row, b->dense);
    double middle = y - height / 2, right = column(b, b->end);
    draw_line(list, layer, (draw_point){b->x, y}, (draw_point){right, y});
    draw_note(list, b->x, middle - DRAW_NOTE / 2 + (two ? 2.1 : 0), row->label[0]);
    if (two) {
        draw_note(list, b->x, middle - DRAW_NOTE / 2 - 2.1, row->label[1]);
    }
    for (int i = b->first; i < b->end && !blank; i++) {
        draw_text(list, DRAW_TEXT,
                  (draw_point){column(b, i) + b->pitch / 2, middle - row->height / 2}, row->height,
                  DRAW_MIDDLE, 0, row->cell[b->string[i]]);
    }
    for (int i = b->first; i <= b->end && blank; i++) {
        draw_line(list, DRAW_RULE, (draw_point){column(b, i), y},
                  (draw_point){column(b, i), y - height});
    }
    return y - height;
}

static double draw_band(draw_shapes *list, const draw_grid *grid, const band *b, double top)
{
    const double head = head_height(b);
    double y = top - head;
    for (int i = b->first; i < b->end; i++) {
        draw_ring(list, (draw_point){column(b, i) + b->pitch / 2, top - head / 2},
                  b->string[i] + 1);
    }
    for (int r = 0; r < grid->rows; r++) {
        draw_layer layer = r == 0 ? DRAW_DIMENSION : DRAW_RULE;
        y = draw_row(list, &grid->row[r], b, layer, y);
    }
    draw_line(list, DRAW_DIMENSION, (draw_point){b->x, y}, (draw_point){column(b, b->end), y});
    return y;
}

/* Adds a row of figures, or of what a rule in 64ths shows of them, unless it would show nothing. */
static bool add_row(const draw_draft *draft, draw_grid *grid, const char *label,
                    draw_string_figure *figure, bool marks)
{
    draw_grid_row *row = &grid->row[grid->rows];
    bool any = false;
    *row = (draw_grid_row){.label = {label}, .height = DRAW_NOTE};
    for (int i = 0; i < draft->brief->strings; i++) {
        brief_figure told = figure(draft->brief, i);
        bool known = marks ? told.marks[0] != '\0' : brief_known(told);
        row->cell[i] =
            marks ? draw_say(draft, "%s", known ? told.marks : "-") : draw_figure(draft, told);
        any = any || known;
    }
    grid->rows += any;
    return any;
}

bool draw_grid_figures(const draw_draft *draft, draw_grid *grid, const char *label,
                       draw_string_figure *figure)
{
    return add_row(draft, grid, label, figure, false);
}

bool draw_grid_marks(const draw_draft *draft, draw_grid *grid, draw_string_figure *figure)
{
    return add_row(draft, grid, "  on a rule", figure, true);
}

/* Whether every figure leaves room beside its neighbours in columns of this width. */
static bool fits(const draw_shapes *list, const draw_grid *grid, int strings, double pitch,
                 double apart)
{
    for (int r = 0; r < grid->rows && list != NULL; r++) {
        const draw_grid_row *row = &grid->row[r];
        for (int i = 0; i < strings && row->height > 0; i++) {
            if (row->cell[i] != NULL &&
                draw_text_width(list, row->cell[i], row->height) + apart > pitch) {
                return false;
            }
        }
    }
    return true;
}

double draw_add_grid(const draw_draft *draft, draw_shapes *list, double x, double top, double width,
                     const draw_grid *grid)
{
    int strings = draft->brief->strings;
    double room = width - label_width(draft);
    bool one = grid->low && fits(list, grid, strings, room / strings, draft->dense ? 0.6 : 1.5);
    int bands = strings > BAND && !one ? 2 : 1, each = (strings + bands - 1) / bands;
    double pitch = fmin(room / each, widest), y = top;
    int string[SIL_STRINGS_MAX];
    for (int i = 0; i < strings; i++) {
        string[i] = grid->as_seen ? draw_string_seen(draft, i) : i;
    }
    for (int first = 0; first < strings; first += each) {
        int end = first + each < strings ? first + each : strings;
        band b = {first, end, string, x, x + label_width(draft), pitch, draft->dense};
        y = draw_band(list, grid, &b, first > 0 ? y - 2 : y);
    }
    return y;
}
