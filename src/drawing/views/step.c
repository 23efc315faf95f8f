/* SPDX-License-Identifier: MIT */
/* A step of the bench plan on paper. What it says comes from the plan; what it leaves blank to
 * write in follows from what it does. */
#include <stddef.h>

#include "views.h"

static const double tick_box = 4.4, text_left = 15;

static void add_row(draw_grid *grid, const char *label, const char *label2, double height)
{
    grid->row[grid->rows] = (draw_grid_row){.label = {label, label2}, .height = height};
    grid->rows++;
}

static void add_blank(draw_grid *grid, const char *label)
{
    add_row(grid, label, NULL, 0);
}

/* A row of figures, one a string; those of strings not worked are dashes, and where none is worked
 * there is no row. */
static void add_figures(const draw_draft *draft, draw_grid *grid, const char *label,
                        draw_words say(const draw_draft *, double), const double *value,
                        const bool *worked)
{
    bool any = false;
    add_row(grid, label, NULL, DRAW_NOTE);
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        bool told = worked == NULL || worked[i];
        grid->row[grid->rows - 1].cell[i] = told ? say(draft, value[i]) : draw_say("-");
        any = any || told;
    }
    grid->rows -= !any;
}

static void add_last_action(const draw_draft *draft, draw_grid *grid)
{
    double action[SIL_STRINGS_MAX] = {0};
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        action[i] = sil_action_after(draft->plan, i);
    }
    add_figures(draft, grid, "action when done", draw_say_length, action, NULL);
}

static void nut_grid(const draw_draft *draft, draw_grid *grid)
{
    const sil_plan *plan = draft->plan;
    double gap[SIL_STRINGS_MAX];
    bool worked[SIL_STRINGS_MAX], filed[SIL_STRINGS_MAX];
    for (int i = 0; i < plan->job->string_count; i++) {
        sil_verdict verdict = plan->nut.verdict[i];
        gap[i] = sil_first_gap(&plan->bench.board, &plan->stages.fit[SIL_SADDLE], i,
                               plan->bench.targets.first_held);
        filed[i] = verdict == SIL_TAKE;
        worked[i] = verdict == SIL_TAKE || verdict == SIL_RAISE;
    }
    add_figures(draft, grid, "first pass", draw_say_cut, plan->nut.first_pass, filed);
    add_figures(draft, grid, "gap when done", draw_say_length, gap, worked);
    add_blank(grid, "gap read");
    add_blank(grid, "and again");
}

static void sand_grid(const draw_draft *draft, draw_grid *grid)
{
    const sil_plan *plan = draft->plan;
    const sil_board *board = &plan->bench.board;
    double off[SIL_STRINGS_MAX] = {0}, action[SIL_STRINGS_MAX] = {0};
    for (int i = 0; i < plan->job->string_count; i++) {
        off[i] = sil_line_at(plan->saddle.cut_first, board->saddle_z[i]);
        action[i] =
            sil_action(board, &plan->stages.fit[SIL_NUT], i, 12) - off[i] * sil_leverage(board, i);
    }
    add_figures(draft, grid, "off, first pass", draw_say_cut, off, NULL);
    add_figures(draft, grid, "action then", draw_say_length, action, NULL);
    add_blank(grid, "action read");
    add_blank(grid, "and again");
}

static void dress_grid(const draw_draft *draft, draw_grid *grid)
{
    const sil_plan *plan = draft->plan;
    bool worked[SIL_STRINGS_MAX];
    for (int i = 0; i < plan->job->string_count; i++) {
        worked[i] = sil_dressed_off(draft->plan, i) > 0;
    }
    add_figures(draft, grid, "off the top", draw_say_cut, plan->saddle.dress, worked);
    add_last_action(draft, grid);
    add_blank(grid, "action read");
}

static void saddle_grid(const draw_draft *draft, draw_grid *grid)
{
    add_last_action(draft, grid);
    add_blank(grid, "action read");
}

static void again_grid(const draw_draft *draft, draw_grid *grid)
{
    (void)draft;
    add_blank(grid, "action at the 12th");
    add_blank(grid, "gap at the 1st");
}

static void action_blank(const draw_draft *draft, draw_grid *grid)
{
    (void)draft;
    add_blank(grid, "action at the 12th");
}

