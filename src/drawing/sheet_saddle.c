/* SPDX-License-Identifier: MIT */
/* Sheet: the saddle. */
#include <stddef.h>
#include <string.h>

#include "part.h"

static bool any_dressed(const sil_draft *draft)
{
    bool any = false;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        any = any || sil_dressed_off(draft->plan, i) > 0;
    }
    return any;
}

static sil_words headline(const sil_draft *draft)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    switch (work->remedy) {
    case SIL_SADDLE_SAND:
        return work->bottom         ? sil_say("Sand the base to the solid line, then read again")
               : any_dressed(draft) ? sil_say("Dress the top, a little at a time")
                                    : sil_say("Nothing comes off: it is too little for a file");
    case SIL_SADDLE_SHIM:
        return sil_say("Shim the saddle: one hard full-length piece, %s %s",
                       sil_say_length(draft, work->shim).text, sil_unit_name(draft));
    case SIL_SADDLE_REPLACE:
        return sil_say("New saddle%s", sil_say_blank(draft, draft->plan->saddle_blank).text);
    default:
        return sil_say("Nothing comes off: every string is in its range");
    }
}

/* What the caliper is to read when the first pass is done, large: the one figure to stop at. */
static void put_target(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    const sil_saddle_work *work = &draft->plan->saddle;
    const double *z = draft->plan->bench.board.saddle_z;
    int last = draft->plan->job->string_count - 1;
    double treble = work->present[0] - sil_line_at(work->cut_first, z[0]);
    double bass = work->present[last] - sil_line_at(work->cut_first, z[last]);
    if (!work->bottom || !sil_known(treble) || !sil_known(bass)) {
        sil_flow_headline(flow, headline(draft).text);
        return;
    }
    sil_shapes *list = sil_flow_list(flow);
    sil_words at_treble = sil_say_stop(draft, treble), at_bass = sil_say_stop(draft, bass);
    sil_words words = last > 0 ? sil_say("%s at string 1,  %s at string %d", at_treble.text,
                                         at_bass.text, last + 1)
                               : sil_say("%s", at_treble.text);
    sil_draw_note(list, 0, 8.5,
                  "First pass: sand the base, straight from end to end, until the "
                  "caliper, base to top, reads");
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){0, 0}, SIL_TITLE, SIL_LEFT, 0, words.text);
    double x = sil_text_width(list, words.text, SIL_TITLE) + 4;
    sil_draw_note(list, x, 0, sil_say("%s, then read again.", sil_unit_name(draft)).text);
    sil_flow_put(flow, list, SIL_LEFT, 5, 0);
}

static sil_shapes *full_size(const sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    double length = draft->plan->job->saddle.length;
    sil_shapes *list = sil_flow_list(flow);
    sil_place place = sil_place_part(draft, length, 1);
    sil_saddle_face(draft, list, place);
    const sil_saddle_work *work = &draft->plan->saddle;
    double off = work->bottom
                     ? fmax(sil_line_at(work->cut, length / 2), sil_line_at(work->cut, -length / 2))
                     : 0;
    sil_draw_ends(draft, list, place, length, off, off + 5);
    double low = sil_shapes_box(list).bottom;
    sil_draw_length(draft, list, place, length, low - 8);
    sil_caption(list, SIL_LEFT, "Face 1:1");
    return list;
}

/* What comes off the base under each string and at both ends, by the line to sand to first. */
static sil_ordinates base_figures(const sil_draft *draft, sil_place place)
{
    const sil_plan *plan = draft->plan;
    double length = plan->job->saddle.length;
    sil_ordinates o = {0};
    for (int i = -1; i <= plan->job->string_count; i++) {
        double x = i < 0 ? length : i == plan->job->string_count ? 0 : sil_on_saddle(draft, i);
        o.from[o.count] = sil_at(place, x, 0);
        o.text[o.count++] = sil_say_cut(draft, sil_line_at(plan->saddle.cut_first, x - length / 2));
    }
    return o;
}

/* What a caliper reads when all that is asked for is done. */
static double finished(const sil_draft *draft, int string)
{
    return draft->plan->saddle.height[string] + sil_left_on(draft->plan, string);
}

