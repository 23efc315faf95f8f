/* SPDX-License-Identifier: MIT */
/* The slips of a saddle that is cut, or of a bridge on feet: its face and its plan. */
#include "part.h"
#include "slip.h"

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
                    from_blank ? ". First stop over it, at the table's heights"
                    : saddle->remedy == SIL_SADDLE_SAND ? ". First take off the table's first pass"
                                                        : "");
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
        paper_slip_none(flow, draw_say(draft, "%s face", piece(draft)),
                        "Its height over the bottom was not read.");
        return;
    }
    draw_shapes *list = draw_flow_list(flow);
    for (int i = 0; i < part->strings; i++) {
        double x = part->along[i], top = part->finished[i];
        under[i] = draw_at(place, x, top > 6.5 ? top - tick - 0.7 : SIL_UNKNOWN);
        above[i] = paper_slip_over(place, x, highest_at(part, x));
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
    paper_slip_proof(draft, list, place, draft->brief->saddle.length, slip);
    paper_slip_put(flow, list, draw_say(draft, "%s, face toward the tail", piece(draft)),
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
        paper_slip_none(flow, draw_say(draft, "%s plan", piece(draft)),
                        "Its thickness was not given.");
        return;
    }
    draw_place place = draw_place_part(draft, part->length, 1);
    draw_shapes *list = draw_flow_list(flow);
    view_saddle_top(draft, list, place, reach);
    draw_box slip =
        paper_slip_around(draft, list, draw_say(draft, "%s plan", piece(draft)), "NUT", SLIP_GLUED);
    paper_slip_proof(draft, list, place, draft->brief->saddle.length, slip);
    paper_slip_put(flow, list, draw_say(draft, "%s, plan with the peaks", piece(draft)),
                   say_crosses(draft, list, reach));
}

void paper_saddle_slips(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const brief_saddle *saddle = &draft->brief->saddle;
    if (saddle->remedy == SIL_SADDLE_WAIT) {
        paper_flow_wait(flow, "No template of the saddle today.",
                        &draft->brief->stage[BRIEF_SADDLE]);
    } else if (sil_working_turns(saddle->working)) {
        paper_slip_none(flow, "Saddle", "It stands on screws: nothing is cut.");
    } else if (!paper_slip_fits(draft->brief->saddle_part.length)) {
        paper_slip_none(flow, piece(draft), "It is longer than this paper.");
    } else {
        put_saddle_face(flow);
        put_saddle_top(flow);
    }
}
