/* SPDX-License-Identifier: MIT */
/* Sheet: the measuring sheet, to fill in at the bench: every reading in the order of work, which is
 * the order of the sheet one types it into. */
#include "measure.h"
#include "sheet.h"

#include <string.h>

static const double form_left = 59, form_width = SIL_COLUMN - 59;
static const double head_height = 7.6, gap = 4, pair_width = 78, pair_left = SIL_COLUMN - 78;

static sil_words range(const sil_draft *draft, const sil_band *band)
{
    if (!sil_known(band->low + band->high)) {
        return sil_say("%s", "");
    }
    return sil_say("%s\u2013%s", sil_say_length(draft, band->low).text,
                   sil_say_length(draft, band->high).text);
}

/* A figure read; nothing where there is none, for a blank to write in. */
static sil_words read_length(const sil_draft *draft, double mm)
{
    return sil_known(mm) ? sil_say_length(draft, mm) : sil_say("%s", "");
}

/* A gap as it was read: by gauge; by finger and ear; or none that any feeler goes into. */
static sil_words read_gap(const sil_draft *draft, double mm, sil_tap tap)
{
    static const char *const heard[] = {
        [SIL_NOT_TAPPED] = "", [SIL_TAP_PING] = "ping", [SIL_TAP_WIDE] = "wide"};
    return mm == 0         ? sil_say("none")
           : sil_known(mm) ? sil_say_length(draft, mm)
                           : sil_say("%s", heard[tap]);
}

static sil_words read_number(const sil_draft *draft, double value, int decimals)
{
    return sil_known(value) ? sil_say_number(draft, value, decimals) : sil_say("%s", "");
}

static void put_title(sil_shapes *list, double x, int number, const char *title)
{
    sil_draw_ring(list, (sil_point){x + 2.3, -2.3}, number);
    sil_draw_text(list, SIL_LAYER_TEXT, (sil_point){x + 7, -4.1}, SIL_HEAD, SIL_LEFT, 0, title);
}

/* A figure under what stands in the list, its top at y. Returned: its bottom. */
static double put_figure(const sil_draft *draft, sil_shapes *list, sil_figure *figure, double x,
                         double y)
{
    if (list == NULL) {
        return y;
    }
    sil_shapes *own = sil_shapes_new(list->letters);
    figure(draft, own);
    sil_box box = sil_shapes_box(own);
    sil_shapes_add(list, own, x, y - box.top);
    sil_shapes_free(own);
    return box.left <= box.right ? y - sil_box_height(box) : y;
}

/* Figures at the left, one under another; what to do and its blanks at the right. */
static void put_section(sil_flow *flow, int number, const char *title, sil_figure *const figures[2],
                        const char *how, const sil_form *form)
{
    const sil_draft *draft = &flow->drawing->draft;
    sil_shapes *list = sil_flow_list(flow);
    double y = -head_height, figures_end = y;
    put_title(list, 0, number, title);
    for (int k = 0; k < 2 && figures[k] != NULL; k++) {
        figures_end = put_figure(draft, list, figures[k], 0, figures_end - (k > 0 ? 3 : 0));
    }
    if (how != NULL) {
        y = sil_draw_paragraph(list, form_left, y, form_width, SIL_NOTE, how) - 2.2;
    }
    y = sil_draw_form(list, form_left, y, form_width, form);
    sil_shapes_strut(list, (sil_box){0, fmin(y, figures_end), SIL_COLUMN, 0});
    sil_flow_put(flow, list, SIL_LEFT, gap, 0);
}

/* --- the instrument, read once ---------------------------------------------------------------- */

static void put_instrument(sil_flow *flow)
{
    const double pitch = (SIL_COLUMN + 4) / 3.0, top = -head_height;
    const sil_draft *draft = &flow->drawing->draft;
    sil_shapes *list = sil_flow_list(flow);
    sil_size size[SIL_SIZES_MAX];
    int count = sil_measure_sizes(draft, flow->drawing->unread, size);
    const char *unit = draft->unit == SIL_MM ? "mm" : "inches", *kind = draft->plan->job->profile;
    put_title(list, 0, 1,
              kind != NULL ? sil_say("The instrument, in %s (%.50s)", unit, kind).text
                           : sil_say("The instrument, in %s", unit).text);
    double y = put_figure(draft, list, sil_figure_crown, 0, top);
    y = fmin(y, put_figure(draft, list, sil_figure_seat, pitch, top));
    y = fmin(y, put_figure(draft, list, sil_figure_slot, 2 * pitch, top));
    sil_draw_sizes(list, y - 2.5, SIL_COLUMN, 3, count, size);
    sil_flow_put(flow, list, SIL_LEFT, gap, 0);
}

