/* SPDX-License-Identifier: MIT */
/* The paper of the nut. */
#include <stddef.h>

#include "part.h"

/* The height of the lowest slot floor; 0 if one of them is not known. */
static double lowest_floor(const part_nut *nut)
{
    double least = (double)INFINITY;
    for (int i = 0; i < nut->strings; i++) {
        least = fmin(least, sil_known(nut->floor[i]) ? nut->floor[i] : 0);
    }
    return least;
}

/* The nut slot to show in section: the one with most to file, or else the first that can be
 * drawn; -1 if none can. */
static int section_string(const brief *b)
{
    const part_nut *nut = &b->nut_part;
    int best = -1;
    double most = -(double)INFINITY;
    if (!sil_known(nut->thickness) || !sil_known(nut->fall_deg)) {
        return -1;
    }
    for (int i = 0; i < b->strings; i++) {
        const brief_slot *slot = &b->nut.slot[i];
        bool filed = slot->verdict == SIL_TAKE && brief_known(slot->off);
        double deep = filed ? slot->off.exact : 0;
        if (brief_known(slot->floor) && brief_known(slot->stack) && deep > most) {
            most = deep;
            best = i;
        }
    }
    return best;
}

/* The front face above the plan view, in first-angle projection. */
static draw_shapes *full_size(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const part_nut *nut = &draft->brief->nut_part;
    double thickness = nut->thickness;
    draw_shapes *list = draw_flow_list(flow);
    draw_place face = draw_place_part(draft, nut->length, 1), top = face;
    view_nut_face(draft, list, face, false);
    paper_ends(draft, list, face, nut->length, 0, lowest_floor(nut));
    if (sil_known(thickness)) {
        top.y = -thickness - (draft->dense ? 5 : 6);
        view_nut_top(draft, list, top);
    }
    int cut = section_string(draft->brief);
    if (cut >= 0) {
        double back = nut->along[cut] + thickness * tan(nut->slant);
        draw_plane(list, draw_at(top, nut->along[cut], 0), draw_at(top, back, thickness), -1, true,
                   (draw_box){0, top.y, nut->length, top.y + thickness}, "A");
    }
    if (sil_known(thickness) && brief_known(draft->brief->nut.lean)) {
        /* The section shows it longer, along a slot. */
        draw_dim_up(draft, list, (draw_point){nut->length, top.y},
                    (draw_point){nut->length, top.y + thickness}, nut->length + 18,
                    view_again(draft->brief->nut.thickness));
    }
    paper_length(draft, list, top, draft->brief->nut.length,
                 top.y - (cut < 0        ? 7
                          : draft->dense ? 9
                                         : 10));
    paper_caption(list, DRAW_LEFT, "Front face and plan 1:1");
    return list;
}

/* The magnified face, with the slot floors dimensioned above it and the slot centres below it. */
static draw_shapes *magnified(const draw_flow *flow, double scale)
{
    const draw_draft *draft = &flow->drawing->draft;
    const part_nut *nut = &draft->brief->nut_part;
    draw_shapes *list = draw_flow_list(flow);
    draw_place face = draw_place_part(draft, nut->length, scale);
    view_nut_face(draft, list, face, true);
    /* within the face they leave room beside it */
    paper_ends(draft, list, face, nut->length, 0, draft->dense ? lowest_floor(nut) : 0);
    draw_ordinates floors = {.reach = draw_shapes_box(list).top + (draft->dense ? 3 : 5),
                             .numbered = true,
                             .touches = true};
    draw_ordinates centres = {.reach = draft->dense ? -4 : -6, .origin = true, .count = 1};
    centres.from[0] = draw_at(face, 0, 0);
    for (int i = 0; i < nut->strings; i++) {
        const brief_slot *slot = &draft->brief->nut.slot[i];
        double x = nut->along[i], floor = nut->floor[i];
        centres.from[centres.count] = draw_at(face, x, 0);
        centres.figure[centres.count++] = slot->along;
        floors.from[floors.count] = draw_at(face, x, sil_known(floor) ? floor : 0);
        floors.figure[floors.count] = slot->floor;
        floors.number[floors.count++] = i + 1;
    }
    draw_dim_ordinates(draft, list, &floors);
    draw_dim_ordinates(draft, list, &centres);
    const char *limits = "";
    for (int i = 0; i < nut->strings && limits[0] == '\0'; i++) {
        limits = draw_limits(draft, draft->brief->nut.slot[i].floor);
    }
    const char *view = draw_say(draft, "Front face %s from the body", draw_say_scale(draft, scale));
    const char *over =
        draw_say(draft, "final floors over bottom%s%s", limits[0] != '\0' ? " " : "", limits);
    const char *along = brief_known(draft->brief->nut.lean) ? "centres from bass end along it"
                                                            : "centres from bass end";
    if (draft->dense) { /* narrow, to leave room beside the view */
        paper_caption(list, DRAW_MIDDLE, draw_say(draft, "%s, %s", over, along));
        paper_caption(list, DRAW_MIDDLE, draw_say(draft, "%s:", view));
    } else {
        paper_caption_within(flow, list, view, draw_say(draft, "%s, %s", over, along));
    }
    return list;
}

