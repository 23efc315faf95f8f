/* SPDX-License-Identifier: MIT */
/* A sheet's drawings, as files to save or to show. */
#include <string.h>

#include "reply.h"

enum { SHEET_NAME_MAX = 32 };

/* The words of a request, in the order of the values they mean. */
static const char *const parts[] = {"all", "nut", "saddle", NULL};
static const char *const papers[] = {"A4", "A3", "Letter", NULL};
static const char *const views[] = {"", "side", "nut", "saddle", NULL};
static const sil_part view_of[] = {SIL_PART_ALL, SIL_PART_ALL, SIL_PART_NUT, SIL_PART_SADDLE};

/* What a request asks for: the pack or the sheets of one part, the outlines of a part, one sheet,
 * or a view. */
typedef struct order {
    sil_draw_options draw;
    sil_format format;
    bool view;
    char sheet[SHEET_NAME_MAX]; /* or "" */
} order;

/* A message if the request cannot be met, otherwise NULL. */
static const char *read_order(const web_target *target, const sil_job *job, order *o)
{
    int part = web_choose(target, "part", parts);
    int view = web_choose(target, "view", views);
    int paper = web_choose(target, "paper", papers);
    const char *formats[SIL_FORMATS + 1];
    for (int k = 0; k <= SIL_FORMATS; k++) {
        formats[k] = sil_format_word((sil_format)k);
    }
    int format = web_choose(target, "as", formats);
    if (format < 0) {
        return "as takes pdf, svg, dxf or stl";
    }
    if (part < 0) {
        return "part takes all, nut or saddle";
    }
    if (view < 0) {
        return "view takes side, nut or saddle";
    }
    if (paper < 0) {
        return "paper takes A4, A3 or Letter";
    }
    if (!web_option(target, "sheet", o->sheet, sizeof o->sheet)) {
        return "sheet takes the name of a sheet of the pack";
    }
    o->format = (sil_format)format;
    o->view = view > 0;
    if (o->view && o->format != SIL_SVG) {
        return "a view is to be had as svg";
    }
    if (o->sheet[0] && o->format != SIL_SVG && o->format != SIL_PDF) {
        return "one sheet is to be had as svg or pdf";
    }
    o->draw.part = o->view ? view_of[view] : (sil_part)part;
    o->draw.paper = (sil_paper)paper;
    return web_choose_unit(target, job, &o->draw.unit) ? NULL : "units takes mm or in";
}

static sil_status make_drawing(const sil_plan *plan, const order *o, sil_drawing **drawing)
{
    if (o->view) {
        return sil_view_make(plan, &o->draw, drawing);
    }
    if (strcmp(o->sheet, "owner") == 0) {
        return sil_drawing_owner(plan, &o->draw, drawing);
    }
    return o->sheet[0] || o->format == SIL_PDF ? sil_drawing_make(plan, &o->draw, drawing)
                                               : sil_outlines_make(plan, &o->draw, drawing);
}

/* The pack may leave out a sheet that is asked for by its name; it is then made whole. */
static sil_status make_with_sheet(const sil_plan *plan, order *o, sil_drawing **drawing)
{
    sil_status status = make_drawing(plan, o, drawing);
    if (status >= SIL_DONE && o->sheet[0] && sil_drawing_find(*drawing, o->sheet) < 0) {
        sil_drawing_free(*drawing);
        *drawing = NULL;
        o->draw.all = true;
        status = make_drawing(plan, o, drawing);
    }
    return status;
}

static void tell(web_reply *reply, sil_status status)
{
    if (status == SIL_NO_SOLID) {
        web_say(reply, 404, "no part can be made today, so there is no solid");
        return;
    }
    web_say(reply, 500,
            status == SIL_NO_FACE
                ? "no lettering found: install the faces of fonts-osifont or fonts-dejavu-core"
                : "the drawing could not be made");
}

static void write_drawing(const sil_drawing *drawing, const order *o, web_reply *reply)
{
    char *bytes;
    size_t size;
    bool whole = !o->view && !o->sheet[0];
    int page = o->view || whole ? 0 : sil_drawing_find(drawing, o->sheet);
    if (page < 0) {
        web_say(reply, 404, "this pack has no such sheet");
        return;
    }
    sil_status status = whole ? sil_drawing_write(drawing, o->format, &bytes, &size)
                              : sil_drawing_write_page(drawing, page, o->format, &bytes, &size);
    if (status >= SIL_DONE) {
        web_give(reply, sil_format_media(o->format), bytes, size);
    } else {
        tell(reply, status);
    }
}

static void draw(const web_target *target, const sil_job *job, web_reply *reply)
{
    order o = {0};
    sil_plan *plan;
    sil_drawing *drawing = NULL;
    const char *wrong = read_order(target, job, &o);
    if (wrong) {
        web_say(reply, 400, wrong);
        return;
    }
    sil_status status = sil_plan_make(job, &plan);
    if (status == SIL_DONE) {
        status = make_with_sheet(plan, &o, &drawing);
    }
    if (status >= SIL_DONE) {
        write_drawing(drawing, &o, reply);
    } else {
        tell(reply, status);
    }
    sil_drawing_free(drawing);
    sil_plan_free(plan);
}

void web_draw(const web_site *site, const web_target *target, const web_request *request,
              web_reply *reply)
{
    sil_sheet *sheet = web_take_sheet(site, request, reply);
    if (sheet) {
        draw(target, sil_sheet_job(sheet), reply);
        sil_sheet_free(sheet);
    }
}
