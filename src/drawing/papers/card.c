/* SPDX-License-Identifier: MIT */
/* The paper of the bench card: what is next, its figures large, what stops the work, and blanks. It is
 * all that most jobs need at the bench. */
#include "../views/views.h"
#include "papers.h"

typedef void view(const draw_draft *draft, draw_shapes *list, double width);

static void put_view(draw_flow *flow, view *draw, double gap)
{
    draw_shapes *list = draw_flow_list(flow);
    draw(&flow->drawing->draft, list, DRAW_COLUMN);
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

typedef void step_view(const draw_draft *draft, draw_shapes *list, int step, view_room room,
                       double width);

static void put_step(draw_flow *flow, step_view *draw, int step, view_room room, double gap)
{
    draw_shapes *list = draw_flow_list(flow);
    draw(&flow->drawing->draft, list, step, room, DRAW_COLUMN);
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

static const char *add_line(const draw_draft *draft, const char *said, const char *line)
{
    return draw_say(draft, "%s%s%s", said, said[0] != '\0' ? "\n" : "", line);
}

/* What a part waits for, all reasons in one sentence. */
static const char *say_waits(const draw_draft *draft, const char *said, const char *part,
                             const brief_stage *stage)
{
    const char *reasons = "";
    for (int k = 0; k < stage->whys; k++) {
        reasons = draw_say(draft, "%s%s%s", reasons, k > 0 ? "; " : "", stage->why[k]);
    }
    return stage->waits ? add_line(draft, said, draw_say(draft, "%s waits: %s.", part, reasons))
                        : said;
}

/* What stops the work, or a part of it: what the parts wait for, and the findings that stop it for
 * another reason. */
static const char *say_stops(const draw_draft *draft)
{
    const sil_plan *plan = draft->plan;
    const brief *b = draft->brief;
    const char *said = say_waits(draft, "", "Nut", &b->stage[BRIEF_NUT]);
    said = say_waits(draft, said, "Saddle", &b->stage[BRIEF_SADDLE]);
    for (int i = 0; i < plan->finding_count; i += b->findings[i].alike) {
        sil_code code = plan->findings[i].code;
        if (plan->findings[i].level == SIL_LEVEL_STOP &&
            !sil_withheld_by(&plan->nut_withheld, code) &&
            !sil_withheld_by(&plan->saddle_withheld, code)) {
            said = add_line(draft, said, b->findings[i].together.words);
        }
    }
    return said;
}

/* Whether something stops all work, not only a part. */
static bool stops(const sil_plan *plan)
{
    for (int i = 0; i < plan->finding_count; i++) {
        if (plan->findings[i].level == SIL_LEVEL_STOP) {
            return true;
        }
    }
    return false;
}

static void put_stops(draw_flow *flow)
{
    const double in = 4, words = 30;
    const draw_draft *draft = &flow->drawing->draft;
    const char *said = say_stops(draft);
    if (said[0] == '\0') {
        return;
    }
    draw_shapes *list = draw_flow_list(flow);
    draw_text(list, DRAW_WARNING, (draw_point){in, -in - DRAW_TITLE}, DRAW_TITLE, DRAW_LEFT, 0,
              stops(draft->plan) ? "STOP" : "WAIT");
    double y = draw_paragraph(list, words, -in, DRAW_COLUMN - words - in, DRAW_NOTE,
                              draw_set_decimals(draft, said));
    draw_rectangle(list, DRAW_WARNING,
                   (draw_box){0, fmin(y, -in - DRAW_TITLE) - in, DRAW_COLUMN, 0});
    draw_flow_put(flow, list, DRAW_LEFT, 5, 0);
}

/* Puts the steps before the next one in full, since they are short, and those after it in a line. */
static void put_before(draw_flow *flow, int next)
{
    const draw_draft *draft = &flow->drawing->draft;
    for (int step = 0; step < next && !draft->plan->done; step++) {
        draw_shapes *list = draw_flow_list(flow);
        view_before(draft, list, step, DRAW_COLUMN);
        draw_flow_put(flow, list, DRAW_LEFT, 4, 0);
    }
}

static void put_after(draw_flow *flow, int next)
{
    int count = flow->drawing->draft.plan->step_count;
    if (next + 1 < count) {
        draw_flow_title(flow, "After that", 8);
    }
    for (int step = next + 1; step < count; step++) {
        draw_shapes *list = draw_flow_list(flow);
        view_later(&flow->drawing->draft, list, step, DRAW_COLUMN);
        draw_flow_put(flow, list, DRAW_LEFT, 2, 0);
    }
}

static void draw_card(sil_drawing *drawing, view_room room)
{
    draw_flow flow = draw_flow_begin(drawing, paper_bench_heading("Bench card"));
    int next = drawing->brief->next.step;
    put_view(&flow, view_who, 5);
    put_view(&flow, view_outlook, 5);
    if (next < 0) {
        put_stops(&flow);
        return;
    }
    put_before(&flow, next);
    put_step(&flow, view_next, next, room, 5);
    put_stops(&flow);
    put_step(&flow, view_next_form, next, room, 2);
    put_after(&flow, next);
}

/* The card is one paper: what does not fit on it is left to the bench plan. */
void paper_card(sil_drawing *drawing)
{
    int before = drawing->paper_count;
    for (int room = VIEW_AMPLE; room <= VIEW_SCARCE; room++) {
        draw_flow_drop(drawing, before);
        draw_card(drawing, (view_room)room);
        if (drawing->paper_count <= before + 1) {
            break;
        }
    }
}
