/* SPDX-License-Identifier: MIT */
/* What every paper has: the frame and title block (ISO 5457, ISO 7200), the projection symbol
 * (ISO 5456-2), rulers to check the print with, and cautions. */
#include <string.h>

#include "paper.h"

/* ISO 5457 asks for a margin of 20 mm at the left, for filing, and 10 mm on the other sides. On
 * Letter the right margin is wider, so that both sizes keep the 180 mm of the title block. */
static const double edge_left = 20, edge = 10;
static const double title_height = 30, ruler_height = 15.5, caution_line = 4.5;

draw_box draw_paper_frame(const sil_drawing *drawing)
{
    double right = drawing->order.paper == SIL_LETTER ? edge_left + DRAW_FRAME_WIDTH
                                                      : drawing->size.right - edge;
    return (draw_box){edge_left, edge, right, drawing->size.top - edge};
}

int draw_paper_columns(const sil_drawing *drawing)
{
    return drawing->order.paper == SIL_A3 ? 2 : 1;
}

static double caution_height(const draw_heading *heading)
{
    double height = 0;
    for (int i = 0; i < DRAW_CAUTION_LINES && heading->caution[i] != NULL; i++) {
        height += caution_line;
    }
    return height > 0 ? height + 2 : 0;
}

/* A paper on which nothing is to scale has no rulers. */
static bool has_rulers(const draw_heading *heading)
{
    return strcmp(heading->scale, "-") != 0;
}

static double rulers_height(const draw_heading *heading)
{
    return has_rulers(heading) ? ruler_height : 2;
}

draw_room draw_paper_room(const sil_drawing *drawing, const draw_heading *heading, int column)
{
    draw_box frame = draw_paper_frame(drawing);
    bool last = column + 1 == draw_paper_columns(drawing);
    double foot =
        drawing->letter ? 0 : title_height + rulers_height(heading) + caution_height(heading);
    double left = last ? frame.right - DRAW_FRAME_WIDTH : frame.left;
    return (draw_room){left + DRAW_INSET, DRAW_COLUMN, frame.top - 6,
                       frame.bottom + (last ? foot + 2 : DRAW_INSET) + drawing->lift};
}

/* Draws a field of the title block: its name in small letters in the corner, and its text below. */
static void field(const draw_draft *draft, draw_shapes *list, draw_box box, const char *name,
                  const char *words, double height)
{
    const double in = 1.5;
    draw_rectangle(list, DRAW_DIMENSION, box);
    draw_text(list, DRAW_TEXT, (draw_point){box.left + in, box.top - 1.2 - DRAW_NOTE}, DRAW_NOTE,
              DRAW_LEFT, 0, name);
    if (words == NULL) {
        return;
    }
    double width = draw_box_width(box) - 2 * in;
    if (height > DRAW_NOTE && draw_text_width(list, words, height) > width) {
        height = DRAW_NOTE;
    }
    draw_text(list, DRAW_TEXT, (draw_point){box.left + in, box.bottom + 1.8}, height, DRAW_LEFT, 0,
              draw_text_fit(draft, list, words, height, width));
}

/* The first-angle symbol: the frustum, and to its right the view of its narrow end. */
static void projection(draw_shapes *list, draw_point middle)
{
    const double big = 3.2, small = 1.6, length = 6.4, apart = 4.4;
    double left = middle.x - apart - length / 2, right = middle.x - apart + length / 2;
    const draw_point cone[] = {{left, middle.y - small},
                               {right, middle.y - big},
                               {right, middle.y + big},
                               {left, middle.y + small}};
    draw_point eye = {middle.x + apart + 0.6, middle.y};
    draw_path(list, DRAW_SLOT, cone, 4, true);
    draw_circle(list, DRAW_SLOT, eye, big);
    draw_circle(list, DRAW_SLOT, eye, small);
    draw_line(list, DRAW_CENTRE, (draw_point){left - 1.2, middle.y},
              (draw_point){right + 1.2, middle.y});
    draw_line(list, DRAW_CENTRE, (draw_point){eye.x - big - 1, middle.y},
              (draw_point){eye.x + big + 1, middle.y});
    draw_line(list, DRAW_CENTRE, (draw_point){eye.x, middle.y - big - 1},
              (draw_point){eye.x, middle.y + big + 1});
}

const char *draw_paper_date(const draw_draft *draft)
{
    const char *date = draft->plan->job->about.date;
    const sil_reading *reading = sil_plan_reading(draft->plan);
    return date == NULL && reading != NULL ? reading->date : date;
}

