/* SPDX-License-Identifier: MIT */
/* Sheet: the saddle. */
#include <stddef.h>
#include <string.h>

#include "part.h"

static bool any_dressed(const draw_draft *draft)
{
    bool any = false;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        any = any || sil_dressed_off(draft->plan, i) > 0;
    }
    return any;
}

static draw_words headline(const draw_draft *draft)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    switch (work->remedy) {
    case SIL_SADDLE_SAND:
        return work->bottom         ? draw_say("Sand the base to the solid line, then read again")
               : any_dressed(draft) ? draw_say("Dress the top, a little at a time")
                                    : draw_say("Nothing comes off: it is too little for a file");
    case SIL_SADDLE_SHIM:
        return draw_say("Shim the saddle: one hard full-length piece, %s %s",
                        draw_say_length(draft, work->shim).text, draw_unit_name(draft));
    case SIL_SADDLE_REPLACE:
        return draw_say("New saddle%s", paper_say_blank(draft, draft->plan->saddle_blank).text);
    default:
        return draw_say("Nothing comes off: every string is in its range");
    }
}

/* What the caliper is to read when the first pass is done, large: the one figure to stop at. */
static void put_target(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_saddle_work *work = &draft->plan->saddle;
    const double *z = draft->plan->bench.board.saddle_z;
    int last = draft->plan->job->string_count - 1;
    double treble = work->present[0] - sil_line_at(work->cut_first, z[0]);
    double bass = work->present[last] - sil_line_at(work->cut_first, z[last]);
    if (!work->bottom || !sil_known(treble) || !sil_known(bass)) {
        paper_headline(flow, headline(draft).text);
        return;
    }
    draw_shapes *list = draw_flow_list(flow);
    draw_words at_treble = draw_say_stop(draft, treble), at_bass = draw_say_stop(draft, bass);
    draw_words words = last > 0 ? draw_say("%s at string 1,  %s at string %d", at_treble.text,
                                           at_bass.text, last + 1)
                                : draw_say("%s", at_treble.text);
    draw_note(list, 0, 8.5,
              "First pass: sand the base, straight from end to end, until the "
              "caliper, base to top, reads");
    draw_text(list, DRAW_TEXT, (draw_point){0, 0}, DRAW_TITLE, DRAW_LEFT, 0, words.text);
    double x = draw_text_width(list, words.text, DRAW_TITLE) + 4;
    draw_note(list, x, 0, draw_say("%s, then read again.", draw_unit_name(draft)).text);
    draw_flow_put(flow, list, DRAW_LEFT, 5, 0);
}

static draw_shapes *full_size(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    double length = draft->plan->job->saddle.length;
    draw_shapes *list = draw_flow_list(flow);
    draw_place place = draw_place_part(draft, length, 1);
    view_saddle_face(draft, list, place);
    const sil_saddle_work *work = &draft->plan->saddle;
    double off = work->bottom
                     ? fmax(sil_line_at(work->cut, length / 2), sil_line_at(work->cut, -length / 2))
                     : 0;
    draw_ends(draft, list, place, length, off, off + 5);
    double low = draw_shapes_box(list).bottom;
    draw_length(draft, list, place, length, low - 8);
    draw_caption(list, DRAW_LEFT, "Face 1:1");
    return list;
}

/* What comes off the base under each string and at both ends, by the line to sand to first. */
static draw_ordinates base_figures(const draw_draft *draft, draw_place place)
{
    const sil_plan *plan = draft->plan;
    double length = plan->job->saddle.length;
    draw_ordinates o = {0};
    for (int i = -1; i <= plan->job->string_count; i++) {
        double x = i < 0 ? length : i == plan->job->string_count ? 0 : draw_on_saddle(draft, i);
        o.from[o.count] = draw_at(place, x, 0);
        o.text[o.count++] =
            draw_say_cut(draft, sil_line_at(plan->saddle.cut_first, x - length / 2));
    }
    return o;
}

/* What a caliper reads when all that is asked for is done. */
static double finished(const draw_draft *draft, int string)
{
    return draft->plan->saddle.height[string] + sil_left_on(draft->plan, string);
}

