/* SPDX-License-Identifier: MIT */
/* Sheet: the measuring sheet, to fill in at the bench: every reading in the order of work, which is
 * the order of the sheet one types it into. */
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

/* A figure read; nothing where there is none, for a blank to write in. */
static const char *read_length(const draw_draft *draft, double mm)
{
    return sil_known(mm) ? draw_plain_length(draft, mm) : "";
}

/* A gap as it was read: by gauge; by finger and ear; or none that any feeler goes into. */
static const char *read_gap(const draw_draft *draft, double mm, sil_tap tap)
{
    static const char *const heard[] = {
        [SIL_NOT_TAPPED] = "", [SIL_TAP_PING] = "ping", [SIL_TAP_WIDE] = "wide"};
    return mm == 0 ? "none" : sil_known(mm) ? draw_plain_length(draft, mm) : heard[tap];
}

static const char *read_number(const draw_draft *draft, double value, int decimals)
{
    return sil_known(value) ? draw_plain_number(draft, value, decimals) : "";
}

static void put_title(draw_shapes *list, double x, int number, const char *title)
{
    draw_ring(list, (draw_point){x + 2.3, -2.3}, number);
    draw_text(list, DRAW_TEXT, (draw_point){x + 7, -4.1}, DRAW_HEAD, DRAW_LEFT, 0, title);
}

/* A figure under what stands in the list, its top at y. Returned: its bottom. */
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

/* Figures at the left, one under another; what to do and its blanks at the right. */
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
    y = view_add_form(list, form_left, y, form_width, form);
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
    view_add_sizes(list, y - 2.5, DRAW_COLUMN, 3, count, size);
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

/* --- each visit ------------------------------------------------------------------------------- */

static void add_condition(view_form *form, const char *label, const char *good, const char *bad,
                          sil_soundness read)
{
    view_entry *row = view_form_row(form, VIEW_CELL_CHOICE, label);
    row->choice[0] = good;
    row->choice[1] = bad;
    row->chosen = read == SIL_SOUND ? 0 : read == SIL_UNSOUND ? 1 : -1;
}

static void put_visit(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    view_figure *const figures[2] = {
        view_figure_humidity, view_stands_loose(draft->plan->job) ? view_figure_bridge : NULL};
    const sil_limits *limits = &draft->plan->job->limits;
    const sil_reading *read = sil_plan_reading(draft->plan);
    sil_condition condition = {0};
    view_form form = {.visit = 34, .label = form_width - 68};
    view_entry *date = view_form_row(&form, VIEW_CELL_FIGURE, "date");
    view_entry *air = view_form_row(&form, VIEW_CELL_FIGURE, "humidity, %");
    if (sil_known(limits->humidity_low_pct + limits->humidity_high_pct)) {
        air->label = draw_say(draft, "humidity, %s to %s %%",
                              draw_plain_number(draft, limits->humidity_low_pct, 0),
                              draw_plain_number(draft, limits->humidity_high_pct, 0));
    }
    if (read != NULL) {
        condition = read->condition;
        date->read[0] = read->date != NULL ? read->date : "";
        air->read[0] = read_number(draft, read->humidity_pct, 0);
    }
    add_condition(&form, "bridge", "sound", "lifted", condition.bridge);
    add_condition(&form, "braces", "sound", "loose", condition.braces);
    add_condition(&form, "strings", "new", "worn", condition.strings);
    add_condition(&form, "tuned to pitch", "yes", "no", condition.tuned);
    put_section(flow, 2, "Air, condition, pitch; all in playing position", figures, NULL, &form);
}

/* What the relief wanted shows under an edge or a string that lies as it was read: the gap is
 * linear in the bend. */
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

