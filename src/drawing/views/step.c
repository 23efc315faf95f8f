/* SPDX-License-Identifier: MIT */
/* A step of the bench plan on paper. Its words come from the brief, and its kind of work decides
 * which blanks it has. */
#include <stddef.h>

#include "views.h"

static const double tick_box = 4.4, words_left = 15;
static const char relief_read[] = "relief read";

static void add_row(draw_grid *grid, const char *label, const char *label2, double height)
{
    grid->row[grid->rows] = (draw_grid_row){.label = {label, label2}, .height = height};
    grid->rows++;
}

static void add_blank(draw_grid *grid, const char *label)
{
    add_row(grid, label, NULL, 0);
}

static brief_figure nut_first(const brief *b, int i)
{
    return b->nut.slot[i].first;
}

static brief_figure base_first(const brief *b, int i)
{
    return b->saddle.string[i].base_first;
}

static brief_figure action_first(const brief *b, int i)
{
    return b->saddle.string[i].action_first;
}

static brief_figure dress(const brief *b, int i)
{
    return b->saddle.string[i].dress_now;
}

static brief_figure action_dressed(const brief *b, int i)
{
    return b->saddle.string[i].action_dressed;
}

/* The gap of a string whose place on the zero fret is too high or too low, when that is done. */
static brief_figure zero_fret_gap(const brief *b, int i)
{
    return b->nut.slot[i].zero_fret_gap;
}

static brief_figure action_made(const brief *b, int i)
{
    return b->saddle.string[i].action_made;
}
static brief_figure action_done(const brief *b, int i)
{
    return b->saddle.string[i].action_done;
}

static brief_figure action_curved(const brief *b, int i)
{
    return b->saddle.string[i].action_curved;
}

static brief_figure peak(const brief *b, int i)
{
    return b->tuning.string[i].peak;
}

/* Adds the actions, and in inches what a rule in 64ths shows of each below it. */
static void add_actions(const draw_draft *draft, draw_grid *grid, const char *label,
                        draw_string_figure *figure)
{
    if (draw_grid_figures(draft, grid, label, figure) && !draft->dense) {
        draw_grid_marks(draft, grid, figure);
    }
}

/* Adds the gap of every nut slot that is worked on: at its target, or after a first pass. */
static void add_gaps(const draw_draft *draft, draw_grid *grid)
{
    bool any = false;
    bool again = brief_files_again(draft->brief);
    add_row(grid, again ? "gap, this pass" : "gap when done", NULL, DRAW_NOTE);
    for (int i = 0; i < draft->brief->strings; i++) {
        const brief_slot *slot = &draft->brief->nut.slot[i];
        grid->row[grid->rows - 1].cell[i] =
            slot->worked ? draw_figure(draft, again ? slot->gap_first : slot->gap) : "-";
        any = any || slot->worked;
    }
    grid->rows -= !any;
}

/* Room to read it a second time, unless room is short: the next visit has the same. */
static void add_second(const draw_draft *draft, draw_grid *grid)
{
    if (!draft->dense) {
        add_blank(grid, "and again");
    }
}

/* The blanks to write in at a step. */
typedef enum form_name {
    NO_FORM,
    NUT_FORM,
    SAND_FORM,
    DRESS_FORM,
    SADDLE_FORM,
    CURVE_FORM,
    AGAIN_FORM,
    ACTION_FORM,
    FIRST_FORM,
    ZERO_FRET_FORM,
    CROWN_FORM,
    CENTS_FORM,
    PEAKS_FORM
} form_name;

