/* SPDX-License-Identifier: MIT */
/* Sheet: the bench plan. */
#include "sheet.h"
#include "views.h"

static void put_head(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    sil_shapes *facts = sil_flow_list(flow);
    sil_facts(draft, facts, SIL_COLUMN);
    sil_flow_put(flow, facts, SIL_LEFT, 5, 0);
    sil_shapes *outlook = sil_flow_list(flow);
    sil_outlook(draft, outlook, SIL_COLUMN);
    sil_flow_put(flow, outlook, SIL_LEFT, 6, 0);
}

static void put_readings(sil_flow *flow)
{
    sil_shapes *readings = sil_flow_list(flow);
    sil_readings(&flow->drawing->draft, readings, SIL_COLUMN);
    sil_flow_put(flow, readings, SIL_LEFT, 6, 0);
}

static void put_visits(sil_flow *flow)
{
    if (flow->drawing->draft.plan->visit_count < 2) {
        return;
    }
    sil_shapes *visits = sil_flow_list(flow);
    sil_visits(&flow->drawing->draft, visits, SIL_COLUMN);
    sil_flow_put(flow, visits, SIL_LEFT, 5, 0);
}

static void put_side_view(sil_flow *flow, int string, double width)
{
    sil_shapes *view = sil_flow_list(flow);
    sil_side_view(&flow->drawing->draft, view, string, width);
    sil_flow_put(flow, view, SIL_LEFT, 4, 0);
}

/* The outer strings; in place of string 1 the one over the crown farthest off. */
static void put_side_views(sil_flow *flow, double width)
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

static void put_steps(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    sil_flow_title(flow, "Steps, in this order", 18);
    for (int step = 0; step < draft->plan->step_count; step++) {
        sil_shapes *list = sil_flow_list(flow);
        sil_step_view(draft, list, step, SIL_COLUMN);
        sil_flow_put(flow, list, SIL_LEFT, 2, 0);
    }
}

static void put_findings(sil_flow *flow)
{
    static const char *const levels[] = {[SIL_LEVEL_FINE] = "fine",
                                         [SIL_LEVEL_WATCH] = "watch",
                                         [SIL_LEVEL_ACT] = "act",
                                         [SIL_LEVEL_STOP] = "STOP"};
    const double indent = 15;
    const sil_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    char text[1024];
    if (plan->finding_count == 0) {
        return;
    }
    for (int i = 0; i < plan->finding_count;) {
        bool first = i == 0;
        sil_level level = plan->findings[i].level;
        sil_shapes *list = sil_flow_list(flow);
        sil_draw_text(list, level == SIL_LEVEL_STOP ? SIL_LAYER_WARNING : SIL_LAYER_TEXT,
                      (sil_point){0, -SIL_NOTE}, SIL_NOTE, SIL_LEFT, 0, levels[level]);
        i += sil_findings_text(plan, i, draft->unit, text, sizeof text);
        sil_set_decimals(draft, text);
        double y = sil_draw_paragraph(list, indent, 0, SIL_COLUMN - indent, SIL_NOTE, text);
        sil_shapes_strut(list, (sil_box){0, y - 0.8, 1, 0});
        if (first) {
            sil_flow_title(flow, "Found",
                           sil_box_height(sil_shapes_box(list)) + 2); /* with what it heads */
        }
        sil_flow_put(flow, list, SIL_LEFT, 1.4, 0);
    }
}

static void put_notes(sil_flow *flow)
{
    const char *notes = flow->drawing->draft.plan->job->about.notes;
    if (notes == NULL || *notes == '\0') {
        return;
    }
    sil_flow_title(flow, "Notes", 5);
    sil_flow_text(flow, 0, SIL_COLUMN, notes, 4);
}

void sil_sheet_bench(sil_drawing *drawing)
{
    static const sil_heading heading = {
        "Bench plan",
        "-",
        {"Slack the strings before nut or saddle is moved; cover the eyes. Extract and mask for",
         "bone, shell, plastic and metal dust; air the room for glue. Never force a truss rod.",
         "What you would not undo, have a qualified repairer do. Local rules come first."}};
    sil_flow flow = sil_flow_begin(drawing, heading);
    put_head(&flow);
    put_readings(&flow);
    put_visits(&flow);
    put_side_views(&flow, SIL_COLUMN);
    put_steps(&flow);
    put_findings(&flow);
    put_notes(&flow);
}

void sil_sheet_side(sil_drawing *drawing)
{
    static const sil_heading heading = {"Side view", "-", {NULL}};
    sil_flow flow = sil_flow_begin(drawing, heading);
    put_side_views(&flow, 140); /* narrow, so that its lettering is read on a screen */
}
