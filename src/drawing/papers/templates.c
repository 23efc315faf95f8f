/* SPDX-License-Identifier: MIT */
/* The paper of the templates: full-size slips to cut out and glue on. */
#include <stddef.h>

#include "part.h"
#include "slip.h"

static bool goes_on_paper(double length)
{
    const double line = 3; /* how far the centre line goes past the ends in the plan view */
    return length + 2 * (paper_slip_tab() + line) <= DRAW_COLUMN;
}

/* Puts words instead of a template that cannot be drawn. */
static void put_none(draw_flow *flow, const char *what, const char *why)
{
    draw_flow_words(flow, draw_say(&flow->drawing->draft, "%s: no template. %s", what, why), 8);
}

/* Puts a slip under its title, with a line of what to do with it. */
static void put_slip(draw_flow *flow, draw_shapes *list, const char *title, const char *use)
{
    const bool dense = flow->drawing->draft.dense;
    const double gap = dense ? 3.5 : 9, line = dense ? 4.5 : 5.5;
    if (list != NULL) {
        double left = draw_shapes_box(list).left, low = draw_shapes_box(list).top + (dense ? 3 : 4);
        draw_text(list, DRAW_TEXT, (draw_point){left, low + line}, DRAW_HEAD, DRAW_LEFT, 0, title);
        draw_note(list, left, low,
                  draw_text_fit(&flow->drawing->draft, list, use, DRAW_NOTE, DRAW_COLUMN));
    }
    draw_shapes *block = draw_flow_list(flow);
    draw_shapes_add(block, list, -draw_shapes_box(list).left, 0);
    draw_shapes_free(list);
    draw_flow_put(flow, block, DRAW_LEFT, gap, 0);
}

/* Draws the length of the part on a slip, as a dimension below the slip, to check the print
 * with. */
static void draw_proof(const draw_draft *draft, draw_shapes *list, draw_place place,
                       brief_figure length, draw_box slip)
{
    draw_point a = draw_at(place, 0, 0), b = draw_at(place, length.exact, 0);
    a.y = b.y = slip.bottom;
    draw_dim_across(draft, list, a, b, slip.bottom - 6, length);
}

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

/* The place of a number that stands on the top of a part. */
static draw_point over_top(draw_place place, double x, double top)
{
    const double clear = 0.9;
    return draw_at(place, x, top + clear + DRAW_NOTE);
}

