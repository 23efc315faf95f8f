/* SPDX-License-Identifier: MIT */
/* The paper of the blanks to order. It states everything a supplier needs to know. */
#include <stddef.h>

#include "part.h"

enum { ORDERED, DONE, SPARE, SIZE_FIGURES, FACTS_MAX = 8 };

static const char ends_word[] = "ends"; /* no measuring sheet asks for it */

/* A blank, and the facts that a supplier needs. */
typedef struct order {
    const char *name;
    const brief_blank *blank;
    int count;
    const char *fact[FACTS_MAX], *value[FACTS_MAX];
} order;

static void add_fact(order *o, const char *name, const char *value)
{
    o->fact[o->count] = name;
    o->value[o->count++] = value;
}

/* Starts the order of either blank with the facts that both have. */
static order begin(const draw_draft *draft, const char *name, const brief_blank *blank,
                   const char *material)
{
    const brief *b = draft->brief;
    order o = {.name = name, .blank = blank};
    add_fact(&o, "material", material != NULL ? material : "");
    add_fact(&o, "spacing",
             b->strings > 1 ? draw_say(draft, "%s %s, %d strings",
                                       draw_figure(draft, blank->spacing), b->unit_name, b->strings)
                            : "one string");
    add_fact(&o, "quantity", "1");
    add_fact(&o, "string slots", blank == &b->nut.blank ? "none, we cut them" : "none");
    add_fact(&o, "hand", draw_left_handed(draft) ? "left" : "right");
    add_fact(&o, "top",
             brief_known(blank->radius) ? draw_say(draft, "flat; by us to radius %s %s",
                                                   draw_figure(draft, blank->radius), b->unit_name)
                                        : "flat");
    return o;
}

static order nut_order(const draw_draft *draft)
{
    return begin(draft, "Nut blank", &draft->brief->nut.blank, draft->plan->job->nut.material);
}

static order saddle_order(const draw_draft *draft)
{
    const brief_blank *blank = &draft->brief->saddle.blank;
    order o = begin(draft, "Saddle blank", blank, draft->plan->job->saddle.material);
    add_fact(&o, "saddle slot",
             draw_say(draft, "%s \u00d7 %s %s", draw_figure(draft, blank->done_thickness),
                      draw_figure(draft, blank->done_length), draft->brief->unit_name));
    add_fact(&o, ends_word, "");
    return o;
}

/* Draws the blank from the front. The view of its left end is to the right of that, as in
 * first-angle projection. */
static draw_shapes *views(const draw_flow *flow, const brief_blank *blank)
{
    const double apart = 16;
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    double length = blank->length.exact, thickness = blank->thickness.exact;
    double height = blank->height.exact, end = length + apart;
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){0, 0, length, height});
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){end, 0, end + thickness, height});
    draw_dim_across(draft, list, (draw_point){0, 0}, (draw_point){length, 0}, -7, blank->length);
    draw_dim_across(draft, list, (draw_point){end, 0}, (draw_point){end + thickness, 0}, -7,
                    blank->thickness);
    draw_dim_up(draft, list, (draw_point){end, 0}, (draw_point){end, height}, length + 8,
                blank->height);
    return list;
}

static void put_size(const draw_draft *draft, draw_table *t, const char *name,
                     const brief_figure size[SIZE_FIGURES])
{
    int row = t->rows++;
    t->cell[row][0] = name;
    for (int i = 0; i < SIZE_FIGURES; i++) {
        draw_table_figure(draft, t, row, 1 + i, size[i]);
    }
}

static void put_sizes(draw_flow *flow, const brief_blank *b)
{
    const draw_draft *draft = &flow->drawing->draft;
    const brief_figure length[] = {b->length, b->done_length, b->spare_length};
    const brief_figure thickness[] = {b->thickness, b->done_thickness, b->spare_thickness};
    const brief_figure height[] = {b->height, b->done_height, b->spare_height};
    draw_table t = {.columns = 1 + SIZE_FIGURES,
                    .row_height = 5.5,
                    .large = 1 + ORDERED,
                    .head = {{NULL, "size"},
                             {"at least,", draft->brief->unit_name},
                             {NULL, "finished"},
                             {"fitting", "allowance"}},
                    .anchor = {DRAW_LEFT, DRAW_RIGHT, DRAW_RIGHT, DRAW_RIGHT}};
    put_size(draft, &t, "length", length);
    put_size(draft, &t, "thickness", thickness);
    put_size(draft, &t, "height", height);
    draw_shapes *list = draw_flow_list(flow);
    draw_add_table(list, 0, 0, DRAW_COLUMN, &t);
    draw_flow_put(flow, list, DRAW_LEFT, 3.5, 20); /* keep the facts with it */
}

/* Draws boxes for a choice that the job does not state. It is ticked at the bench before the
 * order goes out. */