static void first_blank(const draw_draft *draft, draw_grid *grid)
{
    (void)draft;
    add_blank(grid, "held at the 3rd");
    add_blank(grid, "open");
}

static void crown_blanks(const draw_draft *draft, draw_grid *grid)
{
    (void)draft;
    add_blank(grid, "off, fret 1");
    add_blank(grid, "off, fret 2");
    add_blank(grid, "off, fret 3");
}

typedef struct blanks {
    void (*grid)(const draw_draft *draft, draw_grid *grid);
    const char *blank; /* one thing to write, under the grid */
    bool told;         /* the grid tells what to check by */
} blanks;

static const blanks forms[SIL_ACTS] = {
    [SIL_ACT_MEASURE_RELIEF] = {NULL, "relief read", false},
    [SIL_ACT_STRAIGHTEDGE] = {NULL, "relief read", false},
    [SIL_ACT_READ_CROWNS] = {crown_blanks, NULL, false},
    [SIL_ACT_MEASURE_FIRST] = {first_blank, NULL, false},
    [SIL_ACT_MEASURE_ACTION] = {action_blank, NULL, false},
    [SIL_ACT_READ_GAPS_AGAIN] = {first_blank, NULL, false},
    [SIL_ACT_MEASURE_CROWN] = {NULL, "crown, fret 1", false},
    [SIL_ACT_MEASURE_SADDLE] = {NULL, "caliper, slot", false},
    [SIL_ACT_ROD] = {action_blank, "relief read", false},
    [SIL_ACT_READ_AGAIN] = {again_grid, "relief read", false},
    [SIL_ACT_FILE_SLOTS] = {nut_grid, NULL, true},
    [SIL_ACT_FILL_SLOT] = {nut_grid, NULL, true},
    [SIL_ACT_SHIM_NUT] = {nut_grid, NULL, true},
    [SIL_ACT_NEW_NUT] = {nut_grid, NULL, true},
    [SIL_ACT_SAND_SADDLE] = {sand_grid, NULL, true},
    [SIL_ACT_DRESS_SADDLE] = {dress_grid, NULL, true},
    [SIL_ACT_SHIM_SADDLE] = {saddle_grid, NULL, true},
    [SIL_ACT_NEW_SADDLE] = {saddle_grid, NULL, true},
    [SIL_ACT_TURN_SCREWS] = {saddle_grid, NULL, true},
    [SIL_ACT_TURN_POSTS] = {action_blank, NULL, true},
    [SIL_ACT_BRIDGE_CURVE] = {action_blank, NULL, true},
    [SIL_ACT_ZERO_FRET] = {first_blank, NULL, false},
    [SIL_ACT_CHECK] = {again_grid, "relief read", false},
};

static double draw_blank(draw_shapes *list, double x, double y, const char *label)
{
    const double start = 34, length = 40;
    draw_note(list, x, y, label);
    draw_line(list, DRAW_DIMENSION, (draw_point){x + start, y - 1},
              (draw_point){x + start + length, y - 1});
    return y - 1;
}

void view_step(const draw_draft *draft, draw_shapes *list, int step, double width)
{
    char text[1024];
    const sil_step *it = &draft->plan->steps[step];
    const blanks *form = &forms[it->act];
    draw_grid grid = {0};
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){0, -tick_box, tick_box, 0});
    draw_text(list, DRAW_TEXT, (draw_point){11, -0.45 - DRAW_HEAD}, DRAW_HEAD, DRAW_RIGHT, 0,
              draw_say("%d", step + 1).text);
    sil_step_do(draft->plan, step, draft->unit, text, sizeof text);
    draw_set_decimals(draft, text);
    double y = draw_paragraph(list, text_left, -0.9, width - text_left, DRAW_NOTE, text);
    sil_step_check(draft->plan, step, draft->unit, text, sizeof text);
    draw_set_decimals(draft, text);
    if (text[0] != '\0' && !form->told) {
        y = draw_paragraph(list, text_left, y - 2.6, width - text_left, DRAW_NOTE, text);
    }
    if (form->grid != NULL) {
        form->grid(draft, &grid);
        y = draw_add_grid(draft, list, text_left, y - 2.5, width - text_left, &grid);
    }
    if (form->blank != NULL) {
        y = draw_blank(list, text_left, y - 7, form->blank);
    }
    draw_shapes_strut(list, (draw_box){0, y - 1.5, 1, 0});
}
