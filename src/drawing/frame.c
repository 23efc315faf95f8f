/* SPDX-License-Identifier: MIT */
/* What stands on every sheet: frame and title block (ISO 5457, ISO 7200), projection symbol
 * (ISO 5456-2), rulers to prove the print by, cautions. */
#include <string.h>

#include "sheet.h"

/* ISO 5457: 20 mm to file by at the left, 10 on the other sides. On Letter the right is wider, so
 * that both papers leave the 180 mm of the title block. */
static const double edge_left = 20, edge = 10;
static const double title_height = 30, ruler_height = 15.5, caution_line = 4.5;

sil_box sil_sheet_frame(const sil_drawing *drawing)
{
    double right = drawing->order.paper == SIL_LETTER ? edge_left + SIL_FRAME_WIDTH
                                                      : drawing->paper.right - edge;
    return (sil_box){edge_left, edge, right, drawing->paper.top - edge};
}

int sil_sheet_columns(const sil_drawing *drawing)
{
    return drawing->order.paper == SIL_A3 ? 2 : 1;
}

static double caution_height(const sil_heading *heading)
{
    double height = 0;
    for (int i = 0; i < SIL_CAUTION_LINES && heading->caution[i] != NULL; i++) {
        height += caution_line;
    }
    return height > 0 ? height + 2 : 0;
}

static double rulers_height(const sil_drawing *drawing)
{
    return drawing->unscaled ? 2 : ruler_height;
}

sil_room sil_sheet_room(const sil_drawing *drawing, const sil_heading *heading, int column)
{
    sil_box frame = sil_sheet_frame(drawing);
    bool last = column + 1 == sil_sheet_columns(drawing);
    double foot = title_height + rulers_height(drawing) + caution_height(heading);
    double left = last ? frame.right - SIL_FRAME_WIDTH : frame.left;
    return (sil_room){left + SIL_INSET, SIL_COLUMN, frame.top - 8,
                      frame.bottom + (last ? foot + 3 : SIL_INSET)};
}

/* A field of the title block: its name small in the corner, its text under it. */
static void field(sil_shapes *list, sil_box box, const char *name, const char *text, double height)
{
    const double in = 1.5;
    sil_draw_box(list, SIL_LAYER_DIMENSION, box);
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){box.left + in, box.top - 1.2 - SIL_SMALL},
                  SIL_SMALL, SIL_LEFT, 0, name);
    if (text == NULL) {
        return;
    }
    double width = sil_box_width(box) - 2 * in;
    if (height > SIL_NOTE && sil_text_width(list, text, height) > width) {
        height = SIL_NOTE;
    }
    sil_words words = sil_text_fit(list, text, height, width);
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){box.left + in, box.bottom + 1.8}, height,
                  SIL_LEFT, 0, words.text);
}

/* First angle: the frustum, and to its right what is seen looking at its narrow end. */
static void projection(sil_shapes *list, sil_point middle)
{
    const double big = 3.2, small = 1.6, length = 6.4, apart = 4.4;
    double left = middle.x - apart - length / 2, right = middle.x - apart + length / 2;
    const sil_point cone[] = {{left, middle.y - small},
                              {right, middle.y - big},
                              {right, middle.y + big},
                              {left, middle.y + small}};
    sil_point eye = {middle.x + apart + 0.6, middle.y};
    sil_draw_path(list, SIL_LAYER_SLOT, cone, 4, true);
    sil_draw_circle(list, SIL_LAYER_SLOT, eye, big);
    sil_draw_circle(list, SIL_LAYER_SLOT, eye, small);
    sil_draw_line(list, SIL_LAYER_CENTRE, (sil_point){left - 1.2, middle.y},
                  (sil_point){right + 1.2, middle.y});
    sil_draw_line(list, SIL_LAYER_CENTRE, (sil_point){eye.x - big - 1, middle.y},
                  (sil_point){eye.x + big + 1, middle.y});
    sil_draw_line(list, SIL_LAYER_CENTRE, (sil_point){eye.x, middle.y - big - 1},
                  (sil_point){eye.x, middle.y + big + 1});
}

const char *sil_sheet_date(const sil_draft *draft)
{
    const char *date = draft->plan->job->about.date;
    const sil_reading *reading = sil_plan_reading(draft->plan);
    return date == NULL && reading != NULL ? reading->date : date;
}

