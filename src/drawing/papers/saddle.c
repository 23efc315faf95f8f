/* SPDX-License-Identifier: MIT */
/* The paper of the saddle. */
#include <stddef.h>

#include "part.h"

/* Puts in large letters the caliper reading to sand down to in the first pass, the one figure to
 * watch. */
static void put_target(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const brief_saddle *saddle = &draft->brief->saddle;
    brief_figure treble = saddle->caliper[BRIEF_TREBLE], bass = saddle->caliper[BRIEF_BASS];
    int strings = draft->brief->strings;
    if (!saddle->takes_first || !brief_known(treble) || !brief_known(bass)) {
        paper_headline(flow, draw_set_decimals(draft, saddle->headline));
        return;
    }
    draw_shapes *list = draw_flow_list(flow);
    const char *words = draw_figure(draft, treble);
    if (strings > 1) {
        words = draw_say(draft, "%s at string 1,  %s at string %d", words, draw_figure(draft, bass),
                         strings);
    }
    draw_note(list, 0, 8.5,
              draw_say(draft,
                       "First pass: sand the %s, straight from end to end, until the caliper, "
                       "bottom to top, reads",
                       saddle->working == SIL_WORKING_FEET ? "feet" : "bottom"));
    draw_text(list, DRAW_TEXT, (draw_point){0, 0}, DRAW_TITLE, DRAW_LEFT, 0, words);
    double x = draw_text_width(list, words, DRAW_TITLE) + 4;
    draw_note(list, x, 0, draw_say(draft, "%s, then measure again.", draft->brief->unit_name));
    draw_flow_put(flow, list, DRAW_LEFT, 5, 0);
}

static double off_the_top(const brief_bearing *string)
{
    return brief_known(string->dress_now) ? string->dress_now.exact : 0;
}

/* The string to show the section at: where most comes off the top, else where the saddle protrudes
 * least; -1 for none. */
static int section_string(const brief *b)
{
    const brief_bearing *bearing = b->saddle.string;
    int string = -1;
    for (int i = 0; i < b->strings; i++) {
        bool seen = brief_known(bearing[i].out) && brief_known(bearing[i].height);
        if (!seen) {
            continue;
        }
        double off = string < 0 ? 0 : off_the_top(&bearing[i]) - off_the_top(&bearing[string]);
        if (string < 0 || off > 0 ||
            (off == 0 && bearing[i].out.exact < bearing[string].out.exact)) {
            string = i;
        }
    }
    return string;
}

/* Names the ends within the face, over what comes off its bottom. */
static void put_ends(const draw_draft *draft, draw_shapes *list, draw_place place)
{
    const part_saddle *part = &draft->brief->saddle_part;
    double off = part->base ? fmax(part_base_at(part, part->base_all, part->length),
                                   part_base_at(part, part->base_all, 0))
                            : 0;
    paper_ends(draft, list, place, part->length, off, off + 5);
}

static draw_shapes *full_size(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const part_saddle *part = &draft->brief->saddle_part;
    draw_shapes *list = draw_flow_list(flow);
    double scale = paper_full_size(part->length);
    draw_place place = draw_place_part(draft, part->length, scale);
    view_saddle_face(draft, list, place);
    int cut = section_string(draft->brief);
    if (cut >= 0) {
        double x = draw_at(place, part->along[cut], 0).x;
        draw_box box = draw_shapes_box(list);
        draw_plane(list, (draw_point){x, box.bottom}, (draw_point){x, box.top}, 1, false, box, "A");
    }
    put_ends(draft, list, place);
    double low = draw_shapes_box(list).bottom;
    paper_length(draft, list, place, draft->brief->saddle.length, low - 8);
    paper_caption(list, DRAW_LEFT, draw_say(draft, "Face %s", draw_say_scale(draft, scale)));
    return list;
}

/* How much to sand off the bottom in the first pass, under each string and at both ends. */
static draw_ordinates base_figures(const draw_draft *draft, draw_place place)
{
    const part_saddle *part = &draft->brief->saddle_part;
    const brief_saddle *saddle = &draft->brief->saddle;
    draw_ordinates o = {.count = part->strings + 2};
    o.from[0] = draw_at(place, part->length, 0);
    o.figure[0] = saddle->base_first[BRIEF_TREBLE];
    for (int i = 0; i < part->strings; i++) {
        o.from[i + 1] = draw_at(place, part->along[i], 0);
        o.figure[i + 1] = saddle->string[i].base_first;
    }
    o.from[o.count - 1] = draw_at(place, 0, 0);
    o.figure[o.count - 1] = saddle->base_first[BRIEF_BASS];
    return o;
}

/* The finished height that a caliper reaches: over the bottom, or of a glued saddle over the
 * bridge. */
static brief_figure made_height(const brief *b, int i)
{
    const brief_bearing *string = &b->saddle.string[i];
    return b->saddle.from_bridge ? string->out : string->height;
}