static void put_nut_face(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const part_nut *nut = &draft->brief->nut_part;
    draw_point under[SIL_STRINGS_MAX], above[SIL_STRINGS_MAX];
    draw_place place = draw_place_part(draft, nut->length, 1);
    if (nut->top.count == 0) {
        put_none(flow, "Nut face",
                 draft->brief->nut.zero_fret
                     ? "A zero fret sets the height; the slots only guide."
                     : "The board over the floor of the nut's slot is not known.");
        return;
    }
    for (int i = 0; i < nut->strings; i++) {
        bool room = nut->floor[i] > 3.4;
        under[i] = draw_at(place, nut->along[i], room ? 2.7 : SIL_UNKNOWN);
        above[i] = over_top(place, nut->along[i], part_curve_at(&nut->top, nut->along[i]));
    }
    draw_shapes *list = draw_flow_list(flow);
    view_nut_face(draft, list, place, false);
    draw_lines_to_floors(nut, list, place);
    paper_slip_numbers(draft, list, under, above, NULL);
    draw_box slip = paper_slip_around(draft, list, "Nut face", "UP", SLIP_GLUED);
    draw_proof(draft, list, place, draft->brief->nut.length, slip);
    put_slip(flow, list, "Nut, front face",
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
static void number_centres(const draw_draft *draft, draw_shapes *list, const draw_point *low)
{
    const double gap = 0.7, row = DRAW_NOTE + gap;
    draw_point under[SIL_STRINGS_MAX], below[SIL_STRINGS_MAX];
    bool lower[SIL_STRINGS_MAX];
    for (int i = 0; i < draft->brief->strings; i++) {
        under[i] = (draw_point){low[i].x, low[i].y - gap};
        below[i] = (draw_point){low[i].x, low[i].y - gap - row};
    }
    paper_slip_numbers(draft, list, under, below, lower);
    for (int i = 0; i < draft->brief->strings; i++) {
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
    number_centres(draft, list, ends);
    draw_box slip = paper_slip_around(draft, list, "Nut, slot centres", "NUT", SLIP_LAID);
    put_gaps(draft, list, x, slip.bottom);
    put_slip(flow, list, "Nut, slot centres",
             draw_say(draft,
                      "Lay it on the board, upper edge against the nut's front; %s at the left.",
                      draw_left_handed(draft) ? "treble" : "bass"));
}

/* What the piece is: a loose bridge in one piece stands on feet, and the saddle is of one with it. */
static const char *piece(const draw_draft *draft)
{
    return draft->brief->saddle.working == SIL_WORKING_FEET ? "Bridge" : "Saddle";
}

static const char *say_face_use(const draw_draft *draft)
{
    const brief_saddle *saddle = &draft->brief->saddle;
    const char *on = saddle->working == SIL_WORKING_FEET ? "feet" : "bottom";
    if (saddle->takes_first) {
        return draw_say(draft,
                        "Outer dashed line on the %s. Sand to the solid line%s, then measure.", on,
                        saddle->one_pass ? "" : ", the first pass");
    }
    bool from_blank = brief_known(saddle->string[0].height_first);
    return draw_say(draft, "Lower line on the %s; upper: finished top%s.", on,
                    from_blank ? ". First stop over it, at the table's heights" : "");
}

/* Where a word stands over both lines of the bottom's cut at x, in the part's own mm, and whether there is
 * room for it below the numbers. */
static double over_cuts(const part_saddle *part, double x)
{
    const double over = 1.1;
    return over +
           fmax(part_base_at(part, part->base_all, x), part_base_at(part, part->base_first, x));
}

static bool room_for_letters(const part_saddle *part, double x)
{
    const double numbers = 4.8, clear = 0.4;
    return over_cuts(part, x) + DRAW_NOTE + clear <=
           part_curve_at(&part->finished_top, x) - numbers;
}

static void letter_cut(const part_saddle *part, draw_shapes *list, draw_place place, double x,
                       sil_line cut, const char *word)
{
    const double clear = 0.3;
    double high = over_cuts(part, x);
    draw_line(list, DRAW_DIMENSION, draw_at(place, x, part_base_at(part, cut, x)),
              draw_at(place, x, high - clear));
    draw_text(list, DRAW_TEXT, draw_at(place, x, high), DRAW_NOTE, DRAW_MIDDLE, 0, word);
}

/* Letters the two lines of the bottom's cut, which may lie so close that a printer runs them together. */
static void letter_cuts(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const part_saddle *part = &draft->brief->saddle_part;
    const brief_saddle *saddle = &draft->brief->saddle;
    double first = 0.4 * part->length, whole = 0.6 * part->length;
    if (part->base && saddle->takes_first && !saddle->one_pass && room_for_letters(part, first) &&
        room_for_letters(part, whole)) {
        letter_cut(part, list, place, first, part->base_first, "first");
        letter_cut(part, list, place, whole, part->base_all, "whole");
    }
}

/* The finished top, or that of the saddle as it is where that is higher. */
static double highest_at(const part_saddle *part, double x)
{
    double top = part_curve_at(&part->finished_top, x);
    return part->present_top.count > 0 ? fmax(top, part_curve_at(&part->present_top, x)) : top;
}

static void put_saddle_face(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const part_saddle *part = &draft->brief->saddle_part;
    const double tick = 1.6;
    draw_point under[SIL_STRINGS_MAX], above[SIL_STRINGS_MAX];
    draw_place place = draw_place_part(draft, part->length, 1);
    if (part->finished_top.count == 0) {
        put_none(flow, draw_say(draft, "%s face", piece(draft)),
                 "Its height over the bottom was not read.");
        return;
    }
    draw_shapes *list = draw_flow_list(flow);
    for (int i = 0; i < part->strings; i++) {
        double x = part->along[i], top = part->finished[i];
        under[i] = draw_at(place, x, top > 6.5 ? top - tick - 0.7 : SIL_UNKNOWN);
        above[i] = over_top(place, x, highest_at(part, x));
        if (sil_known(top)) {
            draw_of(list, i + 1);
            draw_line(list, DRAW_SLOT, draw_at(place, x, top - tick), draw_at(place, x, top));
        }
    }
    draw_of(list, 0);
    view_saddle_face(draft, list, place);
    letter_cuts(draft, list, place);
    paper_slip_numbers(draft, list, under, above, NULL);
    draw_box slip =
        paper_slip_around(draft, list, draw_say(draft, "%s face", piece(draft)), "UP", SLIP_GLUED);
    draw_proof(draft, list, place, draft->brief->saddle.length, slip);
    put_slip(flow, list, draw_say(draft, "%s, face toward the tail", piece(draft)),
             say_face_use(draft));
}

/* Says what the crosses are, which of them are still to be filed to, and which are not drawn; then, where
 * there is room, what the arrows are. */
static const char *say_crosses(const draw_draft *draft, const draw_shapes *list, double reach)
{
    const part_saddle *part = &draft->brief->saddle_part;
    bool off[SIL_STRINGS_MAX];
    for (int i = 0; i < part->strings; i++) {
        off[i] = !(fabs(part->peak[i]) <= reach);
    }
    const char *far = draw_say_which(draft, "string", off);
    const char *filed = draw_say_which(draft, "string", part->filed);
    const char *words =
        draw_say(draft, "On the top. Cross: where the string leaves the finished top%s%s%s%s.",
                 filed[0] != '\0' ? "; to be filed: " : "", filed,
                 far[0] != '\0' ? "; off the paper: " : "", far);
    const char *more = draw_say(draft, "%s Arrow: toward its place in tune.", words);
    bool arrows = paper_any_beyond(draft) && list != NULL &&
                  draw_text_width(list, more, DRAW_NOTE) <= DRAW_COLUMN;
    return arrows ? more : words;
}

static void put_saddle_top(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const part_saddle *part = &draft->brief->saddle_part;
    double reach = part->thickness / 2 + 3;
    if (!sil_known(reach)) {
        put_none(flow, draw_say(draft, "%s plan", piece(draft)), "Its thickness was not given.");
        return;
    }
    draw_place place = draw_place_part(draft, part->length, 1);
    draw_shapes *list = draw_flow_list(flow);
    view_saddle_top(draft, list, place, reach);
    draw_box slip =
        paper_slip_around(draft, list, draw_say(draft, "%s plan", piece(draft)), "NUT", SLIP_GLUED);
    draw_proof(draft, list, place, draft->brief->saddle.length, slip);
    put_slip(flow, list, draw_say(draft, "%s, plan with the peaks", piece(draft)),
             say_crosses(draft, list, reach));
}

static void put_nut(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    if (draft->brief->nut.remedy == SIL_NUT_WAIT) {
        paper_flow_wait(flow, "No template of the nut today.", &draft->brief->stage[BRIEF_NUT]);
    } else if (!goes_on_paper(draft->brief->nut_part.length)) {
        put_none(flow, "Nut", "It is longer than this paper.");
    } else {
        put_nut_face(flow);
        put_centres(flow);
    }
}

static void put_saddle(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const brief_saddle *saddle = &draft->brief->saddle;
    if (saddle->remedy == SIL_SADDLE_WAIT) {
        paper_flow_wait(flow, "No template of the saddle today.",
                        &draft->brief->stage[BRIEF_SADDLE]);
    } else if (sil_working_turns(saddle->working)) {
        put_none(flow, "Saddle", "It stands on screws: nothing is cut.");
    } else if (!goes_on_paper(draft->brief->saddle_part.length)) {
        put_none(flow, piece(draft), "It is longer than this paper.");
    } else {
        put_saddle_face(flow);
        put_saddle_top(flow);
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
        put_saddle(&flow);
    }
}

void paper_templates(sil_drawing *drawing)
{
    paper_fill(drawing, draw_templates);
}
