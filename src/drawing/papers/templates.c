/* SPDX-License-Identifier: MIT */
/* Sheet: templates at full size, to cut out and glue on. */
#include <stddef.h>

#include "part.h"
#include "slip.h"

static bool goes_on_paper(double length)
{
    const double line = 3; /* the plan's centre line, past the ends */
    return length + 2 * (paper_slip_tab() + line) <= DRAW_COLUMN;
}

/* Instead of a template that cannot be drawn. */
static void put_none(draw_flow *flow, const char *what, const char *why)
{
    draw_flow_words(flow, draw_say("%s: no template. %s", what, why).text, 8);
}

/* A slip under its title, what to do with it in a line, and its length to prove the print by. */
static void put_slip(draw_flow *flow, draw_shapes *list, const char *title, const char *use)
{
    const double gap = 9;
    if (list != NULL) {
        double left = draw_shapes_box(list).left, top = draw_shapes_box(list).top + 9.5;
        draw_text(list, DRAW_TEXT, (draw_point){left, top}, DRAW_HEAD, DRAW_LEFT, 0, title);
        draw_note(list, left, top - 5.5, draw_text_fit(list, use, DRAW_NOTE, DRAW_COLUMN).text);
    }
    draw_shapes *block = draw_flow_list(flow);
    draw_shapes_add(block, list, -draw_shapes_box(list).left, 0);
    draw_shapes_free(list);
    draw_flow_put(flow, block, DRAW_LEFT, gap, 0);
}

/* The length of what is on a slip, its line under the slip. */
static void draw_proof(const draw_draft *draft, draw_shapes *list, draw_place place, double length,
                       draw_box slip)
{
    draw_point a = draw_at(place, 0, 0), b = draw_at(place, length, 0);
    a.y = b.y = slip.bottom;
    draw_dim_across(list, a, b, slip.bottom - 6, draw_say_length(draft, length).text);
}

/* Up from the numbers to just under each floor, since a slot itself is too shallow to see. */
static void draw_lines_to_floors(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const double from = 3.2, short_of = 0.5;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        double x = draw_on_nut(draft, i), to = draft->plan->nut.floor[i] - short_of;
        draw_of(list, i + 1);
        if (to > from) {
            draw_line(list, DRAW_DIMENSION, draw_at(place, x, from), draw_at(place, x, to));
        }
    }
    draw_of(list, 0);
}

static void put_nut_face(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    double width = plan->job->nut.width;
    draw_point under[SIL_STRINGS_MAX];
    int known = 0;
    draw_place place = draw_place_part(draft, width, 1);
    for (int i = 0; i < plan->job->string_count; i++) {
        bool room = plan->nut.floor[i] > 3.4;
        known += sil_known(plan->nut.floor[i]);
        under[i] = draw_at(place, draw_on_nut(draft, i), room ? 2.7 : SIL_UNKNOWN);
    }
    if (known == 0) {
        put_none(flow, "Nut face",
                 plan->bench.zero_fret ? "A zero fret sets the height; the slots only guide."
                                       : "The board over the nut's seat is not known.");
        return;
    }
    draw_shapes *list = draw_flow_list(flow);
    view_nut_face(draft, list, place, false);
    draw_lines_to_floors(draft, list, place);
    paper_slip_numbers(draft, list, under);
    draw_box slip = paper_slip_around(draft, list, "Nut face", "UP", false);
    draw_proof(draft, list, place, width, slip);
    put_slip(flow, list, "Nut, front face",
             "Glue it on the face toward the board, base on base. Lines end under the floors.");
}

/* Centre lines down from the edge that is laid along the blank, distances between them below. */
static void put_centres(draw_flow *flow)
{
    const double height = 12.5, low = 3.2;
    const draw_draft *draft = &flow->drawing->draft;
    int strings = draft->plan->job->string_count;
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    double width = draft->plan->job->nut.width, x[DRAW_ORDINATES_MAX] = {0};
    draw_point under[SIL_STRINGS_MAX];
    draw_words gaps[DRAW_ORDINATES_MAX];
    draw_place place = draw_place_part(draft, width, 1);
    draw_shapes *list = draw_flow_list(flow);
    for (int end = 0; end < 2; end++) {
        draw_line(list, DRAW_OUTLINE, (draw_point){end * width, 0},
                  (draw_point){end * width, height});
    }
    for (int seen = 0; seen < strings; seen++) {
        int i = draw_string_seen(draft, seen);
        draw_point at = draw_at(place, draw_on_nut(draft, i), low);
        draw_of(list, i + 1);
        draw_line(list, DRAW_SLOT, at, (draw_point){at.x, height});
        under[i] = (draw_point){at.x, 2.5};
        x[seen + 1] = at.x;
    }
    draw_of(list, 0);
    x[strings + 1] = width;
    for (int k = 0; k <= strings; k++) {
        gaps[k] = draw_say_length(draft, x[k + 1] - x[k]);
    }
    paper_slip_numbers(draft, list, under);
    draw_box slip = paper_slip_around(draft, list, "Nut, slot centres", "HEAD", true);
    draw_dim_chain(list, strings + 2, x, gaps, slip.bottom, slip.bottom - 4);
    put_slip(flow, list, "Nut, slot centres",
             left ? "Lay it on the board, upper edge against the nut's front; treble at the left."
                  : "Lay it on the board, upper edge against the nut's front; bass at the left.");
}