/* Writes the finished heights above the face. */
static void put_heights(const draw_draft *draft, draw_shapes *list, draw_place face)
{
    const part_saddle *part = &draft->brief->saddle_part;
    draw_ordinates heights = {.numbered = true,
                              .reach = draw_shapes_box(list).top + (draft->dense ? 4.5 : 5.5),
                              .count = part->strings};
    for (int i = 0; i < part->strings; i++) {
        double over = part->finished[i];
        heights.from[i] = draw_at(face, part->along[i], sil_known(over) ? over : 6);
        heights.number[i] = i + 1;
        if (sil_known(over)) {
            heights.figure[i] = made_height(draft->brief, i);
        }
    }
    draw_dim_ordinates(draft, list, &heights);
}

/* Draws the saddle from above, below a level, and the positions of its strings below that. */
static void put_top(const draw_draft *draft, draw_shapes *list, draw_place face, double low)
{
    const part_saddle *part = &draft->brief->saddle_part;
    bool seen_above = sil_known(part->thickness); /* a loose bridge has no such view */
    draw_shapes *plan = draw_shapes_new(draft->letters);
    draw_place top = face;
    top.y = 0;
    if (seen_above) {
        view_saddle_top(draft, plan, top, part->thickness / 2 / cos(part->slant));
    }
    draw_box box = seen_above ? draw_shapes_box(plan) : (draw_box){0};
    top.y = low - (draft->dense ? 3 : 4) - box.top;
    draw_shapes_add(list, plan, 0, top.y);
    draw_shapes_free(plan);
    double bottom = top.y + box.bottom;
    draw_ordinates centres = {.origin = true, .count = 1, .reach = bottom - (draft->dense ? 4 : 5)};
    centres.from[0] = draw_at(top, 0, 0);
    for (int i = 0; i < part->strings; i++) {
        centres.from[centres.count] = draw_at(top, part->along[i], 0);
        centres.figure[centres.count++] = draft->brief->saddle.string[i].along;
    }
    for (int i = 0; i < centres.count; i++) {
        centres.from[i].y = bottom;
    }
    draw_dim_ordinates(draft, list, &centres);
}

bool paper_any_beyond(const draw_draft *draft)
{
    for (int i = 0; i < draft->brief->strings; i++) {
        if (brief_known(draft->brief->saddle.string[i].beyond)) {
            return true;
        }
    }
    return false;
}

static draw_shapes *magnified(const draw_flow *flow, double scale)
{
    const draw_draft *draft = &flow->drawing->draft;
    const part_saddle *part = &draft->brief->saddle_part;
    draw_shapes *list = draw_flow_list(flow);
    draw_place face = draw_place_part(draft, part->length, scale);
    view_saddle_face(draft, list, face);
    double low = draw_shapes_box(list).bottom;
    put_heights(draft, list, face);
    if (part->base && !draft->dense) { /* the table has it as well */
        draw_ordinates base = base_figures(draft, face);
        base.reach = low - 5;
        low = draw_dim_ordinates(draft, list, &base);
    }
    put_top(draft, list, face, low);
    if (scale <= 1) { /* it stands for the view at full size */
        paper_ends(draft, list, face, part->length, 0, 0);
        paper_length(draft, list, face, draft->brief->saddle.length,
                     draw_shapes_box(list).bottom - 10);
    } else {
        put_ends(draft, list, face);
    }
    bool seen_above = sil_known(part->thickness);
    const char *limits = "";
    for (int i = 0; i < part->strings && limits[0] == '\0'; i++) {
        limits = draw_limits(draft, made_height(draft->brief, i));
    }
    if (seen_above) {
        paper_caption(list, DRAW_MIDDLE,
                      paper_any_beyond(draft)
                          ? "cross: where the string leaves the finished top; arrow: "
                            "toward where it would play in tune"
                          : "cross: where the string leaves the finished top");
    }
    paper_caption_within(flow, list,
                         draw_say(draft, "%s %s from the tail",
                                  seen_above ? "Face and plan" : "Face",
                                  draw_say_scale(draft, scale)),
                         draw_say(draft, "finished heights%s%s%s%s",
                                  draft->brief->saddle.from_bridge ? " over the bridge" : "",
                                  limits[0] != '\0' ? " " : "", limits,
                                  part->base && !draft->dense ? ", first pass" : ""));
    return list;
}

/* The saddle end on, at the string where it protrudes least. Nothing of it can be drawn where only
 * that was read, by ruler. */
static draw_shapes *end_view(const draw_flow *flow, double scale)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    int string = section_string(draft->brief);
    if (string < 0) {
        return list;
    }
    view_saddle_end(draft, list, (draw_place){0, 0, scale, scale}, string);
    paper_caption(
        list, DRAW_LEFT,
        draw_say(draft, "A-A, at string %d, %s", string + 1, draw_say_scale(draft, scale)));
    return list;
}

