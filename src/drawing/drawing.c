/* SPDX-License-Identifier: MIT */
#include <sillet/drawing.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "papers/papers.h"

typedef struct paper_size {
    double width, height; /* mm */
} paper_size;

/* A4 in portrait and A3 in landscape as in ISO 5457; Letter after ANSI/ASME Y14.1 size A. */
static const paper_size sizes[] = {
    [SIL_A4] = {210, 297}, [SIL_A3] = {420, 297}, [SIL_LETTER] = {215.9, 279.4}};

/* The papers of the pack: their names, and which orders include them: the whole pack, the nut's
 * or the saddle's. */
typedef struct pack_row {
    const char *name;
    bool drawn[3];
    void (*draw)(sil_drawing *drawing);
    bool (*needed)(const sil_drawing *drawing); /* NULL: always */
} pack_row;

static bool needs_nut(const sil_drawing *drawing)
{
    return paper_needs(drawing, SIL_PART_NUT);
}

static bool needs_saddle(const sil_drawing *drawing)
{
    return paper_needs(drawing, SIL_PART_SADDLE);
}

static bool needs_templates(const sil_drawing *drawing)
{
    return paper_needs_template(drawing, SIL_PART_NUT) ||
           paper_needs_template(drawing, SIL_PART_SADDLE);
}

static bool needs_blanks(const sil_drawing *drawing)
{
    return paper_needs_blank(drawing, SIL_PART_NUT) || paper_needs_blank(drawing, SIL_PART_SADDLE);
}

static const pack_row pack[] = {
    {"card", {true, false, false}, paper_card, NULL},
    {"bench", {true, false, false}, paper_bench, NULL},
    {"nut", {true, true, false}, paper_nut, needs_nut},
    {"saddle", {true, false, true}, paper_saddle, needs_saddle},
    {"templates", {true, true, true}, paper_templates, needs_templates},
    {"blanks", {true, true, true}, paper_blanks, needs_blanks},
    {"clearance", {true, false, false}, paper_tone, paper_needs_tone},
};

static void draw_papers(sil_drawing *drawing, const pack_row *row)
{
    int first = drawing->paper_count;
    row->draw(drawing);
    for (int i = first; i < drawing->paper_count; i++) {
        drawing->papers[i].name = row->name;
        drawing->papers[i].number = i - first + 1;
        drawing->papers[i].hairlines = row->draw == paper_templates;
    }
}

static void finish(sil_drawing *drawing)
{
    for (int i = 0; i < drawing->paper_count && !drawing->no_memory; i++) {
        draw_paper_finish(drawing, i);
    }
}

static void draw_pack(sil_drawing *drawing)
{
    sil_part part = drawing->order.part;
    for (size_t i = 0; i < sizeof pack / sizeof *pack; i++) {
        if (pack[i].drawn[part] && (pack[i].needed == NULL || pack[i].needed(drawing))) {
            draw_papers(drawing, &pack[i]);
        }
    }
    finish(drawing);
}

/* The measuring sheet of an instrument, and that of a kind of instrument. */
static void draw_measure(sil_drawing *drawing)
{
    static const pack_row row = {"measure", {true, false, false}, paper_measure, NULL};
    draw_papers(drawing, &row);
    finish(drawing);
}

/* The page for the owner. */
static void draw_owner(sil_drawing *drawing)
{
    static const pack_row row = {"owner", {true, false, false}, paper_owner, NULL};
    draw_papers(drawing, &row);
    finish(drawing);
}

static void draw_measure_unread(sil_drawing *drawing)
{
    drawing->unread = true;
    draw_measure(drawing);
}

/* A single drawing without frame and title block, on one page of just its own size: while it is
 * drawn the page is taller than any drawing, so that none goes on to a second. */
static void draw_view(sil_drawing *drawing)
{
    const double margin = 2, tall = 1000;
    static void (*const views[])(sil_drawing *) = {
        [SIL_PART_ALL] = paper_side, [SIL_PART_NUT] = paper_nut, [SIL_PART_SADDLE] = paper_saddle};
    drawing->size.top += tall;
    views[drawing->order.part](drawing);
    drawing->size.top -= tall;
    const draw_shapes *view = drawing->papers[0].shapes;
    if (view != NULL && view->count > 0) {
        drawing->size = (draw_box){view->box.left - margin, view->box.bottom - margin,
                                   view->box.right + margin, view->box.top + margin};
    }
}

