/* SPDX-License-Identifier: MIT */
/* The paper of the templates: full-size slips to cut out and glue on. Those of the nut are here. */
#include <stddef.h>

#include "part.h"
#include "slip.h"

/* Draws a line from each number to the floor of its nut slot, with a mark at the floor, because the
 * slot itself is too shallow to see. */
static void draw_lines_to_floors(const part_nut *nut, draw_shapes *list, draw_place place)
{
    const double from = 3.2, half = 1.5;
    for (int i = 0; i < nut->strings; i++) {
        double x = nut->along[i], to = nut->floor[i];
        draw_of(list, i + 1);
        if (to > from) {
            draw_line(list, DRAW_DIMENSION, draw_at(place, x, from), draw_at(place, x, to));
            draw_line(list, DRAW_DIMENSION, draw_at(place, x - half, to),
                      draw_at(place, x + half, to));
        }
    }
    draw_of(list, 0);
}

static void put_nut_face(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const part_nut *nut = &draft->brief->nut_part;
    draw_point under[SIL_STRINGS_MAX], above[SIL_STRINGS_MAX];
    draw_place place = draw_place_part(draft, nut->length, 1);
    if (nut->top.count == 0) {
        paper_slip_none(flow, "Nut face",
                        draft->brief->nut.zero_fret
                            ? "A zero fret sets the height; the slots only guide."
                            : "The board over the floor of the nut's slot is not known.");
        return;
    }
    for (int i = 0; i < nut->strings; i++) {
        bool room = nut->floor[i] > 3.4;
        under[i] = draw_at(place, nut->along[i], room ? 2.7 : SIL_UNKNOWN);
        above[i] = paper_slip_over(place, nut->along[i], part_curve_at(&nut->top, nut->along[i]));
    }
    draw_shapes *list = draw_flow_list(flow);
    view_nut_face(draft, list, place, false);
    draw_lines_to_floors(nut, list, place);
    paper_slip_numbers(draft, list, under, above, NULL);
    draw_box slip = paper_slip_around(draft, list, "Nut face", "UP", SLIP_GLUED);
    paper_slip_proof(draft, list, place, draft->brief->nut.length, slip);
    paper_slip_put(
        flow, list, "Nut, front face",
        "Glue it on the face toward the board, bottom on bottom. Saw short of the marks: "
        "final floors.");
}

/* Dimensions the distances from left to right as the strip is laid: along the nut, or in the
 * opposite order for the left hand. */
static void put_gaps(const draw_draft *draft, draw_shapes *list, const double *x, double from)
{
    brief_figure gap[DRAW_ORDINATES_MAX];
    int gaps = draft->brief->strings + 1;
    for (int k = 0; k < gaps; k++) {
        gap[k] = draft->brief->nut.spacing[draw_left_handed(draft) ? k : gaps - 1 - k];
    }
    draw_dim_chain(draft, list, gaps + 1, x, gap, from, from - 4);
}

/* The numbers of the strip below their lines, in two rows where one has no room. */
static void number_centres(const draw_draft *draft, draw_shapes *list, const draw_point *low,
                           int strings)
{
    const double gap = 0.7, row = DRAW_NOTE + gap;
    draw_point under[SIL_STRINGS_MAX], below[SIL_STRINGS_MAX];
    bool lower[SIL_STRINGS_MAX];
    for (int i = 0; i < strings; i++) {
        under[i] = (draw_point){low[i].x, low[i].y - gap};
        below[i] = (draw_point){low[i].x, low[i].y - gap - row};
    }
    paper_slip_numbers(draft, list, under, below, lower);
    for (int i = 0; i < strings; i++) {
        if (lower[i]) {
            draw_of(list, i + 1);
            draw_line(list, DRAW_DIMENSION, low[i], (draw_point){low[i].x, low[i].y - row});
        }
    }
    draw_of(list, 0);
}

/* The strip of the slot centres: centre lines that go down from the edge that is laid against
 * the nut, and the distances between them. */
static void put_centres(draw_flow *flow)
{
    const double height = 12.5, low = 3.2;
    const draw_draft *draft = &flow->drawing->draft;
    const part_nut *nut = &draft->brief->nut_part;
    double x[DRAW_ORDINATES_MAX] = {0};
    draw_point ends[SIL_STRINGS_MAX];
    draw_place place = draw_place_part(draft, nut->length, 1);
    draw_shapes *list = draw_flow_list(flow);
    for (int end = 0; end < 2; end++) {
        draw_line(list, DRAW_OUTLINE, (draw_point){end * nut->length, 0},
                  (draw_point){end * nut->length, height});
    }
    for (int seen = 0; seen < nut->strings; seen++) {
        int i = draw_string_seen(draft, seen);
        draw_point at = draw_at(place, nut->along[i], low);
        draw_of(list, i + 1);
        draw_line(list, DRAW_SLOT, at, (draw_point){at.x, height});
        ends[i] = at;
        x[seen + 1] = at.x;
    }
    draw_of(list, 0);
    x[nut->strings + 1] = nut->length;
    number_centres(draft, list, ends, nut->strings);
    draw_box slip = paper_slip_around(draft, list, "Slot centres", "NUT", SLIP_LAID);
    put_gaps(draft, list, x, slip.bottom);
    paper_slip_put(
        flow, list, "Nut, slot centres",
        draw_say(draft, "Lay it on the board, upper edge against the nut's front; %s at the left.",
                 draw_left_handed(draft) ? "treble" : "bass"));
}

static void put_nut(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    if (draft->brief->nut.remedy == SIL_NUT_WAIT) {
        paper_flow_wait(flow, "No template of the nut today.", &draft->brief->stage[BRIEF_NUT]);
    } else if (!paper_slip_fits(draft->brief->nut_part.length)) {
        paper_slip_none(flow, "Nut", "It is longer than this paper.");
    } else {
        put_nut_face(flow);
        put_centres(flow);
    }
}

static void draw_templates(sil_drawing *drawing)
{
    static const draw_heading heading = {"Templates",
                                         "1:1",
                                         {"Cut along the thin frame, fold the band under the "
                                          "bottom, glue; check the length with a rule.",
                                          "For sawing and roughing: leave the line, the part is "
                                          "inside it. Take the paper off before you",
                                          "measure a floor, a height or the thickness, or sand the "
                                          "bottom. Slacken strings; wear a mask."}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    if (drawing->order.part != SIL_PART_SADDLE && paper_needs_template(drawing, SIL_PART_NUT)) {
        put_nut(&flow);
        draw_flow_next_column(&flow);
    }
    if (drawing->order.part != SIL_PART_NUT && paper_needs_template(drawing, SIL_PART_SADDLE)) {
        paper_saddle_slips(&flow);
    }
}

void paper_templates(sil_drawing *drawing)
{
    paper_fill(drawing, draw_templates);
}