static void fill_grid(const draw_draft *draft, draw_grid *grid, form_name form)
{
    switch (form) {
    case NUT_FORM:
        draw_grid_figures(draft, grid, "first pass", nut_first);
        add_gaps(draft, grid);
        add_blank(grid, "gap read");
        add_second(draft, grid);
        break;
    case SAND_FORM:
        draw_grid_figures(draft, grid, "off, first pass", base_first);
        add_actions(draft, grid, "action then", action_first);
        add_blank(grid, "action read");
        add_second(draft, grid);
        break;
    case DRESS_FORM:
        draw_grid_figures(draft, grid, "off the top", dress);
        if (!draft->brief->saddle.base) { /* or the bottom has its passes first */
            add_actions(draft, grid, "action then", action_dressed);
        }
        add_actions(draft, grid, "action when done", action_done);
        add_blank(grid, "action read");
        break;
    case SADDLE_FORM:
        if (draft->brief->saddle.replaced) {
            add_actions(draft, grid, "action at first", action_made);
        }
        add_actions(draft, grid, "action when done", action_done);
        add_blank(grid, "action read");
        break;
    case CURVE_FORM:
        add_actions(draft, grid, "action when done", action_curved);
        add_blank(grid, "action read");
        break;
    case AGAIN_FORM:
        add_blank(grid, "action at the 12th");
        add_blank(grid, "gap at the 1st");
        if (draft->brief->asks_cents && !draft->dense) {
            add_blank(grid, "cents at the 12th");
        }
        break;
    case ACTION_FORM:
        add_blank(grid, "action at the 12th");
        break;
    case ZERO_FRET_FORM:
        draw_grid_figures(draft, grid, "stop at gap", zero_fret_gap);
        add_blank(grid, "gap read");
        break;
    case FIRST_FORM:
        add_blank(grid, "held at the 3rd");
        add_blank(grid, "open");
        break;
    case CROWN_FORM:
        add_blank(grid, "off, fret 1");
        add_blank(grid, "off, fret 2");
        add_blank(grid, "off, fret 3");
        break;
    case PEAKS_FORM:
        draw_grid_figures(draft, grid, "peak from front", peak);
        add_blank(grid, "cents read");
        add_blank(grid, "action read");
        break;
    case CENTS_FORM:
        add_blank(grid, "cents read");
        add_blank(grid, "and again");
        break;
    case NO_FORM:
        break;
    }
}

typedef struct blanks {
    form_name form;
    const char *blank; /* a single reading to write down, below the grid */
    bool told;         /* the grid shows what to check */
} blanks;

static blanks blanks_of(const brief *b, sil_act act)
{
    switch (act) {
    case SIL_ACT_MEASURE_RELIEF:
    case SIL_ACT_STRAIGHTEDGE:
        return (blanks){NO_FORM, relief_read, false};
    case SIL_ACT_READ_CROWNS:
        return (blanks){CROWN_FORM, NULL, false};
    case SIL_ACT_MEASURE_FIRST:
    case SIL_ACT_READ_GAPS_AGAIN:
        return (blanks){FIRST_FORM, NULL, false};
    case SIL_ACT_ZERO_FRET:
    case SIL_ACT_RAISE_ZERO_FRET:
        return (blanks){ZERO_FRET_FORM, NULL, false};
    case SIL_ACT_FIT_SADDLE:
    case SIL_ACT_MEASURE_ACTION:
        return (blanks){ACTION_FORM, NULL, false};
    case SIL_ACT_READ_ODD:
        return (blanks){NO_FORM, "read again", false};
    case SIL_ACT_MEASURE_CROWN:
        return (blanks){NO_FORM, "fret height, fret 1", false};
    case SIL_ACT_MEASURE_SADDLE:
        return (blanks){NO_FORM, "caliper, slot", false};
    case SIL_ACT_ROD:
        return (blanks){ACTION_FORM, relief_read, false};
    case SIL_ACT_MEASURE_BRIDGE:
        return (blanks){NO_FORM, "straightedge, slot", false};
    case SIL_ACT_READ_AGAIN:
    case SIL_ACT_READ_NEW:
    case SIL_ACT_CHOOSE:
    case SIL_ACT_CHECK:
        return (blanks){AGAIN_FORM, relief_read, false};
    case SIL_ACT_FILE_SLOTS:
    case SIL_ACT_FILL_SLOT:
    case SIL_ACT_SHIM_NUT:
        return (blanks){NUT_FORM, NULL, true};
    case SIL_ACT_SAND_SADDLE: /* where no pass is safe, the action is measured with a finer tool */
        return b->saddle.takes_first ? (blanks){SAND_FORM, NULL, true}
                                     : (blanks){ACTION_FORM, NULL, false};
    case SIL_ACT_DRESS_SADDLE:
        return (blanks){DRESS_FORM, NULL, true};
    case SIL_ACT_SHIM_SADDLE:
    case SIL_ACT_NEW_SADDLE:
    case SIL_ACT_TURN_SCREWS:
    case SIL_ACT_TURN_POSTS:
        return (blanks){SADDLE_FORM, NULL, true};
    case SIL_ACT_BRIDGE_CURVE:
        return (blanks){CURVE_FORM, NULL, true};
    case SIL_ACT_TUNE_SCREWS:
    case SIL_ACT_TUNE_ENDS:
        return (blanks){CENTS_FORM, NULL, false};
    case SIL_ACT_FILE_PEAKS:
    case SIL_ACT_TUNED_SADDLE:
        return (blanks){PEAKS_FORM, NULL, false};
    case SIL_ACT_PREPARE:
    case SIL_ACT_STOP:
    case SIL_ACT_LOOK_AT_SADDLE:
    case SIL_ACT_FIND_ROD:
    case SIL_ACT_ROD_BY_EAR:
    case SIL_ACT_NECK_BOW:
    case SIL_ACT_ROD_FIRST:
    case SIL_ACT_BACK_BOW:
    case SIL_ACT_SEAT_FRETS:
    case SIL_ACT_LEVEL_FRETS:
    case SIL_ACT_NEW_FRETS:
    case SIL_ACT_NECK_ANGLE:
    case SIL_ACT_NECK_SHIM:
    case SIL_ACT_NECK_RESET:
    case SIL_ACT_FIT_NUT:
    case SIL_ACT_MARK_NUT:
    case SIL_ACT_CUT_NUT:
    case SIL_ACT_SHAPE_NUT:
    case SIL_ACT_FIT_BLANK:
    case SIL_ACT_SHAPE_SADDLE:
    case SIL_ACTS:
        break;
    }
    return (blanks){NO_FORM, NULL, false};
}

