/* SPDX-License-Identifier: MIT */
/* Sheet: templates at full size, to cut out and glue on. */
#include <stddef.h>

#include "part.h"
#include "slip.h"

static bool goes_on_paper(double length)
{
    const double line = 3; /* the plan's centre line, past the ends */
    return length + 2 * (sil_slip_tab() + line) <= SIL_COLUMN;
}

/* Instead of a template that cannot be drawn. */
static void put_none(sil_flow *flow, const char *what, const char *why)
{
    sil_flow_words(flow, sil_say("%s: no template. %s", what, why).text, 8);
}

/* A slip under its title, what to do with it in a line, and its length to prove the print by. */
static void put_slip(sil_flow *flow, sil_shapes *list, const char *title, const char *use)
{
    const double gap = 9;
    if (list != NULL) {
        double left = sil_shapes_box(list).left, top = sil_shapes_box(list).top + 9.5;
        sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){left, top}, SIL_HEAD, SIL_LEFT, 0, title);
        sil_draw_note(list, left, top - 5.5, sil_text_fit(list, use, SIL_NOTE, SIL_COLUMN).text);
    }
    sil_shapes *block = sil_flow_list(flow);
    sil_shapes_add(block, list, -sil_shapes_box(list).left, 0);
    sil_shapes_free(list);
    sil_flow_put(flow, block, SIL_LEFT, gap, 0);
}

/* The length of what is on a slip, its line under the slip. */
static void draw_proof(const sil_draft *draft, sil_shapes *list, sil_place place, double length,
                       sil_box slip)
{
    sil_point a = sil_at(place, 0, 0), b = sil_at(place, length, 0);
    a.y = b.y = slip.bottom;
    sil_dim_across(list, a, b, slip.bottom - 6, sil_say_length(draft, length).text);
}

/* Up from the numbers to just under each floor, since a slot itself is too shallow to see. */
static void draw_lines_to_floors(const sil_draft *draft, sil_shapes *list, sil_place place)
{
    const double from = 3.2, short_of = 0.5;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        double x = sil_on_nut(draft, i), to = draft->plan->nut.floor[i] - short_of;
        sil_draw_of(list, i + 1);
        if (to > from) {
            sil_draw_line(list, SIL_LAYER_DIMENSION, sil_at(place, x, from), sil_at(place, x, to));
        }
    }
    sil_draw_of(list, 0);
}

static void put_nut_face(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    double width = plan->job->nut.width;
    sil_point under[SIL_STRINGS_MAX];
    int known = 0;
    sil_place place = sil_place_part(draft, width, 1);
    for (int i = 0; i < plan->job->string_count; i++) {
        bool room = plan->nut.floor[i] > 3.4;
        known += sil_known(plan->nut.floor[i]);
        under[i] = sil_at(place, sil_on_nut(draft, i), room ? 2.7 : SIL_UNKNOWN);
    }
    if (known == 0) {
        put_none(flow, "Nut face",
                 plan->bench.zero_fret ? "A zero fret sets the height; the slots only guide."
                                       : "The board over the nut's seat is not known.");
        return;
    }
    sil_shapes *list = sil_flow_list(flow);
    sil_nut_face(draft, list, place, false);
    draw_lines_to_floors(draft, list, place);
    sil_slip_numbers(draft, list, under);
    sil_box slip = sil_slip_around(draft, list, "Nut face", "UP", false);
    draw_proof(draft, list, place, width, slip);
    put_slip(flow, list, "Nut, front face",
             "Glue it on the face toward the board, base on base. Lines end under the floors.");
}

/* Centre lines down from the edge that is laid along the blank, distances between them below. */
static void put_centres(sil_flow *flow)
{
    const double height = 12.5, low = 3.2;
    const sil_draft *draft = &flow->drawing->draft;
    int strings = draft->plan->job->string_count;
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    double width = draft->plan->job->nut.width, x[SIL_ORDINATES_MAX] = {0};
    sil_point under[SIL_STRINGS_MAX];
    sil_words gaps[SIL_ORDINATES_MAX];
    sil_place place = sil_place_part(draft, width, 1);
    sil_shapes *list = sil_flow_list(flow);
    for (int end = 0; end < 2; end++) {
        sil_draw_line(list, SIL_LAYER_OUTLINE, (sil_point){end * width, 0},
                      (sil_point){end * width, height});
    }
    for (int seen = 0; seen < strings; seen++) {
        int i = sil_string_seen(draft, seen);
        sil_point at = sil_at(place, sil_on_nut(draft, i), low);
        sil_draw_of(list, i + 1);
        sil_draw_line(list, SIL_LAYER_SLOT, at, (sil_point){at.x, height});
        under[i] = (sil_point){at.x, 2.5};
        x[seen + 1] = at.x;
    }
    sil_draw_of(list, 0);
    x[strings + 1] = width;
    for (int k = 0; k <= strings; k++) {
        gaps[k] = sil_say_length(draft, x[k + 1] - x[k]);
    }
    sil_slip_numbers(draft, list, under);
    sil_box slip = sil_slip_around(draft, list, "Nut, slot centres", "HEAD", true);
    sil_dim_chain(list, strings + 2, x, gaps, slip.bottom, slip.bottom - 4);
    put_slip(flow, list, "Nut, slot centres",
             left ? "Lay it on the board, upper edge against the nut's front; treble at the left."
                  : "Lay it on the board, upper edge against the nut's front; bass at the left.");
}

