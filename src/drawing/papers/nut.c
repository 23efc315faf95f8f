/* SPDX-License-Identifier: MIT */
/* Sheet: the nut. */
#include <stddef.h>

#include "part.h"

static double shim(const sil_plan *plan)
{
    return plan->nut.remedy == SIL_NUT_SHIM ? plan->nut.shim : 0;
}

static bool cuts_anew(const sil_plan *plan)
{
    return plan->nut.remedy == SIL_NUT_REPLACE;
}

/* The least of the values, 0 where one is not known. */
static double lowest(const double *values, int count)
{
    double least = (double)INFINITY;
    for (int i = 0; i < count; i++) {
        least = sil_known(values[i]) ? fmin(least, values[i]) : fmin(least, 0);
    }
    return least;
}

/* The slot with most to file, else the one in the middle; -1 where nothing is known to show. */
static int section_string(const sil_plan *plan)
{
    int best = -1;
    double most = -(double)INFINITY;
    if (!sil_known(plan->job->nut.thickness) || !sil_known(plan->nut.fall_angle_deg)) {
        return -1;
    }
    for (int i = 0; i < plan->job->string_count; i++) {
        bool shown = sil_known(plan->nut.floor[i]) && sil_known(plan->nut.stack[i]);
        double deep = plan->nut.verdict[i] == SIL_TAKE ? plan->stages.deepen[i] : 0;
        if (shown && deep > most) {
            most = deep;
            best = i;
        }
    }
    return best;
}

/* Front face over plan, first angle. */
static draw_shapes *full_size(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    double width = draft->plan->job->nut.width, thickness = draft->plan->job->nut.thickness;
    int strings = draft->plan->job->string_count;
    draw_shapes *list = draw_flow_list(flow);
    draw_place face = draw_place_part(draft, width, 1), top = face;
    view_nut_face(draft, list, face, false);
    draw_ends(draft, list, face, width, 0, lowest(draft->plan->nut.floor, strings));
    if (sil_known(thickness)) {
        top.y = -thickness - 6;
        view_nut_top(draft, list, top);
    }
    int cut = section_string(draft->plan);
    if (cut >= 0) {
        draw_plane(list, draw_at(top, draw_on_nut(draft, cut), 0).x,
                   (draw_box){0, top.y, width, top.y + thickness}, "A");
    }
    draw_length(draft, list, top, width, top.y - (cut >= 0 ? 10 : 7));
    draw_caption(list, DRAW_LEFT, "Front face and plan 1:1");
    return list;
}

/* Floors led out above, centres below. */
static draw_shapes *magnified(const draw_flow *flow, double scale)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    double width = plan->job->nut.width;
    draw_shapes *list = draw_flow_list(flow);
    draw_place face = draw_place_part(draft, width, scale);
    view_nut_face(draft, list, face, true);
    draw_ends(draft, list, face, width, 0, 0);
    draw_ordinates floors = {.reach = draw_shapes_box(list).top + 5, .numbered = true};
    draw_ordinates centres = {.reach = -6, .count = 1};
    centres.from[0] = draw_at(face, 0, 0);
    centres.text[0] = draw_say("0");
    for (int i = 0; i < plan->job->string_count; i++) {
        double x = draw_on_nut(draft, i), floor = plan->nut.floor[i];
        centres.from[centres.count] = draw_at(face, x, 0);
        centres.text[centres.count++] = draw_say_length(draft, x);
        floors.from[floors.count] = draw_at(face, x, sil_known(floor) ? floor : 0);
        floors.text[floors.count] = draw_say_length(draft, floor);
        floors.number[floors.count++] = i + 1;
    }
    draw_dim_ordinates(list, &floors);
    draw_dim_ordinates(list, &centres);
    draw_caption(
        list, DRAW_MIDDLE,
        draw_say(
            "Front face %s, seen from the body: floors over the seat, centres from the bass end",
            draw_say_scale(scale).text)
            .text);
    return list;
}

static draw_shapes *section(const draw_flow *flow, double scale)
{
    int string = section_string(flow->drawing->draft.plan);
    draw_shapes *list = draw_flow_list(flow);
    if (string >= 0) {
        view_nut_section(&flow->drawing->draft, list, (draw_place){0, 0, scale, scale}, string);
        draw_caption(
            list, DRAW_LEFT,
            draw_say("A-A, along slot %d, %s", string + 1, draw_say_scale(scale).text).text);
    }
    return list;
}