view_reads view_reads_of(const brief *b, sil_act act)
{
    blanks left = blanks_of(b, act);
    form_name form = left.form;
    bool relief = left.blank == relief_read;
    return (view_reads){.relief = relief,
                        .first = form == NUT_FORM || form == FIRST_FORM || form == ZERO_FRET_FORM ||
                                 form == AGAIN_FORM,
                        .action = form == SAND_FORM || form == DRESS_FORM || form == SADDLE_FORM ||
                                  form == AGAIN_FORM || form == ACTION_FORM,
                        .crowns = form == CROWN_FORM,
                        .other = relief ? NULL : left.blank};
}

double view_crowns_form(const draw_draft *draft, draw_shapes *list, double x, double top,
                        double width)
{
    draw_grid grid = {0};
    fill_grid(draft, &grid, CROWN_FORM);
    return draw_add_grid(draft, list, x, top, width, &grid);
}

double view_blank(draw_shapes *list, double x, double y, const char *label)
{
    const double start = 34, length = 40;
    draw_note(list, x, y, label);
    draw_line(list, DRAW_DIMENSION, (draw_point){x + start, y - 1},
              (draw_point){x + start + length, y - 1});
    return y - 1;
}

void view_step(const draw_draft *draft, draw_shapes *list, int step, double width)
{
    const brief_step *it = &draft->brief->steps[step];
    blanks left = blanks_of(draft->brief, it->act);
    draw_grid grid = {.low = draft->dense};
    const double apart = draft->dense ? 2 : 2.5; /* between words and a grid, or words that check */
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){0, -tick_box, tick_box, 0});
    draw_number(list, (draw_point){11, -0.45 - DRAW_HEAD}, DRAW_HEAD, DRAW_RIGHT, step + 1);
    double y = draw_notes(draft, list, words_left, -0.9, width - words_left,
                          draw_set_decimals(draft, it->what.words));
    if (it->check.words[0] != '\0' && !left.told) {
        y = draw_notes(draft, list, words_left, y - apart, width - words_left,
                       draw_set_decimals(draft, it->check.words));
    }
    if (left.form != NO_FORM) {
        fill_grid(draft, &grid, left.form);
        double x = draft->dense ? 0 : words_left; /* wide enough for twelve strings in inches */
        y = draw_add_grid(draft, list, x, y - apart, width - x, &grid);
    }
    if (left.blank != NULL) {
        y = view_blank(list, words_left, y - (draft->dense ? 6 : 7), left.blank);
    }
    draw_shapes_strut(list, (draw_box){0, y - 1.5, 1, 0});
}