static void put_relief(draw_flow *flow)
{
    const draw_draft *draft = &flow->drawing->draft;
    const sil_bench *bench = &draft->plan->bench;
    const sil_relief_reading *laid = &bench->relief;
    view_figure *const figures[2] = {sil_board_bends(&bench->board) ? view_figure_relief : NULL};
    const sil_band *target = &bench->targets.relief;
    sil_band band = {gap_wanted(bench, target->low), gap_wanted(bench, target->aim),
                     gap_wanted(bench, target->high)};
    view_form form = {.label = 31, .visit = 18, .ranged = true};
    view_entry *relief =
        view_form_row(&form, VIEW_CELL_FIGURE, draw_say(draft, "gap over fret %d", laid->over));
    relief->range = range(draft, &band);
    relief->aim = read_length(draft, band.aim);
    relief->read[0] = laid->straightedge && laid->gap == 0 ? read_length(draft, 0)
                                                           : read_gap(draft, laid->gap, laid->tap);
    if (!laid->straightedge) {
        view_entry *string = view_form_row(&form, VIEW_CELL_FIGURE, "string held");
        string->read[0] = laid->string >= 0 ? draw_say(draft, "%d", laid->string + 1) : "";
    }
    put_section(
        flow, 3, "Relief", figures,
        laid->straightedge
            ? "The thickest feeler that goes under the straightedge without lifting it. Under it "
              "on two equal shims: gap less shim."
            : "The thickest feeler that does not lift the string. None goes in? "
              "Lay on a straightedge: the neck may be back-bowed.",
        &form);
}