static draw_words radius(const draw_draft *draft, const double *height)
{
    const sil_board *board = &draft->plan->bench.board;
    double r = sil_top_radius(board->strings, board->nut_z, height);
    return sil_known(r) ? draw_say_radius(draft, r) : draw_say("%s", "");
}

static draw_words length_or_nothing(const draw_draft *draft, double mm)
{
    return sil_known(mm) ? draw_say_length(draft, mm) : draw_say("%s", "");
}

static draw_shapes *facts(const draw_flow *flow)
{
    static const char *const names[] = {
        "height", "top radius", "floor radius", "fall", "gap between strings",
        "shim",   "leans",      "material"};
    enum { COUNT = sizeof names / sizeof *names };
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    double tops[SIL_STRINGS_MAX], fall = plan->nut.fall_angle_deg;
    for (int i = 0; i < plan->job->string_count; i++) {
        tops[i] = plan->nut.floor[i] + plan->nut.depth[i];
    }
    draw_shapes *list = draw_flow_list(flow);
    const char *material = plan->job->nut.material;
    const draw_words values[COUNT] = {
        length_or_nothing(draft, plan->nut.top),
        radius(draft, tops),
        radius(draft, plan->nut.floor),
        sil_known(fall) ? draw_say("%s\u00b0 to the tuners", draw_say_number(draft, fall, 0).text)
                        : draw_say("%s", ""),
        length_or_nothing(draft, plan->nut_gap),
        length_or_nothing(draft, plan->nut.shim),
        paper_say_lean(draft, draft->board->nut_slant),
        draw_text_fit(list, material != NULL ? material : "", DRAW_NOTE, 35)};
    draw_pairs(list, 39, COUNT, names, values);
    return list;
}

static draw_words amount(const draw_draft *draft, int i)
{
    const sil_plan *plan = draft->plan;
    double deeper = plan->stages.deepen[i] + shim(plan);
    if (cuts_anew(plan)) {
        return draw_say("new");
    }
    switch (plan->nut.verdict[i]) {
    case SIL_TAKE:
        return draw_say_cut(draft, deeper);
    case SIL_RAISE:
        return plan->nut.remedy == SIL_NUT_SHIM ? draw_say_cut(draft, deeper) : draw_say("fill");
    case SIL_LEAVE:
        return shim(plan) > 0 ? draw_say_cut(draft, shim(plan)) : draw_say("leave");
    default:
        return draw_say("wait");
    }
}

static bool is_worked(const sil_plan *plan, int i)
{
    sil_verdict verdict = plan->nut.verdict[i];
    return verdict == SIL_TAKE || verdict == SIL_RAISE || cuts_anew(plan) || shim(plan) > 0;
}

enum { STRING, NOTE, GAUGE, SLOT, CENTRE, FLOOR, DEPTH, DEEPEN, FIRST, STOP_FIRST, STOP, COLUMNS };

static const draw_table empty_table = {.columns = COLUMNS,
                                       .row_height = 5.5,
                                       .large = STOP,
                                       .span = {{STOP_FIRST, STOP, "file to feelers"}},
                                       .head = {[STRING] = {NULL, "string"},
                                                [NOTE] = {NULL, "note"},
                                                [GAUGE] = {NULL, "gauge"},
                                                [SLOT] = {"slot", "width"},
                                                [CENTRE] = {"from the", "bass end"},
                                                [FLOOR] = {"floor over", "the seat"},
                                                [DEPTH] = {"depth", "of slot"},
                                                [DEEPEN] = {"deepen", "by"},
                                                [FIRST] = {"first", "pass"},
                                                [STOP_FIRST] = {NULL, "first"},
                                                [STOP] = {NULL, "for good"}}};

static void fill_row(const draw_draft *draft, int i, draw_words *cell)
{
    const sil_plan *plan = draft->plan;
    const sil_string *string = &plan->job->strings[i];
    double first = plan->nut.first_pass[i], left = plan->stages.deepen[i] - first;
    bool passes = plan->nut.verdict[i] == SIL_TAKE && !cuts_anew(plan);
    draw_words none = draw_say("-");
    cell[STRING] = draw_say("%d", i + 1);
    cell[NOTE] = draw_say_note(draft, i);
    cell[GAUGE] = draw_say_length(draft, string->gauge);
    cell[SLOT] = draw_say_length(draft, plan->slot_width[i]);
    cell[CENTRE] = draw_say_length(draft, draw_on_nut(draft, i));
    cell[FLOOR] = draw_say_length(draft, plan->nut.floor[i]);
    cell[DEPTH] = draw_say_length(draft, plan->nut.depth[i]);
    cell[DEEPEN] = amount(draft, i);
    cell[FIRST] = passes ? draw_say_cut(draft, first + shim(plan)) : none;
    cell[STOP_FIRST] = passes ? draw_say_stop(draft, plan->nut.stack[i] + left) : none;
    cell[STOP] = is_worked(plan, i) ? draw_say_stop(draft, plan->nut.stack[i]) : none;
}

