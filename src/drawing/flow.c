/* SPDX-License-Identifier: MIT */
/* Blocks one under another; what does not fit goes on to the next column or sheet, never smaller.
 */
#include "sheet.h"

#include <string.h>

static void new_page(sil_flow *flow)
{
    sil_drawing *drawing = flow->drawing;
    if (drawing->page_count == SIL_PAGES_MAX) {
        drawing->too_long = true;
    } else {
        sil_shapes *shapes = sil_shapes_new(drawing->draft.letters);
        drawing->no_memory = drawing->no_memory || shapes == NULL;
        drawing->pages[drawing->page_count++] =
            (sil_page){.shapes = shapes, .heading = flow->heading};
    }
    flow->column = 0;
    flow->band = 0;
}

static void enter_column(sil_flow *flow)
{
    flow->room = sil_sheet_room(flow->drawing, &flow->heading, flow->column);
    flow->room.top -= flow->band;
    flow->y = flow->room.top;
}

sil_flow sil_flow_begin(sil_drawing *drawing, sil_heading heading)
{
    sil_flow flow = {.drawing = drawing, .heading = heading};
    new_page(&flow);
    enter_column(&flow);
    return flow;
}

sil_shapes *sil_flow_list(const sil_flow *flow)
{
    sil_shapes *list = sil_shapes_new(flow->drawing->draft.letters);
    flow->drawing->no_memory = flow->drawing->no_memory || list == NULL;
    return list;
}

static void go_on(sil_flow *flow)
{
    if (++flow->column == sil_sheet_columns(flow->drawing)) {
        new_page(flow);
    }
    enter_column(flow);
}

void sil_flow_put(sil_flow *flow, sil_shapes *block, sil_anchor anchor, double gap, double follow)
{
    sil_drawing *drawing = flow->drawing;
    if (block != NULL) {
        drawing->no_memory = drawing->no_memory || block->no_memory;
        drawing->no_number = drawing->no_number || block->no_number;
    }
    if (block == NULL || block->box.left > block->box.right) {
        sil_shapes_free(block);
        return;
    }
    double height = sil_box_height(block->box);
    if (flow->y - height - follow < flow->room.bottom && flow->y < flow->room.top) {
        go_on(flow);
    }
    double middle = (block->box.left + block->box.right) / 2;
    double dx =
        anchor == SIL_MIDDLE ? flow->room.left + flow->room.width / 2 - middle : flow->room.left;
    sil_shapes *page = drawing->pages[drawing->page_count - 1].shapes;
    sil_shapes_add(page, block, dx, flow->y - block->box.top);
    flow->y -= height + gap;
    sil_shapes_free(block);
}

void sil_flow_band(sil_flow *flow, sil_shapes *block, double gap)
{
    int columns = sil_sheet_columns(flow->drawing);
    sil_room last = sil_sheet_room(flow->drawing, &flow->heading, columns - 1);
    flow->room.width = last.left + last.width - flow->room.left;
    sil_flow_put(flow, block, SIL_MIDDLE, gap, 0);
    flow->band += flow->room.top - flow->y;
    enter_column(flow);
}

void sil_flow_next_column(sil_flow *flow)
{
    if (flow->column + 1 < sil_sheet_columns(flow->drawing)) {
        flow->column++;
        enter_column(flow);
    }
}

void sil_flow_title(sil_flow *flow, const char *text, double follow)
{
    sil_shapes *list = sil_flow_list(flow);
    if (flow->y < flow->room.top) {
        flow->y -= 4;
    }
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){0, 0}, SIL_HEAD, SIL_LEFT, 0, text);
    sil_shapes_strut(list, (sil_box){0, 0, 1, SIL_HEAD});
    sil_flow_put(flow, list, SIL_LEFT, 3, follow);
}

void sil_flow_text(sil_flow *flow, double indent, double width, const char *text, double gap)
{
    const double pitch = 1.8 * SIL_NOTE;
    while (*text != '\0') {
        sil_shapes *list = sil_flow_list(flow);
        text = sil_draw_line_of(list, indent, -SIL_NOTE, width, SIL_NOTE, text);
        sil_shapes_strut(list, (sil_box){0, -pitch, 1, 0});
        sil_flow_put(flow, list, SIL_LEFT, *text == '\0' ? gap : 0, 0);
    }
}

void sil_flow_words(sil_flow *flow, const char *text, double gap)
{
    sil_shapes *list = sil_flow_list(flow);
    double y = sil_draw_paragraph(list, 0, 0, SIL_COLUMN, SIL_NOTE, text);
    sil_shapes_strut(list, (sil_box){0, y - 0.8 * SIL_NOTE, 1, 0});
    sil_flow_put(flow, list, SIL_LEFT, gap, 0);
}

void sil_flow_findings(sil_flow *flow, sil_code code)
{
    const sil_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    char text[1024];
    for (int i = 0, told; i < plan->finding_count; i += told) {
        told = sil_findings_text(plan, i, draft->unit, text, sizeof text);
        sil_set_decimals(draft, text);
        if (plan->findings[i].code == code) {
            sil_flow_text(flow, 0, SIL_COLUMN, text, 2);
        }
    }
}