static draw_shapes *section(const draw_flow *flow, double scale)
{
    const draw_draft *draft = &flow->drawing->draft;
    int string = section_string(draft->brief);
    draw_shapes *list = draw_flow_list(flow);
    if (string >= 0) {
        view_nut_section(draft, list, (draw_place){0, 0, scale, scale}, string);
        paper_caption(list, DRAW_LEFT,
                      draw_say(draft, "A-A, slot %d, %s, falls %s\u00b0%s", string + 1,
                               draw_say_scale(draft, scale),
                               draw_figure(draft, draft->brief->nut.fall),
                               draft->dense ? "" : " as the top does"));
    }
    return list;
}

static draw_shapes *facts(const draw_flow *flow, int columns)
{
    static const char *const names[] = {
        "height",         "top radius",    "its crest", "top at ends", "fall",
        "spacing, clear", "neck to board", "shim",      "over bottom", "cut width",
        "files",          "slants",        "thickness", "bottom",      "material"};
    enum { COUNT = sizeof names / sizeof *names };
    const draw_draft *draft = &flow->drawing->draft;
    const brief_nut *nut = &draft->brief->nut;
    const char *material = draft->plan->job->nut.material;
    draw_shapes *list = draw_flow_list(flow);
    const char *const values[COUNT] = {
        draw_known_figure(draft, nut->height),
        draw_known_figure(draft, nut->top_radius),
        paper_say_crest(draft, nut->crest_at),
        paper_say_ends(draft, nut->ends),
        brief_known(nut->fall) && section_string(draft->brief) < 0
            ? draw_say(draft, "%s\u00b0 to the tuners", draw_figure(draft, nut->fall))
            : "",
        draw_known_figure(draft, nut->gap),
        draw_known_figure(draft, nut->board),
        nut->remedy == SIL_NUT_SHIM ? draw_figure(draft, nut->shim) : "",
        nut->remedy == SIL_NUT_SHIM ? "without the shim" : "",
        brief_known(nut->lean) ? "square to the slot" : "",
        nut->files,
        paper_say_lean(draft, nut->lean, nut->bass_to_head),
        draw_set_decimals(draft, nut->fit),
        draw_set_decimals(draft, nut->bottom),
        draw_text_fit(draft, list, material != NULL ? material : "", DRAW_NOTE, 35)};
    paper_pairs(list, columns, 28, COUNT, names, values);
    return list;
}

enum { STRING, NOTE, SLOT, CENTRE, FLOOR, TOP, DEPTH, DEEPEN, FIRST, STOP_NOW, STOP, COLUMNS };

static const draw_table empty_table = {.columns = COLUMNS,
                                       .span = {{STOP_NOW, STOP, "file to feelers"}},
                                       .head = {[STRING] = {NULL, "string"},
                                                [NOTE] = {NULL, "note"},
                                                [SLOT] = {"cut", "width"},
                                                [CENTRE] = {"from the", "bass end"},
                                                [FLOOR] = {"final floor", "over bottom"},
                                                [TOP] = {"top over", "bottom"},
                                                [DEPTH] = {"depth", "of slot"},
                                                [DEEPEN] = {"deepen", "by"},
                                                [FIRST] = {"first", "pass"},
                                                [STOP_NOW] = {NULL, "now"},
                                                [STOP] = {NULL, "final"}}};

/* Writes what is done at a slot, in the column of how much to deepen it. */
static void put_amount(const draw_draft *draft, const brief_slot *slot, int i, draw_table *t)
{
    switch (slot->does) {
    case BRIEF_FILES:
        draw_table_figure(draft, t, i, DEEPEN, slot->deepen);
        break;
    case BRIEF_FILLS:
        t->cell[i][DEEPEN] = "fill";
        break;
    case BRIEF_NEW:
        t->cell[i][DEEPEN] = "new";
        break;
    case BRIEF_LEAVES:
        t->cell[i][DEEPEN] = "leave";
        break;
    case BRIEF_LOWERS:
    case BRIEF_RAISES:
    case BRIEF_WAITS:
        t->cell[i][DEEPEN] = "wait";
        break;
    }
}

