/* SPDX-License-Identifier: MIT */
/* Places blocks one under another. A block that does not fit goes to the next column or paper;
 * it is never made smaller. */
#include "paper.h"

#include <string.h>

static void new_paper(draw_flow *flow)
{
    sil_drawing *drawing = flow->drawing;
    if (drawing->paper_count == DRAW_PAPERS_MAX) {
        drawing->too_long = true;
    } else {
        draw_shapes *shapes = draw_shapes_new(drawing->draft.letters);
        drawing->no_memory = drawing->no_memory || shapes == NULL;
        drawing->papers[drawing->paper_count++] =
            (draw_paper){.shapes = shapes, .heading = flow->heading};
    }
    flow->column = 0;
    flow->band = 0;
}

static void enter_column(draw_flow *flow)
{
    flow->room = draw_paper_room(flow->drawing, &flow->heading, flow->column);
    flow->room.top -= flow->band;
    flow->y = flow->room.top;
}

draw_flow draw_flow_begin(sil_drawing *drawing, draw_heading heading)
{
    draw_flow flow = {.drawing = drawing, .heading = heading};
    new_paper(&flow);
    enter_column(&flow);
    return flow;
}

void draw_flow_drop(sil_drawing *drawing, int papers)
{
    drawing->too_long = drawing->too_long && papers == DRAW_PAPERS_MAX; /* full before the try */
    while (drawing->paper_count > papers) {
        draw_shapes *list = drawing->papers[--drawing->paper_count].shapes;
        drawing->no_memory = drawing->no_memory || list == NULL || list->no_memory;
        draw_shapes_free(list);
    }
}

draw_shapes *draw_flow_list(const draw_flow *flow)
{
    draw_shapes *list = draw_shapes_new(flow->drawing->draft.letters);
    flow->drawing->no_memory = flow->drawing->no_memory || list == NULL;
    return list;
}

static void go_on(draw_flow *flow)
{
    if (++flow->column == draw_paper_columns(flow->drawing)) {
        new_paper(flow);
    }
    enter_column(flow);
}

void draw_flow_put(draw_flow *flow, draw_shapes *block, draw_anchor anchor, double gap,
                   double follow)
{
    sil_drawing *drawing = flow->drawing;
    if (block != NULL) {
        drawing->no_memory = drawing->no_memory || block->no_memory;
        drawing->no_number = drawing->no_number || block->no_number;
    }
    if (block == NULL || block->box.left > block->box.right) {
        draw_shapes_free(block);
        return;
    }
    double height = draw_box_height(block->box);
    if (flow->y - height - follow < flow->room.bottom && flow->y < flow->room.top) {
        go_on(flow);
    }
    double middle = (block->box.left + block->box.right) / 2;
    double dx =
        anchor == DRAW_MIDDLE ? flow->room.left + flow->room.width / 2 - middle : flow->room.left;
    draw_shapes *paper = drawing->papers[drawing->paper_count - 1].shapes;
    draw_shapes_add(paper, block, dx, flow->y - block->box.top);
    flow->y -= height + gap;
    draw_shapes_free(block);
}

void draw_flow_band(draw_flow *flow, draw_shapes *block, double gap)
{
    int columns = draw_paper_columns(flow->drawing);
    draw_room last = draw_paper_room(flow->drawing, &flow->heading, columns - 1);
    flow->room.width = last.left + last.width - flow->room.left;
    draw_flow_put(flow, block, DRAW_MIDDLE, gap, 0);
    flow->band += flow->room.top - flow->y;
    enter_column(flow);
}

void draw_flow_next_column(draw_flow *flow)
{
    if (flow->column + 1 < draw_paper_columns(flow->drawing)) {
        flow->column++;
        enter_column(flow);
    }
}

void draw_flow_title(draw_flow *flow, const char *words, double follow)
{
    draw_shapes *list = draw_flow_list(flow);
    if (flow->y < flow->room.top) {
        flow->y -= 4;
    }
    draw_text(list, DRAW_TEXT, (draw_point){0, 0}, DRAW_HEAD, DRAW_LEFT, 0, words);
    draw_shapes_strut(list, (draw_box){0, 0, 1, DRAW_HEAD});
    draw_flow_put(flow, list, DRAW_LEFT, 3, follow);
}

void draw_flow_text(draw_flow *flow, double indent, double width, const char *words, double gap)
{
    const double pitch = 1.8 * DRAW_NOTE;
    while (*words != '\0') {
        draw_shapes *list = draw_flow_list(flow);
        words = draw_line_of(list, indent, -DRAW_NOTE, width, DRAW_NOTE, words);
        draw_shapes_strut(list, (draw_box){0, -pitch, 1, 0});
        draw_flow_put(flow, list, DRAW_LEFT, *words == '\0' ? gap : 0, 0);
    }
}

void draw_flow_words(draw_flow *flow, const char *words, double gap)
{
    draw_shapes *list = draw_flow_list(flow);
    double y = draw_paragraph(list, 0, 0, DRAW_COLUMN, DRAW_NOTE, words);
    draw_shapes_strut(list, (draw_box){0, y - 0.8 * DRAW_NOTE, 1, 0});
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

void draw_flow_findings(draw_flow *flow, sil_code code)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    const brief_finding *finding = draft->brief->findings;
    for (int i = 0; i < plan->finding_count; i += finding[i].alike) {
        if (plan->findings[i].code == code) {
            draw_flow_text(flow, 0, DRAW_COLUMN,
                           draw_set_decimals(draft, finding[i].together.words), 2);
        }
    }
}
