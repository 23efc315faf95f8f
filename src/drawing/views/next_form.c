/* SPDX-License-Identifier: MIT */
/* The readings that tell whether a step is done: now, their range, what they will be, and blanks. */
#include "views.h"

static brief_figure action_now(const brief *b, int i)
{
    return b->action[i].now;
}
static brief_figure action_low(const brief *b, int i)
{
    return b->action[i].wanted.low;
}
static brief_figure action_high(const brief *b, int i)
{
    return b->action[i].wanted.high;
}
static brief_figure action_first(const brief *b, int i)
{
    return b->saddle.string[i].action_first;
}
static brief_figure action_made(const brief *b, int i)
{
    return b->saddle.string[i].action_made;
}
static brief_figure action_rod(const brief *b, int i)
{
    return b->saddle.string[i].action_rod;
}
static brief_figure action_done(const brief *b, int i)
{
    return b->saddle.string[i].action_done;
}
static brief_figure action_curved(const brief *b, int i)
{
    return b->saddle.string[i].action_curved;
}
static brief_figure first_now(const brief *b, int i)
{
    return b->first[i].now;
}
static brief_figure first_low(const brief *b, int i)
{
    return b->first[i].wanted.low;
}
static brief_figure first_high(const brief *b, int i)
{
    return b->first[i].wanted.high;
}
static brief_figure first_pass(const brief *b, int i)
{
    return b->nut.slot[i].gap_first;
}
static brief_figure first_done(const brief *b, int i)
{
    return b->first[i].after;
}

/* The figures of a form: a row each, in this order. A row without a label is left out. */
enum { FORM_ROWS = 6 };
typedef struct form {
    const char *title;
    struct {
        const char *label;
        draw_string_figure *figure;
        bool range; /* left out where room is short; the bench plan has it */
    } row[FORM_ROWS];
} form;

static draw_grid grid_of(const draw_draft *draft, const form *it, bool slim)
{
    static const char *const labels[] = {"read", "and again"};
    draw_grid grid = {.low = true};
    draw_string_figure *last = NULL;
    for (int r = 0; r < FORM_ROWS; r++) {
        if (it->row[r].label != NULL && !(slim && it->row[r].range)) {
            draw_grid_figures(draft, &grid, it->row[r].label, it->row[r].figure);
            last = it->row[r].range ? last : it->row[r].figure;
            if (!slim && r == 0 && grid.rows > 0) { /* of the readings now */
                draw_grid_marks(draft, &grid, last);
            }
        }
    }
    if (last != NULL && (slim || last != it->row[0].figure)) { /* of what they come to */
        draw_grid_marks(draft, &grid, last);
    }
    int blanks = draft->plan->done ? 0 : slim ? 1 : 2;
    for (int k = 0; k < blanks; k++) {
        grid.row[grid.rows++] = (draw_grid_row){.label = {labels[k]}};
    }
    return grid;
}

static double put_form(const draw_draft *draft, draw_shapes *list, const form *it, double top,
                       double width, bool slim)
{
    draw_grid grid = grid_of(draft, it, slim);
    draw_note(list, 0, top - DRAW_NOTE, it->title);
    return draw_add_grid(draft, list, 0, top - DRAW_NOTE - 1.5, width, &grid) - 3;
}

static double put_action(const draw_draft *draft, draw_shapes *list, sil_act act, double top,
                         double width, bool slim)
{
    const brief *b = draft->brief;
    bool rod = act == SIL_ACT_ROD, cut = act == SIL_ACT_SAND_SADDLE && b->saddle.takes_first;
    bool works = cut || act == SIL_ACT_DRESS_SADDLE || act == SIL_ACT_SHIM_SADDLE ||
                 act == SIL_ACT_TURN_SCREWS || act == SIL_ACT_TURN_POSTS ||
                 act == SIL_ACT_NEW_SADDLE || act == SIL_ACT_BRIDGE_CURVE;
    bool turns = act == SIL_ACT_TURN_POSTS && b->saddle.curve_off;
    const form it = {draw_say(draft, "Action at the 12th fret, open, %s", b->unit_name),
                     {{"now", action_now, false},
                      {"range, from", action_low, true},
                      {"to", action_high, true},
                      {rod ? "after the rod, about" : NULL, action_rod, false},
                      {cut && !b->saddle.one_pass  ? "after this pass"
                       : act == SIL_ACT_NEW_SADDLE ? "at first"
                       : turns                     ? "after this step"
                                                   : NULL,
                       cut     ? action_first
                       : turns ? action_done
                               : action_made,
                       false},
                      {works ? "when all is done" : NULL, action_curved, false}}};
    return put_form(draft, list, &it, top, width, slim);
}

static double put_first(const draw_draft *draft, draw_shapes *list, sil_act act, double top,
                        double width, bool slim)
{
    const brief *b = draft->brief;
    bool works = act == SIL_ACT_FILE_SLOTS || act == SIL_ACT_FILL_SLOT || act == SIL_ACT_SHIM_NUT;
    bool again = act == SIL_ACT_FILE_SLOTS && brief_files_again(b);
    const form it = {draw_say(draft, "Gap at the 1st fret, %s, %s",
                              brief_hold(draft->plan->bench.targets.first_held), b->unit_name),
                     {{"now", first_now, false},
                      {"range, from", first_low, true},
                      {"to", first_high, true},
                      {again ? "after this pass" : NULL, first_pass, false},
                      {works ? "when all is done" : NULL, first_done, again}}};
    return put_form(draft, list, &it, top, width, slim);
}

/* The relief in one line, with a blank. */
static double put_relief(const draw_draft *draft, draw_shapes *list, double top, double width)
{
    const brief_reading *relief = &draft->brief->relief;
    const double blank = 40, reach = 30;
    const char *words =
        draw_say(draft, "Relief at fret %d, %s:  now %s,  range %s,  target %s",
                 draft->plan->bench.board.relief_at, draft->brief->unit_name,
                 draw_figure(draft, relief->now), draw_range(draft, &relief->wanted),
                 draw_figure(draft, relief->wanted.aim));
    double y = top - 2 - DRAW_NOTE;
    draw_note(list, 0, y, words);
    if (!draft->plan->done) {
        draw_note(list, width - blank, y, "read");
        draw_line(list, DRAW_DIMENSION, (draw_point){width - reach, y - 1},
                  (draw_point){width, y - 1});
    }
    return y - 4;
}

void view_next_form(const draw_draft *draft, draw_shapes *list, int step, view_room room,
                    double width)
{
    bool slim = room != VIEW_AMPLE;
    sil_act act = draft->brief->steps[step].act;
    view_reads reads = view_reads_of(draft->brief, act);
    double y = 0;
    if (reads.relief) {
        y = put_relief(draft, list, y, width);
    }
    if (reads.first) {
        y = put_first(draft, list, act, y, width, slim);
    }
    if (reads.action) {
        y = put_action(draft, list, act, y, width, slim);
    }
    if (reads.crowns) {
        y = view_crowns_form(draft, list, 0, y, width);
    }
    if (reads.other != NULL) {
        view_blank(list, 0, y - 6, reads.other);
    }
}