static void fill_row(const draw_draft *draft, int i, draw_table *t)
{
    const brief_slot *slot = &draft->brief->nut.slot[i];
    t->cell[i][STRING] = draw_say(draft, "%d", i + 1);
    t->cell[i][NOTE] = draw_say_note(draft, i);
    draw_table_figure(draft, t, i, SLOT, slot->width);
    draw_table_figure(draft, t, i, CENTRE, slot->along);
    draw_table_figure(draft, t, i, FLOOR, slot->floor);
    draw_table_figure(draft, t, i, TOP, slot->top);
    draw_table_figure(draft, t, i, DEPTH, slot->depth);
    put_amount(draft, slot, i, t);
    draw_table_figure(draft, t, i, FIRST, slot->first);
    draw_table_figure(draft, t, i, STOP_NOW, slot->stack_now);
    t->cell[i][STOP] = "-";
    if (slot->worked) {
        draw_table_figure(draft, t, i, STOP, slot->stack);
    }
}

static const double pitch = 3.8; /* of the lines under the table, mm */

/* Says of which feelers the stacks are made up, in as many columns as they leave room for. */
static double put_leaves(const draw_draft *draft, draw_shapes *list, double y)
{
    const double apart = 3;
    const char *words[SIL_STRINGS_MAX];
    double widest = 1;
    int count = 0;
    for (int i = 0; i < draft->brief->strings; i++) {
        const brief_slot *slot = &draft->brief->nut.slot[i];
        if (slot->leaves > 0) {
            words[count] =
                draw_say(draft, "string %d: %s", i + 1, draw_set_decimals(draft, slot->leaf_words));
            widest = fmax(widest, draw_text_width(list, words[count++], DRAW_NOTE) + apart);
        }
    }
    int abreast = 3 * widest <= DRAW_COLUMN + apart ? 3 : 2;
    int rows = (count + abreast - 1) / abreast;
    for (int i = 0; i < count; i++) {
        int row = i / abreast;
        draw_note(list, i % abreast * DRAW_COLUMN / (double)abreast, y - row * pitch, words[i]);
    }
    return y - rows * pitch;
}

/* No letter in a row reaches below a comma. Many strings leave no room for large ones. */
static double row_height(const draw_draft *draft)
{
    const int few = 8;
    return draft->dense && draft->brief->strings > few ? 4 : 5.2;
}

static bool any_stack(const draw_draft *draft)
{
    bool any = false;
    for (int i = 0; i < draft->brief->strings; i++) {
        any = any || brief_known(draft->brief->nut.slot[i].stack_now);
    }
    return any;
}

/* Says under the table how to stop. A shim alone leaves nothing to file, and nothing to say. */
static void put_how(const draw_draft *draft, draw_shapes *list, double y)
{
    const brief_nut *nut = &draft->brief->nut;
    if (any_stack(draft)) {
        draw_note(list, 0, y,
                  "Feelers now, on the board, hard against the nut's front face; file down to them "
                  "at that edge:");
        y = put_leaves(draft, list, y - pitch);
    }
    if (nut->no_file[0]) {
        draw_note(list, 0, y, nut->no_file);
        y -= pitch;
    }
    if (nut->stack_words[0]) {
        draw_note(list, 0, y, draw_set_decimals(draft, nut->stack_words));
    }
}

static draw_shapes *table(const draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    draw_table t = empty_table;
    t.rows = draft->brief->strings;
    t.row_height = row_height(draft);
    t.large = t.row_height > 4 ? STOP_NOW : 0; /* large letters do not go into lower rows */
    for (int i = 0; i < t.rows; i++) {
        fill_row(draft, i, &t);
    }
    for (int c = 0; c < COLUMNS; c++) {
        t.anchor[c] = c == NOTE ? DRAW_LEFT : DRAW_RIGHT;
    }
    double bottom = draw_add_table(list, 0, 0, DRAW_COLUMN, &t);
    put_how(draft, list, bottom - 4.2);
    return list;
}

static void draw_nut(sil_drawing *drawing)
{
    static const draw_heading heading = {
        "Nut",
        "1:1",
        {"Slacken the strings first; wear eye protection. For the dust of bone, shell, plastic and",
         "metal use dust extraction and a mask; ventilate for glue. Local rules come first."}};
    const draw_draft *draft = &drawing->draft;
    draw_flow flow = draw_flow_begin(drawing, heading);
    paper_headline(&flow, draw_set_decimals(draft, draft->brief->nut.headline));
    double scale; /* 0 where none larger than full size fits: the table has the figures */
    draw_shapes *large = paper_magnify(&flow, magnified, 0, &scale);
    paper_views(&flow, full_size(&flow), section, large, facts, table(&flow), 2);
}

void paper_nut(sil_drawing *drawing)
{
    const draw_draft *draft = &drawing->draft;
    if (draft->brief->nut.remedy == SIL_NUT_WAIT) {
        paper_wait(drawing, SIL_PART_NUT);
        return;
    }
    paper_fill(drawing, draw_nut);
}
