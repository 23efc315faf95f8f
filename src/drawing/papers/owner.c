/* SPDX-License-Identifier: MIT */
/* The page for the owner: a letter of one page in everyday words, without frame and title block. */
#include "papers.h"

static void put_line(draw_flow *flow, double height, const char *words, double gap)
{
    draw_shapes *list = draw_flow_list(flow);
    if (words != NULL && words[0] != '\0') {
        draw_text(list, DRAW_TEXT, (draw_point){0, 0}, height, DRAW_LEFT, 0,
                  draw_text_fit(&flow->drawing->draft, list, words, height, DRAW_COLUMN));
        draw_shapes_strut(list, (draw_box){0, 0, 1, height});
    }
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

static void put_list(draw_flow *flow, double body, const char *title,
                     const brief_owner_list *sentences)
{
    const double indent = 5, below = 0.75 * body;
    if (sentences->count == 0) {
        return;
    }
    flow->y -= 4;
    put_line(flow, DRAW_TITLE, title, 4);
    for (int k = 0; k < sentences->count; k++) {
        draw_shapes *list = draw_flow_list(flow);
        draw_text(list, DRAW_TEXT, (draw_point){0, -body}, body, DRAW_LEFT, 0, "\u2013");
        double y =
            draw_paragraph(list, indent, 0, DRAW_COLUMN - indent, body,
                           draw_set_decimals(&flow->drawing->draft, sentences->line[k].words));
        draw_shapes_strut(list, (draw_box){0, y - below, 1, 0});
        draw_flow_put(flow, list, DRAW_LEFT, 0.4, 0);
    }
}

/* The readings before and after, a row for each string. */
static void put_readings(draw_flow *flow, const brief_owner *owner)
{
    const draw_draft *draft = &flow->drawing->draft;
    const brief *b = draft->brief;
    draw_table table = {.columns = owner->after != NULL ? 3 : 2,
                        .rows = b->strings + 1,
                        .row_height = b->strings > 8 ? 5 : 5.6,
                        .head = {{NULL, b->unit == SIL_MM ? "in mm" : "in inches"},
                                 {NULL, owner->before},
                                 {NULL, owner->after}},
                        .anchor = {DRAW_LEFT, DRAW_RIGHT, DRAW_RIGHT}};
    bool backward = owner->relief[0].exact < 0 || owner->relief[1].exact < 0;
    table.cell[0][0] =
        backward ? "bow of the neck (minus: backward)" : "bow of the neck, at its middle";
    for (int k = 0; k < 2; k++) {
        table.cell[0][1 + k] = draw_figure(draft, owner->relief[k]);
        for (int i = 0; i < b->strings; i++) {
            table.cell[1 + i][1 + k] = draw_action(draft, owner->action[k][i]);
        }
    }
    for (int i = 0; i < b->strings; i++) {
        const char *note = draft->plan->job->strings[i].note;
        table.cell[1 + i][0] =
            draw_say(draft, "string %d%s%s over the 12th fret", i + 1, note != NULL ? ", " : "",
                     note != NULL ? draw_say(draft, "%s,", note) : "");
    }
    flow->y -= 4;
    draw_shapes *list = draw_flow_list(flow);
    draw_text(list, DRAW_TEXT, (draw_point){0, 0}, DRAW_TITLE, DRAW_LEFT, 0, "Readings");
    draw_add_table(list, 0, -3, DRAW_COLUMN, &table);
    draw_flow_put(flow, list, DRAW_LEFT, 2, 0);
}

/* Who it is for, and which instrument it is about. */
static void put_about(draw_flow *flow, double body)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_job *job = draft->plan->job;
    const char *date = draw_paper_date(draft);
    put_line(flow, DRAW_TITLE, job->shop.name, 3);
    put_line(flow, DRAW_NOTE, job->shop.contact, 8);
    put_line(flow, 7, "About your instrument", 5);
    put_line(flow, body,
             job->about.owner != NULL ? draw_say(draft, "For %s", job->about.owner) : "", 2.6);
    put_line(flow, body, job->about.title, 2.6);
    put_line(flow, body,
             draw_say(draft, "%s%s%s%s", date != NULL ? date : "",
                      date != NULL && job->about.ref != NULL ? ", " : "",
                      job->about.ref != NULL ? "our reference " : "",
                      job->about.ref != NULL ? job->about.ref : ""),
             2.6);
}

static void draw_letter(sil_drawing *drawing, const brief_owner *owner, double body)
{
    static const draw_heading heading = {"For the owner", "-", {NULL}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    put_about(&flow, body);
    put_list(&flow, body, "What was found", &owner->found);
    put_list(&flow, body, "What was done", &owner->done);
    put_readings(&flow, owner);
    put_list(&flow, body, owner->done.count > 0 ? "What is still to be done" : "What is to be done",
             &owner->next);
    put_list(&flow, body, "Looking after it", &owner->care);
}

/* One page: in smaller letters where there is much to say. */
void paper_owner(sil_drawing *drawing)
{
    int before = drawing->paper_count;
    brief_owner owner;
    drawing->letter = true;
    brief_owner_of(drawing->brief, &owner);
    draw_letter(drawing, &owner, DRAW_HEAD);
    if (drawing->paper_count > before + 1) {
        draw_flow_drop(drawing, before);
        draw_letter(drawing, &owner, DRAW_NOTE);
    }
}