static void title_block(sil_drawing *drawing, sil_shapes *list, int page)
{
    const sil_draft *draft = &drawing->draft;
    const sil_about *about = &draft->plan->job->about;
    const sil_heading *heading = &drawing->pages[page].heading;
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    sil_box frame = sil_sheet_frame(drawing);
    double x = frame.right - SIL_FRAME_WIDTH, y = frame.bottom, h = title_height / 3;
    sil_box block = {x, y, frame.right, y + title_height};
    const char *title = about->title != NULL ? about->title : "Setup";

    field(list, (sil_box){x, y + h, x + 42, block.top}, "Projection", NULL, 0);
    projection(list, (sil_point){x + 21, y + h + 8.6});
    field(list, (sil_box){x, y, x + 42, y + h}, "General tolerance",
          draft->unit == SIL_MM ? "ISO 2768-f, mm" : "ISO 2768-f, in", SIL_NOTE);
    field(list, (sil_box){x + 42, y + 2 * h, x + 87, block.top}, "Owner", about->owner, SIL_NOTE);
    field(list, (sil_box){x + 87, y + 2 * h, x + 132, block.top}, "Made by", about->by, SIL_NOTE);
    sil_box big = {x + 42, y, x + 132, y + 2 * h};
    field(list, big, "Title", NULL, 0);
    double width = sil_box_width(big) - 3;
    bool fits = sil_text_width(list, title, SIL_HEAD) <= width;
    double height = fits ? SIL_HEAD : SIL_NOTE;
    sil_words one = sil_text_fit(list, title, height, width);
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){big.left + 1.5, y + 11}, height, SIL_LEFT, 0,
                  one.text);
    sil_words part = sil_say("%s%s", heading->part, left ? " - left-handed" : "");
    bool large = sil_text_width(list, part.text, SIL_TITLE) <= width;
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){big.left + 1.5, y + 3},
                  large ? SIL_TITLE : SIL_HEAD, SIL_LEFT, 0, part.text);
    field(list, (sil_box){x + 132, y + 2 * h, frame.right, block.top}, "Document type",
          "Working drawing", SIL_NOTE);
    field(list, (sil_box){x + 132, y + h, frame.right, y + 2 * h}, "Reference", about->ref,
          SIL_NOTE);
    field(list, (sil_box){x + 132, y, x + 155, y + h}, "Date", sil_sheet_date(draft), SIL_NOTE);
    field(list, (sil_box){x + 155, y, x + 168, y + h}, "Scale", heading->scale, SIL_NOTE);
    field(list, (sil_box){x + 168, y, frame.right, y + h}, "Sheet",
          sil_say("%d/%d", page + 1, drawing->page_count).text, SIL_NOTE);
    sil_draw_box(list, SIL_LAYER_OUTLINE, block);
}

static void tick(sil_shapes *list, double x, double y, double dx, double dy)
{
    sil_draw_line(list, SIL_LAYER_SLOT, (sil_point){x, y}, (sil_point){x + dx, y + dy});
}

/* One line with millimetres over it and inches under it, both from its left end; and the same
 * 100 mm up the frame, since paper stretches one way more than the other. */
static void rulers(sil_shapes *list, double x, double y, double frame_left)
{
    sil_draw_line(list, SIL_LAYER_SLOT, (sil_point){x, y}, (sil_point){x + 101.6, y});
    for (int mm = 0; mm <= 100; mm++) {
        tick(list, x + mm, y, 0, mm % 10 == 0 ? 3 : mm % 5 == 0 ? 2.2 : 1.4);
    }
    for (int sixteenth = 0; sixteenth <= 64; sixteenth++) {
        tick(list, x + sixteenth * 25.4 / 16, y, 0,
             sixteenth % 16 == 0  ? -3
             : sixteenth % 8 == 0 ? -2.2
                                  : -1.4);
    }
    for (int cm = 0; cm <= 10; cm++) {
        sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){x + 10 * cm, y + 3.8}, SIL_SMALL,
                      SIL_MIDDLE, 0, sil_say("%d", 10 * cm).text);
    }
    for (int inch = 0; inch <= 4; inch++) {
        sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){x + inch * 25.4, y - 3.8 - SIL_SMALL},
                      SIL_SMALL, SIL_MIDDLE, 0, sil_say("%d", inch).text);
    }
    sil_draw_note(list, x + 110, y + 2.4, "Print at 100 %. Measure");
    sil_draw_note(list, x + 110, y - 1.6, "this line: 100 mm, 4 in.");
    sil_draw_note(list, x + 110, y - 5.6, "Up the edge: 100 mm.");
    for (int mm = 0; mm <= 100; mm++) {
        tick(list, frame_left, y + 12 + mm, mm % 10 == 0 ? 2.4 : mm % 5 == 0 ? 1.8 : 1.2, 0);
    }
    sil_point end = {frame_left + 4.8, y + 12};
    sil_draw_text(list, SIL_LAYER_TEXT, end, SIL_SMALL, SIL_MIDDLE, 90, "0");
    end.y += 100;
    sil_draw_text(list, SIL_LAYER_TEXT, end, SIL_SMALL, SIL_MIDDLE, 90, "100");
}

void sil_sheet_finish(sil_drawing *drawing, int page)
{
    sil_shapes *list = drawing->pages[page].shapes;
    const sil_heading *heading = &drawing->pages[page].heading;
    sil_box frame = sil_sheet_frame(drawing);
    double left = frame.right - SIL_FRAME_WIDTH + SIL_INSET, foot = frame.bottom + title_height;
    title_block(drawing, list, page);
    if (!drawing->unscaled) {
        rulers(list, left, foot + 8, frame.left);
    }
    double top = foot + rulers_height(drawing) + caution_height(heading) - SIL_NOTE;
    for (int i = 0; i < SIL_CAUTION_LINES && heading->caution[i] != NULL; i++) {
        sil_draw_note(list, left, top - i * caution_line, heading->caution[i]);
    }
    sil_draw_box(list, SIL_LAYER_FRAME, frame);
}