static void put_saddle_face(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    const sil_saddle_work *work = &plan->saddle;
    double length = plan->job->saddle.length;
    sil_point under[SIL_STRINGS_MAX];
    int known = 0;
    sil_place place = sil_place_part(draft, length, 1);
    sil_shapes *list = sil_flow_list(flow);
    for (int i = 0; i < plan->job->string_count; i++) {
        double top = sil_saddle_profile(draft, i), tick = 1.6;
        bool room = top > 6.5;
        under[i] = sil_at(place, sil_on_saddle(draft, i), room ? top - tick - 0.7 : SIL_UNKNOWN);
        if (sil_known(top)) {
            known++;
            sil_draw_of(list, i + 1);
            sil_draw_line(list, SIL_LAYER_SLOT, sil_at(place, sil_on_saddle(draft, i), top - tick),
                          sil_at(place, sil_on_saddle(draft, i), top));
        }
    }
    sil_draw_of(list, 0);
    if (known == 0) {
        sil_shapes_free(list);
        put_none(flow, "Saddle face", "Its height over the seat was not read.");
        return;
    }
    sil_saddle_face(draft, list, place);
    sil_slip_numbers(draft, list, under);
    sil_box slip = sil_slip_around(draft, list, "Saddle face", "UP", false);
    draw_proof(draft, list, place, length, slip);
    put_slip(flow, list, "Saddle, face toward the tail",
             work->bottom ? "Thin dashed line on the base. Sand to the solid line, then read again."
                          : "Base line on the base. The thick line is the finished top.");
}

/* What the crosses are, and whose are missing or not reckoned. */
static sil_words say_crosses(const sil_draft *draft, double reach)
{
    bool off[SIL_STRINGS_MAX], built[SIL_STRINGS_MAX];
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        off[i] = !(fabs(sil_contact_off(draft, i)) <= reach);
        built[i] = !off[i] && !sil_known(draft->plan->compensation[i].off_slot);
    }
    sil_words far = sil_say_which(draft, "string", off);
    sil_words old = sil_say_which(draft, "string", built);
    return sil_say("On the top. In tune at the crosses%s%s%s%s.",
                   old.text[0] != '\0' ? "; as built: " : "", old.text,
                   far.text[0] != '\0' ? "; off the paper: " : "", far.text);
}

static void put_saddle_top(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    double length = draft->plan->job->saddle.length;
    double reach = draft->plan->job->saddle.thickness / 2 + 3;
    if (!sil_known(reach)) {
        put_none(flow, "Saddle plan", "Its thickness was not given.");
        return;
    }
    sil_place place = sil_place_part(draft, length, 1);
    sil_shapes *list = sil_flow_list(flow);
    sil_saddle_top(draft, list, place, reach);
    sil_box slip = sil_slip_around(draft, list, "Saddle plan", "NUT", false);
    draw_proof(draft, list, place, length, slip);
    put_slip(flow, list, "Saddle, plan with the contact points", say_crosses(draft, reach).text);
}

static void put_nut(sil_flow *flow)
{
    const sil_plan *plan = flow->drawing->draft.plan;
    if (plan->nut.remedy == SIL_NUT_WAIT) {
        sil_flow_wait(flow, "No template of the nut today.", &plan->nut_withheld);
    } else if (!goes_on_paper(plan->job->nut.width)) {
        put_none(flow, "Nut", "It is longer than this paper.");
    } else {
        put_nut_face(flow);
        put_centres(flow);
    }
}

static void put_saddle(sil_flow *flow)
{
    const sil_plan *plan = flow->drawing->draft.plan;
    if (plan->saddle.remedy == SIL_SADDLE_WAIT) {
        sil_flow_wait(flow, "No template of the saddle today.", &plan->saddle_withheld);
    } else if (sil_on_screws(&flow->drawing->draft)) {
        put_none(flow, "Saddle", "It stands on screws: nothing is cut.");
    } else if (!goes_on_paper(plan->job->saddle.length)) {
        put_none(flow, "Saddle", "It is longer than this paper.");
    } else {
        put_saddle_face(flow);
        put_saddle_top(flow);
    }
}

void sil_sheet_templates(sil_drawing *drawing)
{
    static const sil_heading heading = {
        "Templates",
        "1:1",
        {"Cut the paper along the thin frame, fold the band under the base, glue. Before you cut",
         "material, hold a rule to the length under each slip. Slack the strings; mask for dust."}};
    sil_flow flow = sil_flow_begin(drawing, heading);
    if (drawing->order.part != SIL_PART_SADDLE) {
        put_nut(&flow);
        sil_flow_next_column(&flow);
    }
    if (drawing->order.part != SIL_PART_NUT) {
        put_saddle(&flow);
    }
}