static draw_shapes *magnified(const draw_flow *flow, double scale)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    double length = plan->job->saddle.length;
    draw_shapes *list = draw_flow_list(flow);
    draw_place face = draw_place_part(draft, length, scale), top = face;
    view_saddle_face(draft, list, face);
    double low = draw_shapes_box(list).bottom, high = draw_shapes_box(list).top;
    draw_ordinates heights = {.numbered = true, .reach = high + 5.5}, centres = {.count = 1};
    for (int i = 0; i < plan->job->string_count; i++) {
        double over = view_saddle_profile(draft, i), height = finished(draft, i);
        heights.from[i] = draw_at(face, draw_on_saddle(draft, i), sil_known(over) ? over : 6);
        heights.text[i] = sil_known(over) ? draw_say_length(draft, height) : draw_say("%s", "");
        heights.number[i] = i + 1;
        heights.count++;
    }
    draw_dim_ordinates(list, &heights);
    if (plan->saddle.bottom) {
        draw_ordinates base = base_figures(draft, face);
        base.reach = low - 5;
        low = draw_dim_ordinates(list, &base);
    }
    bool seen_above = sil_known(plan->job->saddle.thickness); /* not of a loose bridge */
    double half = seen_above ? scale * plan->job->saddle.thickness / 2 : 0;
    top.y = low - 4 - half;
    if (seen_above) {
        view_saddle_top(draft, list, top, plan->job->saddle.thickness / 2);
    }
    centres.from[0] = draw_at(top, 0, 0);
    centres.text[0] = draw_say("0");
    for (int i = 0; i < plan->job->string_count; i++) {
        centres.from[centres.count] = draw_at(top, draw_on_saddle(draft, i), 0);
        centres.text[centres.count++] = draw_say_length(draft, draw_on_saddle(draft, i));
    }
    for (int i = 0; i < centres.count; i++) {
        centres.from[i].y = top.y - half;
    }
    centres.reach = top.y - half - 5;
    draw_dim_ordinates(list, &centres);
    draw_caption(list, DRAW_MIDDLE,
                 draw_say("%s %s from the tail: finished heights%s%s",
                          seen_above ? "Face and plan" : "Face", draw_say_scale(scale).text,
                          plan->saddle.bottom ? ", first pass off the base" : "",
                          seen_above ? "; crosses: in tune" : "")
                     .text);
    return list;
}

/* End on, at the string where the saddle stands out least. */
static draw_shapes *end_view(const draw_flow *flow, double scale)
{
    const sil_plan *plan = flow->drawing->draft.plan;
    draw_shapes *list = draw_flow_list(flow);
    int string = -1;
    for (int i = 0; i < plan->job->string_count; i++) {
        if (sil_known(plan->saddle.protrusion[i]) &&
            (string < 0 || plan->saddle.protrusion[i] < plan->saddle.protrusion[string])) {
            string = i;
        }
    }
    if (string < 0) {
        return list;
    }
    view_saddle_end(&flow->drawing->draft, list, (draw_place){0, 0, scale, scale}, string);
    draw_caption(list, DRAW_LEFT,
                 draw_say("Section at string %d, %s", string + 1, draw_say_scale(scale).text).text);
    return list;
}

static draw_words ends(const draw_draft *draft, sil_line line)
{
    double half = draft->plan->job->saddle.length / 2;
    return draw_say("treble %s, bass %s", draw_say_cut(draft, sil_line_at(line, half)).text,
                    draw_say_cut(draft, sil_line_at(line, -half)).text);
}

/* Whether the first pass takes all there is to take. */
static bool is_one_pass(const draw_draft *draft)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    double half = draft->plan->job->saddle.length / 2, apart = 0;
    for (int end = -1; end <= 1; end += 2) {
        double z = end * half;
        apart = fmax(apart, sil_line_at(work->cut, z) - sil_line_at(work->cut_first, z));
    }
    return apart < 0.005;
}