/* The key: what each kind of line in the views means. */
static draw_shapes *keys(const draw_flow *flow)
{
    const brief *b = flow->drawing->draft.brief;
    const brief_saddle *saddle = &b->saddle;
    bool worked = saddle->remedy != SIL_SADDLE_NONE;
    bool now = saddle->base || (worked && b->saddle_part.present_top.count > 0);
    draw_shapes *list = draw_flow_list(flow);
    const double key_pitch = 4.7;
    double y = -DRAW_NOTE;
    if (saddle->takes_first) {
        draw_key(list, 0, y, DRAW_CUT_FIRST,
                 saddle->one_pass ? "sand to here: all of it in one pass"
                                  : "sand to here, then measure");
        y -= key_pitch;
    }
    if (saddle->base && !saddle->one_pass) {
        draw_key(list, 0, y, DRAW_CUT, "whole cut, by today's reading");
        y -= key_pitch;
    }
    if (now) {
        draw_key(list, 0, y, DRAW_PRESENT, saddle->replaced ? "the old saddle" : "as it is now");
    }
    return list;
}

static draw_shapes *facts(const draw_flow *flow, int columns)
{
    static const char *const names[] = {"first pass", "whole cut",  "left on top", "shim",
                                        "pickup",     "top radius", "its crest",   "top at ends",
                                        "slants",     "thickness",  "bottom",      "material"};
    enum { COUNT = sizeof names / sizeof *names };
    const draw_draft *draft = &flow->drawing->draft;
    const brief_saddle *saddle = &draft->brief->saddle;
    const char *material = draft->plan->job->saddle.material;
    draw_shapes *list = draw_flow_list(flow);
    const char *const values[COUNT] = {
        saddle->takes_first && draft->dense /* else it is led out along the bottom */
            ? draw_say(draft, "ends: treble %s, bass %s",
                       draw_figure(draft, saddle->base_first[BRIEF_TREBLE]),
                       draw_figure(draft, saddle->base_first[BRIEF_BASS]))
            : "",
        saddle->base && !saddle->one_pass
            ? draw_say(draft, "treble %s, bass %s",
                       draw_figure(draft, saddle->base_all[BRIEF_TREBLE]),
                       draw_figure(draft, saddle->base_all[BRIEF_BASS]))
            : "",
        brief_known(saddle->left_on) ? draw_say(draft, "up to %s: too little for a file",
                                                draw_figure(draft, saddle->left_on))
                                     : "",
        saddle->remedy == SIL_SADDLE_SHIM ? draw_figure(draft, saddle->shim) : "",
        brief_known(saddle->pickup)
            ? draw_say(draft, "%s thick, under it", draw_figure(draft, saddle->pickup))
            : "",
        draw_known_figure(draft, saddle->top_radius),
        brief_known(saddle->crest) ? draw_say(draft, "%s, %s", draw_figure(draft, saddle->crest),
                                              paper_say_crest(draft, saddle->crest_at))
                                   : "",
        paper_say_ends(draft, saddle->ends),
        paper_say_lean(draft, saddle->lean, saddle->bass_to_head),
        draw_set_decimals(draft, saddle->fit),
        draw_set_decimals(draft, saddle->bottom),
        draw_text_fit(draft, list, material != NULL ? material : "", DRAW_NOTE, 40)};
    paper_pairs(list, columns, 24, COUNT, names, values);
    return list;
}

/* Adds a block below the contents of a list and frees it. */
static void add_under(draw_shapes *list, draw_shapes *block)
{
    if (list != NULL && block != NULL && (block->count > 0 || block->no_memory)) {
        draw_shapes_add(list, block, draw_shapes_box(list).left, draw_shapes_box(list).bottom - 5);
    }
    draw_shapes_free(block);
}

static void put_piece(draw_flow *flow)
{
    double smallest = paper_full_size(flow->drawing->draft.brief->saddle_part.length);
    double scale, gap = flow->drawing->draft.dense ? 3 : 5;
    draw_shapes *large = paper_magnify(flow, magnified, smallest, &scale);
    draw_shapes *left = scale > smallest ? full_size(flow) : draw_flow_list(flow);
    draw_shapes_strut(left, (draw_box){0, 0, 40, 1}); /* for the key, where it stands alone */
    add_under(left, keys(flow));
    put_target(flow);
    paper_views(flow, left, end_view, large, facts, paper_saddle_table(flow), gap);
}

static void draw_saddle(sil_drawing *drawing)
{
    draw_heading heading = {
        "Saddle",
        "1:1",
        {"Slacken the strings first; wear eye protection. For the dust of bone, shell, plastic and",
         "metal use dust extraction and a mask; ventilate for glue. Local rules come first."}};
    const brief_saddle *saddle = &drawing->draft.brief->saddle;
    double scale = paper_full_size(drawing->draft.brief->saddle_part.length);
    bool turned = sil_working_turns(saddle->working);
    if (turned) { /* then nothing on it is full size, and nothing makes dust */
        heading = (draw_heading){"Saddle", "-", {NULL}};
    } else {
        heading.scale = draw_say_scale(&drawing->draft, scale);
    }
    draw_flow flow = draw_flow_begin(drawing, heading);
    if (turned) {
        paper_screws(&flow);
    } else {
        put_piece(&flow);
    }
}

void paper_saddle(sil_drawing *drawing)
{
    if (drawing->draft.brief->saddle.remedy == SIL_SADDLE_WAIT) {
        paper_wait(drawing, SIL_PART_SADDLE);
        return;
    }
    paper_fill(drawing, draw_saddle);
}