static void title_block(sil_drawing *drawing, draw_shapes *list, int paper)
{
    const draw_draft *draft = &drawing->draft;
    const sil_about *about = &draft->plan->job->about;
    const draw_heading *heading = &drawing->papers[paper].heading;
    draw_box frame = draw_paper_frame(drawing);
    double x = frame.right - DRAW_FRAME_WIDTH, y = frame.bottom, h = title_height / 3;
    draw_box block = {x, y, frame.right, y + title_height};
    const char *title = about->title != NULL ? about->title : "Setup";

    field(draft, list, (draw_box){x, y + h, x + 42, block.top}, "Projection", NULL, 0);
    projection(list, (draw_point){x + 21, y + h + 8.6});
    field(draft, list, (draw_box){x, y, x + 42, y + h}, "General tolerance",
          draft->brief->unit == SIL_MM ? "ISO 2768-f, mm" : "ISO 2768-f, in", DRAW_NOTE);
    /* The owner of a drawing (ISO 7200) is the shop; a customer's name is on the bench plan, and on
     * the measuring sheet, which is about the customer's instrument. */
    bool measuring = drawing->measuring;
    field(draft, list, (draw_box){x + 42, y + 2 * h, x + 87, block.top},
          measuring ? "Owner" : "Shop", measuring ? about->owner : draft->plan->job->shop.name,
          DRAW_NOTE);
    field(draft, list, (draw_box){x + 87, y + 2 * h, x + 132, block.top}, "Made by", about->by,
          DRAW_NOTE);
    draw_box big = {x + 42, y, x + 132, y + 2 * h};
    field(draft, list, big, "Title", NULL, 0);
    double width = draw_box_width(big) - 3;
    bool fits = draw_text_width(list, title, DRAW_HEAD) <= width;
    double height = fits ? DRAW_HEAD : DRAW_NOTE;
    draw_text(list, DRAW_TEXT, (draw_point){big.left + 1.5, y + 11}, height, DRAW_LEFT, 0,
              draw_text_fit(draft, list, title, height, width));
    const char *part =
        draw_say(draft, "%s%s", heading->part, draw_left_handed(draft) ? " - left-handed" : "");
    bool large = draw_text_width(list, part, DRAW_TITLE) <= width;
    draw_text(list, DRAW_TEXT, (draw_point){big.left + 1.5, y + 3}, large ? DRAW_TITLE : DRAW_HEAD,
              DRAW_LEFT, 0, part);
    field(draft, list, (draw_box){x + 132, y + 2 * h, frame.right, block.top}, "Document type",
          "Working drawing", DRAW_NOTE);
    field(draft, list, (draw_box){x + 132, y + h, frame.right, y + 2 * h}, "Reference", about->ref,
          DRAW_NOTE);
    field(draft, list, (draw_box){x + 132, y, x + 155, y + h}, "Date", draw_paper_date(draft),
          DRAW_NOTE);
    field(draft, list, (draw_box){x + 155, y, x + 167, y + h}, "Scale", heading->scale, DRAW_NOTE);
    field(draft, list, (draw_box){x + 167, y, frame.right, y + h}, "Sheet",
          draw_say(draft, "%d/%d", paper + 1, drawing->paper_count), DRAW_NOTE);
    draw_rectangle(list, DRAW_OUTLINE, block);
}

static void tick(draw_shapes *list, double x, double y, double dx, double dy)
{
    draw_line(list, DRAW_SLOT, (draw_point){x, y}, (draw_point){x + dx, y + dy});
}

/* Draws one line with millimetres above it and inches below it, both from its left end. It also
 * draws 100 mm up the frame, since a printer may stretch one direction more than the other. */
static void rulers(draw_shapes *list, double x, double y, double frame_left)
{
    draw_line(list, DRAW_SLOT, (draw_point){x, y}, (draw_point){x + 101.6, y});
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
        draw_number(list, (draw_point){x + 10 * cm, y + 3.8}, DRAW_NOTE, DRAW_MIDDLE, 10 * cm);
    }
    for (int inch = 0; inch <= 4; inch++) {
        draw_number(list, (draw_point){x + inch * 25.4, y - 3.8 - DRAW_NOTE}, DRAW_NOTE,
                    DRAW_MIDDLE, inch);
    }
    draw_note(list, x + 110, y + 2.4, "Print at 100 %. Measure");
    draw_note(list, x + 110, y - 1.6, "this line: 100 mm, 4 in.");
    draw_note(list, x + 110, y - 5.6, "Up the edge: 100 mm.");
    for (int mm = 0; mm <= 100; mm++) {
        tick(list, frame_left, y + 12 + mm, mm % 10 == 0 ? 2.4 : mm % 5 == 0 ? 1.8 : 1.2, 0);
    }
    /* Past its ends, where no line of words begins beside them. */
    draw_note(list, frame_left + 0.8, y + 11 - DRAW_NOTE, "0");
    draw_note(list, frame_left + 0.8, y + 113, "100");
}

void draw_paper_finish(sil_drawing *drawing, int paper)
{
    draw_shapes *list = drawing->papers[paper].shapes;
    const draw_heading *heading = &drawing->papers[paper].heading;
    draw_box frame = draw_paper_frame(drawing);
    if (drawing->letter) {
        return;
    }
    double left = frame.right - DRAW_FRAME_WIDTH + DRAW_INSET, foot = frame.bottom + title_height;
    title_block(drawing, list, paper);
    if (has_rulers(heading)) {
        rulers(list, left, foot + 8, frame.left);
    }
    double top = foot + rulers_height(heading) + caution_height(heading) - DRAW_NOTE;
    for (int i = 0; i < DRAW_CAUTION_LINES && heading->caution[i] != NULL; i++) {
        draw_note(list, left, top - i * caution_line, heading->caution[i]);
    }
    draw_rectangle(list, DRAW_FRAME, frame);
}