static sil_status faults(const sil_drawing *drawing)
{
    bool no_memory = drawing->no_memory || drawing->store.failed ||
                     draw_letters_fault(drawing->draft.letters) != SIL_DONE;
    bool fault = drawing->no_number || drawing->too_long;
    for (int i = 0; i < drawing->paper_count; i++) {
        const draw_shapes *list = drawing->papers[i].shapes;
        no_memory = no_memory || list == NULL || list->no_memory;
        fault = fault || (list != NULL && list->no_number);
    }
    return no_memory ? SIL_NO_MEMORY : fault ? SIL_FAULT : SIL_DONE;
}

static sil_status make(const sil_plan *plan, const sil_draw_options *order,
                       void (*draw)(sil_drawing *), sil_drawing **drawing)
{
    *drawing = NULL;
    sil_drawing *made = calloc(1, sizeof *made);
    if (made == NULL) {
        return SIL_NO_MEMORY;
    }
    made->order = *order;
    made->size = (draw_box){0, 0, sizes[order->paper].width, sizes[order->paper].height};
    made->brief = brief_make(plan, order->unit);
    made->draft = (draw_draft){.plan = plan,
                               .brief = made->brief,
                               .decimal_comma = order->decimal_comma,
                               .letters = draw_letters_open(),
                               .store = &made->store};
    sil_status fault =
        made->brief == NULL ? SIL_NO_MEMORY : draw_letters_fault(made->draft.letters);
    if (fault == SIL_DONE) {
        draw(made);
        fault = faults(made);
    }
    if (fault != SIL_DONE) {
        sil_drawing_free(made);
        return fault;
    }
    *drawing = made;
    return draw_letters_warnings(made->draft.letters) > 0 ? SIL_DOUBTFUL : SIL_DONE;
}

sil_status sil_drawing_make(const sil_plan *plan, const sil_draw_options *order,
                            sil_drawing **drawing)
{
    return make(plan, order, draw_pack, drawing);
}

sil_status sil_outlines_make(const sil_plan *plan, const sil_draw_options *order,
                             sil_drawing **drawing)
{
    return make(plan, order, paper_outlines, drawing);
}

sil_status sil_drawing_measure(const sil_plan *plan, const sil_draw_options *order, bool unread,
                               sil_drawing **drawing)
{
    return make(plan, order, unread ? draw_measure_unread : draw_measure, drawing);
}

sil_status sil_drawing_owner(const sil_plan *plan, const sil_draw_options *order,
                             sil_drawing **drawing)
{
    return make(plan, order, draw_owner, drawing);
}

sil_status sil_view_make(const sil_plan *plan, const sil_draw_options *order, sil_drawing **drawing)
{
    return make(plan, order, draw_view, drawing);
}

bool sil_drawing_page_name(const sil_drawing *drawing, int page, char *out, size_t size)
{
    if (page < 0 || page >= drawing->paper_count) {
        return false;
    }
    const draw_paper *it = &drawing->papers[page];
    snprintf(out, size, it->number > 1 ? "%s-%d" : "%s", it->name, it->number);
    return true;
}

int sil_drawing_find(const sil_drawing *drawing, const char *sheet)
{
    char name[32];
    for (int paper = 0; sil_drawing_page_name(drawing, paper, name, sizeof name); paper++) {
        if (strcmp(name, sheet) == 0) {
            return paper;
        }
    }
    return -1;
}

int sil_drawing_pages(const sil_drawing *drawing)
{
    return drawing->paper_count;
}

bool sil_drawing_warning(const sil_drawing *drawing, int index, char *out, size_t size)
{
    if (index >= draw_letters_warnings(drawing->draft.letters)) {
        return false;
    }
    draw_letters_warning(drawing->draft.letters, index, out, size);
    return true;
}

bool sil_drawing_missing(const sil_drawing *drawing, int index, char *out, size_t size)
{
    if (index < 0 || index >= drawing->missing_count) {
        return false;
    }
    snprintf(out, size, "%s", drawing->missing[index]);
    return true;
}

void sil_drawing_free(sil_drawing *drawing)
{
    if (drawing == NULL) {
        return;
    }
    for (int i = 0; i < drawing->paper_count; i++) {
        draw_shapes_free(drawing->papers[i].shapes);
    }
    draw_letters_close(drawing->draft.letters);
    brief_free(drawing->brief);
    text_store_free(&drawing->store);
    free(drawing);
}
