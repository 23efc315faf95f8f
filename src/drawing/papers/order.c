/* SPDX-License-Identifier: MIT */
/* Sheet: the blanks to order, with nothing for a supplier to look up. */
#include <stddef.h>

#include "part.h"

enum { LENGTH, THICKNESS, HEIGHT, SIZES };
enum { ORDERED, WITHIN, DONE, SPARE, COLUMNS = SPARE + 2, FACTS_MAX = 8 };

static const char ends_word[] = "ends"; /* of a saddle's slot: no sheet tells */

/* A blank: its sizes, and what a supplier asks. */
typedef struct blank {
    const char *name;
    sil_blank order;
    double done[SIZES]; /* the finished part's */
    int count;
    const char *fact[FACTS_MAX];
    draw_words value[FACTS_MAX];
} blank;

/* ISO 2768-1, class f: what a size may be off by, mm. */
static double fine(double mm)
{
    static const double upto[] = {6, 30, 120, 400}, off[] = {0.05, 0.1, 0.15, 0.2};
    for (size_t i = 0; i < sizeof upto / sizeof *upto; i++) {
        if (mm <= upto[i]) {
            return off[i];
        }
    }
    return 0.3;
}

static double size_of(const blank *b, int size)
{
    const double sizes[SIZES] = {b->order.length, b->order.thickness, b->order.height};
    return sizes[size];
}

static bool complete(const blank *b)
{
    return sil_known(size_of(b, LENGTH) + size_of(b, THICKNESS) + size_of(b, HEIGHT));
}

static void add_fact(blank *b, const char *name, draw_words value)
{
    b->fact[b->count] = name;
    b->value[b->count++] = value;
}

static draw_words say_radius(const draw_draft *draft, double mm)
{
    return sil_known(mm) ? draw_say("flat; by us to radius %s %s", draw_say_radius(draft, mm).text,
                                    draw_unit_name(draft))
                         : draw_say("flat");
}

/* Between the outer strings' centres. */
static draw_words say_spread(const draw_draft *draft, const double *z)
{
    int last = draft->plan->job->string_count - 1;
    return draw_say("%s %s, %d strings", draw_say_length(draft, z[0] - z[last]).text,
                    draw_unit_name(draft), last + 1);
}

/* What is asked of both. */
static void add_facts(const draw_draft *draft, blank *b, const char *material, const double *z,
                      double radius)
{
    bool left = draft->plan->job->instrument.handed == SIL_LEFT_HANDED;
    add_fact(b, "material", draw_say("%.80s", material != NULL ? material : ""));
    add_fact(b, "spread", say_spread(draft, z));
    add_fact(b, "quantity", draw_say("1"));
    add_fact(b, "slots", draw_say("none: cut by us"));
    add_fact(b, "hand", draw_say("%s", left ? "left" : "right"));
    add_fact(b, "top", say_radius(draft, radius));
}

static blank nut_blank(const draw_draft *draft)
{
    const sil_plan *plan = draft->plan;
    const sil_job_nut *sheet = &plan->job->nut;
    double tops[SIL_STRINGS_MAX];
    for (int i = 0; i < plan->job->string_count; i++) {
        tops[i] = plan->nut.floor[i] + plan->nut.depth[i];
    }
    blank b = {.name = "Nut blank",
               .order = plan->nut_blank,
               .done = {sheet->width, sheet->thickness, plan->nut.top}};
    const double *z = plan->bench.board.nut_z;
    add_facts(draft, &b, sheet->material, z, sil_top_radius(plan->job->string_count, z, tops));
    return b;
}

static blank saddle_blank(const draw_draft *draft)
{
    const sil_plan *plan = draft->plan;
    const sil_job_saddle *sheet = &plan->job->saddle;
    double high = -(double)INFINITY;
    for (int i = 0; i < plan->job->string_count; i++) {
        double height = plan->saddle.height[i];
        high = sil_known(height) && sil_known(high) ? fmax(high, height) : SIL_UNKNOWN;
    }
    blank b = {.name = "Saddle blank",
               .order = plan->saddle_blank,
               .done = {sheet->length, sheet->thickness, high}};
    add_facts(draft, &b, sheet->material, plan->bench.board.saddle_z, plan->saddle.top_radius);
    if (sil_working_in_slot(plan->saddle.working)) {
        add_fact(&b, "for a slot",
                 draw_say("%s \u00d7 %s %s", draw_say_length(draft, sheet->thickness).text,
                          draw_say_length(draft, sheet->length).text, draw_unit_name(draft)));
        add_fact(&b, ends_word, draw_say("%s", ""));
    }
    return b;
}

/* From the front, and from its left end at the right of that, as first angle has it. */
static draw_shapes *views(const draw_flow *flow, const blank *b)
{
    const double apart = 16;
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    double length = size_of(b, LENGTH), thickness = size_of(b, THICKNESS);
    double height = size_of(b, HEIGHT), end = length + apart;
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){0, 0, length, height});
    draw_rectangle(list, DRAW_OUTLINE, (draw_box){end, 0, end + thickness, height});
    draw_dim_across(list, (draw_point){0, 0}, (draw_point){length, 0}, -7,
                    draw_say_stop(draft, length).text);
    draw_dim_across(list, (draw_point){end, 0}, (draw_point){end + thickness, 0}, -7,
                    draw_say_stop(draft, thickness).text);
    draw_dim_up(list, (draw_point){end, 0}, (draw_point){end, height}, length + 8,
                draw_say_stop(draft, height).text);
    return list;
}

