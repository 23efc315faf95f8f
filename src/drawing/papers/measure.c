/* SPDX-License-Identifier: MIT */
/* The measuring sheet on paper, to fill in at the bench. Its readings are in the order of work,
 * which is also their order in the file they are typed into. */
#include "../views/measure.h"
#include "../board/plain.h"
#include "papers.h"

#include <string.h>

static const double form_left = 59, form_width = DRAW_COLUMN - 59;
static const double head_height = 7.6, gap = 4, pair_width = 78, pair_left = DRAW_COLUMN - 78;

static const char *range(const draw_draft *draft, const sil_band *band)
{
    if (!sil_known(band->low + band->high)) {
        return "";
    }
    return draw_say(draft, "%s\u2013%s", draw_plain_length(draft, band->low),
                    draw_plain_length(draft, band->high));
}

/* A reading as text; "" if there is none, which leaves a blank to write in. */
static const char *read_length(const draw_draft *draft, double mm)
{
    return sil_known(mm) ? draw_plain_length(draft, mm) : "";
}

/* A gap as it was read: with a gauge, by finger and ear, or too small for any feeler. */
static const char *read_gap(const draw_draft *draft, double mm, sil_tap tap)
{
    static const char *const heard[] = {
        [SIL_NOT_TAPPED] = "", [SIL_TAP_PING] = "ping", [SIL_TAP_WIDE] = "wide"};
    return mm == 0 ? "none" : sil_known(mm) ? draw_plain_length(draft, mm) : heard[tap];
}

static void put_title(draw_shapes *list, double x, int number, const char *title)
{
    draw_ring(list, (draw_point){x + 2.3, -2.3}, number);
    draw_text(list, DRAW_TEXT, (draw_point){x + 7, -4.1}, DRAW_HEAD, DRAW_LEFT, 0, title);
}

/* Draws a figure below the contents of the list, with its top at y. Returned: its bottom. */
static double put_figure(const draw_draft *draft, draw_shapes *list, view_figure *figure, double x,
                         double y)
{
    if (list == NULL) {
        return y;
    }
    draw_shapes *own = draw_shapes_new(list->letters);
    figure(draft, own);
    draw_box box = draw_shapes_box(own);
    draw_shapes_add(list, own, x, y - box.top);
    draw_shapes_free(own);
    return box.left <= box.right ? y - draw_box_height(box) : y;
}

/* A section with figures at the left, one under another. What to do and its blanks are at the
 * right. */
