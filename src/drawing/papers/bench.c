/* SPDX-License-Identifier: MIT */
/* Sheet: the bench plan. */
#include "../board/paper.h"
#include "../views/views.h"

static void put_head(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *facts = draw_flow_list(flow);
    view_facts(draft, facts, DRAW_COLUMN);
    draw_flow_put(flow, facts, DRAW_LEFT, 5, 0);
    draw_shapes *outlook = draw_flow_list(flow);
    view_outlook(draft, outlook, DRAW_COLUMN);
    draw_flow_put(flow, outlook, DRAW_LEFT, 6, 0);
}

static void put_readings(draw_flow *flow)
{
    draw_shapes *readings = draw_flow_list(flow);
    view_readings(&flow->drawing->draft, readings, DRAW_COLUMN);
    draw_flow_put(flow, readings, DRAW_LEFT, 6, 0);
}

static void put_visits(draw_flow *flow)
{
    if (flow->drawing->draft.plan->visit_count < 2) {
        return;
    }
    draw_shapes *visits = draw_flow_list(flow);
    view_visits(&flow->drawing->draft, visits, DRAW_COLUMN);
    draw_flow_put(flow, visits, DRAW_LEFT, 5, 0);
}

static void put_side_view(draw_flow *flow, int string, double width)
{
    draw_shapes *view = draw_flow_list(flow);
    view_side(&flow->drawing->draft, view, string, width);
    draw_flow_put(flow, view, DRAW_LEFT, 4, 0);
}

/* The outer strings; in place of string 1 the one over the crown farthest off. */
static void put_side_views(draw_flow *flow, double width)
{
    const sil_plan *plan = flow->drawing->draft.plan;
    int last = plan->job->string_count - 1, worst = 0;
    double most = 0.005;
    for (int i = 0; i <= last; i++) {
        for (int fret = 1; fret <= plan->bench.board.frets; fret++) {
            double off = fabs(plan->bench.crowns.off[i][fret]);
            worst = off > most ? i : worst;
            most = fmax(most, off);
        }
    }
    put_side_view(flow, last, width);
    if (last > 0) {
        put_side_view(flow, worst == last ? 0 : worst, width);
    }
}

static void put_steps(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_flow_title(flow, "Steps, in this order", 18);
    for (int step = 0; step < draft->plan->step_count; step++) {
        draw_shapes *list = draw_flow_list(flow);
        view_step(draft, list, step, DRAW_COLUMN);
        draw_flow_put(flow, list, DRAW_LEFT, 2, 0);
    }
}

static void put_findings(draw_flow *flow)
{
    static const char *const levels[] = {[SIL_LEVEL_FINE] = "fine",
                                         [SIL_LEVEL_WATCH] = "watch",
                                         [SIL_LEVEL_ACT] = "act",
                                         [SIL_LEVEL_STOP] = "STOP"};
    const double indent = 15;
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    char text[1024];
    if (plan->finding_count == 0) {
        return;
    }
    for (int i = 0; i < plan->finding_count;) {
        bool first = i == 0;
        sil_level level = plan->findings[i].level;
        draw_shapes *list = draw_flow_list(flow);
        draw_text(list, level == SIL_LEVEL_STOP ? DRAW_WARNING : DRAW_TEXT,
                  (draw_point){0, -DRAW_NOTE}, DRAW_NOTE, DRAW_LEFT, 0, levels[level]);
        i += sil_findings_text(plan, i, draft->unit, text, sizeof text);
        draw_set_decimals(draft, text);
        double y = draw_paragraph(list, indent, 0, DRAW_COLUMN - indent, DRAW_NOTE, text);
        draw_shapes_strut(list, (draw_box){0, y - 0.8, 1, 0});
        if (first) {
            draw_flow_title(flow, "Found",
                            draw_box_height(draw_shapes_box(list)) + 2); /* with what it heads */
        }
        draw_flow_put(flow, list, DRAW_LEFT, 1.4, 0);
    }
}

static void put_notes(draw_flow *flow)
{
    const char *notes = flow->drawing->draft.plan->job->about.notes;
    if (notes == NULL || *notes == '\0') {
        return;
    }
    draw_flow_title(flow, "Notes", 5);
    draw_flow_text(flow, 0, DRAW_COLUMN, notes, 4);
}

void paper_bench(sil_drawing *drawing)
{
    static const draw_heading heading = {
        "Bench plan",
        "-",
        {"Slack the strings before nut or saddle is moved; cover the eyes. Extract and mask for",
         "bone, shell, plastic and metal dust; air the room for glue. Never force a truss rod.",
         "What you would not undo, have a qualified repairer do. Local rules come first."}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    put_head(&flow);
    put_readings(&flow);
    put_visits(&flow);
    put_side_views(&flow, DRAW_COLUMN);
    put_steps(&flow);
    put_findings(&flow);
    put_notes(&flow);
}

void paper_side(sil_drawing *drawing)
{
    static const draw_heading heading = {"Side view", "-", {NULL}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    put_side_views(&flow, 140); /* narrow, so that its lettering is read on a screen */
}
