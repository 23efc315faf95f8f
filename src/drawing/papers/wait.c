/* SPDX-License-Identifier: MIT */
/* Replaces the paper of a part that is withheld. It says that the part waits, why, and what
 * comes first. */
#include <ctype.h>

#include "../views/views.h"
#include "papers.h"

static void big_word(draw_flow *flow, const char *part)
{
    draw_shapes *list = draw_flow_list(flow);
    const double height = 24;
    draw_text(list, DRAW_WARNING, (draw_point){0, 0}, height, DRAW_MIDDLE, 0, "WAIT");
    draw_text(list, DRAW_TEXT, (draw_point){0, -16}, DRAW_TITLE, DRAW_MIDDLE, 0,
              draw_say(&flow->drawing->draft, "Nothing is cut at the %s today.", part));
    draw_shapes_strut(list, (draw_box){0, -16, 1, height + 18});
    draw_flow_put(flow, list, DRAW_MIDDLE, 16, 0);
}

const char *paper_reason(const draw_draft *draft, const brief_stage *stage, int reason)
{
    const char *why = stage->why[reason];
    return draw_say(draft, "%c%s.", toupper((unsigned char)why[0]), why + 1);
}

void paper_flow_wait(draw_flow *flow, const char *what, const brief_stage *stage)
{
    const double indent = 34, in = 4;
    draw_shapes *list = draw_flow_list(flow);
    draw_text(list, DRAW_WARNING, (draw_point){in, -in - DRAW_TITLE}, DRAW_TITLE, DRAW_LEFT, 0,
              "WAIT");
    double y = -in - DRAW_NOTE;
    draw_note(list, indent, y, what);
    for (int k = 0; k < stage->whys; k++) {
        y = draw_paragraph(list, indent, y - 0.8 * DRAW_NOTE, DRAW_COLUMN - indent - in, DRAW_NOTE,
                           paper_reason(&flow->drawing->draft, stage, k));
    }
    draw_rectangle(list, DRAW_DIMENSION,
                   (draw_box){0, fmin(y, -in - DRAW_TITLE) - in, DRAW_COLUMN, 0});
    draw_flow_put(flow, list, DRAW_LEFT, 8, 0);
}

/* Puts what was found that withholds a part. */
static void put_found(draw_flow *flow, sil_code code)
{
    if (code == SIL_FORECAST) { /* the relief is the reason for turning the rod */
        draw_flow_findings(flow, SIL_RELIEF_LOW);
        draw_flow_findings(flow, SIL_RELIEF_HIGH);
    }
    draw_flow_findings(flow, code);
}

static void put_reasons(draw_flow *flow, const brief_stage *stage, const sil_withheld *withheld)
{
    draw_flow_title(flow, "Why", 12);
    for (int k = 0; k < stage->whys; k++) {
        draw_flow_text(flow, 0, DRAW_COLUMN, paper_reason(&flow->drawing->draft, stage, k), 2);
        if (k < withheld->count) {
            put_found(flow, withheld->by[k]);
        }
    }
    flow->y -= 4;
}

/* Whether a step comes before those of a part. Where another part is made, all of them do, until it is
 * in and everything is measured. */
static bool comes_before(const brief *b, const brief_step *step, sil_stage_name stage)
{
    bool made = b->steps[b->plan->step_count - 1].act == SIL_ACT_READ_NEW;
    return made || step->stage < stage || step->act == SIL_ACT_NECK_ANGLE ||
           step->act == SIL_ACT_FILE_PEAKS;
}

/* Names the steps that come before those of this part, if there are any; the bench plan has them in
 * full. */
static void put_first(draw_flow *flow, sil_stage_name stage)
{
    const draw_draft *draft = &flow->drawing->draft;
    bool any = false;
    for (int step = 0; step < draft->plan->step_count; step++) {
        const brief_step *it = &draft->brief->steps[step];
        if (comes_before(draft->brief, it, stage)) {
            if (!any) {
                draw_flow_title(flow, "Do this first", 12);
            }
            any = true;
            draw_shapes *list = draw_flow_list(flow);
            view_later(draft, list, step, DRAW_COLUMN);
            draw_flow_put(flow, list, DRAW_LEFT, 2, 0);
        }
    }
    flow->y -= 4;
    draw_flow_text(flow, 0, DRAW_COLUMN,
                   any ? "Then plan again: this sheet is drawn when its figures can be trusted."
                       : "Plan again after that: this sheet is drawn when its figures can be "
                         "trusted.",
                   0);
}

void paper_wait(sil_drawing *drawing, sil_part part)
{
    const sil_plan *plan = drawing->draft.plan;
    const brief *b = drawing->draft.brief;
    bool nut = part == SIL_PART_NUT;
    draw_heading heading = {nut ? "Nut" : "Saddle", "-", {NULL}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    big_word(&flow, nut ? "nut" : "saddle");
    put_reasons(&flow, &b->stage[nut ? BRIEF_NUT : BRIEF_SADDLE],
                nut ? &plan->nut_withheld : &plan->saddle_withheld);
    put_first(&flow, nut ? SIL_NUT : SIL_SADDLE);
}