static void put_crowns(draw_flow *flow)
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
    put_section(flow, 4, "Frets", figures,
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

/* Two readings beside each other: title, figure and what to do over each. */
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

/* Six strings go on two sheets of either paper; the taller one leaves more room to write. */
static double row_height(const draw_flow *flow)
{
    return flow->drawing->order.paper == SIL_LETTER ? 5.8 : 6.7;
}

/* Over a range that is wanted otherwise than the gap was read. */
static const char *wanted_held(sil_hold hold)
{
    return hold == SIL_HOLD_OPEN ? "open" : hold == SIL_HOLD_2 ? "on the 2nd" : "at the 3rd";
}

static void put_strings(draw_flow *flow)
{
    static view_figure *const figures[2] = {view_figure_first, view_figure_action};
    static const char *const titles[2] = {"Gap at the 1st fret", "Action"};
    const draw_draft *draft = &flow->drawing->draft;
    const sil_bench *bench = &draft->plan->bench;
    const sil_gaps *gaps = &bench->gaps;
    bool as_wanted = gaps->first_held == bench->targets.first_held;
    bool at_12 = gaps->action_at == 12 && !gaps->capo;
    const char *first = draw_say(draft, "At the 1st fret, %s", brief_hold(gaps->first_held));
    const char *action =
        draw_say(draft, "Over fret %d, %s", gaps->action_at, gaps->capo ? "capo at 1" : "open");
    view_gauging gauging[] = {
        {.name = first, .range = as_wanted ? "wanted" : wanted_held(bench->targets.first_held)},
        {.name = action, .range = at_12 ? "wanted" : "open, at 12"}};
    fill_gauging(draft, &gauging[0], bench->targets.first, gaps->first);
    for (int i = 0; i < bench->board.strings; i++) {
        gauging[0].read[i] = read_gap(draft, gaps->first[i], gaps->first_tap[i]);
    }
    fill_gauging(draft, &gauging[1], bench->targets.action, gaps->action);
    const char *wanted = draw_say(draft, "Wanted: %s.", brief_hold(bench->targets.first_held));
    const char *const how[2] = {as_wanted ? "The thickest feeler that does not lift it." : wanted,
                                at_12 ? "Eye level with the string."
                                      : "Wanted: open, over fret 12."};
    draw_shapes *list = draw_flow_list(flow);
    double y = put_pair(draft, list, 5, titles, figures, how);
    view_add_gaugings(draft, list, y - 3, row_height(flow), 2, gauging);
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

/* --- the saddle ------------------------------------------------------------------------------- */

static void add_pair(const draw_draft *draft, view_form *form, const char *name, double treble,
                     double bass)
{
    int strings = draft->plan->job->string_count;
    view_entry *row = view_form_row(form, VIEW_CELL_FIGURE, draw_say(draft, "%s, string 1", name));
    row->read[0] = read_length(draft, treble);
    if (strings > 1) {
        row =
            view_form_row(form, VIEW_CELL_FIGURE, draw_say(draft, "%s, string %d", name, strings));
        row->read[0] = read_length(draft, bass);
    }
}

/* Returned: whether there is anything to read. */
static bool put_saddle(draw_flow *flow, int number)
{
    static view_figure *const figures[2] = {view_figure_caliper, view_figure_bridge_top};
    const draw_draft *draft = &flow->drawing->draft;
    const sil_reading *read = sil_plan_reading(draft->plan);
    double height[2] = {SIL_UNKNOWN, SIL_UNKNOWN}, top[2] = {SIL_UNKNOWN, SIL_UNKNOWN};
    if (read != NULL) {
        height[0] = read->saddle_height_treble;
        height[1] = read->saddle_height_bass;
        top[0] = read->bridge_top_treble;
        top[1] = read->bridge_top_bass;
    }
    if (!view_stands_loose(draft->plan->job) && !any_known(height, 2) && !any_known(top, 2)) {
        return false; /* a screw a string: its height is turned, not cut */
    }
    view_form form = {.label = form_width - 52, .visit = 26};
    add_pair(draft, &form, "caliper", height[0], height[1]);
    add_pair(draft, &form, "bridge's top", top[0], top[1]);
    put_section(flow, number, "Saddle height", figures,
                "Saddle's seat to the string's underside; or, where it stays in, from a "
                "straightedge down to the bridge's top. One is enough.",
                &form);
    return true;
}

/* --- heard ------------------------------------------------------------------------------------ */

static void add_buzz(const draw_draft *draft, const char **line, int fret)
{
    *line = *line ? draw_say(draft, "%s, %d", *line, fret) : draw_say(draft, "%d", fret);
}

static void put_heard(draw_flow *flow, int number)
{
    static view_figure *const figures[2] = {view_figure_buzz, view_figure_cents};
    static const char *const titles[2] = {"Buzz heard", "Cents, fret 12 against open"};
    const draw_draft *draft = &flow->drawing->draft;
    const sil_reading *read = sil_plan_reading(draft->plan);
    const double *open = draft->plan->bench.gaps.first_open;
    view_gauging gauging[] = {{.name = "Frets it is stopped at; 0: open", .words = true},
                              {.name = "Cents at fret 12"},
                              {.name = "1st fret, open"}};
    int count = any_known(open, draft->plan->job->string_count) ? 3 : 2;
    fill_gauging(draft, &gauging[2], NULL, open);
    for (int k = 0; read != NULL && k < read->buzz_count; k++) {
        add_buzz(draft, &gauging[0].read[read->buzz[k].string - 1], read->buzz[k].fret);
    }
    for (int i = 0; read != NULL && i < draft->plan->job->string_count; i++) {
        gauging[1].read[i] = read_number(draft, read->cents[i], 1);
    }
    draw_shapes *list = draw_flow_list(flow);
    double y = put_pair(draft, list, number, titles, figures, NULL);
    view_add_gaugings(draft, list, y - 3, row_height(flow), count, gauging);
    draw_flow_put(flow, list, DRAW_LEFT, gap, 0);
}

void paper_measure(sil_drawing *drawing)
{
    static const draw_heading heading = {"Measuring sheet",
                                         "-",
                                         {"Slack the strings, cover the eyes before nut or saddle "
                                          "comes out. Never force a truss rod."}};
    drawing->unscaled = true;
    draw_flow flow = draw_flow_begin(drawing, heading);
    put_instrument(&flow);
    put_visit(&flow);
    put_relief(&flow);
    put_crowns(&flow);
    put_strings(&flow);
    put_heard(&flow, put_saddle(&flow, 7) ? 8 : 7);
}