static void put_saddle_face(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    const sil_saddle_work *work = &plan->saddle;
    double length = plan->job->saddle.length;
    draw_point under[SIL_STRINGS_MAX];
    int known = 0;
    draw_place place = draw_place_part(draft, length, 1);
    draw_shapes *list = draw_flow_list(flow);
    for (int i = 0; i < plan->job->string_count; i++) {
        double top = view_saddle_profile(draft, i), tick = 1.6;
        bool room = top > 6.5;
        under[i] = draw_at(place, draw_on_saddle(draft, i), room ? top - tick - 0.7 : SIL_UNKNOWN);
        if (sil_known(top)) {
            known++;
            draw_of(list, i + 1);
            draw_line(list, DRAW_SLOT, draw_at(place, draw_on_saddle(draft, i), top - tick),
                      draw_at(place, draw_on_saddle(draft, i), top));
        }
    }
    draw_of(list, 0);
    if (known == 0) {
        draw_shapes_free(list);
        put_none(flow, "Saddle face", "Its height over the seat was not read.");
        return;
    }
    view_saddle_face(draft, list, place);
    paper_slip_numbers(draft, list, under);
    draw_box slip = paper_slip_around(draft, list, "Saddle face", "UP", false);
    draw_proof(draft, list, place, length, slip);
    put_slip(flow, list, "Saddle, face toward the tail",
             work->bottom ? "Thin dashed line on the base. Sand to the solid line, then read again."
                          : "Base line on the base. The thick line is the finished top.");
}

/* What the crosses are, and whose are missing or not reckoned. */
static draw_words say_crosses(const draw_draft *draft, double reach)
{
    bool off[SIL_STRINGS_MAX], built[SIL_STRINGS_MAX];
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        off[i] = !(fabs(view_contact_off(draft, i)) <= reach);
        built[i] = !off[i] && !sil_known(draft->plan->compensation[i].off_slot);
    }
    draw_words far = draw_say_which(draft, "string", off);
    draw_words old = draw_say_which(draft, "string", built);
    return draw_say("On the top. In tune at the crosses%s%s%s%s.",
                    old.text[0] != '\0' ? "; as built: " : "", old.text,
                    far.text[0] != '\0' ? "; off the paper: " : "", far.text);
}

static void put_saddle_top(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    double length = draft->plan->job->saddle.length;
    double reach = draft->plan->job->saddle.thickness / 2 + 3;
    if (!sil_known(reach)) {
        put_none(flow, "Saddle plan", "Its thickness was not given.");
        return;
    }
    draw_place place = draw_place_part(draft, length, 1);
    draw_shapes *list = draw_flow_list(flow);
    view_saddle_top(draft, list, place, reach);
    draw_box slip = paper_slip_around(draft, list, "Saddle plan", "NUT", false);
    draw_proof(draft, list, place, length, slip);
    put_slip(flow, list, "Saddle, plan with the contact points", say_crosses(draft, reach).text);
}

static void put_nut(draw_flow *flow)
{
    const sil_plan *plan = flow->drawing->draft.plan;
    if (plan->nut.remedy == SIL_NUT_WAIT) {
        paper_flow_wait(flow, "No template of the nut today.", &plan->nut_withheld);
    } else if (!goes_on_paper(plan->job->nut.width)) {
        put_none(flow, "Nut", "It is longer than this paper.");
    } else {
        put_nut_face(flow);
        put_centres(flow);
    }
}

static void put_saddle(draw_flow *flow)
{
    const sil_plan *plan = flow->drawing->draft.plan;
    if (plan->saddle.remedy == SIL_SADDLE_WAIT) {
        paper_flow_wait(flow, "No template of the saddle today.", &plan->saddle_withheld);
    } else if (draw_on_screws(&flow->drawing->draft)) {
        put_none(flow, "Saddle", "It stands on screws: nothing is cut.");
    } else if (!goes_on_paper(plan->job->saddle.length)) {
        put_none(flow, "Saddle", "It is longer than this paper.");
    } else {
        put_saddle_face(flow);
        put_saddle_top(flow);
    }
}

void paper_templates(sil_drawing *drawing)
{
    static const draw_heading heading = {
        "Templates",
        "1:1",
        {"Cut the paper along the thin frame, fold the band under the base, glue. Before you cut",
         "material, hold a rule to the length under each slip. Slack the strings; mask for dust."}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    if (drawing->order.part != SIL_PART_SADDLE) {
        put_nut(&flow);
        draw_flow_next_column(&flow);
    }
    if (drawing->order.part != SIL_PART_NUT) {
        put_saddle(&flow);
    }
}
