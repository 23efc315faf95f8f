/* SPDX-License-Identifier: MIT */
/* The paper of the bench plan. */
#include "../views/views.h"
#include "papers.h"

/* What is left free between two blocks. */
static double gap(const draw_flow *flow)
{
    return flow->drawing->draft.dense ? 5 : 6;
}

static void put_head(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *facts = draw_flow_list(flow);
    view_facts(draft, facts, DRAW_COLUMN);
    draw_flow_put(flow, facts, DRAW_LEFT, gap(flow), 0);
}

static void put_readings(draw_flow *flow)
{
    draw_shapes *readings = draw_flow_list(flow);
    view_readings(&flow->drawing->draft, readings, DRAW_COLUMN);
    draw_flow_put(flow, readings, DRAW_LEFT, gap(flow), 0);
}

static void put_visits(draw_flow *flow)
{
    if (flow->drawing->draft.brief->visit_count == 0) {
        return;
    }
    draw_shapes *visits = draw_flow_list(flow);
    view_visits(&flow->drawing->draft, visits, DRAW_COLUMN);
    draw_flow_put(flow, visits, DRAW_LEFT, 5, 0);
}

static draw_shapes *side_view(const draw_flow *flow, int string, double width)
{
    draw_shapes *view = draw_flow_list(flow);
    view_side(&flow->drawing->draft, view, string, width);
    return view;
}

/* Puts two views under each other, or beside each other where room is short. */
static void put_both(draw_flow *flow, int left, int right, double width)
{
    if (!flow->drawing->draft.dense) {
        draw_flow_put(flow, side_view(flow, left, width), DRAW_LEFT, 4, 0);
        draw_flow_put(flow, side_view(flow, right, width), DRAW_LEFT, 4, 0);
        return;
    }
    draw_shapes *both = draw_flow_list(flow);
    view_sides(&flow->drawing->draft, both, (const int[]){left, right}, width);
    draw_flow_put(flow, both, DRAW_LEFT, 4, 0);
}

/* Draws side views of two strings: the outer ones, but the string over the fret that is most out
 * of line takes the place of string 1. */
static void put_side_views(draw_flow *flow, double width)
{
    const brief *b = flow->drawing->draft.brief;
    int last = b->strings - 1, worst = 0;
    for (int i = 0; i <= last; i++) {
        bool off = b->worst[i].fret > 0;
        bool more = b->worst[worst].fret == 0 || b->worst[i].off.exact > b->worst[worst].off.exact;
        worst = off && more ? i : worst;
    }
    int other = worst == last ? 0 : worst;
    if (!view_side_shows(&flow->drawing->draft, last) &&
        !view_side_shows(&flow->drawing->draft, other)) {
        return; /* crowns alone say nothing */
    }
    if (last > 0) {
        put_both(flow, last, other, width);
    } else {
        draw_flow_put(flow, side_view(flow, last, width), DRAW_LEFT, 4, 0);
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

static draw_shapes *finding(const draw_flow *flow, int i)
{
    const double indent = 15;
    const draw_draft *draft = &flow->drawing->draft;
    sil_level level = draft->plan->findings[i].level;
    draw_shapes *list = draw_flow_list(flow);
    draw_text(list, level == SIL_LEVEL_STOP ? DRAW_WARNING : DRAW_TEXT, (draw_point){0, -DRAW_NOTE},
              DRAW_NOTE, DRAW_LEFT, 0, brief_level(level));
    double y = draw_notes(draft, list, indent, 0, DRAW_COLUMN - indent,
                          draw_set_decimals(draft, draft->brief->findings[i].together.words));
    draw_shapes_strut(list, (draw_box){0, y - 0.8, 1, 0});
    return list;
}

static void put_findings(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    for (int i = 0; i < draft->plan->finding_count; i += draft->brief->findings[i].alike) {
        draw_shapes *list = finding(flow, i);
        if (i == 0) {
            draw_flow_title(flow, "Found",
                            draw_box_height(draw_shapes_box(list)) + 3); /* kept with its title */
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

draw_heading paper_bench_heading(const char *title)
{
    return (draw_heading){
        title,
        "-",
        {"Slacken the strings before you move nut or saddle; wear eye protection. Use dust "
         "extraction",
         "and a mask for bone, shell, plastic and metal; ventilate for glue. Never force a truss "
         "rod.",
         "Leave what you could not put right to a qualified repairer. Local rules come first."}};
}

static void draw_bench(sil_drawing *drawing)
{
    draw_flow flow = draw_flow_begin(drawing, paper_bench_heading("Bench plan"));
    put_head(&flow);
    put_readings(&flow);
    put_visits(&flow);
    put_side_views(&flow, DRAW_COLUMN);
    if (drawing->draft.dense) { /* findings fill what a step would leave empty */
        put_findings(&flow);
        put_steps(&flow);
    } else {
        put_steps(&flow);
        put_findings(&flow);
    }
    put_notes(&flow);
}

void paper_bench(sil_drawing *drawing)
{
    paper_fill(drawing, draw_bench);
}

void paper_side(sil_drawing *drawing)
{
    static const draw_heading heading = {"Side view", "-", {NULL}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    put_side_views(&flow, 140); /* narrow, so that its lettering can be read on a screen */
}