static sil_shapes *magnified(const sil_flow *flow, double scale)
{
    const sil_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    double length = plan->job->saddle.length;
    sil_shapes *list = sil_flow_list(flow);
    sil_place face = sil_place_part(draft, length, scale), top = face;
    sil_saddle_face(draft, list, face);
    double low = sil_shapes_box(list).bottom, high = sil_shapes_box(list).top;
    sil_ordinates heights = {.numbered = true, .reach = high + 5.5}, centres = {.count = 1};
    for (int i = 0; i < plan->job->string_count; i++) {
        double over = sil_saddle_profile(draft, i), height = finished(draft, i);
        heights.from[i] = sil_at(face, sil_on_saddle(draft, i), sil_known(over) ? over : 6);
        heights.text[i] = sil_known(over) ? sil_say_length(draft, height) : sil_say("%s", "");
        heights.number[i] = i + 1;
        heights.count++;
    }
    sil_dim_ordinates(list, &heights);
    if (plan->saddle.bottom) {
        sil_ordinates base = base_figures(draft, face);
        base.reach = low - 5;
        low = sil_dim_ordinates(list, &base);
    }
    bool seen_above = sil_known(plan->job->saddle.thickness); /* not of a loose bridge */
    double half = seen_above ? scale * plan->job->saddle.thickness / 2 : 0;
    top.y = low - 4 - half;
    if (seen_above) {
        sil_saddle_top(draft, list, top, plan->job->saddle.thickness / 2);
    }
    centres.from[0] = sil_at(top, 0, 0);
    centres.text[0] = sil_say("0");
    for (int i = 0; i < plan->job->string_count; i++) {
        centres.from[centres.count] = sil_at(top, sil_on_saddle(draft, i), 0);
        centres.text[centres.count++] = sil_say_length(draft, sil_on_saddle(draft, i));
    }
    for (int i = 0; i < centres.count; i++) {
        centres.from[i].y = top.y - half;
    }
    centres.reach = top.y - half - 5;
    sil_dim_ordinates(list, &centres);
    sil_caption(list, SIL_MIDDLE,
                sil_say("%s %s from the tail: finished heights%s%s",
                        seen_above ? "Face and plan" : "Face", sil_say_scale(scale).text,
                        plan->saddle.bottom ? ", first pass off the base" : "",
                        seen_above ? "; crosses: in tune" : "")
                    .text);
    return list;
}

/* End on, at the string where the saddle stands out least. */
static sil_shapes *end_view(const sil_flow *flow, double scale)
{
    const sil_plan *plan = flow->drawing->draft.plan;
    sil_shapes *list = sil_flow_list(flow);
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
    sil_saddle_end(&flow->drawing->draft, list, (sil_place){0, 0, scale, scale}, string);
    sil_caption(list, SIL_LEFT,
                sil_say("Section at string %d, %s", string + 1, sil_say_scale(scale).text).text);
    return list;
}

static sil_words ends(const sil_draft *draft, sil_line line)
{
    double half = draft->plan->job->saddle.length / 2;
    return sil_say("treble %s, bass %s", sil_say_cut(draft, sil_line_at(line, half)).text,
                   sil_say_cut(draft, sil_line_at(line, -half)).text);
}

/* Whether the first pass takes all there is to take. */
static bool is_one_pass(const sil_draft *draft)
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
static sil_shapes *keys(const sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    const sil_saddle_work *work = &draft->plan->saddle;
    bool now = work->bottom, one_pass = is_one_pass(draft);
    sil_shapes *list = sil_flow_list(flow);
    const double key_pitch = 4.7;
    double y = -SIL_NOTE;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        now = now || (sil_known(work->present[i]) && work->remedy != SIL_SADDLE_NONE);
    }
    if (work->bottom) {
        sil_draw_key(list, 0, y, SIL_LAYER_CUT_FIRST,
                     one_pass ? "sand to here: all of it in one pass" : "sand to here, then read");
        y -= key_pitch;
    }
    if (work->bottom && !one_pass) {
        sil_draw_key(list, 0, y, SIL_LAYER_CUT, "whole cut, by today's reading");
        y -= key_pitch;
    }
    if (now) {
        sil_draw_key(list, 0, y, SIL_LAYER_PRESENT,
                     work->remedy == SIL_SADDLE_REPLACE ? "the old saddle" : "as it is now");
    }
    return list;
}

static sil_words most_left_on(const sil_draft *draft)
{
    double most = 0;
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        most = fmax(most, sil_left_on(draft->plan, i));
    }
    return most < 0.005
               ? sil_say("%s", "")
               : sil_say("up to %s: too little for a file", sil_say_length(draft, most).text);
}

static sil_shapes *facts(const sil_flow *flow)
{
    static const char *const names[] = {"whole cut",  "left on top", "shim",
                                        "top radius", "leans",       "material"};
    enum { COUNT = sizeof names / sizeof *names };
    const sil_draft *draft = &flow->drawing->draft;
    const sil_saddle_work *work = &draft->plan->saddle;
    const char *material = draft->plan->job->saddle.material;
    const sil_words none = {""};
    sil_shapes *list = sil_flow_list(flow);
    const sil_words values[COUNT] = {
        work->bottom && !is_one_pass(draft) ? ends(draft, work->cut) : none,
        most_left_on(draft),
        work->remedy == SIL_SADDLE_SHIM ? sil_say_length(draft, work->shim) : none,
        sil_known(work->top_radius) ? sil_say_radius(draft, work->top_radius) : none,
        sil_say_lean(draft, draft->board->saddle_slant),
        sil_text_fit(list, material != NULL ? material : "", SIL_NOTE, 40)};
    sil_draw_pairs(list, 24, COUNT, names, values);
    return list;
}

enum { STRING, NOTE, PRESENT, LOWER, FIRST, DRESS, HEIGHT, OUT, SHARE, ANGLE, COLUMNS };

