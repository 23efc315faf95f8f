/* SPDX-License-Identifier: MIT */
/* In place of a part's sheet while it is withheld: that it waits, why, and what comes first. */
#include <ctype.h>

#include "../board/paper.h"

static void big_word(draw_flow *flow, const char *part)
{
    draw_shapes *list = draw_flow_list(flow);
    const double height = 24;
    draw_text(list, DRAW_WARNING, (draw_point){0, 0}, height, DRAW_MIDDLE, 0, "WAIT");
    draw_text(list, DRAW_TEXT, (draw_point){0, -16}, DRAW_TITLE, DRAW_MIDDLE, 0,
              draw_say("Nothing is cut at the %s today.", part).text);
    draw_shapes_strut(list, (draw_box){0, -16, 1, height + 18});
    draw_flow_put(flow, list, DRAW_MIDDLE, 16, 0);
}

/* Why, as a sentence; "" for a code that withholds nothing. */
static draw_words say_reason(sil_code code)
{
    const char *waits = sil_code_waits(code);
    draw_words words = waits != NULL ? draw_say("%s.", waits) : draw_say("%s", "");
    words.text[0] = (char)toupper((unsigned char)words.text[0]);
    return words;
}

static const char not_read[] = "Not every string it carries was read.";

void paper_flow_wait(draw_flow *flow, const char *what, const sil_withheld *withheld)
{
    const double indent = 34, in = 4;
    draw_shapes *list = draw_flow_list(flow);
    draw_text(list, DRAW_WARNING, (draw_point){in, -in - DRAW_TITLE}, DRAW_TITLE, DRAW_LEFT, 0,
              "WAIT");
    double y = -in - DRAW_NOTE;
    draw_note(list, indent, y, what);
    for (int k = 0; k < withheld->count; k++) {
        draw_words reason = say_reason(withheld->by[k]);
        if (reason.text[0] != '\0') {
            y = draw_paragraph(list, indent, y - 0.8 * DRAW_NOTE, DRAW_COLUMN - indent - in,
                               DRAW_NOTE, reason.text);
        }
    }
    if (withheld->count == 0) {
        y = draw_paragraph(list, indent, y - 0.8 * DRAW_NOTE, DRAW_COLUMN - indent - in, DRAW_NOTE,
                           not_read);
    }
    draw_rectangle(list, DRAW_DIMENSION,
                   (draw_box){0, fmin(y, -in - DRAW_TITLE) - in, DRAW_COLUMN, 0});
    draw_flow_put(flow, list, DRAW_LEFT, 8, 0);
}

static void put_reason(draw_flow *flow, sil_code code)
{
    draw_words reason = say_reason(code);
    draw_flow_text(flow, 0, DRAW_COLUMN, reason.text, 2);
    if (code == SIL_FORECAST) { /* the rod is turned because of its relief */
        draw_flow_findings(flow, SIL_RELIEF_LOW);
        draw_flow_findings(flow, SIL_RELIEF_HIGH);
    }
    draw_flow_findings(flow, code);
}

static void put_reasons(draw_flow *flow, const sil_withheld *withheld)
{
    draw_flow_title(flow, "Why", 12);
    for (int k = 0; k < withheld->count; k++) {
        put_reason(flow, withheld->by[k]);
    }
    if (withheld->count == 0) {
        draw_flow_text(flow, 0, DRAW_COLUMN, not_read, 2);
    }
    flow->y -= 4;
}

/* The steps before this part's own. */
static void put_first(draw_flow *flow, sil_stage_name stage)
{
    const draw_draft *draft = &flow->drawing->draft;
    char text[1024];
    draw_flow_title(flow, "First", 12);
    for (int step = 0; step < draft->plan->step_count; step++) {
        const sil_step *it = &draft->plan->steps[step];
        if (it->stage >= stage && it->act != SIL_ACT_NECK_ANGLE) {
            continue;
        }
        sil_step_do(draft->plan, step, draft->unit, text, sizeof text);
        draw_set_decimals(draft, text);
        draw_flow_text(flow, 0, DRAW_COLUMN, text, 2);
    }
    flow->y -= 4;
    draw_flow_text(flow, 0, DRAW_COLUMN,
                   "Then plan again: this sheet is drawn when its figures can be trusted.", 0);
}

void paper_wait(sil_drawing *drawing, const char *part, const sil_withheld *withheld,
                sil_stage_name stage)
{
    draw_heading heading = {stage == SIL_NUT ? "Nut" : "Saddle", "-", {NULL}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    big_word(&flow, part);
    put_reasons(&flow, withheld);
    put_first(&flow, stage);
}