/* --- each visit ------------------------------------------------------------------------------- */

static void add_condition(sil_form *form, const char *label, const char *good, const char *bad,
                          sil_soundness read)
{
    sil_entry *row = sil_form_row(form, SIL_CELL_CHOICE, label);
    row->choice[0] = good;
    row->choice[1] = bad;
    row->chosen = read == SIL_SOUND ? 0 : read == SIL_UNSOUND ? 1 : -1;
}

static void put_visit(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    sil_figure *const figures[2] = {sil_figure_humidity,
                                    sil_stands_loose(draft->plan->job) ? sil_figure_bridge : NULL};
    const sil_limits *limits = &draft->plan->job->limits;
    const sil_reading *read = sil_plan_reading(draft->plan);
    sil_condition condition = {0};
    sil_form form = {.visit = 34, .label = form_width - 68};
    sil_entry *date = sil_form_row(&form, SIL_CELL_FIGURE, "date");
    sil_entry *air = sil_form_row(&form, SIL_CELL_FIGURE, "humidity, %");
    if (sil_known(limits->humidity_low_pct + limits->humidity_high_pct)) {
        air->label = sil_say("humidity, %s to %s %%",
                             sil_say_number(draft, limits->humidity_low_pct, 0).text,
                             sil_say_number(draft, limits->humidity_high_pct, 0).text);
    }
    if (read != NULL) {
        condition = read->condition;
        date->read[0] = sil_say("%.20s", read->date != NULL ? read->date : "");
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

static void put_relief(sil_flow *flow)
{
    const sil_draft *draft = &flow->drawing->draft;
    const sil_bench *bench = &draft->plan->bench;
    const sil_relief_reading *laid = &bench->relief;
    sil_figure *const figures[2] = {sil_board_bends(&bench->board) ? sil_figure_relief : NULL};
    const sil_band *target = &bench->targets.relief;
    sil_band band = {gap_wanted(bench, target->low), gap_wanted(bench, target->aim),
                     gap_wanted(bench, target->high)};
    sil_form form = {.label = 31, .visit = 18, .ranged = true};
    sil_entry *relief =
        sil_form_row(&form, SIL_CELL_FIGURE, sil_say("gap over fret %d", laid->over).text);
    relief->range = range(draft, &band);
    relief->aim = read_length(draft, band.aim);
    relief->read[0] = laid->straightedge && laid->gap == 0 ? read_length(draft, 0)
                                                           : read_gap(draft, laid->gap, laid->tap);
    if (!laid->straightedge) {
        sil_entry *string = sil_form_row(&form, SIL_CELL_FIGURE, "string held");
        string->read[0] = laid->string >= 0 ? sil_say("%d", laid->string + 1) : sil_say("%s", "");
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

static void put_crowns(sil_flow *flow)
{
    enum { LEAST = 3, MOST = SIL_ENTRIES_MAX - 2 };
    static sil_figure *const figures[2] = {sil_figure_crowns, NULL};
    const sil_draft *draft = &flow->drawing->draft;
    const sil_reading *read = sil_plan_reading(draft->plan);
    sil_form form = {.visit = 34, .label = form_width - 68};
    sil_entry *looked = sil_form_row(&form, SIL_CELL_CHOICE, "looked at");
    int count = read != NULL && read->crowns_read == SIL_CROWNS_LISTED ? read->crown_count : 0;
    looked->choice[0] = "sound";
    looked->choice[1] = "listed";
    if (read != NULL && read->crowns_read != SIL_CROWNS_NOT_READ) {
        looked->chosen = read->crowns_read == SIL_CROWNS_SOUND ? 0 : 1;
    }
    for (int k = 0; k < LEAST || (k < count && k < MOST); k++) {
        sil_entry *row = sil_form_row(&form, SIL_CELL_CROWN, k == 0 ? "string, fret, off by" : "");
        if (k < count) {
            const sil_crown_off *crown = &read->crowns[k];
            row->read[0] = sil_say("%d", crown->string);
            row->read[1] = sil_say("%d", crown->fret);
            row->read[2] =
                sil_say("%s%s", crown->off > 0 ? "+" : "", sil_say_length(draft, crown->off).text);
        }
    }
    if (count > MOST) {
        sil_form_row(&form, SIL_CELL_FIGURE, sil_say("and %d more read", count - MOST).text);
    }
    put_section(flow, 4, "Frets", figures,
                sil_say("Three at a time, under every string, from the nut up: off by %s or more.",
                        sil_say_length(draft, draft->plan->bench.wear_limit).text)
                    .text,
                &form);
}

/* --- strings ---------------------------------------------------------------------------------- */

static void fill_gauging(const sil_draft *draft, sil_gauging *gauging, const sil_band *band,
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
static double put_pair(const sil_draft *draft, sil_shapes *list, int number,
                       const char *const title[2], sil_figure *const figure[2],
                       const char *const how[2])
{
    double bottom = 0;
    for (int k = 0; k < 2; k++) {
        double x = k == 0 ? 0 : pair_left;
        put_title(list, x, number + k, title[k]);
        double y = put_figure(draft, list, figure[k], x, -head_height);
        if (how != NULL) {
            y = sil_draw_paragraph(list, x, y - 1.6, pair_width, SIL_NOTE, how[k]);
        }
        bottom = fmin(bottom, y);
    }
    return bottom;
}

/* Six strings go on two sheets of either paper; the taller one leaves more room to write. */
static double row_height(const sil_flow *flow)
{
    return flow->drawing->order.paper == SIL_LETTER ? 5.8 : 6.7;
}

/* Over a range that is wanted otherwise than the gap was read. */
static const char *wanted_held(sil_hold hold)
{
    return hold == SIL_HOLD_OPEN ? "open" : hold == SIL_HOLD_2 ? "on the 2nd" : "at the 3rd";
}

static void put_strings(sil_flow *flow)
{
    static sil_figure *const figures[2] = {sil_figure_first, sil_figure_action};
    static const char *const titles[2] = {"Gap at the 1st fret", "Action"};
    const sil_draft *draft = &flow->drawing->draft;
    const sil_bench *bench = &draft->plan->bench;
    const sil_gaps *gaps = &bench->gaps;
    bool as_wanted = gaps->first_held == bench->targets.first_held;
    bool at_12 = gaps->action_at == 12 && !gaps->capo;
    sil_words first = sil_say("At the 1st fret, %s", sil_hold_words(gaps->first_held));
    sil_words action =
        sil_say("Over fret %d, %s", gaps->action_at, gaps->capo ? "capo at 1" : "open");
    sil_gauging gauging[] = {
        {.name = first.text,
         .range = as_wanted ? "wanted" : wanted_held(bench->targets.first_held)},
        {.name = action.text, .range = at_12 ? "wanted" : "open, at 12"}};
    fill_gauging(draft, &gauging[0], bench->targets.first, gaps->first);
    for (int i = 0; i < bench->board.strings; i++) {
        gauging[0].read[i] = read_gap(draft, gaps->first[i], gaps->first_tap[i]);
    }
    fill_gauging(draft, &gauging[1], bench->targets.action, gaps->action);
    sil_words wanted = sil_say("Wanted: %s.", sil_hold_words(bench->targets.first_held));
    const char *const how[2] = {
        as_wanted ? "The thickest feeler that does not lift it." : wanted.text,
        at_12 ? "Eye level with the string." : "Wanted: open, over fret 12."};
    sil_shapes *list = sil_flow_list(flow);
    double y = put_pair(draft, list, 5, titles, figures, how);
    sil_draw_gaugings(draft, list, y - 3, row_height(flow), 2, gauging);
    sil_flow_put(flow, list, SIL_LEFT, gap, 0);
}

/* --- the saddle ------------------------------------------------------------------------------- */

static void add_pair(const sil_draft *draft, sil_form *form, const char *name, double treble,
                     double bass)
{
    int strings = draft->plan->job->string_count;
    sil_entry *row = sil_form_row(form, SIL_CELL_FIGURE, sil_say("%s, string 1", name).text);
    row->read[0] = read_length(draft, treble);
    if (strings > 1) {
        row = sil_form_row(form, SIL_CELL_FIGURE, sil_say("%s, string %d", name, strings).text);
        row->read[0] = read_length(draft, bass);
    }
}

/* Returned: whether there is anything to read. */
static bool put_saddle(sil_flow *flow, int number)
{
    static sil_figure *const figures[2] = {sil_figure_caliper, sil_figure_bridge_top};
    const sil_draft *draft = &flow->drawing->draft;
    const sil_reading *read = sil_plan_reading(draft->plan);
    double height[2] = {SIL_UNKNOWN, SIL_UNKNOWN}, top[2] = {SIL_UNKNOWN, SIL_UNKNOWN};
    if (read != NULL) {
        height[0] = read->saddle_height_treble;
        height[1] = read->saddle_height_bass;
        top[0] = read->bridge_top_treble;
        top[1] = read->bridge_top_bass;
    }
    if (!sil_stands_loose(draft->plan->job) && !any_known(height, 2) && !any_known(top, 2)) {
        return false; /* a screw a string: its height is turned, not cut */
    }
    sil_form form = {.label = form_width - 52, .visit = 26};
    add_pair(draft, &form, "caliper", height[0], height[1]);
    add_pair(draft, &form, "bridge's top", top[0], top[1]);
    put_section(flow, number, "Saddle height", figures,
                "Saddle's seat to the string's underside; or, where it stays in, from a "
                "straightedge down to the bridge's top. One is enough.",
                &form);
    return true;
}

/* --- heard ------------------------------------------------------------------------------------ */

static void add_buzz(sil_words *line, int fret)
{
    *line = sil_say("%.80s%s%d", line->text, line->text[0] != '\0' ? ", " : "", fret);
}

static void put_heard(sil_flow *flow, int number)
{
    static sil_figure *const figures[2] = {sil_figure_buzz, sil_figure_cents};
    static const char *const titles[2] = {"Buzz heard", "Cents, fret 12 against open"};
    const sil_draft *draft = &flow->drawing->draft;
    const sil_reading *read = sil_plan_reading(draft->plan);
    const double *open = draft->plan->bench.gaps.first_open;
    sil_gauging gauging[] = {{.name = "Frets it is stopped at; 0: open", .words = true},
                             {.name = "Cents at fret 12"},
                             {.name = "1st fret, open"}};
    int count = any_known(open, draft->plan->job->string_count) ? 3 : 2;
    fill_gauging(draft, &gauging[2], NULL, open);
    for (int k = 0; read != NULL && k < read->buzz_count; k++) {
        add_buzz(&gauging[0].read[read->buzz[k].string - 1], read->buzz[k].fret);
    }
    for (int i = 0; read != NULL && i < draft->plan->job->string_count; i++) {
        gauging[1].read[i] = read_number(draft, read->cents[i], 1);
    }
    sil_shapes *list = sil_flow_list(flow);
    double y = put_pair(draft, list, number, titles, figures, NULL);
    sil_draw_gaugings(draft, list, y - 3, row_height(flow), count, gauging);
    sil_flow_put(flow, list, SIL_LEFT, gap, 0);
}

void sil_sheet_measure(sil_drawing *drawing)
{
    static const sil_heading heading = {"Measuring sheet",
                                        "-",
                                        {"Slack the strings, cover the eyes before nut or saddle "
                                         "comes out. Never force a truss rod."}};
    drawing->unscaled = true;
    sil_flow flow = sil_flow_begin(drawing, heading);
    put_instrument(&flow);
    put_visit(&flow);
    put_relief(&flow);
    put_crowns(&flow);
    put_strings(&flow);
    put_heard(&flow, put_saddle(&flow, 7) ? 8 : 7);
}