/* What each line of the views is, of those that are there. */
static draw_shapes *keys(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_saddle_work *work = &draft->plan->saddle;
    bool now = work->bottom, one_pass = is_one_pass(draft);
    draw_shapes *list = draw_flow_list(flow);
    const double key_pitch = 4.7;
    double y = -DRAW_NOTE;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        now = now || (sil_known(work->present[i]) && work->remedy != SIL_SADDLE_NONE);
    }
    if (work->bottom) {
        draw_key(list, 0, y, DRAW_CUT_FIRST,
                 one_pass ? "sand to here: all of it in one pass" : "sand to here, then read");
        y -= key_pitch;
    }
    if (work->bottom && !one_pass) {
        draw_key(list, 0, y, DRAW_CUT, "whole cut, by today's reading");
        y -= key_pitch;
    }
    if (now) {
        draw_key(list, 0, y, DRAW_PRESENT,
                 work->remedy == SIL_SADDLE_REPLACE ? "the old saddle" : "as it is now");
    }
    return list;
}

static draw_words most_left_on(const draw_draft *draft)
{
    double most = 0;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        most = fmax(most, sil_left_on(draft->plan, i));
    }
    return most < 0.005
               ? draw_say("%s", "")
               : draw_say("up to %s: too little for a file", draw_say_length(draft, most).text);
}

static draw_shapes *facts(const draw_flow *flow)
{
    static const char *const names[] = {"whole cut",  "left on top", "shim",
                                        "top radius", "leans",       "material"};
    enum { COUNT = sizeof names / sizeof *names };
    const draw_draft *draft = &flow->drawing->draft;
    const sil_saddle_work *work = &draft->plan->saddle;
    const char *material = draft->plan->job->saddle.material;
    const draw_words none = {""};
    draw_shapes *list = draw_flow_list(flow);
    const draw_words values[COUNT] = {
        work->bottom && !is_one_pass(draft) ? ends(draft, work->cut) : none,
        most_left_on(draft),
        work->remedy == SIL_SADDLE_SHIM ? draw_say_length(draft, work->shim) : none,
        sil_known(work->top_radius) ? draw_say_radius(draft, work->top_radius) : none,
        paper_say_lean(draft, draft->board->saddle_slant),
        draw_text_fit(list, material != NULL ? material : "", DRAW_NOTE, 40)};
    draw_pairs(list, 24, COUNT, names, values);
    return list;
}

enum { STRING, NOTE, PRESENT, LOWER, FIRST, DRESS, HEIGHT, OUT, SHARE, ANGLE, COLUMNS };

static draw_words amount(const draw_draft *draft, int i)
{
    switch (draft->plan->saddle.verdict[i]) {
    case SIL_TAKE:
        return draw_say_cut(draft, draft->plan->stages.lower[i]);
    case SIL_RAISE:
        return draw_say("up %s", draw_say_length(draft, -draft->plan->stages.lower[i]).text);
    case SIL_LEAVE:
        return draw_say("leave");
    default:
        return draw_say("wait");
    }
}

static const draw_table empty_table = {.columns = COLUMNS,
                                       .row_height = 5,
                                       .head = {[STRING] = {NULL, "string"},
                                                [NOTE] = {NULL, "note"},
                                                [PRESENT] = {"height", "now"},
                                                [LOWER] = {"lower", "by"},
                                                [FIRST] = {"base, first", "pass"},
                                                [DRESS] = {"then off", "the top"},
                                                [HEIGHT] = {"height", "finished"},
                                                [OUT] = {"out of the", "bridge"},
                                                [SHARE] = {"in its", "slot %"},
                                                [ANGLE] = {"string", "angle"}}};

