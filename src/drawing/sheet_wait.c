/* SPDX-License-Identifier: MIT */
/* In place of a part's sheet while it is withheld: that it waits, why, and what comes first. */
#include <ctype.h>

#include "sheet.h"

static void big_word(sil_flow *flow, const char *part)
{
    sil_shapes *list = sil_flow_list(flow);
    const double height = 24;
    sil_draw_text(list, SIL_LAYER_WARNING, (sil_point){0, 0}, height, SIL_MIDDLE, 0, "WAIT");
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){0, -16}, SIL_TITLE, SIL_MIDDLE, 0,
                  sil_say("Nothing is cut at the %s today.", part).text);
    sil_shapes_strut(list, (sil_box){0, -16, 1, height + 18});
    sil_flow_put(flow, list, SIL_MIDDLE, 16, 0);
}

/* Why, as a sentence; "" for a code that withholds nothing. */
static sil_words say_reason(sil_code code)
{
    const char *waits = sil_code_waits(code);
    sil_words words = waits != NULL ? sil_say("%s.", waits) : sil_say("%s", "");
    words.text[0] = (char)toupper((unsigned char)words.text[0]);
    return words;
}

static const char not_read[] = "Not every string it carries was read.";

void sil_flow_wait(sil_flow *flow, const char *what, const sil_withheld *withheld)
{
    const double indent = 34, in = 4;
    sil_shapes *list = sil_flow_list(flow);
    sil_draw_text(list, SIL_LAYER_WARNING, (sil_point){in, -in - SIL_TITLE}, SIL_TITLE, SIL_LEFT, 0,
                  "WAIT");
    double y = -in - SIL_NOTE;
    sil_draw_note(list, indent, y, what);
    for (int k = 0; k < withheld->count; k++) {
        sil_words reason = say_reason(withheld->by[k]);
        if (reason.text[0] != '\0') {
            y = sil_draw_paragraph(list, indent, y - 0.8 * SIL_NOTE, SIL_COLUMN - indent - in,
                                   SIL_NOTE, reason.text);
        }
    }
    if (withheld->count == 0) {
        y = sil_draw_paragraph(list, indent, y - 0.8 * SIL_NOTE, SIL_COLUMN - indent - in, SIL_NOTE,
                               not_read);
    }
    sil_draw_box(list, SIL_LAYER_DIMENSION,
                 (sil_box){0, fmin(y, -in - SIL_TITLE) - in, SIL_COLUMN, 0});
    sil_flow_put(flow, list, SIL_LEFT, 8, 0);
}

static void put_reason(sil_flow *flow, sil_code code)
{
    sil_words reason = say_reason(code);
    sil_flow_text(flow, 0, SIL_COLUMN, reason.text, 2);
    if (code == SIL_FORECAST) { /* the rod is turned because of its relief */
        sil_flow_findings(flow, SIL_RELIEF_LOW);
        sil_flow_findings(flow, SIL_RELIEF_HIGH);
    }
    sil_flow_findings(flow, code);
}

static void put_reasons(sil_flow *flow, const sil_withheld *withheld)
{
    sil_flow_title(flow, "Why", 12);
    for (int k = 0; k < withheld->count; k++) {
        put_reason(flow, withheld->by[k]);
    }
    if (withheld->count == 0) {
        sil_flow_text(flow, 0, SIL_COLUMN, not_read, 2);
    }
    flow->y -= 4;
}

/* The steps before this part's own. */
static void put_first(sil_flow *flow, sil_stage_name stage)
{
    const sil_draft *draft = &flow->drawing->draft;
    char text[1024];
    sil_flow_title(flow, "First", 12);
    for (int step = 0; step < draft->plan->step_count; step++) {
        const sil_step *it = &draft->plan->steps[step];
        if (it->stage >= stage && it->act != SIL_ACT_NECK_ANGLE) {
            continue;
        }
        sil_step_do(draft->plan, step, draft->unit, text, sizeof text);
        sil_set_decimals(draft, text);
        sil_flow_text(flow, 0, SIL_COLUMN, text, 2);
    }
    flow->y -= 4;
    sil_flow_text(flow, 0, SIL_COLUMN,
                  "Then plan again: this sheet is drawn when its figures can be trusted.", 0);
}

void sil_sheet_wait(sil_drawing *drawing, const char *part, const sil_withheld *withheld,
                    sil_stage_name stage)
{
    sil_heading heading = {stage == SIL_NUT ? "Nut" : "Saddle", "-", {NULL}};
    sil_flow flow = sil_flow_begin(drawing, heading);
    big_word(&flow, part);
    put_reasons(&flow, withheld);
    put_first(&flow, stage);
}