static void put_sizes(draw_flow *flow, const blank *b)
{
    static const char *const names[] = {"length", "thickness", "height"};
    const draw_draft *draft = &flow->drawing->draft;
    draw_table t = {.columns = COLUMNS,
                    .rows = SIZES,
                    .row_height = 5.5,
                    .large = 1 + ORDERED,
                    .head = {{NULL, "size"},
                             {"order", draw_unit_name(draft)},
                             {"ISO", "2768-f"},
                             {NULL, "finished"},
                             {"left for", "fitting"}},
                    .anchor = {DRAW_LEFT, DRAW_RIGHT, DRAW_RIGHT, DRAW_RIGHT, DRAW_RIGHT}};
    for (int i = 0; i < SIZES; i++) {
        double size = size_of(b, i);
        draw_words *cell = &t.cell[i][1];
        t.cell[i][0] = draw_say("%s", names[i]);
        cell[ORDERED] = draw_say_stop(draft, size);
        cell[WITHIN] = sil_known(size)
                           ? draw_say("\u00b1%s", draw_say_length(draft, fine(size)).text)
                           : draw_say("-");
        cell[DONE] = draw_say_length(draft, b->done[i]);
        cell[SPARE] = draw_say_length(draft, size - b->done[i]);
    }
    draw_shapes *list = draw_flow_list(flow);
    draw_add_table(list, 0, 0, DRAW_COLUMN, &t);
    draw_flow_put(flow, list, DRAW_LEFT, 3.5, 20); /* with the facts under it */
}

/* What the sheet does not tell is ticked at the bench before it goes out. */
static void draw_choice(draw_shapes *list, double x, double y, const char *const choice[2])
{
    const double box = 2.8, gap = 1.5, apart = 5;
    for (int i = 0; i < 2; i++) {
        draw_rectangle(list, DRAW_SLOT, (draw_box){x, y - 0.15, x + box, y - 0.15 + box});
        draw_note(list, x + box + gap, y, choice[i]);
        x += box + gap + draw_text_width(list, choice[i], DRAW_NOTE) + apart;
    }
}

/* Two columns of facts; what is not known has a line to write on or boxes to tick. */
static void put_facts(draw_flow *flow, const blank *b)
{
    static const char *const ends[2] = {"square", "round"};
    const double tab = 22, second = 82, pitch = 5;
    draw_shapes *list = draw_flow_list(flow);
    double low = 0;
    for (int i = 0; i < b->count; i++) {
        int row = i / 2;
        double x = i % 2 * second, y = -DRAW_NOTE - row * pitch;
        draw_note(list, x, y, b->fact[i]);
        if (b->value[i].text[0] != '\0') {
            draw_words value = draw_text_fit(list, b->value[i].text, DRAW_NOTE, second - tab - 3);
            draw_note(list, x + tab, y, value.text);
        } else if (b->fact[i] == ends_word) {
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

static void put_blank(draw_flow *flow, blank b)
{
    const double whole_block = 84; /* views, sizes and facts stay together */
    draw_flow_title(flow, b.name, whole_block);
    if (!complete(&b)) {
        draw_flow_text(flow, 0, DRAW_COLUMN, "Not to be sent yet: a size below is not known.", 4);
    } else if (size_of(&b, LENGTH) <= DRAW_COLUMN - 40) {
        draw_flow_put(flow, views(flow, &b), DRAW_LEFT, 5, 0);
    }
    put_sizes(flow, &b);
    put_facts(flow, &b);
}

static void put_nut(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    if (draft->plan->bench.zero_fret) {
        draw_flow_words(flow, "Nut: none to order; a zero fret sets the height.", 6);
    } else {
        put_blank(flow, nut_blank(draft));
    }
}

static void put_saddle(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_plan *plan = draft->plan;
    if (plan->saddle.remedy == SIL_SADDLE_WAIT) {
        paper_flow_wait(flow, "No saddle blank is ordered today.", &plan->saddle_withheld);
    } else if (draw_on_screws(draft)) {
        draw_flow_words(flow, "Saddle: none to order; it stands on screws.", 6);
    } else if (!sil_working_in_slot(plan->saddle.working)) {
        draw_flow_words(flow, "Bridge: none to order; it is worked at its feet.", 6);
    } else {
        put_blank(flow, saddle_blank(draft));
    }
}

void paper_order(sil_drawing *drawing)
{
    static const draw_heading heading = {
        "Blank order",
        "1:1",
        {"Ivory, shell, and some bone and woods are restricted: what local law does not allow is",
         "not ordered and not sent, and another material is named instead."}};
    const sil_plan *plan = drawing->draft.plan;
    draw_flow flow = draw_flow_begin(drawing, heading);
    paper_headline(&flow, "Do not slot, shape or finish: fitted by us");
    draw_flow_band(&flow, NULL, 0); /* over both columns, so that they begin level */
    if (drawing->order.part != SIL_PART_SADDLE) {
        if (plan->nut.remedy == SIL_NUT_WAIT) {
            paper_flow_wait(&flow, "No nut blank is ordered today.", &plan->nut_withheld);
        } else {
            put_nut(&flow);
        }
        draw_flow_next_column(&flow);
    }
    if (drawing->order.part != SIL_PART_NUT) {
        put_saddle(&flow);
    }
}