static void fill_row(const draw_draft *draft, int i, double first, draw_words *cell)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    double angle = work->break_angle_deg[i];
    cell[STRING] = draw_say("%d", i + 1);
    cell[NOTE] = draw_say_note(draft, i);
    cell[PRESENT] = draw_say_length(draft, work->present[i]);
    cell[LOWER] = amount(draft, i);
    cell[FIRST] = work->bottom ? draw_say_cut(draft, first) : draw_say("-");
    double height = finished(draft, i), dress = sil_dressed_off(draft->plan, i);
    cell[DRESS] = dress > 0 ? draw_say_cut(draft, dress) : draw_say("-");
    cell[HEIGHT] = draw_say_length(draft, height);
    cell[OUT] = draw_say_length(draft, work->protrusion[i] + sil_left_on(draft->plan, i));
    cell[SHARE] = draw_say_number(draft, 100 * work->in_slot[i] * work->height[i] / height, 0);
    cell[ANGLE] = sil_known(angle) ? draw_say("%s\u00b0", draw_say_number(draft, angle, 0).text)
                                   : draw_say("-");
}

static void leave_out(draw_table *t, int column)
{
    size_t after = (size_t)(--t->columns - column);
    memmove(t->head + column, t->head + column + 1, after * sizeof *t->head);
    memmove(t->anchor + column, t->anchor + column + 1, after * sizeof *t->anchor);
    memmove(t->within + column, t->within + column + 1, after * sizeof *t->within);
    for (int r = 0; r < t->rows; r++) {
        draw_words *cell = t->cell[r] + column;
        memmove(cell, cell + 1, after * sizeof *cell);
    }
}

static draw_shapes *table(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    const sil_saddle_work *work = &plan->saddle;
    double first[SIL_STRINGS_MAX] = {0}, dress[SIL_STRINGS_MAX];
    double within = plan->bench.tools.caliper;
    draw_shapes *list = draw_flow_list(flow);
    draw_table t = empty_table;
    t.rows = plan->job->string_count;
    for (int i = 0; i < t.rows; i++) {
        first[i] = sil_line_at(work->cut_first, plan->bench.board.saddle_z[i]);
        dress[i] = sil_dressed_off(draft->plan, i);
        fill_row(draft, i, first[i], t.cell[i]);
    }
    for (int c = 0; c < COLUMNS; c++) {
        t.anchor[c] = c == NOTE ? DRAW_LEFT : DRAW_RIGHT;
    }
    if (work->remedy != SIL_SADDLE_NONE) {
        draw_table_within(draft, &t, LOWER, plan->stages.lower, within);
        draw_table_within(draft, &t, FIRST, first, within);
        draw_table_within(draft, &t, DRESS, dress, within);
    }
    if (!any_dressed(draft)) {
        leave_out(&t, DRESS);
    }
    if (!work->bottom) {
        leave_out(&t, FIRST);
    }
    draw_add_table(list, 0, 0, DRAW_COLUMN, &t);
    return list;
}

/* A block under what a list shows, and frees it. */
static void add_under(draw_shapes *list, draw_shapes *block)
{
    if (list != NULL && block != NULL && (block->count > 0 || block->no_memory)) {
        draw_shapes_add(list, block, draw_shapes_box(list).left, draw_shapes_box(list).bottom - 5);
    }
    draw_shapes_free(block);
}

static void piece_sheet(draw_flow *flow)
{
    draw_shapes *left = full_size(flow), *large = paper_magnify(flow, magnified);
    add_under(left, keys(flow));
    add_under(left, facts(flow));
    put_target(flow);
    paper_pair_and_large(flow, left, paper_beside(flow, left, end_view), large, 5);
    draw_flow_put(flow, table(flow), DRAW_LEFT, 5, 0);
}

void paper_saddle(sil_drawing *drawing)
{
    draw_heading heading = {
        "Saddle",
        "1:1",
        {"Slack the strings first; cover the eyes. Extract and mask for bone, shell, plastic and",
         "metal dust; air the room for glue. Local rules come first."}};
    const sil_plan *plan = drawing->draft.plan;
    if (plan->saddle.remedy == SIL_SADDLE_WAIT) {
        paper_wait(drawing, "saddle", &plan->saddle_withheld, SIL_SADDLE);
        return;
    }
    bool screws = draw_on_screws(&drawing->draft);
    if (screws) {
        heading.scale = "-"; /* nothing is full size */
    }
    draw_flow flow = draw_flow_begin(drawing, heading);
    if (screws) {
        paper_screws(&flow);
    } else {
        piece_sheet(&flow);
    }
}