static sil_words amount(const sil_draft *draft, int i)
{
    switch (draft->plan->saddle.verdict[i]) {
    case SIL_TAKE:
        return sil_say_cut(draft, draft->plan->stages.lower[i]);
    case SIL_RAISE:
        return sil_say("up %s", sil_say_length(draft, -draft->plan->stages.lower[i]).text);
    case SIL_LEAVE:
        return sil_say("leave");
    default:
        return sil_say("wait");
    }
}

static const sil_table empty_table = {.columns = COLUMNS,
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

static void fill_row(const sil_draft *draft, int i, double first, sil_words *cell)
{
    const sil_saddle_work *work = &draft->plan->saddle;
    double angle = work->break_angle_deg[i];
    cell[STRING] = sil_say("%d", i + 1);
    cell[NOTE] = sil_say_note(draft, i);
    cell[PRESENT] = sil_say_length(draft, work->present[i]);
    cell[LOWER] = amount(draft, i);
    cell[FIRST] = work->bottom ? sil_say_cut(draft, first) : sil_say("-");
    double height = finished(draft, i), dress = sil_dressed_off(draft->plan, i);
    cell[DRESS] = dress > 0 ? sil_say_cut(draft, dress) : sil_say("-");
    cell[HEIGHT] = sil_say_length(draft, height);
    cell[OUT] = sil_say_length(draft, work->protrusion[i] + sil_left_on(draft->plan, i));
    cell[SHARE] = sil_say_number(draft, 100 * work->in_slot[i] * work->height[i] / height, 0);
    cell[ANGLE] =
        sil_known(angle) ? sil_say("%s\u00b0", sil_say_number(draft, angle, 0).text) : sil_say("-");
}

static void leave_out(sil_table *t, int column)
{
    size_t after = (size_t)(--t->columns - column);
    memmove(t->head + column, t->head + column + 1, after * sizeof *t->head);
    memmove(t->anchor + column, t->anchor + column + 1, after * sizeof *t->anchor);
    memmove(t->within + column, t->within + column + 1, after * sizeof *t->within);
    for (int r = 0; r < t->rows; r++) {
        sil_words *cell = t->cell[r] + column;
        memmove(cell, cell + 1, after * sizeof *cell);
    }
}

static sil_shapes *table(const sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    const sil_saddle_work *work = &plan->saddle;
    double first[SIL_STRINGS_MAX] = {0}, dress[SIL_STRINGS_MAX];
    double within = plan->bench.tools.caliper;
    sil_shapes *list = sil_flow_list(flow);
    sil_table t = empty_table;
    t.rows = plan->job->string_count;
    for (int i = 0; i < t.rows; i++) {
        first[i] = sil_line_at(work->cut_first, plan->bench.board.saddle_z[i]);
        dress[i] = sil_dressed_off(draft->plan, i);
        fill_row(draft, i, first[i], t.cell[i]);
    }
    for (int c = 0; c < COLUMNS; c++) {
        t.anchor[c] = c == NOTE ? SIL_LEFT : SIL_RIGHT;
    }
    if (work->remedy != SIL_SADDLE_NONE) {
        sil_table_within(draft, &t, LOWER, plan->stages.lower, within);
        sil_table_within(draft, &t, FIRST, first, within);
        sil_table_within(draft, &t, DRESS, dress, within);
    }
    if (!any_dressed(draft)) {
        leave_out(&t, DRESS);
    }
    if (!work->bottom) {
        leave_out(&t, FIRST);
    }
    sil_draw_table(list, 0, 0, SIL_COLUMN, &t);
    return list;
}

/* A block under what a list shows, and frees it. */
static void add_under(sil_shapes *list, sil_shapes *block)
{
    if (list != NULL && block != NULL && (block->count > 0 || block->no_memory)) {
        sil_shapes_add(list, block, sil_shapes_box(list).left, sil_shapes_box(list).bottom - 5);
    }
    sil_shapes_free(block);
}

static void piece_sheet(sil_flow *flow)
{
    sil_shapes *left = full_size(flow), *large = sil_magnify(flow, magnified);
    add_under(left, keys(flow));
    add_under(left, facts(flow));
    put_target(flow);
    sil_flow_pair_and_large(flow, left, sil_beside(flow, left, end_view), large, 5);
    sil_flow_put(flow, table(flow), SIL_LEFT, 5, 0);
}

void sil_sheet_saddle(sil_drawing *drawing)
{
    sil_heading heading = {
        "Saddle",
        "1:1",
        {"Slack the strings first; cover the eyes. Extract and mask for bone, shell, plastic and",
         "metal dust; air the room for glue. Local rules come first."}};
    const sil_plan *plan = drawing->draft.plan;
    if (plan->saddle.remedy == SIL_SADDLE_WAIT) {
        sil_sheet_wait(drawing, "saddle", &plan->saddle_withheld, SIL_SADDLE);
        return;
    }
    bool screws = sil_on_screws(&drawing->draft);
    if (screws) {
        heading.scale = "-"; /* nothing is full size */
    }
    sil_flow flow = sil_flow_begin(drawing, heading);
    if (screws) {
        sil_screws_sheet(&flow);
    } else {
        piece_sheet(&flow);
    }
}