static draw_shapes *table(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    const sil_plan *plan = draft->plan;
    draw_table t = empty_table;
    t.rows = plan->job->string_count;
    for (int i = 0; i < t.rows; i++) {
        fill_row(draft, i, t.cell[i]);
    }
    for (int c = 0; c < COLUMNS; c++) {
        t.anchor[c] = c == NOTE ? DRAW_LEFT : DRAW_RIGHT;
    }
    double within = plan->bench.tools.first;
    draw_table_within(draft, &t, SLOT, plan->slot_width, within);
    draw_table_within(draft, &t, DEPTH, plan->nut.depth, within);
    if (plan->nut.remedy != SIL_NUT_NONE && !cuts_anew(plan)) {
        draw_table_within(draft, &t, DEEPEN, plan->stages.deepen, within);
        draw_table_within(draft, &t, FIRST, plan->nut.first_pass, within);
    }
    double bottom = draw_add_table(list, 0, 0, DRAW_COLUMN, &t);
    if (plan->nut.remedy != SIL_NUT_NONE) {
        draw_note(list, 0, bottom - 5,
                  "Feelers lie on the board against the nut, beside the slot: stop when the file "
                  "rides on them.");
    }
    return list;
}

/* "slots 1, 3, 4", "all slots": those with a verdict. */
static draw_words slots_with(const draw_draft *draft, sil_verdict verdict)
{
    bool meant[SIL_STRINGS_MAX] = {false};
    int count = 0, strings = draft->plan->job->string_count;
    for (int i = 0; i < strings; i++) {
        meant[i] = draft->plan->nut.verdict[i] == verdict;
        count += meant[i];
    }
    return count > 1 && count == strings ? draw_say("all slots")
                                         : draw_say_which(draft, "slot", meant);
}

static draw_words headline(const draw_draft *draft)
{
    const sil_plan *plan = draft->plan;
    switch (plan->nut.remedy) {
    case SIL_NUT_FILE:
        return draw_say("File %s down to feelers", slots_with(draft, SIL_TAKE).text);
    case SIL_NUT_FILL:
        return draw_say("Fill %s and cut it again", slots_with(draft, SIL_RAISE).text);
    case SIL_NUT_SHIM:
        return draw_say("Shim the nut by %s %s, then file",
                        draw_say_length(draft, plan->nut.shim).text, draw_unit_name(draft));
    case SIL_NUT_REPLACE:
        return draw_say("New nut%s", paper_say_blank(draft, plan->nut_blank).text);
    default:
        break;
    }
    if (plan->bench.zero_fret) {
        return draw_say("No slot is filed for height: the zero fret sets it");
    }
    draw_words unread = slots_with(draft, SIL_WAIT);
    return unread.text[0] != '\0' ? draw_say("Nothing is filed; not read yet: %s", unread.text)
                                  : draw_say("Nothing is filed: every slot is in its range");
}

void paper_nut(sil_drawing *drawing)
{
    static const draw_heading heading = {
        "Nut",
        "1:1",
        {"Slack the strings first; cover the eyes. Extract and mask for bone, shell, plastic and",
         "metal dust; air the room for glue. Local rules come first."}};
    const sil_plan *plan = drawing->draft.plan;
    if (plan->nut.remedy == SIL_NUT_WAIT) {
        paper_wait(drawing, "nut", &plan->nut_withheld, SIL_NUT);
        return;
    }
    draw_flow flow = draw_flow_begin(drawing, heading);
    paper_headline(&flow, headline(&drawing->draft).text);
    draw_shapes *left = full_size(&flow), *data = facts(&flow),
                *large = paper_magnify(&flow, magnified);
    if (left != NULL && data != NULL) {
        draw_shapes_add(left, data, draw_shapes_box(left).left, draw_shapes_box(left).bottom - 5);
    }
    draw_shapes_free(data);
    paper_pair_and_large(&flow, left, paper_beside(&flow, left, section), large, 4);
    draw_flow_put(&flow, table(&flow), DRAW_LEFT, 7, 0);
}