static void put_section(draw_flow *flow, int number, const char *title,
                        view_figure *const figures[2], const char *how, const view_form *form)
{
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    double y = -head_height, figures_end = y;
    put_title(list, 0, number, title);
    for (int k = 0; k < 2 && figures[k] != NULL; k++) {
        figures_end = put_figure(draft, list, figures[k], 0, figures_end - (k > 0 ? 3 : 0));
    }
    if (how != NULL) {
        y = draw_paragraph(list, form_left, y, form_width, DRAW_NOTE, how) - 2.2;
    }
    y = view_add_form(draft, list, form_left, y, form_width, form);
    draw_shapes_strut(list, (draw_box){0, fmin(y, figures_end), DRAW_COLUMN, 0});
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

/* --- the instrument, read once ---------------------------------------------------------------- */

static void put_instrument(draw_flow *flow)
{
    const double pitch = (DRAW_COLUMN + 4) / 3.0, top = -head_height;
    const draw_draft *draft = &flow->drawing->draft;
    draw_shapes *list = draw_flow_list(flow);
    view_size size[VIEW_SIZES_MAX];
    int count = view_measure_sizes(draft, flow->drawing->unread, size);
    const char *unit = draft->brief->unit == SIL_MM ? "mm" : "inches",
               *kind = draft->plan->job->profile;
    put_title(list, 0, 1,
              kind != NULL ? draw_say(draft, "The instrument, in %s (%s)", unit, kind)
                           : draw_say(draft, "The instrument, in %s", unit));
    double y = put_figure(draft, list, view_figure_crown, 0, top);
    y = fmin(y, put_figure(draft, list, view_figure_seat, pitch, top));
    y = fmin(y, put_figure(draft, list, view_figure_slot, 2 * pitch, top));
    view_add_sizes(draft, list, y - 2.5, DRAW_COLUMN, 3, count, size);
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

/* --- each visit ------------------------------------------------------------------------------- */

static void put_visit(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    view_figure *const figures[2] = {
        view_figure_humidity, view_stands_loose(draft->plan->job) ? view_figure_bridge : NULL};
    view_form form = {.visit = 34, .label = form_width - 68};
    view_form_part(draft, &form, "readings");
    view_form_part(draft, &form, "readings.condition");
    put_section(flow, 2, "Air, condition, pitch; all in playing position", figures, NULL, &form);
}

/* The gap that a straightedge or a string shows at the given relief, if it is laid the way it
 * was when the reading was taken. The gap is linear in the bend. */
static double gap_wanted(const sil_bench *bench, double relief)
{
    sil_relief_reading laid = bench->relief;
    if (laid.low == 1 && laid.high == bench->board.join) {
        return relief;
    }
    laid.gap = 0;
    double none = sil_bend_from_relief(&bench->board, &bench->crowns, &laid);
    laid.gap = 1;
    double one = sil_bend_from_relief(&bench->board, &bench->crowns, &laid);
    return (sil_bend(&bench->board, relief) - none) / (one - none);
}

/* Returned: whether there is anything to measure. */
static bool put_relief(draw_flow *flow, int number)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_bench *bench = &draft->plan->bench;
    const sil_relief_reading *laid = &bench->relief;
    view_figure *const figures[2] = {sil_board_bends(&bench->board) ? view_figure_relief : NULL};
    const sil_band *target = &bench->targets.relief;
    sil_band band = {gap_wanted(bench, target->low), gap_wanted(bench, target->aim),
                     gap_wanted(bench, target->high)};
    view_form form = {.label = 31, .visit = 18, .ranged = true};
    if (!sil_field_applies("readings.relief", draft->plan->job) && !sil_known(laid->gap) &&
        laid->tap == SIL_NOT_TAPPED) {
        return false; /* there is no fret between the 1st and the body joint */
    }
    view_entry *relief = view_form_row(
        &form, VIEW_CELL_FIGURE,
        draw_say(draft, "%s over fret %d", view_field("readings.relief.gap").label, laid->over));
    relief->range = range(draft, &band);
    relief->aim = read_length(draft, band.aim);
    relief->read[0] = laid->straightedge && laid->gap == 0 ? read_length(draft, 0)
                                                           : read_gap(draft, laid->gap, laid->tap);
    if (!laid->straightedge) {
        view_entry *string =
            view_form_row(&form, VIEW_CELL_FIGURE, view_field("readings.relief.string").label);
        string->read[0] = laid->string >= 0 ? draw_say(draft, "%d", laid->string + 1) : "";
    }
    put_section(
        flow, number, view_field("readings.relief").label, figures,
        laid->straightedge
            ? "The thickest feeler that goes under the straightedge without lifting it. Under it "
              "on two equal shims: gap less shim."
            : "The thickest feeler that does not lift the string. None goes in? "
              "Lay on a straightedge: the neck may be back-bowed.",
        &form);
    return true;
}

static void put_crowns(draw_flow *flow, int number)
{
    enum { LEAST = 3, MOST = VIEW_ENTRIES_MAX - 2 };
    static view_figure *const figures[2] = {view_figure_crowns, NULL};
    const draw_draft *draft = &flow->drawing->draft;
    const sil_reading *read = sil_plan_reading(draft->plan);
    view_form form = {.visit = 34, .label = form_width - 68};
    view_entry *looked = view_form_row(&form, VIEW_CELL_CHOICE, "looked at");
    int count = read != NULL && read->crowns_read == SIL_CROWNS_LISTED ? read->crown_count : 0;
    looked->choice[0] = "sound";
    looked->choice[1] = "listed";
    if (read != NULL && read->crowns_read != SIL_CROWNS_NOT_READ) {
        looked->chosen = read->crowns_read == SIL_CROWNS_SOUND ? 0 : 1;
    }
    for (int k = 0; k < LEAST || (k < count && k < MOST); k++) {
        view_entry *row =
            view_form_row(&form, VIEW_CELL_CROWN, k == 0 ? "string, fret, off by" : "");
        if (k < count) {
            const sil_crown_off *crown = &read->crowns[k];
            row->read[0] = draw_say(draft, "%d", crown->string);
            row->read[1] = draw_say(draft, "%d", crown->fret);
            row->read[2] = draw_say(draft, "%s%s", crown->off > 0 ? "+" : "",
                                    draw_plain_length(draft, crown->off));
        }
    }
    if (count > MOST) {
        view_form_row(&form, VIEW_CELL_FIGURE, draw_say(draft, "and %d more read", count - MOST));
    }
    put_section(flow, number, view_field("readings.frets").label, figures,
                draw_say(draft,
                         "Three at a time, under every string, from the nut up: off by %s or more.",
                         draw_plain_length(draft, draft->plan->bench.wear_limit)),
                &form);
}

/* --- strings ---------------------------------------------------------------------------------- */

static void fill_gauging(const draw_draft *draft, view_gauging *gauging, const sil_band *band,
                         const double *read)
{
    for (int i = 0; i < draft->plan->job->string_count; i++) {
        if (band != NULL) {
            gauging->low_high[i] = range(draft, &band[i]);
            gauging->aim[i] = read_length(draft, band[i].aim);
        }
        gauging->read[i] = read_length(draft, read[i]);
    }
}

static bool any_known(const double *value, int count)
{
    bool any = false;
    for (int i = 0; i < count; i++) {
        any = any || sil_known(value[i]);
    }
    return any;
}

/* Two readings side by side, each with its title, its figure and what to do. Returned: the
 * bottom. */
static double put_pair(const draw_draft *draft, draw_shapes *list, int number,
                       const char *const title[2], view_figure *const figure[2],
                       const char *const how[2])
{
    double bottom = 0;
    for (int k = 0; k < 2; k++) {
        double x = k == 0 ? 0 : pair_left;
        put_title(list, x, number + k, title[k]);
        double y = put_figure(draft, list, figure[k], x, -head_height);
        if (how != NULL) {
            y = draw_paragraph(list, x, y - 1.6, pair_width, DRAW_NOTE, how[k]);
        }
        bottom = fmin(bottom, y);
    }
    return bottom;
}

/* The height of a row. Six strings fit on two papers of either size, and the taller size has
 * more room to write. */
static double row_height(const draw_flow *flow)
{
    return flow->drawing->order.paper == SIL_LETTER ? 5.8 : 6.7;
}

/* The head of a target range when the target is held another way than the reading. */
static const char *wanted_held(sil_hold hold)
{
    return hold == SIL_HOLD_OPEN ? "open" : hold == SIL_HOLD_2 ? "on the 2nd" : "at the 3rd";
}

static void put_strings(draw_flow *flow, int number)
{
    static view_figure *const figures[2] = {view_figure_first, view_figure_action};
    const char *const titles[2] = {view_field("readings.first").label,
                                   view_field("readings.action").label};
    const draw_draft *draft = &flow->drawing->draft;
    const sil_bench *bench = &draft->plan->bench;
    const sil_gaps *gaps = &bench->gaps;
    bool as_wanted = gaps->first_held == bench->targets.first_held;
    bool at_12 = gaps->action_at == 12 && !gaps->capo;
    const char *first = draw_say(draft, "%s, %s", titles[0], brief_hold(gaps->first_held));
    const char *action = draw_say(draft, "%s over fret %d, %s", titles[1], gaps->action_at,
                                  gaps->capo ? "capo at 1" : "open");
    view_gauging gauging[] = {
        {.name = first, .range = as_wanted ? "range" : wanted_held(bench->targets.first_held)},
        {.name = action, .range = at_12 ? "range" : "open, at 12"}};
    fill_gauging(draft, &gauging[0], bench->targets.first, gaps->first);
    for (int i = 0; i < bench->board.strings; i++) {
        gauging[0].read[i] = read_gap(draft, gaps->first[i], gaps->first_tap[i]);
    }
    fill_gauging(draft, &gauging[1], bench->targets.action, gaps->action);
    for (int i = 0; i < bench->board.strings; i++) {
        brief_figure aim = draft->brief->action[i].wanted.aim;
        gauging[1].aim[i] = brief_known(aim) ? draw_action(draft, aim) : "";
    }
    const char *wanted = draw_say(draft, "Range: %s.", brief_hold(bench->targets.first_held));
    const char *const how[2] = {as_wanted ? "The thickest feeler that does not lift it." : wanted,
                                at_12 ? "Eye level with the string."
                                      : "Range: open, over fret 12."};
    draw_shapes *list = draw_flow_list(flow);
    double y = put_pair(draft, list, number, titles, figures, how);
    view_add_gaugings(draft, list, y - 3, row_height(flow), 2, gauging);
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

/* --- the saddle ------------------------------------------------------------------------------- */

/* Adds a row for each outer string. */
static void add_ends(const draw_draft *draft, view_form *form, const sil_field *field,
                     const sil_field_value *read)
{
    int strings = draft->plan->job->string_count;
    for (int end = 0; end < 2 && end < strings; end++) {
        view_entry *row =
            view_form_row(form, VIEW_CELL_FIGURE,
                          draw_say(draft, "%s, string %d", field->label, end == 0 ? 1 : strings));
        row->read[0] = view_figure_words(draft, field, read->figure[end]);
    }
}

/* Puts what is measured at the outer strings. Returned: whether there is anything. */
static bool put_ends(draw_flow *flow, int number)
{
    static view_figure *const figures[2] = {view_figure_caliper, view_figure_bridge_top};
    const draw_draft *draft = &flow->drawing->draft;
    const sil_job *job = draft->plan->job;
    view_form form = {.label = form_width - 52, .visit = 26};
    for (int k = 0; k < sil_field_count(); k++) {
        sil_field field = sil_field_at(k);
        sil_field_value read;
        bool asked =
            field.asked && field.kind == SIL_FIELD_ENDS && sil_field_within(field.path, "readings");
        bool given = asked && sil_field_read(&field, job, job->reading_count - 1, &read);
        if (asked && (given || sil_field_applies(field.path, job))) {
            add_ends(draft, &form, &field, &read);
        }
    }
    if (form.rows > 0) {
        put_section(flow, number, view_field("readings.saddle_height").label, figures,
                    "Bottom of the saddle to the string's underside; or, where it stays in, from a "
                    "straightedge down to the bridge's top. One is enough.",
                    &form);
    }
    return form.rows > 0;
}

/* --- heard ------------------------------------------------------------------------------------ */

static void add_buzz(const draw_draft *draft, const char **line, int fret)
{
    *line = *line ? draw_say(draft, "%s, %d", *line, fret) : draw_say(draft, "%d", fret);
}

static void put_heard(draw_flow *flow, int number)
{
    static view_figure *const figures[2] = {view_figure_buzz, view_figure_cents};
    const sil_field cents = view_field("readings.cents");
    const char *const titles[2] = {view_field("readings.buzz").label, cents.label};
    const draw_draft *draft = &flow->drawing->draft;
    const sil_reading *read = sil_plan_reading(draft->plan);
    const double *open = draft->plan->bench.gaps.first_open;
    view_gauging gauging[] = {{.name = view_field("readings.buzz.fret").label, .words = true},
                              {.name = titles[1]},
                              {.name = view_field("readings.first_open").label}};
    int count = any_known(open, draft->plan->job->string_count) ? 3 : 2;
    fill_gauging(draft, &gauging[2], NULL, open);
    for (int k = 0; read != NULL && k < read->buzz_count; k++) {
        add_buzz(draft, &gauging[0].read[read->buzz[k].string - 1], read->buzz[k].fret);
    }
    for (int i = 0; read != NULL && i < draft->plan->job->string_count; i++) {
        gauging[1].read[i] = view_figure_words(draft, &cents, read->cents[i]);
    }
    draw_shapes *list = draw_flow_list(flow);
    double y = put_pair(draft, list, number, titles, figures, NULL);
    view_add_gaugings(draft, list, y - 3, row_height(flow), count, gauging);
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

void paper_measure(sil_drawing *drawing)
{
    static const draw_heading heading = {
        "Measuring sheet",
        "-",
        {"Slacken the strings and wear eye protection to take out nut or "
         "saddle. Never force a rod."}};
    drawing->measuring = true;
    draw_flow flow = draw_flow_begin(drawing, heading);
    put_instrument(&flow);
    put_visit(&flow);
    int number = 3;
    number += put_relief(&flow, number);
    put_crowns(&flow, number);
    put_strings(&flow, number + 1);
    number += 3; /* the crowns have one number and the strings two */
    number += put_ends(&flow, number);
    put_heard(&flow, number);
}