static void draw_choice(draw_shapes *list, double x, double y, const char *const choice[2])
{
    const double box = 2.8, gap = 1.5, apart = 5;
    for (int i = 0; i < 2; i++) {
        draw_rectangle(list, DRAW_SLOT, (draw_box){x, y - 0.15, x + box, y - 0.15 + box});
        draw_note(list, x + box + gap, y, choice[i]);
        x += box + gap + draw_text_width(list, choice[i], DRAW_NOTE) + apart;
    }
}

/* Writes the facts in two columns. An unknown fact gets a line to write on or boxes to tick. */
static void put_facts(draw_flow *flow, const order *o)
{
    static const char *const ends[2] = {"square", "round"};
    const double tab = 22, second = 82, pitch = 5;
    draw_shapes *list = draw_flow_list(flow);
    double low = 0;
    for (int i = 0; i < o->count; i++) {
        int row = i / 2;
        double x = i % 2 * second, y = -DRAW_NOTE - row * pitch;
        draw_note(list, x, y, o->fact[i]);
        if (o->value[i][0] != '\0') {
            draw_note(list, x + tab, y,
                      draw_text_fit(&flow->drawing->draft, list, o->value[i], DRAW_NOTE,
                                    second - tab - 3));
        } else if (o->fact[i] == ends_word) {
            draw_choice(list, x + tab, y, ends);
        } else {
            draw_line(list, DRAW_DIMENSION, (draw_point){x + tab, y - 1},
                      (draw_point){x + second - 6, y - 1});
        }
        low = y - 1;
    }
    draw_shapes_strut(list, (draw_box){0, low, 1, 0});
    draw_flow_put(flow, list, DRAW_LEFT, 4, 0);
}

static void put_blank(draw_flow *flow, order o)
{
    const double whole_block = 84; /* views, sizes and facts stay together */
    draw_flow_title(flow, o.name, whole_block);
    if (!o.blank->complete) {
        draw_flow_text(flow, 0, DRAW_COLUMN, "Not to be sent yet: a size below is not known.", 4);
    } else if (o.blank->length.exact <= DRAW_COLUMN - 40) {
        draw_flow_put(flow, views(flow, o.blank), DRAW_LEFT, 5, 0);
    }
    put_sizes(flow, o.blank);
    put_facts(flow, &o);
}

static void put_nut(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const brief_nut *nut = &draft->brief->nut;
    if (nut->remedy == SIL_NUT_WAIT) {
        paper_flow_wait(flow, "No nut blank is ordered today.", &draft->brief->stage[BRIEF_NUT]);
    } else if (!nut->blank.ordered) {
        draw_flow_words(flow, "Nut: none to order; a zero fret sets the height.", 6);
    } else {
        put_blank(flow, nut_order(draft));
    }
}

static void put_saddle(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const brief_saddle *saddle = &draft->brief->saddle;
    if (saddle->remedy == SIL_SADDLE_WAIT) {
        paper_flow_wait(flow, "No saddle blank is ordered today.",
                        &draft->brief->stage[BRIEF_SADDLE]);
    } else if (saddle->blank.ordered) {
        put_blank(flow, saddle_order(draft));
    } else if (sil_working_turns(saddle->working)) {
        draw_flow_words(flow, "Saddle: none to order; it stands on screws.", 6);
    } else {
        draw_flow_words(flow, "Bridge: none to order; it is worked at its feet.", 6);
    }
}

void paper_blanks(sil_drawing *drawing)
{
    static const draw_heading heading = {
        "Blank order",
        "1:1",
        {"Ivory, shell, and some bone and woods are restricted: what local law does not allow is",
         "not ordered and not sent, and another material is named instead."}};
    draw_flow flow = draw_flow_begin(drawing, heading);
    paper_headline(&flow, "Do not slot, shape or finish: fitted by us");
    const sil_shop *shop = &drawing->draft.plan->job->shop;
    if (shop->name != NULL || shop->contact != NULL) {
        bool both = shop->name != NULL && shop->contact != NULL;
        draw_flow_words(&flow,
                        draw_say(&drawing->draft, "Ordered by %s%s%s",
                                 shop->name != NULL ? shop->name : "", both ? ", " : "",
                                 shop->contact != NULL ? shop->contact : ""),
                        4);
    }
    draw_flow_band(&flow, NULL, 0); /* the headline spans both columns, which then begin level */
    if (drawing->order.part != SIL_PART_SADDLE && paper_needs_blank(drawing, SIL_PART_NUT)) {
        put_nut(&flow);
        draw_flow_next_column(&flow);
    }
    if (drawing->order.part != SIL_PART_NUT && paper_needs_blank(drawing, SIL_PART_SADDLE)) {
        put_saddle(&flow);
    }
}
